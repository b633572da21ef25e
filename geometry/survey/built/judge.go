package built

import (
	"math"
	"slices"
)

// Verdict is what to do with a rib.
type Verdict int

// The verdicts.
const (
	Leave    Verdict = iota
	Wait             // until its neighbors stand
	Again            // it is farther off than hands come: measure it again
	Pack             // it is a little short: a wedge between it and the keel
	Shorten          // it stands proud
	Center           // one side is fuller than the other
	Ease             // it is bent too far: open it hot
	OverBend         // it springs open: bend it again, farther
	Replace          // it is too short, or broken
)

// String names the verdict.
func (v Verdict) String() string {
	return [...]string{"leave", "wait", "measure again", "pack", "shorten", "center", "ease", "over-bend", "replace"}[v]
}

// Rib is one rib as it was measured. What is not known is NaN.
type Rib struct {
	Rib, Line   int
	Beam, Depth float64 // off the drawing, wider and deeper positive, mm
	Fuller      float64 // to port than to starboard at the bilge, mm
	BeamBump    float64 // how far it stands off a batten through its four neighbors, wider positive, mm
	DepthBump   float64 // the same, deeper positive
	Wider       float64 // than it should stand free, mm
	Verdict     Verdict
	Beside      bool    // it stands off only because a neighbor does, which is mended
	By          float64 // how much, mm: the wedge, the length off both ends together, half of what one side is fuller
	Hot         float64 // how wide it is held hot when it is bent again, mm
	Minutes     float64 // that bending it again takes, besides soaking: steam, and hands
}

// What is left alone, mm. From memory of boats judged by eye, no source; a tape reads to 1.
const (
	proud     = 4.0  // a bump outward
	shy       = 5.0  // a hollow
	lost      = 8.0  // a hollow that a wedge no longer hides
	uneven    = 5.0  // half of what one side is fuller at one height
	bentWrong = 3.5  // off in depth for a bend that came out otherwise: worth bending again
	far       = 15.0 // off the drawing: hands seldom miss by as much, our own choice
	hands     = 20.0 // minutes to take a rib out, bend it and fit it again, our own choice
)

// judge reads the bumps and says what to do with every rib on the card.
//
// How: one rib that stands proud makes its neighbors look shy. So the rib that stands off
// most is taken first, and the others are judged as if it were mended, one after the other.
// Where a neighbor does not stand yet, the place that it is re-solved for counts.
func (r *Report) judge(card []Row) {
	off := [2][]float64{make([]float64, len(r.at)), make([]float64, len(r.at))} // stems as drawn
	for i, k := range r.Kept {
		off[0][i+1], off[1][i+1] = k.Beam, k.Depth
	}
	stands := make([]bool, len(r.at))
	for _, row := range card {
		stands[row.Rib+1] = row.Stands()
	}
	for _, row := range card {
		for m := range off {
			if v := r.off(row, m); isFar(v) && (r.judged(stands, row.Rib+1) || !r.alone(card, row, m)) {
				off[m][row.Rib+1] = v
			}
		}
	}
	for _, row := range card {
		out := Rib{Rib: row.Rib, Line: row.Line, Beam: r.off(row, Beam), Depth: r.off(row, Depth),
			Fuller: row.Is[BilgePort] - row.Is[BilgeStarboard], Wider: row.Is[Free] - r.ribs[row.Rib].free}
		out.BeamBump, out.DepthBump = r.bumpsAt(off, stands, row)
		r.Ribs = append(r.Ribs, out)
	}
	first := slices.Clone(r.Ribs)
	var mended []int
	for {
		worst, most := -1, 1.0
		for k, row := range card {
			rib := &r.Ribs[k]
			if slices.Contains(mended, k) {
				continue
			}
			rib.BeamBump, rib.DepthBump = r.bumpsAt(off, stands, row)
			if v := rib.stands(); v > most {
				worst, most = k, v
			}
		}
		if worst < 0 {
			break
		}
		mended = append(mended, worst)
		p := card[worst].Rib + 1
		off[0][p] -= zero(r.Ribs[worst].BeamBump)
		off[1][p] -= zero(r.Ribs[worst].DepthBump)
	}
	for k, row := range card {
		rib := &r.Ribs[k]
		r.decide(rib, row)
		if rib.Verdict == Leave {
			rib.Beside = first[k].stands() > 1
			rib.BeamBump, rib.DepthBump = first[k].BeamBump, first[k].DepthBump
		}
	}
}

// stands is how far a rib stands off its neighbors, over what is left alone.
func (r Rib) stands() float64 {
	most := 0.0
	for _, v := range [2]float64{r.BeamBump, r.DepthBump} {
		most = math.Max(most, math.Max(zero(v)/proud, -zero(v)/shy))
	}
	return most
}

// judged reports whether a neighbor of a pin stands on either side.
func (f *Frame) judged(stands []bool, p int) bool {
	return p >= 2 && p <= len(stands)-3 && (stands[p-1] || stands[p-2]) && (stands[p+1] || stands[p+2])
}

// off is how far a rib is measured off the drawing in beam or depth, mm.
func (f *Frame) off(row Row, measure int) float64 {
	return row.Is[measure] - f.Drawn(row.Rib, measure)
}

