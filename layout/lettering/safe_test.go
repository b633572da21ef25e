package lettering

import (
	"fmt"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

func TestSafe(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"", ""},
		{" \t\n ", ""},
		{"Stem 12 mm", "Stem 12 mm"},
		// White space and control characters.
		{"a\tb", "a b"}, {"a\r\nb\r\n", "a b"}, {"a\u00a0\u2009 b", "a b"},
		{"a\u2028b\u0085c", "a b c"}, {"s\x00t\x00e\x00m\x00", "stem"},
		{"a\x1b[31mb\x7f", "a[31mb"}, {"a\u0081b", "ab"},
		// Invalid bytes.
		{"caf\xe9", "caf□"}, {"\xff\xfe\xfd", "□"}, {"5\xe2\x82mm", "5□mm"}, {"\xed\xa0\x80", "□"},
		// Inches, fractions, signs.
		{"5\u2032 6\u00bd\u2033", "5' 6 1/2\""},
		{"5\u215b", "5 1/8"}, {"5 \u215b", "5 1/8"}, {"5\u200b\u215b", "5 1/8"},
		{"\u00bc\u00bd\u00be", "1/4 1/2 3/4"}, {"\u00bd5", "1/2 5"}, {"(\u2154)", "(2/3)"},
		{"5\u215f8\u00bd", "5 1/8 1/2"}, {"\uff15\u00bd", "5 1/2"}, {"3\u20448", "3/8"},
		{"5\u00b9\u2044\u2088", "5\u00b9/8"}, {"5\u2075", "5^5"}, {"-\u00bd", "-1/2"},
		{"\u22125", "-5"}, {"2\u00d74 90\u00b0", "2\u00d74 90\u00b0"}, {"\u21165", "No.5"},
		{"\u201cA\u201d \u2018b\u2019", "\"A\" 'b'"}, {"a\u2013b\u2014c\u2011d", "a\u2013b\u2014c-d"},
		{"\u20ac5 \u2026", "\u20ac5 ..."}, {"\u23006 \u33a1 \u2103", "\u00d86 m\u00b2 \u00b0C"},
		{"\ufb01n \u0133s", "fin ijs"}, {"\uff21\uff0d\uff11", "A-1"},
		// Accents: kept by the font, joined, or lost.
		{"caf\u00e9 \u0160 \u0178", "caf\u00e9 \u0160 \u0178"},
		{"cafe\u0301 s\u030c", "caf\u00e9 \u0161"},
		{"Łódź", "Łódź"}, {"Příliš", "Příliš"}, {"и\u0306 Ι\u0308 Ι\u0308\u0301", "й Ϊ Ϊ"},
		{"Şerban \u021bi ığ ķū", "Şerban \u021bi ığ ķū"},
		{"Nguy\u1ec5n", "Nguyen"}, {"a\u0306 \u0301b", "ă b"}, {"e \u0301", "e"},
		{"\u0301b", "b"}, {"e\u0301", "\u00e9"}, {"A\u0300Y\u0308C\u0327", "\u00c0\u0178\u00c7"}, {"\u1e00", "A"}, {"μ", "μ"}, {"Γλάρος", "Γλάρος"},
		// What the font cannot say.
		{"\u65e5\u672c", "□□"}, {"Лодка", "Лодка"},
		{"abc\u202edef\u202c\ufeff", "abcdef"}, {"so\u00adft", "soft"},
		{"\U0001f6f6", "□"}, {"a\U0001f44d\U0001f3fdb", "a□b"}, {"\U0001f44d\U0001f44d", "□□"},
		{"\U0001f468\u200d\U0001f469\u200d\U0001f467", "□"}, {"\u2764\ufe0f\u200d\U0001f525", "□"},
		{"\U0001f1e6\U0001f1fa", "□"}, {"\U0001f1f3\U0001f1ff", "□"}, {"\U0001f1ff\U0001f200", "□□"}, {"\U0001f1e8a", "□a"}, {"\U0001f6f6\U0001f1e8", "□□"},
		{"\U0001f44d\U0001f3fb", "□"}, {"\U0001f44d\U0001f3ff", "□"}, {"\U0001f44d\U0001f3fa", "□□"}, {"\U0001f44d\U0001f400", "□□"},
		{"a\U0001f3fd", "a□"}, {"\U0001faff\U0001f3fd", "□"},
		{"\U0001f1e8\U0001f1e6\U0001f1fa\U0001f1f8", "□□"}, {"\U0001f1e8 \U0001f1e6", "□ □"},
		{"\U0001f3f4\U000e0067\U000e0062\U000e007f", "□"}, {"5\ufe0f\u20e3", "5"},
		{"\U0001f469\u200d5", "□5"}, {"\ue000\uffff", "□□"},
	} {
		t.Run(fmt.Sprintf("%+q", c.in), func(t *testing.T) {
			if got := Safe(c.in); got != c.want {
				t.Errorf("Safe(%+q) = %+q, want %+q", c.in, got, c.want)
			}
			checkSafe(t, c.in)
		})
	}
}

func TestSafeKeepsLength(t *testing.T) {
	long := strings.Repeat("abcdefghi ", 30)
	if got := Safe(long); got != strings.TrimSpace(long) {
		t.Errorf("Safe of 300 characters = %q", got)
	}
}

// Every rune of the planes that hold scripts and pictures, so that no table
// holds a word that is not plain itself.
func TestSafeEveryRune(t *testing.T) {
	for r := rune(0); r <= 0x1ffff; r++ {
		if r == 0x10000 {
			r = 0x1f000 // ancient scripts, all foreign, take long under -race
		}
		s := string(r)
		checkSafe(t, "5"+s+"a"+s+"5")
	}
}

func TestBaseTablesAreWhole(t *testing.T) {
	if n := len(latinBases); n != 0x250-latinFirst {
		t.Errorf("latinBases has %d letters", n)
	}
	if n := len(addedBases); n != 0x100 {
		t.Errorf("addedBases has %d letters", n)
	}
}

func FuzzSafe(f *testing.F) {
	for _, s := range []string{"5\u2032 6\u00bd\u2033", "caf\xe9", "a\t\r\nb", "\u202eabc", "\U0001f468\u200d\U0001f469", "e\u0301", "\u00bd5\u215b", "\u65e5"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		checkSafe(t, s)
		checkStrokes(t, s)
		for _, line := range Wrap(s, 4, 30) {
			if line == "" || Safe(line) != line || Width(line, 4) > 30 {
				t.Errorf("Wrap(%+q) gives %+q", s, line)
			}
		}
	})
}

// checkSafe tests what Safe promises for any text.
func checkSafe(t *testing.T, in string) {
	t.Helper()
	s := Safe(in)
	if again := Safe(s); again != s {
		t.Errorf("Safe(%+q) = %+q, and once more %+q", in, s, again)
	}
	if !utf8.ValidString(s) || strings.TrimSpace(s) != s || strings.Contains(s, "  ") {
		t.Errorf("Safe(%+q) = %+q", in, s)
	}
	for _, r := range s {
		if !has(r) || unicode.IsControl(r) {
			t.Errorf("Safe(%+q) holds %+q", in, r)
		}
	}
}
