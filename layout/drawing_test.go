package layout

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout/lettering"
)

// TestPens checks that no two meanings look alike and none is too thin to print:
// a dot of a 300 dpi printer is 0.085 mm.
func TestPens(t *testing.T) {
	seen := map[[2]float64]Pen{}
	for _, p := range Pens() {
		if p.Width() < 0.1 {
			t.Errorf("pen %d is %.3f mm wide, too thin for a home printer", p, p.Width())
		}
		look := [2]float64{p.Width(), float64(len(p.Dash()))}
		if other, ok := seen[look]; ok {
			t.Errorf("pens %d and %d look alike", other, p)
		}
		seen[look] = p
	}
}

// TestTextBounds checks the box round lettering: capital H is 722 thousandths of
// an em wide (Go Regular, table hmtx: 1479 of 2048), and such capitals make an em of 10 mm.
func TestTextBounds(t *testing.T) {
	at, high := geometry.Point{X: 100, Y: 50}, 10*lettering.CapHeight
	tests := []struct {
		name string
		text Text
		want geometry.Box
	}{
		{"left", Text{at, high, 0, Left, "H"}, geometry.Box{Min: geometry.Point{X: 100, Y: 50 - 0.3*high}, Max: geometry.Point{X: 107.22, Y: 50 + high}}},
		{"right", Text{at, high, 0, Right, "H"}, geometry.Box{Min: geometry.Point{X: 92.78, Y: 50 - 0.3*high}, Max: geometry.Point{X: 100, Y: 50 + high}}},
		{"middle", Text{at, high, 0, Middle, "H"}, geometry.Box{Min: geometry.Point{X: 96.39, Y: 50 - 0.3*high}, Max: geometry.Point{X: 103.61, Y: 50 + high}}},
		{"upright", Text{at, high, math.Pi / 2, Left, "H"}, geometry.Box{Min: geometry.Point{X: 100 - high, Y: 50}, Max: geometry.Point{X: 100 + 0.3*high, Y: 57.22}}},
	}
	for _, tt := range tests {
		got := tt.text.Bounds()
		if got.Min.Sub(tt.want.Min).Norm() > 1e-9 || got.Max.Sub(tt.want.Max).Norm() > 1e-9 {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}

// TestDrawingBounds checks that lines and letters both count and that empty
// things add nothing.
func TestDrawingBounds(t *testing.T) {
	var d Drawing
	if !d.Bounds().Empty() {
		t.Error("a drawing of nothing has a box")
	}
	d.Line(Cut, nil)
	d.Write(0, 0, 3, Left, " \t ")
	if !d.Bounds().Empty() || len(d.Strokes)+len(d.Texts) != 0 {
		t.Error("a line of nothing and a text of spaces were added")
	}
	d.Line(Cut, curve.Circle(geometry.Point{X: 10, Y: 10}, 5))
	if b := d.Bounds(); math.Abs(b.Min.X-5) > 1e-12 || math.Abs(b.Max.Y-15) > 1e-12 {
		t.Errorf("box of a circle %v", b)
	}
}
