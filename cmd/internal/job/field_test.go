package job

import (
	"reflect"
	"slices"
	"strings"
	"testing"
)

// others are texts that set each field to something else than its default.
var others = map[string]string{
	"units": "imperial", "paper": "a4", "way": "standing", "ribs": "strips", "margins": "left 8 mm, bottom 15 mm", "offset": "right 1.5 mm, down 0.5 mm",
	"printed-across": "200.8 mm of 200 mm", "printed-down": "199.7 mm of 200 mm", "only": "stems", "sheets": "1-3,5,9-", "max-sheets": "12",
	"stock": "500x700,20mm=4x8", "cutter": "1/4 in", "gap": "9 mm", "by-thickness": "false", "each": "true", "nest": "quick", "split": "true", "hairline": "0.05 mm",
	"layer-colors": "CUT=red,MARK=#0000ff", "relief": "round", "router-guide": "16mm,6mm", "water": "salt", "prices": "local", "price-table": "mixed", "skill": "beginner",
	"html": "true", "crew": "70,85kg:floor@-200mm", "load": "230kg", "temperature": "50F", "freeboard": "6 in", "draft": "100 mm", "kg": "280 mm",
	"smooth": "true", "svg": "true", "without": "seat,thwart-2", "miss": "-4 mm", "room": "8 mm", "leave-in": "true", "roof": "75kg", "door": "900 mm",
	"fit": "inner", "loft": "true", "full-size": "true", "rig": "lug", "area": "38sqft", "wind": "10kn", "mast-at": "-1.2 m", "hike": "true", "pack": "1.5 m", "reefs": "3",
	"spacing": "2400 mm", "purpose": "moving", "apart": "1 m", "width": "60 mm", "depth": "90 mm", "person": "80kg", "beams": "3", "paddler": "man, 175 cm, 78 kg", "passenger": "25 kg, 120 cm, sitting, at 200 mm", "dog": "30 kg",
	"title": "Teal", "edition": "2", "advise": "true", "explain": "beam", "formulas": "people", "gear": "22 lb", "days": "12", "hours-a-day": "8", "benches": "4", "use": "solo", "family": "own.family", "waters": "moving",
	"longest-stick": "8 ft", "wood": "sitka spruce", "rib-wood": "white oak", "speed": "4 mph", "set": "beam=700mm; length=4 m", "target": "draft<=110mm",
	"free": "beam", "aim": "easiest", "sweep": "beam=680mm..780mm/20mm", "population": "40",
	"weight": "21.5kg", "freeboards": "305mm,240mm,12 in", "inclined": "10kg 200mm 7.5 -7.9 7.6 -7.8",
	"labor": "labor.csv", "of": "lake", "notes": "brook-notes.csv", "feedback": "true", "check": "20", "date": "2026-11-26", "log": "pack-log.csv",
	"cut": "stems,ribs:A1-A3", "since": "old.toml",
	"span": "50 in", "oar": "7 ft", "seat": "200 mm", "seat-at": "0.2 m", "pull": "300N",
	"hull-length": "3600 mm", "hull-beam": "28 in", "hull-depth": "300 mm", "rocker": "0 mm", "seat-height": "40 mm", "seat-place": "-200 mm", "rib-thickness": "6.5 mm", "thwart-place": "30 mm", "flare": "6.5 deg", "fullness": "78.5 %", "fault": "wavy", "size": "8 mm", "stand": "abeam", "board": "3 of white ash, 2400 mm x 150 mm x 26 mm",
	"car": "4 m", "inside": "river", "book": "true", "fan-board": "true", "around": "brook", "turn": "-30", "rise": "12.5", "whole": "true",
}

// TestFieldsSurvive writes every field's value and reads it back into a fresh request:
// what one front end sets, another must be able to hand on as text.
func TestFieldsSurvive(t *testing.T) {
	for _, v := range Asked() {
		for i, f := range v.New().Fields() {
			text, ok := others[f.Name]
			if !ok {
				t.Errorf("%s: no value is known to try %s with", v.Name, f.Name)
				continue
			}
			first, second, plain := v.New(), v.New(), v.New()
			if text == "true" && f.Value.String() == text {
				text = "false"
			}
			if err := first.Fields()[i].Value.Set(text); err != nil {
				t.Errorf("%s: %s: %v", v.Name, f.Name, err)
				continue
			}
			if reflect.DeepEqual(first, plain) {
				t.Errorf("%s: %s changes nothing of the request", v.Name, f.Name)
			}
			shown := first.Fields()[i].Value.String()
			if err := second.Fields()[i].Value.Set(shown); err != nil {
				t.Errorf("%s: %s is written %q, which is not read: %v", v.Name, f.Name, shown, err)
			} else if again := second.Fields()[i].Value.String(); again != shown {
				t.Errorf("%s: %s is written %q, and %q when read back", v.Name, f.Name, shown, again)
			}
		}
	}
}

