package afloat

import (
	"errors"
	"math"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/outfit"
	"ribwright/geometry/water/float"
)

// withOutfits is how a shipped boat lies with a pair and a rowing frame.
func withOutfits(t *testing.T, change func(*design.Design)) []Outfitted {
	t.Helper()
	f := frametest.Shipped(t, "brook", func(d *design.Design) {
		pair, row := d.Pair(), d.Row()
		pair.Purpose = design.OpenWater
		d.Outfit = &design.Outfit{Pair: &pair, Row: &row}
	})
	s, err := outfit.NewShip(f, f.Design.Gear, options(t).Water)
	if err != nil {
		t.Fatal(err)
	}
	o := outfit.Of(s)
	change(f.Design)
	b, err := o.PutAboard(boatOf(t, f.Design))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := WithOutfits(b, o, options(t).Water)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// TestOutfitted: each row floats what it weighs (Archimedes), the last has all outfits
// together, and a boat that turns over says so instead of having figures.
func TestOutfitted(t *testing.T) {
	rows := withOutfits(t, func(*design.Design) {})
	if len(rows) != 4 || rows[0].Added != 0 {
		t.Fatalf("%d rows: %+v", len(rows), rows)
	}
	for _, l := range rows {
		if l.Fault != nil {
			t.Errorf("with %s: %v", l.With, l.Fault)
		}
		if math.Abs(l.Rest.Displacement-l.All.Mass) > 1e-6*l.All.Mass {
			t.Errorf("with %s: %.3f kg of water for %.3f kg", l.With, l.Rest.Displacement, l.All.Mass)
		}
		if math.Abs(l.All.Mass-rows[0].All.Mass-l.Added) > 1e-9 {
			t.Errorf("with %s: %.3f kg added to %.3f are %.3f", l.With, l.Added, rows[0].All.Mass, l.All.Mass)
		}
	}
	if all := rows[1].Added + rows[2].Added; math.Abs(rows[3].Added-all) > 1e-9 {
		t.Errorf("both outfits weigh %.3f kg, want %.3f", rows[3].Added, all)
	}
	over := withOutfits(t, func(d *design.Design) {
		d.Seats[0].Kind, d.Seats[0].Height, d.Crew[0].Posture = design.Saddle, 600, design.Bench
	})
	var f *float.Fault
	if !errors.As(over[0].Fault, &f) || f.Outcome != float.Capsizes || over[0].Rest != (float.Hydrostatics{}) {
		t.Errorf("somebody on a bench of 600 mm: %+v", over[0])
	}
}

// TestDisplacement: nothing sinks it by nothing, and a draft that is asked for by itself
// gives the weight that the curve has there.
func TestDisplacement(t *testing.T) {
	d, err := design.Shipped("lake")
	if err != nil {
		t.Fatal(err)
	}
	r := run(t, d)
	if first := r.Displacement[0]; first.Draft != 0 || math.Abs(first.Mass) > 1e-9 {
		t.Errorf("the curve begins at %+v", first)
	}
	for i, v := range r.Displacement[1:] {
		if last := r.Displacement[i]; v.Mass <= last.Mass || math.Abs(v.Draft+v.Freeboard-last.Draft-last.Freeboard) > 1e-9 {
			t.Errorf("%+v comes after %+v", v, last)
		}
	}
	o := options(t)
	at := r.Displacement[16]
	o.Draft = at.Draft
	fixed, err := Run(r.Boat, o)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(fixed.Load.Mass-at.Mass) > 1e-9*at.Mass {
		t.Errorf("%.3f kg at a draft of %.1f mm, the curve has %.3f", fixed.Load.Mass, at.Draft, at.Mass)
	}
}
