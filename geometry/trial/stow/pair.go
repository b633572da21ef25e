package stow

import "math"

// Options say how boats are to be put into one another.
type Options struct {
	Pad    float64  // room asked for between wood and cloth everywhere, mm, >= 0; pads of this thickness on the floor
	LeftIn bool     // thwarts, yoke and seats of the lower boats stay in
	Out    []string // which of them come out all the same: seat, thwart, yoke, seat-1, a name
}

// Pair is one boat lowered into another.
type Pair struct {
	Lower, Upper *Boat
	Place        Place   // where the upper boat lies, with the room asked for
	Touch        float64 // height of its baseline when it is lowered without pads until it touches, mm
	First        Contact // what touches then
	Seat         float64 // height of its baseline standing on pads on the floor, mm, whatever the sides say
	Nests        bool    // it stands on the floor with the room asked for everywhere
	Rooms        Rooms   // least room by zone where it lies
	Bound        Contact // what keeps it off the floor; none when it nests
	Short        float64 // room lacking there with the boat on the floor: a side at the sides, in height elsewhere, mm
	Far          *Boat   // the boat that Bound belongs to when it is one farther down, else nil
	Out          []int   // thwarts and seats of the lower boat that are in the way, by number
}

// Lift returns how much too high the upper boat lies, mm; 0 when it nests.
func (p *Pair) Lift() float64 { return max(0, p.Place.Z-p.Seat) }

// TakenOut names the thwarts and seats of the lower boat that are in the way.
func (p *Pair) TakenOut() (out []string) {
	all := looseOf(p.Lower.Frame)
	for _, n := range p.Out {
		out = append(out, all[n].name)
	}
	return out
}

// slack is how much room may be lacking before a boat counts as not fitting, mm:
// the rounding of the search.
const slack = 0.05

// Fit lowers one boat into another at the place and the way round that serve
// best: first the lowest, then the most room.
func Fit(lower, upper *Boat, o Options) *Pair {
	in := lower.open(o)
	return settle(lower, upper, in, seeker{in, upper.Outside, o.Pad}.best(lower, upper), o)
}

// Stands reports whether a boat lowered into another at a shift and a way round stands on
// its pads with the room asked for everywhere. It takes a tenth of the time of Fit, which
// looks for the place.
func Stands(lower, upper *Boat, at Place, o Options) bool {
	return seeker{lower.open(o), upper.Outside, o.Pad}.stands(at)
}

// best is the shift and the way round that serve best.
func (s seeker) best(lower, upper *Boat) Place {
	ways := []bool{false}
	if !lower.Frame.Design.EndsAlike() && !upper.Frame.Design.EndsAlike() {
		ways = append(ways, true)
	}
	best := Place{Z: math.Inf(1)}
	room := math.Inf(-1)
	for _, turned := range ways {
		p, r := s.shift(turned)
		if p.Z < best.Z-even || p.Z < best.Z+even && r > room+even {
			best, room = p, r
		}
	}
	return best
}

// settle finds how the upper boat lies at a shift and a way round.
func settle(lower, upper *Boat, in *Inside, at Place, o Options) *Pair {
	p := &Pair{Lower: lower, Upper: upper, Place: at, Bound: nowhere()}
	p.Touch, p.First = Drop(in, upper.Outside, at.X, at.Turned)
	s := seeker{in, upper.Outside, o.Pad}
	p.Seat = s.seat(at)
	at.Z = p.Seat
	on := clearanceWithin(in, upper.Outside, at, o.Pad+1)
	p.Nests = on.Least().Room >= o.Pad-slack
	if !p.Nests {
		p.Bound, p.Short = s.bound(at, on)
		at.Z = s.rest(at)
	}
	p.Place = at
	p.Rooms = Clearance(in, upper.Outside, at)
	for i := range looseOf(lower.Frame) {
		if s.inTheWay(lower, i, at) {
			p.Out = append(p.Out, i)
		}
	}
	return p
}

// inTheWay reports whether a thwart or seat of the lower boat would come nearer than the
// pad to the upper boat on its way down.
func (s seeker) inTheWay(lower *Boat, i int, at Place) bool {
	name := looseOf(lower.Frame)[i].name
	one := lower.Inside.only(func(_ Edge, p Part) bool { return p.Kind == CrossPiece && p.Name == name })
	return clearanceWithin(one, s.o, at, s.pad+1).Least().Room < s.pad-slack
}

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
