package stringer

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/curve/stick"
)

// side is the side of a stem, on which stringers end: a line inside its outer edge,
// along which places are lengths from where the keel ends, mm.
type side struct {
	line   curve.Chain
	place  geometry.Affine
	siding float64
}

func newSide(e hull.End, in, siding float64) (side, error) {
	line, err := e.Outer.Offset(in)
	start := e.Toe.Add(geometry.Polar(in, e.Heading+math.Pi/2))
	return side{line, geometry.Turn(e.Heading).Then(geometry.Shift(start.X, start.Y)), siding}, err
}

func (s side) point(at float64) geometry.Point {
	p, _ := s.line.At(at)
	return s.place.Apply(p)
}

// under returns the last place below a line through (x, z) with a slope.
func (s side) under(x, z, slope float64) float64 {
	return curve.Root(0, s.line.Length(), 0, func(at float64) float64 {
		p := s.point(at)
		return p.Y - z - slope*(p.X-x)
	})
}

// tail is how many ribs from the end are looked at. What a stringer does farther off
// reaches its end by 0.27 to that power: 3 parts in 100,000.
const tail = 8

// way is one end of a stringer that is being looked for. Stations count from midship
// to the end.
type way struct {
	c     *Courses
	i     int     // of the stringer
	side  float64 // 1 forward, -1 aft
	on    side
	own   []float64      // by rib of the tail, the last one first: how far along the half section, mm
	tied  stick.Loose    // to the ribs of the tail whose marks stay
	loose [2]stick.Loose // to the last rib but one, and to the last
	last  [2]stick.Pin   // on those ribs
	moved float64        // the last mark, for loose and last
	at    float64        // where it ends on the stem, mm
}

func (c *Courses) newWay(i int, toEnd float64, on side) *way {
	w := &way{c: c, i: i, side: toEnd, on: on}
	w.own = make([]float64, min(tail, len(c.ribs)))
	for k := range w.own {
		w.own[k] = c.On[w.rib(k)][i]
	}
	for k := len(w.own) - 1; k >= 0 && w.share(k) == 0; k-- {
		w.tie(&w.tied, k, 0)
	}
	w.moved = math.NaN() // they are tied to no mark yet
	w.mark(0)
	return w
}

// rib is the index of a rib counted from the end, 0 the last.
func (w *way) rib(k int) int {
	if w.side > 0 {
		return len(w.c.ribs) - 1 - k
	}
	return k
}

// eased is on how many ribs at each end marks may move.
const eased = 2

// share is how much of a move of the last rib's mark each rib counted from the end
// gets: it grows as a parabola, so that the line keeps fair.
func (w *way) share(k int) float64 {
	n := min(eased, (len(w.c.ribs)-1)/2)
	if k >= n {
		return 0
	}
	s := float64(n-k) / float64(n)
	return s * s
}

// tie ties an end to a rib counted from the end, with the last mark moved outward along
// its rib.
func (w *way) tie(l *stick.Loose, k int, move float64) stick.Pin {
	p := w.c.onRib(w.rib(k), w.i, w.own[k]+move*w.share(k))
	p.X *= w.side // stations count to the end
	if k == len(w.own)-1 {
		*l = stick.Loosen(p, Stiff(w.c.design))
	} else {
		*l = l.To(p)
	}
	return p
}

// mark ties the stringer to the ribs whose marks may move.
func (w *way) mark(move float64) {
	if move == w.moved {
		return
	}
	w.moved = move
	l := w.tied
	k := len(w.own) - 1
	for k > 0 && w.share(k) == 0 {
		k--
	}
	for ; k >= 0; k-- {
		p := w.tie(&l, k, move)
		w.loose[0], w.loose[1] = w.loose[1], l
		w.last[0], w.last[1] = w.last[1], p
	}
}

// end is the pin at a place on the stem.
func (w *way) end(at float64) stick.Pin {
	p := onStem(w.on.point(at), w.on.siding)
	// A stem head that curls back over the last rib holds no stringer.
	p.X = math.Max(p.X, w.last[1].X+float64(w.c.design.Stringers.Width))
	return p
}

// energy is that of bending the stringer to a place on the stem.
func (w *way) energy(at float64) float64 { return w.loose[1].Energy(w.end(at)) }

