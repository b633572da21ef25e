//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd)

package keep

import (
	"errors"
	"io/fs"
	"os"
)

// seize makes the file and keeps it open: what a run has open cannot be removed there. One
// that a run left which was ended is removed first.
func seize(path string) (*os.File, error) {
	data, err := os.ReadFile(path)
	if err == nil {
		if err := ours(string(data)); err != nil {
			return nil, err
		}
		if os.Remove(path) != nil {
			return nil, errBusy
		}
	} else if !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	if err := begin(path); err != nil {
		return nil, err
	}
	return os.OpenFile(path, os.O_RDWR, 0)
}

// letGo takes the file away.
func letGo(f *os.File, path string) {
	f.Close()
	os.Remove(path)
}
