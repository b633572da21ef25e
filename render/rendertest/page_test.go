package rendertest

import (
	"math"
	"testing"
)

// readTol is rounding only: 1e-9 mm.
const readTol = 1e-9

func TestPageReadsStrokes(t *testing.T) {
	// By hand: 72 points are 25.4 mm, and the page starts at (36, 18) points.
	p := pageOf(t, "2 w [4 2] 0 d 36 18 m 108 18 l S q 1 w [] 0 d 72 54 144 72 re W n\n"+
		"q 1 0 0 1 36 18 cm 2 0 0 2 0 0 cm 0 0 m 0 36 36 36 36 0 c h S Q 36 18 m 108 90 l S Q 36 18 72 -18 re S")
	if math.Abs(p.W-254) > readTol || math.Abs(p.H-127) > readTol {
		t.Errorf("page %g x %g mm, want 254 x 127", p.W, p.H)
	}
	if len(p.Strokes) != 4 {
		t.Fatalf("%d strokes, want 4", len(p.Strokes))
	}
	whole, inner := Box{0, 0, 254, 127}, Box{12.7, 12.7, 63.5, 38.1}
	for i, want := range []struct {
		name   string
		width  float64
		dashes int
		clip   Box
		bounds Box
		pieces int
		closed bool
	}{
		{"dashed line", 2 * mmPerPoint, 2, whole, Box{0, 0, 25.4, 0}, 1, false},
		{"cubic, moved and doubled, within the clip", 2 * mmPerPoint, 0, inner, Box{0, 0, 25.4, 19.05}, 2, true},
		{"line within the clip, pen as before", mmPerPoint, 0, inner, Box{0, 0, 25.4, 25.4}, 1, false},
		{"rectangle after Q: first pen, no clip", 2 * mmPerPoint, 2, whole, Box{0, -6.35, 25.4, 0}, 4, true},
	} {
		s := p.Strokes[i]
		o := s.Outlines[0]
		if math.Abs(s.Width-want.width) > readTol || len(s.Dash) != want.dashes || s.Clip.Off(want.clip) > readTol {
			t.Errorf("%s: width %g, dash %v, clip %v; want %g, %d dashes, %v", want.name, s.Width, s.Dash, s.Clip, want.width, want.dashes, want.clip)
		}
		if b := o.Bounds(); b.Off(want.bounds) > readTol || len(o.Pieces) != want.pieces || o.Closed != want.closed {
			t.Errorf("%s: box %v of %d pieces, closed %v; want %v, %d, %v", want.name, b, len(o.Pieces), o.Closed, want.bounds, want.pieces, want.closed)
		}
	}
	if seen := p.Strokes[2].Seen(); seen.Off(Box{12.7, 12.7, 25.4, 25.4}) > readTol {
		t.Errorf("of the clipped line %v shows, want the part from (12.7, 12.7)", seen)
	}
}

func TestPageReadsTexts(t *testing.T) {
	p := pageOf(t, "BT /F1 10 Tf ET BT 72 90 Td (\\000a\\000\\(\\000b\\000\\)\\000\\\\\\000\\101\\004\\026) Tj ET\n"+
		"q 0 1 -1 0 108 54 cm BT /F1 20 Tf 0 0 Td (\\000H\\000i) Tj ET Q BT 36 18 Td <0048> Tj ET")
	if len(p.Texts) != 3 {
		t.Fatalf("%d texts, want 3", len(p.Texts))
	}
	for i, want := range []struct {
		words       string
		x, y, angle float64
		size        float64
	}{
		{"a(b)\\A\u0416", 12.7, 25.4, 0, 10},
		{"Hi", 25.4, 12.7, math.Pi / 2, 20},
		{"H", 0, 0, 0, 10}, // the font of before q again
	} {
		got := p.Texts[i]
		if got.Words != want.words || got.At.To(Point{want.x, want.y}) > readTol ||
			math.Abs(got.Angle-want.angle) > readTol || math.Abs(got.Size-want.size*mmPerPoint) > readTol {
			t.Errorf("text %d is %+v, want %+v", i, got, want)
		}
	}
	// By the widths of the font in the file: H 722, i 222.
	hi := p.Texts[1]
	if w := hi.Advance() / hi.Size; math.Abs(w-0.944) > readTol {
		t.Errorf("Hi is %g of its size wide, want 0.944", w)
	}
	want := Box{25.4 - 1480.0/2048*hi.Size, 12.7, 25.4 + 395.0/2048*hi.Size, 12.7 + 0.944*hi.Size}
	if b := hi.Bounds(); b.Off(want) > readTol {
		t.Errorf("Hi, upright, fills %v, want %v", b, want)
	}
}

func TestCrosses(t *testing.T) {
	// A circle of 2 mm round (20, 10) mm from the page's corner, in four cubics;
	// the handles are 4/3 (sqrt(2) - 1) of the radius.
	const circleAgain = "22 10 m 22 11.1045695 21.1045695 12 20 12 c 18.8954305 12 18 11.1045695 18 10 c " +
		"18 8.8954305 18.8954305 8 20 8 c 21.1045695 8 22 8.8954305 22 10 c h S "
	const circle = "1 0 0 1 36 18 cm 2.834645669 0 0 2.834645669 0 0 cm " + circleAgain
	for _, row := range []struct {
		name, content string
		want          int
	}{
		{"whole", circle + "15 10 m 25 10 l S 20 5 m 20 15 l S", 1},
		{"drawn twice", circle + circleAgain + "15 10 m 25 10 l S 20 5 m 20 15 l S", 1},
		{"no upright line", circle + "15 10 m 25 10 l S", 0},
		{"lines too short", circle + "16 10 m 24 10 l S 20 6 m 20 14 l S", 0},
		{"off the circle", circle + "15 10.1 m 25 10.1 l S 20 5 m 20 15 l S", 0},
		{"no circle", "1 0 0 1 36 18 cm 2.834645669 0 0 2.834645669 0 0 cm 15 10 m 25 10 l S 20 5 m 20 15 l S", 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := pageOf(t, row.content).Crosses(10, 2, 0.02)
			if len(got) != row.want {
				t.Fatalf("crosses %v, want %d", got, row.want)
			}
			for _, q := range got {
				if q.To(Point{20, 10}) > 0.001 {
					t.Errorf("cross at %v, want (20, 10)", q)
				}
			}
		})
	}
}

func TestSameSet(t *testing.T) {
	a := []Point{{0, 0}, {10, 0}}
	for _, row := range []struct {
		name string
		b    []Point
		want bool
	}{
		{"the same in another order", []Point{{10, 0.015}, {0, 0}}, true},
		{"one moved", []Point{{10, 0.03}, {0, 0}}, false},
		{"one missing", []Point{{0, 0}}, false},
		{"one more", []Point{{0, 0}, {10, 0}, {5, 5}}, false},
		{"none", nil, false},
	} {
		if SameSet(a, row.b, 0.02) != row.want || SameSet(row.b, a, 0.02) != row.want {
			t.Errorf("%s: not %v both ways", row.name, row.want)
		}
	}
	if got := (Box{-1, -1, 1, 1}).Pick(a); len(got) != 1 || got[0] != a[0] {
		t.Errorf("picked %v, want the first point", got)
	}
}
