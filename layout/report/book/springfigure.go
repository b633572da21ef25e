package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

// How the boat stands while the edge-set is sprung, mm: common practice, no source.
const (
	keelUp  = 400.0 // the keel's underside amidships over the floor, so that hands come under it
	blockOn = 60.0  // a keel block along the boat
	stemOff = 150.0 // from a gunwale's end to its prop
)

// keelTall is how high the keel's upper face stands over the hull's line, which is the skin's
// outside, mm.
func (w *writer) keelTall() float64 {
	return float64(w.Frame.Design.Skin.Thickness() + w.Frame.Design.Keel.Depth)
}

// keelBlocks are where blocks carry the keel: in the middles of bays, out of the ribs' way.
func (w *writer) keelBlocks() []float64 {
	r := w.Frame.Ribs
	n := len(r)
	if n < 4 {
		toe := w.Frame.Hull.Bow.Toe.X
		return []float64{-0.7 * toe, 0, 0.7 * toe}
	}
	bay := func(i int) float64 { return (r[i-1].Station + r[i].Station) / 2 }
	return []float64{bay(1), bay(n / 2), bay(n - 1)}
}

// propAt is where a prop stands under the gunwales' ends, forward (1) or aft (-1), and propTall
// how high it is sawn, mm: wedges make up the rest.
func (w *writer) propAt(side float64) float64 {
	aft, fore := w.Frame.Gunwale.Line.Ends()
	return side * (math.Min(fore, -aft) - stemOff)
}

func (w *writer) propTall(side float64) float64 {
	const board, wedges = 20.0, 10.0
	return 10 * math.Floor((keelUp+w.Frame.Gunwale.At(w.propAt(side), 0, 0).Z-board-wedges)/10)
}

// blockBays names the bays in which blocks carry the keel.
func (w *writer) blockBays() string {
	r := w.Frame.Ribs
	if len(r) < 4 {
		return "clear of the ribs' places"
	}
	var out []string
	for _, x := range w.keelBlocks() {
		i := slices.IndexFunc(r, func(r frame.Rib) bool { return r.Station > x })
		out = append(out, r[i-1].Name+" and "+r[i].Name)
	}
	return "clear of the ribs' places: between " + wording.Joined(out, ", ", strings.Clone)
}

// weight letters a pull in kilograms, or in pounds: no finer than a hand feels it.
func (w *writer) weight(newtons float64) string {
	kg := math.Max(1, math.Round(math.Abs(newtons)/measure.Gravity))
	return report.Either(w.Letters.Units, fmt.Sprintf("%.0f kg", kg), fmt.Sprintf("%.0f lb (%.0f kg)", math.Ceil(kg/0.4536), kg))
}

// springingSide draws the boat from the side while the set is sprung in.
func (w *writer) springingSide() report.Figure {
	f, g := w.Frame, &w.Frame.Gunwale
	long := f.Hull.Length + 500
	per := scaleFor(long, keelUp+f.Bow.Outline.Bounds().Max.Y, 160, 60)
	s := newSketch("springing-side", "Springing the edge-set, from the side", per)
	s.line(layout.Tick, -long/2, 0, long/2, 0)
	up := func(p geometry.Point) geometry.Point { return geometry.Pt(p.X, p.Y+keelUp) }
	deep := w.keelTall()
	for _, off := range []float64{0, deep} {
		s.path(layout.Cut, curve.Polyline(along(-f.Hull.Stern.Toe.X, f.Hull.Bow.Toe.X, 60, func(x float64) geometry.Point {
			z, _ := f.Hull.KeelZ(x)
			return up(geometry.Pt(x, z+off))
		})...))
	}
	aft, fore := g.Line.Ends()
	for _, tall := range []float64{0, g.Height} {
		s.path(layout.Cut, curve.Polyline(along(aft, fore, 60, func(x float64) geometry.Point {
			return up(geometry.Pt(x, g.At(x, 0, tall).Z))
		})...))
	}
	s.path(layout.Guide, curve.Polyline(along(aft, fore, 60, func(x float64) geometry.Point {
		return up(geometry.Pt(x, g.At(x, 0, 0).Z+w.standsHigh(x)))
	})...))
	for _, st := range []*frame.Stem{&f.Stern, &f.Bow} {
		side := 1.0
		if st == &f.Stern {
			side = -1
		}
		s.path(layout.Cut, st.Outline.Map(geometry.Stretch(side, 1)).Map(geometry.Shift(0, keelUp)))
		b := st.Outline.Bounds()
		s.box(layout.Mark, side*(b.Max.X+10), 0, side*(b.Max.X+50), keelUp+b.Max.Y+60)
		x := w.propAt(side)
		s.line(layout.Mark, x, 0, x, up(geometry.Pt(x, g.At(x, 0, 0).Z)).Y)
	}
	for _, x := range w.keelBlocks() {
		z, _ := f.Hull.KeelZ(x)
		s.box(layout.Mark, x-blockOn/2, 0, x+blockOn/2, keelUp+z)
	}
	for _, h := range w.trestlesAt() {
		top, own := w.looseTop(h), w.barTop(h)
		s.box(layout.Mark, h.At-w.barWide()/2, top-loose, h.At+w.barWide()/2, top)
		s.box(layout.Mark, h.At-w.barWide()/2, own-barTall, h.At+w.barWide()/2, own)
		for _, side := range []float64{-1, 1} {
			s.line(layout.Mark, h.At+side*w.barWide()/2, own-barTall, h.At+side*120, 0)
			s.line(layout.Guide, h.At+side*(w.barWide()/2+0.8*per), own-barTall, h.At+side*(w.barWide()/2+0.8*per), top+g.Height)
		}
	}
	s.up(0, keelUp, w.keelBlocks()[1]/per-5, w.Length(keelUp)) // where there is most room
	b := f.Bow.Outline.Bounds()
	s.note(b.Max.X+50, keelUp/2, 1.5, 0, layout.Left, "plank")
	s.note(fore-stemOff, 0, 0, -4.5, layout.Middle, "prop, "+w.weight(w.Bend.EdgeSet.Holds[3].Down))
	s.note(w.trestlesAt()[1].At, keelUp/2, 0, 0, layout.Middle, "trestle, "+w.weight(w.trestlesAt()[1].Down))
	s.note(w.trestlesAt()[0].At, keelUp/2, 0, 0, layout.Middle, "trestle, "+w.weight(w.trestlesAt()[0].Down))
	s.note(w.keelBlocks()[2], keelUp/2, -3, 0, layout.Right, "block")
	return report.Figure{Drawing: s.settled(),
		Caption: "The boat while the edge-set is sprung, " + ratio(per) + ", bow to the right. Dashed: the gunwales before, and the ties down to the trestles. Weights are what each place holds, of both gunwales together.",
		About:   "Keel on blocks, stems clamped to planks, the gunwales on two trestles and propped at both ends."}
}

