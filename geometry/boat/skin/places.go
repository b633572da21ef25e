package skin

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
)

// places is how many shares of the girth are tried, evenly: hundredths, some 5 mm
// apart in a canoe.
const places = 100

// rearranged places a number of stringers so that every rib stays off the cloth,
// moved as little as can be from where they are, or, when there is another
// number, from even shares. False when no places serve.
//
// How: a gap between two battens can be judged by itself, so the least sum of
// moves up to a stringer at a place follows from that of the stringer before it.
func rearranged(f *frame.Frame, n int) ([]float64, bool) {
	was := slices.Clone(f.Design.Stringers.At)
	if n != len(was) {
		was = was[:0]
		for i := range n {
			was = append(was, float64(i+1)/float64(n+1))
		}
	}
	g := newGaps(f)
	last := []step{{share: 0}}
	var ways [][]step
	for _, share := range was {
		last = g.next(last, spots(share), share)
		ways = append(ways, last)
	}
	end := g.next(last, []float64{1}, 1)[0]
	if math.IsInf(end.moves, 1) {
		return nil, false
	}
	out := make([]float64, n)
	for i, k := n-1, end.from; i >= 0; i-- {
		out[i], k = ways[i][k].share, ways[i][k].from
	}
	return out, true
}

// spots are the shares that are tried for a batten: where it is, and hundredths.
func spots(share float64) []float64 {
	out := []float64{share}
	for k := 1; k < places; k++ {
		out = append(out, float64(k)/places)
	}
	return out
}

// step is a batten at a share, with the least moves of the stringers up to it and
// which place of the batten before that takes.
type step struct {
	share, moves float64
	from         int
}

// next returns the best way to each place of the next batten, which now is at was.
func (g gaps) next(last []step, to []float64, was float64) []step {
	out := make([]step, len(to))
	for k, share := range to {
		out[k] = step{share, math.Inf(1), 0}
		for j, before := range last {
			if moves := before.moves + math.Abs(share-was); moves < out[k].moves && g.clear(before.share, share) {
				out[k].moves, out[k].from = moves, j
			}
		}
	}
	return out
}

// gaps judges gaps between two battens at any two shares of the girth, 0 the keel
// and 1 the gunwale; it remembers what it found.
type gaps struct {
	f     *frame.Frame
	skins [][]geometry.Point // by rib
	known map[[2]float64]bool
}

func newGaps(f *frame.Frame) gaps {
	g := gaps{f: f, known: map[[2]float64]bool{}}
	for _, r := range f.Ribs {
		g.skins = append(g.skins, f.Corners(r))
	}
	return g
}

func (g gaps) clear(from, to float64) bool {
	if from >= to {
		return false
	}
	key := [2]float64{from, to}
	ok, found := g.known[key]
	if found {
		return ok
	}
	ok = true
	for i := 0; ok && i < len(g.skins); i++ {
		ok = g.clearAt(i, from, to)
	}
	g.known[key] = ok
	return ok
}

// clearAt reports whether battens at two shares leave room for a lashing on a rib
// and keep the cloth between them off it.
func (g gaps) clearAt(rib int, from, to float64) bool {
	d, r, skin := g.f.Design, g.f.Ribs[rib], g.skins[rib]
	girth := r.Section.Half.Length()
	a, b := skin[1], skin[len(skin)-2]
	inner, outer := float64(d.Keel.Width)/2, 0.0
	if from > 0 {
		_, a = r.Section.Stringer(d, from)
		inner = float64(d.Stringers.Width) / 2
	}
	if to < 1 {
		b, _ = r.Section.Stringer(d, to)
		outer = float64(d.Stringers.Width) / 2
	}
	return (to-from)*girth-inner-outer >= frame.LashingRoom && over(r, from*girth, to*girth, a, b) <= -offCloth
}
