package flaw

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/solid"
	"ribwright/geometry/curve"
	"ribwright/geometry/water/float"
)

// Report shows one frame to an eye: fair, and with each fault by itself.
type Report struct {
	Frame *frame.Frame
	Fair  *solid.Boat // as it stands while ribs are bent in: a batten along each bilge, no other stringers, no cross pieces
	Looks []Look      // one for each kind, in their order

	Sighted int     // number of the stringer along the bilge of the ribs with a fault
	Longer  float64 // of a half rib for each mm that it is proud at the bilge, to the first order, mm
	Long    float64 // of the half rib as it is shown proud, mm
	Touches float64 // how proud the rib may stand before it touches the flat cloth between two stringers, mm; +Inf for never
	Hollow  float64 // of the bump in the stringer, how deep the hollow beside it is, a share
	Sticks  float64 // length of the winding sticks, mm
}

// Look is one fault beside the fair boat.
type Look struct {
	Fault        Fault
	Moved        *Moved
	Eye          solid.Eye
	Fair, Faulty *solid.Boat
	Detail       Detail
	Heels        float64 // what the fault leans the loaded boat by, radians; NaN when that is not known
}

// The sizes that are shown: large enough to be seen in a drawing. Our own choice.
const (
	showsProud = 12.0 // mm
	showsSide  = 8.0
	showsWave  = 6.0
	showsAside = 8.0
	showsTwist = 2 * math.Pi / 180
)

// Of works it out; rest is how the loaded boat lies on the water, nil when it does not.
//
// Errors: sticks that do not run past the ribs.
func Of(f *frame.Frame, rest *float.Hydrostatics) (*Report, error) {
	shown := f.Nearest(f.Hull.Length / 8)
	rib := slices.IndexFunc(f.Ribs, func(r frame.Rib) bool { return r.Name == shown.Name })
	r := &Report{Frame: f, Sighted: sighted(f.Ribs[rib])}
	r.Fair = r.standing(solid.AsDrawn{})
	for _, fault := range []Fault{{Proud, showsProud, rib}, {OneSide, showsSide, rib}, {Wavy, showsWave, rib}, {Aside, showsAside, rib}, {Twist, showsTwist, rib}} {
		m, err := New(f, fault)
		if err != nil {
			return nil, err
		}
		l := Look{Fault: fault, Moved: m, Eye: r.eye(fault), Fair: r.with(r.Fair, fault, solid.AsDrawn{}), Heels: heels(m, rest)}
		l.Faulty = r.with(r.standing(m), fault, m)
		l.Detail = r.detail(m)
		r.Looks = append(r.Looks, l)
	}
	proud := r.Looks[Proud].Moved
	const little = 0.01 // mm, to either side: the slope to 1 part in 10,000
	r.Longer = (proud.girth(little) - proud.girth(-little)) / (2 * little)
	r.Long = proud.girth(showsProud) - proud.girth(0)
	r.Touches = proud.touches()
	r.Hollow = proud.hollow(r.Sighted)
	return r, nil
}

// standing is the frame as it stands while ribs are bent in.
func (r *Report) standing(m solid.Moves) *solid.Boat {
	return solid.Of(r.Frame, m, func(p solid.Part, number int) bool {
		return p != solid.Thwarts && (p != solid.Stringers || number == r.Sighted)
	})
}

// sighted is the number of the stringer nearest to where a rib bulges; 0 without any.
func sighted(r frame.Rib) int {
	peak, girth := bulgeOf(r).peak, r.Section.Half.Length()
	best, off := 0, math.Inf(1)
	for k, s := range r.Stringers {
		if d := math.Abs(s/girth - peak); d < off {
			best, off = k+1, d
		}
	}
	return best
}

// sized is the same fault with another size.
func (m *Moved) sized(size float64) *Moved {
	n := *m
	n.fault.Size = size
	return &n
}

