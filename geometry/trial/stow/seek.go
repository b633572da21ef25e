package stow

import (
	"math"
)

// seeker looks for where a boat lies in another.
type seeker struct {
	in  *Inside
	o   *Outside
	pad float64
}

// clearanceWithin is Clearance that looks no farther than reach for room.
func clearanceWithin(in *Inside, o *Outside, p Place, reach float64) Rooms {
	rooms := clearance(in, o, p, reach)
	if h, c := drop(in, o, p, 0, anyZone); h > p.Z {
		c.Room = p.Z - h
		for z := range rooms {
			if rooms[z].Room > c.Room {
				rooms[z] = nowhere()
			}
		}
		rooms[Floor] = c // only the least of all is asked for
	}
	return rooms
}

// roomy reports whether there is the room asked for everywhere at a place.
func (s seeker) roomy(p Place) bool {
	if h, _ := drop(s.in, s.o, p, 0, anyZone); h > p.Z {
		return false
	}
	return clearance(s.in, s.o, p, s.pad+0.01).Least().Room >= s.pad
}

// rest is the least height with the room asked for everywhere. Room never falls
// with height, so that halving finds it.
func (s seeker) rest(p Place) float64 {
	h, _ := drop(s.in, s.o, p, 0, anyZone)
	if math.IsInf(h, -1) {
		return h
	}
	if s.pad == 0 {
		return h
	}
	lo, hi := h, h+max(1, 2*s.pad)
	for p.Z = hi; !s.roomy(p) && hi < h+wall; p.Z = hi {
		lo, hi = hi, h+2*(hi-h)
	}
	for hi-lo > 0.01 {
		p.Z = (lo + hi) / 2
		if s.roomy(p) {
			hi = p.Z
		} else {
			lo = p.Z
		}
	}
	return hi
}

// seat is the height at which the boat stands on its pads on the floor; where no
// floor lies under it, that of the first contact.
//
// How: lifted by as much as lacks, a boat comes ever nearer to the room asked for
// and never past it, because lifting gives at most as much room as height. Over a
// floor flatter than 45 degrees a few rounds do.
func (s seeker) seat(p Place) float64 {
	on := seeker{s.in.floor(), s.o, s.pad}
	h, _ := drop(on.in, on.o, p, 0, anyZone)
	if math.IsInf(h, -1) {
		return s.rest(p)
	}
	p.Z = h + s.pad
	const rounds = 20
	for range rounds {
		lack := s.pad - clearance(on.in, on.o, p, s.pad+0.01)[Floor].Room
		if lack < 0.002 {
			return p.Z
		}
		p.Z += lack
	}
	return on.rest(p)
}

// bound returns what keeps the boat off its pads, and how much is lacking there:
// at the sides the room sideways, elsewhere the height.
func (s seeker) bound(p Place, on Rooms) (Contact, float64) {
	worst, contact := -1.0, nowhere()
	for _, z := range []Zone{Ends, Across} {
		h, c := drop(s.in, s.o, p, s.pad, func(q Zone) bool { return q == z })
		if lack := h - p.Z; lack > worst && lack > slack {
			worst, contact = lack, c
		}
	}
	side := Squeeze(s.in, s.o, p)
	h, _ := drop(s.in, s.o, p, s.pad, func(q Zone) bool { return q == Sides })
	if h-p.Z >= worst && side.Room < s.pad {
		return side, s.pad - side.Room
	}
	if !contact.Meets() {
		contact = on.Least()
		worst = s.pad - contact.Room
	}
	return contact, worst
}

// even is the height, mm, within which two places are as low as each other.
const even = 0.25

// shift looks along the boat for the place that serves best one way round. The
// boat above is taken as grown by the pad, so that one pass over the edges judges a
// place. It returns the place and a measure of its room.
func (s seeker) shift(turned bool) (Place, float64) {
	depth := func(x float64) float64 {
		h, _ := drop(s.in, s.o, Place{X: x, Turned: turned}, s.pad, anyZone)
		return h
	}
	const stride, reach = 40.0, 600.0
	best, at := math.Inf(1), 0.0
	for k := range int(2*reach/stride) + 1 { // 0 first, then out by turns: even places stay near midship
		x := stride * float64((k+1)/2)
		if k%2 == 0 {
			x = -x
		}
		if h := depth(x); h < best-even {
			best, at = h, x
		}
	}
	for step := stride / 2; step >= 1.25; step /= 2 {
		for _, x := range []float64{at - step, at + step} {
			if h := depth(x); h < best-even/8 {
				best, at = h, x
			}
		}
	}
	at = s.middle(at, best, depth)
	p := Place{X: at, Z: best, Turned: turned}
	return p, Squeeze(s.in, s.o, p).Room
}

// middle moves to the middle of the run of places that are as low, so that an
// inch either way does no harm; midship over midship when it is in the run's
// middle third.
func (s seeker) middle(at, low float64, depth func(float64) float64) float64 {
	ok := func(x float64) bool { return depth(x) < low+even }
	edge := func(way float64) float64 {
		lo, hi := 0.0, 600.0
		for hi-lo > 2 {
			if mid := (lo + hi) / 2; ok(at + way*mid) {
				lo = mid
			} else {
				hi = mid
			}
		}
		return at + way*lo
	}
	a, b := edge(-1), edge(1)
	third := (b - a) / 6
	mid := (a + b) / 2
	if math.Abs(mid) <= third && ok(0) {
		return 0
	}
	mid = math.Round(mid)
	if ok(mid) {
		return mid
	}
	return at
}
