//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package keep

import (
	"os"
	"syscall"
)

// left opens a file that is there, whoever has it.
func left(path string) (*os.File, error) { return os.OpenFile(path, os.O_RDWR, 0) }

// locked asks the system for the file, which gives it to one run at a time and takes it
// back when the run ends, however it ends.
func locked(f *os.File) bool {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil
}

// letGo takes the file away while nobody else can have it.
func letGo(f *os.File, path string) {
	os.Remove(path)
	f.Close()
}
