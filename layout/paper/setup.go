package paper

import (
	"fmt"

	"ribwright/geometry"
)

// Setup is a printer with its paper.
type Setup struct {
	Size         Size
	Margins      Margins
	Offset       geometry.Point // how far all ink is moved, mm
	Across, Down Printed        // along the short and the long edge
}

// Corrected reports whether the printer's stretch is worked against.
func (s Setup) Corrected() bool { return s.Across.Factor() != 1 || s.Down.Factor() != 1 }

// Sheet is a sheet as it lies: W wide and H high as the file says. Everything on
// it is laid out in true mm, as they will measure when the printer has stretched
// them, from the lower left corner of the true sheet; ToFile brings them to the
// file's mm.
type Sheet struct {
	Setup
	Lying  bool
	W, H   float64      // in the file
	Area   geometry.Box // true mm: all ink lies in here
	ToFile geometry.Affine
}

// least is the smallest stretch of sheet that is worth printing on, mm.
const least = 165

// Sheet lays the paper down, its long edge level or upright.
//
// Errors: margins that leave less than 165 mm either way.
func (s Setup) Sheet(lying bool) (Sheet, error) {
	out := Sheet{Setup: s, Lying: lying, W: s.Size.Across, H: s.Size.Down}
	kx, ky := s.Across.Factor(), s.Down.Factor()
	if lying {
		out.W, out.H, kx, ky = out.H, out.W, ky, kx
	}
	m, by := s.Margins, s.Offset
	// The ink moves by the offset afterwards, and must then lie within the margins
	// as well as before: so the offset takes from the room on its side.
	out.Area = geometry.Box{
		Min: geometry.Point{X: kx * (m.Left + max(0, -by.X)), Y: ky * (m.Bottom + max(0, -by.Y))},
		Max: geometry.Point{X: kx * (out.W - m.Right - max(0, by.X)), Y: ky * (out.H - m.Top - max(0, by.Y))},
	}
	out.ToFile = geometry.Stretch(1/kx, 1/ky).Then(geometry.Shift(by.X, by.Y))
	if out.Area.W() < least || out.Area.H() < least {
		return out, fmt.Errorf("margins (%s) leave %.0f x %.0f mm of paper %s; accepted: margins that leave %d mm or more both ways",
			m, max(0, out.Area.W()), max(0, out.Area.H()), s.Size.Name, least)
	}
	return out, nil
}

// Way says how the sheet lies.
func (s Sheet) Way() string {
	if s.Lying {
		return "lying"
	}
	return "standing"
}

// Correction says what is done about the printer's stretch, "" when nothing is.
func (s Sheet) Correction() string {
	if !s.Corrected() {
		return ""
	}
	return fmt.Sprintf("corrected across %.4f, down %.4f", s.Across.Factor(), s.Down.Factor())
}
