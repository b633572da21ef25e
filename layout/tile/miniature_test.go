package tile

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// TestMiniature: of a pattern there is what its view shows and nothing outside its frame,
// where the view puts it; words are as long as they are.
func TestMiniature(t *testing.T) {
	d := layout.Drawing{Name: "cross"}
	d.Line(layout.Cut, curve.Polyline(geometry.Pt(-100, 5), geometry.Pt(100, 5)))
	d.Line(layout.Mark, curve.Polyline(geometry.Pt(-100, 50), geometry.Pt(100, 50)))
	s := layout.Sheet{Label: "1: cross", Views: []layout.View{{Drawing: &d, Frame: geometry.Rect(0, 0, 30, 20), ToSheet: geometry.Shift(10, 40)}}}
	s.Write(geometry.Pt(20, 10), 4, layout.Left, "words")
	got := Miniature(s)
	if len(got.Strokes) != 2 {
		t.Fatalf("%d strokes, want the line that shows and one for the words", len(got.Strokes))
	}
	b := got.Strokes[0].Path.Bounds()
	if want := geometry.Rect(10, 45, 40, 45); math.Abs(b.Min.X-want.Min.X)+math.Abs(b.Max.X-want.Max.X)+math.Abs(b.Min.Y-45)+math.Abs(b.Max.Y-45) > 1e-9 {
		t.Errorf("the line lies in %v, want %v", b, want)
	}
	if w := got.Strokes[1].Path.Bounds(); w.Min.X != 20 || w.W() < 5 || w.W() > 20 {
		t.Errorf("the words lie in %v", w)
	}
}
