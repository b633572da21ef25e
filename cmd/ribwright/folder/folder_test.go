package folder

import (
	"errors"
	"io"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ribwright/cmd/internal/job"
	"ribwright/cmd/ribwright/keep"
	"ribwright/cmd/ribwright/keep/keeptest"
	"ribwright/geometry/sizing"
)

// texts are files to be made, by name.
func texts(files map[string]string) func() ([]job.Output, error) {
	return func() ([]job.Output, error) {
		var out []job.Output
		for name, text := range files {
			out = append(out, job.Output{Name: name, Write: func(w io.Writer) error { _, err := io.WriteString(w, text); return err }})
		}
		return out, nil
	}
}

// inside is what a folder holds besides the list.
func inside(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	all, err := os.ReadDir(dir)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		t.Fatal(err)
	}
	for _, f := range all {
		if f.Name() != ListName {
			out[f.Name()] = readText(t, filepath.Join(dir, f.Name()))
		}
	}
	return out
}

func readText(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// The sets of the tests: the second has one file less and one more.
var (
	first  = map[string]string{"ann.toml": "old", "ann-a4.pdf": "old sheets"}
	second = map[string]string{"ann.toml": "new", "ann-letter.pdf": "new sheets"}
)

// TestFolder goes through what may lie where a set is to go. Each case says what the
// folder holds when the second set has been delivered, and what is refused.
func TestFolder(t *testing.T) {
	with := func(set map[string]string, more ...string) map[string]string {
		out := maps.Clone(set)
		for i := 0; i < len(more); i += 2 {
			out[more[i]] = more[i+1]
		}
		return out
	}
	for _, c := range []struct {
		name    string
		before  func(t *testing.T, f Folder)
		replace bool
		want    map[string]string
		refused string
	}{
		{name: "nothing", before: func(*testing.T, Folder) {}, want: second},
		{name: "an empty folder", before: func(t *testing.T, f Folder) { os.Mkdir(f.Dir, 0o777) }, want: second},
		{name: "an older set", before: deliverFirst, want: second},
		{name: "an older set and a file of somebody's",
			before: func(t *testing.T, f Folder) { deliverFirst(t, f); keeptest.Put(t, f.Dir, "photo.jpg", "hers") },
			want:   with(second, "photo.jpg", "hers")},
		{name: "an older set with a file that was changed",
			before:  func(t *testing.T, f Folder) { deliverFirst(t, f); keeptest.Put(t, f.Dir, "ann.toml", "hers") },
			want:    with(first, "ann.toml", "hers"),
			refused: "ann.toml was not made by this program, or was changed since; move it"},
		{name: "the same, to be replaced", replace: true,
			before: func(t *testing.T, f Folder) { deliverFirst(t, f); keeptest.Put(t, f.Dir, "ann.toml", "hers") },
			want:   second},
		{name: "an older set of which a file that goes was changed",
			before: func(t *testing.T, f Folder) {
				deliverFirst(t, f)
				keeptest.Put(t, f.Dir, "ann-a4.pdf", "with her notes")
			},
			want: with(second, "ann-a4.pdf", "with her notes")},
		{name: "the same, to be replaced: only files of the same names are", replace: true,
			before: func(t *testing.T, f Folder) {
				deliverFirst(t, f)
				keeptest.Put(t, f.Dir, "ann-a4.pdf", "with her notes")
			},
			want: with(second, "ann-a4.pdf", "with her notes")},
		{name: "somebody's folder",
			before:  func(t *testing.T, f Folder) { keeptest.Put(t, f.Dir, "photo.jpg", "hers") },
			want:    map[string]string{"photo.jpg": "hers"},
			refused: "holds files that this program did not make; give another name"},
		{name: "the same, to be replaced", replace: true,
			before: func(t *testing.T, f Folder) {
				keeptest.Put(t, f.Dir, "photo.jpg", "hers")
				keeptest.Put(t, f.Dir, "ann.toml", "hers")
			},
			want: with(second, "photo.jpg", "hers")},
		{name: "somebody's folder with another list", before: func(t *testing.T, f Folder) { keeptest.Put(t, f.Dir, ListName, "shopping") },
			want: map[string]string{}, refused: "holds files that this program did not make"},
		{name: "a list that names what lies elsewhere",
			before: func(t *testing.T, f Folder) {
				keeptest.Put(t, f.Dir, "ann.toml", "hers")
				keeptest.Put(t, f.Dir, ListName, ListHead+keep.Sum([]byte("hers"))+"  ../outside.txt\n")
			},
			want: map[string]string{"ann.toml": "hers"}, refused: "holds files that this program did not make"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := Folder{Dir: filepath.Join(t.TempDir(), "ann"), Replace: c.replace}
			c.before(t, f)
			_, err := f.Deliver("second", texts(second))
			if c.refused == "" && err != nil || c.refused != "" && (err == nil || !strings.Contains(err.Error(), c.refused)) {
				t.Errorf("%v, want %q", err, c.refused)
			}
			if got := inside(t, f.Dir); !maps.Equal(got, c.want) {
				t.Errorf("holds %q, want %q", got, c.want)
			}
		})
	}
}

