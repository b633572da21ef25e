package balance

import (
	"runtime"
	"sync"
)

// sideBySide does n pieces of work that know nothing of one another, on all processors.
func sideBySide(n int, work func(i int)) {
	var all sync.WaitGroup
	hands := min(n, runtime.GOMAXPROCS(0))
	for first := range hands {
		all.Go(func() {
			for i := first; i < n; i += hands {
				work(i)
			}
		})
	}
	all.Wait()
}
