//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package keep

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
)

// seize opens the file, made where it is not there, and asks the system for it, which gives
// it to one run at a time and takes it back when the run ends, however it ends.
func seize(path string) (*os.File, error) {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if errors.Is(err, fs.ErrNotExist) {
		if err := begin(path); err != nil {
			return nil, err
		}
		f, err = os.OpenFile(path, os.O_RDWR, 0)
	}
	if errors.Is(err, fs.ErrNotExist) {
		return nil, errEmpty // it went just now
	}
	if err != nil {
		return nil, err
	}
	if syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) != nil {
		f.Close()
		return nil, errBusy
	}
	return f, nil
}

// letGo takes the file away while nobody else can have it.
func letGo(f *os.File, path string) {
	os.Remove(path)
	f.Close()
}
