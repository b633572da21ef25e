//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd)

package keep

import "os"

// left takes a file away that a run left which was ended: what a run has open cannot be
// removed there. It never opens one, for the run that makes the file holds it.
func left(path string) (*os.File, error) {
	data, err := os.ReadFile(path)
	if err == nil {
		err = ours(string(data))
	}
	if err == nil && os.Remove(path) != nil {
		return nil, errBusy
	}
	if err == nil {
		err = errEmpty // gone now; it can be made
	}
	return nil, err
}

// locked has nothing to ask for: who has made the file holds it.
func locked(*os.File) bool { return true }

// letGo takes the file away.
func letGo(f *os.File, path string) {
	f.Close()
	os.Remove(path)
}
