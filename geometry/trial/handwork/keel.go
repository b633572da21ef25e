package handwork

import (
	"fmt"
	"slices"

	"ribwright/geometry/curve"
	"ribwright/geometry/equations"
)

// keel is the keel as a batten on the ribs, free to turn at the stems.
type keel struct {
	by         [][]float64 // at every rib: how high it comes to lie there, mm per mm that each rib asks for
	stern, bow []float64   // at every rib, for each mm that a stem stands higher
	middle     []float64   // at midship, for each mm at every rib
	ends       [2]float64  // the same for stern and bow, with all ribs held
	units      []curve.Batten
}

// newKeel rests a batten of the stiffness, N mm2, from end to end on springs at places
// from aft forward, N per mm.
//
// How: a batten pushed at its pins alone is the natural spline through them, so a pin's
// push is the stiffness times the break of the third derivative there.
func newKeel(stiffness, aft, fore float64, at, springs []float64) (*keel, error) {
	n := len(at)
	x := slices.Concat([]float64{aft}, at, []float64{fore})
	units, err := curve.UnitBattens(x)
	if err != nil {
		return nil, fmt.Errorf("keel: %w", err)
	}
	k := &keel{units: units, middle: make([]float64, n)}
	push := equations.Rows(n+2, n) // by pin that is moved: push at every rib
	for j := range push {
		pushes(&units[j], x, stiffness, push[j])
	}
	a := equations.NewProfile(make([]int, n)) // full: a spline joins every rib with every other
	right := equations.Rows(n+2, n)
	for i := range n {
		for j := range i + 1 {
			a.Add(i, j, push[j+1][i])
		}
		a.Add(i, i, springs[i])
		right[i][i] = springs[i]
		right[n][i], right[n+1][i] = -push[0][i], -push[n+1][i]
	}
	if !a.Factor() {
		return nil, fmt.Errorf("keel: it rests on nothing")
	}
	for _, y := range right {
		a.Solve(y)
	}
	k.by, k.stern, k.bow = push[:n], right[n], right[n+1] // in the room of what has been read
	for i := range n {
		for j, asked := range right[:n] {
			k.by[i][j] = asked[i]
		}
		k.middle[i], _, _ = k.units[i+1].At(0)
	}
	k.ends[0], _, _ = k.units[0].At(0)
	k.ends[1], _, _ = k.units[n+1].At(0)
	return k, nil
}

// pushes sets out to what holds a spline at its inner pins.
func pushes(b *curve.Batten, x []float64, stiffness float64, out []float64) {
	_, _, bend := b.At(x[0])
	before := 0.0
	for i := range len(x) - 1 {
		_, _, next := b.At(x[i+1])
		third := (next - bend) / (x[i+1] - x[i])
		if i > 0 {
			out[i-1] = stiffness * (third - before)
		}
		before, bend = third, next
	}
}

// rests returns how high the keel comes to lie at every rib when the ribs ask for the
// given heights and the stems stand so much higher, mm, in the room of out.
func (k *keel) rests(wanted []float64, stern, bow float64, out []float64) []float64 {
	out = out[:0]
	for i, by := range k.by {
		out = append(out, stern*k.stern[i]+bow*k.bow[i]+equations.Dot(wanted, by))
	}
	return out
}

// midship returns the height of the keel at midship from that at every rib.
func (k *keel) midship(z []float64, stern, bow float64) float64 {
	sum := k.ends[0]*stern + k.ends[1]*bow
	for i, v := range z {
		sum += k.middle[i] * v
	}
	return sum
}
