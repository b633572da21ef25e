package frame

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/render/rendertest"
)

// crossesItself asks the readers' geometry, which shares nothing with the program's own.
func crossesItself(p curve.Path) bool {
	var pts []rendertest.Point
	for _, s := range p {
		steps := 60
		if _, straight := s.(curve.Line); straight {
			steps = 1
		}
		for k := range steps {
			at := s.At(float64(k) / float64(steps))
			pts = append(pts, rendertest.Point{X: at.X, Y: at.Y})
		}
	}
	return rendertest.CrossesItself(pts)
}

// TestNothingCrossesItself: no outline of an accepted frame crosses itself, whatever its
// stems, breasthooks and cross pieces measure.
func TestNothingCrossesItself(t *testing.T) {
	built, refused := 0, 0
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 21))
		d, err := design.Shipped(design.ShippedNames()[seed%3])
		if err != nil {
			t.Fatal(err)
		}
		if seed%4 == 0 {
			anyStem(r, &d.Bow)
		}
		d.Breasthook.Length = measure.Length(30 + math.Round(370*r.Float64()))
		d.Breasthook.Hollow = measure.Length(math.Round(math.Min(float64(d.Breasthook.Length)/2, 60) * r.Float64()))
		for i := range d.Thwarts {
			d.Thwarts[i].Waist = measure.Length(math.Round(float64(d.Thwarts[i].Width) * r.Float64()))
		}
		if d.Check() != nil {
			continue
		}
		f, err := Build(d)
		if err != nil {
			if strings.Contains(err.Error(), "crosses itself") {
				refused++
			}
			continue
		}
		built++
		for name, p := range outlines(f) {
			if crossesItself(p) {
				t.Errorf("seed %d: the outline of %s crosses itself: breasthook %+v, bow %+v", seed, name, d.Breasthook, d.Bow)
			}
		}
	}
	t.Logf("%d built, %d refused because an outline crosses itself", built, refused)
	if built < 50 {
		t.Errorf("only %d frames were built", built)
	}
}

func outlines(f *Frame) map[string]curve.Path {
	out := map[string]curve.Path{"bow": f.Bow.Outline, "stern": f.Stern.Outline, "bow breasthook": f.BowHook.Outline, "stern breasthook": f.SternHook.Outline}
	for _, th := range f.Thwarts {
		out["thwart "+th.Name] = th.Outline
	}
	for _, g := range f.Gauges {
		out["gauge "+g.Names[0]] = g.Outline
	}
	return out
}

// TestShortBreasthook: in a plate that is short for its width the hollow's circle leaves the
// inner edge more steeply than the sides do, and runs out through them. It is refused by
// name, and what is said to be accepted is.
//
// Source: an arc meets its chord at the angle 2 atan(2 depth / chord), Euclid III.32; a side
// leans by its run over its rise.
func TestShortBreasthook(t *testing.T) {
	for _, depth := range []float64{0, 5, 10, 15, 20, 25} {
		d, err := design.Shipped("river")
		if err != nil {
			t.Fatal(err)
		}
		d.Breasthook.Length, d.Breasthook.Hollow = 50, measure.Length(depth)
		whole := *d
		whole.Breasthook.Hollow = 0
		f, err := Build(&whole)
		if err != nil {
			t.Fatal(err)
		}
		corner, nose := f.BowHook.Outline[0].Start(), f.BowHook.Outline[15].End()
		chord := 2 * math.Abs(corner.Y)
		leaves, leans := 2*math.Atan(2*depth/chord), math.Atan2(nose.X-corner.X, math.Abs(corner.Y)-math.Abs(nose.Y))
		_, err = Build(d)
		if refused := err != nil && strings.Contains(err.Error(), "crosses itself"); refused != (leaves > leans) {
			t.Errorf("a hollow of %.0f mm leaves at %.1f deg and the side leans %.1f deg: got %v", depth, leaves*180/math.Pi, leans*180/math.Pi, err)
		}
	}
}
