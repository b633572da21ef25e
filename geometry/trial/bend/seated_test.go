package bend

import (
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/laden"
	"ribwright/geometry/wood/beam"
)

// seatedIn returns the findings on what the hung seats of a boat do to a part.
func seatedIn(t *testing.T, boat, part string, change func(*design.Design)) finding.List {
	t.Helper()
	return about(report(t, boat, change), part)
}

const (
	railAfloat = "gunwale under its load, afloat"
	ribAfloat  = "under its load, afloat, rib"
	ribAground = "under its load, aground, rib"
)

// TestSeated: each hung seat of the shipped boats is judged once for what it does to the gunwales
// and the ribs afloat and to the ribs aground, and all of them hold in the likely frame.
func TestSeated(t *testing.T) {
	for boat, want := range map[string]struct {
		seats     int
		rail, rib float64 // half of what breaks the wood: FPL-GTR-282
	}{"brook": {}, "lake": {1, 70.0 / 2, 103.0 / 2}, "river": {2, 85.0 / 2, 105.0 / 2}} {
		for part, limit := range map[string]float64{railAfloat: want.rail, ribAfloat: want.rib, ribAground: want.rib} {
			fs := seatedIn(t, boat, part, nil)
			if len(fs) != want.seats {
				t.Errorf("%s, %s: %+v", boat, part, fs)
			}
			for _, f := range fs {
				near(t, f.About, f.Limit, limit, 1e-9)
				if !f.Verdict.Passes() || !(f.Value < f.Limit) {
					t.Errorf("%s: %+v", boat, f)
				}
			}
		}
	}
	if fs := seatedIn(t, "river", "under its load", func(d *design.Design) { d.Seats[0].Kind = design.Saddle }); len(fs) != 3 {
		t.Errorf("one of two seats hung: %+v", fs)
	}
}

// TestSeatedBand: what only the loosest or the tightest frame asks of the wood is a caution with its
// cure, what the likely one does a refusal.
func TestSeatedBand(t *testing.T) {
	as := seatedIn(t, "lake", railAfloat, nil)[0]
	if as.Verdict != finding.Caution || !strings.Contains(as.Cure, "heads that fill their mortises") {
		t.Errorf("%+v", as)
	}
	if f := seatedIn(t, "lake", railAfloat, func(d *design.Design) { d.Gunwale.Height += 4 })[0]; f.Verdict != finding.Holds || f.Cure != "" || !(f.Value < as.Value-1) {
		t.Errorf("taller: %+v", f)
	}
	heavy := func(d *design.Design) { d.Crew[0].Mass = 250 }
	for part, cure := range map[string]struct {
		words string
		mend  func(*design.Design)
	}{
		railAfloat: {"gunwale.height", func(d *design.Design) { d.Gunwale.Height += 4 }},
		ribAfloat:  {"thicker ribs", func(d *design.Design) { d.Ribs.Thickness += 0.5 }},
	} {
		f := seatedIn(t, "lake", part, heavy)[0]
		if f.Verdict != finding.Weak || !strings.Contains(f.Cure, cure.words) {
			t.Errorf("%+v", f)
		}
		if g := seatedIn(t, "lake", part, func(d *design.Design) { heavy(d); cure.mend(d) })[0]; !(g.Value < 0.97*f.Value) {
			t.Errorf("%s: %.1f after %.1f N/mm2", cure.words, g.Value, f.Value)
		}
	}
	if f := seatedIn(t, "lake", ribAground, heavy)[0]; f.Verdict != finding.Caution || !strings.Contains(f.Cure, "only where the boat floats") {
		t.Errorf("%+v", f)
	}
}

// likely is how each seat bends the likely frame afloat.
func likely(t *testing.T, r *Report) []laden.Borne {
	t.Helper()
	var loads [][]laden.Load
	for _, s := range r.Frame.Seats {
		loads = append(loads, pulls(r.Frame, s))
	}
	b, err := laden.Of(r.Frame, loads...)
	if err != nil {
		t.Fatal(err)
	}
	in, err := b.Under(r.cases()[1])
	if err != nil {
		t.Fatal(err)
	}
	return in[0]
}

// TestSeatedWithRest: a rib bears a person with what it bears in its place at rest, a gunwale what a
// nut's seat leaves of it.
func TestSeatedWithRest(t *testing.T) {
	r := report(t, "lake", nil)
	s := r.Frame.Seats[0]
	in := likely(t, r)
	most := 0.0
	for i, stress := range in[0].Ribs {
		most = max(most, stress+r.Ribs[i].Stress)
	}
	near(t, "the rib that bears most", found(t, r, ribAfloat).Value, most, 1e-9)
	h := s.Hung.Front.Hanger
	x := r.Frame.Gunwale.StationOf(h.Bolts[0])
	if whole, bored := r.holeUnder(in[0], x, nil, nil), r.holeUnder(in[0], x, h.Out(), nil); !(bored > 1.02*whole) {
		t.Errorf("with a nut's seat %.1f N/mm2, whole %.1f", bored, whole)
	}
}

// TestSeatedAtBolts: river's gunwale bears most at the bolts of its bow seat, with their nuts' seats out
// of it.
func TestSeatedAtBolts(t *testing.T) {
	r := report(t, "river", nil)
	h := r.Frame.Seats[0].Hung.Front.Hanger
	in := likely(t, r)
	most := 0.0
	for _, at := range h.Bolts {
		most = max(most, r.holeUnder(in[0], r.Frame.Gunwale.StationOf(at), h.Out(), []beam.Opening{h.Bored()}))
	}
	near(t, "at the bolts", found(t, r, railAfloat+", at a hanger").Value, most, 1e-9)
}
