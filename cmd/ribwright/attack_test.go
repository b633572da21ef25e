package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"ribwright/cmd/internal/job"
	"ribwright/cmd/ribwright/folder"
	"ribwright/cmd/ribwright/keep"
	"ribwright/cmd/ribwright/keep/keeptest"
)

// attacks is how often a folder is attacked at random.
func attacks() int {
	if os.Getenv("RIBWRIGHT_LONG") != "" {
		return 200
	}
	return 6
}

const attacked = "name,weight_kg,stature_cm\nAnn,62,168\nBob,85,183\nANN,70,170\nИва,58,166\n"

// attackedTable writes the table of a small course.
func attackedTable(t testing.TB) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "builders.csv")
	if err := os.WriteFile(name, []byte(attacked), 0o666); err != nil {
		t.Fatal(err)
	}
	return name
}

// wants are ways to ask for the course: designs alone, so that many runs are quick.
func wants() [][]string {
	plain := []string{"--loft=false", "--book=false"}
	return [][]string{plain, append([]string{"--gear", "20kg"}, plain...), append([]string{"--units", "imperial"}, plain...)}
}

// whole is everything below a folder: files with their bytes, links with where they lead.
func whole(t testing.TB, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		name, _ := filepath.Rel(dir, path)
		switch {
		case err != nil || e.IsDir():
			return err
		case e.Type()&fs.ModeSymlink != 0:
			to, err := os.Readlink(path)
			out[filepath.ToSlash(name)] = "-> " + to
			return err
		}
		data, err := os.ReadFile(path)
		out[filepath.ToSlash(name)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// classInto runs a class into a folder and returns its exit code and what it says.
func classInto(table, dir string, want []string) (int, string) {
	var out, errs bytes.Buffer
	code := run(slices.Concat([]string{"class", table, "--out", dir}, want), &out, &errs)
	return code, errs.String()
}

// rowsOf are the statuses of a summary's rows, by folder.
func rowsOf(t testing.TB, text string) map[string]string {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, row := range rows[1:] {
		out[row[4]] = row[3]
	}
	return out
}

// TestClassAttacked puts files, folders and links of somebody's into a course's folder, with
// names that the program uses and others, changes and removes files that it made, and asks
// for other things between: never is anything of somebody's touched, and a row that is told as
// made or kept has just the files that a run into an empty folder makes.
func TestClassAttacked(t *testing.T) {
	table, random := attackedTable(t), rand.New(rand.NewPCG(19, 1))
	var fresh []map[string]string
	for _, w := range wants() {
		dir := t.TempDir()
		if code, says := classInto(table, dir, w); code != done {
			t.Fatal(says)
		}
		fresh = append(fresh, whole(t, dir))
	}
	dir := filepath.Join(t.TempDir(), "course")
	theirs, refused := map[string]string{}, 0
	for n := range attacks() {
		for range random.IntN(3) {
			attack(t, random, dir, n, theirs)
		}
		i := random.IntN(len(fresh))
		code, says := classInto(table, dir, wants()[i])
		now := whole(t, dir)
		for name, text := range theirs {
			if now[name] != text {
				t.Fatalf("run %d: %s holds %.40q, want %.40q; the run said %s", n, name, now[name], text, says)
			}
		}
		if code != done {
			refused++
		}
		if strings.Contains(says, "summary.csv was not made") || strings.Contains(says, folder.ListName+" was not made") || strings.Contains(says, keep.HoldName) {
			continue // before any work
		}
		for folder, status := range rowsOf(t, now["summary.csv"]) {
			for name, text := range fresh[i] {
				if strings.HasPrefix(name, folder+"/") && (status == "made" || status == "kept") && now[name] != text {
					t.Fatalf("run %d, exit %d: %s is %s, and %s holds %.60q; the run said %s", n, code, folder, status, name, now[name], says)
				}
			}
		}
		if n%5 == 4 { // somebody clears up
			for name := range theirs {
				os.RemoveAll(filepath.Join(dir, filepath.FromSlash(name)))
			}
			clear(theirs)
		}
	}
	t.Logf("%d of %d runs met something in their way", refused, attacks())
}

// attack does something to a course's folder and notes what is somebody's from then on.
func attack(t *testing.T, random *rand.Rand, dir string, n int, theirs map[string]string) {
	t.Helper()
	folders := []string{".", "ann", "bob", "ann-2", "ива", "photos"}
	// No system has a run of that number, so none is taken for one that works just now.
	names := []string{"ann.toml", "bob.toml", "ann-2-reasons.txt", "ива.toml", folder.ListName, "summary.csv", keep.HoldName, "photo.jpg", ".hidden",
		"ribwright-saving-999999999.txt", ".ann.toml-999999999.draft", "course-notes.txt", "bob", "ANN.TOML", "Ann"}
	name := filepath.ToSlash(filepath.Join(folders[random.IntN(len(folders))], names[random.IntN(len(names))]))
	path := filepath.Join(dir, filepath.FromSlash(name))
	if info, err := os.Lstat(filepath.Dir(path)); err == nil && !info.IsDir() {
		return
	}
	was, err := os.Lstat(path)
	if err == nil && was.IsDir() {
		return
	}
	there := err == nil
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	text := fmt.Sprintf("somebody's own, %d", n)
	switch way := random.IntN(4); {
	case there && way == 0 && theirs[name] == "":
		os.Remove(path) // of the program's
	case there && way == 1 && theirs[name] == "":
		old, _ := os.ReadFile(path)
		text = string(old) + "\na note"
		fallthrough
	case way < 3 || runtime.GOOS == "windows":
		os.Remove(path)
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		theirs[name] = text
	default:
		os.Remove(path)
		if err := os.Symlink(filepath.Join(dir, "elsewhere"), path); err != nil {
			t.Fatal(err)
		}
		theirs[name] = "-> " + filepath.Join(dir, "elsewhere")
	}
	if filepath.Base(path) == folder.ListName && theirs[name] != "" && strings.HasPrefix(text, folder.ListHead) {
		os.Remove(path) // a list of ours with a note is still read as one, and may be written anew
		delete(theirs, name)
	}
}

// TestClassKilled ends runs at random points: the next one makes everything whole, leaves
// nothing behind, and touches nothing of somebody's.
func TestClassKilled(t *testing.T) {
	table, want := attackedTable(t), wants()
	random := rand.New(rand.NewPCG(19, 2))
	fresh := t.TempDir()
	start := time.Now()
	if err := exec.Command("ribwright", slices.Concat([]string{"class", table, "--out", fresh}, want[0])...).Run(); err != nil {
		t.Fatal(err)
	}
	takes, all := time.Since(start), whole(t, fresh)
	dir := t.TempDir()
	keeptest.Put(t, dir, "photo.jpg", "hers")
	keeptest.Put(t, filepath.Join(dir, "photos"), "ann.toml", "hers")
	all["photo.jpg"], all["photos/ann.toml"] = "hers", "hers"
	for n := range attacks() {
		c := exec.Command("ribwright", slices.Concat([]string{"class", table, "--out", dir}, want[n%len(want)])...)
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(random.Int64N(int64(takes))))
		_ = c.Process.Kill() // it may be done already
		_ = c.Wait()
		if n%3 == 2 {
			continue // another run is ended in what this one left
		}
		if code, says := classInto(table, dir, want[0]); code != done {
			t.Fatalf("after kill %d: %s", n, says)
		}
		if now := whole(t, dir); !maps.Equal(sansSummary(now), sansSummary(all)) {
			t.Fatalf("after kill %d there is %q, want %q", n, slices.Sorted(maps.Keys(now)), slices.Sorted(maps.Keys(all)))
		}
	}
}

// sansSummary leaves out what tells whether files were made now or before, and the sum of that.
func sansSummary(all map[string]string) map[string]string {
	out := maps.Clone(all)
	delete(out, "summary.csv")
	delete(out, folder.ListName)
	return out
}

// TestClassStopped ends a run as a keyboard does: it exits 1 and says so, rows under way are
// whole, and the next run keeps these and makes the rest.
func TestClassStopped(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no process is sent an interrupt there")
	}
	table, dir := classOf(t, 12), filepath.Join(t.TempDir(), "course")
	want := wants()[0]
	c := exec.Command("ribwright", slices.Concat([]string{"class", table, "--out", dir}, want)...)
	var errs bytes.Buffer
	c.Stderr = &errs
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	for {
		if made, _ := filepath.Glob(filepath.Join(dir, "*", folder.ListName)); len(made) > 0 {
			break
		}
		time.Sleep(5 * time.Millisecond)
	}
	if err := c.Process.Signal(syscall.SIGINT); err != nil {
		t.Fatal(err)
	}
	err := c.Wait()
	before := whole(t, dir)
	made := 0
	for _, status := range rowsOf(t, before["summary.csv"]) {
		if status == "made" {
			made++
		}
	}
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != failed || !strings.Contains(errs.String(), "interrupted") || made == 0 {
		t.Fatalf("%v, %q, %d made", err, errs.String(), made)
	}
	if code, says := classInto(table, dir, want); code != done {
		t.Fatal(says)
	}
	kept := 0
	for _, status := range rowsOf(t, whole(t, dir)["summary.csv"]) {
		if status == "kept" {
			kept++
		}
	}
	if kept != made {
		t.Errorf("%d kept of %d that were made", kept, made)
	}
}

