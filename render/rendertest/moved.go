package rendertest

// Moved returns the stroke moved by (dx, dy) mm, its clip left where it is.
func (s Stroke) Moved(dx, dy float64) Stroke {
	to := func(q Point) Point { return Point{q.X + dx, q.Y + dy} }
	out := s
	out.Outlines = nil
	for _, o := range s.Outlines {
		pieces := make([]Piece, len(o.Pieces))
		for i, q := range o.Pieces {
			pieces[i] = Piece{From: to(q.From), To: to(q.To), C1: to(q.C1), C2: to(q.C2), Curved: q.Curved}
		}
		out.Outlines = append(out.Outlines, Outline{Pieces: pieces, Closed: o.Closed})
	}
	return out
}
