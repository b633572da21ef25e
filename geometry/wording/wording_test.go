package wording

import (
	"strings"
	"testing"
)

// TestEdits: kitten to sitting takes three changes, the example in Levenshtein's
// name; the others by hand.
func TestEdits(t *testing.T) {
	long := strings.Repeat("a", longest)
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"rib", "rib", 0}, {"", "rib", 3}, {"rib", "", 3}, {"rib", "ribs", 1}, {"ribs", "bis", 2},
		{"kitten", "sitting", 3}, {"beam", "Beam", 1}, {"cédar", "cedar", 1}, {long + "b", long + "c", 0},
	} {
		if got := Edits(c.a, c.b); got != c.want {
			t.Errorf("Edits(%.8q, %.8q) = %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func TestWords(t *testing.T) {
	for _, c := range [][2]string{
		{OneLine("a\nb\x1b[31m\u2028c\u202ed"), "a b [31m c d"}, {OneLine("rib F3"), "rib F3"},
		{Clip("mortise", 4), "mort..."}, {Clip("rib", 3), "rib"}, {Clip("été", 2), "ét..."},
		{And(nil), ""}, {And([]string{"oak"}), "oak"}, {And([]string{"oak", "ash"}), "oak and ash"}, {And([]string{"oak", "ash", "spruce"}), "oak, ash and spruce"},
		{Capital("white ash"), "White ash"}, {Capital("Oak"), "Oak"}, {Capital(""), ""}, {Capital("été"), "été"},
	} {
		if c[0] != c[1] {
			t.Errorf("got %q, want %q", c[0], c[1])
		}
	}
}

func TestFlat(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"plain", "no plank", "no plank"},
		{"lines", "no\nplank\r\n\there\n", "no plank here"},
		{"terminal codes", "a\x1b[2Jb\x7fc\x00d\u0085e", "a [2Jb c d e"},
		{"marks of other kinds", "13'-11 7/8\" — é", "13'-11 7/8\" — é"},
		{"empty", " \n", ""},
	} {
		if got := Flat(c.in); got != c.want {
			t.Errorf("%s: Flat(%q) = %q, want %q", c.name, c.in, got, c.want)
		}
	}
}