// TestClassTwiceAtOnce: of two runs at once into one folder one is refused before it touches
// anything, unless the other is done by then, and the course is whole.
func TestClassTwiceAtOnce(t *testing.T) {
	table, dir := attackedTable(t), t.TempDir()
	release, err := keep.Hold(dir)
	if err != nil {
		t.Fatal(err)
	}
	before := whole(t, dir)
	if code, says := classInto(table, dir, wants()[0]); code != failed || !strings.Contains(says, "another run is at work in "+dir) {
		t.Errorf("%d, %s", code, says)
	}
	if now := whole(t, dir); !maps.Equal(now, before) {
		t.Errorf("the refused run left %q", slices.Sorted(maps.Keys(now)))
	}
	release()
	type end struct {
		code int
		says string
	}
	ends := make(chan end, 2)
	for i := range 2 {
		go func() { code, says := classInto(table, dir, wants()[i]); ends <- end{code, says} }()
	}
	fine := 0
	for range 2 {
		switch e := <-ends; {
		case e.code == done:
			fine++
		case !strings.Contains(e.says, "another run is at work in"):
			t.Error(e.says)
		}
	}
	now := whole(t, dir)
	if _, left := now[keep.HoldName]; left || fine == 0 {
		t.Errorf("%d runs went well, and left is %q", fine, slices.Sorted(maps.Keys(now)))
	}
}

