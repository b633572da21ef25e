//go:build unix

package cutlist

import (
	"syscall"
	"testing"
	"time"
)

// processorTime is how long processors have worked on this program; others on the machine do not
// count.
func processorTime(t *testing.T) time.Duration {
	t.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano())
}

// TestQuick: a thousand sticks are packed in under a second, and twenty boats are sawn from one
// pile in under five.
func TestQuick(t *testing.T) {
	for _, lengths := range thousands() {
		start := processorTime(t)
		Pack(lengths, 5440, 3)
		if took := processorTime(t) - start; took > time.Second {
			t.Errorf("a thousand sticks take %v", took)
		}
	}
	plans := course(t, 4)
	var twenty []*Plan
	for range 5 {
		twenty = append(twenty, plans...)
	}
	start := processorTime(t)
	Pool(twenty)
	took := processorTime(t) - start
	t.Log(took)
	if took > 5*time.Second {
		t.Errorf("twenty boats take %v", took)
	}
}
