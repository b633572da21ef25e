package job

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"ribwright/render/rendertest"
)

// checkBoat holds the sheets and the cutter's files of one boat to its numbers, as far as they
// are made: whole sets and single patterns alike.
func (s truth) checkBoat(t *testing.T) {
	views := s.numbers.Views()
	s.checkGunwaleLine(t)
	s.checkBars(t)
	s.checkMargins(t)
	s.checkCrosses(t)
	s.checkCover(t)
	if len(views["mortises"]) > 0 {
		s.checkMortises(t)
		s.checkGunwaleStrip(t)
		s.checkBolts(t)
	}
	if len(views["ribs"]) > 0 {
		s.checkRibStick(t)
	}
	s.checkShapes(t)
	s.checkBattens(t)
	s.checkHeads(t)
	s.checkRibLines(t)
	if s.plate != nil && s.dxf != nil {
		s.checkCutter(t)
		s.checkFaces(t)
	}
}

// cutLines are the outlines to cut of a pattern, from all its tiles, in its own coordinates.
func (s truth) cutLines(views []rendertest.View) (out []rendertest.Outline) {
	for _, v := range views {
		for _, k := range v.Strokes(s.pages[v.Page-1]) {
			if penOf(k) == "cut" {
				out = append(out, k.Outlines...)
			}
		}
	}
	return out
}

// checkShapes: the flat parts are drawn where their numbers have them, on the right side, no
// line of an outline off it.
func (s truth) checkShapes(t *testing.T) {
	for pattern, views := range s.numbers.Views() {
		parts := s.partsOf(pattern)
		if len(parts) == 0 {
			continue
		}
		want := parts[0].Outline()
		edge := want.Polygon()
		round := rendertest.Nowhere()
		for _, o := range s.cutLines(views) {
			small := o.Bounds()
			round = rendertest.Around(rendertest.Point{X: math.Min(round.X0, small.X0), Y: math.Min(round.Y0, small.Y0)}, rendertest.Point{X: math.Max(round.X1, small.X1), Y: math.Max(round.Y1, small.Y1)})
			for _, p := range o.Points(8) {
				if !edge.Holds(p) && edge.From(p) > 0.1 {
					t.Errorf("%s: a line to cut runs at %.2f, %.2f mm outside the part", pattern, p, edge.From(p))
					break
				}
			}
		}
		has := want.Bounds()
		if isThwart(pattern) {
			has.X0 = math.Max(has.X0, round.X0) // half of it is drawn
		}
		if round.Off(has) > 0.1 {
			t.Errorf("%s is drawn over %.2f, the part fills %.2f", pattern, round, has)
		}
	}
}

// partsOf are the flat parts that a pattern is of.
func (s truth) partsOf(pattern string) []rendertest.Flat {
	n := s.numbers
	switch pattern {
	case "stems", "stem-bow":
		return n.Stems
	case "stem-stern":
		return n.Stems[1:]
	case "breasthooks", "breasthook-bow":
		return n.Breasthooks
	case "breasthook-stern":
		return n.Breasthooks[1:]
	}
	var i int
	if _, err := fmt.Sscanf(pattern, "thwart-%d", &i); err == nil && i >= 1 && i <= len(n.Thwarts) {
		return n.Thwarts[i-1:]
	}
	return nil
}

// uprights are the places along a pattern of the straight lines across it.
func (s truth) uprights(views []rendertest.View) (out []float64) {
	for _, v := range views {
		for _, k := range v.Strokes(s.pages[v.Page-1]) {
			if o := k.Outlines[0]; len(o.Pieces) == 1 && o.Bounds().W() < 0.02 {
				out = append(out, o.Bounds().X0)
			}
		}
	}
	return out
}

// checkBattens: the story stick has a mark at each rib of the keel and of each stringer, on
// a half for both.
func (s truth) checkBattens(t *testing.T) {
	views := s.numbers.Views()["battens"]
	if len(views) == 0 {
		return
	}
	at := s.uprights(views)
	for i, b := range append(slices.Clone(s.numbers.Stringers), s.numbers.Keel) {
		for _, x := range append(slices.Clone(b.Marks), b.Ends[:]...) {
			if !slices.ContainsFunc(at, func(u float64) bool { return math.Abs(u-x) < 0.05 || math.Abs(u+x) < 0.05 }) {
				t.Errorf("the story stick has no mark at %.2f mm of batten %d", x, i+1)
			}
		}
	}
}