// isFar reports whether a rib is so far off that it is measured again before others follow it.
func isFar(off float64) bool { return math.Abs(off) > far }

// alone reports whether no rib beside one stands about as far off.
func (r *Report) alone(card []Row, row Row, measure int) bool {
	return !slices.ContainsFunc(card, func(o Row) bool {
		beside := o.Rib - row.Rib
		return beside != 0 && beside >= -2 && beside <= 2 && math.Abs(r.off(o, measure)-r.off(row, measure)) <= far
	})
}

// bumpsAt are those of a rib that stands with a neighbor on either side; else NaN.
func (r *Report) bumpsAt(off [2][]float64, stands []bool, row Row) (beam, depth float64) {
	p := row.Rib + 1
	if !row.Stands() || !r.judged(stands, p) {
		return math.NaN(), math.NaN()
	}
	for j, share := range r.bumpAt(p) {
		beam, depth = beam+share*off[0][p-2+j], depth+share*off[1][p-2+j]
	}
	if math.IsNaN(row.Is[Beam]) {
		beam = math.NaN()
	}
	if math.IsNaN(row.Is[Depth]) {
		depth = math.NaN()
	}
	return beam, depth
}

// decide says what to do with one rib: first what is broken, then a bend that came out
// wrong, then a length, then one side fuller.
func (r *Report) decide(out *Rib, row Row) {
	i := out.Rib
	// A bump asks for a length as if the section were solved anew: wider and deeper.
	longer, bump := 0.0, 0.0
	for _, v := range [2][2]float64{{out.BeamBump, r.curb[i].Beam}, {out.DepthBump, r.curb[i].Depth}} {
		if !math.IsNaN(v[0]) {
			longer += v[0] * v[1]
			if math.Abs(v[0]) > math.Abs(bump) {
				bump = v[0]
			}
		}
	}
	bent := out.Wider * r.ribs[i].deeper // that the boat shows of it
	switch {
	case row.Broken:
		out.Verdict = Replace
	case math.Abs(bent) > bentWrong:
		if out.Verdict = OverBend; out.Wider < 0 {
			out.Verdict = Ease
		}
		out.Hot = r.HotFor(i, r.ribs[i].free, r.Spring.Now)
		out.Minutes = math.Round(r.Report.Ribs[i].Minutes + hands)
	case !row.Stands() || math.IsNaN(out.BeamBump) && math.IsNaN(out.DepthBump):
		out.Verdict = Wait
		if row.Stands() && r.last(i) {
			out.Verdict = Leave
		}
	case bump > proud:
		out.Verdict, out.By = Shorten, math.Abs(longer)
	case bump < -lost:
		out.Verdict, out.By = Replace, math.Abs(longer)
	case bump < -shy:
		out.Verdict, out.By = Pack, -bump
	}
	// In a frame that stands as a whole and is fair, no other rib would follow it.
	unjudged := math.IsNaN(out.BeamBump) && math.IsNaN(out.DepthBump)
	if out.Verdict <= Wait && (isFar(out.Beam) || isFar(out.Depth)) && (unjudged || !r.Done()) {
		out.Verdict = Again
	}
	if out.Verdict <= Wait && math.Abs(out.Fuller)/2 > uneven {
		out.Verdict, out.By = Center, math.Abs(out.Fuller)/2
	}
}

// last reports whether a rib is the last at its end, where no batten tells.
func (r *Report) last(i int) bool { return i == 0 || i == len(r.ribs)-1 }

// Off is how far the frame is off and how fair it is, over the ribs that stand.
type Off struct {
	Standing    int
	Beam, Depth float64 // root mean square off the drawing, mm
	Bump        float64 // root mean square of all bumps, mm; NaN without any
	Worst       int     // the rib that is farthest off in beam or depth, from aft; -1 for none
	WorstOff    float64
	WorstIn     int // Beam or Depth
	Fix         int // ribs that want something done
	Again       int // ribs to be measured again
}

func (r *Report) sum() {
	o := &r.Off
	o.Worst = -1
	var squares [3]float64
	var count [3]int
	add := func(k int, v float64) {
		if !math.IsNaN(v) {
			squares[k] += v * v
			count[k]++
		}
	}
	for _, rib := range r.Ribs {
		if !math.IsNaN(rib.Beam) || !math.IsNaN(rib.Depth) {
			o.Standing++
		}
		add(0, rib.Beam)
		add(1, rib.Depth)
		add(2, rib.BeamBump)
		add(2, rib.DepthBump)
		for m, v := range [2]float64{rib.Beam, rib.Depth} { // as Beam and Depth are numbered
			if math.Abs(v) > math.Abs(o.WorstOff) {
				o.Worst, o.WorstOff, o.WorstIn = rib.Rib, v, m
			}
		}
		switch {
		case rib.Verdict == Again:
			o.Again++
		case rib.Verdict > Wait:
			o.Fix++
		}
	}
	rms := func(k int) float64 { return math.Sqrt(squares[k] / float64(count[k])) }
	o.Beam, o.Depth, o.Bump = rms(0), rms(1), rms(2)
}

// Fair reports whether no rib that stands wants anything done.
func (r *Report) Fair() bool { return r.Off.Fix == 0 && r.Off.Again == 0 }

// Done reports whether every rib stands and was measured.
func (r *Report) Done() bool { return len(r.Remaining) == 0 }
