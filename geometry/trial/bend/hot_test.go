package bend

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
)

// walked is the width between the heads of a rib whose bends have the given radii, by
// adding up short steps along the half rib.
func walked(half curve.Chain, radius func(bend int) float64) float64 {
	const steps = 4000
	x, heading := 0.0, 0.0
	for i, b := range half {
		step, turn := b.Length/steps, 0.0
		if r := radius(i); b.Radius > 0 && !math.IsInf(r, 1) {
			turn = step / r
		}
		for range steps {
			x += step * math.Cos(heading+turn/2)
			heading += turn
		}
	}
	return 2 * x
}

// byBend are arcs by the bend of the half rib that each is.
func byBend(all []Arc) map[int]Arc {
	out := map[int]Arc{}
	for _, a := range all {
		out[a.Bend] = a
	}
	return out
}

// TestHotWidth: a rib held as it is bent hot is as wide as a walk along its bends says,
// and let go it stands at the width of the neutral set. TestForms of the balance has
// the allowance.
func TestHotWidth(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := report(t, name, nil)
		for i, rib := range r.Ribs {
			half, arcs := r.Frame.Ribs[i].Section.Half, byBend(rib.Arcs)
			for _, a := range rib.Arcs {
				if turned := half[a.Bend].Length/a.Form - half[a.Bend].Sweep; math.Abs(a.Over-turned) > 1e-9 {
					t.Errorf("%s rib %s: %s is bent %.5f farther, its length turns %.5f", name, rib.Name, a.Name, a.Over, turned)
				}
			}
			near(t, name+" rib "+rib.Name+", hot", rib.Hot, walked(half, func(b int) float64 { return arcs[b].Form }), 0.01)
			back := r.Frame.Design.Bending.Springback
			let := walked(half, func(b int) float64 { return arcs[b].Form / (1 - back) })
			near(t, name+" rib "+rib.Name+", let go", let, rib.Relax, math.Max(0.5, 0.02*math.Abs(r.Boat.Open[i])))
			more := walked(half, func(b int) float64 { return arcs[b].Form / (1 - back - 0.01) })
			near(t, name+" rib "+rib.Name+", a hundredth more", rib.Point, more-let, 0.01*rib.Point)
			if rib.Hot >= rib.Relax {
				t.Errorf("%s rib %s is held %.1f mm wide to come out %.1f", name, rib.Name, rib.Hot, rib.Relax)
			}
		}
	}
}

// TestHeld: whatever the board springs back, a rib that is held at the width for it, each
// bend tighter by that share, comes out as it should stand free; the more it springs back,
// the closer it is held. A walk along the bends says so without the chains.
func TestHeld(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := report(t, name, nil)
		for i, rib := range r.Ribs {
			half, arcs, own := r.Frame.Ribs[i].Section.Half, byBend(rib.Arcs), false
			for k, h := range rib.Held {
				near(t, name+" rib "+rib.Name+", held", h.Width, walked(half, func(b int) float64 { return arcs[b].Free * (1 - h.Back) }), 0.01)
				if h.Back != r.Test[k].Back || k > 0 && h.Width >= rib.Held[k-1].Width {
					t.Errorf("%s rib %s: %+v, the first rib's table has %+v", name, rib.Name, rib.Held, r.Test)
				}
				if math.Abs(h.Back-r.Frame.Design.Bending.Springback) < 1e-9 {
					near(t, name+" rib "+rib.Name+", as the design counts", h.Width, rib.Hot, 1e-9)
					own = true
				}
			}
			if !own {
				t.Errorf("%s rib %s: the design's own springback is not in %+v", name, rib.Name, rib.Held)
			}
		}
	}
}

// TestSprung: a half rib that is a quarter circle of 300 mm, bent hot to 270, has its
// heads 2 r sin(L/r) apart: 540 sin 100 deg held, 600 let go with a tenth of springback.
func TestSprung(t *testing.T) {
	half := curve.Chain{curve.Turned(300, math.Pi/2)}
	arcs := []Arc{{Form: 270}}
	hot, point := sprung(half, arcs, 0.1)
	near(t, "hot", hot, 540*math.Sin(100*math.Pi/180), 1e-9)
	near(t, "let go", width(bentTo(half, arcs, after(0.1))), 600, 1e-9)
	// d/ds of 2 r sin(L/r) with r = 270/(1-s): r/(1-s) (2 sin a - 2 a cos a), a = L/r.
	near(t, "for a hundredth", point, 0.01*300/0.9*2, 1e-4)
}

// TestFirstRib: the table for the first rib runs about the design's springback, there
// it has the width of the neutral set, and each row is as wide as a walk says.
func TestFirstRib(t *testing.T) {
	for _, back := range []float64{0, 0.03, 0.08, 0.4} {
		r := report(t, "lake", func(d *design.Design) { d.Bending.Springback = back })
		i := r.TestRib()
		if r.Ribs[i].Name != "M" || len(r.Test) < 4 {
			t.Fatalf("springback %.2f: rib %s, %d rows", back, r.Ribs[i].Name, len(r.Test))
		}
		met := false
		for k, s := range r.Test {
			if k > 0 && (s.Back <= r.Test[k-1].Back || s.Width <= r.Test[k-1].Width) {
				t.Errorf("springback %.2f: %+v stands after %+v", back, s, r.Test[k-1])
			}
			if math.Abs(s.Back-back) < 1e-9 {
				met = true
				near(t, "neutral", s.Width, r.Ribs[i].Relax, 1e-9)
			}
			arcs := r.Ribs[i].Arcs
			wide := walked(r.Frame.Ribs[i].Section.Half, func(b int) float64 {
				for _, a := range arcs {
					if a.Bend == b {
						return a.Form / (1 - s.Back)
					}
				}
				return math.Inf(1)
			})
			near(t, "walked", s.Width, wide, 1)
		}
		if !met {
			t.Errorf("springback %.2f is not in its own table: %+v", back, r.Test)
		}
	}
}

// TestStrapWantsForms: a strap pulls against the ends of a form, so ribs that need one
// are not bent by hand, whether the builder has one or not.
func TestStrapWantsForms(t *testing.T) {
	for _, c := range []struct {
		method design.Method
		strap  bool
		want   finding.Verdict
		cure   string
	}{
		{design.InPlace, false, finding.NoStrap, "on forms with a strap (bending.method, bending.strap), or "},
		{design.InPlace, true, finding.NoStrap, "on forms with a strap (bending.method, bending.strap), or "},
		{design.OnForms, false, finding.NoStrap, "a strap (bending.strap), or "},
		{design.OnForms, true, finding.Strap, ""},
	} {
		r := report(t, "brook", func(d *design.Design) {
			d.Ribs.Thickness, d.Bending.Method, d.Bending.Strap = 7.5, c.method, c.strap
		})
		f := found(t, r, "bilge")
		if f.Verdict != c.want || !strings.HasPrefix(f.Cure, c.cure) {
			t.Errorf("%v, strap %v: %v, %q", c.method, c.strap, f.Verdict, f.Cure)
		}
		for _, a := range r.Ribs[0].Arcs {
			if taut := a.Outer == 0; taut && !(c.strap && c.method == design.OnForms) {
				t.Errorf("%v, strap %v: the outer face of %s does not stretch", c.method, c.strap, a.Name)
			}
		}
	}
}
