package design

import (
	"math/rand/v2"
	"testing"
)

// TestAlike: two words are alike when both are the same bare.
func TestAlike(t *testing.T) {
	r, same := rand.New(rand.NewPCG(4, 4)), 0
	letters := []rune("aAbÄä -_.")
	word := func() string {
		var out []rune
		for range r.IntN(5) {
			out = append(out, letters[r.IntN(len(letters))])
		}
		return string(out)
	}
	for range 20000 {
		a, b := word(), word()
		if got, want := alike(a, b), bare(a) == bare(b); got != want {
			t.Fatalf("%q and %q: %v, want %v", a, b, got, want)
		} else if got {
			same++
		}
	}
	if !alike("Bow seat", "bow-seat") || alike("Bow seat", "Bow seats") || same < 100 {
		t.Errorf("%d of 20000 pairs alike", same)
	}
}
