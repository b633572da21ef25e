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
	Views   []View
	Strokes []Stroke // the sheet's own furniture, in sheet coordinates
	Texts   []Text
}

// Document is a set of sheets of one size, in the order they are printed.
type Document struct {
	Title  string
	Paper  Paper
	Sheets []Sheet
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
