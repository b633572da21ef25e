package layout

import "ribwright/geometry"

// View shows a part of a drawing on a sheet: what lies in Frame, moved by
// ToSheet, and nothing outside it.
type View struct {
	Drawing *Drawing
	Tile    string          // "B3" in a grid, "3" in a strip, "" when whole
	Frame   geometry.Box    // in the drawing's own coordinates
	ToSheet geometry.Affine // to mm from the sheet's lower left corner
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

// Note is a section of the text on the first sheets, one paragraph a line.
type Note struct {
	Heading string
	Lines   []string
}

// Paper is a size of sheet, as it lies on the bench: width first.
type Paper struct {
	Name string
	W, H float64 // mm
}
