package main

import (
	"os"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"sync"
)

// How much rubbish may lie in memory while a class is made: until all that the program takes is
// roomy, bytes, or twice what is in use where that is more, and never more than
// mostRubbish percent of what is in use. Patterns have 3 to 16 MB in use, of which the usual
// share would be cleared away twenty times for each builder, a tenth of all work.
const (
	roomy       = 36 << 20
	mostRubbish = 400
)

// clearing has rubbish cleared away so until it is ended. Who sets GOGC or GOMEMLIMIT has other
// wishes.
func clearing() (end func()) {
	if os.Getenv("GOGC")+os.Getenv("GOMEMLIMIT") != "" {
		return func() {}
	}
	percent, limit := debug.SetGCPercent(mostRubbish), debug.SetMemoryLimit(roomy)
	var one sync.Mutex
	ended := false
	var cleared func(*[16]byte)
	cleared = func(*[16]byte) { // what nobody uses is found each time
		one.Lock()
		defer one.Unlock()
		if !ended {
			debug.SetMemoryLimit(max(roomy, 2*inUse()))
			runtime.SetFinalizer(new([16]byte), cleared)
		}
	}
	cleared(nil)
	return func() {
		one.Lock()
		defer one.Unlock()
		ended = true
		debug.SetGCPercent(percent)
		debug.SetMemoryLimit(limit)
	}
}

// inUse is what was in use when rubbish was cleared away the last time, bytes.
func inUse() int64 {
	s := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	metrics.Read(s)
	return int64(s[0].Value.Uint64())
}
