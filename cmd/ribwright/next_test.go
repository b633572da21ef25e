package main

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
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
		{"pair river --purpose moving", "river", "", "pair river --purpose moving --loft"}, {"sail lake --loft", "lake", "lake.pdf", "book lake"},
		{"compare a.toml b.toml", "a.toml b.toml", "", "loft b.toml --since a.toml"},
		{"built lake", "lake", "card.pdf", "built lake and the table's name, when it is filled in"},
		{"built lake m.csv", "lake m.csv", "", "built lake m.csv"}, {"built lake m.csv", "lake m.csv", "as.toml", "float as.toml"},
		{"fair t.csv", "t.csv", "t.toml", "float t.toml"}, {"fleet brook lake", "brook lake", "", "loft brook"},
		{"fleet brook lake --svg", "brook lake", "narrow.toml", "float narrow.toml"}, {"compare a.toml b.toml --cut ribs", "a.toml b.toml", "kept.toml", "float kept.toml"},
		{"learn b.csv", "b.csv", "out/pack-proposed.family", "size --family out/pack-proposed.family --paddler '62 kg, 168 cm'"}, {"learn b.csv", "b.csv", "", "learn b.csv and the files of more builds"},
		{"class b.csv", "b.csv", "out/ann/ann.toml", "built out/ann/ann.toml"},
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

// TestVerbsEnd runs every verb, on the plainest work it takes, and sees that its page ends with
// a call of the program and what that is for. The page in the browser has no end.
func TestVerbsEnd(t *testing.T) {
	offsets, err := filepath.Abs("../../testdata/offsets/fig108.csv")
	if err != nil {
		t.Fatal(err)
	}
	builders := classOf(t, 1)
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"card.csv": "rib,beam_mm,depth_mm,free_width_mm\nM,721,286,726\nF1,719,286,724\nA1,718,287,721\n",
		"sent.csv": "what,of,drawn,found\nwood,,,white ash\nspringback,M,8 %,14 %\nspringback,F1,8 %,13.4 %\n",
	} {
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	calls := map[string]string{
		"size": "--paddler|62 kg, 168 cm|-o|mine.toml", "class": builders + "|--loft=false|--book=false", "float": "brook", "bend": "brook",
		"loft": "brook|--nest|quick", "proof": "", "book": "brook", "fleet": "brook|lake", "sail": "lake", "pair": "river|--purpose|moving", "row": "lake",
		"compare": "brook|lake", "built": "brook|card.csv", "learn": "sent.csv", "fair": offsets,
	}
	ending := regexp.MustCompile(`\n\nNext: ribwright ([a-z]+) ?.*\n  [a-z].*[a-z]\n$`)
	for _, v := range verbs() {
		call, ok := calls[v.name]
		if !ok {
			if v.name != "open" {
				t.Errorf("%s is not tried", v.name)
			}
			continue
		}
		var out, errs bytes.Buffer
		args := slices.DeleteFunc(strings.Split(v.name+"|"+call, "|"), func(s string) bool { return s == "" })
		if code := run(args, &out, &errs); code != done {
			t.Errorf("%q: exit %d, %s", args, code, errs.String())
			continue
		}
		end := ending.FindStringSubmatch(out.String())
		if end == nil || !slices.Contains(program(verbs()).list(), end[1]) {
			t.Errorf("%q ends with %q", args, out.String()[max(0, out.Len()-200):])
		}
		delete(calls, v.name)
	}
	if left := slices.Collect(maps.Keys(calls)); len(left) > 0 {
		t.Errorf("no verbs: %v", left)
	}
}
