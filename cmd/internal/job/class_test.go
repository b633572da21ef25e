package job

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io/fs"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/sizing"
)

const builders = `name,use,weight_kg,stature_cm,skill
Ann,pack,62,168,beginner
Bob,pack,"85 x",183,
ANN,pack,62,168,
=Cid,barge,70,170,
Dan,solo,80,178,
`

func classOf(t *testing.T, fields ...string) *Class {
	t.Helper()
	return asked(t, "class", append([]string{"class.csv"}, fields...)...).(*Class)
}

func inMemory(table string) World {
	return World{Files: InMemory(map[string][]byte{"class.csv": []byte(table)})}
}

// InMemory are files that are at hand already.
func InMemory(files map[string][]byte) Files {
	return func(name string) ([]byte, error) {
		data, ok := files[name]
		if !ok {
			return nil, fs.ErrNotExist
		}
		return data, nil
	}
}

// TestClassInMemory makes a class whose table is nowhere on a disk: a folder each for
// the rows that can be made, and a summary of all in the order of the table.
func TestClassInMemory(t *testing.T) {
	r, err := classOf(t, "--loft=false", "--book=false").Do(inMemory(builders))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, o := range r.Outputs {
		names = append(names, o.Name)
	}
	if want := []string{"summary.csv", "ann/ann.toml", "ann/ann-reasons.txt", "ann-2/ann-2.toml", "ann-2/ann-2-reasons.txt", "dan/dan.toml", "dan/dan-reasons.txt"}; !slices.Equal(names, want) {
		t.Fatalf("%q, want %q", names, want)
	}
	d, err := design.Decode(bytes.NewReader(written(t, r.Outputs[1])), "ann.toml")
	if err != nil || d.Ribs.Trim != 18 { // Ann is a beginner
		t.Errorf("%v, trim %v", err, d.Ribs.Trim)
	}
	rows, err := csv.NewReader(bytes.NewReader(written(t, r.Outputs[0]))).ReadAll()
	if err != nil || len(rows) != 6 {
		t.Fatalf("%v, %d rows", err, len(rows))
	}
	for i, want := range [][2]string{{"Ann made", ""}, {"Bob failed", "weight: "}, {"ANN made", ""}, {"'=Cid failed", `no family "barge"`}, {"Dan made", ""}} {
		row := rows[i+1]
		if got := row[1] + " " + row[3]; got != want[0] || !strings.HasPrefix(row[len(row)-1], want[1]) || want[1] == "" && row[len(row)-1] != "" {
			t.Errorf("row %d: %q, want %q", i, row, want)
		}
	}
	if text := show(t, r.Numbers); !strings.Contains(text, `"slug":"dan"`) || strings.Count(text, `"design":null`) != 2 {
		t.Error(text)
	}
}

// TestClassRowFails: neither an error nor a fault of the program costs more than a row.
func TestClassRowFails(t *testing.T) {
	course, err := classOf(t).Read(inMemory(builders))
	if err != nil {
		t.Fatal(err)
	}
	ok := func(Built) (sizing.Status, error) { return sizing.Made, nil }
	for want, deliver := range map[string]func(Built) (sizing.Status, error){
		"a fault in the program itself (boom)": func(Built) (sizing.Status, error) { panic("boom") },
		"disk full":                            func(Built) (sizing.Status, error) { return "", errors.New("disk full") },
	} {
		if o := course.Make(0, deliver); o.Status != sizing.Failed || o.Why != want || o.Folder != "ann" {
			t.Errorf("%+v, want %q", o, want)
		}
		if o := course.Make(4, ok); o.Status != sizing.Made || o.Why != "" || o.Length < 3000 {
			t.Errorf("%+v", o)
		}
	}
}

// TestClassKey: what changes a file of a row changes its key.
func TestClassKey(t *testing.T) {
	key := func(table string, fields ...string) (out string) {
		t.Helper()
		course, err := classOf(t, fields...).Read(inMemory(table))
		if err != nil {
			t.Fatal(err)
		}
		if o := course.Make(0, func(b Built) (sizing.Status, error) { out = b.Key; return sizing.Made, nil }); o.Status != sizing.Made {
			t.Fatal(o.Why)
		}
		return out
	}
	seen := map[string]string{}
	for _, fields := range [][]string{nil, {"--loft=false"}, {"--book=false"}, {"--paper", "a4"}, {"--units", "imperial"}, {"--margins", "15 mm"}, {"--gear", "11 kg"}, {"--speed", "6 km/h"},
		{"--prices", "local"}, {"--water", "salt"}, {"--printed-across", "200.8 mm of 200 mm"}} {
		k := key(builders, fields...)
		if k != key(builders, fields...) {
			t.Errorf("%q: the second time another key", fields)
		}
		if was, twice := seen[k]; twice {
			t.Errorf("%q has the key of %s", fields, was)
		}
		seen[k] = strings.Join(fields, " ")
	}
}

func TestClassRefuses(t *testing.T) {
	if _, err := NewClass().Do(World{}); err == nil || !strings.Contains(err.Error(), "no table of builders is given") {
		t.Error(err)
	}
	if _, err := classOf(t).Do(World{}); err == nil || !strings.Contains(err.Error(), `no table of builders "class.csv"`) {
		t.Error(err)
	}
	if _, err := classOf(t).Do(inMemory("name,weight\nAnn,62 kg\n")); err == nil || !strings.Contains(err.Error(), `class.csv: has no column "stature"`) {
		t.Error(err)
	}
	if _, err := classOf(t, "--family", "none.family").Do(inMemory(builders)); err == nil || !strings.Contains(err.Error(), `no family file "none.family"`) {
		t.Error(err)
	}
}

