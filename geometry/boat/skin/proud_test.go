package skin

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestProudOfCircle holds a round bilge between two stringers to the closed form of
// a circle's segment: the outer face stands a radius from the center, the line
// between the stringers' near corners its distance by Pythagoras.
func TestProudOfCircle(t *testing.T) {
	const thick, wide, deep = 6.0, 20.0, 10.0
	for _, c := range []struct{ radius, from, to float64 }{{115, 0.3, 1.2}, {115, 0.05, 1.5}, {400, 0.2, 0.9}, {90, 0.6, 0.9}} {
		face, corner := c.radius+thick/2, math.Hypot(c.radius+thick/2+deep, wide/2)
		part := c.to - c.from - 2*math.Atan2(wide/2, c.radius+thick/2+deep)
		chord := 2 * corner * math.Sin(part/2)
		want := face - math.Sqrt(corner*corner-chord*chord/4)

		center := geometry.Point{Y: c.radius}
		first := c.from + math.Atan2(wide/2, c.radius+thick/2+deep)
		a := center.Add(geometry.Polar(corner, first-math.Pi/2))
		b := center.Add(geometry.Polar(corner, first+part-math.Pi/2))
		r := frame.Rib{Thickness: thick, Section: hull.Section{Half: curve.Chain{curve.Turned(c.radius, math.Pi/2)}}}
		if got := over(r, c.from*c.radius, c.to*c.radius, a, b); math.Abs(got-want) > 1e-9 {
			t.Errorf("radius %.0f mm from %.2f to %.2f rad: %.6f mm proud, the circle gives %.6f mm", c.radius, c.from, c.to, got, want)
		}
	}
}

// TestProudOfQuarterRound builds a whole boat whose midship rib is a quarter of a
// circle and holds it to the same closed form.
func TestProudOfQuarterRound(t *testing.T) {
	f := frametest.Shipped(t, "brook", func(d *design.Design) {
		d.Hull.Sections = []design.Section{{BilgeRadius: 300}} // no flare, no bottom turn
		d.Hull.Beam, d.Hull.Depth = 600, 300
		d.Hull.Spreaders[0].Beam = 450
		d.Stringers.At = []float64{0.3, 0.8}
	})
	var mid frame.Rib
	for _, r := range f.Ribs {
		if r.Name == "M" {
			mid = r
		}
	}
	const radius = 300.0
	if l := mid.Section.Half.Length(); math.Abs(l-radius*math.Pi/2) > 1e-6 {
		t.Fatalf("the midship rib is %.3f mm long, a quarter of a circle of %.0f mm is %.3f mm", l, radius, radius*math.Pi/2)
	}
	face, deep, half := radius+mid.Thickness/2, float64(f.Design.Stringers.Depth), float64(f.Design.Stringers.Width)/2
	corner := math.Hypot(face+deep, half)
	part := 0.5*math.Pi/2 - 2*math.Atan2(half, face+deep)
	want := face - corner*math.Cos(part/2)
	if got := ProudAt(f, mid); math.Abs(got.By-want) > 0.05 || got.Gap != 1 {
		t.Errorf("%+v, the circle gives %.3f mm between stringers 1 and 2", got, want)
	}
}

// traced walks along the outer face of a rib as it is drawn and measures each point
// against the lines of the cloth.
func traced(f *frame.Frame, r frame.Rib) float64 {
	cloth, most := f.Corners(r), math.Inf(-1)
	for _, p := range r.Outer.Flatten(0.001) {
		for k := 1; k < len(cloth)-1; k += 2 {
			a, d := cloth[k], cloth[k+1].Sub(cloth[k])
			if u := p.Sub(a).Dot(d) / d.Dot(d); u >= 0 && u <= 1 {
				most = math.Max(most, p.Sub(a).Dot(d.Left().Unit().Scale(-1)))
			}
		}
	}
	return most
}