// TestClassReadOnly: where nothing may be written the run says so before any work.
func TestClassReadOnly(t *testing.T) {
	if os.Geteuid() == 0 || runtime.GOOS == "windows" {
		t.Skip("who may write anywhere is not kept out")
	}
	dir := t.TempDir()
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	if code, says := classInto(attackedTable(t), dir, wants()[0]); code != failed || !strings.Contains(says, "permission denied") {
		t.Errorf("%d, %s", code, says)
	}
}

// TestClassCutOff ends a run at every step of putting the files of the whole course in place:
// the next run has its folder, whichever of them had taken their places by then.
func TestClassCutOff(t *testing.T) {
	files := func(text string) func() ([]job.Output, error) {
		return func() ([]job.Output, error) {
			return []job.Output{{Name: job.SummaryName, Write: func(w io.Writer) error { _, err := io.WriteString(w, text); return err }}}, nil
		}
	}
	for n := 1; ; n++ {
		f := folder.Folder{Dir: t.TempDir(), Shared: true}
		if _, err := f.Deliver("", files("before")); err != nil {
			t.Fatal(err)
		}
		disk := &keeptest.Fault{N: n, Forever: true}
		cut := f
		cut.Disk = disk
		_, _ = cut.Deliver("", files("after"))
		release, err := holdFolder(f, attackedTable(t), []string{job.SummaryName})
		if err != nil {
			t.Fatalf("cut off at operation %d, %s: %v", n, disk.Hit, err)
		}
		if release(); disk.Hit == "" {
			break
		}
	}
}
