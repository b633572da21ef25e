package lettering

import (
	"testing"
	"unicode"
)

// The codes of cp1252 that differ from Latin-1, in code order from 0x80, "?"
// where there is none. Source: the table CP1252.TXT of the Unicode consortium,
// from memory; checked once against the codec of another language.
const high = "\u20ac?\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152?\u017d?" +
	"?\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153?\u017e\u0178"

func TestCodeKnown(t *testing.T) {
	want := map[rune]byte{}
	for b := 0x20; b < 0x7f; b++ {
		want[rune(b)] = byte(b)
	}
	for b := 0xa0; b <= 0xff; b++ {
		want[rune(b)] = byte(b)
	}
	at := 0x80
	for _, r := range high {
		if r != '?' {
			want[r] = byte(at)
		}
		at++
	}
	for r := rune(-1); r <= unicode.MaxRune; r++ {
		b, ok := code(r)
		if w, known := want[r]; ok != known || b != w {
			t.Errorf("code(%#x) = %#x, %v, want %#x, %v", r, b, ok, w, known)
		}
	}
}
