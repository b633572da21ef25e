package main

import (
	"math"
	"runtime"
	"runtime/debug"
	"testing"
	"time"
)

// TestClearing: what a class may take in memory grows with what is in use, and all is as before
// when it ends.
func TestClearing(t *testing.T) {
	t.Setenv("GOGC", "")
	t.Setenv("GOMEMLIMIT", "")
	defer debug.SetGCPercent(debug.SetGCPercent(77))
	end := clearing()
	if got := debug.SetMemoryLimit(-1); got < roomy || got > 10*roomy {
		t.Errorf("a limit of %d MB at the beginning", got>>20)
	}
	kept := make([]byte, 3*roomy)
	grown := func() bool { return debug.SetMemoryLimit(-1) >= 2*int64(len(kept)) }
	for wait := time.Now().Add(10 * time.Second); !grown() && time.Now().Before(wait); time.Sleep(time.Millisecond) {
		runtime.GC()
	}
	if !grown() {
		t.Errorf("a limit of %d MB with %d MB in use", debug.SetMemoryLimit(-1)>>20, len(kept)>>20)
	}
	runtime.KeepAlive(kept)
	end()
	runtime.GC()
	if limit, percent := debug.SetMemoryLimit(-1), debug.SetGCPercent(77); limit != math.MaxInt64 || percent != 77 {
		t.Errorf("afterwards a limit of %d MB and %d percent", limit>>20, percent)
	}
}
