package design

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/wording"
)

// setting is one place in a file where a key stands, or could.
type setting struct {
	file string // with %s for the value
	line int
}

// settings finds every place of a key in a file: each line that gives it and,
// where its table does not, a new line below the table's head.
func settings(file string, key string) []setting {
	var out []setting
	lines := strings.Split(strings.ReplaceAll(file, "%", "%%"), "\n")
	table, short := "", last(key)
	if i := strings.LastIndexByte(key, '.'); i >= 0 {
		table = key[:i]
	}
	in, given := table == "", 0
	finish := func(head int) {
		if in && given == 0 && head >= 0 {
			with := slices.Insert(slices.Clone(lines), head+1, short+" = %s")
			out = append(out, setting{strings.Join(with, "\n"), head + 2})
		}
	}
	head := -1
	for i, l := range lines {
		if strings.HasPrefix(l, "[") {
			finish(head)
			in, given, head = strings.Trim(l, "[]") == table, 0, i
		}
		if word, _, ok := strings.Cut(l, " = "); ok && in && word == short {
			with := slices.Clone(lines)
			with[i] = short + " = %s"
			out, given = append(out, setting{strings.Join(with, "\n"), i + 1}), given+1
		}
	}
	finish(head)
	return out
}

// TestEveryValue puts bad and border values in every place of every key of
// every shipped design. Each is accepted or refused by a fault that names that
// key and a line; what no key of its kind may hold is refused on that very line.
func TestEveryValue(t *testing.T) {
	never := map[string][]string{
		"a length in": {`"NaN mm"`, `"-inf mm"`, `"1e3 mm"`, `"5"`, `""`, `"999999 mm"`, `"99999999999999999999 mm"`, `"12 deg"`, "5", "0", "nan", "true", "[]", "{}", "1979-05-27"},
		"an angle in": {`"NaN deg"`, `"inf deg"`, `"5"`, `""`, `"100 deg"`, `"-91 deg"`, `"361 deg"`, `"12 mm"`, "5", "0", "nan", "true", "[]", "{}"},
		"a list of l": {`["NaN mm"]`, `["5"]`, `["999999 mm"]`, "[5]", "5", `"5 mm"`, "{}", `[["5 mm"]]`},
		"a list of n": {"[nan]", "[inf]", "[0]", "[-0.5]", "[1]", "[0.5, 0.5]", "[]", `["0.5"]`, "0.5", "{}", "[0.1, [0.2]]"},
		"a number":    {"nan", "inf", "-inf", "-1", "1e300", `"8"`, "true", "[]", "{}"},
		"a whole num": {"0", "-1", "13", "2.0", "nan", `"2"`, "true", "[]", "{}"},
		"true or fal": {`"true"`, "1", "[]"},
		"text in quo": {"5", "true", "[]", "{}"},
		`"thwart" or`: {"0", `"Yoke"`, `""`, "true", "[]"},
		`"pad", "sad`: {"0", `"Hung"`, `""`, "true", "[]"},
		`"webbing" o`: {"0", `"cane"`, `""`, "true", "[]"},
		`"kneeling",`: {"0", `"Bench"`, `""`, "true", "[]"},
		`"paddler", `: {"0", `"Dog"`, `"cat"`, `""`, "true", "[]"},
		`"spritsail"`: {"0", `"sprit"`, `""`, "true", "[]"},
		`"moving", "`: {"0", `"race"`, "true", "[]"},
		`"woman" or `: {"0", `"child"`, `""`, "true", "[]"},
		`"in place" `: {"0", `"on form"`, `""`, "true", "[]"},
		`"cut" or "b`: {"0", `"gap"`, `""`, "true", "[]"},
		`"air-dried"`: {"0", `"dry"`, `""`, "true", "[]"},
		`"sides and `: {"0", `"everywhere"`, `""`, "true", "[]"},
		`"polyester"`: {"0", `"silk"`, `""`, "true", "[]"},
		"tables, eac": {"5", `"x"`, "true", "{}", "[5]", "[[]]"},
		"a table beg": {"5", `"x"`, "true", "[]", "[{}]"},
	}
	tried := 0
	for _, name := range ShippedNames() {
		file := text(t, name)
		for _, k := range Keys() {
			values, ok := never[k.Want[:min(len(k.Want), 11)]]
			if !ok {
				t.Fatalf("%s takes %s, which this test does not know", k.Name, k.Want)
			}
			if strings.HasPrefix(k.Want, "table") || strings.HasPrefix(k.Want, "a table") {
				continue // TestFaultKinds has these
			}
			if k.Name == "stock.board.count" { // 0 and 13 boards are real counts
				values = []string{"-1", "1001", "2.0", "nan", `"2"`, "true", "[]", "{}"}
			}
			if k.Name == "skin.coats" { // bare cloth is real
				values = []string{"-1", "13", "2.0", "nan", `"2"`, "true", "[]", "{}"}
			}
			if k.Name == "inside.slats" { // none and 13 are real counts
				values = []string{"-1", "16", "2.0", "nan", `"2"`, "true", "[]", "{}"}
			}
			if k.Name == "ribs.spare" { // none and 13 are real counts
				values = []string{"-1", "41", "2.0", "nan", `"2"`, "true", "[]", "{}"}
			}
			for _, s := range settings(file, k.Name) {
				for _, v := range values {
					tried++
					refused(t, name, k.Name, v, s)
				}
				for _, v := range []string{`"0 mm"`, `"-5 mm"`, `"0 deg"`, `"-5 deg"`} {
					borderline(t, name, k, v, s)
				}
			}
		}
	}
	if tried < 2000 {
		t.Errorf("only %d values were tried: the places of the keys were not found", tried)
	}
}

