// Package paper knows what is in the printer: sizes of sheets and rolls, the
// margins a printer leaves blank, how far it moves its ink and by how much it
// stretches it. Edges and directions are those of a sheet as it is read, except
// for the stretch, which belongs to the paper: across is its short edge, down
// its long one, whichever way a sheet lies. Lengths are mm.
package paper

import (
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
)

// Size is a size of sheet.
type Size struct {
	Name         string
	Across, Down float64 // the short and the long edge
	Roll         bool    // Down is the most that may be used of a roll
}

const (
	// Longest is the longest page that common viewers show: 14 400 units of 1/72
	// inch. Source: PDF Reference 1.7, appendix C.
	Longest = 5080.0
	// shortest is the least edge of a sheet that a pattern may be printed on:
	// under it the title block and the scale bars leave no room.
	shortest = 200.0
)

func sizes() []Size {
	return []Size{
		{Name: "letter", Across: 215.9, Down: 279.4}, // ANSI/ASME Y14.1, size A
		{Name: "a4", Across: 210, Down: 297},         // ISO 216
		{Name: "legal", Across: 215.9, Down: 355.6},  // 8.5 x 14 in, common practice
		{Name: "tabloid", Across: 279.4, Down: 431.8},
		{Name: "a3", Across: 297, Down: 420},
		// What is printed on this fits on letter and on a4 alike.
		{Name: "both", Across: 210, Down: 279.4},
		{Name: "roll24", Across: 24 * 25.4, Down: Longest, Roll: true},
		{Name: "roll36", Across: 36 * 25.4, Down: Longest, Roll: true},
	}
}

// Names lists the sizes with names, and how others are written.
func Names() string {
	var names []string
	for _, s := range sizes() {
		names = append(names, s.Name)
	}
	return strings.Join(append(names, `WxH as "300 mm x 420 mm" or 12x18in`), ", ")
}

// Letter returns the size that is used when none is given.
func Letter() Size { return sizes()[0] }

// ParseSize reads a size by its name, capitals or not, or as two lengths with
// an x between them; a unit behind the second holds for both.
//
// Errors: anything else; an edge under 200 mm or a page over 5080 mm.
func ParseSize(s string) (Size, error) {
	for _, p := range sizes() {
		if strings.EqualFold(p.Name, strings.TrimSpace(s)) {
			return p, nil
		}
	}
	w, h, err := measure.ParsePair(s)
	if err != nil {
		return Size{}, fmt.Errorf("no paper %q; accepted: %s", s, Names())
	}
	p := Size{Across: float64(min(w, h)), Down: float64(max(w, h))}
	p.Name = measure.MM(p.Across, 1) + "x" + measure.MM(p.Down, 1) + "mm"
	if p.Across < shortest {
		return Size{}, fmt.Errorf("paper %s is %.0f mm wide, too small for a title block and scale bars; accepted: %.0f mm or more", s, p.Across, shortest)
	}
	if p.Down > Longest {
		return Size{}, fmt.Errorf("a page of %.0f mm is longer than the %.0f mm that viewers show; accepted: shorter pages, roll24 or roll36, which cut long patterns into pages, or sheets to tape", p.Down, Longest)
	}
	return p, nil
}

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
