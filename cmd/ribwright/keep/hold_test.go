package keep_test

import (
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"ribwright/cmd/ribwright/keep"
)

// TestHold: of many that want a folder at once one has it, none has it while another does,
// and nothing of it is left behind.
func TestHold(t *testing.T) {
	dir := t.TempDir()
	var inside, had atomic.Int32
	var all sync.WaitGroup
	for range 40 {
		all.Go(func() {
			release, err := keep.Hold(dir)
			if err != nil {
				if !strings.Contains(err.Error(), "another run is at work in "+dir) {
					t.Error(err)
				}
				return
			}
			had.Add(1)
			if inside.Add(1) != 1 {
				t.Error("two have the folder")
			}
			time.Sleep(time.Millisecond)
			inside.Add(-1)
			release()
		})
	}
	all.Wait()
	if left := files(t, dir); len(left) > 0 || had.Load() == 0 {
		t.Errorf("%d had it, and left is %q", had.Load(), left)
	}
}

// TestHoldTakesOver: what a run left that was ended is no bar; what somebody else put there is,
// and stays as it is.
func TestHoldTakesOver(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, keep.HoldName)
	put := func(text string) {
		t.Helper()
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	put(keep.HoldHead)
	release, err := keep.Hold(dir)
	if err != nil {
		t.Fatal(err)
	}
	release()
	for _, text := range []string{"what I am working on", keep.HoldHead + "and more", ""} {
		put(text)
		if _, err := keep.Hold(dir); err == nil || !strings.Contains(err.Error(), "was not made by this program; move it") {
			t.Errorf("%q: %v", text, err)
		}
		if got := files(t, dir)[keep.HoldName]; got != text {
			t.Errorf("%q is left of %q", got, text)
		}
	}
	os.Remove(path)
	if err := os.Mkdir(path, 0o777); err != nil {
		t.Fatal(err)
	}
	if _, err := keep.Hold(dir); err == nil || !strings.Contains(err.Error(), "no plain file is in the way") {
		t.Error(err)
	}
	if _, err := keep.Hold(filepath.Join(dir, "none")); err == nil {
		t.Error("a folder is held that is not there")
	}
}
