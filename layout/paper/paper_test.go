package paper

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
)

// TestSizes checks sizes against their standards: ANSI/ASME Y14.1 size A is 8.5 x
// 11 in, size B 11 x 17 in; ISO 216 A4 is 210 x 297 mm, A3 297 x 420 mm.
func TestSizes(t *testing.T) {
	for text, want := range map[string][2]float64{
		"letter": {215.9, 279.4}, "A4": {210, 297}, "legal": {215.9, 355.6}, "Tabloid": {279.4, 431.8}, "a3": {297, 420},
		"both": {210, 279.4}, "roll24": {609.6, 5080}, "roll36": {914.4, 5080},
		"300x420": {300, 420}, "18x12in": {304.8, 457.2}, `11" x 17"`: {279.4, 431.8}, "610 mm x 5.08 m": {610, 5080},
	} {
		p, err := ParseSize(text)
		if err != nil || math.Abs(p.Across-want[0]) > 1e-9 || math.Abs(p.Down-want[1]) > 1e-9 {
			t.Errorf("%s: %+v, %v; want %v", text, p, err, want)
		}
	}
}

// TestBothFits checks that what is printed on "both" lies on letter and on a4.
func TestBothFits(t *testing.T) {
	both, _ := ParseSize("both")
	for _, name := range []string{"letter", "a4"} {
		if p, _ := ParseSize(name); both.Across > p.Across || both.Down > p.Down {
			t.Errorf("both is %v x %v mm, %s only %v x %v", both.Across, both.Down, name, p.Across, p.Down)
		}
	}
}

// TestSizesRefused checks what each refusal offers. Viewers show pages of up to
// 200 in = 5080 mm (PDF Reference 1.7, appendix C).
func TestSizesRefused(t *testing.T) {
	for text, want := range map[string]string{
		"foolscap": "accepted: letter, a4,", "": "accepted: letter", "610x6000": "6000 mm is longer than the 5080 mm that viewers show; accepted: shorter pages, roll24",
		"5080.1x610": "longer than", "100x150": "100 mm wide, too small", "0x300": "too small", "-200x300": "too small", "1e9x300": "no paper",
		"210x297 furlongs": "no paper", "nanxnan": "no paper",
	} {
		if p, err := ParseSize(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %+v, %v; want %q", text, p, err, want)
		}
	}
}

func TestParseMargins(t *testing.T) {
	home := HomeMargins()
	for text, want := range map[string]Margins{
		"10 mm": {10, 10, 10, 10}, "1/4 in": {6.35, 6.35, 6.35, 6.35}, "0 mm": {},
		"inkjet": {6.5, 6.5, 6.5, 12.7}, " Laser ": {6.5, 6.5, 6.5, 6.5}, "borderless": {3, 3, 3, 3},
		"left 8 mm, bottom 15 mm": {8, home.Right, home.Top, 15}, "TOP 0.5in": {home.Left, home.Right, 12.7, home.Bottom},
	} {
		if m, err := ParseMargins(text); err != nil || m != want {
			t.Errorf("%q: %v, %v; want %v", text, m, err, want)
		}
	}
	for _, text := range []string{"", "10", "left", "left 8", "middle 8 mm", "-3 mm", "left -3 mm", "left 8 mm bottom 15 mm"} {
		if m, err := ParseMargins(text); err == nil || !strings.Contains(err.Error(), "accepted") {
			t.Errorf("%q was read as %v, %v", text, m, err)
		}
	}
	if home.Narrow() || !(Margins{10, 10, 6, 10}).Narrow() {
		t.Error("margins under 6.35 mm are narrow, and no others")
	}
	if kinds["inkjet"].Narrow() || kinds["laser"].Narrow() || !kinds["borderless"].Narrow() {
		t.Error("only a printer without borders prints up to narrow margins")
	}
	if m, err := ParseMargins(home.String()); err != nil || m != home {
		t.Errorf("what is written is read as %v, %v", m, err)
	}
}

