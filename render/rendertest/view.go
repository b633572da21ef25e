package rendertest

import "fmt"

// View is one piece of a pattern on a sheet, as the numbers give it.
type View struct {
	Page    int        `json:"page"` // from 1
	Pattern string     `json:"pattern"`
	Tile    string     `json:"tile"`
	Edges   [4]float64 `json:"frame_mm"` // x0, y0, x1, y1 in the pattern's own coordinates
	ToSheet [6]float64 `json:"to_sheet"`
	Sheet   [2]float64 `json:"sheet_mm"`
	Turned  bool       `json:"turned"` // shows the half pattern as the other half
}

// String names the piece.
func (v View) String() string { return fmt.Sprintf("%s %s on page %d", v.Pattern, v.Tile, v.Page) }

// Frame returns what the view shows, in the pattern's coordinates.
func (v View) Frame() Box { return Box{v.Edges[0], v.Edges[1], v.Edges[2], v.Edges[3]} }

// OnSheet returns where the frame lies on the sheet.
func (v View) OnSheet() Box {
	m := matrix(v.ToSheet)
	return Around(m.apply(v.Edges[0], v.Edges[1]), m.apply(v.Edges[2], v.Edges[3]))
}

// Back takes a point of the sheet to the pattern.
func (v View) Back(p Point) Point {
	m := v.ToSheet
	det, x, y := m[0]*m[3]-m[1]*m[2], p.X-m[4], p.Y-m[5]
	return Point{(m[3]*x - m[2]*y) / det, (m[0]*y - m[1]*x) / det}
}

// clipTol is how far a clip may lie off the frame it belongs to, mm: the file
// rounds it to 0.004.
const clipTol = 0.01

// Strokes returns what the view draws of its pattern on its page: the strokes
// clipped to its frame, moved back to the pattern's coordinates.
func (v View) Strokes(p Page) []Stroke {
	var out []Stroke
	for _, s := range p.Strokes {
		if s.Clip.Off(v.OnSheet()) > clipTol {
			continue
		}
		moved := s
		moved.Outlines, moved.Clip = nil, v.Frame()
		for _, o := range s.Outlines {
			pieces := make([]Piece, len(o.Pieces))
			for i, q := range o.Pieces {
				pieces[i] = Piece{From: v.Back(q.From), To: v.Back(q.To), C1: v.Back(q.C1), C2: v.Back(q.C2), Curved: q.Curved}
			}
			moved.Outlines = append(moved.Outlines, Outline{Pieces: pieces, Closed: o.Closed})
		}
		out = append(out, moved)
	}
	return out
}

// Inked reports whether anything of the pattern shows on the view's page within its frame.
func (v View) Inked(p Page) bool {
	for _, s := range v.Strokes(p) {
		for _, o := range s.Outlines {
			for _, piece := range o.Pieces {
				for k := range 65 {
					if v.Frame().Holds(piece.At(float64(k) / 64)) {
						return true
					}
				}
			}
		}
	}
	return false
}
