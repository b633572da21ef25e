package report

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// What all writers of a report must agree on stands here, so that none decides it for itself.

// Name is the title with what is told of it: "Brook, build book".
func (r Report) Name() string {
	if r.Kind == "" {
		return r.Title
	}
	return r.Title + ", " + r.Kind
}

// Foot names the report and the version of its design.
func (r Report) Foot() string {
	if r.Fingerprint == "" {
		return r.Name()
	}
	if r.Edition != "" {
		return r.Name() + ", edition " + r.Edition + ", design " + r.Fingerprint
	}
	return r.Name() + ", design " + r.Fingerprint
}

// Chapters are the words of the headings of level 1, in their order.
func (r Report) Chapters() []string {
	var out []string
	for _, b := range r.Blocks {
		if h, ok := b.(Heading); ok && h.Level == 1 {
			out = append(out, h.Words)
		}
	}
	return out
}

// Chapter is what stands under a heading of level 1; nothing where there is no such chapter.
func (r Report) Chapter(words string) []Block {
	at := slices.Index(r.Blocks, Block(Chapter(words)))
	if at < 0 {
		return nil
	}
	rest := r.Blocks[at+1:]
	for i, b := range rest {
		if h, ok := b.(Heading); ok && h.Level == 1 {
			return rest[:i]
		}
	}
	return rest
}

// Numbered reports whether the items of a list have numbers.
func (l List) Numbered() bool { return l.First > 0 }

// Mark stands before item i of a list, from 0: its number or a dash.
func (l List) Mark(i int) string {
	if l.Numbered() {
		return fmt.Sprintf("%d.", l.First+i)
	}
	return "-"
}

// Sign is the word that a caution begins with.
func (Caution) Sign() string { return "CAUTION:" }

// String is the whole caution in one run of words, with who says so in brackets.
func (c Caution) String() string {
	if c.Says == "" {
		return c.Sign() + " " + c.Words
	}
	return c.Sign() + " " + c.Words + " (" + c.Says + ")"
}

// Clean drops what would act on the text round it: control characters and marks
// that turn the direction of writing. White space becomes plain spaces, joiners of
// letters stay, and bytes that are no text become U+FFFD.
func Clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case r == '\u200c' || r == '\u200d':
			return r
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Co, r):
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd"))
}

// Headed reports whether any column has a head.
func (t Table) Headed() bool {
	return slices.ContainsFunc(t.Columns, func(c Column) bool { return c.Head != "" })
}

// Heads are the heads of all columns.
func (t Table) Heads() []string {
	out := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		out[i] = c.Head
	}
	return out
}

// Halves parts a table that is too wide into two that each begin with its first
// column; the note goes with the second. A table of two columns or fewer has no
// halves.
func (t Table) Halves() (a, b Table, ok bool) {
	n := len(t.Columns)
	if n < 3 {
		return t, Table{}, false
	}
	a, b = t.part(1, (n+1)/2), t.part((n+1)/2, n)
	a.Note = ""
	return a, b, true
}

// part is the first column with those from one number up to another.
func (t Table) part(from, to int) Table {
	out := Table{Title: t.Title, Note: t.Note, Columns: append([]Column{t.Columns[0]}, t.Columns[from:to]...)}
	for _, row := range t.Rows {
		out.Rows = append(out.Rows, append([]string{row[0]}, row[from:to]...))
	}
	return out
}

// Promise says of every figure what it is worth, with what comes before it.
const Promise = "Every figure is an estimate and nothing here certifies a boat. Local law and licensed advice come first. Wear a life jacket and try the boat in shallow water with flotation."
