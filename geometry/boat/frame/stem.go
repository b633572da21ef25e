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

// Stem is one end piece, seen from the side as if it were the bow: x is the
// distance from midship, y the height above the baseline, mm. Its outline is
// the wood: the skin lies outside it.
type Stem struct {
	End       string            // "bow" or "stern"
	Outline   curve.Path        // closed, counter-clockwise
	Thickness float64           // siding, mm
	FootX     float64           // after end of the foot, mm from midship
	ToeX      float64           // where the keel butts against the shoulder, mm from midship
	Shelf     [2]geometry.Point // the notch the gunwales rest in, inner end first
	Landings  []geometry.Point  // of the stringers on its side, from the keel up
	Moulded   float64           // depth of the wood from outer to inner edge, mm
	Grain     float64           // best run of the grain, radians above level
	Forefoot  geometry.Point    // the middle of the wood, half-way round the forefoot
	Middle    geometry.Point    // the middle of the wood where the forefoot ends
	Rise      float64           // heading of the stem there, radians above level
	Waterline float64           // height of the designed waterline, mm
}

// footEnd is the least depth of wood at the after end of the foot, mm: enough
// to drive a peg through. Common practice, no source.
const footEnd = 10

// The least shelf for the gunwales, and the least wood of the horn outside their
// ends at the top, mm. Common practice, no source.
const (
	leastShelf = 12.0
	leastHorn  = 4.0
)

// newStem outlines one end. slope is how the edge-set rises there, rise over run:
// in the middle plane the gunwales' undersides rise by it alone, because what the
// natural sheer adds the tilt takes away.
func newStem(name string, d *design.Design, s design.Stem, e hull.End, slope float64) (Stem, error) {
	st := Stem{End: name, Thickness: float64(s.Siding), Moulded: float64(s.Moulded), ToeX: e.Toe.X,
		FootX: e.Toe.X - float64(s.Landing), Waterline: float64(d.Hull.Waterline)}
	skin, keel := float64(d.Skin.Thickness()), float64(d.Keel.Depth)
	if keel >= st.Moulded {
		return st, fmt.Errorf("%s: moulded depth %.0f mm is not more than the keel's depth %.0f mm, so the foot has no wood", name, st.Moulded, keel)
	}
	outer, err := edge(e, skin)
	if err != nil {
		return st, fmt.Errorf("%s: %w", name, err)
	}
	inner, err := edge(e, skin+st.Moulded)
	if err != nil {
		return st, fmt.Errorf("%s: the moulded depth: %w", name, err)
	}
	gunwale := geometry.Point{X: e.GunwaleX, Y: e.GunwaleZ}
	inner = upTo(inner, func(p geometry.Point) float64 { return p.Y - gunwale.Y - slope*(p.X-gunwale.X) })
	outer = upTo(outer, func(p geometry.Point) float64 { return p.Y - e.TopZ })
	st.Shelf = [2]geometry.Point{inner[len(inner)-1].End(), gunwale}
	if err := st.checkHead(name, s, outer[len(outer)-1].End().X); err != nil {
		return st, err
	}
	st.outline(footLine(d, e, st.FootX, skin+keel), outer, inner, keel)
	fore := e.Outer[0].Length
	st.Forefoot, _ = e.Inside(fore/2, skin+st.Moulded/2)
	st.Middle, st.Rise = e.Inside(fore, skin+st.Moulded/2)
	if !st.Outline.Closed() || !st.Outline.Joined() {
		return st, fmt.Errorf("%s: its outline does not close; give a larger forefoot radius or a smaller moulded depth", name)
	}
	return st, nil
}

// checkHead refuses a head without wood beside the gunwales' ends: the outer edge of the
// wood ends at the distance top from midship.
func (s *Stem) checkHead(name string, d design.Stem, top float64) error {
	at := s.Shelf[1].X
	room, horn := at-s.Shelf[0].X, top-at
	if horn < leastHorn {
		want := math.Ceil(float64(d.Horn) + leastHorn - horn)
		cure := fmt.Sprintf("give a horn of %.0f mm", want)
		if lack := leastShelf - room + want - float64(d.Horn); lack > 0 {
			cure += fmt.Sprintf(" and %.0f mm more moulded depth", math.Ceil(lack))
		}
		if d.HeadTurn > 0 {
			cure += ", or less head_turn"
		} else {
			cure += " or a larger head radius"
		}
		return fmt.Errorf("%s: at its top the stem head stands %.1f mm outside the gunwale ends, at least %.0f mm are needed; %s", name, horn, leastHorn, cure)
	}
	if room < leastShelf {
		return fmt.Errorf("%s: inside the horn %.0f mm are left for the gunwales to rest on, at least %.0f mm are needed; give %.0f mm more moulded depth or a shorter horn",
			name, math.Max(0, room), leastShelf, math.Ceil(leastShelf-room))
	}
	return nil
}

// edge is the outer edge moved in mm inward, from the toe up.
func edge(e hull.End, in float64) (curve.Path, error) {
	chain, err := e.Outer.Offset(in)
	if err != nil {
		return nil, err
	}
	return chain.Path(e.Toe.Add(geometry.Polar(in, e.Heading+math.Pi/2)), e.Heading), nil
}

// outline goes round the wood: along the foot, down the shoulder, up the outer
// edge, across the head, down the horn, in along the shelf and down the inner
// edge.
func (s *Stem) outline(foot []geometry.Point, outer, inner curve.Path, keel float64) {
	head := outer[len(outer)-1].End()
	horn := geometry.Point{X: s.Shelf[1].X, Y: head.Y}
	after := foot[0].Add(geometry.Point{Y: math.Max(footEnd, (s.Moulded-keel)/2)})
	s.Outline = slices.Concat(curve.Polyline(append(foot, outer[0].Start())...), outer, curve.Polyline(head, horn, s.Shelf[1], s.Shelf[0]),
		inner.Reverse(), curve.Polyline(inner[0].Start(), after, foot[0]))
	// The grain runs from the foot to the head, so that the weakest short grain is
	// shared between the two.
	run := head.Sub(foot[0])
	s.Grain = math.Atan2(run.Y, run.X)
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

// upTo cuts a path where the given height over some line, which rises along the
// path, turns positive; a path that ends below the line is carried on straight.
func upTo(p curve.Path, over func(geometry.Point) float64) curve.Path {
	var out curve.Path
	for _, s := range p {
		if over(s.End()) < 0 {
			out = append(out, s)
			continue
		}
		share := curve.Root(0, 1, 0, func(t float64) float64 { return over(s.At(t)) })
		return append(out, curve.Stretch(s, 0, share))
	}
	last := out[len(out)-1]
	end, step := last.End(), last.End().Sub(last.At(1-1e-6)).Unit()
	const reach = 1000.0 // mm: a stem is never carried on farther
	on := curve.Root(0, reach, 0, func(d float64) float64 { return over(end.Add(step.Scale(d))) })
	return append(out, curve.Line{A: end, B: end.Add(step.Scale(on))})
}
