package keeptest

import (
	"os"
	"path/filepath"
	"testing"
)

// Put writes a file as somebody else might, in a folder that is made where there is none.
func Put(t testing.TB, dir, name, text string) {
	t.Helper()
	if err := os.MkdirAll(dir, 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}
