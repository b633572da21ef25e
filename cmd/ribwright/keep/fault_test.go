package keep_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"ribwright/cmd/ribwright/keep"
	"ribwright/cmd/ribwright/keep/keeptest"
)

// unsynced is a keep.Keeper that does not wait for the disk, for tests of hundreds of saves.
func unsynced() keep.Keeper { return keep.Keeper{Disk: &keeptest.Fault{}} }

// faultCase is a set that takes the place of another.
type faultCase struct {
	name          string
	before, after []keep.File
	gone          []string
}

func faultCases(dir string) []faultCase {
	other := filepath.Join(dir, "deep", "down")
	return []faultCase{
		{name: "into an empty folder", after: three(dir, "new", 5000)},
		{name: "over an older set", before: three(dir, "old", 300), after: three(dir, "new", 5000)},
		{name: "over a part of it", before: three(dir, "old", 300)[:2], after: three(dir, "new", 300)},
		{name: "with one that goes", before: three(dir, "old", 300), after: three(dir, "new", 300)[:2], gone: []string{filepath.Join(dir, "c.json")}},
		{name: "in two folders", before: append(three(dir, "old", 30)[:1], three(other, "old", 30)...), after: append(three(dir, "new", 30)[:1], three(other, "new", 30)...)},
	}
}

// TestSaveFaults lets operation 1, 2, 3 and so on of a save fail, until a run meets no
// fault: afterwards the folder holds the older set whole or the new one whole, the one that
// the answer says, and nothing else.
func TestSaveFaults(t *testing.T) {
	root := t.TempDir()
	for i := range faultCases(root) {
		seen := map[string]bool{}
		for n := 1; ; n++ {
			dir := filepath.Join(root, fmt.Sprint(i, "-", n))
			f := &keeptest.Fault{N: n}
			before, after, err := tryFault(t, dir, i, f)
			for _, folder := range []string{dir, filepath.Join(dir, "deep", "down")} {
				if err := unsynced().Heal(folder); err != nil { // a kept file that could not be removed
					t.Fatal(err)
				}
			}
			now := tree(t, dir)
			if want := map[bool]map[string]string{true: after, false: before}[err == nil]; !maps.Equal(now, want) {
				t.Fatalf("%s: operation %d, %s, fails, answer %v: the folder holds %.300q", faultCases(root)[i].name, n, f.Hit, err, now)
			}
			if err != nil && !errors.Is(err, keeptest.Err) {
				t.Errorf("%s: operation %d, %s, fails: %v", faultCases(root)[i].name, n, f.Hit, err)
			}
			if seen[f.Hit] = true; f.Hit == "" {
				break
			}
		}
		for _, want := range []string{"make folder", "look", "list", "create", "write", "sync", "close", "rename", "remove"} {
			if !seen[want] {
				t.Errorf("%s: no %s ever failed", faultCases(root)[i].name, want)
			}
		}
	}
}

// tryFault saves a case's sets into a folder, the second on a disk with a fault, and
// returns what the folder held before and what it should hold after.
func tryFault(t *testing.T, dir string, i int, f *keeptest.Fault) (before, after map[string]string, err error) {
	t.Helper()
	c := faultCases(dir)[i]
	if err := os.MkdirAll(dir, 0o777); err != nil {
		t.Fatal(err)
	}
	if err := unsynced().Save(c.before); err != nil {
		t.Fatal(err)
	}
	before = tree(t, dir)
	after = maps.Clone(before)
	for _, o := range c.after {
		var b bytes.Buffer
		if err := o.Write(&b); err != nil {
			t.Fatal(err)
		}
		name, _ := filepath.Rel(dir, o.Path)
		after[name] = b.String()
	}
	for _, path := range c.gone {
		delete(after, filepath.Base(path))
	}
	return before, after, keep.Keeper{Disk: f}.Save(c.after, c.gone...)
}

// tree reads every file under a folder, by its path from there.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(dir, path)
		out[name] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestSaveCutOff lets everything fail from operation 1, 2, 3 and so on, as when a machine
// loses its power there. The next run finds the older set or the new one, makes its own, and
// no passing file stays. A set in two folders is held to it folder by folder.
func TestSaveCutOff(t *testing.T) {
	root := t.TempDir()
	for i := range faultCases(root) {
		for n := 1; ; n++ {
			dir := filepath.Join(root, fmt.Sprint(i, "-", n))
			f := &keeptest.Fault{N: n, Forever: true}
			before, after, _ := tryFault(t, dir, i, f)
			for _, folder := range []string{dir, filepath.Join(dir, "deep", "down")} {
				if err := unsynced().Heal(folder); err != nil {
					t.Fatal(err)
				}
				if now := inFolder(tree(t, folder)); !maps.Equal(now, inFolder(under(before, dir, folder))) && !maps.Equal(now, inFolder(under(after, dir, folder))) {
					t.Fatalf("%s: cut off at operation %d, %s: the folder holds %.300q", faultCases(root)[i].name, n, f.Hit, now)
				}
			}
			if err := unsynced().Save(faultCases(dir)[i].after, faultCases(dir)[i].gone...); err != nil && len(faultCases(dir)[i].gone) == 0 {
				t.Fatal(err)
			}
			if f.Hit == "" {
				break
			}
		}
	}
}

// under are the files of a tree at dir that lie under a folder in it, by their paths from there.
func under(all map[string]string, dir, folder string) map[string]string {
	out := map[string]string{}
	for name, text := range all {
		if rel, err := filepath.Rel(folder, filepath.Join(dir, name)); err == nil && filepath.IsLocal(rel) {
			out[rel] = text
		}
	}
	return out
}

// inFolder are those that lie in the folder itself.
func inFolder(all map[string]string) map[string]string {
	out := map[string]string{}
	for name, text := range all {
		if filepath.Base(name) == name {
			out[name] = text
		}
	}
	return out
}

// TestSaveKilled kills a program that saves one set after the other, at any moment. The next
// run finds a whole set and leaves nothing else. 500 times in the long form.
func TestSaveKilled(t *testing.T) {
	if dir := os.Getenv("RIBWRIGHT_SAVES_INTO"); dir != "" {
		for n := 0; ; n++ {
			if err := unsynced().Save(three(dir, fmt.Sprintf("set %d", n), 20_000)); err != nil {
				t.Fatal(err)
			}
			if n == 0 {
				os.Stdout.WriteString("saved\n")
			}
		}
	}
	times := 20
	if os.Getenv("RIBWRIGHT_LONG") != "" {
		times = 500
	}
	dir, random := t.TempDir(), rand.New(rand.NewPCG(1, 2))
	for range times {
		c := exec.Command(os.Args[0], "-test.run", "^TestSaveKilled$")
		c.Env = append(os.Environ(), "RIBWRIGHT_SAVES_INTO="+dir)
		says, err := c.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		if _, err := io.ReadFull(says, make([]byte, 1)); err != nil { // the first set is there
			t.Fatal(err)
		}
		time.Sleep(time.Duration(random.IntN(20_000)) * time.Microsecond)
		c.Process.Kill()
		c.Wait()
		if err := unsynced().Heal(dir); err != nil {
			t.Fatal(err)
		}
		now := files(t, dir)
		sets := map[string]bool{}
		for name, text := range now {
			set, _, _ := strings.Cut(text, " "+name)
			sets[set] = true
			if len(text) != 20_000 {
				t.Errorf("%s has %d bytes", name, len(text))
			}
		}
		if len(now) != 3 || len(sets) != 1 {
			t.Fatalf("the folder holds %v of %v", slices.Sorted(maps.Keys(now)), sets)
		}
	}
}
