package trial

import (
	"errors"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/pushed"
	"ribwright/geometry/water/float"
	"ribwright/layout/report"
)

// TestPushedIn reads what is told of two made-up ribs, as loose and as tight heads
// leave them, and of ribs that find no rest.
func TestPushedIn(t *testing.T) {
	const deg = math.Pi / 180
	b, err := bend.Of(frametest.Shipped(t, "lake", nil))
	if err != nil {
		t.Fatal(err)
	}
	for i := range b.Ribs {
		b.Ribs[i].Pushed = pushed.Rib{Why: errors.New("no rest")}
	}
	l := report.Letters{Units: measure.Metric}
	rests := func(gm, wide, draft float64) afloat.Lying {
		return afloat.Lying{Rest: float.Hydrostatics{GM: gm, BWL: wide, Draft: draft}}
	}
	lying := afloat.Loose{Drawn: rests(151.9, 667, 91.3), Hinged: rests(117.8, 653, 89.6), Clamped: rests(111.8, 653.2, 87.8)}
	if got := words(PushedIn(b, &lying, l)); !strings.Contains(got, "No rib of this boat finds its place by itself") {
		t.Error(got)
	}
	b.Ribs[13].Pushed = pushed.Rib{ // M
		Hinged:  pushed.Head{Flare: 2.1 * deg, Least: 215.3, Out: pushed.Apart{By: 13.7, Bend: 0}, In: pushed.Apart{By: 9.1, Bend: 1}, Moved: []float64{3, 7.6}},
		Clamped: pushed.Head{Flare: 7 * deg, Least: 205.8, Out: pushed.Apart{By: 16.3, Bend: 0}, In: pushed.Apart{By: 9.4, Bend: 1}, Moved: []float64{4.4, 1}},
	}
	b.Ribs[25].Pushed = pushed.Rib{ // F12
		Hinged:  pushed.Head{Flare: -9.3 * deg, Out: pushed.Apart{By: 21.4, Bend: 2}},
		Clamped: pushed.Head{Flare: -1.6 * deg, Out: pushed.Apart{By: 21.1, Bend: 1}},
	}
	got := words(PushedIn(b, &lying, l))
	for _, want := range []string{
		"Rib M: 14 to 16 mm outside its line (bottom), 9 mm inside it (bilge), flare 2 to 7 deg where 9 is wanted.",
		"With all ribs so and the people and gear of the design aboard, GM is 118 to 112 mm where 152 is drawn, the waterline's breadth 653 mm where 667 is drawn, the draft 90 to 88 mm where 91 is drawn.",
		"Rib F12: 21 mm outside its line (topside, bilge), 0 mm inside it (bottom), flare -9 to -2 deg where 5 is wanted.",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%s\nlacks %s", got, want)
		}
	}
	lying.Clamped.Rest.GM = -3
	if got := words(PushedIn(b, &lying, l)); !strings.Contains(got, "The boat would not stay upright.") {
		t.Error(got)
	}
	lying.Hinged.Fault = errors.New("no water")
	if got := words(PushedIn(b, &lying, l)); !strings.Contains(got, "What comes of it on the water is not known: no water.") {
		t.Error(got)
	}
	table := LooseRibs(b, l)
	if row := strings.Join(table.Rows[0], "|"); row != "M|9|2 to 7|14 to 16|bottom|9|bilge|215 to 206|8 to 4" {
		t.Error(row)
	}
	if row := strings.Join(table.Rows[len(table.Rows)-1], "|"); row != "A13, F13|4|-|-|no even curve|-|-|-|-" {
		t.Error(row)
	}
}
