package lettering

import (
	"cmp"
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
// outranks the font: that has curly quotes and the ellipsis, but the
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

// plain returns r, which is no fraction, spelled in letters of the font; the box where it
// cannot be. Never empty.
func plain(r rune) string {
	if s, ok := plainForms()[r]; ok {
		return s
	}
	if has(r) {
		return string(r)
	}
	if r >= '\uff01' && r <= '\uff5e' { // the full width copies of ASCII
		return string(r - '\uff01' + '!')
	}
	return string(cmp.Or(baseLetter(r), box))
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

// baseLetter returns the ASCII letter under the accents of r, 0 if r is not one accented
// Latin letter.
func baseLetter(r rune) rune {
	bases, i := latinBases, int(r)-latinFirst
	if r >= addedFirst {
		bases, i = addedBases, int(r)-addedFirst
	}
	if i < 0 || i >= len(bases) || bases[i] == '?' {
		return 0
	}
	return rune(bases[i])
}

// accents are the letters with an accent that the font has, by the letter and the
// combining mark that each is made of.
var accents = sync.OnceValue(func() map[[2]rune]rune {
	out := map[[2]rune]rune{}
	for line := range strings.Lines(accentFile) {
		r := []rune(strings.TrimSpace(line)) // the letter, a space, and the two
		out[[2]rune{r[2], r[3]}] = r[0]
	}
	return out
})

//go:embed accents.txt
var accentFile string

// compose returns the letter under the combining mark; the bare letter where the font has
// no such one.
func compose(letter, mark rune) rune {
	return cmp.Or(accents()[[2]rune{letter, mark}], letter)
}