func TestParseOffset(t *testing.T) {
	for text, want := range map[string]geometry.Point{
		"right 1.5 mm": {X: 1.5}, "left 1/16 in, up 0.5 mm": {X: -1.5875, Y: 0.5}, "down 2 mm": {Y: -2},
	} {
		if p, err := ParseOffset(text); err != nil || p.Sub(want).Norm() > 1e-12 {
			t.Errorf("%q: %v, %v; want %v", text, p, err, want)
		}
	}
	for _, text := range []string{"", "1.5 mm", "north 2 mm", "left 40 mm", "right"} {
		if p, err := ParseOffset(text); err == nil || !strings.Contains(err.Error(), "accepted") {
			t.Errorf("%q was read as %v, %v", text, p, err)
		}
	}
}

// TestParsePrinted: what a rule measures of a bar of known length. The last rows
// are slips that other programs took at their word.
func TestParsePrinted(t *testing.T) {
	for text, want := range map[string]float64{
		"200.8 mm of 200 mm": 1.004, "199.7mm OF 200mm": 0.9985, "8 1/32 in of 8 in": 8.03125 / 8, "190 mm of 190 mm": 1, "20.9 cm of 22 cm": 0.95,
	} {
		if p, err := ParsePrinted(text); err != nil || math.Abs(p.Factor()-want) > 1e-12 {
			t.Errorf("%q: %v, %v; want %v", text, p, err, want)
		}
	}
	for _, text := range []string{"", "1.004", "25.4", "200.8 of 200", "200.8 mm", "8 in of 200 mm x", "211 mm of 200 mm", "8 in of 200 in", "0 mm of 200 mm", "200 mm of 0 mm", "-200 mm of -200 mm"} {
		if p, err := ParsePrinted(text); err == nil || !strings.Contains(err.Error(), "accepted") {
			t.Errorf("%q was read as %v, %v", text, p, err)
		}
	}
}

// TestSheet checks the room on a sheet by hand: letter, lying, on a printer that
// makes 1.004 across (the short edge) and 0.9985 down, and moves ink 2 mm left.
func TestSheet(t *testing.T) {
	s, err := Setup{Size: Letter(), Margins: HomeMargins(), Across: 1.004, Down: 0.9985, Offset: geometry.Point{X: 2}}.Sheet(true)
	if err != nil {
		t.Fatal(err)
	}
	want := geometry.Box{Min: geometry.Point{X: 10 * 0.9985, Y: 12.7 * 1.004}, Max: geometry.Point{X: (279.4 - 10 - 2) * 0.9985, Y: (215.9 - 10) * 1.004}}
	if s.W != 279.4 || s.H != 215.9 || s.Area.Min.Sub(want.Min).Norm() > 1e-9 || s.Area.Max.Sub(want.Max).Norm() > 1e-9 {
		t.Errorf("room %v on %v x %v mm, want %v", s.Area, s.W, s.H, want)
	}
	// In the file all ink lies within the margins once it is moved.
	low, high := s.ToFile.Apply(s.Area.Min), s.ToFile.Apply(s.Area.Max)
	if math.Abs(low.X-12) > 1e-9 || math.Abs(low.Y-12.7) > 1e-9 || math.Abs(high.X-269.4) > 1e-9 || math.Abs(high.Y-205.9) > 1e-9 {
		t.Errorf("ink from %v to %v in the file", low, high)
	}
	if s.Way() != "lying" || s.Correction() != "corrected across 1.0040, down 0.9985" {
		t.Errorf("%s, %s", s.Way(), s.Correction())
	}
	if _, err := (Setup{Size: Letter(), Margins: Margins{100, 100, 10, 10}}).Sheet(false); err == nil || !strings.Contains(err.Error(), "leave 16 x 259 mm") {
		t.Errorf("margins larger than the sheet gave %v", err)
	}
}
