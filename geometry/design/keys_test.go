package design

import (
	"fmt"
	"strings"
	"testing"
)

func TestKeys(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range Keys() {
		if k.Name == "" || k.Want == "" || k.Doc == "" {
			t.Errorf("%+v says too little", k)
		}
		if strings.HasSuffix(k.Name, ".") || strings.Contains(k.Name, ",") || seen[k.Name] {
			t.Errorf("the name %q is odd or stands twice", k.Name)
		}
		if strings.ContainsAny(k.Doc, "\n\r") || !strings.HasSuffix(k.Doc, ".") {
			t.Errorf("%s: %q is not one sentence on one line", k.Name, k.Doc)
		}
		seen[k.Name] = true
	}
	for _, name := range []string{"title", "hull", "hull.length", "hull.section", "hull.section.flare", "stern.rake", "gunwale.scarfs", "thwart.kind"} {
		if !seen[name] {
			t.Errorf("%s is not among the keys", name)
		}
	}
}

func TestKeysWant(t *testing.T) {
	want := map[string]string{}
	for _, k := range Keys() {
		want[k.Name] = k.Want
	}
	for _, c := range []struct{ key, want string }{
		{"title", "text in quotes"},
		{"hull", "a table begun with [ ]"},
		{"stern", "a table begun with [ ]"},
		{"hull.section", "tables, each begun with [[ ]]"},
		{"hull.symmetric", "true or false"},
		{"hull.length", `a length in quotes with its unit, such as "720 mm" or "28 3/8 in"`},
		{"bow.rake", `an angle in quotes with its unit, such as "12 deg"`},
		{"gunwale.plies", "a whole number"},
		{"gunwale.scarf_slope", "a number"},
		{"gunwale.scarfs", `a list of lengths, such as ["-900 mm", "900 mm"]`},
		{"stringers.at", "a list of numbers, such as [0.3, 0.6]"},
		{"thwart.kind", `"thwart" or "yoke"`},
	} {
		if want[c.key] != c.want {
			t.Errorf("%s takes %q, want %q", c.key, want[c.key], c.want)
		}
	}
}

func TestNearestKey(t *testing.T) {
	for _, c := range []struct{ key, want string }{
		{"hull.lenght", "hull.length"},
		{"ribs.pich", "ribs.pitch"},
		{"hull.pitch", "ribs.pitch"},
		{"gunwales.width", "gunwale.width"},
		{"rib.thickness", "ribs.thickness"},
		{"hull.sections.flare", "hull.section.flare"},
		{"thwarts.waist", "thwart.waist"},
		{"tittle", "title"},
		{"bow.title", "title, which stands at the top, before the first table"},
	} {
		if got := nearestKey(c.key); got != c.want {
			t.Errorf("nearestKey(%q) = %q, want %q", c.key, got, c.want)
		}
	}
	// Nothing is near these; some known key must come, and soon.
	for _, key := range []string{"", ".", strings.Repeat("x.", 5e5), "\u00e4\xff"} {
		if nearestKey(key) == "" {
			t.Errorf("nearestKey(%.20q) is empty", key)
		}
	}
}

func ExampleDecode() {
	_, err := Decode(strings.NewReader("title = \"Otter\"\n[hull]\nlenght = \"3500 mm\"\n"), "otter.toml")
	fmt.Println(err)
	// Output: otter.toml:3: hull.lenght: no such key; the nearest known key is hull.length
}

func ExampleDesign_Slug() {
	d := Design{Title: "Salt & Pepper"}
	fmt.Println(d.Slug())
	// Output: salt-pepper
}
