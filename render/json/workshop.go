package json

import (
	"bytes"
	"fmt"
	"io"

	"ribwright/geometry/design"
	"ribwright/layout"
	"ribwright/layout/report"
)

// Figure writes a drawing as a picture, with what is to be seen in words.
type Figure func(w io.Writer, d layout.Drawing, about string) error

// Workshop tells what it comes to in short, chapters of a report block by block, and of
// the cards each.
//
// Errors: a figure that cannot be written, by its title.
func Workshop(d *design.Design, short []report.Block, r report.Report, chapters []string, cards []report.Card, picture Figure) (Object, error) {
	first, err := Blocks(short, picture)
	if err != nil {
		return nil, err
	}
	var told []Object
	for _, name := range chapters {
		all, err := Blocks(r.Chapter(name), picture)
		if err != nil {
			return nil, err
		}
		told = append(told, Object{{"name", name}, {"blocks", all}})
	}
	return of(d, Object{{"short", first}, {"chapters", told}, {"cards", each(cards, func(c report.Card) Object {
		return Object{{"name", c.Name}, {"facts", each(c.Facts, func(f report.Fact) Object {
			return Object{{"table", f.Table}, {"head", f.Head}, {"says", f.Says}}
		})}}
	})}}...)
}

// Blocks writes blocks each as its kind; findings as the blocks they consist of.
//
// Errors: a figure that cannot be written, by its title.
func Blocks(all []report.Block, picture Figure) ([]Object, error) {
	var out []Object
	for _, b := range all {
		if f, ok := b.(report.Findings); ok {
			more, err := Blocks(f.Blocks(), picture)
			if err != nil {
				return nil, err
			}
			out = append(out, more...)
			continue
		}
		o, err := block(b, picture)
		if err != nil {
			return nil, err
		}
		if o != nil {
			out = append(out, o)
		}
	}
	return out, nil
}

func block(b report.Block, picture Figure) (Object, error) {
	kind := func(name string, o Object) (Object, error) { return append(Object{{"kind", name}}, o...), nil }
	switch b := b.(type) {
	case report.Heading:
		return kind("heading", Object{{"level", b.Level}, {"says", b.Words}})
	case report.Paragraph:
		return kind("paragraph", Object{{"says", b.Words}})
	case report.List:
		return kind("list", Object{{"numbered", b.Numbered()}, {"items", b.Items}})
	case report.Caution:
		return kind("caution", Object{{"says", b.String()}})
	case report.Table:
		return kind("table", Object{{"title", b.Title}, {"heads", b.Heads()}, {"right", each(b.Columns, func(c report.Column) bool { return c.Align == layout.Right })}, {"rows", b.Rows}, {"note", b.Note}})
	case report.Figure:
		var svg bytes.Buffer
		if err := picture(&svg, b.Drawing, b.About); err != nil {
			return nil, fmt.Errorf("the figure %q: %w", b.Drawing.Title, err)
		}
		return kind("figure", Object{{"svg", svg.String()}, {"says", b.Caption}, {"about", b.About}})
	case report.Contents:
		return nil, nil // a screen has its own
	}
	panic(fmt.Sprintf("json: no way to write the block %T", b))
}
