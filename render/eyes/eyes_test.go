package eyes

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// root is where the program's own module lies.
const root = "../.."

// viewer starts the renderer once for all tests; it ends with them.
var viewer = sync.OnceValues(NewViewer)

// room is a folder for the program, made and removed by TestMain.
var room string

// program builds the program once; tests run it as a builder does.
var program = sync.OnceValues(func() (string, error) {
	file := filepath.Join(room, "ribwright")
	build := exec.Command("go", "build", "-o", file, "./cmd/ribwright")
	build.Dir = root
	if said, err := build.CombinedOutput(); err != nil {
		return "", fmt.Errorf("the program does not build: %w\n%s", err, said)
	}
	return file, nil
})

func TestMain(m *testing.M) {
	var err error
	if room, err = os.MkdirTemp("", "ribwright-eyes-"); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	code := m.Run()
	os.RemoveAll(room)
	os.Exit(code)
}

func eyesOf(t *testing.T) *Viewer {
	t.Helper()
	v, err := viewer()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// ribwright runs the program and returns what it said.
func ribwright(t *testing.T, args ...string) string {
	t.Helper()
	file, err := program()
	if err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command(file, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("ribwright %s: %v\n%s", strings.Join(args, " "), err, said)
	}
	return string(said)
}

// set is one lofting read back.
type set struct {
	*Sheets
	numbers *Numbers
}

// loft lofts a design for a paper and reads the sheets. How parts are nested for a
// cutter is nowhere on them, so that is done the quick way.
func loft(t *testing.T, design, paper string, flags ...string) set {
	t.Helper()
	dir := t.TempDir()
	ribwright(t, append([]string{"loft", design, "--paper", paper, "--nest", "quick", "--out", dir}, flags...)...)
	read := func(name string) []byte {
		src, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		return src
	}
	n, err := ReadNumbers(read(design + "-numbers.json"))
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob(filepath.Join(dir, design+"-patterns-*.pdf"))
	if err != nil || len(files) != 1 {
		t.Fatalf("patterns on %s: %q (%v)", paper, files, err)
	}
	s, err := Read(eyesOf(t), read(filepath.Base(files[0])), n.Pages)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.File.Close() })
	return set{s, n}
}

// whole draws a pattern in one piece.
func whole(t *testing.T, design, pattern string) *Sheets {
	t.Helper()
	s, err := Whole(eyesOf(t), design, pattern)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.File.Close() })
	return s
}
