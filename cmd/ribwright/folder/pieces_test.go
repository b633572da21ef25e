package folder

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"ribwright/cmd/internal/job"
)

// TestLargeFile: a file of many pieces, written a few bytes at a time or all at once, lies on the
// disk as it was written, under its sum.
func TestLargeFile(t *testing.T) {
	want := make([]byte, 700_001)
	rand.NewChaCha8([32]byte{7}).Read(want)
	for _, step := range []int{1, 4095, 100_000, len(want)} {
		f := Folder{Dir: filepath.Join(t.TempDir(), "ann")}
		write := func(w io.Writer) error {
			for left := want; len(left) > 0; {
				n := min(step, len(left))
				if got, err := w.Write(left[:n]); got != n || err != nil {
					return fmt.Errorf("took %d of %d bytes: %w", got, n, err)
				}
				left = left[n:]
			}
			return nil
		}
		if _, err := f.Deliver("", func() ([]job.Output, error) { return []job.Output{{Name: "large.bin", Write: write}}, nil }); err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(filepath.Join(f.Dir, "large.bin"))
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%d bytes at a time: %d bytes on the disk, not those %d that were written (%v)", step, len(got), len(want), err)
		}
		if l := Listed(f.Dir); len(l.Made) != 1 || l.Made[0].Sum != fmt.Sprintf("%x", sha256.Sum256(want)) {
			t.Errorf("%d bytes at a time: the list says %v", step, l.Made)
		}
	}
}
