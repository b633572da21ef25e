// Package outfits draws what a boat is fitted out with, a sail, beams to a second
// hull, a rowing frame: as full-size patterns and as parts for the cutter.
package outfits

import (
	"cmp"
	"fmt"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/clip"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// The heights of lettering, mm, and the way from line to line.
const (
	small    = lettering.MinHeight
	head     = 3.2
	row      = 4.2
	engraved = 5.0
)

// Board is one flat piece: the same lines make its pattern and its part.
type Board struct {
	Name    string // key of the pattern, unique in a set
	Title   string
	Count   int
	Thick   float64 // mm
	Outline curve.Path
	Holes   []curve.Path
	Marks   []layout.Stroke
	Words   []string        // written on the pattern beside the title, a line each
	At      geometry.Point  // where the title begins; further lines follow below
	Labels  []layout.Text   // words at their places
	Engrave string          // engraved on the part, short; the title when empty
	NameAt  geometry.Point  // the middle of it
	Also    []layout.Text   // engraved too
	Pattern []layout.Stroke // drawn on the pattern only
	Keep    []layout.Span   // stretches of x where a joint would be a nuisance
	Places  []Place         // of its holes and lines, for a sketch
	Rows    []string        // more that a sketch says
	Flat    bool            // a sketch with distances, and its Curves at full size, give all of it
	Curves  []Curved        // stretches that are drawn at full size when the rest is a sketch
	Corner  float64         // radius of a rectangle's corners, mm
	Zero    string          // what the sketch measures up from, for a board that is no rectangle
}

// Curved is a stretch of x of a board.
type Curved struct {
	Name     string
	From, To float64
}

// Place is a hole or a line across a board, for whoever sets it out by distances.
type Place struct {
	What   string
	At     geometry.Point // of a line only X counts
	Dia    float64        // of a round hole, mm; 0 for a line
	Slot   geometry.Point // how long and high a square hole is; none when zero
	Corner bool           // of the outline
	Ends   [2]float64     // of a line aslant: X at the board's lower and upper edge
}

func (b *Board) label(x, y float64, a layout.Align, words string) {
	b.Labels = append(b.Labels, layout.Text{At: geometry.Point{X: x, Y: y}, Height: small, Align: a, Words: lettering.Safe(words)})
}

func (b *Board) line(p layout.Pen, ax, ay, bx, by float64) {
	b.Marks = append(b.Marks, layout.Stroke{Pen: p, Path: curve.Polyline(geometry.Pt(ax, ay), geometry.Pt(bx, by))})
}

// marks draws lines across the board on both sides of its middle.
func (b *Board) marks(high, x float64, what string) {
	for _, side := range []float64{1, -1} {
		b.mark(side*x, high, what)
	}
}

// mark draws a line across the board.
func (b *Board) mark(x, high float64, what string) {
	b.line(layout.Mark, x, -high, x, high)
	b.Places = append(b.Places, Place{What: what, At: geometry.Pt(x, 0)})
}

// gunwales draws where the edges of the finished gunwales cross a board that lies over
// them, its middle at a station: x across the boat, y forward.
func (b *Board) gunwales(boat aboard.Boat, station, high float64) {
	inner := func(x float64) float64 { in, _ := boat.GunwaleTop(x); return in.Y }
	outer, name := func(x float64) float64 { return boat.Rail(x).Y }, gunwaleOut
	if boat.Frame.Design.Outside.Outwale > 0 {
		name = "outwale's outer edge"
	}
	for _, side := range []float64{1, -1} {
		b.aslant(side, station, high, inner, gunwaleIn)
		b.aslant(side, station, high, outer, name)
	}
}

// aslant draws a line over a board whose place across the boat changes along it.
func (b *Board) aslant(side, station, high float64, at func(float64) float64, what string) {
	low, up := side*at(station-high), side*at(station+high)
	b.line(layout.Mark, low, -high, up, high)
	b.Places = append(b.Places, Place{What: what, At: geometry.Pt(side*at(station), 0), Ends: [2]float64{low, up}})
}

// clipHoles bores for the bolts of clips on both sides of a board with its middle at a station.
func (b *Board) clipHoles(station float64, clips ...clip.Clip) {
	for _, side := range []float64{1, -1} {
		for _, c := range clips {
			b.hole(side*c.Hole.Y, c.Hole.X-station, bolt, clipBolt)
		}
	}
}

// hole adds a round hole with a cross at its middle on the pattern.
func (b *Board) hole(x, y, diameter float64, what string) {
	b.Places = append(b.Places, Place{What: what, At: geometry.Pt(x, y), Dia: diameter})
	b.Holes = append(b.Holes, curve.Circle(geometry.Pt(x, y), diameter/2))
	b.Keep = append(b.Keep, kept(x-diameter/2, x+diameter/2))
	r := diameter/2 + 3
	for _, l := range [][4]float64{{x - r, y, x + r, y}, {x, y - r, x, y + r}} {
		b.Pattern = append(b.Pattern, layout.Stroke{Pen: layout.Center, Path: curve.Polyline(geometry.Pt(l[0], l[1]), geometry.Pt(l[2], l[3]))})
	}
}

// kept is a stretch that a joint should leave alone, its crosses and its code with it.
func kept(from, to float64) layout.Span {
	const cross = 11.0 // mm beside a joint
	return layout.Span{From: from - cross, To: to + cross}
}

// Drawing returns the pattern.
func (b Board) Drawing(units measure.System) layout.Drawing {
	d := layout.Drawing{Name: b.Name, Title: b.Title, Make: fmt.Sprintf("make %d, %s thick", b.Count, units.Fine(b.Thick)), Keep: b.Keep}
	d.Line(layout.Cut, b.Outline)
	for _, h := range b.Holes {
		d.Line(layout.Cut, h)
	}
	d.Strokes = append(append(d.Strokes, b.Marks...), b.Pattern...)
	d.Write(b.At.X, b.At.Y, head, layout.Left, b.Title)
	d.Write(b.At.X, b.At.Y-row, small, layout.Left, d.Make)
	for i, w := range b.Words {
		d.Write(b.At.X, b.At.Y-row*float64(i+2), small, layout.Left, w)
	}
	d.Texts = append(d.Texts, b.Labels...)
	keepWords(&d)
	return d
}

// keepWords keeps joints off the words of a pattern, where there is another place.
func keepWords(d *layout.Drawing) {
	for _, t := range d.Texts {
		box := t.Bounds()
		d.Keep = append(d.Keep, kept(box.Min.X, box.Max.X))
	}
}

// Parts returns the piece for the cutter, as often as it is needed.
func (b Board) Parts() []layout.Part {
	p := layout.Part{Name: b.Title, Cut: append(append([]curve.Path(nil), b.Holes...), b.Outline)}
	for _, m := range b.Marks {
		p.Marks = append(p.Marks, m.Path)
	}
	p.Engrave(b.NameAt, engraved, cmp.Or(b.Engrave, b.Title), b.Outline.Bounds().W()*0.8)
	p.Letters = append(p.Letters, b.Also...)
	return slices.Repeat([]layout.Part{p}, b.Count)
}

// Drawings returns the patterns of all boards: at full size, or where distances give all
// of a board a sketch with its curves.
func Drawings(boards []Board, units measure.System, full bool) []layout.Drawing {
	var out []layout.Drawing
	for _, b := range boards {
		if full || !b.Flat {
			out = append(out, b.Drawing(units))
			continue
		}
		out = append(append(out, b.Sketch(units)), b.CurveDrawings(units)...)
	}
	return out
}

// Sail returns everything that is drawn of a sail: full size throughout, or sketches,
// distances, and at full size only what is curved or joined.
func Sail(f *sail.Fit, units measure.System, full bool) []layout.Drawing {
	out := Drawings(SailBoards(f, units), units, full)
	if full {
		out = append(out, PanelDrawings(f, units)...)
	} else {
		out = append(out, TapedPanels(f, units)...)
	}
	return append(out, sailNotes(f)...)
}

// Pair returns everything that is drawn of two hulls, as Sail does.
func Pair(c *pair.Craft, units measure.System, full bool) []layout.Drawing {
	saddles := Drawings(PairBoards(c, units), units, full)
	bars := append(Drawings(underBars(c, units), units, full), saddles...)
	if full {
		return append(BeamDrawings(c, units), bars...)
	}
	return append(Drawings(beamBoards(c, units), units, false), bars...)
}

// Row returns everything that is drawn of a rowing outfit, as Sail does.
func Row(f *rowing.Fit, units measure.System, full bool) []layout.Drawing {
	return Drawings(RowingBoards(f, units), units, full)
}

// Parts returns the pieces of all boards.
func Parts(boards []Board) []layout.Part {
	var out []layout.Part
	for _, b := range boards {
		out = append(out, b.Parts()...)
	}
	return out
}