// standsHigh is how far the gunwales stand over their line at a station while their ends lie on
// the shelves and the set is not sprung, mm.
func (w *writer) standsHigh(x float64) float64 {
	set := w.Frame.Hull.Sheer.BowSet
	if x < 0 {
		set = w.Frame.Hull.Sheer.SternSet
	}
	if set.Rise == 0 {
		return 0
	}
	over := math.Max(0, math.Abs(x)-set.From)
	return set.Rise - over*over/(2*set.Radius())
}

// springingEnd draws the forward trestle from ahead, port to the right.
func (w *writer) springingEnd() report.Figure {
	f, g := w.Frame, &w.Frame.Gunwale
	h := w.trestlesAt()[1]
	keel, _ := f.Hull.KeelZ(h.At)
	deep, half := w.keelTall(), float64(f.Design.Keel.Width)/2
	apart := w.legsApart()
	per := scaleFor(apart+300, keelUp+keel+w.barOver(h)+150, 150, 85)
	s := newSketch("springing-end", "A trestle", per)
	z := keelUp + keel
	s.box(layout.Cut, -half, z, half, z+deep)
	s.line(layout.Tick, -apart/2-120, 0, apart/2+120, 0)
	top, under := w.looseTop(h), w.barTop(h)
	bar, reach := w.barLong()/2, w.looseLong()/2
	s.box(layout.Mark, -reach, top-loose, reach, top)
	s.box(layout.Mark, -bar, under-barTall, bar, under)
	for _, side := range []float64{-1, 1} {
		leg := side * (apart + legWide) / 2
		s.box(layout.Mark, leg-legWide/2, 0, leg+legWide/2, under-barTall)
		s.box(layout.Mark, leg-shims, under, leg+shims, top-loose)
		own := func(out, up float64) geometry.Point {
			p := g.At(h.At, out, up)
			return geometry.Pt(side*p.Y, p.Z+h.Over+keelUp)
		}
		s.path(layout.Cut, curve.Polygon(own(-g.Width/2, 0), own(g.Width/2, 0), own(g.Width/2, g.Height), own(-g.Width/2, g.Height)))
		tie := func(out float64) { // down outside and inside, round gunwale and bar
			a := own(out, g.Height)
			s.line(layout.Guide, a.X, a.Y+2, a.X, under-barTall-4)
		}
		tie(-g.Width/2 - 6)
		tie(g.Width/2 + 6)
		r := f.Nearest(h.At)
		s.path(layout.Guide, r.Outer.Map(geometry.Stretch(side, 1)).Map(geometry.Shift(0, keelUp)))
	}
	s.line(layout.Center, 0, z-20, 0, top+g.Height+60)
	s.up(z+deep, top, half/per+8, w.Length(w.barOver(h))) // clear of the string and of the keel
	s.across(-apart/2, apart/2, 40/per, w.Length(apart)+" or more")
	s.up(0, under, -reach/per-6, w.Letters.Units.Whole(under))
	s.across(-bar, bar, -6, w.Length(w.barLong())+" or more")
	s.note(reach, top-loose/2, 1.5, -1, layout.Left, "loose bar, on shims")
	s.note(bar, under-barTall/2, 1.5, -1, layout.Left, "trestle's bar")
	s.note(bar, (under-barTall)*0.7, 1.5, -1, layout.Left, "legs that come off")
	s.note(-half, z, -2, -1, layout.Right, "keel")
	s.note(0, top+g.Height+60, 1, 0, layout.Left, "under the string")
	return report.Figure{Drawing: s.settled(),
		Caption: "The forward trestle, " + ratio(per) + ", from ahead. Dashed: a tie round each gunwale and the trestle's bar, and the rib that comes beside it. The legs of one side come off, so that the bar can be drawn out.",
		About:   "A trestle across the keel with a loose bar on it, both gunwales tied down, and its legs clear of the ribs."}
}
