package wording

import (
	"strings"
	"testing"
)

// TestFaultError has what is told of a fault, hostile texts too.
func TestFaultError(t *testing.T) {
	for _, c := range []struct {
		name string
		f    Fault
		want string
	}{
		{"whole", Fault{File: "a.toml", Line: 3, Key: "hull.beam", Text: "is wrong"}, "a.toml:3: hull.beam: is wrong"},
		{"no line", Fault{File: "a.toml", Line: 0, Key: "hull.beam", Text: "is wrong"}, "a.toml: hull.beam: is wrong"},
		{"no key", Fault{File: "a.toml", Line: 3, Key: "", Text: "is wrong"}, "a.toml:3: is wrong"},
		{"column", Fault{File: "a.family", Line: 1, Col: 5, Key: "beam", Text: "is wrong"}, "a.family:1:5: beam: is wrong"},
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
