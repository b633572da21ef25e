package book

import "testing"

// TestNearFirst: words are moved by every way within reach once, and never by a longer way
// before a shorter one.
func TestNearFirst(t *testing.T) {
	ways := nearFirst()
	seen := map[[2]float64]bool{}
	for i, w := range ways {
		if i > 0 && w.Norm() < ways[i-1].Norm()-1e-9 {
			t.Errorf("%v comes after %v", w, ways[i-1])
		}
		seen[[2]float64{w.X, w.Y}] = true
	}
	if want := 97 * 97; len(ways) != want || len(seen) != want { // 24 mm to each side, by halves
		t.Errorf("%d ways, %d of them different, want %d", len(ways), len(seen), want)
	}
}
