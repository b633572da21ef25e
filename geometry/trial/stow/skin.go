package stow

import (
	"fmt"
	"math"
	"sort"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
)

// OutsideOf returns the outside of a boat's cloth: flat from corner to corner
// of keel, stringers and gunwales, and out over the ribs where they stand proud
// of it between two stringers.
func OutsideOf(f *frame.Frame) (*Outside, error) {
	s := newSkinner(f)
	var sections []Section
	for _, x := range s.stations() {
		sections = append(sections, Section{x, s.half(x)})
	}
	return NewOutside(sections, s.parts())
}

// ClothAt returns the outside of the cloth at a station as OutsideOf has it, from
// the keel out to the gunwale's upper edge: x half-breadth, y height, mm.
func ClothAt(f *frame.Frame, x float64) []geometry.Point { return newSkinner(f).half(x) }

// proud is how many points of a rib are looked at between two stringers: of an arc
// that stands 10 mm proud the chords between them cut off 0.3 mm.
const proud = 5

// skinner draws sections of the cloth at any station.
type skinner struct {
	f         *frame.Frame
	low, high rail // the gunwale's outer corners under the cloth
	x         []float64
	off       [][]geometry.Point // by rib: corners of the stringers off their middles
	bulge     [][]float64        // by rib: how far it stands proud between two corners
	bow       profile
	stern     profile
}

func newSkinner(f *frame.Frame) *skinner {
	skin := float64(f.Design.Skin.Thickness)
	s := &skinner{f: f, bow: newProfile(f.Hull.Bow), stern: newProfile(f.Hull.Stern),
		low: newRail(&f.Gunwale, f.Gunwale.Width/2+skin, 0), high: newRail(&f.Gunwale, f.Gunwale.Width/2+skin, f.Gunwale.Height)}
	depth, half := float64(f.Design.Stringers.Depth), float64(f.Design.Stringers.Width)/2
	for _, r := range f.Ribs {
		girth := r.Section.Half.Length()
		var off []geometry.Point
		for _, line := range f.Stringers {
			_, heading := r.Section.Half.At(line.Share * girth)
			out := geometry.Polar(depth/2+skin, heading-math.Pi/2)
			along := geometry.Polar(half, heading)
			off = append(off, out.Sub(along), out.Add(along))
		}
		s.x, s.off = append(s.x, r.Station), append(s.off, off)
	}
	for _, r := range f.Ribs {
		s.bulge = append(s.bulge, s.proudOf(r))
	}
	return s
}

// proudOf measures how far a rib and its cloth stand outside the straight lines
// from corner to corner, at even shares of each.
func (s *skinner) proudOf(r frame.Rib) []float64 {
	corners := s.corners(r.Station)
	girth, out := r.Section.Half.Length(), r.Thickness/2+float64(s.f.Design.Skin.Thickness)
	const looks = 240
	face := make([]geometry.Point, looks+1)
	for k := range face {
		face[k] = r.Face(girth*float64(k)/looks, out)
	}
	var bulge []float64
	for gap := range len(s.f.Stringers) + 1 {
		a, b := corners[2*gap+1], corners[2*gap+2]
		for k := range proud {
			bulge = append(bulge, over(face, a, b, float64(k+1)/(proud+1)))
		}
	}
	return bulge
}

// over returns how far a line stands to the right of the way from a to b, a share
// t along it; 0 when it does not, or does not pass there.
func over(line []geometry.Point, a, b geometry.Point, t float64) float64 {
	d := b.Sub(a)
	on := a.Lerp(b, t)
	most := 0.0
	for i := 1; i < len(line); i++ {
		p, q := line[i-1].Sub(on), line[i].Sub(on)
		u, v := p.Dot(d), q.Dot(d)
		if u > 0 || v < 0 || u == v {
			continue
		}
		most = max(most, p.Lerp(q, u/(u-v)).Dot(d.Left().Unit().Scale(-1)))
	}
	return most
}

// parts names what lies under each piece of a section.
func (s *skinner) parts() []Part {
	out := []Part{{Keel, "keel"}}
	for i := range len(s.f.Stringers) + 1 {
		for range proud + 1 {
			out = append(out, Part{Cloth, "cloth"})
		}
		if i < len(s.f.Stringers) {
			out = append(out, Part{Stringer, fmt.Sprintf("stringer %d", i+1)})
		}
	}
	return append(out, Part{Gunwale, "gunwale"})
}

// skinStep is how far apart sections are drawn, mm.
const skinStep = 15.0

// stations are where sections are drawn: evenly, at every rib, close together up
// the stems, and twice at the gunwales' ends.
func (s *skinner) stations() []float64 {
	h := s.f.Hull
	aft, fore := -s.stern.tip(), s.bow.tip()
	out := append([]float64{aft, fore}, s.x...)
	for x := aft + skinStep; x < fore; x += skinStep {
		out = append(out, x)
	}
	for _, e := range []struct {
		p    profile
		gx   float64
		side float64
	}{{s.bow, h.Bow.GunwaleX, 1}, {s.stern, h.Stern.GunwaleX, -1}} {
		for _, q := range e.p {
			out = append(out, e.side*q.X)
		}
		out = append(out, e.side*e.gx, e.side*(e.gx+step))
	}
	sort.Float64s(out)
	keep := out[:1]
	for _, x := range out[1:] {
		if x > keep[len(keep)-1]+step/2 {
			keep = append(keep, x)
		}
	}
	return keep
}

