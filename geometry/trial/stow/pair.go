package stow

import (
	"math"
)

// Options say how boats are to be put into one another.
type Options struct {
	Pad    float64 // room asked for between wood and cloth everywhere, mm, >= 0; pads of this thickness on the floor
	LeftIn bool    // thwarts, yoke and seat bars of the lower boats stay in
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
	Out          []int   // thwarts of the lower boat that are in the way, by number
}

// Lift returns how much too high the upper boat lies, mm; 0 when it nests.
func (p *Pair) Lift() float64 { return max(0, p.Place.Z-p.Seat) }

// slack is how much room may be lacking before a boat counts as not fitting, mm:
// the rounding of the search.
const slack = 0.05

// Fit lowers one boat into another at the place and the way round that serve
// best: first the lowest, then the most room.
func Fit(lower, upper *Boat, o Options) *Pair {
	in := lower.open(o)
	s := seeker{in, upper.Outside, o.Pad}
	ways := []bool{false}
	if !lower.alike() && !upper.alike() {
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
	return settle(lower, upper, in, best, o)
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
	for i := range lower.Frame.Thwarts {
		if s.inTheWay(lower, i, at) {
			p.Out = append(p.Out, i)
		}
	}
	return p
}

// inTheWay reports whether a thwart of the lower boat would come nearer than the
// pad to the upper boat on its way down.
func (s seeker) inTheWay(lower *Boat, i int, at Place) bool {
	name := lower.Frame.Thwarts[i].Name
	one := lower.Inside.only(func(p Part) bool { return p.Kind == CrossPiece && p.Name == name })
	return clearanceWithin(one, s.o, at, s.pad+1).Least().Room < s.pad-slack
}
