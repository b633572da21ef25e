package layout

import (
	"math"

	"ribwright/geometry"
)

// View shows a part of a drawing on a sheet: what lies in Frame, moved by
// ToSheet, and nothing outside it.
type View struct {
	Drawing *Drawing
	Tile    string          // "B3" in a grid, "3" in a strip, "" when whole
	Frame   geometry.Box    // in the drawing's own coordinates
	ToSheet geometry.Affine // to mm from the sheet's lower left corner
}

// TurnOf is by how much a motion onto a sheet turns what it brings there, radians.
func TurnOf(m geometry.Affine) float64 { return math.Atan2(m.B, m.A) }

// OnSheet is the box that a view fills on its sheet.
func (v View) OnSheet() geometry.Box {
	return geometry.Around(v.ToSheet.Apply(v.Frame.Min), v.ToSheet.Apply(v.Frame.Max))
}

// Lettering is a text of the drawing as it stands on the sheet.
func (v View) Lettering(t Text) Text {
	t.At, t.Angle = v.ToSheet.Apply(t.At), t.Angle+TurnOf(v.ToSheet)
	return t
}

// Sheet is one printed side.
type Sheet struct {
	Label   string // what lies on it, as "mortises 1 2 3"; for the print dialogue
	Number  int    // in the whole set, from 1; a file may hold only some of it
	Views   []View
	Strokes []Stroke // the sheet's own furniture, in sheet coordinates
	Texts   []Text
	Outline []Bookmark // what begins on it, besides its views
}

// Bookmark is a heading in the list of contents that a viewer shows.
type Bookmark struct {
	Title string
	Level int // 0 for a chapter, 1 within one
}

// Document is a set of sheets of one size, in the order they are printed.
type Document struct {
	Title  string
	Paper  Paper
	Sheets []Sheet
	// Stretch is how long a true millimeter is in the file along x and y, where
	// the printer's own stretch is worked against; the zero Point stands for 1.
	Stretch geometry.Point
}

// Scale returns the factors of Stretch; 1 and 1 when it is not set.
func (d Document) Scale() (x, y float64) {
	if d.Stretch == (geometry.Point{}) {
		return 1, 1
	}
	return d.Stretch.X, d.Stretch.Y
}

// First is what is read before the patterns: a sheet of it.
type First struct {
	Boat     func() Drawing // as an eye sees it, at any scale; nil for none
	Codes    string         // what the codes of parts mean, in a line; "" for none
	Found    []string       // what is known of the boat, a paragraph each
	Checks   []Check        // lengths to measure before wood is cut
	Cautions []string       // what can hurt, a paragraph each
	Notes    []Note         // what else must be known at the bench
}

// Check is a length that a tape finds on the taped patterns.
type Check struct{ What, Is string }

// Note is a section of the text on the first sheet, one paragraph a line.
type Note struct {
	Heading string
	Lines   []string
}

// Paper is a size of sheet, as it lies on the bench: width first.
type Paper struct {
	Name string
	W, H float64 // mm
}

// Onto brings a sheet from true mm to the file's. Lettering shrinks with the
// smaller factor, so that it stays where there is room for it.
func (s *Sheet) Onto(m geometry.Affine) {
	if m == geometry.Shift(0, 0) {
		return
	}
	for i := range s.Views {
		s.Views[i].ToSheet = s.Views[i].ToSheet.Then(m)
	}
	for i := range s.Strokes {
		s.Strokes[i].Path = s.Strokes[i].Path.Map(m)
	}
	for i := range s.Texts {
		s.Texts[i].At = m.Apply(s.Texts[i].At)
		s.Texts[i].Height *= min(m.A, m.D)
	}
}