// step is how far apart the two sections at a gunwale's end stand, mm.
const step = 0.01

// half draws the half section at a station.
func (s *skinner) half(x float64) []geometry.Point {
	corners := s.corners(x)
	out := []geometry.Point{corners[0]}
	for gap := range len(s.f.Stringers) + 1 {
		a, b := corners[2*gap+1], corners[2*gap+2]
		out = append(out, a)
		d := b.Sub(a)
		n := d.Left().Unit().Scale(-1)
		for k := range proud {
			out = append(out, a.Lerp(b, float64(k+1)/(proud+1)).Add(n.Scale(s.bulgeAt(x, gap*proud+k))))
		}
		out = append(out, b)
	}
	return append(out, corners[len(corners)-1])
}

// bay returns the ribs on either side of a station and the way from one to the
// other; outside the last ribs the last one twice.
func (s *skinner) bay(x float64) (int, int, float64) {
	i := sort.SearchFloat64s(s.x, x)
	switch {
	case i == 0:
		return 0, 0, 0
	case i == len(s.x):
		return i - 1, i - 1, 0
	}
	return i - 1, i, (x - s.x[i-1]) / (s.x[i] - s.x[i-1])
}

// bulgeAt returns how far the cloth is pressed out by ribs, nothing past the last.
func (s *skinner) bulgeAt(x float64, k int) float64 {
	a, b, t := s.bay(x)
	if x < s.x[0] || x > s.x[len(s.x)-1] || s.bulge == nil {
		return 0
	}
	return s.bulge[a][k]*(1-t) + s.bulge[b][k]*t
}

// corners are the corners of the wood under the cloth, cloth included: keel
// middle and edge, two to a stringer, two of the gunwale.
func (s *skinner) corners(x float64) []geometry.Point {
	f := s.f
	side, e, stem, prof := 1.0, f.Hull.Bow, f.Bow, s.bow
	if x < 0 {
		side, e, stem, prof = -1, f.Hull.Stern, f.Stern, s.stern
	}
	u := x * side
	post := stem.Thickness/2 + float64(f.Design.Skin.Thickness)
	low, edge := prof.at(u), post
	if u <= e.Toe.X {
		low, _ = f.Hull.KeelZ(x)
		last := s.x[len(s.x)-1]
		if x < 0 {
			last = -s.x[0]
		}
		share := math.Max(0, math.Min(1, (u-last)/(e.Toe.X-last)))
		edge = float64(f.Design.Keel.Width)/2*(1-share) + post*share
	}
	out := []geometry.Point{{Y: low}, {X: edge, Y: low}}
	for i := range f.Stringers {
		out = append(out, s.stringer(i, x, u, low, edge, stem.Landings[i].At.X)...)
	}
	if u > e.GunwaleX+step/2 {
		top := geometry.Point{X: post, Y: math.Max(low, e.TopZ)}
		return append(out, top, top)
	}
	return append(out, s.low.flat(x), s.high.flat(x))
}

// stringer returns the outer corners of one stringer at a station. On the stems
// it is worked down to nothing where it lands.
func (s *skinner) stringer(i int, x, u, low, edge, land float64) []geometry.Point {
	if u >= land {
		return []geometry.Point{{X: edge, Y: low}, {X: edge, Y: low}}
	}
	a, b, t := s.bay(x)
	mid := s.f.Stringers[i].Line.Point(x)
	fade := 1.0
	if last := math.Abs(s.x[a]); a == b && u > last {
		fade = (land - u) / (land - last)
	}
	out := make([]geometry.Point, 2)
	for c := range out {
		off := s.off[a][2*i+c].Lerp(s.off[b][2*i+c], t).Scale(fade)
		p := geometry.Point{X: mid.Y + off.X, Y: mid.Z + off.Y}
		if p.Y < low {
			p = geometry.Point{X: edge, Y: low}
		}
		out[c] = p
	}
	return out
}

// profile is the outer edge of a stem as points from the toe to its farthest
// place, x away from midship.
type profile []geometry.Point

func newProfile(e hull.End) profile {
	var out profile
	length := e.Outer.Length()
	n := int(length/4) + 1
	far := math.Inf(-1)
	for i := range n + 1 {
		p, _ := e.Point(length * float64(i) / float64(n))
		if p.X <= far {
			continue
		}
		far = p.X
		out = append(out, p)
	}
	return out
}

func (p profile) tip() float64 { return p[len(p)-1].X }

// at returns the height of the edge at the distance u from midship.
func (p profile) at(u float64) float64 {
	i := sort.Search(len(p), func(i int) bool { return p[i].X > u })
	i = min(max(i, 1), len(p)-1)
	return p[i-1].Lerp(p[i], (u-p[i-1].X)/(p[i].X-p[i-1].X)).Y
}

// outline flattens a closed outline to points no farther apart than most, mm.
func outline(p curve.Path, most float64) []geometry.Point {
	pts := p.Flatten(0.1)
	out := pts[:1:1]
	for i := 1; i < len(pts); i++ {
		n := int(pts[i].Sub(pts[i-1]).Norm()/most) + 1
		for k := 1; k <= n; k++ {
			out = append(out, pts[i-1].Lerp(pts[i], float64(k)/float64(n)))
		}
	}
	return out
}
