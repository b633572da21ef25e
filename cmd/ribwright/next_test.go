package main

import (
	"strings"
	"testing"

	"ribwright/cmd/ribwright/keep"
)

// TestNext: every verb that leaves something to be done says what is typed next, and what
// it says is a call that the program takes, but for the names of files that are not there.
func TestNext(t *testing.T) {
	for _, c := range []struct{ typed, names, made, want string }{
		{"size", "", "out/mine.toml", "float out/mine.toml"},
		{"size", "", "my boats/it's.toml", `float 'my boats/it'\''s.toml'`},
		{"size --advise", "", "", "size --use pack, solo or tandem, and -o mine.toml"},
		{"float", "", "", "bend brook"}, {"float lake", "lake", "", "bend lake"}, {"bend lake", "lake", "", "loft lake"},
		{"loft river", "river", "out/river.pdf", "book river"}, {"book a.toml", "a.toml", "x.pdf", "loft a.toml"},
		{"pair river --purpose moving", "river", "", "pair river --purpose moving --loft"}, {"sail lake --loft", "lake", "lake.pdf", ""},
		{"compare a.toml b.toml", "a.toml b.toml", "", "loft b.toml --since a.toml"},
		{"built lake", "lake", "card.pdf", "built lake and the table's name, when it is filled in"},
		{"built lake m.csv", "lake m.csv", "", ""}, {"built lake m.csv", "lake m.csv", "as.toml", "float as.toml"},
		{"fair t.csv", "t.csv", "t.toml", "float t.toml"}, {"fleet brook lake", "brook lake", "", ""},
	} {
		words := strings.Fields(c.typed)
		var made []keep.File
		if c.made != "" {
			made = []keep.File{{Path: c.made}}
		}
		got, why := verb{name: words[0]}.next(words[1:], strings.Fields(c.names), made)
		if got != c.want || (got == "") != (why == "") {
			t.Errorf("after %q: %q, %q; want %q", c.typed, got, why, c.want)
		}
	}
}