// TestDefaultsSurvive reads every default that is written back, and nothing changes.
func TestDefaultsSurvive(t *testing.T) {
	for _, v := range Asked() {
		for i, f := range v.New().Fields() {
			r := v.New()
			if text := r.Fields()[i].Value.String(); text != "" {
				if err := r.Fields()[i].Value.Set(text); err != nil || r.Fields()[i].Value.String() != text {
					t.Errorf("%s: the default %q of %s does not survive (%v)", v.Name, text, f.Name, err)
				}
			}
		}
	}
}

// TestFieldNames: one word has one meaning. A name stands once in a request, and takes
// and says the same wherever several requests have it, but for what is their own.
func TestFieldNames(t *testing.T) {
	own := []string{"units", "svg", "paper", "margins", "paddler"} // say what they are for in each
	takes, says := map[string]string{}, map[string]string{}
	for _, v := range Asked() {
		seen := map[string]bool{}
		for _, f := range v.New().Fields() {
			if seen[f.Name] || f.Says == "" || f.Name != strings.ToLower(f.Name) {
				t.Errorf("%s: the field %q stands twice or says nothing", v.Name, f.Name)
			}
			seen[f.Name] = true
			if old, ok := takes[f.Name]; ok && old != f.Takes {
				t.Errorf("%s takes %q in %s and %q elsewhere", f.Name, f.Takes, v.Name, old)
			}
			if old, ok := says[f.Name]; ok && old != f.Says && !slices.Contains(own, f.Name) {
				t.Errorf("%s is for %q in %s and for %q elsewhere", f.Name, f.Says, v.Name, old)
			}
			takes[f.Name], says[f.Name] = f.Takes, f.Says
		}
	}
}

// TestRefused: what cannot be is refused with the field's name and what is accepted.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ verb, field, text, want string }{
		{"float", "load", "120", "120kg or 265lb"}, {"float", "load", "-3kg", "out of range"}, {"float", "temperature", "15", "15C or 59F"},
		{"float", "crew", "70,3", "15 kg to 250 kg"}, {"float", "crew", "70,3", "write 70.3, not 70,3"}, {"float", "crew", "80,5 kg", "write 80.5, not 80,5"}, {"float", "load", "80,5 kg", "write 80.5, not 80,5"},
		{"size", "paddler", "80,5 kg, 1.8 m", "write 80.5, not 80,5"}, {"size", "dog", "25,5 kg", "write 25.5, not 25,5"}, {"row", "paddler", "man, 1,75 m", "write 1.75, not 1,75"}, {"loft", "stock", "600,5x1200", "write 600.5, not 600,5"}, {"float", "temperature", "15,5C", "write 15.5, not 15,5"}, {"float", "crew", "70:floor:bench", "two postures"}, {"float", "crew", "2kg:dog", "3 kg to 250 kg"}, {"size", "passenger", "6 kg", "10 to 250 kg"}, {"size", "dog", "30 kg, 60 cm", "is not understood here"}, {"float", "crew", "70:", "a colon"}, {"fleet", "room", "5", "mm"}, {"fleet", "fit", "outer", "accepted: inner"},
		{"loft", "paper", "a9", "letter, a4"}, {"loft", "way", "flat", "best, lying, standing"}, {"loft", "sheets", "0", "1-4,9"}, {"loft", "max-sheets", "0", "a whole number"},
		{"loft", "cutter", "90 mm", "0.1 to 50 mm"}, {"loft", "hairline", "0 mm", "0.025"}, {"loft", "nest", "snug", "close, quick"}, {"loft", "router-guide", "16mm", "bush and bit"},
		{"sail", "wind", "5", "5m/s"}, {"sail", "area", "4", "3.5m2"}, {"sail", "rig", "square", "spritsail"}, {"sail", "reefs", "7", "0 to 3"},
		{"row", "paddler", "giant", "175 cm"}, {"row", "pull", "300", "250N"}, {"pair", "person", "3000kg", "250 kg"}, {"book", "skill", "master", "beginner"},
		{"size", "gear", "12", "10 kg or 22 lb"}, {"size", "speed", "5", "5 km/h"}, {"size", "longest-stick", "6", "mm"}, {"size", "waters", "salt", "sheltered, open, moving"},
		{"size", "paddler", "62", "is a plain number"}, {"size", "population", "0", "1 to 100000"}, {"size", "aim", "best", "smallest, easiest"}, {"class", "skill", "first", "beginner"},
	} {
		_, err := Ask(c.verb, nil, [2]string{c.field, c.text})
		if err == nil || !strings.HasPrefix(err.Error(), c.field+": ") || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s %s=%q: %v, want the field and %q", c.verb, c.field, c.text, err, c.want)
		}
	}
}
