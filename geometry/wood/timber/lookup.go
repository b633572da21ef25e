package timber

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"ribwright/geometry/wording"
)

// maxName is the longest name, in bytes, that is compared. It is twice the
// longest in the table; anything longer is not a name.
const maxName = 40

// Lookup returns the species called name. Capitals, spaces and hyphens do not
// matter: "Western Red-Cedar" finds the western redcedar. A few second names are
// known, as "Alaska cedar" for yellow cedar.
//
// Errors: a name that is not known; the text gives the three nearest names, or
// every name when name is empty.
func Lookup(name string) (Species, error) {
	if len(name) > maxName {
		return Species{}, fmt.Errorf("species %q: the name is too long; write one as white oak", name[:20]+"...")
	}
	want := plain(name)
	if want == "" {
		return Species{}, fmt.Errorf("species %q: no name is written; write one of %s", name, names(All()))
	}
	for _, e := range table() {
		for _, n := range append([]string{e.Name}, e.also...) {
			if plain(n) == want {
				return e.Species, nil
			}
		}
	}
	return Species{}, fmt.Errorf("species %q is not known; the nearest are %s", name, nearest(name, 3))
}

// plain returns the letters of name in lower case and drops all else.
func plain(name string) string {
	return strings.Map(func(r rune) rune {
		if !unicode.IsLetter(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, name)
}

// nearest lists the n names most like name, the likest first. A name that has
// a whole word of the text in it goes before one that is only spelt alike, so
// "oak" brings the oaks. Equals stay in the order of the alphabet.
func nearest(name string, n int) string {
	all := All()
	slices.SortStableFunc(all, func(a, b Species) int { return cmp.Compare(unlike(name, a), unlike(name, b)) })
	return names(all[:n])
}

// names lists the names of the species in their order.
func names(species []Species) string {
	var list []string
	for _, s := range species {
		list = append(list, s.Name)
	}
	return strings.Join(list, ", ")
}

// unlike returns how far name is from the name of s; less is nearer.
func unlike(name string, s Species) int {
	d := wording.Edits(plain(name), plain(s.Name))
	for _, w := range strings.Fields(name) {
		// A word of one or two letters is in too many names to mean anything.
		if w = plain(w); len(w) > 2 && strings.Contains(plain(s.Name), w) {
			return d
		}
	}
	return d + maxName
}
