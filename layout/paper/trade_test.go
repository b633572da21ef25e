package paper

import (
	"math"
	"testing"

	"ribwright/geometry/measure"
)

// TestPublishedSizes has ANSI/ASME Y14.1 A and B (8 1/2 x 11 and 11 x 17 in), ISO 216
// A4 and A3 (A0 is a square metre with sides as 1 to the root of 2), legal at 8 1/2 x
// 14 in, and rolls of 24 and 36 in.
func TestPublishedSizes(t *testing.T) {
	const in = 25.4
	for name, want := range map[string][2]float64{
		"letter": {8.5 * in, 11 * in}, "tabloid": {11 * in, 17 * in}, "legal": {8.5 * in, 14 * in},
		"a4": {210, 297}, "a3": {297, 420}, "roll24": {24 * in, Longest}, "roll36": {36 * in, Longest},
	} {
		s, err := ParseSize(name)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(s.Across-want[0]) > 1e-9 || math.Abs(s.Down-want[1]) > 1e-9 {
			t.Errorf("%s is %.1f x %.1f mm, want %.1f x %.1f", name, s.Across, s.Down, want[0], want[1])
		}
	}
	for name, halvings := range map[string]float64{"a4": 4, "a3": 3} {
		s, _ := ParseSize(name)
		if area := 1e6 / math.Pow(2, halvings); math.Abs(s.Across*s.Down/area-1) > 0.003 || math.Abs(s.Down/s.Across/math.Sqrt2-1) > 0.003 {
			t.Errorf("%s is no ISO sheet: %.0f x %.0f mm", name, s.Across, s.Down)
		}
	}
}

// TestHomePrinters: what is kept when nothing is said is what printers' manuals ask
// for: up to 6.4 mm on most edges and 12.7 mm at the bottom. A quarter inch is no
// narrow margin, anything less is.
func TestHomePrinters(t *testing.T) {
	m := HomeMargins()
	if min(m.Left, m.Right, m.Top) < 6.4 || m.Bottom < 12.7 {
		t.Errorf("%v is less than printers leave blank", m)
	}
	if m.Narrow() {
		t.Errorf("%v is said to be narrow", m)
	}
	for edge, narrow := range map[float64]bool{25.4 / 4: false, 6.3: true, 12: false} {
		for _, v := range []Margins{{edge, 20, 20, 20}, {20, edge, 20, 20}, {20, 20, edge, 20}, {20, 20, 20, edge}} {
			if v.Narrow() != narrow {
				t.Errorf("%v: narrow %v", v, v.Narrow())
			}
		}
	}
}

// TestStretchAsAccepted: the words promise up to 5 % off, so 4.9 % is taken and 5.1 %
// is not, either way; a slip of the unit never is.
func TestStretchAsAccepted(t *testing.T) {
	for text, ok := range map[string]bool{"209.8 mm of 200 mm": true, "210.2 mm of 200 mm": false, "190.2 mm of 200 mm": true, "189.8 mm of 200 mm": false,
		"200 mm of 8 in": true, "20 cm of 20 in": false, "8 in of 200 mm": true} {
		if _, err := ParsePrinted(text); (err == nil) != ok {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// TestOffsetAsAccepted: ink moves 20 mm each way at most; the words say so.
func TestOffsetAsAccepted(t *testing.T) {
	for text, ok := range map[string]bool{"right 20 mm": true, "left 20.1 mm": false, "up 19 mm, right 19 mm": true, "down 2 in": false} {
		if _, err := ParseOffset(text); (err == nil) != ok {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// TestMarginsAreKept: no ink comes nearer to an edge than its margin, whichever way
// the sheet lies and the ink is moved.
func TestMarginsAreKept(t *testing.T) {
	for _, lying := range []bool{false, true} {
		s := Setup{Size: Letter(), Margins: HomeMargins()}
		s.Offset.X, s.Offset.Y = 1.5, -2
		p, err := s.Sheet(lying)
		if err != nil {
			t.Fatal(err)
		}
		for _, corner := range []struct{ x, y float64 }{{p.Area.Min.X, p.Area.Min.Y}, {p.Area.Max.X, p.Area.Max.Y}} {
			for _, moved := range []float64{0, 1} {
				x, y := corner.x+moved*s.Offset.X, corner.y+moved*s.Offset.Y
				if x < s.Margins.Left-1e-9 || x > p.W-s.Margins.Right+1e-9 || y < s.Margins.Bottom-1e-9 || y > p.H-s.Margins.Top+1e-9 {
					t.Errorf("lying %v: ink at %.2f, %.2f of %.1f x %.1f mm", lying, x, y, p.W, p.H)
				}
			}
		}
	}
	if got := measure.MM(Letter().Across, 1); got != "215.9" {
		t.Errorf("letter is %s mm wide", got)
	}
}