// TestClassKeyOfProgram: what another program made is not taken for current.
func TestClassKeyOfProgram(t *testing.T) {
	var keys []string
	for _, program := range []string{"ribwright 0.1.0", "ribwright 0.1.1"} {
		w := inMemory(builders)
		w.Program = program
		course, err := classOf(t).Read(w)
		if err != nil {
			t.Fatal(err)
		}
		course.Make(0, func(b Built) (sizing.Status, error) { keys = append(keys, b.Key); return sizing.Made, nil })
	}
	if keys[0] == keys[1] {
		t.Error("two programs have one key")
	}
}

// TestOneFolderEach: whatever names a table holds, each row has a folder of its own that a disk
// without capitals tells apart too, and a name that nobody else has keeps its plain one.
func TestOneFolderEach(t *testing.T) {
	long := strings.Repeat("Maximiliane ", 6)
	names := []string{"Ann", "ann", "ANN!", "Ann 2", "..", "-", "🛶", "🛶", "🛶🛶", "Мария", "МАРИЯ", "李雷", "李雷", "عمر", "CON", "con", "Σίσυφος", "σίσυφοσ", long, long + "b", "K", "K", "boat"}
	want := map[string]string{"Ann": "ann", "Ann 2": "ann-2", "Мария": "мария", "李雷": "李雷", "عمر": "عمر"}
	var all []sizing.Builder
	for _, n := range names {
		all = append(all, sizing.Builder{Name: n, Brief: sizing.Brief{Title: n}})
	}
	oneFolderEach(all)
	seen := map[string]string{}
	for i, b := range all {
		folder := slugOf(b.Brief.Title)
		key := strings.ToLower(strings.ToUpper(folder))
		if was, twice := seen[key]; twice {
			t.Errorf("%q and %q share %q", was, b.Name, folder)
		}
		seen[key] = b.Name
		if w, ok := want[b.Name]; ok && slices.Index(names, b.Name) == i && folder != w {
			t.Errorf("%q has the folder %q, want %q", b.Name, folder, w)
		}
	}
	if got := slugOf(all[1].Brief.Title); got != "ann-3" {
		t.Errorf("the second Ann has %q, want ann-3: ann-2 is somebody's own", got)
	}
}

// TestCourseBook: the course has one book over the boats that are made, with a key that stays
// while these do; an interrupted run has none, nor has one that asks for no books.
func TestCourseBook(t *testing.T) {
	const two = "name,use,weight_kg,stature_cm\nAnn,pack,62,168\nBob,pack,70 x,183\nCid,pack,72,175\n"
	course, err := classOf(t, "--loft=false").Read(inMemory(two))
	if err != nil {
		t.Fatal(err)
	}
	var all []sizing.Outcome
	for i := range course.Len() {
		status := []sizing.Status{sizing.Kept, sizing.Made, sizing.Kept}[i]
		all = append(all, course.Make(i, func(Built) (sizing.Status, error) { return status, nil }))
	}
	key, files := course.Book(all)
	outs, err := files()
	if err != nil || len(outs) != 3 || len(written(t, outs[0])) < 10000 || len(written(t, outs[2])) < 1000 {
		t.Fatalf("%+v, %v", outs, err)
	}
	names := []string{SummaryName}
	for _, o := range outs {
		names = append(names, o.Name)
	}
	if want := []string{SummaryName, "course-book-letter.pdf", "course-plan.csv", "course-labels-letter.pdf"}; !slices.Equal(names, want) || !slices.Equal(course.Names(), want) {
		t.Errorf("files %q, named %q, want %q", names, course.Names(), want)
	}
	longer, err := classOf(t, "--loft=false", "--hours-a-day", "8").Read(inMemory(two))
	if err != nil {
		t.Fatal(err)
	}
	longer.Make(0, func(Built) (sizing.Status, error) { return sizing.Kept, nil })
	longer.Make(2, func(Built) (sizing.Status, error) { return sizing.Kept, nil })
	if other, _ := longer.Book(all); other == key {
		t.Error("longer days leave the key as it was")
	}
	heavier, err := classOf(t, "--loft=false").Read(inMemory(strings.Replace(two, "72", "82", 1)))
	if err != nil {
		t.Fatal(err)
	}
	heavier.Make(0, func(Built) (sizing.Status, error) { return sizing.Kept, nil })
	heavier.Make(2, func(Built) (sizing.Status, error) { return sizing.Kept, nil })
	if other, _ := heavier.Book(all); other == key {
		t.Error("another boat for Cid leaves the key as it was")
	}
	all[0].Status = sizing.Made
	if again, _ := course.Book(all); again != key || key == "" {
		t.Errorf("a boat that is made and not kept changes the key %q to %q", key, again)
	}
	all[2].Status = sizing.Failed
	if less, _ := course.Book(all); less == key {
		t.Error("a boat less has the same key")
	}
	all[2].Status = sizing.NotDone
	if none, files := course.Book(all); none != "" {
		t.Error("an interrupted run has a book")
	} else if outs, err := files(); len(outs) != 0 || err != nil {
		t.Errorf("%+v, %v", outs, err)
	}
	plain, err := classOf(t, "--book=false").Read(inMemory(two))
	if err != nil {
		t.Fatal(err)
	}
	if key, _ := plain.Book(all[:2]); key != "" || len(plain.Names()) != 1 {
		t.Errorf("%q, %q", key, plain.Names())
	}
}
