package split

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

// bar is a part of 600 by 60 by 18 mm with an eased lower edge, a hole near one
// end, a middle line and a name, turned by an angle with its grain along it.
func bar(turn float64) layout.Part {
	edge := curve.Path{
		curve.Cubic{P0: pt(0, 0), P1: pt(200, 20), P2: pt(400, 20), P3: pt(600, 0)},
		curve.Line{A: pt(600, 0), B: pt(600, 60)},
		curve.Line{A: pt(600, 60), B: pt(40, 60)},
		curve.Arc{Center: pt(40, 20), Radius: 40, From: math.Pi / 2, Sweep: math.Pi / 2},
		curve.Line{A: pt(0, 20), B: pt(0, 0)},
	}
	p := layout.Part{Name: "bar", Thickness: 18, Cut: []curve.Path{curve.Circle(pt(570, 35), 3), edge},
		Marks:   []curve.Path{curve.Polyline(pt(10, 40), pt(590, 40))},
		Letters: []layout.Text{{At: pt(120, 30), Height: 5, Words: "bar, 18 mm"}}}
	return p.Mapped(geometry.Turn(turn))
}

// TestPieces checks what a joiner would: a scarf of 1:8 in 18 mm stock is 144 mm
// long (arithmetic), both pieces reach past the joint's middle by half of it, and
// together they hold the part's wood and the scarf's twice.
func TestPieces(t *testing.T) {
	for _, turn := range []float64{0, 0.7, math.Pi / 2, 2.9} {
		whole := bar(turn)
		got, err := Part(whole, 2)
		if err != nil {
			t.Fatal(err)
		}
		var wood float64
		for i, p := range got {
			level := p.Mapped(geometry.Turn(-turn))
			b := level.Outline().Bounds()
			want := [][2]float64{{0, 372}, {228, 600}}[i]
			if math.Abs(b.Min.X-want[0]) > 1e-6 || math.Abs(b.Max.X-want[1]) > 1e-6 {
				t.Errorf("turned %g, piece %d runs from %.4f to %.4f, want %v", turn, i+1, b.Min.X, b.Max.X, want)
			}
			if !p.Outline().Closed() || !p.Outline().Joined() {
				t.Errorf("piece %d is not closed", i+1)
			}
			if math.Abs(math.Remainder(p.Grain-turn, 2*math.Pi)) > 1e-9 {
				t.Errorf("the grain of piece %d runs at %g, want %g", i+1, p.Grain, turn)
			}
			wood += p.Area()
		}
		// The part and, once more, what lies between x = 228 and 372: 60 high less
		// the cubic y(t) = 60 t (1 - t), x = 600 t, whose integral is closed.
		under := func(x float64) float64 { u := x / 600; return 600 * (30*u*u - 20*u*u*u) }
		if want := whole.Area() + 144*60 - (under(372) - under(228)); math.Abs(wood-want) > 1 {
			t.Errorf("turned %g: the pieces hold %.2f mm2, want %.2f", turn, wood, want)
		}
		if len(got[0].Cut) != 1 || len(got[1].Cut) != 2 {
			t.Errorf("%d and %d outlines, want the hole in the second piece only", len(got[0].Cut), len(got[1].Cut))
		}
		if len(got[0].Marks) != 2 || len(got[1].Marks) != 2 {
			t.Errorf("%d and %d marks, want the line and the scarf's on both", len(got[0].Marks), len(got[1].Marks))
		}
		if len(got[0].Letters) != 2 || len(got[1].Letters) != 1 || !strings.Contains(got[1].Letters[0].Words, "scarf 1:8, other face") {
			t.Errorf("letters %v and %v", got[0].Letters, got[1].Letters)
		}
	}
}

func TestRefusals(t *testing.T) {
	thin := bar(0)
	thin.Thickness = 0
	thick := bar(0)
	thick.Thickness = 40
	middle := bar(0)
	middle.Cut = []curve.Path{curve.Circle(pt(300, 40), 5), middle.Cut[1]}
	middle.Cut[0] = curve.Circle(pt(370, 40), 5)
	hook := layout.Part{Name: "hook", Thickness: 4, Cut: []curve.Path{curve.Polygon(pt(0, 0), pt(200, 0), pt(200, 20), pt(20, 20), pt(20, 80), pt(200, 80), pt(200, 100), pt(0, 100))}}
	for _, row := range []struct {
		name string
		part layout.Part
		n    int
		want string
	}{
		{"one piece", bar(0), 1, "two pieces"},
		{"no thickness", thin, 2, "thickness"},
		{"scarf longer than a piece", thick, 2, "too short for scarfs of 320 mm"},
		{"hole in the joint", middle, 2, "meet a hole"},
		{"crossed twice", hook, 2, "more than once"},
	} {
		if _, err := Part(row.part, row.n); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: error %v, want %q", row.name, err, row.want)
		}
	}
}
