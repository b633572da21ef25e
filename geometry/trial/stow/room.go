package stow

import (
	"math"
	"sort"

	"ribwright/geometry"
)

// far is the greatest room that is looked for, mm; boats farther apart do not
// meet.
const far = 60.0

// Rooms is the least room in each zone of a nest.
type Rooms [zones]Contact

// Least returns the contact with the least room of all.
func (r Rooms) Least() Contact {
	least := nowhere()
	for _, c := range r {
		if c.Room < least.Room {
			least = c
		}
	}
	return least
}

// Clearance returns the least room in each zone between the boats at a place
// and everywhere above it on the way down: the straight distance, in any
// direction, from the edges of the lower boat to the outside of the upper one,
// up to 60 mm. A place lower than Drop overlaps: there the zone of the first
// contact has, as room, minus the height by which it is too low.
//
// The room never falls when the boat is lifted, because the outside stands
// plumb from its widest place up.
func Clearance(in *Inside, o *Outside, p Place) Rooms {
	rooms := clearance(in, o, p, far)
	for z := range zones {
		if h, c := drop(in, o, p, 0, func(q Zone) bool { return q == z }); h > p.Z {
			c.Room = p.Z - h
			rooms[z] = c
		}
	}
	return rooms
}

// clearance looks no farther than reach; it does not see overlaps. A few edges
// are looked at first, so that most others are seen to be farther off.
func clearance(in *Inside, o *Outside, p Place, reach float64) Rooms {
	s := search{o: o, p: p}
	for z := range s.rooms {
		s.rooms[z], s.best[z] = nowhere(), reach*reach
	}
	const first = 23
	for i := 0; i < len(in.edges); i += first {
		s.edge(in, i)
	}
	for i := range in.edges {
		s.edge(in, i)
	}
	return s.rooms
}

// search is the state of one look for the least room.
type search struct {
	o     *Outside
	p     Place
	rooms Rooms
	best  [zones]float64 // squares of the rooms, mm2
}

func (s *search) edge(in *Inside, n int) {
	e, o := in.edges[n], s.o
	part := in.parts[e.Part]
	a, b := s.p.local(e.A), s.p.local(e.B)
	limit := 0.0
	for _, z := range zonesOf(part.Kind) {
		limit = max(limit, s.best[z])
	}
	widest := limit
	limit = math.Sqrt(limit)
	box := extent{min(a.Y, b.Y), max(a.Y, b.Y), min(a.Z, b.Z), max(a.Z, b.Z)}
	lo, hi := min(a.X, b.X)-limit, max(a.X, b.X)+limit
	k := sort.Search(len(o.rows), func(i int) bool { return o.rows[i].x >= lo }) - 1
	for k = max(k, 0); k+1 < len(o.rows) && o.rows[k].x <= hi; k++ {
		r, t := &o.rows[k], &o.rows[k+1]
		for i := 1; i < len(r.pts); i++ {
			near := r.boxes[i-1].apart(box)
			if near >= widest {
				continue
			}
			z := e.zone(part.Kind, o.parts[i-1].Kind)
			if near >= s.best[z] {
				continue
			}
			if d, at := toPanel(a, b, r, t, i); d < s.best[z] {
				s.best[z] = d
				s.rooms[z] = Contact{math.Sqrt(d), s.p.Outer(at), part, o.parts[i-1]}
			}
		}
	}
}

func zonesOf(k Kind) []Zone {
	switch k {
	case Stem, Breasthook:
		return []Zone{Ends}
	case CrossPiece:
		return []Zone{Across}
	case Gunwale:
		return []Zone{Sides, Ends}
	}
	return []Zone{Floor, Sides}
}

// extent is the box around something, without its x. mm.
type extent struct{ y0, y1, z0, z1 float64 }

// apart is a lower bound of the distance squared between what two boxes hold.
func (e extent) apart(f extent) float64 {
	dy := max(0, e.y0-f.y1, f.y0-e.y1)
	dz := max(0, e.z0-f.z1, f.z0-e.z1)
	return dy*dy + dz*dz
}

