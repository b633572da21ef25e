package pushed

import (
	"math"

	"ribwright/geometry/curve"
)

// strip is a springy strip of length 1 that starts level at (0, 0), in arcs of equal
// length, and what holds its far end: the force that pushes it back towards the start,
// and the one that lifts it, in units of its stiffness in bending.
type strip struct {
	turn       []float64 // of each arc, radians
	push, lift float64
}

// chain is the strip at a length in mm.
func (s *strip) chain(length float64) curve.Chain {
	out := make(curve.Chain, len(s.turn))
	long := length / float64(len(out))
	for i, turn := range s.turn {
		out[i] = curve.Straight(long)
		if turn != 0 {
			out[i] = curve.Bend{Radius: long / turn, Sweep: turn, Length: long}
		}
	}
	return out
}

// tightest returns the least radius of a strip of the given length, +Inf when straight.
// An arc knows the bend at its middle; at the ends, half an arc on, the bend is that of
// the last two carried on straight.
func (s *strip) tightest(length float64) float64 {
	n, most := len(s.turn), 0.0
	for _, turn := range s.turn {
		most = max(most, math.Abs(turn))
	}
	most = math.Max(most, math.Abs(1.5*s.turn[0]-0.5*s.turn[1]))
	most = math.Max(most, math.Abs(1.5*s.turn[n-1]-0.5*s.turn[n-2]))
	return length / float64(n) / most
}

// aim is where the far end of a strip is held.
type aim struct {
	x, y    float64
	clamped bool    // it keeps its heading there; else it turns freely
	heading float64 // radians, of a clamped end
}

// relax lets the strip come to rest from where it is, its far end held at the aim, and
// reports whether it does. y is room to work in, for as many arcs.
//
// How: of all chains of as many arcs that reach the aim, the one whose bending energy
// does not change by a small turn of any arc (Ritz; the forces are Lagrange's
// multipliers). Newton's method finds it in four or five steps; none turns any joint by
// more than a third of a radian, so that the strip goes to the rest that is nearest.
// Accuracy: the end and the length to 1e-12; the shape falls short of the true one with
// the square of an arc's length (TestStrut).
func (s *strip) relax(a aim, y *yield) bool {
	for range 40 {
		switch most := s.step(y, a); {
		case !(most < 100): // NaN too
			return false
		case most < 1e-5: // and now about its square
			return true
		}
	}
	return false
}

// step makes one step and returns by how much it would have turned a joint at most.
func (s *strip) step(y *yield, a aim) (most float64) {
	y.of(s, a)
	n := len(s.turn)
	if a.clamped {
		n--
	}
	y.solve(n)
	joints := y.joints[:n]
	var across, up [3]float64 // how the end moves
	for i := range joints {
		j := &joints[i]
		for k, t := range j.by {
			across[k] -= t * j.back
			up[k] += t * j.rise
		}
	}
	x, z := y.across-across[0], y.up-up[0]
	det := across[1]*up[2] - across[2]*up[1]
	push, lift := (x*up[2]-z*across[2])/det, (across[1]*z-up[1]*x)/det
	for i := range joints {
		by := &joints[i].by
		by[0] += push*by[1] + lift*by[2]
		most = max(most, math.Abs(by[0]))
	}
	share := min(1, 0.35/most)
	for i := range joints {
		t := joints[i].by[0]
		s.turn[i] += share * t
		if i+1 < len(s.turn) {
			s.turn[i+1] -= share * t
		}
	}
	s.push, s.lift = s.push+share*push, s.lift+share*lift
	return most
}

// yield is how a strip gives.
type yield struct {
	joints     []joint   // at the far end of each arc
	turn       []float64 // room for a strip's turns
	across, up float64   // from the far end to the aim
}

// joint is how a strip gives at the far joint of one arc.
type joint struct {
	band       float64    // stiffness against turning the joint alone
	side       float64    // and against turning the one after it
	by         [3]float64 // unbalanced moment, and those of push 1 and lift 1; then how far they turn the joint
	back, rise float64    // how the end moves for a turn of the joint
}

func newYield(n int) *yield { return &yield{joints: make([]joint, n), turn: make([]float64, n)} }

// of works it out for a strip as it is. An arc moves its end by its chord, which leans
// by the mean of the headings at its ends: what moves the chord is that mean, and the
// turn, which shortens it.
func (y *yield) of(s *strip, a aim) {
	n := len(s.turn)
	h := 1 / float64(n)
	y.across, y.up = a.x, a.y
	heading := 0.0
	for i, t := range s.turn {
		if i == n-1 && a.clamped {
			t = a.heading - heading
			s.turn[i] = t
		}
		sin, cos := math.Sincos(heading + t/2)
		heading += t
		chord, shorter := h*curve.Sinc(t/2), -h*t*(1.0/12)*(1-t*t*(1.0/40)) // and its slope in t
		y.across, y.up = y.across-chord*cos, y.up-chord*sin
		// By the mean and by the turn: how far back and up the end goes.
		backMean, backTurn, riseMean, riseTurn := chord*sin/2, -shorter*cos, chord*cos/2, shorter*sin
		mean := -(s.push*chord*cos - s.lift*chord*sin) / 4
		both := -shorter * (s.push*sin + s.lift*cos)
		turn := float64(n) - h*(1.0/12)*(s.push*cos-s.lift*sin)
		if i > 0 {
			j := &y.joints[i-1]
			j.band += mean - both + turn
			j.side = mean - turn
			j.back += backMean - backTurn
			j.rise += riseMean - riseTurn
			j.by[0] += float64(n) * t
		}
		y.joints[i] = joint{band: mean + both + turn, back: backMean + backTurn, rise: riseMean + riseTurn, by: [3]float64{-float64(n) * t}}
	}
	for i := range y.joints {
		j := &y.joints[i]
		j.by[0] += s.push*j.back + s.lift*j.rise
		j.by[1], j.by[2] = j.back, j.rise
	}
}

// solve finds the turns of the first n joints from the moments: their stiffness is a
// matrix of three diagonals.
func (y *yield) solve(n int) {
	joints := y.joints[:n]
	for i := 1; i < n; i++ {
		last, j := &joints[i-1], &joints[i]
		f := last.side / last.band
		j.band -= f * last.side
		for k := range j.by {
			j.by[k] -= f * last.by[k]
		}
	}
	var next [3]float64
	for i := n - 1; i >= 0; i-- {
		j := &joints[i]
		whole := 1 / j.band
		for k := range next {
			next[k] = (j.by[k] - j.side*next[k]) * whole
		}
		j.by = next
	}
}
