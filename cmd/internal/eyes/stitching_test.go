package eyes

import (
	"math"

	"ribwright/render/rendertest"
)

// Sheets is a printed set: the file, what is in it, and the table of its tiles.
type Sheets struct {
	File  *File
	Drawn []rendertest.Page
	Views []rendertest.View
}

// Printer is how much longer a printer makes things than the file says, along
// the short edge of the paper and along its long edge. The zero Printer is not
// usable; a true one is 1 and 1.
type Printer struct{ Across, Down float64 }

// stretch returns by how much a sheet of this size grows to the right and up:
// a printer pulls paper in the same way whichever way the sheet is read.
func (p Printer) stretch(sheet [2]float64) Motion {
	if sheet[0] > sheet[1] {
		return Motion{p.Down, 0, 0, p.Across, 0, 0}
	}
	return Motion{p.Across, 0, 0, p.Down, 0, 0}
}

// Laid returns the motion from the file's sheet to the pattern's own
// coordinates, as a builder lays the printed tile: the printer stretches the
// sheet, and the builder, who cannot stretch it back, turns the tile the right
// way round and shifts its middle to its place.
func (p Printer) Laid(v rendertest.View) Motion {
	f := v.Frame()
	middle := rendertest.Point{X: (f.X0 + f.X1) / 2, Y: (f.Y0 + f.Y1) / 2}
	sin, cos := math.Sincos(-math.Atan2(v.ToSheet[1], v.ToSheet[0]))
	turned := p.stretch(v.Sheet).Then(Motion{cos, sin, -sin, cos, 0, 0})
	at := Motion(v.ToSheet).Then(turned).Apply(middle)
	return turned.Then(Shift(middle.X-at.X, middle.Y-at.Y))
}

// Undone returns the motion that the table of pages asks for: from the sheet
// back to the pattern, stretch and all.
func Undone(v rendertest.View) Motion { return Motion(v.ToSheet).Back() }

// Of returns the tiles of a pattern as they are drawn. Where a half serves for
// both, the table has each of its tiles once more, turned, as the other half.
func (s *Sheets) Of(pattern string) []rendertest.View {
	return s.views(pattern, func(v rendertest.View) bool { return !v.Turned })
}

// Both returns the tiles of a pattern, those of the other half with them.
func (s *Sheets) Both(pattern string) []rendertest.View {
	return s.views(pattern, func(rendertest.View) bool { return true })
}

func (s *Sheets) views(pattern string, which func(rendertest.View) bool) []rendertest.View {
	var out []rendertest.View
	for _, v := range s.Views {
		if v.Pattern == pattern && which(v) {
			out = append(out, v)
		}
	}
	return out
}

// Tile draws one tile on the pattern's grid: the dots wholly in its frame.
func (s *Sheets) Tile(v rendertest.View, l Layer, lay func(rendertest.View) Motion) (*Raster, error) {
	return s.Stitch([]rendertest.View{v}, l, lay)
}

// Stitch puts the tiles of a pattern together in one picture.
func (s *Sheets) Stitch(views []rendertest.View, l Layer, lay func(rendertest.View) Motion) (*Raster, error) {
	all := rendertest.Nowhere()
	for _, v := range views {
		f := v.Frame()
		all = rendertest.Around(ends(all, f)...)
	}
	laid, err := s.Lay(views, l, lay)
	if err != nil {
		return nil, err
	}
	defer laid.Close()
	return laid.Show(all)
}

// ends lists the corners of both boxes that are not empty.
func ends(boxes ...rendertest.Box) []rendertest.Point {
	var out []rendertest.Point
	for _, b := range boxes {
		if !b.Empty() {
			out = append(out, rendertest.Point{X: b.X0, Y: b.Y0}, rendertest.Point{X: b.X1, Y: b.Y1})
		}
	}
	return out
}
