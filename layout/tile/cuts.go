package tile

import (
	"cmp"
	"math"
	"slices"

	"ribwright/layout"
)

// lap is how far each tile shows its neighbor's part beyond the joint, mm:
// room for a whole registration cross and a strip to glue on.
const lap = crossArm

// closeEnough is what a length may exceed a sheet by and still count as fitting,
// mm: inches turned to millimeters must not cost an empty row of tiles.
const closeEnough = 0.01

const (
	// shortest is the least share of the room a piece may be, so that no sliver
	// of paper has to be taped in.
	shortest = 0.2
	// tries is how many evenly spread places in a piece's room are tried for a
	// joint, besides the edges of the spans.
	tries = 100
	// dearest is how many pieces more are paid to keep whole what must be.
	dearest = 4
	// spoils is how many mm off its even place a joint may lie to cut 1 mm less
	// deep into something to keep.
	spoils = 20
)

// Cuts divides the stretch from lo to hi into pieces that fit within most, and
// returns the joints, both ends included. Pieces are as few as can be. No joint
// falls into a span that must stay whole, even at the price of a few pieces more.
// Of all ways to do so it takes the one whose joints cut least deep into spans
// that should stay whole and that no piece then shows whole; of those the one
// that cuts least deep into any, and the one with its joints nearest to where they are
// wished. Spans that leave no way at all are cut like any other place.
//
// Requires most > 0; hi <= lo gives one piece. All in mm.
//
// Cost: with n pieces and s spans, n (tries + s)^2 at the most; mostly the first way that
// is looked at reaches, which leaves n (tries + s) log(tries + s).
func Cuts(lo, hi, most float64, must, should []layout.Span, by wish) []float64 {
	n := max(1, int(math.Ceil((hi-lo-closeEnough)/most)))
	out, broken := divide(lo, hi, most, n, must, should, by)
	for more := 1; broken > 0 && more <= dearest; more++ {
		if longer, rest := divide(lo, hi, most, n+more, must, should, by); rest == 0 {
			return longer
		}
	}
	return out
}

// wish says where joints are wished.
type wish int

const (
	even  wish = iota
	first      // as long as can be from the beginning on
	last       // as long as can be from the end on
)

// joint is where the kth of the joints between n pieces is wished.
func (w wish) joint(lo, hi, most float64, k, n int) float64 {
	switch w {
	case first:
		return lo + most*float64(k)
	case last:
		return hi - most*float64(n-k)
	}
	return lo + (hi-lo)*float64(k)/float64(n)
}

// way is the best way found to put a joint at a place. All in mm, of this joint
// and the ones before it.
type way struct {
	at     float64
	broken float64 // how deep they cut into what must stay whole
	lost   float64 // how deep they cut into what should and is then nowhere whole
	ugly   float64 // how deep they cut into anything, and how far they lie from where they are wished
	before int     // the joint before, in the row before
}

// compare puts the better of two ways first.
func (w *way) compare(v *way) int {
	switch {
	case w.broken != v.broken:
		return sooner(w.broken < v.broken)
	case w.lost != v.lost:
		return sooner(w.lost < v.lost)
	case w.ugly != v.ugly:
		return sooner(w.ugly < v.ugly)
	}
	return 0
}

func sooner(yes bool) int {
	if yes {
		return -1
	}
	return 1
}

// divide finds the best joints between n pieces, row by row from the left, and
// how deep they cut into what must stay whole; without end when n pieces would be
// slivers.
func divide(lo, hi, most float64, n int, must, should []layout.Span, by wish) ([]float64, float64) {
	rows := [][]way{{{at: lo}}}
	for k := 1; k < n; k++ {
		wish := by.joint(lo, hi, most, k, n)
		// What came before must reach here, and what comes after the end.
		from := math.Max(lo, hi-float64(n-k)*most-closeEnough)
		to := math.Min(hi, lo+float64(k)*most+closeEnough)
		rows = append(rows, tryJoints(rows[k-1], wish, from, to, most, must, should))
	}
	return trace(rows, hi, most)
}

// tryJoints tries every place for one joint after those of the row before.
func tryJoints(before []way, wish, from, to, most float64, must, should []layout.Span) []way {
	must, should = reaching(must, from, to), reaching(should, from, to)
	try := make([]float64, 0, 2+tries+1+4*(len(must)+len(should)))
	try = append(try, wish, to)
	for x := from; x < to; x += most / tries {
		try = append(try, x)
	}
	for _, set := range [][]layout.Span{must, should} {
		for _, s := range set {
			try = append(try, s.From, s.From+lap, s.To-lap, s.To)
		}
	}
	order := bestFirst(before)
	out := make([]way, 0, len(try))
	for _, x := range try {
		if x < from || x > to {
			continue
		}
		if w, ok := bestBefore(before, order, x, most); ok {
			broken, _ := into(x, must)
			all, lost := into(x, should)
			w.broken = settled(w.broken + broken)
			w.lost = settled(w.lost + lost)
			w.ugly = settled(w.ugly + all*spoils + math.Abs(x-wish))
			out = append(out, w)
		}
	}
	return out
}

// reaching are the spans that reach into a stretch, or within a lap of it.
func reaching(spans []layout.Span, from, to float64) (out []layout.Span) {
	for _, s := range spans {
		if s.From-lap <= to && s.To+lap >= from {
			out = append(out, s)
		}
	}
	return out
}

// settled rounds a sum to a millionth of a millimeter, so that ways as good as
// each other are so on every kind of processor.
func settled(mm float64) float64 { return math.Round(mm*1e6) / 1e6 }

// bestFirst orders ways from the best to the worst; of two as good as each other the one
// that was tried first.
func bestFirst(ways []way) []int {
	order := make([]int, len(ways))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Or(ways[i].compare(&ways[j]), i-j) })
	return order
}

// bestBefore finds the best joint to come before one at x: the first of the given order
// from which a piece reaches x.
func bestBefore(before []way, order []int, x, most float64) (way, bool) {
	for _, i := range order {
		if long := x - before[i].at; long > most+closeEnough || long < most*shortest {
			continue
		}
		w := before[i]
		w.at, w.before = x, i
		return w, true
	}
	return way{}, false
}

// into returns how deep a joint cuts into the spans it lies in, mm, and how deep
// into those that neither of its pieces shows whole: a piece shows its
// neighbor's part for a lap.
func into(x float64, spans []layout.Span) (all, lost float64) {
	for _, s := range spans {
		if x <= s.From || x >= s.To {
			continue
		}
		d := math.Min(x-s.From, s.To-x)
		all, lost = all+d, lost+math.Max(0, d-lap)
	}
	return all, lost
}

// trace goes back from the end through the best joints; it returns them with how
// deep they cut into what must stay whole, without end when no way reaches the end.
func trace(rows [][]way, hi, most float64) ([]float64, float64) {
	out := make([]float64, len(rows)+1)
	out[len(rows)] = hi
	last := rows[len(rows)-1]
	w, ok := bestBefore(last, bestFirst(last), hi, most)
	switch {
	case len(rows) == 1:
		w = way{}
	case !ok:
		return nil, math.Inf(1)
	}
	broken := w.broken
	for k := len(rows) - 1; k >= 0; k-- {
		w = rows[k][w.before]
		out[k] = w.at
	}
	return out, broken
}
