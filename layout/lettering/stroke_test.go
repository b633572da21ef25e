package lettering

import (
	"math"
	"reflect"
	"testing"

	"ribwright/geometry"
)

func TestStrokesScale(t *testing.T) {
	const text = "Stem 6 1/2\" & 90\u00b0"
	small, large := Strokes(text, 5), Strokes(text, 15)
	if len(small) == 0 || len(small) != len(large) {
		t.Fatalf("%d and %d strokes", len(small), len(large))
	}
	for i, line := range small {
		for j, p := range line {
			if q := large[i][j]; q.Sub(p.Scale(3)).Norm() > 1e-9 {
				t.Errorf("stroke %d point %d: %v and %v", i, j, p, q)
			}
		}
	}
	if a, b := StrokeWidth(text, 5), StrokeWidth(text, 15); math.Abs(b-3*a) > 1e-9 {
		t.Errorf("widths %g and %g", a, b)
	}
}

func TestStrokesPlace(t *testing.T) {
	one := Strokes("H", 12)
	if p := one[0][0]; p.X != 0 || p.Y != 0 {
		t.Errorf("H begins at %v", p)
	}
	if w := StrokeWidth("H", 12); w != 8 {
		t.Errorf("H is %g wide", w)
	}
	two := Strokes("HH", 12)
	if x := two[3][0].X; x != 8+gridGap {
		t.Errorf("second H at x = %g", x)
	}
	if w := StrokeWidth("HH", 12); w != 16+gridGap {
		t.Errorf("HH is %g wide", w)
	}
}

// Each stroke stands where the grid has it: 12 units are one capital. Arithmetic
// on the drawing of L, V and the hyphen.
func TestStrokesPoints(t *testing.T) {
	for _, row := range []struct {
		name, text string
		height     float64
		want       [][]geometry.Point
		width, tol float64
	}{
		{"L", "L", 12, [][]geometry.Point{{{X: 0, Y: 12}, {X: 0, Y: 0}, {X: 6, Y: 0}}}, 6, 0},
		{"L at half a millimeter", "L", 0.5, [][]geometry.Point{{{X: 0, Y: 0.5}, {X: 0, Y: 0}, {X: 0.25, Y: 0}}}, 0.25, 1e-15},
		{"V and hyphen", "V-", 6, [][]geometry.Point{{{X: 0, Y: 6}, {X: 2, Y: 0}, {X: 4, Y: 6}}, {{X: 5.5, Y: 2.5}, {X: 7.5, Y: 2.5}}}, 7.5, 1e-15},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := Strokes(row.text, row.height)
			if len(got) != len(row.want) {
				t.Fatalf("%q has %d strokes, want %d", row.text, len(got), len(row.want))
			}
			for i, line := range got {
				if len(line) != len(row.want[i]) {
					t.Fatalf("stroke %d of %q is %v, want %v mm", i, row.text, line, row.want[i])
				}
				for j, p := range line {
					if !(p.Sub(row.want[i][j]).Norm() <= row.tol) {
						t.Errorf("stroke %d of %q, point %d: %v, want %v mm", i, row.text, j, p, row.want[i][j])
					}
				}
			}
			if w := StrokeWidth(row.text, row.height); !(math.Abs(w-row.width) <= row.tol) {
				t.Errorf("StrokeWidth(%q, %g) = %g, want %g mm", row.text, row.height, w, row.width)
			}
		})
	}
}

func TestStrokesEdges(t *testing.T) {
	for _, h := range []float64{0, -3, math.NaN(), math.Inf(1), math.Inf(-1)} {
		if s, w := Strokes("A", h), StrokeWidth("A", h); s != nil || w != 0 {
			t.Errorf("height %g: %v, %g", h, s, w)
		}
	}
	for _, s := range []string{"", " \n", "\u200b"} {
		if got, w := Strokes(s, 5), StrokeWidth(s, 5); got != nil || w != 0 {
			t.Errorf("%+q: %v, %g", s, got, w)
		}
	}
	checkLines(t, "Huge 8", math.MaxFloat64)
	checkLines(t, "Tiny 8", 5e-324)
}

// What the alphabet lacks is drawn like its plain spelling.
func TestStrokesStandIn(t *testing.T) {
	for s, like := range map[string]string{
		"\u00e9": "e", "\u0141": "L", "\u00df": "ss", "\u20ac": "EUR", "\u00b5m": "um",
		"m\u00b2": "m^2", "\u65e5": "\u25a1", "\u00a5": "YEN", "\xff": "\u25a1", "\U0001f6f6": "\u25a1",
		"5\u215b\u2033": "5 1/8\"", "\u2019": "'", "\u2212": "-", "\u2030": "o/oo",
		"Чайка": "Chayka", "Щёголь": "Shchyogol'", "Γλάρος": "Glaros", "Ψαράκι": "Psaraki", "Łódź Ğ": "Lodz G", "Nguy\u1ec5n": "Nguyen",
	} {
		if !reflect.DeepEqual(Strokes(s, 5), Strokes(like, 5)) || StrokeWidth(s, 5) != StrokeWidth(like, 5) {
			t.Errorf("%+q is not drawn like %q", s, like)
		}
	}
}

// Everything Safe can return is drawn, and every spelling is in the alphabet.
func TestStrokesEveryCode(t *testing.T) {
	for r := rune('!'); r <= 0xffff; r++ {
		if has(r) && Safe(string(r)) != "" {
			if len(Strokes(string(r), 5)) == 0 {
				t.Errorf("nothing drawn for %+q", r)
			}
			checkStrokes(t, string(r))
		}
	}
	for r, s := range standIns() {
		for _, part := range s {
			if _, ok := glyphs()[part]; !ok {
				t.Errorf("%+q is spelled %q, but %q has no glyph", r, s, part)
			}
		}
	}
}

// checkStrokes tests what Strokes promises for any text.
func checkStrokes(t *testing.T, s string) {
	t.Helper()
	checkLines(t, s, 6)
	reach := StrokeWidth(s, 6) + 1e-9
	for _, line := range Strokes(s, 6) {
		for _, p := range line {
			if p.X < 0 || p.X > reach || p.Y < -2 || p.Y > 7 {
				t.Errorf("%+q reaches %v", s, p)
			}
		}
	}
}

// checkLines tests that all strokes of s are lines of numbers.
func checkLines(t *testing.T, s string, capHeight float64) {
	t.Helper()
	for _, line := range Strokes(s, capHeight) {
		if len(line) < 2 {
			t.Errorf("%+q has a stroke of %d points", s, len(line))
		}
		for _, p := range line {
			if math.IsNaN(p.X) || math.IsNaN(p.Y) {
				t.Errorf("%+q at height %g reaches %v", s, capHeight, p)
			}
		}
	}
}

// TestASCII: every glyph that is not ASCII is spelled, and names stay readable.
func TestASCII(t *testing.T) {
	for r := range glyphs() {
		for _, c := range ASCII("a" + string(r) + "b") {
			if c < ' ' || c > '~' {
				t.Errorf("%+q is spelled with %+q", r, c)
			}
		}
	}
	for in, want := range map[string]string{"Чайка 3½″ × 90°": "Chayka 3 1/2\" x 90 deg", "Łódź—小舟": "Lodz-##", "Ø6": "dia. 6"} {
		if got := ASCII(in); got != want {
			t.Errorf("ASCII(%q) = %q, want %q", in, got, want)
		}
	}
}
