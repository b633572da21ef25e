package spreader

import (
	"math"
	"slices"
	"testing"

	"ribwright/geometry/design"
)

// TestNoSpreaderBeforeADrill: a drill of 45 mm across its chuck, held in a hand, comes to the
// middle of every rib's head that does not wait, past a stick of 20 mm; brook by hand: its
// sticks stand at 0 and 905.7 mm along the gunwale, ribs M and F7 at 0 and 880.1, F8 at 1008.5.
func TestNoSpreaderBeforeADrill(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		for _, s := range Of(b).Spreaders {
			for _, m := range b.Frame.Gunwale.Mortises {
				room := math.Abs(m.FromMidship-s.Along) - 20.0/2
				if waits := slices.Contains(s.Waits, m.Rib); !waits && room < 45.0/2 || waits && room > 30 {
					t.Errorf("%s: rib %s, %.1f mm from the stick at %.0f mm, waits: %v", name, m.Rib, room, s.At, waits)
				}
			}
		}
	}
	var got [][]string
	for _, s := range Of(boat(t, "brook", nil)).Spreaders {
		got = append(got, s.Waits)
	}
	if want := [][]string{{"A7"}, {"M"}, {"F7"}}; !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("brook: %v wait, want %v", got, want)
	}
}

// TestStrapBesideCrossPiece: a strap of 25 mm lies clear of the stick, of every mortise and of
// every cross piece, whose edges are those of the design. Brook's cross piece comes forward of
// the stick amidships, lake's aft of it.
func TestStrapBesideCrossPiece(t *testing.T) {
	for name, side := range map[string]float64{"brook": -1, "lake": 1, "river": -1} {
		b := boat(t, name, nil)
		d := b.Frame.Design
		for _, s := range Of(b).Spreaders {
			if s.Holds != Together {
				if s.Strap != (Strap{}) {
					t.Errorf("%s: a strap where nothing is pulled", name)
				}
				continue
			}
			if s.Strap.Wide != 25 || s.Strap.Off*side <= 0 {
				t.Errorf("%s: the strap %v", name, s.Strap)
			}
			lo, hi := s.Along+s.Strap.Off-s.Strap.Wide/2, s.Along+s.Strap.Off+s.Strap.Wide/2
			apart := func(from, to float64, what string) {
				if lo < to && hi > from {
					t.Errorf("%s: the strap lies from %.1f to %.1f mm, %s from %.1f to %.1f", name, lo, hi, what, from, to)
				}
			}
			apart(s.Along-10, s.Along+10, "the stick")
			for _, m := range b.Frame.Gunwale.Mortises {
				apart(m.FromMidship-m.Length/2, m.FromMidship+m.Length/2, "mortise "+m.Rib)
			}
			for _, c := range d.Thwarts {
				apart(float64(c.At-c.Width/2), float64(c.At+c.Width/2), c.Name)
			}
		}
	}
}

// TestCrowdedStick: a cross piece whose bolts are under the stick waits for it, and the strap
// goes beyond it.
func TestCrowdedStick(t *testing.T) {
	b := boat(t, "brook", func(d *design.Design) { d.Thwarts[0].At, d.Thwarts[0].Width = 62.5, 104 })
	for _, s := range Of(b).Spreaders {
		if s.Holds == Together && s.Strap.Off >= 0 {
			t.Errorf("the strap lies at %v", s.Strap)
		}
	}
	g, cross := &b.Frame.Gunwale, b.Frame.Thwarts
	under := Spreader{Along: 70, Holds: Together}
	if under.reach(g, cross); !slices.Equal(under.Over, []string{"Carrying thwart"}) {
		t.Errorf("over %v", under.Over)
	}
	// By hand: F1's mortise ends at 125 + 20.3/2, half a strap and 3 mm beyond it 150.65, from 70.
	if want := (Strap{Off: 81, Wide: 25}); under.Strap != want {
		t.Errorf("the strap lies at %v, want %v", under.Strap, want)
	}
	idle := Spreader{Along: 0}
	if idle.reach(g, cross); idle.Waits != nil || idle.Over != nil {
		t.Error("an idle place has no stick, and something waits for it")
	}
}
