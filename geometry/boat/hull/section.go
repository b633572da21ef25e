package hull

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Shape says how a section turns on its way from keel to gunwale; its
// half-breadth and depth come from the gunwale and keel lines. Radians and mm.
type Shape struct {
	BottomTurn   float64 // turn of the bottom arc
	BilgeRadius  float64 // at mid-thickness of the rib
	Flare        float64 // lean outward of the heading at the gunwale; negative is tumblehome
	TopsideCurve float64 // turn of the topside; 0 is straight
}

// Section is the half section at one station, at mid-thickness of the rib,
// from the keel point (0, KeelZ) out to the gunwale line.
type Section struct {
	Station     float64 // mm from midship, forward positive
	KeelZ       float64 // height of the keel point above the baseline, mm
	HalfBreadth float64 // of the gunwale line, mm
	Depth       float64 // of the keel point under the gunwale line, mm
	Shape       Shape   // as set for this place; a merged section has another bilge radius
	Merged      bool    // bottom and bilge are one arc
	Half        curve.Chain
}

// Solve makes the half section of the given half-breadth and depth (mm) with
// the given shape: a bottom arc turning from level through the bottom turn, a
// bilge arc, and a topside (straight, or an arc that turns by the topside
// curve) that arrives at the gunwale with the flare.
//
// How: each piece is a chord of its length l and turn t, l sinc(t/2) long and
// leaning t/2 from its start; only the lengths of bottom and topside are
// unknown, and two linear equations give them. Where the bottom arc would come
// out tighter than the bilge the two merge into one arc, whose radius and the
// topside's length solve the same equations. With lengths as unknowns a flat
// bottom and a straight topside are not special cases.
// Returns: a chain that ends on (half-breadth, depth) to rounding.
// Errors: a section that would need an arc of no radius or a topside of
// negative length, with the cure.
func Solve(halfBreadth, depth float64, s Shape) (Section, error) {
	s.BottomTurn, s.TopsideCurve = bent(s.BottomTurn), bent(s.TopsideCurve)
	out := Section{HalfBreadth: halfBreadth, Depth: depth, Shape: s}
	if !(halfBreadth > 0 && depth > 0) {
		return out, fmt.Errorf("half-breadth %.1f mm and depth %.1f mm leave no section", halfBreadth, depth)
	}
	want := geometry.Point{X: halfBreadth, Y: depth}
	shoulder := math.Pi/2 - s.Flare - s.TopsideCurve // heading where the bilge ends
	bilge := chord(s.BilgeRadius*(shoulder-s.BottomTurn), s.BottomTurn, shoulder-s.BottomTurn)
	bottom, top := twoLengths(chord(1, 0, s.BottomTurn), chord(1, shoulder, s.TopsideCurve), want.Sub(bilge))
	if bottom >= s.BilgeRadius*s.BottomTurn && bottom >= 0 {
		if top < -nothing {
			return out, fmt.Errorf("a bilge radius of %.0f mm needs more depth than %.0f mm; give a smaller bilge radius, less bottom turn or more flare here", s.BilgeRadius, depth)
		}
		out.Half = compact(span(bottom, s.BottomTurn), curve.Turned(s.BilgeRadius, shoulder-s.BottomTurn), span(top, s.TopsideCurve))
		return out, checkTopside(out)
	}
	arc, top := twoLengths(chord(1, 0, shoulder), chord(1, shoulder, s.TopsideCurve), want)
	switch {
	case arc <= 0:
		return out, tooNarrow(halfBreadth, depth, s)
	case top < -nothing:
		return out, fmt.Errorf("a bilge radius of %.0f mm takes the whole section and depth %.0f mm is too little for one arc to a half-breadth of %.0f mm with %.1f deg of flare; give a smaller bilge radius, or flare over %.1f deg here",
			s.BilgeRadius, depth, halfBreadth, degrees(s.Flare), 90-degrees(2*math.Atan2(depth, halfBreadth)))
	}
	out.Merged = true
	out.Half = compact(span(arc, shoulder), span(top, s.TopsideCurve))
	return out, checkTopside(out)
}

// bent takes a turn too slight to bend for none: in 400 mm it leaves the straight by
// 0.2 mm, and an arc of its 100 m radius has a center too far off to draw from.
func bent(turn float64) float64 {
	const slight = 0.004
	if turn < slight {
		return 0
	}
	return turn
}

// tooNarrow says that a section's side leans out farther than it is wide.
func tooNarrow(halfBreadth, depth float64, s Shape) error {
	most := degrees(math.Atan2(halfBreadth, depth))
	if s.TopsideCurve == 0 {
		return fmt.Errorf("half-breadth %.0f mm is too little for a depth of %.0f mm with %.1f deg of flare; accepted here: flare under %.1f deg, or a last rib farther from the stem",
			halfBreadth, depth, degrees(s.Flare), most)
	}
	return fmt.Errorf("half-breadth %.0f mm is too little for a depth of %.0f mm with %.1f deg of flare and %.1f deg of topside curve; accepted here: flare and half the topside curve together under %.1f deg, or a last rib farther from the stem",
		halfBreadth, depth, degrees(s.Flare), degrees(s.TopsideCurve), most)
}