// panelBox is the box around the panel before the i-th points of two rows.
func panelBox(r, s row, i int) extent {
	p, q, u, v := r.pts[i-1], r.pts[i], s.pts[i-1], s.pts[i]
	return extent{min(p.X, u.X), max(q.X, v.X), min(p.Y, q.Y, u.Y, v.Y), max(p.Y, q.Y, u.Y, v.Y)}
}

// toPanel returns the distance squared from a piece to the panel between two
// sections, taken as two triangles, and the nearest place on the piece.
func toPanel(a, b geometry.Point3, r, s *row, i int) (float64, geometry.Point3) {
	corner := func(w *row, i int) geometry.Point3 {
		return geometry.Point3{X: w.x, Y: w.pts[i].X, Z: w.pts[i].Y}
	}
	p, q, u, v := corner(r, i-1), corner(r, i), corner(s, i-1), corner(s, i)
	d, at := lineToTriangle(a, b, p, q, v)
	if e, on := lineToTriangle(a, b, p, v, u); e < d {
		return e, on
	}
	return d, at
}

func cross(a, b geometry.Point3) geometry.Point3 {
	return geometry.Point3{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}

func along(a, b geometry.Point3, t float64) geometry.Point3 {
	return geometry.Point3{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t, Z: a.Z + (b.Z-a.Z)*t}
}

func unit(t float64) float64 { return min(1, max(0, t)) }

// lineToLine returns the least distance squared between two straight pieces and
// the nearest place on the first. mm2.
//
// Source: the usual clamped least squares; written from the conditions that the
// connecting line stands square to both pieces.
func lineToLine(p0, p1, q0, q1 geometry.Point3) (float64, geometry.Point3) {
	d, e, r := p1.Sub(p0), q1.Sub(q0), p0.Sub(q0)
	dd, ee, de, dr, er := d.Dot(d), e.Dot(e), d.Dot(e), d.Dot(r), e.Dot(r)
	s, t := 0.0, 0.0
	switch {
	case dd == 0 && ee == 0:
	case dd == 0:
		t = unit(er / ee)
	case ee == 0:
		s = unit(-dr / dd)
	default:
		if det := dd*ee - de*de; det > 1e-12*dd*ee {
			s = unit((de*er - dr*ee) / det)
		}
		t = (de*s + er) / ee
		if t < 0 {
			t, s = 0, unit(-dr/dd)
		} else if t > 1 {
			t, s = 1, unit((de-dr)/dd)
		}
	}
	on := along(p0, p1, s)
	gap := on.Sub(along(q0, q1, t))
	return gap.Dot(gap), on
}

// pointToFace returns the distance squared of a point from a triangle when the
// point stands over its face; false when an edge or corner is nearer, or the
// triangle has no face.
func pointToFace(p, a, b, c geometry.Point3) (float64, bool) {
	ab, ac := b.Sub(a), c.Sub(a)
	n := cross(ab, ac)
	nn := n.Dot(n)
	if nn == 0 {
		return 0, false
	}
	ap := p.Sub(a)
	v, w := cross(ap, ac).Dot(n)/nn, cross(ab, ap).Dot(n)/nn
	if v < 0 || w < 0 || v+w > 1 {
		return 0, false
	}
	h := ap.Dot(n)
	return h * h / nn, true
}

// lineToTriangle returns the least distance squared between the straight piece
// p-q and a triangle that it does not pass through, and the nearest place on it.
func lineToTriangle(p, q, a, b, c geometry.Point3) (float64, geometry.Point3) {
	best, at := math.Inf(1), p
	keep := func(d float64, on geometry.Point3) {
		if d < best {
			best, at = d, on
		}
	}
	for _, end := range [2]geometry.Point3{p, q} {
		if d, ok := pointToFace(end, a, b, c); ok {
			keep(d, end)
		}
	}
	for _, s := range [3][2]geometry.Point3{{a, b}, {b, c}, {c, a}} {
		keep(lineToLine(p, q, s[0], s[1]))
	}
	return best, at
}
