package bend

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/wood/timber"
)

func report(t testing.TB, name string, change func(*design.Design)) *Report {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	if p := f.Design.Check(); p != nil {
		t.Fatalf("%s: %s %s", name, p.Key, p.Text)
	}
	r, err := Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// found returns the first finding whose part holds the words.
func found(t testing.TB, r *Report, words string) finding.Finding {
	t.Helper()
	for _, f := range r.Findings {
		if strings.Contains(f.About, words) {
			return f
		}
	}
	t.Fatalf("nothing is said of %q", words)
	return finding.Finding{}
}

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %v, want %v within %g", what, got, want, tol)
	}
}

// TestShipped: every part of the shipped boats can be made of the wood named, and
// every rib has a width to be relaxed to.
func TestShipped(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := report(t, name, nil)
		for _, f := range r.Findings {
			if !f.Verdict.Passes() || f.Margin() < 0 || f.About == "" || f.Standing == "" {
				t.Errorf("%s: %+v", name, f)
			}
		}
		for i, rib := range r.Ribs {
			if !(rib.Relax > 200 && rib.Relax < 1000) || len(rib.Arcs) == 0 {
				t.Errorf("%s: rib %s is relaxed to %.1f mm, arcs %v", name, rib.Name, rib.Relax, rib.Arcs)
			}
			for _, a := range rib.Arcs {
				if b := r.Frame.Ribs[i].Section.Half[a.Bend]; b.Radius != a.Radius {
					t.Errorf("%s: rib %s, %s has radius %.1f, its bend %.1f", name, rib.Name, a.Name, a.Radius, b.Radius)
				}
			}
		}
	}
}

// TestColdStress holds a batten on a circle against the worked radii of cold
// bending, E t / (2 sigma): ash 6 mm on 720 mm bears 50 N/mm2, spruce 12 mm on
// 1851 mm bears 35, northern white cedar 12 mm on 1467 mm bears 22.5. Edge-set goes
// by the width.
func TestColdStress(t *testing.T) {
	for _, c := range []struct {
		name            string
		depth, r, share float64
	}{{"white ash", 6, 720, 50}, {"Sitka spruce", 12, 1851.43, 35}, {"northern white cedar", 12, 1466.67, 22.5}} {
		wood, err := timber.Lookup(c.name)
		if err != nil {
			t.Fatal(err)
		}
		arc := func(x float64) (float64, float64) {
			y := math.Sqrt(c.r*c.r - x*x)
			return y, -x / y
		}
		flat := func(float64) (float64, float64) { return 0, 0 }
		line, err := curve.NewTrack(-100, 100, 0, curve.Apart(arc, flat))
		if err != nil {
			t.Fatal(err)
		}
		b := batten{wood, 3 * c.depth, c.depth}
		out, up := bendAt(line, 0)
		near(t, c.name+", up", up, 0, 1e-12)
		near(t, c.name+", flat", b.stress(math.Abs(out), 0), c.share, 0.001)
		near(t, c.name+", on edge", b.stress(0, math.Abs(out)), 3*c.share, 0.003)
	}
}

// TestStressBands looks at both sides of 0.3 and 0.5 of the MOR, the shares for
// wood left stressed and for wood sprung in.
func TestStressBands(t *testing.T) {
	ash, err := timber.Lookup("white ash")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		share float64
		want  finding.Verdict
		pass  bool
	}{{0.3 - 1e-9, finding.Dry, true}, {0.3 + 1e-9, finding.Eases, true}, {0.5 - 1e-9, finding.Eases, true}, {0.5 + 1e-9, finding.TooTight, false}, {math.NaN(), finding.TooTight, false}} {
		f := byStress("x", ash, c.share*103, finding.TooTight)
		if f.Verdict != c.want || f.Verdict.Passes() != c.pass {
			t.Errorf("%.9f of the MOR: %s, passes %v; want %s, %v", c.share, f.Verdict, f.Verdict.Passes(), c.want, c.pass)
		}
	}
}