func deliverFirst(t *testing.T, f Folder) {
	t.Helper()
	if s, err := f.Deliver("first", texts(first)); s != sizing.Made || err != nil {
		t.Fatal(s, err)
	}
}

// TestFolderInTheWay: a file or a link with the name of a folder stays, whatever is asked.
func TestFolderInTheWay(t *testing.T) {
	dir := t.TempDir()
	keeptest.Put(t, dir, "ann", "a note to Ann")
	keeptest.Put(t, filepath.Join(dir, "elsewhere"), "photo.jpg", "hers")
	places := []string{"ann"}
	if os.Symlink("elsewhere", filepath.Join(dir, "bob")) == nil {
		places = append(places, "bob")
	}
	for _, place := range places {
		_, err := Folder{Dir: filepath.Join(dir, place), Replace: true}.Deliver("key", texts(first))
		if err == nil || !strings.Contains(err.Error(), "is no folder and stays") {
			t.Errorf("%s: %v", place, err)
		}
	}
	if readText(t, filepath.Join(dir, "ann")) != "a note to Ann" || len(inside(t, filepath.Join(dir, "elsewhere"))) != 1 {
		t.Error("what was in the way is no longer as it was")
	}
}

// TestFolderKept: a set that is there is kept, and the files are not worked out again;
// one with a file missing is made.
func TestFolderKept(t *testing.T) {
	f := Folder{Dir: filepath.Join(t.TempDir(), "ann")}
	deliverFirst(t, f)
	never := func() ([]job.Output, error) { t.Error("worked out again"); return nil, nil }
	if s, err := f.Deliver("first", never); s != sizing.Kept || err != nil {
		t.Errorf("%s, %v", s, err)
	}
	os.Remove(filepath.Join(f.Dir, "ann.toml"))
	deliverFirst(t, f)
	if got := inside(t, f.Dir); !maps.Equal(got, first) {
		t.Errorf("holds %q", got)
	}
}

// TestFolderCutOff: a run that was ended while it wrote leaves files of one set or the
// other; the next one takes them for its own and makes the set whole.
func TestFolderCutOff(t *testing.T) {
	for n := 1; ; n++ {
		f := Folder{Dir: filepath.Join(t.TempDir(), "ann")}
		deliverFirst(t, f)
		outs, _ := texts(second)()
		set, now, err := f.inMemory(outs, "second")
		if err != nil {
			t.Fatal(err)
		}
		broken := &keeptest.Fault{N: n, Forever: true}
		f.Disk = broken
		old, err := Folder{Dir: f.Dir}.open()
		if err != nil {
			t.Fatal(err)
		}
		_ = f.write(set, now, old) // what it says nobody hears
		f.Disk = nil
		if s, err := f.Deliver("second", texts(second)); s != sizing.Made && s != sizing.Kept || err != nil {
			t.Fatal(n, broken.Hit, s, err)
		}
		if got := inside(t, f.Dir); !maps.Equal(got, second) {
			t.Fatalf("cut off at %d, %s: holds %q", n, broken.Hit, got)
		}
		if broken.Hit == "" {
			return
		}
	}
}

// TestFolderFails: files that cannot be made or written leave what was there.
func TestFolderFails(t *testing.T) {
	broken := func() ([]job.Output, error) {
		return []job.Output{{Name: "ann.toml", Write: func(io.Writer) error { return errors.New("boom") }}}, nil
	}
	unwritable := texts(map[string]string{strings.Repeat("a", 250): "new"}) // its draft's name is too long for a disk
	for name, files := range map[string]func() ([]job.Output, error){"made": broken, "written": unwritable} {
		f := Folder{Dir: filepath.Join(t.TempDir(), "ann")}
		deliverFirst(t, f)
		if _, err := f.Deliver("second", files); err == nil {
			t.Errorf("%s: no error", name)
		}
		if got := inside(t, f.Dir); !maps.Equal(got, first) {
			t.Errorf("%s: holds %q", name, got)
		}
		if s, err := f.Deliver("first", texts(first)); s != sizing.Kept || err != nil {
			t.Errorf("%s: afterwards %s, %v", name, s, err)
		}
	}
	// Nothing is left of a folder that did not come about.
	for _, files := range []func() ([]job.Output, error){broken, unwritable} {
		f := Folder{Dir: filepath.Join(t.TempDir(), "bob")}
		if _, err := f.Deliver("key", files); err == nil {
			t.Error("no error")
		}
		if _, err := os.Lstat(f.Dir); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("a folder is left: %v", err)
		}
	}
}
