package json

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/marks"
	"ribwright/layout"
)

// NumbersReport is every number that the patterns show, and where each piece of them
// lies on the sheets.
type NumbersReport struct {
	Design      Header       `json:"design"`
	Hull        hullPart     `json:"hull"`
	Gunwale     gunwalePart  `json:"gunwale"`
	Ribs        []ribPart    `json:"ribs"`
	Stems       []stemPart   `json:"stems"`
	Keel        battenPart   `json:"keel"`
	Stringers   []battenPart `json:"stringers"`
	Thwarts     []thwartPart `json:"thwarts"`
	Breasthooks []hookPart   `json:"breasthooks"`
	Skin        skinPart     `json:"skin"`
	Pages       []pagePart   `json:"pages"`
}

// Numbers gathers the numbers of a boat and its sheets. What is a mark on wood comes
// from the list of marks of the same frame; lines and outlines come from the frame.
//
// Errors: a list that lacks a mark of the frame, by its name.
func Numbers(f *frame.Frame, list []marks.Mark, doc layout.Document) (*NumbersReport, error) {
	head, err := HeaderOf(f.Design)
	if err != nil {
		return nil, err
	}
	l := &lookup{in: marks.Index(list)}
	out := &NumbersReport{
		Design: head, Hull: hullOf(l), Gunwale: gunwaleOf(l, f),
		Stems: []stemPart{stemOf(l, f.Bow), stemOf(l, f.Stern)},
		Keel:  battenOf(l, f, "keel", 0, 0), Skin: skinOf(l), Pages: pagesOf(doc),
	}
	for _, r := range f.Ribs {
		out.Ribs = append(out.Ribs, ribOf(l, f, r))
	}
	for _, s := range f.Stringers {
		out.Stringers = append(out.Stringers, battenOf(l, f, fmt.Sprintf("stringer %d", s.Number), s.Number, s.Share))
	}
	for i, t := range f.Thwarts {
		out.Thwarts = append(out.Thwarts, thwartOf(l, i, t))
	}
	for _, b := range []frame.Breasthook{f.BowHook, f.SternHook} {
		out.Breasthooks = append(out.Breasthooks, hookOf(l, b))
	}
	return out, l.missing
}

// lookup finds the marks of one part after another.
type lookup struct {
	in      map[marks.Name]marks.Mark
	part    string
	missing error // the first mark that was not found
}

// of returns the part's only mark of a quantity.
func (l *lookup) of(quantity string) fixed { return l.nth(quantity, 0) }

// both returns the marks at the after and the forward end.
func (l *lookup) both(quantity string) [2]fixed {
	return [2]fixed{l.of("aft " + quantity), l.of("fore " + quantity)}
}

// nth returns the mark with the number n of several, from 1.
func (l *lookup) nth(quantity string, n int) fixed {
	v, ok := l.find(quantity, n)
	if !ok && l.missing == nil {
		l.missing = fmt.Errorf("the list of marks has no %s of %s", quantity, l.part)
	}
	return v
}

// each returns n marks of a quantity.
func (l *lookup) each(quantity string, n int) []fixed {
	out := make([]fixed, n)
	for i := range out {
		out[i] = l.nth(quantity, i+1)
	}
	return out
}

// maybe returns a mark that not every boat has: null without it.
func (l *lookup) maybe(quantity string, n int) fixed {
	v, _ := l.find(quantity, n)
	return v
}

func (l *lookup) find(quantity string, n int) (fixed, bool) {
	m, ok := l.in[marks.Name{Part: l.part, Quantity: quantity, Number: n}]
	switch {
	case !ok:
		return fixed(none), false
	case m.Unit == marks.Radian:
		return deg(m.Value), true
	}
	return fixed(m.Value), true
}

// outline flattens a closed path to points within 0.01 mm of it; the last point
// does not repeat the first.
func outline(p curve.Path) [][2]fixed {
	pts := p.Flatten(0.01)
	out := make([][2]fixed, 0, len(pts))
	for _, q := range pts[:len(pts)-1] {
		out = append(out, [2]fixed{fixed(q.X), fixed(q.Y)})
	}
	return out
}

// lineStep is the distance between points of a line in space, mm: chords of
// this length fall short of a gunwale's bend by less than 0.0001 mm each.
const lineStep = 10.0

// line samples a track from its after to its forward end, at the given places
// too. Every place asked for is a point of the result.
func line(t *curve.Track, at []float64) [][3]fixed {
	a, b := t.Ends()
	var out [][3]fixed
	add := func(x float64) {
		p := t.Point(x)
		out = append(out, [3]fixed{fixed(p.X), fixed(p.Y), fixed(p.Z)})
	}
	add(a)
	from := a
	for _, x := range append(append([]float64(nil), at...), b) {
		n := max(1, int(math.Ceil((x-from)/lineStep)))
		for i := 1; i <= n; i++ {
			add(from + (x-from)*float64(i)/float64(n))
		}
		from = x
	}
	return out
}
