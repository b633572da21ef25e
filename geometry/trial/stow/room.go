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

// zonesOf lists the zones in which a part can be met.
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