// checkTopside refuses a curved topside tighter than the bilge under it: the
// section would then have its knuckle in the wrong place.
func checkTopside(s Section) error {
	if s.Shape.TopsideCurve == 0 || len(s.Half) < 2 {
		return nil
	}
	top, bilge := s.Half[len(s.Half)-1], s.Half[len(s.Half)-2]
	if top.Radius < bilge.Radius {
		return fmt.Errorf("the topside would turn on %.0f mm, tighter than the bilge's %.0f mm; give a smaller bilge radius or less topside curve here", top.Radius, bilge.Radius)
	}
	return nil
}

// chord is the step made by a piece of the given length and turn that starts
// at the given heading.
func chord(length, heading, turn float64) geometry.Point {
	return geometry.Polar(length*curve.Sinc(turn/2), heading+turn/2)
}

// twoLengths solves u*a + v*b = want for the lengths a and b.
func twoLengths(u, v, want geometry.Point) (a, b float64) {
	det := u.Cross(v)
	return want.Cross(v) / det, u.Cross(want) / det
}

func span(length, turn float64) curve.Bend {
	if turn == 0 {
		return curve.Straight(length)
	}
	return curve.Bend{Radius: length / turn, Sweep: turn, Length: length}
}

// nothing is the length, mm, below which a piece of a section is rounding and not
// a piece.
const nothing = 1e-9

func compact(bends ...curve.Bend) curve.Chain {
	return slices.DeleteFunc(bends, func(b curve.Bend) bool { return b.Length <= nothing })
}

func degrees(a float64) float64 { return a * 180 / math.Pi }

// shapes holds each parameter of the section as a smooth curve along the boat, in the
// order of Shape.
type shapes [4]*curve.Ease

func newShapes(all []design.Section) (shapes, error) {
	var x []float64
	var y [4][]float64
	for _, s := range all {
		x = append(x, float64(s.At))
		for k, v := range [4]float64{float64(s.BottomTurn), float64(s.BilgeRadius), float64(s.Flare), float64(s.TopsideCurve)} {
			y[k] = append(y[k], v)
		}
	}
	var out shapes
	for k := range out {
		var err error
		if out[k], err = curve.NewEase(x, y[k]); err != nil {
			return shapes{}, err
		}
	}
	return out, nil
}

func (s shapes) at(x float64) Shape {
	return Shape{s[0].At(x), s[1].At(x), s[2].At(x), s[3].At(x)}
}

// Face returns the point at the distance s (mm) along the half section, moved by out
// mm square to it: outward to the skin when positive. X is the half-breadth and Y the
// height above the baseline.
func (s Section) Face(along, out float64) geometry.Point {
	p, way := s.Half.Way(along)
	return s.off(p, way, out)
}

// off is the place that lies out mm off one of the half section, in the boat.
func (s *Section) off(p, way geometry.Point, out float64) geometry.Point {
	return geometry.Point{X: p.X + out*way.Y, Y: p.Y - out*way.X + s.KeelZ}
}

// Faces is Face for many places of one section.
func (s Section) Faces() func(along, out float64) geometry.Point {
	half := s.Half.Walk()
	return func(along, out float64) geometry.Point {
		p, way := half.Way(along)
		return s.off(p, way, out)
	}
}

// Stringer returns the outer corners of a stringer whose middle lies so many mm along
// the half section, the one towards the keel first: the wood on which the cloth lies.
func (s Section) Stringer(d *design.Design, along float64) (in, out geometry.Point) {
	p, way := s.Half.Way(along)
	return s.corners(d, p, way)
}

// corners are those of the stringer whose middle crosses the half section at a place.
func (s *Section) corners(d *design.Design, p, way geometry.Point) (in, out geometry.Point) {
	middle := s.off(p, way, float64(d.Ribs.Thickness)/2+float64(d.Stringers.Depth))
	half := way.Scale(float64(d.Stringers.Width) / 2)
	return middle.Sub(half), middle.Add(half)
}

// Corners returns the outer corners of the wood on the port side, from the middle of
// the keel out: the keel's middle and edge, two of each stringer, which lie so far along
// the half section, and the gunwale's outer face as given, its lower edge first. Cloth
// bridges flat from one to the next.
func (s Section) Corners(d *design.Design, stringers []float64, gunwale [2]geometry.Point) []geometry.Point {
	keel := s.Face(0, float64(d.Ribs.Thickness)/2+float64(d.Keel.Depth))
	out := make([]geometry.Point, 2, 4+2*len(stringers))
	out[0], out[1] = keel, keel.Add(geometry.Point{X: float64(d.Keel.Width) / 2})
	half := s.Half.Walk()
	for _, along := range stringers {
		p, way := half.Way(along)
		a, b := s.corners(d, p, way)
		out = append(out, a, b)
	}
	return append(out, gunwale[:]...)
}
