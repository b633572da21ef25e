package bend

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

func onForms(d *design.Design) { d.Bending.Method = design.OnForms }

// TestFormForEachGroup: every group of ribs has its form and a gauge of the free rib;
// ribs bent in place have no form, and gauges of the shape in the boat.
func TestFormForEachGroup(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r, hand := report(t, name, onForms), report(t, name, nil)
		if len(hand.Forms) != 0 || len(hand.Gauges) != len(hand.Frame.RibGroups) {
			t.Errorf("%s in place: %d forms, %d gauges", name, len(hand.Forms), len(hand.Gauges))
		}
		if len(r.Forms) != len(r.Frame.RibGroups) || len(r.Gauges) != len(r.Forms) {
			t.Fatalf("%s: %d forms, %d gauges for %d groups", name, len(r.Forms), len(r.Gauges), len(r.Frame.RibGroups))
		}
		for i, g := range r.Frame.RibGroups {
			if strings.Join(r.Forms[i].Names, " ") != strings.Join(g.Names, " ") {
				t.Errorf("%s: form %d is for %v, group for %v", name, i, r.Forms[i].Names, g.Names)
			}
			bent := r.Ribs[index(r, g.Rib.Name)]
			// The gauge's head is the inner face: half a thickness inside, along the
			// rib's own lean there.
			for _, c := range []struct {
				gauge frame.Gauge
				wide  float64
			}{{r.Gauges[i], bent.Relax}, {hand.Gauges[i], 2 * g.Rib.Section.HalfBreadth}} {
				tip := headOf(c.gauge, g.Rib.Section.Half)
				if math.Abs(2*tip-c.wide) > g.Rib.Thickness+1 {
					t.Errorf("%s: gauge %v reaches %.1f mm between the heads, the rib stands %.1f", name, c.gauge.Names, 2*tip, c.wide)
				}
			}
		}
	}
}

func index(r *Report, rib string) int {
	for i := range r.Ribs {
		if r.Ribs[i].Name == rib {
			return i
		}
	}
	return -1
}

// headOf is where a gauge's outer curve ends.
func headOf(g frame.Gauge, half curve.Chain) float64 { return g.Outline[len(half)-1].End().X }

// TestFormEdge walks a form's edge: it is the inner face of the rib as it is bent hot,
// and holds the whole blank. Its own radii, let go, give the width to relax to.
func TestFormEdge(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := report(t, name, onForms)
		for i, f := range r.Forms {
			rib := r.Frame.RibGroups[i].Rib
			k, thick := index(r, rib.Name), rib.Thickness
			arcs, back := r.Ribs[k].Arcs, r.Frame.Design.Bending.Springback
			x, heading, n := 0.0, 0.0, 0
			for j, s := range f.Edge[:len(f.Edge)-1] {
				long := rib.Section.Half[j].Length
				a, bent := s.(curve.Arc)
				if !bent {
					x += long * math.Cos(heading)
					continue
				}
				near(t, name+": radius of the edge", a.Radius+thick/2, arcs[n].Form, 1e-6)
				near(t, name+": length of the bend", (a.Radius+thick/2)*a.Sweep, long, 1e-6)
				free := (a.Radius + thick/2) / (1 - back)
				turn := long / free
				x += free * (math.Sin(heading+turn) - math.Sin(heading))
				heading, n = heading+turn, n+1
			}
			near(t, name+": free rib "+rib.Name, 2*x, r.Ribs[k].Relax, math.Max(0.5, 0.02*math.Abs(r.Boat.Open[k])))
			past := f.Edge[len(f.Edge)-1].Length()
			near(t, name+": past the head", past, (rib.Blank-rib.Length)/2+10, 1e-9)
			if start := f.Edge[0].Start(); math.Abs(start.X) > 1e-9 || math.Abs(start.Y-thick/2) > 1e-9 {
				t.Errorf("%s: the edge of form %s begins at %v", name, rib.Name, start)
			}
		}
	}
}

