package sidebyside_test

import (
	"errors"
	"runtime"
	"sync/atomic"
	"testing"

	"ribwright/geometry/sidebyside"
)

// TestEach: each piece is done once, whatever the number of processors.
func TestEach(t *testing.T) {
	onProcessors(t, func(t *testing.T) {
		for _, n := range []int{0, 1, 2, 7, 1000} {
			done := make([]int, n)
			sidebyside.Each(n, func(i int) { done[i]++ })
			for i, times := range done {
				if times != 1 {
					t.Errorf("of %d, piece %d was done %d times", n, i, times)
				}
			}
		}
	})
}

// TestOneByOne: a piece is begun once the one before has ended.
func TestOneByOne(t *testing.T) {
	onProcessors(t, func(t *testing.T) {
		var order []int
		sidebyside.OneByOne(100, func(i int) {
			order = append(order, i)
			runtime.Gosched()
			order = append(order, i)
		})
		for k, i := range order {
			if i != k/2 {
				t.Fatalf("in the order %v", order)
			}
		}
	})
}

// TestInTurn: steps are taken up to the first that fails.
func TestInTurn(t *testing.T) {
	broken := errors.New("the rib broke")
	taken := 0
	step := func() error { taken++; return nil }
	if err := sidebyside.InTurn(step, step); err != nil || taken != 2 {
		t.Errorf("%v after %d steps, want 2 of 2", err, taken)
	}
	if err := sidebyside.InTurn(step, func() error { return broken }, step); err != broken || taken != 3 {
		t.Errorf("%v after %d steps, want %v after 3", err, taken, broken)
	}
}

// TestAll: with two processors all pieces are begun at once, so that two can wait for one
// another; with one they come in turn.
func TestAll(t *testing.T) {
	onProcessors(t, func(t *testing.T) {
		var order []int
		if runtime.GOMAXPROCS(0) == 1 {
			sidebyside.All(func() { order = append(order, 1) }, func() { order = append(order, 2) })
			if len(order) != 2 || order[0] != 1 {
				t.Errorf("in the order %v, want 1 before 2", order)
			}
			return
		}
		var here, there, beyond = make(chan int), make(chan int), make(chan int)
		sidebyside.All(
			func() { here <- 1 + <-there },
			func() { there <- 2 + <-beyond },
			func() { beyond <- 3 },
			func() { order = append(order, <-here) },
		)
		if len(order) != 1 || order[0] != 6 {
			t.Errorf("they handed on %v, want 6", order)
		}
	})
}

// TestPanic: what goes wrong in a piece goes wrong where the whole was asked for, after all
// others have come to their end.
func TestPanic(t *testing.T) {
	onProcessors(t, func(t *testing.T) {
		var ended atomic.Int32
		defer func() {
			if r := recover(); r != "no rib here" {
				t.Errorf("recovered %v, want what the piece panicked with", r)
			}
			if n := ended.Load(); runtime.GOMAXPROCS(0) > 1 && n != 9 {
				t.Errorf("%d of 9 other pieces had come to their end", n)
			}
		}()
		sidebyside.Each(10, func(i int) {
			if i == 3 {
				panic("no rib here")
			}
			ended.Add(1)
		})
	})
}

func onProcessors(t *testing.T, test func(t *testing.T)) {
	for _, n := range []int{1, 2, 4} {
		was := runtime.GOMAXPROCS(n)
		test(t)
		runtime.GOMAXPROCS(was)
	}
}
