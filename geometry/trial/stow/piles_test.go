package stow

import (
	"strings"
	"testing"

	"ribwright/geometry/design"
)

// TestPiles: Brook, Lake, two Rivers and a Lake too wide for them make the stacks that their
// nesting two by two allows, whatever order they are given in: Brook in Lake in River
// (TestShippedFleet), and no boat in one of its own beam, for their gunwales meet. Nobody is left out or counted twice, and every stack is one that Nest finds too.
func TestPiles(t *testing.T) {
	river, lake, brook := shipped(t, "river", nil), shipped(t, "lake", nil), shipped(t, "brook", nil)
	second := shipped(t, "river", func(d *design.Design) { d.Title = "River two" })
	wide := shipped(t, "lake", func(d *design.Design) { d.Title, d.Hull.Beam = "Wide", d.Hull.Beam+200 })
	all := []*Boat{brook, lake, river, second, wide}
	for range 3 {
		piles := Piles(all, Options{Pad: 5})
		count := map[*Boat]int{}
		for _, s := range piles {
			for _, b := range s.Boats {
				count[b]++
			}
			if !s.Nests {
				t.Errorf("a stack of %d does not nest", len(s.Boats))
			}
			if len(s.Boats) < 2 {
				continue
			}
			if best, err := Nest(s.Boats, Options{Pad: 5}); err != nil || !best.Nests || best.Height > s.Height+0.1 {
				t.Errorf("Nest makes another stack of the same boats: %v", err)
			}
		}
		for _, b := range all {
			if count[b] != 1 {
				t.Errorf("%s lies in %d stacks", b.Title, count[b])
			}
		}
		if got := titles(piles); got != "Wide; River; River two, Lake, Brook" && got != "Wide; River two; River, Lake, Brook" {
			t.Errorf("stacks %s", got)
		}
		all = append(all[2:], all[:2]...)
	}
	if Piles(nil, Options{}) != nil {
		t.Error("no boats make a stack")
	}
}

func titles(piles []*Stack) string {
	var out []string
	for _, s := range piles {
		var in []string
		for _, b := range s.Boats {
			in = append(in, b.Title)
		}
		out = append(out, strings.Join(in, ", "))
	}
	return strings.Join(out, "; ")
}
