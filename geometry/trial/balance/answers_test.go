package balance

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
)

// TestAnswers: what the gunwales answer is what they rest at with one rib wider, or one
// cross piece longer, less what they rest at without. Superposition.
func TestAnswers(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		b, err := Of(f)
		if err != nil {
			t.Fatal(err)
		}
		x := append(f.Stations(), 0, 333)
		for _, out := range []map[int]bool{nil, {0: true}} {
			set := Setting{Open: b.Open, Slack: b.Fit, StrutsOut: out}
			got, err := b.Model.Answers(set, x)
			if err != nil {
				t.Fatal(err)
			}
			rest := settle(t, b.Model, nil, set)
			check := func(what string, row []float64, open, slack []float64) {
				t.Helper()
				now := settle(t, b.Model, nil, Setting{Open: open, Slack: slack, StrutsOut: out})
				for k, at := range x {
					if want := now.At(at) - rest.At(at); math.Abs(row[k]-want) > 1e-9 {
						t.Errorf("%s, %s, at %.0f mm: %.12f mm, settled %.12f", name, what, at, row[k], want)
					}
				}
			}
			for i, row := range got.Ribs {
				check(fmt.Sprint("rib ", i), row, plusOne(b.Open, i), b.Fit)
			}
			for j, row := range got.Pieces {
				if out[j] != (row == nil) {
					t.Fatalf("%s: cross piece %d answers %v", name, j, row)
				}
				if row != nil {
					check(fmt.Sprint("cross piece ", j), row, b.Open, plusOne(b.Fit, j))
				}
			}
		}
	}
}

// TestAnswersToStiffness: what stiffer gunwales and stiffer ribs do is the central
// difference of two boats of stiffer and limper wood. Their ribs are knocked in, so that
// they do not stand where they want to and stiffness counts.
func TestAnswersToStiffness(t *testing.T) {
	const e = 1e-3
	for _, name := range design.ShippedNames() {
		of := func(gunwales, ribs float64) *Boat {
			return boat(t, name, func(d *design.Design) {
				stiffer(t, d, &d.Gunwale.Species, "wood of the gunwales", gunwales)
				stiffer(t, d, &d.Ribs.Species, "wood of the ribs", ribs)
			})
		}
		b := of(1, 1)
		set := Setting{Open: slices.Clone(b.Open), Slack: b.Fit}
		for i := range set.Open {
			set.Open[i] -= 20
		}
		x := b.Frame.Stations()
		got, err := b.Model.Answers(set, x)
		if err != nil {
			t.Fatal(err)
		}
		check := func(what string, got []float64, up, down *Boat) {
			t.Helper()
			hi, lo := settle(t, up.Model, nil, set), settle(t, down.Model, nil, set)
			most := 0.0
			for k, at := range x {
				want := (hi.At(at) - lo.At(at)) / (2 * e)
				most = math.Max(most, math.Abs(want))
				if math.Abs(got[k]-want) > 1e-4 {
					t.Errorf("%s, %s stiffer, at %.0f mm: %.6f mm for a whole share, settled %.6f", name, what, at, got[k], want)
				}
			}
			if most < 0.1 {
				t.Errorf("%s: %s move the boat by %.3f mm for a whole share, which proves nothing", name, what, most)
			}
		}
		check("gunwales", got.Gunwales, of(1+e, 1), of(1-e, 1))
		check("ribs", got.Stiff, of(1, 1+e), of(1, 1-e))
	}
}

// stiffer makes a member of a wood of its own: the one it is of, so many times as stiff.
func stiffer(t *testing.T, d *design.Design, species *string, name string, times float64) {
	t.Helper()
	s, err := d.Wood(*species)
	if err != nil {
		t.Fatal(err)
	}
	d.Woods = append(slices.Clone(d.Woods), design.Wood{Name: name, Density: s.Density, Stiff: times * s.MOE, Strong: s.MOR,
		StrapRatio: s.StrapRatio, FreeRatio: s.FreeRatio})
	*species = name
}

func plusOne(v []float64, i int) []float64 {
	out := append([]float64(nil), v...)
	out[i]++
	return out
}
