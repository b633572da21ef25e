package equations

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestProfile solves random systems whose rows reach back unequally far, and compares
// with gonum's dense solver.
func TestProfile(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for _, n := range []int{1, 2, 4, 9, 60} {
		first := make([]int, n)
		for i := range first {
			first[i] = max(0, i-rnd.IntN(8))
		}
		p, dense := NewProfile(first), mat.NewSymDense(n, nil)
		for i := range n {
			for j := first[i]; j <= i; j++ {
				v := rnd.Float64() - 0.5
				if i == j {
					v += 8
				}
				p.Add(j, i, v)
				dense.SetSym(i, j, v)
			}
		}
		if n > 4 { // and one that is held
			p.Pin(3)
			for j := range n {
				dense.SetSym(3, j, 0)
			}
			dense.SetSym(3, 3, 1)
		}
		y := make([]float64, n)
		for i := range y {
			y[i] = rnd.Float64()
		}
		if !p.Factor() {
			t.Fatalf("n = %d is refused", n)
		}
		got := append([]float64(nil), y...)
		p.Solve(got)
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
	loose := NewProfile([]int{0, 0})
	loose.Add(0, 0, 1)
	loose.Add(0, 1, 1)
	loose.Add(1, 1, 1)
	if loose.Factor() {
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
		got, ok := Eliminate(a, y)
		if !ok {
			t.Fatalf("n = %d is refused", n)
		}
		for i, v := range got {
			if math.Abs(v-want.AtVec(i)) > 1e-9 {
				t.Errorf("n = %d: x[%d] = %v, want %v", n, i, v, want.AtVec(i))
			}
		}
	}
	if _, ok := Eliminate([][]float64{{1, 2}, {2, 4}}, []float64{1, 2}); ok {
		t.Error("two rows that say the same are solved")
	}
}