// TestCures does what a cure says, and no less: the ribs then pass.
func TestCures(t *testing.T) {
	thick := func(d *design.Design) { d.Ribs.Thickness, d.Bending.Method = 7.5, design.OnForms }
	r := report(t, "brook", thick)
	if r.Findings.Passes() {
		t.Fatal("ribs of 7.5 mm pass on brook's bilges")
	}
	var thinner, larger float64
	for _, f := range r.Findings {
		if f.Verdict.Passes() {
			continue
		}
		if f.Verdict != finding.NoStrap || f.Margin() >= 0 {
			t.Errorf("%+v", f)
		}
		var a, b float64
		if _, err := fmt.Sscanf(f.Cure, "a strap (bending.strap), or %f mm thinner, or bilge radius %f mm larger there", &a, &b); err != nil {
			t.Fatalf("%q: %v", f.Cure, err)
		}
		thinner, larger = math.Max(thinner, a), math.Max(larger, b)
	}
	pass := func(name string, want bool, change func(*design.Design)) {
		t.Helper()
		r := report(t, "brook", func(d *design.Design) { thick(d); change(d) })
		got := true
		for _, f := range r.Findings {
			if strings.HasPrefix(f.About, "rib") && strings.Contains(f.About, "bilge") {
				got = got && f.Verdict.Passes()
			}
		}
		if got != want {
			t.Errorf("%s: the ribs pass %v, want %v", name, got, want)
		}
	}
	pass("thinner by what it says", true, func(d *design.Design) { d.Ribs.Thickness -= measure.Length(thinner) })
	pass("thinner by 0.3 mm less", false, func(d *design.Design) { d.Ribs.Thickness -= measure.Length(thinner - 0.3) })
	grow := func(by float64) func(*design.Design) {
		return func(d *design.Design) {
			for i := range d.Hull.Sections {
				d.Hull.Sections[i].BilgeRadius += measure.Length(by)
			}
		}
	}
	pass("rounder by what it says", true, grow(larger))
	pass("rounder by 3 mm less", false, grow(larger-3))
	pass("with a strap", true, func(d *design.Design) { d.Bending.Strap = true })
	pass("a wood that bends easier", true, func(d *design.Design) {
		d.Woods = append(d.Woods, design.Wood{Name: "white ash", FreeRatio: 10})
	})
}

// TestSlots: the stress at a mortise of a stick that is glued straight is what the whole
// stick bears over what is left of it. Of plies that were bent before they were glued it
// lies in the middle one, whose stress runs straight from face to face: what that bears of
// the moment, the rest takes over by I/I of what is left - 1. Deeper mortises leave less.
func TestSlots(t *testing.T) {
	r := report(t, "river", nil)
	deep := report(t, "river", func(d *design.Design) { d.Ribs.MortiseDepth = 30 })
	for i, m := range r.Frame.Gunwale.Mortises {
		s := r.hole(m.Rib, m.Station, slot(m))
		if with := r.Slots[i]; !(with.Flat < s.Flat && with.Tall < s.Tall && with.Stress > s.Stress && with.Stress < 1.1*s.Stress) {
			t.Errorf("mortise %s: %+v, with its peg %+v", m.Rib, s, with)
		}
		if !(s.Flat > 0.9 && s.Flat < 1 && s.Tall > 0.6 && s.Tall < 1) {
			t.Errorf("mortise %s leaves %.3f and %.3f", s.Of, s.Flat, s.Tall)
		}
		if d := deep.Slots[i]; d.Flat >= r.Slots[i].Flat {
			t.Errorf("a deeper mortise %s leaves %.3f, after %.3f", s.Of, d.Flat, s.Flat)
		}
		at := r.Boat.RestAt(r.AtRest, r.Frame.Ribs[i].Station)
		worst, bend := 0.0, (at.Plies[1].AtOut-at.Plies[1].AtIn)/(at.Plies[1].Out-at.Plies[1].In)
		for _, p := range at.Plies {
			for y, stress := range map[float64]float64{p.In: p.AtIn, p.Out: p.AtOut} {
				worst = math.Max(worst, stress+bend*y*(1/s.Flat-1))
			}
		}
		near(t, "stress at "+s.Of, s.Stress, worst+at.Edge/s.Tall, 1e-9)
	}
	one := report(t, "river", func(d *design.Design) { d.Gunwale.Glued = design.GluedStraight })
	for i, m := range one.Frame.Gunwale.Mortises {
		s := one.hole(m.Rib, m.Station, slot(m))
		at := one.Boat.RestAt(one.AtRest, one.Frame.Ribs[i].Station)
		near(t, "stress at "+s.Of, s.Stress, at.Plan/s.Flat+at.Edge/s.Tall, 1e-9)
	}
	// A blind mortise goes to 3/4 of the depth (from memory): 31.5 mm of 42.
	over := report(t, "river", func(d *design.Design) { d.Ribs.MortiseDepth = 32; d.Gunwale.Tilt = 0.12 })
	if f := found(t, over, "wood over the mortises"); f.Verdict.Passes() || f.Cure == "" {
		t.Errorf("32 mm of 42: %+v", f)
	}
}

// TestScarfKept: 65 % at 5, 80 % at 8, 85 % at 10, 90 % at 12 (from memory of the
// Wood Handbook), straight between.
func TestScarfKept(t *testing.T) {
	for slope, want := range map[float64]float64{5: 0.65, 8: 0.80, 10: 0.85, 12: 0.90, 20: 0.90, 9: 0.825} {
		near(t, fmt.Sprint("slope ", slope), scarfKept(slope), want, 1e-12)
	}
}

