package built

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry/equations"
)

// Remaining is a rib that does not stand yet, as it shall be cut and bent, mm.
type Remaining struct {
	Rib           int
	Beam, Depth   float64 // wanted off the drawing, so that the boat comes fair
	Length, Blank float64 // shoulder to shoulder, and to cut
	Longer        float64 // than the pattern has it, half of it at each end
	Free, Hot     float64 // widths between its heads: standing free, and held hot by what the board springs back
	HotOff        float64 // how much the width held hot may be off for what is not known of the board, one standard deviation
}

// resolve finds what is off in the boat as it will be, and sets the ribs that remain.
//
// How: what a standing rib is off in depth has a part whose cause was measured, its bend and
// the length it was cut to, and a rest. Part of the rest all ribs have in common; it is learned
// and taken off the lengths of those that remain. The other part is chance. The ribs that
// remain come as near to the drawing as their bumps beside the known parts and half of the
// chance let them: who follows none leaves a bump that a length would take, who follows all
// carries one rib's chance into the next. A measure that is far off is to be taken again, and
// nothing follows it.
func (r *Report) resolve(card []Row) {
	n := len(r.ribs)
	beam, known, depth := nans(n), nans(n), nans(n)
	stands := make([]bool, n)
	var rests []Rest
	whole := 0
	for _, row := range card {
		if row.Stands() {
			stands[row.Rib] = true
			whole++
		}
	}
	for _, row := range card {
		i := row.Rib
		if !row.Stands() {
			continue
		}
		beam[i], depth[i] = r.off(row, Beam), r.off(row, Depth)
		if whole < n && isFar(beam[i]) {
			beam[i] = math.NaN()
		}
		if whole < n && isFar(depth[i]) {
			depth[i] = math.NaN()
			continue
		}
		known[i] = r.known(row, beam[i])
		if !math.IsNaN(depth[i]) {
			rest := Rest{i, row.Line, depth[i] - known[i]}
			rests = append(rests, rest)
			if !math.IsNaN(row.Is[Free]) {
				r.Rests = append(r.Rests, rest)
			}
		}
	}
	r.Common = r.common(rests)
	for i := range known { // what a standing rib was cut for, what it has in common with the others, and its chance
		known[i] += r.bias(i)
		if !math.IsNaN(depth[i]) {
			known[i] += followed * (depth[i] - known[i])
		}
	}
	wide, deep := r.fair(beam, stiffBeam, r.bendAt), r.fair(known, stiffDepth, r.bumpAt)
	for i := range n {
		if !stands[i] {
			r.Remaining = append(r.Remaining, r.remaining(i, wide[i], deep[i]))
		} else if !math.IsNaN(depth[i]) {
			deep[i] = depth[i]
		}
		r.Kept = append(r.Kept, Kept{wide[i], deep[i]})
	}
	slices.SortStableFunc(r.Remaining, func(a, b Remaining) int {
		x, y := r.at[a.Rib+1], r.at[b.Rib+1]
		return cmp.Or(cmp.Compare(math.Abs(x), math.Abs(y)), cmp.Compare(y, x))
	})
}

func (r *Report) remaining(i int, beam, depth float64) Remaining {
	rib, d := r.Frame.Frame.Ribs[i], r.ribs[i]
	out := Remaining{Rib: i, Beam: beam, Depth: depth, Longer: r.curb[i].Beam*beam + r.curb[i].Depth*(depth-r.bias(i)), Free: d.free + beam}
	out.Length, out.Blank = rib.Length+out.Longer, rib.Blank+out.Longer
	out.Hot = r.HotFor(i, out.Free, r.Spring.Now)
	out.HotOff = math.Abs(r.HotFor(i, out.Free, r.Spring.Now+r.Spring.Off/2) - r.HotFor(i, out.Free, r.Spring.Now-r.Spring.Off/2))
	return out
}

// How much fairness counts beside the way that a rib is set off the drawing: in depth the
// bumps, in beam the bend of the gunwales, which are battens themselves and make the ribs
// follow. More of it leaves a boat that is fair and wrong, less a bump where the first ribs
// end. Weight and share of the chance were chosen on boats of three designs, built on paper
// from other seeds than those of the tests; of these one set was looked at three times on the way.
const (
	stiffDepth = 0.4
	followed   = 0.5
	stiffBeam  = 0.5
)

// fair is what every rib shall be off, where some stand as they are: ribs that remain come
// as near to the drawing as fairness lets them, which unfair measures at each pin by shares of
// the offsets around it. The stems stand as drawn.
//
// How: least squares of the offsets and of the unfairness. Source: E. T. Whittaker, On a new
// method of graduation, 1923.
func (f *Frame) fair(stand []float64, stiff float64, unfair func(pin int) []float64) []float64 {
	n := len(stand)
	var free []int
	number := make([]int, n+2) // of the unknown at a pin; -1 where it is known
	known := make([]float64, n+2)
	for p := range number {
		number[p] = -1
		switch {
		case p == 0 || p == n+1:
		case math.IsNaN(stand[p-1]):
			number[p] = len(free)
			free = append(free, p)
		default:
			known[p] = stand[p-1]
		}
	}
	out := make([]float64, n)
	if len(free) > 0 {
		t := f.settle(free, number, known, stiff, unfair)
		for k, p := range free {
			known[p] = t[k]
		}
	}
	copy(out, known[1:n+1])
	return out
}

// settle solves for the pins that are free.
func (f *Frame) settle(free, number []int, known []float64, stiff float64, unfair func(pin int) []float64) []float64 {
	a, y := make([][]float64, len(free)), make([]float64, len(free))
	for k := range a {
		a[k] = make([]float64, len(free))
		a[k][k] = 1
	}
	for p := 1; p < len(f.at)-1; p++ {
		row := unfair(p)
		first := p - len(row)/2
		for j, u := range row {
			k := number[first+j]
			if k < 0 {
				continue
			}
			for l, v := range row {
				if m := number[first+l]; m >= 0 {
					a[k][m] += stiff * u * v
				} else {
					y[k] -= stiff * u * v * known[first+l]
				}
			}
		}
	}
	x, _ := equations.Eliminate(a, y) // never singular: every unknown has a weight of its own
	return x
}

// bendAt is how a batten bends at a pin, as shares of the offsets of the pins around it: the
// divided second difference, scaled to the pitch of the ribs.
func (f *Frame) bendAt(p int) []float64 {
	pitch := (f.at[len(f.at)-2] - f.at[1]) / float64(len(f.at)-3)
	before, after := (f.at[p]-f.at[p-1])/pitch, (f.at[p+1]-f.at[p])/pitch
	all := 2 / (before + after)
	return []float64{all / before, -all/before - all/after, all / after}
}

// bumpAt is how far a pin stands off a batten through the two nearest pins on either side,
// the cubic through them, as shares of the offsets; none where there are not so many.
func (f *Frame) bumpAt(p int) []float64 {
	if p < 2 || p > len(f.at)-3 {
		return nil
	}
	out := make([]float64, 5)
	for j := range out {
		out[j] = -1
		for k := p - 2; k <= p+2; k++ {
			if at := p - 2 + j; k != p && k != at {
				out[j] *= (f.at[p] - f.at[k]) / (f.at[at] - f.at[k])
			}
		}
	}
	out[2] = 1
	return out
}

func nans(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = math.NaN()
	}
	return out
}
