package frame

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/hull"
)

// Stem is one end piece, seen from the side as if it were the bow: x is the
// distance from midship, y the height above the baseline, mm. Its outline is
// the wood: the skin lies outside it.
type Stem struct {
	End       string            // "bow" or "stern"
	Outline   curve.Path        // closed, counter-clockwise
	Thickness float64           // siding, mm
	FootX     float64           // after end of the foot, mm from midship
	ToeX      float64           // where the keel butts against the shoulder, mm from midship
	HeadX     float64           // outermost point of the wood, mm from midship
	Shelf     [2]geometry.Point // the notch the gunwales rest in, inner end first
	Landings  []Landing         // of the stringers, from the keel up
	Moulded   float64           // depth of the wood from outer to inner edge, mm
	Grain     float64           // best run of the grain, radians above level
	Forefoot  geometry.Point    // the middle of the wood, half-way round the forefoot
	Middle    geometry.Point    // the middle of the wood where the forefoot ends
	Rise      float64           // heading of the stem there, radians above level
	Waterline float64           // height of the designed waterline, mm
}

// Landing is where a stringer's end meets the side of a stem.
type Landing struct{ At geometry.Point }

// footEnd is the least depth of wood at the after end of the foot, mm: enough
// to drive a peg through. Common practice, no source.
const footEnd = 10

// newStem outlines one end. slope is how the sheer rises there, rise over run.
func newStem(name string, d *design.Design, s design.Stem, e hull.End, slope float64) (Stem, error) {
	skin, keel, moulded := float64(d.Skin.Thickness), float64(d.Keel.Depth), float64(s.Moulded)
	st := Stem{End: name, Thickness: float64(s.Siding), ToeX: e.Toe.X, FootX: e.Toe.X - float64(s.Landing), Waterline: float64(d.Hull.Waterline)}
	up := geometry.Polar(1, e.Heading).Left() // square to the keel line at the toe, inward
	outer, err := e.Outer.Offset(skin)
	if err != nil {
		return st, fmt.Errorf("%s: %w", name, err)
	}
	inner, err := e.Outer.Offset(skin + moulded)
	if err != nil {
		return st, fmt.Errorf("%s: the moulded depth: %w", name, err)
	}
	if keel >= moulded {
		return st, fmt.Errorf("%s: moulded depth %.0f mm is not more than the keel's depth %.0f mm, so the foot has no wood", name, moulded, keel)
	}
	outerPath := curve.Path(outer.Path(e.Toe.Add(up.Scale(skin)), e.Heading))
	innerPath := curve.Path(inner.Path(e.Toe.Add(up.Scale(skin+moulded)), e.Heading))
	shelf, err := shelfLine(e, slope, innerPath)
	if err != nil {
		return st, fmt.Errorf("%s: %w", name, err)
	}
	st.Shelf = shelf
	foot := footLine(d, e, st.FootX, skin+keel)
	after := foot[0].Add(geometry.Point{Y: math.Max(footEnd, (moulded-keel)/2)})
	st.Outline = append(st.Outline, curve.Polyline(foot...)...)
	st.Outline = append(st.Outline, curve.Line{A: foot[len(foot)-1], B: outerPath[0].Start()})
	outerPath = below(outerPath, e.TopZ)
	head := outerPath[len(outerPath)-1].End()
	innerPath = below(innerPath, shelf[0].Y)
	st.Outline = append(st.Outline, outerPath...)
	st.Outline = append(st.Outline, curve.Polyline(head, geometry.Point{X: e.GunwaleX, Y: e.TopZ}, shelf[1], shelf[0])...)
	st.Outline = append(st.Outline, innerPath.Reverse()...)
	st.Outline = append(st.Outline, curve.Polyline(innerPath[0].Start(), after, foot[0])...)
	st.HeadX = st.Outline.Bounds().Max.X
	st.Grain = grainOf(foot[0], head)
	st.Moulded = moulded
	fore := e.Outer[0].Length
	st.Forefoot, _ = inside(e, fore/2, skin+moulded/2)
	st.Middle, st.Rise = inside(e, fore, skin+moulded/2)
	st.Landings = landings(d, e, outer, up.Scale(skin))
	if head.X <= e.GunwaleX {
		return st, fmt.Errorf("%s: the head leaves no horn at its top; give a longer horn or a larger head radius", name)
	}
	if !st.Outline.Closed() || !st.Outline.Joined() {
		return st, fmt.Errorf("%s: its outline does not close; give a larger forefoot radius or a smaller moulded depth", name)
	}
	return st, nil
}