// TestEdgeSet: E h / (2 R), R = run^2 / (2 rise); what the cure takes off the rise
// makes it pass.
func TestEdgeSet(t *testing.T) {
	steep := func(by float64) *Report {
		return report(t, "brook", func(d *design.Design) {
			d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = measure.Length(by), measure.Length(by)
		})
	}
	r := steep(120)
	f := found(t, r, "edge-set, bow")
	run := r.Frame.Hull.Bow.GunwaleX - float64(r.Frame.Design.Gunwale.EdgeSetFrom)
	near(t, "stress", f.Value, 7700*36/2*2*120/(run*run), 0.01)
	var less float64
	if _, err := fmt.Sscanf(f.Cure, "%f mm less rise", &less); err != nil || f.Verdict.Passes() {
		t.Fatalf("%+v: %v", f, err)
	}
	if f := found(t, steep(120-less), "edge-set, bow"); !f.Verdict.Passes() {
		t.Errorf("%.0f mm less rise: %+v", less, f)
	}
}

// TestStem laminates brook's stem in layers: springback of n plies 1/n^2 at the
// middle of the stack, the innermost ply on the form.
func TestStem(t *testing.T) {
	r := report(t, "brook", func(d *design.Design) {
		d.Bending.StemPlies, d.Bending.StemSpecies = 11, "white ash"
	})
	s := r.Stems[0]
	middle := 275 - 0.6 - 55/2.0 // the forefoot; the head above it bends less
	near(t, "ply", s.Ply, 5, 1e-12)
	near(t, "form", s.Form, middle*(1-1/121.0)-55/2.0, 1e-9)
	if f := found(t, r, "stem at the bow"); f.Verdict != finding.Steam || !f.Verdict.Passes() {
		t.Errorf("plies of 5 mm on %.0f mm: %+v", s.Form, f)
	}
	thick := report(t, "brook", func(d *design.Design) {
		d.Bending.StemPlies, d.Bending.StemSpecies = 2, "Sitka spruce"
	})
	f := found(t, thick, "stem at the bow")
	var plies int
	if _, err := fmt.Sscanf(f.Cure, "%d plies", &plies); err != nil || f.Verdict.Passes() {
		t.Fatalf("%+v: %v", f, err)
	}
	cured := report(t, "brook", func(d *design.Design) {
		d.Bending.StemPlies, d.Bending.StemSpecies = plies, "Sitka spruce"
	})
	if f := found(t, cured, "stem at the bow"); !f.Verdict.Passes() {
		t.Errorf("%d plies: %+v", plies, f)
	}
	rolled := report(t, "brook", func(d *design.Design) {
		d.Bending.StemPlies, d.Bending.StemSpecies = 11, "white ash"
		d.Bow.HeadTurn, d.Bow.HeadRadius, d.Bow.Landing = 0.6, 100, 50
	})
	middle = 100 - 0.6 - 55/2.0 // now the head is the tightest
	near(t, "form of a head that rolls back", rolled.Stems[0].Form, middle*(1-1/121.0)-55/2.0, 1e-9)
	if f := found(t, rolled, "stem at the bow"); f.Verdict.Passes() {
		t.Errorf("plies of 5 mm on %.0f mm: %+v", rolled.Stems[0].Form, f)
	}
	if len(report(t, "brook", nil).Stems) != 0 {
		t.Error("stems that are cut are laminated")
	}
}

// TestArcNames names the bends of sections of every make.
func TestArcNames(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*design.Design)
		want   string
	}{
		{"as shipped", nil, "bottom, bilge"},
		{"flat bottom", func(d *design.Design) { d.Hull.Sections[0].BottomTurn = 0 }, "bilge"},
		{"curved topside", func(d *design.Design) { d.Hull.Sections[0].TopsideCurve = 0.1 }, "bottom, bilge, topside"},
	} {
		r := report(t, "brook", c.change)
		var names []string
		for _, rib := range r.Ribs {
			if rib.Name != "M" {
				continue
			}
			for _, a := range rib.Arcs {
				names = append(names, a.Name)
			}
		}
		if got := strings.Join(names, ", "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestNoNeutral says so, and still judges the rest.
func TestNoNeutral(t *testing.T) {
	r := report(t, "river", func(d *design.Design) {
		d.Gunwale.Glued = design.GluedStraight
		d.Gunwale.Width, d.Gunwale.Height = 24, 60
		d.Ribs.Thickness = 5
	})
	f := found(t, r, "neutral set")
	if f.Verdict.Passes() || r.Findings.Passes() || !strings.Contains(f.Text, "too stiff") || !strings.Contains(f.Cure, "make the gunwales thinner") {
		t.Errorf("%+v", f)
	}
	for _, rib := range r.Ribs {
		if rib.Relax != 0 {
			t.Errorf("rib %s is relaxed to %.0f mm without a neutral set", rib.Name, rib.Relax)
		}
	}
}
