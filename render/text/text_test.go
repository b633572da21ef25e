package text

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"ribwright/layout/report"
	"ribwright/layout/report/reporttest"
	"ribwright/render/rendertest"
)

func encode(t *testing.T, r report.Report) string {
	t.Helper()
	var out bytes.Buffer
	if err := Encode(&out, r); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestCases reads what is written of every kind of block.
func TestCases(t *testing.T) {
	for _, c := range reporttest.Cases() {
		got := encode(t, c.Report)
		c.Check(t, "text", got)
		tame(t, c.Name, got)
	}
}

// TestHostile puts hostile words everywhere: a terminal obeys none of them.
func TestHostile(t *testing.T) {
	for _, words := range reporttest.Hostile() {
		tame(t, words[:min(len(words), 20)], encode(t, reporttest.Everything(words)))
	}
}

// tame holds a page to what a terminal of 80 letters shows: no line is longer, none
// ends in a space, and no letter acts on others.
func tame(t *testing.T, name, page string) {
	t.Helper()
	for i, l := range strings.Split(page, "\n") {
		if n := len([]rune(l)); n > 80 {
			t.Errorf("%q: line %d has %d letters", name, i+1, n)
		}
		if strings.HasSuffix(l, " ") {
			t.Errorf("%q: line %d ends in a space", name, i+1)
		}
		for _, r := range l {
			if unicode.IsControl(r) || unicode.In(r, unicode.Bidi_Control, unicode.Zl, unicode.Zp) {
				t.Errorf("%q: line %d has the letter %q", name, i+1, r)
			}
		}
	}
	if strings.Contains(page, "\n\n\n\n") || strings.HasPrefix(page, "\n") || strings.HasSuffix(page, "\n\n") {
		t.Errorf("%q: too many empty lines", name)
	}
}

// TestWrap compares with the obvious way to break words: add the next word as long
// as the line holds it.
func TestWrap(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	for range 2000 {
		var words []string
		for range random.IntN(20) {
			words = append(words, strings.Repeat("w", 1+random.IntN(9))+strings.Repeat("\u00e9", random.IntN(3)))
		}
		wide := 12 + random.IntN(30)
		lines := wrap(strings.Join(words, " "), wide)
		if got := strings.Join(lines, " "); got != strings.Join(words, " ") {
			t.Fatalf("words lost: %q of %q", got, words)
		}
		for i, l := range lines {
			if len([]rune(l)) > wide {
				t.Fatalf("%q is longer than %d", l, wide)
			}
			if i > 0 {
				next, _, _ := strings.Cut(l, " ")
				if len([]rune(lines[i-1]+" "+next)) <= wide {
					t.Fatalf("%q has room for %q at %d", lines[i-1], next, wide)
				}
			}
		}
	}
}

// TestColumns: figures end under each other and names begin there, in rows that are
// broken too.
func TestColumns(t *testing.T) {
	got := encode(t, report.Report{Blocks: []report.Block{report.Titled("").Words("Part").Numbers("Length").Names("Wood").Filled("keel", "3103.8", "ash", strings.Repeat("port stringer ", 9), "9.5", "ash")}})
	lines := strings.Split(got, "\n")
	at := strings.Index(lines[0], "Wood")
	for _, l := range []string{lines[2], lines[3]} {
		if strings.Index(l, "ash") != at || regexp.MustCompile(`[0-9]  ash$`).FindStringIndex(l) == nil {
			t.Errorf("%q does not stand under %q", l, lines[0])
		}
	}
}

// odd is a kind of block that no writer knows.
type odd struct{ report.Block }

func TestUnknown(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("an unknown kind of block passes")
		}
	}()
	encode(t, report.Report{Blocks: []report.Block{odd{}}})
}

// TestErrors: a full disk is told.
func TestErrors(t *testing.T) {
	if err := Encode(&rendertest.Full{Room: 3}, reporttest.Everything("x")); !errors.Is(err, rendertest.ErrFull) {
		t.Errorf("%v, want %v", err, rendertest.ErrFull)
	}
}
