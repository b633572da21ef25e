package frame

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Breasthook is the plate between the gunwale ends, flush with their tops, laid
// flat: x runs along its slope from the gunwale ends (0) inward (negative), y
// across the boat, mm. The outline is its upper face.
type Breasthook struct {
	End       string     // "bow" or "stern"
	Outline   curve.Path // closed, counter-clockwise
	Thickness float64
	Bevel     float64 // lean of its sides outward at the top, radians
	Slope     float64 // of the plate, rise towards the end over run
	Painter   float64 // from the gunwale ends inward, along the plate, to the middle of the painter's hole; 0 for none
}

// PainterHole is the hole for a painter, mm. Common practice, no source.
const PainterHole = 10.0

// newBreasthook fits the plate at the bow (side 1) or the stern (side -1).
func newBreasthook(name string, d *design.Design, h *hull.Hull, g Gunwale, side float64) (Breasthook, error) {
	b := d.Breasthook
	aft, fore := h.Gunwale.Ends()
	end := fore
	if side < 0 {
		end = aft
	}
	length := float64(b.Length)
	edge := func(back float64) geometry.Point3 {
		return g.EdgeAt(end-side*back, -g.Width/2, g.Height)
	}
	tip, root := edge(0), edge(length)
	rise := (tip.Z - root.Z) / length
	stretch := math.Hypot(1, rise)
	out := Breasthook{End: name, Thickness: float64(b.Thickness), Bevel: hookBevel(g.Tilt, tip, root), Slope: rise}
	if tip.Y <= 0 || root.Y <= tip.Y {
		return out, fmt.Errorf("%s: the gunwales' inner edges cross at their ends; give the stem %.1f mm more siding (%s.siding), or the gunwales less width", name, math.Ceil(10*(2*math.Max(0, -tip.Y)+0.5))/10, name)
	}
	const pieces = 16 // chords under 0.01 mm off for any gunwale that can be bent
	pts := make([]geometry.Point, pieces+1)
	for i := range pts {
		back := length * (1 - float64(i)/pieces)
		pts[i] = geometry.Point{X: -back * stretch, Y: -edge(back).Y}
	}
	right, nose := curve.Polyline(pts...), pts[pieces]
	left := right.Reverse().Map(geometry.Stretch(1, -1))
	sides := slices.Concat(right, curve.Path{curve.Line{A: nose, B: geometry.Point{X: nose.X, Y: -nose.Y}}}, left)
	if d.Outside.Painters > 0 {
		out.Painter = float64(b.Length-b.Hollow) / 2 * stretch
	}
	var err error
	out.Outline, err = closeHollow(name, sides, float64(b.Hollow))
	return out, err
}

// Hole is the painter's hole as the plate's pattern has it, nil for none.
func (b *Breasthook) Hole() curve.Path {
	if b.Painter == 0 {
		return nil
	}
	return curve.Circle(geometry.Point{X: -b.Painter}, PainterHole/2)
}

// hookBevel returns how far a gunwale's inner face leans outward from square to a plate
// between the gunwales' inner upper edges, radians. The edge runs from root to tip and
// lies in both: the face holds it and the stock's tall way, which leans by the tilt; the
// plate holds it and the line across the boat. The bevel is what their dihedral is off
// a right angle: more than the tilt where the plate slopes up to the tip.
func hookBevel(tilt float64, tip, root geometry.Point3) float64 {
	x, y, z := math.Abs(tip.X-root.X), tip.Y-root.Y, tip.Z-root.Z
	sin, cos := math.Sincos(tilt)
	// Outward square to the face: tall way times edge. Upward square to the plate: (-z, 0, x).
	fx, fy, fz := z*sin-y*cos, x*cos, -x*sin
	down := (z*fx - x*fz) / math.Hypot(x, z)
	return math.Asin(down / math.Sqrt(fx*fx+fy*fy+fz*fz))
}

// closeHollow ends an outline's sides by the inner edge, hollowed towards the nose.
//
// Errors: a hollow so deep for the plate's width and length that it runs out through the
// sides.
func closeHollow(end string, sides curve.Path, depth float64) (curve.Path, error) {
	out := hollowed(sides, depth)
	if at, crosses := out.Crossing(crossingTol); crosses {
		return nil, fmt.Errorf("%s breasthook: its hollow of %.0f mm runs out through its sides %.0f mm from the gunwale ends, so its outline crosses itself; accepted here: up to %.0f mm (breasthook.hollow), or a longer plate (breasthook.length)", end, depth, -at.X, deepest(sides, depth))
	}
	return out, nil
}

// crossingTol is how finely a hollow is looked at, mm: it leaves its corner at an angle, so
// that coarse chords would hide a narrow crossing.
const crossingTol = 0.001

// deepest is the deepest hollow in whole millimeters that stays between the sides.
func deepest(sides curve.Path, depth float64) float64 {
	for d := math.Ceil(depth) - 1; d > 0; d-- {
		if _, crosses := hollowed(sides, d).Crossing(crossingTol); !crosses {
			return d
		}
	}
	return 0
}

// hollowed is the outline with its inner edge.
func hollowed(sides curve.Path, depth float64) curve.Path {
	from, to := sides[len(sides)-1].End(), sides[0].Start()
	if depth == 0 {
		return append(slices.Clone(sides), curve.Line{A: from, B: to})
	}
	// hollowArc dips below a level chord; turned a quarter it dips forward.
	arc := hollowArc(geometry.Point{X: -from.Y}, geometry.Point{X: from.Y}, depth)
	turned := curve.Path{arc}.Map(geometry.Turn(math.Pi / 2).Then(geometry.Shift(from.X, 0)))
	return slices.Concat(sides, turned.Reverse())
}
