package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// files reads everything in a folder, by name.
func files(t *testing.T, dir string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		out[e.Name()] = string(data)
	}
	return out
}

// three makes outputs of the given size that say which set they are of. Each is
// written in pieces, as the real ones are.
func three(dir, set string, size int) []file {
	var out []file
	for _, name := range []string{"a.pdf", "b.svg", "c.json"} {
		out = append(out, file{filepath.Join(dir, name), "", func(w io.Writer) error {
			line := set + " " + name + "\n"
			for left := size; left > 0; left -= len(line) {
				if _, err := io.WriteString(w, line[:min(left, len(line))]); err != nil {
					return err
				}
			}
			return nil
		}})
	}
	return out
}

// disk stands behind the n-th file that is opened and is full after so many bytes.
type disk struct {
	n, room int
	why     error
	opened  int
}

func (d *disk) through(w io.Writer) io.Writer {
	d.opened++
	if d.opened != d.n {
		return w
	}
	return &fullWriter{w, d.room, d.why}
}

type fullWriter struct {
	w    io.Writer
	room int
	why  error
}

func (f *fullWriter) Write(p []byte) (int, error) {
	if len(p) <= f.room {
		f.room -= len(p)
		return f.w.Write(p)
	}
	n, err := f.w.Write(p[:f.room])
	f.room = 0
	if err == nil {
		err = f.why
	}
	return n, err
}

// TestSaveFullDisk fills the disk in each of the files, at its first byte, on
// the way, and when the last of it leaves the buffer.
func TestSaveFullDisk(t *testing.T) {
	full := errors.New("no room\nleft")
	names := []string{"a.pdf", "b.svg", "c.json"}
	for n := 1; n <= 3; n++ {
		for _, c := range []struct {
			name       string
			size, room int
		}{
			{"first byte", 100_000, 0},
			{"on the way", 100_000, 50_000},
			{"last byte", 100_000, 99_999},
			{"flush, first byte", 100, 0},
			{"flush, last byte", 100, 99},
		} {
			t.Run(fmt.Sprintf("%s %s", names[n-1], c.name), func(t *testing.T) {
				dir := t.TempDir()
				if err := save(three(dir, "old", 300), nil); err != nil {
					t.Fatal(err)
				}
				before := files(t, dir)
				d := &disk{n: n, room: c.room, why: full}
				err := save(three(dir, "new", c.size), d.through)
				want := fmt.Sprintf("cannot write %s: no room left", filepath.Join(dir, names[n-1]))
				if !errors.Is(err, full) || flat(err.Error()) != want {
					t.Errorf("save() = %v, want %q", err, want)
				}
				if after := files(t, dir); !maps.Equal(after, before) {
					t.Errorf("the folder holds %.200q, want the older set %.200q", after, before)
				}
				// With room for all, the same call does its work.
				d = &disk{n: n, room: c.size, why: full}
				if err := save(three(dir, "new", c.size), d.through); err != nil {
					t.Errorf("with room for all: %v", err)
				}
			})
		}
	}
}

func TestSave(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "deep", "down")
	for _, set := range []string{"first", "second"} {
		if err := save(three(dir, set, 10_000), nil); err != nil {
			t.Fatal(err)
		}
		got := files(t, dir)
		if len(got) != 3 {
			t.Errorf("%s set: the folder holds %d files, want 3", set, len(got))
		}
		for _, o := range three(dir, set, 10_000) {
			var want bytes.Buffer
			if err := o.write(&want); err != nil {
				t.Fatal(err)
			}
			if got[filepath.Base(o.path)] != want.String() {
				t.Errorf("%s set: %s holds %.40q, want %.40q", set, filepath.Base(o.path), got[filepath.Base(o.path)], want.String())
			}
		}
	}
	info, err := os.Stat(filepath.Join(dir, "a.pdf"))
	if err != nil || info.Mode().Perm()&0o444 != 0o444 {
		t.Errorf("a.pdf has the mode %v (%v), want it readable by all, for the print shop", info.Mode(), err)
	}
}

// TestSaveOutputFails has a back end that finds a fault of its own half-way.
func TestSaveOutputFails(t *testing.T) {
	dir := t.TempDir()
	outs := three(dir, "new", 100_000)
	outs[2].write = func(w io.Writer) error {
		_, err := w.Write(make([]byte, 10_000))
		return errors.Join(err, errors.New("pattern rib F3 has no real place"))
	}
	err := save(outs, nil)
	if err == nil || !strings.Contains(err.Error(), "c.json: pattern rib F3 has no real place") {
		t.Errorf("save() = %v, want the file's name and its fault", err)
	}
	if left := files(t, dir); len(left) != 0 {
		t.Errorf("the folder holds %.200q, want nothing", left)
	}
}

// TestSavePanics has a back end that breaks down; even then no draft stays.
func TestSavePanics(t *testing.T) {
	dir := t.TempDir()
	outs := three(dir, "new", 100)
	outs[1].write = func(io.Writer) error { panic("broken") }
	func() {
		defer func() {
			if recover() == nil {
				t.Error("the panic was swallowed")
			}
		}()
		_ = save(outs, nil)
	}()
	if left := files(t, dir); len(left) != 0 {
		t.Errorf("the folder holds %.200q, want nothing", left)
	}
}

// TestSaveFolderInTheWay must find out before any file takes its place.
func TestSaveFolderInTheWay(t *testing.T) {
	dir := t.TempDir()
	if err := save(three(dir, "old", 10)[:2], nil); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "c.json"), 0o777); err != nil {
		t.Fatal(err)
	}
	err := save(three(dir, "new", 10), nil)
	if err == nil || !strings.Contains(err.Error(), "c.json: a folder of that name is in the way") {
		t.Errorf("save() = %v, want the folder named", err)
	}
	if got, err := os.ReadFile(filepath.Join(dir, "a.pdf")); err != nil || !strings.HasPrefix(string(got), "old") {
		t.Errorf("a.pdf holds %q (%v), want the older one", got, err)
	}
}

// TestSaveMany keeps the order of drafts and files apart from that of names.
func TestSaveMany(t *testing.T) {
	dir := t.TempDir()
	var outs []file
	for i := range 20 {
		name := fmt.Sprintf("%02d", (i*7)%20)
		outs = append(outs, file{filepath.Join(dir, name), "", func(w io.Writer) error { _, err := io.WriteString(w, name); return err }})
	}
	if err := save(outs, nil); err != nil {
		t.Fatal(err)
	}
	for name, text := range files(t, dir) {
		if name != text {
			t.Errorf("%s holds %q", name, text)
		}
	}
}
