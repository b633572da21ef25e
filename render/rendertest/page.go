package rendertest

import (
	"fmt"
	"math"
)

// mmPerPoint is the length of a PDF unit, 1/72 inch.
const mmPerPoint = 25.4 / 72

// Page is one page with everything drawn on it, in the order of the file.
type Page struct {
	W, H    float64 // of the MediaBox
	Strokes []Stroke
	Texts   []Text
}

// Stroke is one path with the line it is drawn with.
type Stroke struct {
	Outlines []Outline
	Width    float64   // of the line
	Dash     []float64 // dash and gap in turn; empty for a solid line
	Gray     float64   // 0 is black
	Clip     Box       // the rectangle in force; the page's own when none is set
}

// Seen returns the box around what shows of the stroke's middle line: within
// its clip. It is empty when nothing shows.
func (s Stroke) Seen() Box {
	b := Nowhere()
	for _, o := range s.Outlines {
		b = Around(append(o.Points(32), corners(b)...)...)
	}
	return b.Meet(s.Clip)
}

func corners(b Box) []Point {
	if b.Empty() {
		return nil
	}
	return []Point{{b.X0, b.Y0}, {b.X1, b.Y1}}
}

// Text is one piece of lettering.
type Text struct {
	Words string
	At    Point // where the baseline starts
	Size  float64
	Angle float64
	Gray  float64
	Clip  Box

	advance float64
}

// CapHeight returns the height of the capitals. Source: Go Regular, table OS/2,
// sCapHeight 1480 of 2048.
func (t Text) CapHeight() float64 { return t.Size * 1480 / 2048 }

// Advance returns how far the lettering runs along its baseline, mm, by the widths that
// stand in the file.
func (t Text) Advance() float64 { return t.advance }

// Bounds returns the box around the lettering, from the lowest descender of the
// font to its highest capital; it does not look at the clip.
//
// Source: Go Regular, table OS/2: typographic descender -395 of 2048.
func (t Text) Bounds() Box {
	sin, cos := math.Sincos(t.Angle)
	at := func(along, up float64) Point {
		return Point{t.At.X + along*cos - up*sin, t.At.Y + along*sin + up*cos}
	}
	w, low, high := t.Advance(), -395*t.Size/2048, t.CapHeight()
	return Around(at(0, low), at(w, low), at(0, high), at(w, high))
}

// Pages returns the pages in order.
//
// Errors: an operator the writers have no business with, a font that
// is not in the file, a letter that it does not draw, a clip that is no upright rectangle, a state that is
// saved and not given back.
func (f *PDF) Pages() ([]Page, error) {
	root, err := f.Catalogue()
	if err != nil {
		return nil, err
	}
	var out []Page
	err = f.walk(root["Pages"], Dict{}, &out)
	return out, err
}

// walk descends the page tree; MediaBox and Resources pass down to the pages.
func (f *PDF) walk(v any, inherited Dict, out *[]Page) error {
	node, ok := f.resolve(v).(Dict)
	if !ok {
		return fmt.Errorf("the page tree points at nothing")
	}
	down := Dict{}
	for _, k := range []Name{"MediaBox", "Resources"} {
		if down[k] = inherited[k]; node[k] != nil {
			down[k] = node[k]
		}
	}
	if node["Type"] == Name("Pages") {
		kids, _ := f.resolve(node["Kids"]).([]any)
		if count, _ := node["Count"].(float64); int(count) != len(kids) {
			return fmt.Errorf("/Count says %v of %d pages", node["Count"], len(kids))
		}
		for _, k := range kids {
			if err := f.walk(k, down, out); err != nil {
				return err
			}
		}
		return nil
	}
	p, err := f.page(node, down)
	if err != nil {
		return fmt.Errorf("page %d: %w", len(*out)+1, err)
	}
	*out = append(*out, p)
	return nil
}

// page reads one page's content.
func (f *PDF) page(node, inherited Dict) (Page, error) {
	var box [4]float64
	sides, _ := f.resolve(inherited["MediaBox"]).([]any)
	if len(sides) != 4 {
		return Page{}, fmt.Errorf("no MediaBox")
	}
	for i, v := range sides {
		n, ok := v.(float64)
		if !ok {
			return Page{}, fmt.Errorf("the MediaBox holds %v", v)
		}
		box[i] = n * mmPerPoint
	}
	for _, k := range []Name{"CropBox", "UserUnit", "Rotate"} {
		if node[k] != nil {
			return Page{}, fmt.Errorf("/%s changes the size or the place of the print", k)
		}
	}
	content, ok := node["Contents"].(Ref)
	if !ok {
		return Page{}, fmt.Errorf("no content")
	}
	src, err := f.stream(content.Number)
	if err != nil {
		return Page{}, err
	}
	page := Page{W: box[2] - box[0], H: box[3] - box[1]}
	return page, f.draw(&page, src, inherited["Resources"], Point{box[0], box[1]})
}