// Of what is fair a stringer may turn beyond the last rib: no more for each mm than in
// the bay before, and no more than twice that bay and two degrees. Our own choice, after
// how a builder sights along a batten: the eye follows it out to the stem and stops
// where it turns harder. A tenth of a degree is not seen. Two hundredths are kept for how
// a turn is measured.
const (
	bayMore = 2 * math.Pi / 180
	unseen  = 0.1 * math.Pi / 180
	kept    = 0.98
)

// unfair tells by how much the way turns more beyond the last rib than is fair, as a
// share of that, with its last mark moved: zero or less is fair.
func (w *way) unfair(move, lo, hi float64) float64 {
	w.mark(move)
	w.at = refine(w.energy, w.at, lo, hi)
	end := w.end(w.at)
	before, last, out := w.loose[0].Runs(w.last[1], end)
	most := Fair(stick.Turn(before, last), w.last[1].X-w.last[0].X, end.X-w.last[1].X)
	return stick.Turn(last, out)/(kept*most) - 1
}

// Fair returns the most that a stringer may turn from its last rib to the stem, reach mm
// on, where it turns by so much in the bay before, which is so long; radians and mm.
func Fair(turn, bay, reach float64) float64 {
	return math.Max(unseen, math.Min(turn*reach/bay, 2*turn+bayMore))
}

// ease finds where the way ends on the stem between lo and hi, and moves its marks on
// the last ribs by as little as makes it fair there: to the side on which the stem bends
// it less. Where no move within two widths does, all stays as it is.
func (w *way) ease(lo, hi float64) {
	w.at = least(w.energy, lo, hi)
	start, was := w.at, w.unfair(0, lo, hi)
	if !(was > 0) {
		return
	}
	const most, step = 2.0, 0.5 // widths
	wide := float64(w.c.design.Stringers.Width)
	by := math.Copysign(step*wide, w.spent(-step*wide, lo, hi)-w.spent(step*wide, lo, hi))
	w.at = start
	for move := by; math.Abs(move) <= most*wide && w.room(move); move += by {
		now := w.unfair(move, lo, hi)
		if now <= 0 {
			w.move(w.between(move-by, move, was, now, lo, hi), lo, hi)
			return
		}
		was = now
	}
	w.at = start
	w.mark(0)
}

// spent is the energy at its least with the last mark moved.
func (w *way) spent(move, lo, hi float64) float64 {
	w.mark(move)
	return w.energy(refine(w.energy, w.at, lo, hi))
}

// move moves the marks for good.
func (w *way) move(by, lo, hi float64) {
	w.mark(by)
	w.at = refine(w.energy, w.at, lo, hi)
	for k := range w.own {
		w.c.On[w.rib(k)][w.i] += by * w.share(k)
	}
}

// between finds the move that is just fair, between one that is not and one that is.
//
// How: false position with the side that stays halved (Illinois).
func (w *way) between(a, b, fa, fb, lo, hi float64) float64 {
	const (
		rounds = 8
		close  = 0.02 // mm
	)
	stayed := 0
	for range rounds {
		if math.Abs(b-a) < close || fb > -5e-4 {
			break
		}
		c := b - fb*(b-a)/(fb-fa)
		if fc := w.unfair(c, lo, hi); fc <= 0 {
			if b, fb = c, fc; stayed == 1 {
				fa /= 2
			}
			stayed = 1
		} else {
			if a, fa = c, fc; stayed == 2 {
				fb /= 2
			}
			stayed = 2
		}
	}
	return b
}

// room tells whether the moved marks keep room for a lashing to the neighbors.
func (w *way) room(move float64) bool {
	d := w.c.design
	wide := float64(d.Stringers.Width)
	for k := 0; w.share(k) > 0; k++ {
		r := w.rib(k)
		on := w.own[k] + move*w.share(k)
		below, above := (float64(d.Keel.Width)+wide)/2, w.c.ribs[r].Half.Length()-wide/2
		if w.i > 0 {
			below = w.c.On[r][w.i-1] + wide
		}
		if w.i+1 < len(w.c.On[r]) {
			above = w.c.On[r][w.i+1] - wide
		}
		if on < below+LashingRoom || on > above-LashingRoom {
			return false
		}
	}
	return true
}
