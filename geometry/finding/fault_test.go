package finding

import (
	"strings"
	"testing"
)

// TestFaultMissingTables leaves out one table after the other.
func TestFaultMissingTables(t *testing.T) {
	river := text(t, "river")
	for _, c := range []struct{ table, key string }{
		{"hull", "hull.length"}, {"bow", "bow.forefoot_radius"}, {"stern", ""}, {"gunwale", "gunwale.species"},
		{"ribs", "ribs.species"}, {"keel", "keel.species"}, {"stringers", "stringers.species"},
		{"breasthook", "breasthook.species"}, {"skin", ""},
	} {
		t.Run(c.table, func(t *testing.T) {
			before, rest, ok := strings.Cut(river, "\n["+c.table+"]\n")
			_, after, more := strings.Cut(rest, "\n[")
			if !ok || !more {
				t.Fatal("the table is not in the file")
			}
			file := before + "\n[" + after
			if c.key == "" {
				mustDecode(t, file)
				return
			}
			if f := faultOf(t, file); f.Key != c.key || !strings.Contains(f.Text, "is missing") {
				t.Errorf("got %v, want %s to be missing", f, c.key)
			}
		})
	}
}
func TestFaultError(t *testing.T) {
	for _, c := range []struct {
		name string
		f    Fault
		want string
	}{
		{"whole", Fault{File: "a.toml", Line: 3, Key: "hull.beam", Text: "is wrong"}, "a.toml:3: hull.beam: is wrong"},
		{"no line", Fault{File: "a.toml", Line: 0, Key: "hull.beam", Text: "is wrong"}, "a.toml: hull.beam: is wrong"},
		{"no key", Fault{File: "a.toml", Line: 3, Key: "", Text: "is wrong"}, "a.toml:3: is wrong"},
		{"lines in it", Fault{File: "a\nb", Line: 1, Key: "x\ny", Text: "p\r\nq\u2028r\u0085s\u2029t"}, "a b:1: x y: p  q r s t"},
		{"terminal codes", Fault{File: "a", Line: 1, Key: "", Text: "\x1b[31mred\x7f\u202eder"}, "a:1:  [31mred  der"},
		{"endless", Fault{File: "a", Line: 1, Key: strings.Repeat("k", 81), Text: strings.Repeat("é", 501)},
			"a:1: " + strings.Repeat("k", 80) + "...: " + strings.Repeat("é", 500) + "..."},
	} {
		if got := c.f.Error(); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}
