package main

import (
	"io"
	"os"
	"path/filepath"
	"runtime"
	"sync/atomic"
	"testing"
	"time"

	"ribwright/cmd/internal/job"
	"ribwright/cmd/ribwright/folder"
	"ribwright/cmd/ribwright/keep"
	"ribwright/geometry/sizing"
)

// TestClassInterrupted ends a class by a signal: rows under way are finished, the others
// are not done, and the next run keeps the first and makes the rest.
func TestClassInterrupted(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("a process sends itself no interrupt there")
	}
	const n = 12
	c := job.NewClass()
	c.Loft, c.Books = false, false
	c.Name([]string{classOf(t, n)})
	course, err := c.Read(job.World{Files: keep.ReadFile})
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	deliver := func(b job.Built) (sizing.Status, error) {
		return folder.Folder{Dir: filepath.Join(dir, b.Folder)}.Deliver(b.Key, b.Files)
	}
	quiet := func() *progress { return newProgress(console{io.Discard, io.Discard}, n, false) }
	var interrupted atomic.Bool
	count := sizing.Counts(work(course, quiet(), func(b job.Built) (sizing.Status, error) {
		if interrupted.CompareAndSwap(false, true) {
			self, err := os.FindProcess(os.Getpid())
			if err != nil {
				return "", err
			}
			if err := self.Signal(os.Interrupt); err != nil {
				return "", err
			}
		}
		time.Sleep(100 * time.Millisecond) // until the signal has come
		return deliver(b)
	}))
	made := count[sizing.Made]
	if made == 0 || count[sizing.NotDone] == 0 || made+count[sizing.NotDone] != n {
		t.Fatalf("%v", count)
	}
	count = sizing.Counts(work(course, quiet(), deliver))
	if count[sizing.Kept] != made || count[sizing.Made] != n-made {
		t.Errorf("the second run: %v, want %d kept", count, made)
	}
}
