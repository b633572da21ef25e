package sidebyside_test

import (
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
