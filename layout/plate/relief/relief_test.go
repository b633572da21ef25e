package relief

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

// notched is a block of 100 by 60 with a notch of 20 by 15 from above and a slot
// of 30 by 12 inside: two square inside corners in the outer edge, four in the
// slot.
func notched() layout.Part {
	return layout.Part{Name: "block", Cut: []curve.Path{
		curve.Rectangle(geometry.Box{Min: pt(10, 10), Max: pt(40, 22)}),
		curve.Polygon(pt(0, 0), pt(100, 0), pt(100, 60), pt(60, 60), pt(60, 45), pt(40, 45), pt(40, 60), pt(0, 60)),
	}}
}

func turned(p layout.Part) layout.Part {
	for i := range p.Cut {
		p.Cut[i] = p.Cut[i].Reverse()
	}
	return p
}

// TestAreas checks what the bites take away against plane geometry: a circle about
// a square corner takes three quarters of itself out of the wood; one through the
// corner along its middle takes two segments of a quarter turn each, r²(π/2-1) in
// all.
func TestAreas(t *testing.T) {
	const r = 3.0
	round, dogbone := 0.75*math.Pi*r*r, r*r*(math.Pi/2-1)
	for _, row := range []struct {
		kind Kind
		each float64
	}{{None, 0}, {Round, round}, {Dogbone, dogbone}} {
		for name, p := range map[string]layout.Part{"as drawn": notched(), "the other way round": turned(notched())} {
			got := Part(p, row.kind, 2*r)
			want := p.Area() - 6*row.each
			if math.Abs(got.Area()-want) > 0.07 { // chords of 0.001 mm
				t.Errorf("%v, %s: area %.2f, want %.2f", row.kind, name, got.Area(), want)
			}
			for i, c := range got.Cut {
				if !c.Closed() || !c.Joined() {
					t.Errorf("%v, %s: edge %d is not closed", row.kind, name, i)
				}
			}
		}
	}
}

// TestCornerIsReached lays a square block into the notch: every corner of it must
// be cleared by a circle of the cutter's size that the cutter's middle can reach.
func TestCornerIsReached(t *testing.T) {
	const r = 3.0
	for _, k := range []Kind{Round, Dogbone} {
		got := Part(notched(), k, 2*r)
		corners := []geometry.Point{pt(60, 45), pt(40, 45), pt(10, 10), pt(40, 10), pt(40, 22), pt(10, 22)}
		for _, c := range corners {
			cleared := false
			for _, edge := range got.Cut {
				for _, s := range edge {
					if a, ok := s.(curve.Arc); ok && a.Radius == r && a.Center.Sub(c).Norm() <= r+1e-9 {
						cleared = true
					}
				}
			}
			if !cleared {
				t.Errorf("%v: the corner at %v keeps its wood", k, c)
			}
		}
	}
}

// TestLeftAlone has no corner to open: outside corners, blunt ones, curves, and
// sides too short for the cutter.
func TestLeftAlone(t *testing.T) {
	for name, c := range map[string]curve.Path{
		"outside corners": curve.Rectangle(geometry.Box{Max: pt(50, 50)}),
		"blunt":           curve.Polygon(pt(0, 0), pt(100, 0), pt(100, 60), pt(50, 40), pt(0, 60)),
		"circle":          curve.Circle(pt(0, 0), 30),
		"too short":       curve.Polygon(pt(0, 0), pt(100, 0), pt(100, 60), pt(50, 60), pt(50, 59), pt(49, 59), pt(49, 60), pt(0, 60)),
	} {
		got := Part(layout.Part{Cut: []curve.Path{c}}, Dogbone, 6)
		if len(got.Cut[0]) != len(c) {
			t.Errorf("%s: %d sides became %d", name, len(c), len(got.Cut[0]))
		}
	}
}

func TestParse(t *testing.T) {
	for _, k := range []Kind{None, Round, Dogbone} {
		if got, err := Parse(k.String()); err != nil || got != k {
			t.Errorf("%v reads back as %v, %v", k, got, err)
		}
	}
	if _, err := Parse("square"); err == nil {
		t.Error("accepted a relief that is none")
	}
}
