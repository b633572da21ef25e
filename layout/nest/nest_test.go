package nest

import (
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

func box(name string, w, h float64) layout.Part {
	return layout.Part{Name: name, Cut: []curve.Path{curve.Rectangle(geometry.Box{Max: geometry.Point{X: w, Y: h}})}}
}

// TestLay checks what a plate must hold: every part once, none turned, mirrored,
// overlapping, over the edge or on the check square.
func TestLay(t *testing.T) {
	var parts []layout.Part
	for i := range 30 {
		parts = append(parts, box("p", 50+float64(i*71%700), 30+float64(i*53%400)))
	}
	p := Lay("plate", parts, DefaultOptions())
	if len(p.Parts) != len(parts) {
		t.Fatalf("%d parts laid, want %d", len(p.Parts), len(parts))
	}
	taken := []geometry.Box{p.Check}
	for _, q := range p.Parts {
		if q.Move.A != 1 || q.Move.D != 1 || q.Move.B != 0 || q.Move.C != 0 {
			t.Errorf("a part is turned or mirrored: %+v", q.Move)
		}
		b := q.Part.Bounds()
		b = geometry.Around(q.Move.Apply(b.Min), q.Move.Apply(b.Max))
		if b.Min.X < 12 || b.Min.Y < 12 || b.Max.X > p.W-12 || b.Max.Y > p.H-11.999 {
			t.Errorf("%v comes too near the edge of %.0f x %.0f mm", b, p.W, p.H)
		}
		for _, o := range taken {
			if b.Grow(5.999).Overlaps(o.Grow(5.999)) {
				t.Errorf("%v and %v lie closer than 12 mm", b, o)
			}
		}
		taken = append(taken, b)
	}
}

// TestLongPart checks that the plate grows to hold a part longer than it.
func TestLongPart(t *testing.T) {
	p := Lay("plate", []layout.Part{box("the long one", 1300, 20), box("short", 30, 30)}, DefaultOptions())
	if p.W != 1324 || len(p.Parts) != 2 {
		t.Errorf("plate %.0f mm wide with %d parts, want 1324 and both", p.W, len(p.Parts))
	}
}
