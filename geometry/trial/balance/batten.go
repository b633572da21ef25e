package balance

import "math"

// batten is a stringer on the port side or the port half of the keel, lashed to the ribs
// and ended on the stems. As a stick it was straight. It is a beam about both axes of the
// stick and moves at every rib as the rib moves it; on the stems it turns freely.
type batten struct {
	ends       bool         // whether its end bends may be steamed
	moe        float64      // N/mm2
	wide, deep float64      // along the rib and off it, mm
	x          []float64    // stations: its after end, the ribs, its forward end, mm
	at, slope  [][2]float64 // outward and upward there, as drawn: mm, and mm per mm
	face       []float64    // heading of the rib under it, radians from level; that of the next rib at the ends
}

// axis is one of a stick's own: its direction outward and upward, and the stiffness
// against bending that way, N mm2.
type axis struct {
	along [2]float64
	stiff float64
}

// axes are those of the stretch from place i to the next, of a stick whose flat lies
// half-way between those of both ribs: off its flat and along it.
//
// A stick that runs aslant by φ is longer than its stations: as in rail, E I cos φ
// against a small change.
func (b *batten) axes(i int) [2]axis {
	sin, cos := math.Sincos((b.face[i] + b.face[i+1]) / 2)
	lean := b.moe * b.lean(i) / 12
	return [2]axis{{[2]float64{sin, -cos}, lean * b.wide * cube(b.deep)}, {[2]float64{cos, sin}, lean * b.deep * cube(b.wide)}}
}

// share is how much of the bend of the stretch from place i to the next, as its stations
// draw it, strains it: a line that runs aslant by φ is curved by cos³ φ of its second
// derivative, and its stiffness has one cos φ of that.
func (b *batten) share(i int) float64 {
	lean := b.lean(i)
	return lean * lean
}

// lean is the cosine of how far the stretch from place i to the next runs aslant.
func (b *batten) lean(i int) float64 {
	run := b.x[i+1] - b.x[i]
	out, up := b.at[i+1][0]-b.at[i][0], b.at[i+1][1]-b.at[i][1]
	return run / math.Sqrt(run*run+out*out+up*up)
}

func cube(v float64) float64 { return v * v * v }

// stress is the greatest in a corner of the stick over its end bends when they are
// forced cold, N/mm2: from the last rib but one to the stem.
func (b *batten) stress() float64 {
	worst := 0.0
	for _, i := range []int{0, 1, len(b.x) - 3, len(b.x) - 2} {
		for _, end := range []float64{0, 1} {
			h := b.x[i+1] - b.x[i]
			var curved [2]float64
			for d := range 2 {
				for p, c := range curvatures(end, h) {
					curved[d] += c * [4]float64{b.at[i][d], b.slope[i][d], b.at[i+1][d], b.slope[i+1][d]}[p]
				}
				curved[d] *= cube(b.lean(i)) // of a line, from its second derivative
			}
			sin, cos := math.Sincos(b.face[i+int(end)])
			off, along := curved[0]*sin-curved[1]*cos, curved[0]*cos+curved[1]*sin
			worst = math.Max(worst, b.moe*(b.deep*math.Abs(off)+b.wide*math.Abs(along))/2)
		}
	}
	return worst
}

// owed is what a place or slope of a stick owes to the ways of a rib: to the amount of
// each, and to its slope along the boat.
type owed [2 * modes]float64

// lashed is a batten on the ribs that are there, and how it follows the two of them between
// which it is looked at.
type lashed struct {
	*batten
	number        int     // of the batten in what a rib moves
	on            []*hoop // the ribs
	places, turns [2][2]owed
	middle, ends  []float64 // how it pushes: by its bend between the last ribs but one, and by its bends beyond them, which may be steamed
}

func (m *Model) lash(b *batten, number int, on []*hoop) lashed {
	l := lashed{batten: b, number: number, on: on, middle: m.push[0], ends: m.push[0]}
	if b.ends {
		l.ends = m.push[1]
	}
	return l
}

// follow goes on to the stretch from rib i to the next: from the first to the last, one
// after the other.
func (l *lashed) follow(i int) {
	if i == 0 {
		l.places[1], l.turns[1] = l.follows(0)
	}
	l.places[0], l.turns[0] = l.places[1], l.turns[1]
	l.places[1], l.turns[1] = l.follows(i + 1)
}

