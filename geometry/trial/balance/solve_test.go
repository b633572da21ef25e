package balance

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestBand solves random banded systems and compares with gonum's dense solver.
func TestBand(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for _, n := range []int{1, 2, 4, 9, 60} {
		b, dense := make(band, n), mat.NewSymDense(n, nil)
		for i := range n {
			for k := 0; k < reach && i+k < n; k++ {
				v := rnd.Float64() - 0.5
				if k == 0 {
					v += 4
				}
				b.add(i+k, i, v)
				dense.SetSym(i, i+k, v)
			}
		}
		y := make([]float64, n)
		for i := range y {
			y[i] = rnd.Float64()
		}
		f, ok := b.factor()
		if !ok {
			t.Fatalf("n = %d is refused", n)
		}
		got := f.solve(y)
		var want mat.VecDense
		if err := want.SolveVec(dense, mat.NewVecDense(n, y)); err != nil {
			t.Fatal(err)
		}
		for i, v := range got {
			if math.Abs(v-want.AtVec(i)) > 1e-12 {
				t.Errorf("n = %d: x[%d] = %v, want %v", n, i, v, want.AtVec(i))
			}
		}
	}
	loose := make(band, 2)
	loose.add(0, 0, 1)
	loose.add(0, 1, 1)
	loose.add(1, 1, 1)
	if _, ok := loose.factor(); ok {
		t.Error("a system that does not stand firm is solved")
	}
}

// TestEliminate does the same for full systems, one of which needs its rows
// exchanged.
func TestEliminate(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for _, n := range []int{1, 3, 20} {
		a, y, dense := make([][]float64, n), make([]float64, n), mat.NewDense(n, n, nil)
		for i := range a {
			a[i], y[i] = make([]float64, n), rnd.Float64()
			for j := range a[i] {
				if i != j || n == 1 {
					a[i][j] = rnd.Float64() - 0.5
				}
				dense.Set(i, j, a[i][j])
			}
		}
		var want mat.VecDense
		if err := want.SolveVec(dense, mat.NewVecDense(n, append([]float64(nil), y...))); err != nil {
			t.Fatal(err)
		}
		got, ok := eliminate(a, y)
		if !ok {
			t.Fatalf("n = %d is refused", n)
		}
		for i, v := range got {
			if math.Abs(v-want.AtVec(i)) > 1e-9 {
				t.Errorf("n = %d: x[%d] = %v, want %v", n, i, v, want.AtVec(i))
			}
		}
	}
	if _, ok := eliminate([][]float64{{1, 2}, {2, 4}}, []float64{1, 2}); ok {
		t.Error("two rows that say the same are solved")
	}
}
