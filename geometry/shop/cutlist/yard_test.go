package cutlist

import (
	"slices"
	"testing"
)

// eachWood takes the sticks of random boats by their woods.
func eachWood(t *testing.T, n int, use func(t sawing)) {
	t.Helper()
	for _, f := range randomFrames(t, n) {
		byWood := map[string][]int{}
		sticks := edgeGlued(f.Design, Heat(nil).Sticks(f))
		var woods []string
		for i, s := range sticks {
			if byWood[s.Species] == nil {
				woods = append(woods, s.Species)
			}
			byWood[s.Species] = append(byWood[s.Species], i)
		}
		for _, w := range woods {
			use(sawing{species: w, sticks: sticks, mine: byWood[w], kerf: float64(f.Design.Stock.Kerf), pack: firstFitOnly, sizes: searched})
		}
	}
}

// TestPromising: the sizes that are picked are those that come out when every size is tried.
func TestPromising(t *testing.T) {
	eachWood(t, 12, func(s sawing) {
		sizes := yard(s.species, s.longest)
		tried, order := make([]result, len(sizes)), make([]int, len(sizes))
		for i, b := range sizes {
			tried[i], order[i] = s.saw([]Board{b}, b.Clear()), i
		}
		slices.SortStableFunc(order, func(a, b int) int { return tried[a].compare(tried[b].score) })
		var want []Board
		for _, i := range order[:searched] {
			want = append(want, sizes[i])
		}
		if got := s.promising(); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", s.species, got, want)
		}
	})
}

// TestCutAllWays: where a way to cut is left out, none takes fewer boards.
func TestCutAllWays(t *testing.T) {
	eachWood(t, 12, func(s sawing) {
		for _, b := range yard(s.species, 0) {
			_, pieces := s.split(b.Clear())
			got, _ := s.cut(b, pieces)
			for _, together := range []bool{false, true} {
				in, _ := s.classes(b, pieces, together)
				if least := len(s.boards(b, s.thriftyRips(b, in))); least < len(got) {
					t.Errorf("%s from %.0f x %.0f x %.0f mm: %d boards, and %d do", s.species, b.Length, b.Width, b.Thickness, len(got), least)
				}
			}
		}
	})
}
