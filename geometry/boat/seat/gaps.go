package seat

import (
	"cmp"
	"iter"
	"math"
	"slices"

	"ribwright/geometry/design"
)

// window is a gap between mortises and cross pieces in which a hanger's bolts may stand.
type window struct {
	lo, hi float64 // stations of the hanger's middle
	apart  float64 // the bolts
	skew   float64 // of the gunwale in plan there, radians
	shift  float64 // from where the bolts go through the gunwale's middle to the hanger's middle
}

// wide is the breadth of a hanger there.
func (w window) wide(rail float64) float64 { return max(w.apart+2*boltEdge, wideFor(rail, w.skew)) }

// windows lists the gaps between mortises and cross pieces that may take a hanger, from aft
// forward.
func (b Boat) windows(may func(window) bool) []window {
	const narrow = 200.0 // mm of half-breadth under which nobody sits
	const ends = 100.0   // mm of a gunwale's ends that breasthooks and stems take
	closed := slices.Concat(b.Mortises, b.Crosses, []Span{{b.Stock.From, b.Stock.From + ends}, {b.Stock.To - ends, b.Stock.To}})
	out := make([]window, 0, len(closed))
	slices.SortStableFunc(closed, func(a, b Span) int { return cmp.Compare(a.From, b.From) })
	for i := 1; i < len(closed); i++ {
		closed[i].To = max(closed[i].To, closed[i-1].To)
		from, to := closed[i-1].To, closed[i].From
		apart := math.Floor(min(boltsApart, to-from-2*clearOf-Hole-2))
		if apart < leastApart {
			continue
		}
		in := clearOf + Hole/2 + apart/2
		w := window{lo: b.Gunwale.StationOf(from + in), hi: b.Gunwale.StationOf(to - in), apart: apart}
		if x := w.middle(); may(w) && b.Gunwale.EdgeAt(x, 0, 0).Y > narrow {
			high := float64(b.Design.Gunwale.Height)
			s := b.board(x, float64(b.Design.Gunwale.Width), high)
			w.skew = abs(math.Atan(s.fore.Y / s.fore.X))
			w.shift = s.at(0, usualDown, leastBlock+Thick/2).X - x
			w.lo, w.hi = w.lo+w.shift, w.hi+w.shift
			out = append(out, w)
		}
	}
	return out
}

// reached tells whether a gap may take a rail of any of the seats. All others are farther off
// by more than they shift and a rail may lie aside.
func (b Boat) reached(w window) bool {
	const more = 100.0
	return slices.ContainsFunc(b.Design.Seats, func(s design.Seat) bool {
		return abs(w.near(float64(s.At))-float64(s.At)) <= max(mostRails, float64(s.Long))/2+more
	})
}

// anywhere is for all gaps.
func anywhere(window) bool { return true }

func (w window) middle() float64 { return (w.lo + w.hi) / 2 }

// near returns the place in the window that is nearest to x.
func (w window) near(x float64) float64 { return min(max(x, w.lo), w.hi) }

// pair is a choice of windows for the front and the after rail.
type pair struct {
	front, after window
	half         float64 // from the seat's middle to either rail's
	off          float64 // how far a rail lies off its hanger's middle, the worse of the two
}

func (p pair) most(width float64) float64 {
	room := func(w window) float64 { return (w.wide(width) - wideFor(width, w.skew)) / 2 }
	return min(room(p.front), room(p.after))
}

// pairs lists the choices of gaps for a seat of which no rail lies farther off its hanger's middle
// than aside; long is its given length, 0 for one that follows the gaps. Where the gaps are
// wide both rails may hang in one.
func pairs(w []window, at, long, width, aside float64) iter.Seq[pair] {
	least, most := reach(long, width)
	return func(yield func(pair) bool) {
		for i := range w {
			if w[i].lo > at-least+aside || w[i].hi < at-most-aside {
				continue
			}
			for k := i; k < len(w); k++ {
				if w[k].lo > at+most+aside || w[k].hi < at+least-aside {
					continue
				}
				if p, ok := pairOf(&w[k], &w[i], at, long, width); ok && !yield(p) {
					return
				}
			}
		}
	}
}

// reach is how far from a seat's middle either rail may be.
func reach(long, width float64) (least, most float64) {
	if long > 0 {
		return (long - width) / 2, (long - width) / 2
	}
	return leastRails / 2, mostRails / 2
}

// pairOf places the rails in two windows, each as far from the seat's middle.
func pairOf(front, after *window, at, long, width float64) (p pair, ok bool) {
	least, most := reach(long, width)
	lo, hi := max(front.lo-at, at-after.hi, least), min(front.hi-at, at-after.lo, most)
	p.half = min(max(hungApart/2, lo), hi)
	if lo > hi { // off the middle of the hangers alike
		p.half = min(max((front.middle()-after.middle())/2, least), most)
	}
	x, y := front.near(at+p.half), after.near(at-p.half)
	if x-y < max(front.wide(width), after.wide(width))+2 {
		return p, false
	}
	p.front, p.after, p.off = *front, *after, max(abs(at+p.half-x), abs(at-p.half-y))
	return p, true
}

// choose takes the pair that leaves the rails most nearly in the middle of their
// hangers, then the one most nearly as long as usual.
func choose(all iter.Seq[pair]) (best pair, ok bool) {
	least := 0.0
	for p := range all {
		if score := p.off + abs(2*p.half-hungApart)/1000; !ok || score < least {
			best, least, ok = p, score, true
		}
	}
	return best, ok
}
