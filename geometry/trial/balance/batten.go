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

// stiffness is that of the stretch from place i to the next, outward, across and
// upward, N mm2: of a stick whose flat lies half-way between those of both ribs.
//
// A stick that runs aslant by φ is longer than its stations: as in rail, E I cos φ
// against a small change.
func (b *batten) stiffness(i int) [2][2]float64 {
	off, along := b.moe*b.wide*cube(b.deep)/12, b.moe*b.deep*cube(b.wide)/12
	sin, cos := math.Sincos((b.face[i] + b.face[i+1]) / 2)
	lean := b.lean(i)
	return [2][2]float64{
		{lean * (off*sin*sin + along*cos*cos), lean * (along - off) * sin * cos},
		{lean * (along - off) * sin * cos, lean * (off*cos*cos + along*sin*sin)},
	}
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

// row is what a place or slope of a stick owes to the amounts of the ways at two
// neighboring ribs and to their slopes along the boat: amount and slope of every way of
// the first rib, then of the second.
type row [4 * modes]float64

// tied returns rows for how the ways at each rib move a batten outward and upward, and
// how they make it slope: by their own slopes, and because from rib to rib the same way
// moves it more or less.
func (b *batten) tied(move [][2]ways) (place, slope [][2]row) {
	place, slope = make([][2]row, len(move)), make([][2]row, len(move))
	for i := range move {
		lo, hi := max(0, i-1), min(len(move)-1, i+1)
		x := b.x[1:]
		before, after := x[i]-x[lo], x[hi]-x[i]
		for d := range 2 {
			for k, here := range move[i][d] {
				rise, on := 0.0, 0.0 // slopes on either side, weighed for a parabola
				if lo < i {
					rise = (here - move[lo][d][k]) / before
					on = rise
				}
				if hi > i {
					on = (move[hi][d][k] - here) / after
					if lo == i {
						rise = on
					}
				}
				place[i][d][2*k] = here
				slope[i][d][2*k] = (rise*after + on*before) / (before + after)
				slope[i][d][2*k+1] = here
			}
		}
	}
	return place, slope
}

// second moves what stands for the first rib of two to the second.
func (r row) second() row {
	var out row
	copy(out[2*modes:], r[:2*modes])
	return out
}

// beamed is the stiffness of an element of the length h mm for a stiffness of 1 against
// bending, in the order place, slope, place, slope.
func beamed(h float64) [4][4]float64 {
	a, b, c, d := 12/cube(h), 6/(h*h), 4/h, 2/h
	return [4][4]float64{{a, b, -a, b}, {b, c, -b, d}, {-a, -b, a, -b}, {b, d, -b, c}}
}

// over is the batten on those of its ribs that are there.
func (b *batten) over(ribs []int) *batten {
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

// lash adds a batten to the stiffness of the frame, and how it pushes because it would
// be straight: by its bend between the last ribs but one, and by its bends beyond them,
// which may be steamed.
func (m *Model) lash(b *batten, ribs []int, move [][2]ways) {
	n := len(ribs)
	middle, ends := m.push[0], m.push[0]
	if b.ends {
		ends = m.push[1]
	}
	place, slope := b.tied(move)
	for i := range n - 1 {
		var rows [2][4]row
		var drawn [2][4]float64
		for d := range 2 {
			rows[d] = [4]row{place[i][d], slope[i][d], place[i+1][d].second(), slope[i+1][d].second()}
			drawn[d] = [4]float64{b.at[i+1][d], b.slope[i+1][d], b.at[i+2][d], b.slope[i+2][d]}
		}
		into := middle
		if i == 0 || i == n-2 {
			into = ends
		}
		m.bear(b.piece(i+1, beamed(b.x[i+2]-b.x[i+1])), &rows, drawn, m.both(ribs[i], ribs[i+1]), into)
	}
	m.runOut(b, 0, b.x[0]-b.x[1], ribs[0], place[0], slope[0], ends)
	m.runOut(b, n, b.x[n+1]-b.x[n], ribs[n-1], place[n-1], slope[n-1], ends)
}

// runOut adds the stretch from a rib to a stem, on which the stick turns freely: a beam
// of the length h is bent by as much as the stem lies off its slope at the rib, with
// 3 E I / h³.
func (m *Model) runOut(b *batten, i int, h float64, rib int, place, slope [2]row, ends []float64) {
	near, far := 1, 0
	if h > 0 {
		near, far = i, i+1
	}
	var rows [2][4]row
	var drawn [2][4]float64
	for d := range 2 {
		off := place[d]
		for k, v := range slope[d] {
			off[k] += h * v
		}
		rows[d][0], drawn[d][0] = off, b.at[near][d]+h*b.slope[near][d]-b.at[far][d]
	}
	m.bear(b.piece(i, [4][4]float64{{3 / cube(math.Abs(h))}}), &rows, drawn, m.both(rib, rib), ends)
}

// piece is a stretch of a batten: its stiffness outward, across and upward, that of an
// element for a stiffness of 1, and the share of both that strains it as it is drawn.
type piece struct {
	bend  [2][2]float64
	k     [4][4]float64
	drawn float64
}

// piece is the stretch from place i to the next. A line that runs aslant by φ is curved
// by cos³ φ of its second derivative, and its stiffness has one cos φ of that.
func (b *batten) piece(i int, k [4][4]float64) piece {
	lean := b.lean(i)
	return piece{b.stiffness(i), k, lean * lean}
}

// both are the unknowns that a row stands for at two ribs.
func (m *Model) both(a, b int) (at [4 * modes]int) {
	for k := range 2 * modes {
		at[k], at[2*modes+k] = m.ribAt[a]+k, m.ribAt[b]+k
	}
	return at
}

// bear adds a strained piece, outward and upward. It was unstrained when straight and is
// drawn bent, so it pushes. The first two rows owe to the first rib, the others to the
// second.
func (m *Model) bear(p piece, rows *[2][4]row, drawn [2][4]float64, at [4 * modes]int, push []float64) {
	const half = 2 * modes
	var sum [4 * modes]row
	for c := range 2 {
		for q := range 4 {
			// What the place or slope q bears in the direction c.
			var bears row
			force := 0.0
			for d := range 2 {
				for r, k := range p.k[q] {
					if k *= p.bend[c][d]; k == 0 {
						continue
					}
					force += k * drawn[d][r] * p.drawn
					from := r / 2 * half
					for j, v := range rows[d][r][from : from+half] {
						bears[from+j] += k * v
					}
				}
			}
			from := q / 2 * half
			for i, v := range rows[c][q][from : from+half] {
				if v == 0 {
					continue
				}
				i += from
				push[at[i]] -= v * force
				into := sum[i][:i+1]
				for j, b := range bears[:len(into)] {
					into[j] += v * b
				}
			}
		}
	}
	for i := range sum {
		for j, v := range sum[i][:i+1] {
			if v != 0 {
				m.beam.Add(at[i], at[j], v)
			}
		}
	}
}
