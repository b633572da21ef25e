package flotation

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/water/awash"
)

// Side pieces, mm. Our own choice: as thick as leaves people their room between them,
// close under the gunwales.
const (
	besidePeople = 110.0 // across, at most
	elsewhere    = 150.0 // likewise
	sideTall     = 170.0 // at most, and half the depth
	beside       = 6.0   // off the ribs
	thinnest     = 30.0  // that foam is worth fitting
	shortest     = 200.0
	clearOf      = 15.0 // hangers of seats and cross pieces, along the boat
)

// bay is a stretch along the boat for one piece, mm, that people want so much room in.
type bay struct{ aft, fore, people float64 }

// center is the station that side pieces are laid about: half way from midship to where
// the people's weight comes down. All of it beside people who sit aft would spoil the
// balance of the boat as it is carried; all of it amidships would let its stern sink.
func center(f *frame.Frame) float64 {
	sum, mass := 0.0, 0.0
	for _, p := range weight.People(f.Design) {
		sum, mass = sum+p.Mass*f.Design.WeightAt(p), mass+p.Mass
	}
	return sum / mass / 2
}

// inTheWay lists what hangs or lies under the gunwales where side pieces go, from aft
// forward: cross pieces, hangers of seats with their rails, and ribs that backrests hang from.
func inTheWay(in Boat) []bay {
	var out []bay
	f := in.Frame
	add := func(at, wide float64) {
		out = append(out, bay{aft: at - wide/2 - clearOf, fore: at + wide/2 + clearOf})
	}
	for _, t := range f.Thwarts {
		add(t.At, t.Outline.Bounds().H())
	}
	for _, s := range f.Seats {
		if h := s.Hung; h != nil {
			add(h.Front.Hanger.Station, h.Front.Hanger.Wide)
			add(h.After.Hanger.Station, h.After.Hanger.Wide)
			add(h.Front.Station, h.Width)
			add(h.After.Station, h.Width)
		}
	}
	for _, b := range in.Inside.Backs { // its loops are tied round the rib's heads
		add(b.RibAt, float64(f.Design.Ribs.Width))
	}
	slices.SortStableFunc(out, func(a, b bay) int { return cmp.Compare(a.aft, b.aft) })
	return out
}

// bays are the stretches between what is in the way, from the first rib to the last, cut
// where people want another room.
func bays(in Boat) []bay {
	f := in.Frame
	at, last := f.Ribs[0].Station, f.Ribs[len(f.Ribs)-1].Station
	var out []bay
	for _, o := range append(inTheWay(in), bay{aft: last, fore: last}) {
		if to := math.Min(o.aft, last); to > at {
			for _, r := range inside.Rooms(f.Design, at, to) {
				out = append(out, bay{r.Aft, r.Fore, r.Across})
			}
		}
		at = math.Max(at, o.fore)
	}
	return out
}

// sidesOf makes pieces along both sides, so many liters a side: beside the people and on
// from there, as far as it takes and as the ribs stand, a piece in each bay.
func sidesOf(in Boat, liters float64) []Bag {
	f, c := in.Frame, in.Cloth
	free, about := bays(in), center(f)
	whole := make([]Bag, len(free)) // the piece that fills a bay, once it is made
	from, to := f.Ribs[0].Station, f.Ribs[len(f.Ribs)-1].Station
	pieces, where := make([]Bag, 0, len(free)), make([]bay, 0, len(free))
	lay := func(long float64) (sum float64) {
		pieces, where = pieces[:0], where[:0]
		mid := math.Max(from+long/2, math.Min(to-long/2, about))
		for i, all := range free {
			b := bay{math.Max(all.aft, mid-long/2), math.Min(all.fore, mid+long/2), all.people}
			p := &whole[i]
			if b != all {
				part := side(f, c, b)
				p = &part
			} else if !p.Foam {
				*p = side(f, c, b)
			}
			if p.Liters > 0 {
				pieces, where, sum = append(pieces, *p), append(where, b), sum+p.Liters
			}
		}
		return sum
	}
	lo, hi := 0.0, to-from
	for range 14 { // to a quarter of a millimeter
		long := (lo + hi) / 2
		if lay(long) < liters {
			lo = long
		} else {
			hi = long
		}
	}
	sum := lay(hi)
	port, sum := trimmed(f, c, pieces, where, sum, liters)
	if len(port) == 0 {
		port = []Bag{{Foam: true}}
	}
	for i := range port {
		port[i].Wanted = port[i].Liters
	}
	port[0].Wanted += math.Max(0, liters-sum)
	star := make([]Bag, len(port))
	for i := range port {
		star[i] = port[i].mirrored()
		star[i].Where = "starboard side"
		port[i].Where = "port side"
		if len(port) > 1 {
			port[i].Number, star[i].Number = i+1, i+1
			port[i].Where, star[i].Where = fmt.Sprintf("port side %d", i+1), fmt.Sprintf("starboard side %d", i+1)
		}
	}
	return append(port, star...)
}

