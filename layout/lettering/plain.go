package lettering

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"

	"ribwright/geometry/measure"
)

// fraction spells a vulgar fraction, "" for what is none. The numerator one alone
// waits for its denominator, but is kept off a digit before it as well.
func fraction(r rune) string {
	switch r {
	case '\u2189':
		return "0/3"
	case '\u215f':
		return "1/"
	}
	return measure.Vulgar(r)
}

// plainForms spells characters by others that mean the same to the reader. It
// outranks the character set: curly quotes and the ellipsis have cp1252 codes, but the
// stroke alphabet has only the plain ones. Raised figures keep a sign that they are
// raised: 5 with a raised 5 must not read 55.
var plainForms = sync.OnceValue(func() map[rune]string { return spellings(plainFile) })

//go:embed plain.txt
var plainFile string

// spellings reads lines of two quoted texts: characters and how each is spelled.
func spellings(file string) map[rune]string {
	out := map[rune]string{}
	for line := range strings.Lines(file) {
		var from, to string
		if _, err := fmt.Sscanf(line, "%q %q", &from, &to); err != nil {
			panic("a spelling that the program was built with is broken: " + line)
		}
		for _, r := range from {
			out[r] = to
		}
	}
	return out
}

// plain returns the cp1252 spelling of r, which is no fraction; "?" where
// there is none. Never empty.
func plain(r rune) string {
	if s, ok := plainForms()[r]; ok {
		return s
	}
	if _, ok := code(r); ok {
		return string(r)
	}
	if r >= '\uff01' && r <= '\uff5e' { // the full width copies of ASCII
		return string(r - '\uff01' + '!')
	}
	return string(baseLetter(r))
}

// The base letters of two Unicode blocks in code order, "?" where a character
// has none. They cover Latin script from Iceland to Vietnam.
const (
	latinFirst, latinBases = '\u00c0', "" +
		"AAAAAA?CEEEEIIIIDNOOOOO?OUUUUY??aaaaaa?ceeeeiiiidnooooo?ouuuuy?y" +
		"AaAaAaCcCcCcCcDdDdEeEeEeEeEeGgGgGgGgHhHhIiIiIiIiIi??JjKkkLlLlLlL" +
		"lLlNnNnNn?NnOoOoOo??RrRrRrSsSsSsSsTtTtTtUuUuUuUuUuUuWwYyYZzZzZzs" +
		"bB?????CcDD??????FfG???IKkl??NnOOo??Pp?????tTtTUu?VYyZz?????????" +
		"?????????????AaIiOoUuUuUuUuUu?AaAa??GgGgKkOoOo??j???Gg??NnAa????" +
		"AaAaEeEeIiIiOoOoRrRrUuUuSsTt??Hh?d??ZzAaEeOoOoOoOoYy???j??ACcLTs" +
		"z??BU?EeJj??RrYy"
	addedFirst, addedBases = '\u1e00', "" +
		"AaBbBbBbCcDdDdDdDdDdEeEeEeEeEeFfGgHhHhHhHhHhIiIiKkKkKkLlLlLlLlMm" +
		"MmMmNnNnNnNnOoOoOoOoPpPpRrRrRrRrSsSsSsSsSsTtTtTtTtUuUuUuUuUuVvVv" +
		"WwWwWwWwWwXxXxYyZzZzZzhtwy??????AaAaAaAaAaAaAaAaAaAaAaAaEeEeEeEe" +
		"EeEeEeEeIiIiOoOoOoOoOoOoOoOoOoOoOoOoUuUuUuUuUuUuUuYyYyYyYy??????"
)

// baseLetter returns the ASCII letter under the accents of r, "?" if r is not
// one accented Latin letter.
func baseLetter(r rune) rune {
	bases, i := latinBases, int(r)-latinFirst
	if r >= addedFirst {
		bases, i = addedBases, int(r)-addedFirst
	}
	if i < 0 || i >= len(bases) {
		return '?'
	}
	return rune(bases[i])
}

// accented pairs the letters cp1252 has under one combining mark with the
// joined characters, in the same order.
type accented struct {
	letters string
	joined  []rune
}

var accents = map[rune]accented{
	'\u0300': {"AEIOUaeiou", []rune("\u00c0\u00c8\u00cc\u00d2\u00d9\u00e0\u00e8\u00ec\u00f2\u00f9")},
	'\u0301': {"AEIOUYaeiouy", []rune("\u00c1\u00c9\u00cd\u00d3\u00da\u00dd\u00e1\u00e9\u00ed\u00f3\u00fa\u00fd")},
	'\u0302': {"AEIOUaeiou", []rune("\u00c2\u00ca\u00ce\u00d4\u00db\u00e2\u00ea\u00ee\u00f4\u00fb")},
	'\u0303': {"ANOano", []rune("\u00c3\u00d1\u00d5\u00e3\u00f1\u00f5")},
	'\u0308': {"YAEIOUaeiouy", []rune("\u0178\u00c4\u00cb\u00cf\u00d6\u00dc\u00e4\u00eb\u00ef\u00f6\u00fc\u00ff")},
	'\u030a': {"Aa", []rune("\u00c5\u00e5")},
	'\u030c': {"SZsz", []rune("\u0160\u017d\u0161\u017e")},
	'\u0327': {"Cc", []rune("\u00c7\u00e7")},
}

// compose returns the cp1252 character for letter under the combining mark;
// letter itself where cp1252 has none.
func compose(letter, mark rune) rune {
	a := accents[mark]
	if i := strings.IndexRune(a.letters, letter); i >= 0 {
		return a.joined[i]
	}
	return letter
}
