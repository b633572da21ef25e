package job

import (
	"bytes"
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/layout/report"
)

// sizeOne sizes a boat for one paddler.
func sizeOne(t *testing.T, w World, fields ...string) (*Result, error) {
	t.Helper()
	return asked(t, "size", append([]string{"--paddler", "62 kg, 168 cm"}, fields...)...).Do(w)
}

func written(t *testing.T, o Output) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := o.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestSizeInMemory sizes and lofts a boat by a family that is nowhere on a disk, and
// reads the design back.
func TestSizeInMemory(t *testing.T) {
	w := World{Files: InMemory(map[string][]byte{"own.family": []byte("use \"pack\"\ntell beam = 650 mm   # as narrow as I like it\n")})}
	r, err := sizeOne(t, w, "--family", "own.family", "--loft", "--title", "Teal", "--skill", "beginner", "--waters", "open")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, o := range r.Outputs {
		names = append(names, o.Name)
	}
	if want := []string{"teal.toml", "teal-patterns-letter.pdf", "teal-cut.svg", "teal-cut.dxf", "teal-numbers.json"}; !slices.Equal(names, want) {
		t.Fatalf("%q, want %q", names, want)
	}
	d, err := design.Decode(bytes.NewReader(written(t, r.Outputs[0])), "teal.toml")
	if err != nil {
		t.Fatal(err)
	}
	if d.Hull.Beam != 650 || d.Ribs.Trim != 18 { // a first boat gets 18 mm to trim
		t.Errorf("beam %v, want 650 mm; trim %v, want 18 mm", d.Hull.Beam, d.Ribs.Trim)
	}
	if print, _ := d.Fingerprint(); print != r.Report.Fingerprint {
		t.Errorf("the report is of %s, the file of %s", r.Report.Fingerprint, print)
	}
	// The numbers that the patterns show are of the same boat.
	var numbers struct {
		Hull struct {
			Beam float64 `json:"beam_mm"`
		}
	}
	if err := json.Unmarshal(written(t, r.Outputs[4]), &numbers); err != nil || numbers.Hull.Beam != 650 {
		t.Errorf("%+v, %v", numbers, err)
	}
}

// TestSizeNumbers holds the figures for programs against the design that is written.
func TestSizeNumbers(t *testing.T) {
	r, err := sizeOne(t, World{})
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Decode(bytes.NewReader(written(t, r.Outputs[0])), "design")
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(r.Numbers)
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Design struct{ Title, Slug, Fingerprint string }
		Values map[string]struct {
			Value     any
			Unit, Why string
		}
		Checks []struct {
			Name, Text string
			Holds      bool
		}
	}
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	if got.Design.Title != "Pack 62 kg" || got.Design.Slug != "pack-62-kg" || got.Design.Fingerprint != r.Report.Fingerprint {
		t.Errorf("%+v", got.Design)
	}
	for name, want := range map[string]struct {
		value any
		unit  string
	}{
		"hull.length": {float64(d.Hull.Length), "mm"}, "paddler.weight": {62.0, "kg"}, "gunwale.tilt": {10.5, "deg"}, "skill": {"average", ""},
		"hull.symmetric": {true, ""}, "skin.cloth": {d.Skin.Cloth, "g/m2"}, "stringers.at": {[]any{d.Stringers.At[0], d.Stringers.At[1], d.Stringers.At[2]}, ""},
	} {
		v := got.Values[name]
		if a, b := show(t, v.Value), show(t, want.value); a != b || v.Unit != want.unit {
			t.Errorf("%s: %s %s, want %s %s", name, a, v.Unit, b, want.unit)
		}
	}
	if v := got.Values["beam"]; !strings.HasPrefix(v.Why, "held by beam_by_reach; reach ") {
		t.Errorf("beam: %q", v.Why)
	}
	if len(got.Checks) != 20 || got.Checks[0].Name != "reach_at_seat" || !got.Checks[0].Holds || !strings.Contains(got.Checks[0].Text, ", wanted at most ") {
		t.Errorf("%+v", got.Checks)
	}
}

