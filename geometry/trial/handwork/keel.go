package handwork

import (
	"fmt"

	"ribwright/geometry/curve"
	"ribwright/geometry/equations"
)

// keel is the keel as a batten on the ribs, free to turn at the stems.
type keel struct {
	by         [][]float64 // at every rib: how high it comes to lie there, mm per mm that each rib asks for
	stern, bow []float64   // at every rib, for each mm that a stem stands higher
	middle     []float64   // at midship, for each mm at every rib
	ends       [2]float64  // the same for stern and bow, with all ribs held
	units      []*curve.Batten
}

// newKeel rests a batten of the stiffness, N mm2, from end to end on springs at places
// from aft forward, N per mm.
//
// How: a batten pushed at its pins alone is the natural spline through them, so a pin's
// push is the stiffness times the break of the third derivative there.
func newKeel(stiffness, aft, fore float64, at, springs []float64) (*keel, error) {
	n := len(at)
	x := append(append([]float64{aft}, at...), fore)
	k := &keel{middle: make([]float64, n)}
	push := make([][]float64, n+2) // by pin that is moved: push at every rib
	for j := range push {
		y := make([]float64, n+2)
		y[j] = 1
		unit, err := curve.NewBatten(x, y)
		if err != nil {
			return nil, fmt.Errorf("keel: %w", err)
		}
		k.units = append(k.units, unit)
		push[j] = pushes(unit, x, stiffness)
	}
	a := equations.NewProfile(make([]int, n)) // full: a spline joins every rib with every other
	right := make([][]float64, n+2)
	for i := range n {
		for j := range i + 1 {
			a.Add(i, j, push[j+1][i])
		}
		a.Add(i, i, springs[i])
		unit := make([]float64, n)
		unit[i] = springs[i]
		right[i] = unit
		right[n], right[n+1] = append(right[n], -push[0][i]), append(right[n+1], -push[n+1][i])
	}
	if !a.Factor() {
		return nil, fmt.Errorf("keel: it rests on nothing")
	}
	for _, y := range right {
		a.Solve(y)
	}
	k.by, k.stern, k.bow = make([][]float64, n), right[n], right[n+1]
	for i := range n {
		k.by[i] = make([]float64, n)
		for j, asked := range right[:n] {
			k.by[i][j] = asked[i]
		}
		k.middle[i], _, _ = k.units[i+1].At(0)
	}
	k.ends[0], _, _ = k.units[0].At(0)
	k.ends[1], _, _ = k.units[n+1].At(0)
	return k, nil
}

// pushes returns what holds a spline at its inner pins.
func pushes(b *curve.Batten, x []float64, stiffness float64) []float64 {
	m := make([]float64, len(x))
	for i := range x {
		_, _, m[i] = b.At(x[i])
	}
	third := func(i int) float64 { return (m[i+1] - m[i]) / (x[i+1] - x[i]) }
	out := make([]float64, len(x)-2)
	for i := range out {
		out[i] = stiffness * (third(i+1) - third(i))
	}
	return out
}

// rests returns how high the keel comes to lie at every rib when the ribs ask for the
// given heights and the stems stand so much higher, mm.
func (k *keel) rests(wanted []float64, stern, bow float64) []float64 {
	out := make([]float64, len(k.by))
	for i, by := range k.by {
		out[i] = stern*k.stern[i] + bow*k.bow[i] + equations.Dot(wanted, by)
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
