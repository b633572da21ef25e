package keep_test

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

	"ribwright/cmd/ribwright/keep"
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
func three(dir, set string, size int) []keep.File {
	var out []keep.File
	for _, name := range []string{"a.pdf", "b.svg", "c.json"} {
		out = append(out, keep.File{Path: filepath.Join(dir, name), Write: func(w io.Writer) error {
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

// TestSaveStopped: who stops a save finds all as it was.
func TestSaveStopped(t *testing.T) {
	dir := t.TempDir()
	if err := keep.Usual().Save(three(dir, "old", 300)); err != nil {
		t.Fatal(err)
	}
	before, stop := files(t, dir), make(chan os.Signal, 1)
	outs := three(dir, "new", 300)
	write := outs[1].Write
	outs[1].Write = func(w io.Writer) error { stop <- os.Interrupt; return write(w) }
	if err := (keep.Keeper{Disk: keep.Here{}, Stop: stop}).Save(outs); !errors.Is(err, keep.ErrStopped) {
		t.Errorf("save() = %v, want %v", err, keep.ErrStopped)
	}
	if after := files(t, dir); !maps.Equal(after, before) {
		t.Errorf("the folder holds %.200q, want the older set", after)
	}
}

// TestSaveNoPlainFile: a link or a pipe in the way is not written through, nor replaced.
func TestSaveNoPlainFile(t *testing.T) {
	dir := t.TempDir()
	target := filepath.Join(t.TempDir(), "mine.txt")
	if err := os.WriteFile(target, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(target, filepath.Join(dir, "b.svg")); err != nil {
		t.Skip(err)
	}
	err := keep.Usual().Save(three(dir, "new", 10))
	if err == nil || !strings.Contains(err.Error(), "b.svg: a link of that name is in the way") {
		t.Errorf("save() = %v, want the link named", err)
	}
	if data, _ := os.ReadFile(target); string(data) != "mine" || len(files(t, dir)) != 1 {
		t.Errorf("behind the link lies %q, and the folder holds %v", data, files(t, dir))
	}
}

// TestJournalTouchesNothingElse: a journal that somebody made up names files outside its
// folder, or files that are not as it says; they stay.
func TestJournalTouchesNothingElse(t *testing.T) {
	root := t.TempDir()
	dir := filepath.Join(root, "in")
	for path, text := range map[string]string{"out.txt": "mine", "in/here.txt": "mine", "in/" + keep.JournalName(99999999): keep.JournalHead + "new " + keep.Sum([]byte("mine")) + " ../out.txt\nkept ../out.txt\nnew 00 here.txt\nkept here.txt\nnew " + keep.Sum([]byte("mine")) + " here.txt"} {
		if err := os.MkdirAll(filepath.Join(root, filepath.Dir(path)), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(root, path), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := keep.Usual().Heal(dir); err != nil {
		t.Fatal(err)
	}
	if now := tree(t, root); !maps.Equal(now, map[string]string{"out.txt": "mine", "in/here.txt": "mine"}) {
		t.Errorf("left is %q", now)
	}
}

// TestForeignJournal: a file of somebody's that has a journal's or a draft's name stays.
func TestForeignJournal(t *testing.T) {
	dir := t.TempDir()
	mine := map[string]string{keep.JournalName(99999999): "mine", ".a.pdf-99999999.draft": "mine", ".a.pdf-99999999.kept": "mine"}
	for name, text := range mine {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := keep.Usual().Heal(dir); err != nil {
		t.Fatal(err)
	}
	if now := files(t, dir); !maps.Equal(now, mine) {
		t.Errorf("left is %q", now)
	}
}

// TestSaveBusy: while another run puts files in place nothing is written beside it.
func TestSaveBusy(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, keep.JournalName(os.Getppid())), []byte(keep.JournalHead), 0o644); err != nil {
		t.Fatal(err)
	}
	err := keep.Usual().Save(three(dir, "new", 10))
	if err == nil || !strings.Contains(err.Error(), "another run is putting files into") || len(files(t, dir)) != 1 {
		t.Errorf("save() = %v, and the folder holds %v", err, files(t, dir))
	}
}

func TestSave(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "deep", "down")
	for _, set := range []string{"first", "second"} {
		if err := keep.Usual().Save(three(dir, set, 10_000)); err != nil {
			t.Fatal(err)
		}
		got := files(t, dir)
		if len(got) != 3 {
			t.Errorf("%s set: the folder holds %d files, want 3", set, len(got))
		}
		for _, o := range three(dir, set, 10_000) {
			var want bytes.Buffer
			if err := o.Write(&want); err != nil {
				t.Fatal(err)
			}
			if got[filepath.Base(o.Path)] != want.String() {
				t.Errorf("%s set: %s holds %.40q, want %.40q", set, filepath.Base(o.Path), got[filepath.Base(o.Path)], want.String())
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
	outs[2].Write = func(w io.Writer) error {
		_, err := w.Write(make([]byte, 10_000))
		return errors.Join(err, errors.New("pattern rib F3 has no real place"))
	}
	err := keep.Usual().Save(outs)
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
	outs[1].Write = func(io.Writer) error { panic("broken") }
	func() {
		defer func() {
			if recover() == nil {
				t.Error("the panic was swallowed")
			}
		}()
		_ = keep.Usual().Save(outs)
	}()
	if left := files(t, dir); len(left) != 0 {
		t.Errorf("the folder holds %.200q, want nothing", left)
	}
}

// TestSaveFolderInTheWay must find out before any file takes its place.
func TestSaveFolderInTheWay(t *testing.T) {
	dir := t.TempDir()
	if err := keep.Usual().Save(three(dir, "old", 10)[:2]); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "c.json"), 0o777); err != nil {
		t.Fatal(err)
	}
	err := keep.Usual().Save(three(dir, "new", 10))
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
	var outs []keep.File
	for i := range 20 {
		name := fmt.Sprintf("%02d", (i*7)%20)
		outs = append(outs, keep.File{Path: filepath.Join(dir, name), Write: func(w io.Writer) error { _, err := io.WriteString(w, name); return err }})
	}
	if err := keep.Usual().Save(outs); err != nil {
		t.Fatal(err)
	}
	for name, text := range files(t, dir) {
		if name != text {
			t.Errorf("%s holds %q", name, text)
		}
	}
}
