package trade

import "testing"

// TestMeaning: an entry ends where the next one on its line begins, goes on over line ends,
// and loses its signs; a word that is only named within one is none.
func TestMeaning(t *testing.T) {
	for word, want := range map[string]string{
		"bow, stern":   "the ends, ahead and behind",
		"forward, aft": "toward the bow, toward the stern",
		"breasthook":   "the flat piece that ties the two gunwales together at an end",
		"flare":        "how far the sides lean outward. Inward it is tumblehome",
		"outwale":      "the strip outside the gunwale, over the cloth",
		"clove hitch":  "two turns round a stick, the second crossing over the first and tucked under itself",
		"tumblehome":   "",
		"mast":         "",
	} {
		if got, ok := Meaning(word); got != want || ok != (want != "") {
			t.Errorf("%s: %q, %v, want %q", word, got, ok, want)
		}
	}
}