// follows returns how the ways at rib i move the batten outward and upward, and how they
// make it slope: by their own slopes, and because from rib to rib the same way moves it
// more or less.
func (l *lashed) follows(i int) (place, slope [2]owed) {
	lo, hi := max(0, i-1), min(len(l.on)-1, i+1)
	x := l.x[1:]
	before, after := x[i]-x[lo], x[hi]-x[i]
	move := func(i int) *[2]ways { return &l.on[i].move[l.number] }
	for d := range 2 {
		for k, here := range move(i)[d] {
			rise, on := 0.0, 0.0 // slopes on either side, weighed for a parabola
			if lo < i {
				rise = (here - move(lo)[d][k]) / before
				on = rise
			}
			if hi > i {
				on = (move(hi)[d][k] - here) / after
				if lo == i {
					rise = on
				}
			}
			place[d][2*k] = here
			slope[d][2*k] = (rise*after + on*before) / (before + after)
			slope[d][2*k+1] = here
		}
	}
	return place, slope
}

// over is the batten on those of its ribs that are there.
func (b *batten) over(ribs []int) *batten {
	if len(ribs) == len(b.x)-2 {
		return b
	}
	out := &batten{moe: b.moe, ends: b.ends, wide: b.wide, deep: b.deep}
	last := len(b.x) - 1
	places := []int{0}
	for _, i := range ribs {
		places = append(places, i+1)
	}
	for _, i := range append(places, last) {
		out.x, out.at, out.slope, out.face = append(out.x, b.x[i]), append(out.at, b.at[i]), append(out.slope, b.slope[i]), append(out.face, b.face[i])
	}
	return out
}

// bay is the stiffness that all battens have between two neighboring ribs.
type bay struct {
	at  [4 * modes]int // the unknowns of both
	sum [4 * modes][4 * modes]float64
}

// strain is one way in which a stretch of a batten is bent: what it owes to either rib,
// and how much there is of it as drawn.
type strain struct {
	by    [4 * modes]float64
	drawn float64
}

// owe adds so many times what is owed to a rib, the first or the second, and to the
// drawing.
func (s *strain) owe(times float64, rib int, to *owed, drawn float64) {
	into := s.by[rib*len(to) : (rib+1)*len(to)]
	for k, v := range to {
		into[k] += times * v
	}
	s.drawn += times * drawn
}

// bear adds a strain that the stretch resists with so much. It was unstrained when
// straight and is drawn bent, by the share given, so it pushes.
func (y *bay) bear(s *strain, stiff, share float64, push []float64) {
	force := stiff * share * s.drawn
	for i, v := range s.by {
		if v == 0 {
			continue
		}
		push[y.at[i]] -= force * v
		v *= stiff
		into := y.sum[i][:i+1]
		for j, w := range s.by[:len(into)] {
			into[j] += v * w
		}
	}
}

// stretch adds the stretch of a batten from rib i to the next.
//
// How: a stick of the length h without a load between its ends bends in two ways, evenly
// by the difference p of its ends' turns, and both ways by their sum less twice the turn
// of its chord, q. About each of its axes its energy is E I/h (p² + 3 q²)/2.
func (y *bay) stretch(b *lashed, i int, push []float64) {
	h := b.x[i+2] - b.x[i+1]
	share := b.share(i + 1)
	for _, axis := range b.axes(i + 1) {
		var even, skew strain
		for d, w := range axis.along {
			for k := range 2 {
				side := float64(2*k - 1)
				even.owe(side*w, k, &b.turns[k][d], b.slope[i+1+k][d])
				skew.owe(w, k, &b.turns[k][d], b.slope[i+1+k][d])
				skew.owe(-2/h*side*w, k, &b.places[k][d], b.at[i+1+k][d])
			}
		}
		y.bear(&even, axis.stiff/h, share, push)
		y.bear(&skew, 3*axis.stiff/h, share, push)
	}
}

// runOut adds the stretch i of a batten, from the first rib of the bay to the stem
// behind it or from the second to the one before it. There the stick turns freely: a beam
// of the length h is bent by as much as the stem lies off its slope at the rib, with
// 3 E I/h³.
func (y *bay) runOut(b *lashed, i, side int) {
	near, far := 1, 0
	if side == 1 {
		near, far = i, i+1
	}
	h := b.x[far] - b.x[near]
	for _, axis := range b.axes(i) {
		var off strain
		for d, w := range axis.along {
			off.owe(w, side, &b.places[side][d], b.at[near][d]+h*b.slope[near][d]-b.at[far][d])
			off.owe(w*h, side, &b.turns[side][d], 0)
		}
		y.bear(&off, 3*axis.stiff/cube(math.Abs(h)), b.share(i), b.ends)
	}
}
