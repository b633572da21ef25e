package rendertest

import "math"

// Bars returns the level and the upright lines of the given length on a page
// that no frame clips, to tol mm: scale bars, as a reader with a rule finds
// them. Each runs from its lower or left end.
func (p Page) Bars(long, tol float64) (level, upright []Piece) {
	for _, l := range p.Lines() {
		dx, dy := l.To.X-l.From.X, l.To.Y-l.From.Y
		switch {
		case math.Abs(dx-long) <= tol && math.Abs(dy) <= tol:
			level = append(level, l)
		case math.Abs(dy-long) <= tol && math.Abs(dx) <= tol:
			upright = append(upright, l)
		}
	}
	return level, upright
}

// Lines returns the single straight lines on a page that no frame clips.
func (p Page) Lines() []Piece {
	var out []Piece
	for _, s := range p.Strokes {
		if o := s.Outlines[0]; s.Clip == (Box{0, 0, p.W, p.H}) && len(o.Pieces) == 1 && o.Straight() {
			out = append(out, o.Pieces[0])
		}
	}
	return out
}
