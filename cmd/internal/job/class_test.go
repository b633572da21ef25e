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
	r, err := classOf(t).Do(inMemory(builders))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, o := range r.Outputs {
		names = append(names, o.Name)
	}
	if want := []string{"summary.csv", "ann/ann.toml", "ann/ann-reasons.txt", "dan/dan.toml", "dan/dan-reasons.txt"}; !slices.Equal(names, want) {
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
	for i, want := range [][2]string{{"Ann made", ""}, {"Bob failed", "weight: "}, {"ANN failed", `its folder "ann" is that of line 2`}, {"'=Cid failed", `no family "barge"`}, {"Dan made", ""}} {
		row := rows[i+1]
		if got := row[1] + " " + row[3]; got != want[0] || !strings.HasPrefix(row[len(row)-1], want[1]) || want[1] == "" && row[len(row)-1] != "" {
			t.Errorf("row %d: %q, want %q", i, row, want)
		}
	}
	if text := show(t, r.Numbers); !strings.Contains(text, `"slug":"dan"`) || strings.Count(text, `"design":null`) != 3 {
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
	for _, fields := range [][]string{nil, {"--loft"}, {"--loft", "--paper", "a4"}, {"--loft", "--units", "imperial"}, {"--loft", "--margins", "15 mm"}, {"--gear", "11 kg"}, {"--speed", "6 km/h"}} {
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
