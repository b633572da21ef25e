// Package layout holds the nouns of everything that is put on paper or on a
// cutter: pens, strokes, lettering, drawings, sheets and plates. Lengths are
// millimeters, x runs right, y up, angles counter-clockwise in radians. It
// knows no file format.
package layout

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout/lettering"
)

// Pen is the meaning of a line; each meaning has one weight and one dash, so
// that a builder can tell lines apart without colour.
type Pen int

// The pens, from the boldest down.
const (
	Cut    Pen = iota // cut to the middle of this line
	Mark              // put this on the wood
	Long              // the same, broken to be told from its neighbors
	Center            // a middle line, to lay on a middle line
	Guide             // helps to place or to read; not for the wood
	Tick              // tape ticks, crosses, scale bars
)

// Pens returns every pen, for tables and tests.
func Pens() []Pen { return []Pen{Cut, Mark, Long, Center, Guide, Tick} }

// String is the pen's name.
func (p Pen) String() string {
	return [...]string{"cut", "mark", "long", "center", "guide", "tick"}[p]
}

// Width returns the weight of the line in mm.
func (p Pen) Width() float64 { return [...]float64{0.5, 0.25, 0.25, 0.13, 0.13, 0.1}[p] }

// Dash returns the lengths of dash and gap in turn, mm; nil for a solid line.
func (p Pen) Dash() []float64 {
	switch p {
	case Long:
		return []float64{15, 3}
	case Center:
		return []float64{10, 2, 2, 2}
	case Guide:
		return []float64{4, 2}
	}
	return nil
}

// Stroke is one line of a drawing.
type Stroke struct {
	Pen  Pen
	Path curve.Path
}

// Align says which point of a text its place fixes.
type Align int

// The alignments along the line of writing; the height is always the baseline.
const (
	Left Align = iota
	Middle
	Right
)

// Text is one line of lettering.
type Text struct {
	At     geometry.Point
	Height float64 // of capitals, mm; lettering.MinHeight or more
	Angle  float64 // of the line of writing
	Align  Align
	Words  string // already safe: see lettering.Safe
}

// Start returns where the first letter begins, whatever the alignment.
func (t Text) Start() geometry.Point {
	back := lettering.Width(t.Words, t.Height) * [...]float64{0, 0.5, 1}[t.Align]
	return t.At.Sub(geometry.Polar(back, t.Angle))
}

// Bounds returns the box around the lettering, tails of letters included.
func (t Text) Bounds() geometry.Box {
	along := geometry.Polar(lettering.Width(t.Words, t.Height), t.Angle)
	up := geometry.Polar(t.Height, t.Angle+math.Pi/2)
	low, high := t.Start().Sub(up.Scale(0.3)), t.Start().Add(up)
	return geometry.Around(low, low.Add(along), high, high.Add(along))
}

// Span is a stretch of x, From < To.
type Span struct{ From, To float64 }

// Drawing is one pattern at full size, in its own coordinates.
type Drawing struct {
	Name    string // short key, as in "mortises"; unique in a set
	Title   string // what the builder calls it
	Make    string // "make 2", may be empty
	Family  string // what the drawing is listed under on the first sheet; its Title when empty
	Turns   bool   // half of the whole: turned by half a turn about its zero it is the other half
	Strokes []Stroke
	Texts   []Text
	Again   []Text // words that a tile is dressed with: the first of like ones that finds room where none like it stands
	Whole   []Span // stretches of x that a joint must not cut
	Keep    []Span // stretches of x in which a joint would be a nuisance
	KeepUp  []Span // the same of y
	Stacked bool   // sticks lie over one another, a tape under the lowest: how high a place lies measures nothing
}

// Said is the drawing with its words said in another way, as in feet and inches. The words
// given back are made safe.
func (d Drawing) Said(say func(string) string) Drawing {
	d.Texts = slices.Clone(d.Texts)
	for i, t := range d.Texts {
		if words := say(t.Words); words != t.Words {
			d.Texts[i].Words = lettering.Safe(words)
		}
	}
	return d
}

// Line adds a path drawn with the pen.
func (d *Drawing) Line(p Pen, path curve.Path) {
	if len(path) > 0 {
		d.Strokes = append(d.Strokes, Stroke{p, path})
	}
}

// Straight adds a straight line from a to b.
func (d *Drawing) Straight(p Pen, ax, ay, bx, by float64) {
	d.Line(p, curve.Polyline(geometry.Point{X: ax, Y: ay}, geometry.Point{X: bx, Y: by}))
}

// Write adds a line of lettering; any text is made safe first.
func (d *Drawing) Write(x, y, height float64, a Align, words string) {
	d.WriteAt(geometry.Point{X: x, Y: y}, height, 0, a, words)
}

// WriteAt adds a line of lettering at an angle.
func (d *Drawing) WriteAt(at geometry.Point, height, angle float64, a Align, words string) {
	if words = lettering.Safe(words); words != "" {
		d.Texts = append(d.Texts, Text{at, height, angle, a, words})
	}
}

// Bounds returns the box around every line and letter.
func (d *Drawing) Bounds() geometry.Box {
	b := geometry.EmptyBox()
	for _, s := range d.Strokes {
		b = b.Union(s.Path.Bounds())
	}
	for _, t := range d.Texts {
		b = b.Union(t.Bounds())
	}
	return b
}