// TestFormPlate: the plate is closed and the same on both sides; every hole lies in it
// with wood all round, on both sides alike, and one in the middle holds the rib first.
func TestFormPlate(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, f := range report(t, name, onForms).Forms {
			if !f.Outline.Closed() || !f.Outline.Joined() {
				t.Fatalf("%s: form %v is open", name, f.Names)
			}
			pts := f.Outline.Flatten(0.02)
			if curve.Area(pts) <= 0 {
				t.Errorf("%s: form %v runs clockwise", name, f.Names)
			}
			if b := f.Outline.Bounds(); math.Abs(b.Min.X+b.Max.X) > 1e-6 {
				t.Errorf("%s: form %v is not the same on both sides: %v", name, f.Names, b)
			}
			left, right := 0, 0
			for i, h := range f.Holes {
				m := h.Bounds().Center()
				switch {
				case m.X < -1:
					left++
				case m.X > 1:
					right++
				}
				for a := 0.0; a < 6.28; a += 0.1 {
					if p := m.Add(geometry.Polar(20+17, a)); !curve.Holds(pts, p) {
						t.Errorf("%s: hole %d of form %v has less than 17 mm of wood", name, i, f.Names)
						break
					}
				}
				for _, o := range f.Holes[:i] {
					if d := m.Sub(o.Bounds().Center()).Norm(); d < 40+17 {
						t.Errorf("%s: holes of form %v stand %.1f mm apart", name, f.Names, d)
					}
				}
			}
			if left != right || left+right+1 != len(f.Holes) || left < 1 {
				t.Errorf("%s: form %v has %d holes, %d and %d at its sides", name, f.Names, len(f.Holes), left, right)
			}
		}
	}
}

// TestFormLayers: the sheets together bear two thirds of the rib's width.
func TestFormLayers(t *testing.T) {
	for wide, want := range map[float64]int{20: 1, 27: 1, 28: 2, 54: 2, 55: 3} {
		r := report(t, "brook", func(d *design.Design) {
			onForms(d)
			d.Ribs.Width = measure.Length(wide)
			d.Ribs.Pitch = 130
			d.Thwarts = nil
		})
		if got := r.Forms[0].Layers; got != want {
			t.Errorf("ribs %.0f mm wide: %d layers, want %d", wide, got, want)
		}
	}
}

// TestNoForm: where much springback curls the legs into each other no form is drawn,
// and a finding says so; by hand the same ribs are not refused for it.
func TestNoForm(t *testing.T) {
	for _, name := range design.ShippedNames() {
		curl := func(d *design.Design) { d.Bending.Springback = 0.4; d.Ribs.Thickness = 3 }
		hand := report(t, name, curl)
		r := report(t, name, func(d *design.Design) { curl(d); onForms(d) })
		missing := 0
		for _, f := range r.Findings {
			if strings.HasPrefix(f.About, "form for rib") {
				missing++
				if f.Verdict.Passes() || f.Cure == "" || f.Text == "" {
					t.Errorf("%s: %+v", name, f)
				}
			}
		}
		if len(r.Forms)+missing != len(r.Frame.RibGroups) {
			t.Errorf("%s: %d forms and %d findings for %d groups", name, len(r.Forms), missing, len(r.Frame.RibGroups))
		}
		for _, f := range hand.Findings {
			if strings.HasPrefix(f.About, "form") {
				t.Errorf("%s, by hand: %+v", name, f)
			}
		}
	}
	// A half turn and more on a narrow rib crosses the middle line.
	half := curve.Chain{curve.Straight(20), curve.Turned(60, math.Pi)}
	if _, err := newForm(frame.Group{Rib: frame.Rib{Name: "F9", Thickness: 6, Length: 400, Blank: 480}}, half, 20); err == nil || !strings.Contains(err.Error(), "a form wants 50 mm") {
		t.Errorf("legs that cross: %v", err)
	}
	if _, err := newForm(frame.Group{Rib: frame.Rib{Name: "F9", Thickness: 6, Length: 400, Blank: 480}}, curve.Chain{curve.Turned(2, 1.5)}, 20); err == nil {
		t.Error("a bend without an inner edge has a form")
	}
}
