package keeptest

import (
	"cmp"
	"path/filepath"
	"testing"

	"ribwright/cmd/ribwright/keep"
)

// Put writes a file as somebody else might, in the place of what is there and in a folder
// that is made where there is none.
func Put(t testing.TB, dir, name, text string) {
	t.Helper()
	var disk keep.Here
	path := filepath.Join(dir, name)
	if err := disk.MakeFolder(dir); err != nil {
		t.Fatal(err)
	}
	_ = disk.Remove(path) // mostly nothing is there
	f, err := disk.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	_, wrong := f.Write([]byte(text))
	if err := cmp.Or(wrong, f.Close()); err != nil {
		t.Fatal(err)
	}
}
