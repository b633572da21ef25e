package balance

import (
	"math"
	"testing"

	"ribwright/geometry/design"
)

// TestKept: n equal plies keep 1 - 1/n^2 of the curve they are glued to; a form
// tightened by that gives the designed curve; one stick keeps nothing. Beam theory.
func TestKept(t *testing.T) {
	for _, c := range []struct {
		glued string
		plies int
		creep float64
		kept  float64
	}{
		{design.GluedStraight, 1, 1, 0}, {design.GluedStraight, 4, 1, 0},
		{design.GluedBent, 2, 1, 0.75}, {design.GluedBent, 3, 1, 8.0 / 9}, {design.GluedBent, 5, 1, 0.96},
		{design.GluedBent, 2, 1.2, 0.70},
		{design.GluedOnForm, 2, 1, 1}, {design.GluedOnForm, 4, 1.3, 1},
	} {
		g, err := glueOf(&design.Design{Gunwale: design.Gunwale{Glued: c.glued, Plies: c.plies, Width: 20}, Bending: design.Bending{GlueCreep: c.creep}})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(g.Kept-c.kept) > 1e-12 {
			t.Errorf("%d plies glued %s keep %.6f, want %.6f", c.plies, c.glued, g.Kept, c.kept)
		}
		if c.glued == design.GluedOnForm && math.Abs(1/g.Form-(1-g.Back)) > 1e-12 {
			t.Errorf("%d plies: form %.4f, springback %.4f", c.plies, g.Form, g.Back)
		}
	}
}

// TestForm is the radius of a form of 1000 mm for what ends at 1000: 750 for two
// plies, 888.889 for three (the springback of equal plies).
func TestForm(t *testing.T) {
	for plies, want := range map[int]float64{2: 750, 3: 888.889, 4: 937.5, 5: 960, 6: 972.222} {
		b := boat(t, "brook", func(d *design.Design) { d.Gunwale.Plies = plies })
		if got := 1000 * (1 - b.Back()); math.Abs(got-want) > 0.001 {
			t.Errorf("%d plies: %.3f mm, want %.3f", plies, got, want)
		}
	}
}

// TestFormHolds: on a form nothing is left to push, so ribs as wide as their
// places are neutral already, where nothing but gunwales, ribs and cross pieces is.
func TestFormHolds(t *testing.T) {
	b := boat(t, "river", func(d *design.Design) { d.Gunwale.Glued = design.GluedOnForm })
	form, _ := hinged(t, b)
	open, err := form.Neutral()
	if err != nil {
		t.Fatal(err)
	}
	for i, o := range open {
		if math.Abs(o) > 1e-6 {
			t.Errorf("rib %s is to be opened by %g mm", b.Frame.Ribs[i].Name, o)
		}
	}
	// And each way of gluing pushes by what it does not keep.
	straight := boat(t, "river", func(d *design.Design) { d.Gunwale.Glued = design.GluedStraight })
	bent := boat(t, "river", nil)
	held := func(b *Boat) *State { m, _ := hinged(t, b); return settle(t, m, nil, Setting{}) }
	a, c := held(straight), held(bent)
	for i := range a.Struts {
		within(t, b.Frame.Thwarts[i].Name, 9*c.Struts[i], a.Struts[i], 1e-6)
	}
}

// TestStress: glued straight a stick bears E w/2 k; held where its plies were glued
// each ply bears E t/2 k; and let go, the stress over the stack has no moment left
// (its integral by many thin slices), which is how far it springs back.
func TestStress(t *testing.T) {
	const e, w, k = 12000.0, 21.0, 1.0 / 3000
	one := Glue{Plies: 1, Back: 1}
	within(t, "one stick", most(one.Layers(e, w, -k, -k)), e*w/2*k, 1e-12)
	for _, n := range []int{2, 3, 5} {
		s := 1 / float64(n*n)
		g := Glue{Plies: n, Form: 1, Back: s, Kept: 1 - s}
		within(t, "held", most(g.Layers(e, w, -k, -k)), e*w/float64(n)/2*k, 1e-12)
		ply, moment, force := w/float64(n), 0.0, 0.0
		let := Rest{Plies: g.Layers(e, w, -k, -g.Kept*k)}
		const slices = 30000
		for i := range slices {
			y := (float64(i)+0.5)/slices*w - w/2
			c := (math.Floor((y+w/2)/ply)+0.5)*ply - w/2
			stress := e * ((y-c)*k + y*(g.Kept*k-k))
			within(t, "through the stack", let.At(y, 0, 40), stress, 1e-9)
			moment += stress * y * w / slices
			force += stress * w / slices
		}
		if full := e * k * w * w * w / 12; math.Abs(moment) > 1e-6*full || math.Abs(force) > 1e-9*full {
			t.Errorf("%d plies let go bear a moment of %g and a force of %g", n, moment/full, force)
		}
	}
}

// TestRests: on a boat of one stick the stress in plan is E w/2 times the curve
// wherever cross pieces and ribs hold it to the design, beam theory.
func TestRests(t *testing.T) {
	b := boat(t, "brook", func(d *design.Design) { d.Gunwale.Glued = design.GluedStraight; d.Gunwale.Plies = 1 })
	springs, _ := hinged(t, b)
	held := settle(t, springs, nil, Setting{Open: heldAtPieces(t, springs)})
	g := &b.Frame.Gunwale
	worst := 0.0
	for i, r := range b.Rests(held) {
		want := b.Wood.MOE * g.Width / 2 * math.Abs(b.Curvature(r.X))
		worst = math.Max(worst, want)
		// The neutral set moves the shape by a millimetre or two when the gunwales
		// are this stiff, and the stress by a tenth.
		if math.Abs(r.Plan-want) > 0.15*22.3 {
			t.Errorf("node %d at %.0f mm: %.2f N/mm2, want about %.2f", i, r.X, r.Plan, want)
		}
	}
	if w := b.Worst(held); w.Sum() < worst {
		t.Errorf("the worst place bears %.2f N/mm2, the plan alone %.2f somewhere", w.Sum(), worst)
	}
	// The edge-set bears E h / (2 R) from where it begins, R = run^2 / (2 rise).
	set := b.Frame.Hull.Sheer.BowSet
	for _, r := range b.Rests(held) {
		want := 0.0
		if math.Abs(r.X) >= set.From {
			want = b.Wood.MOE * g.Height / 2 / set.Radius()
		}
		if math.Abs(r.Edge-want) > 1e-9 {
			t.Errorf("edge-set at %.0f mm: %.3f N/mm2, want %.3f", r.X, r.Edge, want)
		}
	}
}

// TestEndsAlike: of two ends that are alike the after one is told, whatever rounding makes
// of them.
func TestEndsAlike(t *testing.T) {
	for _, name := range []string{"brook", "lake"} {
		b := boat(t, name, nil)
		s, err := b.Settle(b.Open, nil)
		if err != nil {
			t.Fatal(err)
		}
		if w := b.Worst(s); !(w.X < 0) {
			t.Errorf("%s bears most at station %.0f mm", name, w.X)
		}
	}
}
