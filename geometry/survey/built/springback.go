package built

import (
	"math"
	"slices"

	"ribwright/geometry/wood/timber"
)

// Springback is what is known of the board that the ribs come from, as shares.
//
// How: the board's own springback is the design's, give or take timber.SpringbackDoubt;
// every rib measured free moves it by how well the rib is known against how well the board
// was (two normal distributions multiplied, as in any text on estimation). The order of the
// ribs does not matter.
type Springback struct {
	Prior, PriorOff float64 // before; one standard deviation
	Now, Off        float64 // of the board
	Next            float64 // one standard deviation of the next rib
	Readings        []Reading
	Strange         bool // the readings lie so far from the prior as one board in a hundred, which is then trusted less
}

// Reading is the springback of one rib.
type Reading struct {
	Rib, Line int
	Back      float64
	Apart     float64 // from what all the others say, in standard deviations of such a rib
}

// What a rib tells of its board: our own choice, as the errors of hand work have it.
const (
	ribToRib   = 0.012 // share, one standard deviation of a rib beside its board; more where four ribs or more say so
	widthRead  = 1.0   // mm, of a free width read with a tape
	hardly     = 0.1   // of its bend: a rib held so, and mm of width for a hundredth of springback
	distrusted = 6.635 // the square past which one board in a hundred lies, chi-square of one
)

// BoardOff is how far a board's springback may be from the design's before a rib of it was
// measured, one standard deviation.
const BoardOff = timber.SpringbackDoubt

// scatter is how far ribs of a board lie apart: as they do, where there are enough.
func scatter(all []Reading) float64 {
	n := float64(len(all))
	if n < 4 {
		return ribToRib
	}
	mean, squares := 0.0, 0.0
	for _, one := range all {
		mean += one.Back / n
	}
	for _, one := range all {
		squares += (one.Back - mean) * (one.Back - mean)
	}
	return math.Max(ribToRib, math.Sqrt(squares/(n-1)))
}

func (r *Report) learn(card []Row) {
	s := &r.Spring
	s.Prior, s.PriorOff = r.Frame.Frame.Design.Bending.Springback, BoardOff
	var each []float64 // variance of each reading
	for _, row := range card {
		back, perMM, ok := r.back(row)
		if !ok {
			continue
		}
		s.Readings = append(s.Readings, Reading{Rib: row.Rib, Line: row.Line, Back: back})
		each = append(each, widthRead*perMM*widthRead*perMM)
	}
	apart := scatter(s.Readings)
	for k := range each {
		each[k] += apart * apart
	}
	s.Now, s.Off = pooled(s.Prior, s.PriorOff*s.PriorOff, s.Readings, each, -1)
	if n := len(s.Readings); n > 0 {
		mean, noise := 0.0, 0.0
		for k, one := range s.Readings {
			mean, noise = mean+one.Back/float64(n), noise+each[k]/float64(n*n)
		}
		if q := (mean - s.Prior) * (mean - s.Prior) / (s.PriorOff*s.PriorOff + noise); q > distrusted {
			s.Strange = true
			s.PriorOff *= math.Sqrt(q)
			s.Now, s.Off = pooled(s.Prior, s.PriorOff*s.PriorOff, s.Readings, each, -1)
		}
	}
	s.Next = math.Hypot(s.Off, apart)
	for k := range s.Readings {
		without, off := pooled(s.Prior, s.PriorOff*s.PriorOff, s.Readings, each, k)
		s.Readings[k].Apart = (s.Readings[k].Back - without) / math.Sqrt(off*off+each[k])
	}
}

// pooled is the board's springback from the prior and all readings but one; -1 leaves none
// out.
func pooled(mean, variance float64, all []Reading, each []float64, but int) (is, off float64) {
	for k, one := range all {
		if k == but {
			continue
		}
		keep := variance / (variance + each[k])
		mean += keep * (one.Back - mean)
		variance *= 1 - keep
	}
	return mean, math.Sqrt(variance)
}

// back is the springback of a rib that was held at one width hot and came to another, and
// how much of it goes with each mm of that; false where the free width was not measured or
// the rib is hardly bent, so that its width says nothing.
func (f *Frame) back(row Row) (share, perMM float64, ok bool) {
	i, free := row.Rib, row.Is[Free]
	if math.IsNaN(free) || len(f.Report.Ribs[i].Arcs) == 0 {
		return 0, 0, false
	}
	hot := row.Is[Hot]
	if math.IsNaN(hot) {
		hot = f.ribs[i].hot
	}
	held := f.curved(i, hot)
	stands := f.curved(i, free-f.ribs[i].off)
	const step = 1.0
	next := f.curved(i, free+step-f.ribs[i].off)
	if held < hardly || f.Report.Ribs[i].Point < hardly {
		return 0, 0, false
	}
	return 1 - stands/held, (stands - next) / held / step, true
}

// curved is how many times its free curvature rib i has at a width between its heads: a
// rib bent farther stands narrower. Past a closed ring and past a straight stick it is
// theirs.
func (f *Frame) curved(i int, width float64) float64 {
	low, high := 0.0, 2.0
	for range 50 {
		middle := (low + high) / 2
		if f.Bent(i, middle) > width {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// HotFor is how wide rib i is held hot so that wood which loses the share comes to a free
// width, mm.
func (f *Frame) HotFor(i int, free, share float64) float64 {
	return f.Bent(i, f.curved(i, free-f.ribs[i].off)/(1-share))
}

// Worst is the reading farthest from the others; false without one that is past the
// limit at which it is named.
func (s Springback) Worst() (Reading, bool) {
	if len(s.Readings) < 2 {
		return Reading{}, false
	}
	w := slices.MaxFunc(s.Readings, func(a, b Reading) int {
		switch {
		case math.Abs(a.Apart) < math.Abs(b.Apart):
			return -1
		case math.Abs(a.Apart) > math.Abs(b.Apart):
			return 1
		}
		return 0
	})
	const named = 3.5
	return w, math.Abs(w.Apart) > named
}
