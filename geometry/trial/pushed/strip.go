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
		most = math.Max(most, math.Abs(turn))
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
	var across, up [3]float64 // how the end moves
	for k, by := range y.by {
		for i, t := range by[:n] {
			across[k] -= t * y.back[i]
			up[k] += t * y.rise[i]
		}
	}
	x, z := y.across-across[0], y.up-up[0]
	det := across[1]*up[2] - across[2]*up[1]
	push, lift := (x*up[2]-z*across[2])/det, (across[1]*z-up[1]*x)/det
	by := y.by[0][:n]
	for i := range by {
		by[i] += push*y.by[1][i] + lift*y.by[2][i]
		most = math.Max(most, math.Abs(by[i]))
	}
	share := math.Min(1, 0.35/most)
	for i, t := range by {
		s.turn[i] += share * t
		if i+1 < len(s.turn) {
			s.turn[i+1] -= share * t
		}
	}
	s.push, s.lift = s.push+share*push, s.lift+share*lift
	return most
}

// yield is how a strip gives at the far joint of each arc.
type yield struct {
	band       []float64    // stiffness against turning the joint alone
	side       []float64    // and against turning the one after it
	by         [3][]float64 // unbalanced moments, and those of push 1 and lift 1; then how far they turn the joints
	back, rise []float64    // how the end moves for a turn of the joint
	across, up float64      // from the far end to the aim
}

func newYield(n int) *yield {
	all := make([]float64, 7*n)
	cut := func(k int) []float64 { return all[k*n : (k+1)*n] }
	return &yield{band: cut(0), side: cut(1), by: [3][]float64{cut(2), cut(3), cut(4)}, back: cut(5), rise: cut(6)}
}

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
			y.band[i-1] += mean - both + turn
			y.side[i-1] = mean - turn
			y.back[i-1] += backMean - backTurn
			y.rise[i-1] += riseMean - riseTurn
			y.by[0][i-1] += float64(n) * t
		}
		y.band[i], y.back[i], y.rise[i] = mean+both+turn, backMean+backTurn, riseMean+riseTurn
		y.by[0][i] = -float64(n) * t
	}
	for i := range y.back {
		y.by[0][i] += s.push*y.back[i] + s.lift*y.rise[i]
		y.by[1][i], y.by[2][i] = y.back[i], y.rise[i]
	}
}

// solve finds the turns of the first n joints from the moments: their stiffness is a
// matrix of three diagonals.
func (y *yield) solve(n int) {
	for i := 1; i < n; i++ {
		f := y.side[i-1] / y.band[i-1]
		y.band[i] -= f * y.side[i-1]
		for k := range y.by {
			y.by[k][i] -= f * y.by[k][i-1]
		}
	}
	for _, t := range y.by {
		t[n-1] /= y.band[n-1]
		for i := n - 2; i >= 0; i-- {
			t[i] = (t[i] - y.side[i]*t[i+1]) / y.band[i]
		}
	}
}