func show(t *testing.T, v any) string {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestSizeWater: salt water is denser, so a boat of the same sizes floats higher in it,
// by 2.6 % of the volume under water at most.
func TestSizeWater(t *testing.T) {
	draft := func(kind string) float64 {
		r, err := sizeOne(t, World{}, "--water", kind, "--set", "length=3500mm", "--set", "beam=700mm", "--set", "depth=280mm")
		if err != nil {
			t.Fatal(err)
		}
		var got struct {
			Values map[string]struct{ Value any }
		}
		if err := json.Unmarshal([]byte(show(t, r.Numbers)), &got); err != nil {
			t.Fatal(err)
		}
		return got.Values["draft"].Value.(float64)
	}
	fresh, salt := draft("fresh"), draft("salt")
	if !(salt < fresh && salt > fresh*0.97) {
		t.Errorf("draft %.2f mm in salt water and %.2f mm in fresh", salt, fresh)
	}
}

// TestSizeSearch tells of targets, and explains instead of making files.
func TestSizeSearch(t *testing.T) {
	r, err := sizeOne(t, World{}, "--target", "draft<=80mm", "--aim", "smallest")
	if err != nil {
		t.Fatal(err)
	}
	told := false
	for _, b := range r.Report.Blocks {
		p, ok := b.(report.Paragraph)
		told = told || ok && strings.HasPrefix(p.Words, "This is the smallest boat that meets draft<=80mm;")
	}
	if !told {
		t.Errorf("the search is not told of: %v", r.Report.Blocks)
	}
	if r, err = sizeOne(t, World{}, "--explain", "beam"); err != nil || len(r.Outputs) != 0 {
		t.Errorf("%v, %d files", err, len(r.Outputs))
	}
	if r, err = sizeOne(t, World{}, "--formulas", "people"); err != nil || !strings.Contains(r.Text, "lever_want  = ") {
		t.Errorf("%v, %q", err, r.Text)
	}
}

func TestSizeRefuses(t *testing.T) {
	for asks, want := range map[string]string{
		"--use barge":          `use: no family "barge"; there are pack, solo, tandem, or a family file of your own`,
		"--use tandem":         "the family seats 2 and 1 paddler is given",
		"--family none.family": `no family file "none.family"`,
		"--target drat<=3mm":   `target: target drat<=3mm: nothing is called "drat"; the nearest name is draft`,
		"--set beam=3kg":       "set: set beam: beam is a length (mm), not a weight (kg)",
		"--set beam":           `set: "beam" is not understood`,
		"--explain bean":       `explain: nothing is called "bean"`,
		"--sweep beam=1mm":     `sweep: sweep "beam=1mm"`,
		"--wood teak":          `species "teak" is not known`,
		"--svg":                "svg: only a sweep has a figure",
		"--formulas barge":     `formulas: no file "barge"`,
	} {
		if _, err := sizeOne(t, World{}, strings.Fields(asks)...); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", asks, err, want)
		}
	}
	if _, err := NewSize().Do(World{}); err == nil || !strings.Contains(err.Error(), "paddler: nobody is given") {
		t.Error(err)
	}
}

// TestOneScale: formulas, hours and fields know the same skills.
func TestOneScale(t *testing.T) {
	var counted []string
	for _, s := range hours.Skills() {
		counted = append(counted, s.String())
	}
	known := family.Skills()
	slices.Sort(counted)
	slices.Sort(known)
	if !slices.Equal(counted, known) {
		t.Errorf("hours know %q, formulas %q", counted, known)
	}
	if got := NewSize().brief(); got.Skill != sizing.DefaultBrief().Skill {
		t.Errorf("skill %q, want %q", got.Skill, sizing.DefaultBrief().Skill)
	}
}

// TestEffortAsAfloat: a boat that is sized tells the same effort as the same boat afloat.
func TestEffortAsAfloat(t *testing.T) {
	for _, who := range [][]string{{"--paddler", "58 kg, 164 cm, woman", "--dog", "20 kg", "--use", "solo"}, {"--paddler", "86 kg, 183 cm", "--paddler", "70 kg, 170 cm", "--use", "tandem"}} {
		m := ask(t, "size", append(who, "--title", "Teal")...)
		w := world()
		w.Files = InMemory(m.files)
		sized := regexp.MustCompile(`effort +([0-9.]+) N +at 5\.0 km/h`).FindStringSubmatch(m.said)
		afloat := regexp.MustCompile(`(?m)^ 5\.0 .* ([0-9.]+) +\d+$`).FindStringSubmatch(do(t, asked(t, "float", "teal.toml"), w).said)
		if sized == nil || afloat == nil || sized[1] != afloat[1] {
			t.Errorf("%v: %v sized, %v afloat", who, sized, afloat)
		}
	}
}