// footLine is the top of the keel under the foot, aft to forward, at the given
// height square to the keel line.
func footLine(d *design.Design, e hull.End, from, height float64) []geometry.Point {
	half := float64(d.Hull.KeelStraight) / 2
	const step = 5 // mm: a parabola of rocker leaves its chord by under 0.001 mm
	n := int(math.Ceil((e.Toe.X - from) / step))
	pts := make([]geometry.Point, n+1)
	for i := range pts {
		x := from + (e.Toe.X-from)*float64(i)/float64(n)
		t := math.Max(0, (x-half)/(e.Toe.X-half))
		heading := math.Atan(2 * e.Toe.Y * t / (e.Toe.X - half))
		pts[i] = geometry.Point{X: x, Y: e.Toe.Y * t * t}.Add(geometry.Polar(height, heading+math.Pi/2))
	}
	return pts
}

// shelfLine is the notch under the gunwale ends: from the stem's inner edge out
// to the horn, along the sheer.
func shelfLine(e hull.End, slope float64, inner curve.Path) ([2]geometry.Point, error) {
	out := geometry.Point{X: e.GunwaleX, Y: e.GunwaleZ}
	// The inner edge is followed in short steps to where it meets the sheer line.
	last := geometry.Point{X: math.Inf(1)}
	for _, p := range inner.Flatten(1e-4) {
		line := out.Y + slope*(p.X-out.X)
		if p.Y >= line && !math.IsInf(last.X, 1) {
			before, after := last.Y-(out.Y+slope*(last.X-out.X)), p.Y-line
			meet := last.Lerp(p, before/(before-after))
			if meet.X >= out.X {
				break
			}
			return [2]geometry.Point{meet, out}, nil
		}
		last = p
	}
	return [2]geometry.Point{}, fmt.Errorf("the moulded depth leaves no shelf for the gunwales inside the horn; give more moulded depth or a shorter horn")
}

// below cuts a path that runs upward at the height z, mm.
func below(p curve.Path, z float64) curve.Path {
	var out curve.Path
	for _, s := range p {
		if s.End().Y < z {
			out = append(out, s)
			continue
		}
		return append(out, headTo(s, z))
	}
	// The last piece stops short of the height: it is carried on straight.
	end := out[len(out)-1].End()
	before := out[len(out)-1].At(1 - 1e-6)
	step := end.Sub(before).Unit()
	if step.Y <= 0 {
		return out
	}
	return append(out, curve.Line{A: end, B: end.Add(step.Scale((z - end.Y) / step.Y))})
}

// headTo shortens one segment so that it ends at the height z.
func headTo(s curve.Segment, z float64) curve.Segment {
	lo, hi := 0.0, 1.0
	for range 60 {
		if mid := (lo + hi) / 2; s.At(mid).Y < z {
			lo = mid
		} else {
			hi = mid
		}
	}
	switch s := s.(type) {
	case curve.Arc:
		s.Sweep *= hi
		return s
	case curve.Line:
		return curve.Line{A: s.A, B: s.At(hi)}
	}
	return s
}

// grainOf runs the grain from the foot to the head, so that the weakest short
// grain is shared between the two.
func grainOf(foot, head geometry.Point) float64 {
	step := head.Sub(foot)
	return math.Atan2(step.Y, step.X)
}

// inside returns the place in mm inside the outer edge at the length s along
// it, and the heading there.
func inside(e hull.End, s, in float64) (geometry.Point, float64) {
	p, heading := e.Point(s)
	return p.Add(geometry.Polar(in, heading+math.Pi/2)), heading
}

// landings spreads the stringer ends over the stem's outer edge between toe and
// gunwales as they are spread over a rib, each half its width and a hand's
// clearance inside the edge.
func landings(d *design.Design, e hull.End, outer curve.Chain, skin geometry.Point) []Landing {
	inset := float64(d.Stringers.Depth)
	var out []Landing
	reach := lengthTo(e, e.GunwaleZ)
	for _, f := range d.Stringers.At {
		p, heading := outer.At(f * reach)
		p = geometry.Turn(e.Heading).Apply(p).Add(e.Toe).Add(skin)
		out = append(out, Landing{p.Add(geometry.Polar(inset, heading+e.Heading+math.Pi/2))})
	}
	return out
}

// lengthTo returns the length along the outer edge from the toe to the height z.
func lengthTo(e hull.End, z float64) float64 {
	lo, hi := 0.0, e.Outer.Length()
	for range 60 {
		mid := (lo + hi) / 2
		if p, _ := e.Point(mid); p.Y < z {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
