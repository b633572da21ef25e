package timber

import (
	"fmt"
	"strings"
	"testing"
)

func TestLookup(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"white oak", "white oak"},
		{"WHITE OAK", "white oak"},
		{" White  Oak ", "white oak"},
		{"western red cedar", "western redcedar"},
		{"douglas fir", "Douglas-fir"},
		{"Yellow Poplar", "yellow-poplar"},
		{"Alaska cedar", "yellow cedar"},
		{"hickory", "hickory"},
		{"northern red oak", "red oak"},
	} {
		t.Run(row.text, func(t *testing.T) {
			s, err := Lookup(row.text)
			if err != nil || s.Name != row.want {
				t.Errorf("Lookup(%q) = %q, %v, want %q", row.text, s.Name, err, row.want)
			}
		})
	}
	for _, s := range All() {
		if got, err := Lookup(s.Name); err != nil || got != s {
			t.Errorf("Lookup(%q) = %v, %v", s.Name, got, err)
		}
	}
}

func TestLookupRefuses(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"white osk", "the nearest are white oak,"},
		{"oak", "red oak, white oak, European oak"},
		{"ash", "black ash, white ash, European ash"},
		{"cedar", "yellow cedar, western redcedar, northern white cedar"},
		{"sitca sprus", "the nearest are Sitka spruce,"},
		{"duglasfir", "the nearest are Douglas-fir,"},
		// Two letters are no word: by edits these are 6, 6 and 7 away, Douglas-fir 8.
		{"fi", "the nearest are hickory, red oak, white ash"},
		{"", "write one of American elm, black ash"},
		{" 12-", "write one of American elm"},
		{strings.Repeat("oak", 500), "too long"},
		{"\xff\n", "no name is written"},
	} {
		s, err := Lookup(row.text)
		if err == nil {
			t.Errorf("Lookup(%q) = %v, want an error", row.text, s)
			continue
		}
		if got := err.Error(); !strings.Contains(got, row.want) || strings.Contains(got, "\n") {
			t.Errorf("Lookup(%q): %q does not say %q in one line", row.text, got, row.want)
		}
	}
}

// Whatever is typed, the answer is one short line that does not repeat it all.
func TestLookupHostile(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{ // common practice, no source
		{"a megabyte", strings.Repeat("a", 1<<20), "too long"},
		{"one byte more than is compared", strings.Repeat("a", 41), "too long"},
		{"as long as is compared", strings.Repeat("a", 40), "the nearest are"},
		{"cut within a letter", "a" + strings.Repeat("\u00e9", 5000), "too long"},
		{"lines and colours", strings.Repeat("oak\n\x1b[31m", 4), "the nearest are"},
		{"a format", "%s%n%d", "the nearest are"},
		{"foreign letters", "\u0434\u0443\u0431", "the nearest are"},
	} {
		t.Run(row.name, func(t *testing.T) {
			s, err := Lookup(row.text)
			if err == nil || s != (Species{}) {
				t.Fatalf("got %v, %v, want an error", s, err)
			}
			got := err.Error()
			if len(got) > 250 || strings.ContainsAny(got, "\n\x1b") || !strings.Contains(got, row.want) {
				t.Errorf("%d bytes, %q, want one line of at most 250 with %q", len(got), got, row.want)
			}
		})
	}
}

func ExampleLookup() {
	s, _ := Lookup("White Ash")
	fmt.Printf("%s: %.0f kg/m3, %.0f and %.0f N/mm2, %s\n", s.Name, s.Density, s.MOE, s.MOR, s.Strength)
	_, err := Lookup("white aash")
	fmt.Println(err)
	// Output:
	// white ash: 672 kg/m3, 12000 and 103 N/mm2, handbook
	// species "white aash" is not known; the nearest are white ash, white oak, white spruce
}