// rearrange lays the stringers of a frame at other shares of every rib.
func rearrange(f *frame.Frame, at ...float64) {
	f.Design.Stringers.At = at
	for i := range f.Ribs {
		r := &f.Ribs[i]
		r.Stringers = nil
		for _, share := range at {
			r.Stringers = append(r.Stringers, share*r.Section.Half.Length())
		}
	}
}

// TestProudByTracing holds every rib to the tracing, with stringers here and there.
func TestProudByTracing(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		for _, at := range [][]float64{f.Design.Stringers.At, {0.27, 0.5, 0.74}, {0.5}} {
			rearrange(f, at...)
			for _, r := range f.Ribs {
				if got, want := ProudAt(f, r).By, traced(f, r); math.Abs(got-want) > 0.02 {
					t.Errorf("%s with stringers at %v, rib %s: %.3f mm proud, traced %.3f mm", name, at, r.Name, got, want)
				}
			}
		}
	}
}

func TestRuns(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	for want, names := range map[string]string{
		"": "", "M": "M", "A1, M": "A1 M", "A1 to F1": "F1 A1 M", "A11, A9 to A7, F11": "A9 A8 A7 F11 A11", "A11 to A9, F1, F2": "A11 A10 A9 F1 F2",
	} {
		var ribs []Proud
		for _, n := range strings.Fields(names) {
			ribs = append(ribs, Proud{Rib: n})
		}
		if got := Runs(f, ribs); got != want {
			t.Errorf("%s: %q, want %q", names, got, want)
		}
	}
}

// TestShippedClear keeps the ribs of the shipped boats off their cloth.
func TestShippedClear(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		for _, r := range f.Ribs {
			if by := traced(f, r); by > -0.5 {
				t.Errorf("%s: rib %s comes within %.2f mm of the cloth", name, r.Name, -by)
			}
		}
	}
}

// TestCure puts stringers where ribs come through, builds a boat with the cure and
// traces its ribs. Deeper stringers serve where no places do.
func TestCure(t *testing.T) {
	for _, c := range []struct {
		name  string
		at    []float64
		depth measure.Length
		words string
	}{
		{"brook", []float64{0.27, 0.5, 0.74}, 10, "move stringer 3 from 0.74 to 0.7 of the way"},
		{"lake", []float64{0.26, 0.5, 0.75}, 11, "move stringers 1 and 3 to other shares"},
		{"brook", []float64{0.27, 0.46, 0.62}, 5, "make the stringers 6.0 mm deep instead of 5.0 mm"},
		{"river", []float64{0.3, 0.6}, 12, "add one stringer on each side"},
	} {
		f := frametest.Shipped(t, c.name, nil)
		rearrange(f, c.at...)
		f.Design.Stringers.Depth = c.depth
		cure, ok := CureOf(f)
		text := cure.Words(f.Design, func(v float64) string { return fmt.Sprintf("%.1f mm", v) })
		if !ok || !strings.HasPrefix(text, c.words) {
			t.Errorf("%s with stringers at %v: %+v, %q", c.name, c.at, cure, text)
			continue
		}
		f.Design.Stringers.At, f.Design.Stringers.Depth = cure.At, measure.Length(cure.Depth)
		built, err := frame.Build(f.Design)
		if err != nil {
			t.Fatal(err)
		}
		most := math.Inf(-1)
		for _, r := range built.Ribs {
			most = math.Max(most, traced(built, r))
		}
		if most > 0 || math.Abs(most-cure.By) > 0.02 {
			t.Errorf("%s: %s: ribs come out to %.2f mm, said %.2f mm", c.name, text, most, cure.By)
		}
	}
}

// TestLeastMove finds by trying all hundredths that no smaller move serves.
func TestLeastMove(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	rearrange(f, 0.27, 0.5, 0.74)
	cure, _ := CureOf(f)
	for k := range 3 {
		for off := -3; off <= 3; off++ {
			at := []float64{0.27, 0.5, 0.74}
			at[k] += float64(off) / 100
			rearrange(f, at...)
			if _, worst := ProudRibs(f); worst.By <= -offCloth {
				t.Errorf("stringers at %v serve with a smaller move than %v", at, cure.At)
			}
		}
	}
}