// trimmed cuts pieces shorter at both ends, all by the same share, while they hold more
// than so many liters: one that begins to be worth fitting comes all at once. A piece that
// would be too short stays as it is.
func trimmed(f *frame.Frame, c *skin.Cloth, pieces []Bag, where []bay, sum, liters float64) ([]Bag, float64) {
	for range 8 {
		if sum < liters+0.05 {
			break
		}
		share := (sum - liters) / sum
		shorter, left, all := make([]Bag, len(pieces)), make([]bay, len(pieces)), 0.0
		for i, b := range where {
			cut := share * (pieces[i].Fore - pieces[i].Aft) / 2
			left[i] = bay{math.Max(b.aft, pieces[i].Aft) + cut, math.Min(b.fore, pieces[i].Fore) - cut, b.people}
			if shorter[i] = side(f, c, left[i]); shorter[i].Liters == 0 {
				shorter[i], left[i] = pieces[i], b
			}
			all += shorter[i].Liters
		}
		pieces, where, sum = shorter, left, all
	}
	return pieces, sum
}

// mirrored is the same piece on the other side.
func (b Bag) mirrored() Bag {
	b.At.Y = -b.At.Y
	b.Blocks = slices.Clone(b.Blocks)
	for i := range b.Blocks {
		b.Blocks[i].At.Y = -b.Blocks[i].At.Y
	}
	return b
}

// side is a port piece along a stretch, as far as the boat is wide enough for it beside
// people; nothing where it would be too short.
func side(f *frame.Frame, c *skin.Cloth, s bay) Bag {
	most := besidePeople
	if s.people == 0 {
		most = elsewhere
	}
	tall := math.Min(sideTall, float64(f.Design.Hull.Depth)/2)
	b := Bag{Foam: true, Tall: tall}
	if s.fore-s.aft < shortest {
		return b
	}
	n := int(math.Ceil((s.fore - s.aft) / slice))
	b.Blocks = make([]awash.Block, 0, n)
	for i := range n {
		long := (s.fore - s.aft) / float64(n)
		x := s.aft + long*(float64(i)+0.5)
		top := f.Gunwale.Line.Point(x).Z - under
		y := math.Min(c.Hull.Side(x, top), c.Hull.Side(x, top-tall)) - wood(f) - beside
		w := math.Min(most, y-s.people/2)
		if w < thinnest {
			continue
		}
		if len(b.Blocks) == 0 {
			b.Aft = x - long/2
		}
		b.Fore, b.Across = x+long/2, math.Max(b.Across, w)
		b.Blocks = append(b.Blocks, awash.Block{Long: long, Wide: w, Tall: tall, At: geometry.Point3{X: x, Y: y - w/2, Z: top - tall/2}})
	}
	if b.Fore-b.Aft < shortest {
		return Bag{Foam: true}
	}
	b.finish(foamMass)
	return b
}
