// Package html writes a report for a browser: its blocks, to stand in a page of any
// frame, or one whole file to open from the disk, with no script, nothing fetched and
// its drawings inline.
package html

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"io"
	"reflect"
	"strings"

	"ribwright/layout"
	"ribwright/layout/report"
)

//go:embed style.css
var style string

//go:embed blocks.tmpl file.tmpl
var files embed.FS

// templates are those of the blocks and of the whole file. They never change.
var templates = template.Must(template.New("").Funcs(template.FuncMap{
	"clean": report.Clean,
	"class": class,
	"next":  func(i int) int { return i + 1 },
}).ParseFS(files, "*.tmpl"))

// Figure writes a drawing as an SVG element to stand in a page, with its name and
// what is to be seen for those who cannot see it.
type Figure func(w io.Writer, d layout.Drawing, about string) error

// Encode writes the report as one file. Every word of it is text, whatever it looks
// like.
//
// Errors: a drawing that cannot be written, or the writer's own error. Nothing is
// written unless all is made.
func Encode(w io.Writer, r report.Report, figure Figure) error {
	blocks, err := Blocks(r, figure)
	if err != nil {
		return err
	}
	out, err := execute("file.tmpl", struct {
		report.Report
		Style  template.CSS
		Blocks template.HTML
	}{r, template.CSS(style), blocks})
	if err != nil {
		return err
	}
	_, err = io.WriteString(w, string(out))
	return err
}

// Blocks makes the elements of all blocks, chapters with the places c1, c2 and so on.
//
// Errors: a drawing that cannot be written, by its title.
func Blocks(r report.Report, figure Figure) (template.HTML, error) {
	e := &encoder{figure: figure, chapters: r.Chapters()}
	for _, b := range r.Blocks {
		if err := e.set(b); err != nil {
			return "", err
		}
	}
	return template.HTML(e.out.String()), nil
}

// execute runs one template. The library writes + as a number, which only old
// browsers that guess at the letters of a page need; ours says what they are.
func execute(name string, data any) (template.HTML, error) {
	var out bytes.Buffer
	err := templates.ExecuteTemplate(&out, name, data)
	return template.HTML(bytes.ReplaceAll(out.Bytes(), []byte("&#43;"), []byte("+"))), err
}

type encoder struct {
	out      bytes.Buffer
	figure   Figure
	chapters []string
	at       int // chapters begun
}

// set adds the elements of one block, of findings those of all their blocks. The
// template of a block is called as its kind.
func (e *encoder) set(b report.Block) error {
	var data any = b
	switch b := b.(type) {
	case report.Findings:
		for _, part := range b.Blocks() {
			if err := e.set(part); err != nil {
				return err
			}
		}
		return nil
	case report.Heading:
		if b.Level == 1 {
			e.at++
		}
		data = struct {
			report.Heading
			Chapter int
		}{b, e.at}
	case report.Figure:
		var svg bytes.Buffer
		if err := e.figure(&svg, b.Drawing, b.About); err != nil {
			return fmt.Errorf("the figure %q: %w", b.Drawing.Title, err)
		}
		data = struct {
			report.Figure
			SVG template.HTML
		}{b, template.HTML(svg.String())}
	case report.Contents:
		data = e.chapters
	case report.Paragraph, report.List, report.Caution, report.Table:
	default:
		panic(fmt.Sprintf("a block of no known kind: %T", b))
	}
	out, err := execute(strings.ToLower(reflect.TypeOf(b).Name()), data)
	e.out.WriteString(string(out))
	return err
}

// class says how the cells of a column stand.
func class(c report.Column) string {
	switch {
	case c.Align == layout.Right:
		return "r"
	case c.Text:
		return "t"
	}
	return "n"
}
