// Package sidebyside does pieces of work that know nothing of one another at the same time.
package sidebyside

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Each does n pieces of work, as many at a time as there are processors.
//
// Panics: with what the first of them panics with, once no other is under way; so whoever is
// ready for a fault of the whole is ready for one of its parts.
func Each(n int, work func(i int)) { do(n, min(n, runtime.GOMAXPROCS(0)), work) }

// OneByOne is Each for where every processor has work already: what a piece takes in memory
// is free for the next.
func OneByOne(n int, work func(i int)) { do(n, 1, work) }

// InTurn takes one step after the other, up to the first that fails, and returns its error.
func InTurn(steps ...func() error) error {
	for _, step := range steps {
		if err := step(); err != nil {
			return err
		}
	}
	return nil
}

// All does a few pieces of work, all of them begun at once, because one may wait for what
// another finds. On a single processor they are done in turn.
//
// Panics: as Each.
func All(work ...func()) {
	hands := len(work)
	if runtime.GOMAXPROCS(0) == 1 {
		hands = 1
	}
	do(len(work), hands, func(i int) { work[i]() })
}

func do(n, hands int, work func(i int)) {
	var next atomic.Int64
	var broken atomic.Pointer[any]
	hand := func() {
		defer func() {
			if r := recover(); r != nil {
				broken.CompareAndSwap(nil, &r)
			}
		}()
		for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
			work(i)
		}
	}
	var others sync.WaitGroup
	for range hands - 1 {
		others.Go(hand)
	}
	hand()
	others.Wait()
	if r := broken.Load(); r != nil {
		panic(*r)
	}
}