// refused requires a fault on the line of the value itself.
func refused(t *testing.T, name, key, value string, s setting) {
	t.Helper()
	_, err := decode(fmt.Sprintf(s.file, value))
	var f *wording.Fault
	if !errors.As(err, &f) || f.Key != key || f.Line != s.line {
		t.Errorf("%s: %s = %s on line %d: got %v, want a fault of that key and line", name, key, value, s.line, err)
	}
}

// borderline requires a fault of that key, where there is one. Of two sections
// in one place it may name the other's line.
func borderline(t *testing.T, name string, k Key, value string, s setting) {
	t.Helper()
	isLength := strings.HasPrefix(k.Want, "a length")
	if isLength != strings.HasSuffix(value, `mm"`) || !isLength && !strings.HasPrefix(k.Want, "an angle") {
		return
	}
	_, err := decode(fmt.Sprintf(s.file, value))
	if err == nil {
		return
	}
	var f *wording.Fault
	if !errors.As(err, &f) || f.Key != k.Name || f.Line <= 0 || f.Line != s.line && last(k.Name) != "at" {
		t.Errorf("%s: %s = %s on line %d: got %v, want a fault of that key", name, k.Name, value, s.line, err)
	}
}

// TestZero lists the lengths that may be nothing and those that may be less.
func TestZero(t *testing.T) {
	zero := []string{"hull.keel_straight", "hull.rocker_bow", "hull.rocker_stern", "bow.head_radius", "bow.horn",
		"stern.head_radius", "stern.horn", "gunwale.edge_set_bow", "gunwale.edge_set_stern", "gunwale.edge_set_from", "gunwale.edge_set_made",
		"ribs.tenon_gap", "ribs.fit_width", "ribs.fit_thickness", "ribs.trim", "ribs.tolerance",
		"breasthook.hollow", "skin.roll", "skin.thickness", "outside.outwale", "outside.keel_strip", "outside.painters", "stock.kerf", "stock.longest", "thwart.at",
		"seat.at", "seat.long", "seat.wide", "seat.drop", "seat.rail_width", "seat.rail_depth", "crew.at", "crew.stature", "gear.at", "gear.height"}
	below := []string{"thwart.at", "seat.at", "gear.at"} // a crew that is seated has no place of its own
	river := text(t, "river")
	var gotZero, gotBelow []string
	for _, k := range Keys() {
		if !strings.HasPrefix(k.Want, "a length") || k.Name == "hull.section.at" || strings.HasPrefix(k.Name, "outfit.") {
			continue // a section's place meets another's at 0 mm; TestOutfitValues has the outfits
		}
		s := settings(river, k.Name)[0]
		if _, err := decode(fmt.Sprintf(s.file, `"0 mm"`)); err == nil {
			gotZero = append(gotZero, k.Name)
		}
		if _, err := decode(fmt.Sprintf(s.file, `"-5 mm"`)); err == nil {
			gotBelow = append(gotBelow, k.Name)
		}
	}
	if !reflect.DeepEqual(gotZero, zero) {
		t.Errorf("0 mm is accepted by %q\nwant %q", gotZero, zero)
	}
	if !reflect.DeepEqual(gotBelow, below) {
		t.Errorf("-5 mm is accepted by %q\nwant %q", gotBelow, below)
	}
}