// girth is the length of the port half of the rib with the fault of a size, mm.
func (m *Moved) girth(size float64) float64 {
	const pieces = 400
	m = m.sized(size)
	sum, r := 0.0, m.f.Ribs[m.fault.Rib]
	at := func(k int) geometry.Point3 {
		t := float64(k) / pieces
		p := r.Face(t*r.Section.Half.Length(), 0)
		return geometry.Point3{Y: p.X, Z: p.Y}.Add(m.Rib(m.fault.Rib, 1, t))
	}
	for k := range pieces {
		sum += at(k + 1).Sub(at(k)).Norm()
	}
	return sum
}

// touches finds how proud the rib may stand before its outer face touches the cloth,
// which spans flat between the corners of keel, stringers and gunwale that ride on it.
func (m *Moved) touches() float64 {
	const most = 40.0 // mm: no rib is that far off and stays in
	free := func(size float64) bool { return m.sized(size).outside() <= 0 }
	if free(most) {
		return math.Inf(1)
	}
	return curve.Bisect(0, most, free)
}

// outside is how far the rib's outer face stands outside the flat cloth, mm; negative
// inside. It looks at 100 places between two stringers.
func (m *Moved) outside() float64 {
	const looks = 100
	r := m.f.Ribs[m.fault.Rib]
	girth := r.Section.Half.Length()
	moved := func(p geometry.Point, along float64) geometry.Point {
		by := m.Rib(m.fault.Rib, 1, along/girth)
		return p.Add(geometry.Pt(by.Y, by.Z))
	}
	ends := append(append([]float64{0}, r.Stringers...), girth)
	corners := m.f.Corners(r)[1:]
	worst := math.Inf(-1)
	for gap := range len(ends) - 1 {
		a, b := moved(corners[2*gap], ends[gap]), moved(corners[2*gap+1], ends[gap+1])
		way := b.Sub(a).Unit()
		for k := range looks + 1 {
			at := ends[gap] + (ends[gap+1]-ends[gap])*float64(k)/looks
			face := moved(r.Face(at, r.Thickness/2), at)
			worst = math.Max(worst, way.Cross(a.Sub(face)))
		}
	}
	return worst
}

// hollow is how deep a stringer lies inside its fair line beside the bump, as a share of
// the bump; 0 without the stringer.
func (m *Moved) hollow(number int) float64 {
	if number == 0 {
		return 0
	}
	l := m.stringers[0][number-1]
	at := m.f.Ribs[m.fault.Rib].Station
	bump := l.at(at)
	least := 0.0
	aft, fore := l.y.Ends()
	const looks = 400
	for k := range looks + 1 {
		p := l.at(aft + (fore-aft)*float64(k)/looks)
		least = math.Min(least, (p.Y*bump.Y+p.Z*bump.Z)/(bump.Y*bump.Y+bump.Z*bump.Z))
	}
	return -least
}

// heels is the angle to which the loaded boat lies over with the fault.
//
// How: what the ribs' faces under water have moved out, times the length that each rib
// stands for, shifts the buoyancy aside; the metacentric height rights it. Accuracy:
// first order, and cloth is taken to move with the ribs.
func heels(m *Moved, rest *float.Hydrostatics) float64 {
	if rest == nil || !(rest.GM > 0) {
		return math.NaN()
	}
	const pieces = 60
	ribs, moment := m.f.Ribs, 0.0
	for i, r := range ribs {
		long := (ribs[min(i+1, len(ribs)-1)].Station - ribs[max(i-1, 0)].Station) / 2
		girth, water := r.Section.Half.Length(), rest.Plane.Water(r.Station)
		for k := range pieces {
			t := (float64(k) + 0.5) / pieces
			p := r.Face(t*girth, r.Thickness/2)
			out := p.Sub(r.Face(t*girth, r.Thickness/2-1))
			if p.Y > water {
				continue
			}
			for _, side := range []float64{1, -1} {
				by := m.Rib(i, side, t)
				moment += (by.Y*side*out.X + by.Z*out.Y) * side * p.X * girth / pieces * long
			}
		}
	}
	return math.Abs(math.Atan(moment / rest.Volume / rest.GM))
}