// checkHeads: the body plan shows each rib's head at its half-breadth, as high over the baseline
// as keel and depth make it.
func (s truth) checkHeads(t *testing.T) {
	views := s.numbers.Views()["body"]
	if len(views) == 0 {
		return
	}
	var at []rendertest.Point
	for _, v := range views {
		for _, k := range v.Strokes(s.pages[v.Page-1]) {
			if o := k.Outlines[0]; len(o.Pieces) == 1 && penOf(k) == "mark" {
				at = append(at, o.Pieces[0].At(0.5))
			}
		}
	}
	for _, r := range s.numbers.Ribs {
		head := rendertest.Point{X: r.HalfBreadth, Y: r.Keel + r.Depth}
		if !slices.ContainsFunc(at, func(p rendertest.Point) bool { return rendertest.Point{X: math.Abs(p.X), Y: p.Y}.To(head) < 0.05 }) {
			t.Errorf("the body plan has no head of rib %s at %.2f", r.Rib, head)
		}
	}
}

// checkBolts: the strip shows a hole in the middle of the gunwale for each bolt of a cross piece, on
// a half for both.
func (s truth) checkBolts(t *testing.T) {
	var at []float64
	for _, v := range s.numbers.Views()["mortises"] {
		for _, k := range v.Strokes(s.pages[v.Page-1]) {
			if b := k.Outlines[0].Bounds(); k.Outlines[0].Closed && !k.Outlines[0].Straight() && math.Abs(b.Y0+b.Y1) < 0.02 {
				at = append(at, (b.X0+b.X1)/2)
			}
		}
	}
	for i, f := range s.numbers.Thwarts {
		for _, x := range f.Bolts {
			if !slices.ContainsFunc(at, func(u float64) bool { return math.Abs(u-x) < 0.05 || s.alike() && math.Abs(u+x) < 0.05 }) {
				t.Errorf("the strip has no hole at %.2f mm for thwart %d", x, i+1)
			}
		}
	}
}

// runTogether is how far a rib's line on the body plan may lie off the rib, mm: where two run nearer
// than that to each other, or cross at a small angle, they are drawn as one.
const runTogether = 2.0

// checkRibLines: the body plan shows the outer face of each rib.
func (s truth) checkRibLines(t *testing.T) {
	var lines []rendertest.Piece
	for _, v := range s.numbers.Views()["body"] {
		for _, k := range v.Strokes(s.pages[v.Page-1]) {
			if o := k.Outlines[0]; !o.Closed && len(o.Pieces) > 1 {
				lines = append(lines, spreadOut(o)...)
			}
		}
	}
	if len(lines) == 0 {
		return
	}
	for _, r := range s.numbers.Ribs {
		side := math.Copysign(1, r.Station)
		if s.alike() {
			side = 1 // the other end is drawn with it
		}
		for share := 0.05; share < 1; share += 0.1 {
			p, heading := r.WalkTo(share * (r.Length - r.Correction) / 2)
			sin, cos := math.Sincos(heading)
			face := rendertest.Point{X: side * (p.X + r.Thickness/2*sin), Y: r.Keel + p.Y - r.Thickness/2*cos}
			off := math.Inf(1)
			for _, l := range lines {
				off = math.Min(off, math.Sqrt(toChord(face, l)))
			}
			if off > runTogether {
				t.Errorf("the body plan has no line of rib %s at %.2f, the nearest is %.2f mm off", r.Rib, face, off)
				break
			}
		}
	}
}

// checkFaces: each flat part of the numbers lies on the plate, as large as it is, and none with
// its other face up.
func (s truth) checkFaces(t *testing.T) {
	pieces := s.plate.Pieces()
	areas, across := make([]float64, len(pieces)), make([]float64, len(pieces))
	for i, o := range pieces {
		areas[i], across[i] = o.Area(64), o.Across()
	}
	for kind, set := range map[string][]rendertest.Flat{"stem": s.numbers.Stems, "breasthook": s.numbers.Breasthooks, "thwart": s.numbers.Thwarts} {
		for i, f := range set {
			want, found, right := f.Outline(), false, false
			area, far := want.Area(1), want.Across()
			for k, o := range pieces {
				if alike := math.Abs(areas[k]-area) <= 0.0005*area && math.Abs(across[k]-far) < 0.05; alike && !right {
					found, right = true, !rendertest.TurnedOver(want.Polygon(), o.Polygon())
				}
			}
			if !found || !right {
				t.Errorf("%s %d: on the plate %v, its right face up %v", kind, i+1, found, right)
			}
		}
	}
}
