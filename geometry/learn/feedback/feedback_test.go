package feedback

import (
	"bytes"
	"math"
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry/shop/hours"
)

// full is a build with a line of each kind, in figures as they are written.
func full() *Build {
	return &Build{Name: "x", Wood: "white ash", Stock: "green", Boiler: "B", Board: "7", Skill: hours.Beginner, Lines: []Line{
		{What: Springback, Of: "M", Drawn: 0.08, Found: 0.105}, {What: Deeper, Of: "M", Found: -1.5}, {What: Rib, Of: "M", Drawn: 14.2, Found: 1},
		{What: Rib, Of: "F1", Drawn: 13, Found: 0}, {What: Weight, Of: "stems and breasthooks", Drawn: 0.75, Found: 0.8}, {What: Hours, Of: "keel and stringers", Drawn: 6, Found: 9.5},
	}}
}

// TestRoundTrip: a build that is written is read back the same, but for its name, which
// stands nowhere.
func TestRoundTrip(t *testing.T) {
	var text bytes.Buffer
	b := full()
	b.Name = "Wilhelmina of Utrecht"
	if err := Write(&text, b); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(text.String(), "Wilhelmina") {
		t.Error("the builder is named")
	}
	got, err := Read(text.Bytes(), "x")
	if err != nil {
		t.Fatal(err)
	}
	for i := range got.Lines {
		got.Lines[i].At = 0
	}
	if want := full(); !reflect.DeepEqual(got, want) {
		t.Errorf("read back\n%+v\nwant\n%+v", got, want)
	}
}

// TestHoursOfSkill: hours are drawn for the skill that the file says, 8.7 h of an average builder
// being 6 h of an experienced one; a file that says none has them for the experienced.
func TestHoursOfSkill(t *testing.T) {
	for drawn, want := range map[string]float64{"": 8.7, "average": 6, "experienced": 8.7} {
		b, err := Read([]byte("what,of,drawn,found\nhours,ribs,8.7 h,9 h\nskill,,"+drawn+",\n"), "x")
		if err != nil || len(b.Lines) != 1 || math.Abs(b.Lines[0].Drawn-want) > 1e-9 || b.Lines[0].Found != 9 {
			t.Errorf("%q: %+v, %v", drawn, b, err)
		}
	}
	if _, err := Read([]byte("what,of,drawn,found\nskill,,master,\n"), "x"); err == nil {
		t.Error("a skill that nobody knows is drawn for")
	}
}

// TestBlank: notes that nobody filled in say nothing, and are no fault.
func TestBlank(t *testing.T) {
	var text bytes.Buffer
	if err := Blank(&text, full(), "Hours are a beginner's."); err != nil {
		t.Fatal(err)
	}
	b, err := Read(text.Bytes(), "x")
	if err != nil || len(b.Lines) != 0 || b.Stock != "green" {
		t.Errorf("%+v, %v", b, err)
	}
}

// TestOtherWords: what only its builder knows by name is not passed on.
func TestOtherWords(t *testing.T) {
	b, err := Read([]byte("what,of,drawn,found\nwood,,,Aunt Mary's ash\n"), "x")
	if err != nil || b.Wood != OtherWood {
		t.Errorf("wood %q, %v", b.Wood, err)
	}
	if w := KnownWood("White Ash"); w != "white ash" {
		t.Errorf("White Ash is %q", w)
	}
}

// TestSlips: what was written wrong is named, with its line and the likely slip.
func TestSlips(t *testing.T) {
	for row, says := range map[string]string{
		"weight,ribs,2 kg,20 kg":           "nought too many; write 2 kg",
		"weight,ribs,2 kg,4.4 kg":          "pounds given as kilograms",
		"weight,ribs,2 kg,2":               "no figure with its unit; accepted: one in kg or lb or g",
		"weight,ribs,2 kg,2 h":             "no figure with its unit",
		"weight,ribs,2 kg,NaNkg":           "no figure with its unit",
		"weight,mast,2 kg,2 kg":            "is no part",
		"hours,ribs,5 h,300 h":             "looks like minutes; write 5 h",
		"hours,ribs,5 h,0.08 h":            "hours given as minutes",
		"hours,ribs,0 h,5 h":               "more than nothing",
		"hours,ribs,5 h,-5 h":              "5 h",
		"hours,caulking,5 h,5 h":           "is no stage",
		"springback,M,8 %,0.1":             "accepted: one in %",
		"springback,M,8 %,95 %":            "a point is missing, or a nought too many",
		"deeper,M,,2 m":                    "mm or in",
		"deeper,M,,900 mm":                 "out of range",
		"rib,M,14,perhaps":                 "whole, broken",
		"rib,M,soft,whole":                 "1 to 1000",
		"rib,,14,whole":                    "nothing is said of what",
		"boiler,,,Anna's":                  "is no mark",
		"stock,,,wet":                      "air-dried, green, kiln-dried",
		"skill,,,master":                   "beginner",
		"length,M,1 mm,2 mm":               "is not known; accepted: wood",
		"weight,thwarts, yoke,1 kg,1.1 kg": "more cells than the four",
	} {
		_, err := Read([]byte("# remark\nwhat,of,drawn,found\n"+row+"\n"), "x.csv")
		if err == nil || !strings.HasPrefix(err.Error(), "x.csv:3: ") || !strings.Contains(err.Error(), says) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v, want line 3 and %q", row, err, says)
		}
	}
	_, err := Read([]byte("what,of,drawn,found\nrib,M,14,whole\nrib,m,14,broken\n"), "x.csv")
	if err == nil || !strings.Contains(err.Error(), "x.csv:3: rib m stands on line 2 already") {
		t.Errorf("a rib twice: %v", err)
	}
	for _, text := range []string{"", "a\x00b", "rib,beam_mm\nM,700\n", "\"", strings.Repeat("x", most+1)} {
		if _, err := Read([]byte(text), "x.csv"); err == nil || !strings.HasPrefix(err.Error(), "x.csv") {
			t.Errorf("%.20q: %v", text, err)
		}
	}
}

// FuzzRead: no text panics, and what is read is written and read again.
func FuzzRead(f *testing.F) {
	var text bytes.Buffer
	if err := Write(&text, full()); err != nil {
		f.Fatal(err)
	}
	f.Add(text.Bytes())
	f.Add([]byte("what,of,drawn,found\nhours,ribs,5 h,1e308 h\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		b, err := Read(data, "x")
		if err != nil {
			return
		}
		var out bytes.Buffer
		if err := Write(&out, b); err != nil {
			t.Fatal(err)
		}
	})
}

// TestUnits: a figure is read in any of its units.
func TestUnits(t *testing.T) {
	b, err := Read([]byte("what,of,drawn,found\nhours,ribs,6 h,480 min\nweight,ribs,2 kg,5 lb\ndeeper,M,,0.1 in\nspringback,M,8 %,12.5 %\n"), "x")
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{8, 5 * 0.45359237, 2.54, 0.125} { // by definition
		if got := b.Lines[i].Found; got-want > 1e-12 || want-got > 1e-12 {
			t.Errorf("line %d is %g, want %g", i, got, want)
		}
	}
}
