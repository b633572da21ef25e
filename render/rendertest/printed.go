package rendertest

// Printed returns the page as a printer makes it that stretches x by kx and y by
// ky: what was drawn at (x, y) comes out at (kx x, ky y). Line widths and dashes
// are left as they are.
func (p Page) Printed(kx, ky float64) Page {
	to := func(q Point) Point { return Point{q.X * kx, q.Y * ky} }
	out := Page{W: p.W * kx, H: p.H * ky}
	for _, s := range p.Strokes {
		n := s
		n.Clip, n.Outlines = Around(to(Point{s.Clip.X0, s.Clip.Y0}), to(Point{s.Clip.X1, s.Clip.Y1})), nil
		for _, o := range s.Outlines {
			pieces := make([]Piece, len(o.Pieces))
			for i, q := range o.Pieces {
				pieces[i] = Piece{From: to(q.From), To: to(q.To), C1: to(q.C1), C2: to(q.C2), Curved: q.Curved}
			}
			n.Outlines = append(n.Outlines, Outline{Pieces: pieces, Closed: o.Closed})
		}
		out.Strokes = append(out.Strokes, n)
	}
	for _, t := range p.Texts {
		t.At = to(t.At)
		t.Clip = Around(to(Point{t.Clip.X0, t.Clip.Y0}), to(Point{t.Clip.X1, t.Clip.Y1}))
		out.Texts = append(out.Texts, t)
	}
	return out
}

// Printed returns the view as it lies on a page that is printed so.
func (v View) Printed(kx, ky float64) View {
	m := v.ToSheet
	v.ToSheet = [6]float64{kx * m[0], ky * m[1], kx * m[2], ky * m[3], kx * m[4], ky * m[5]}
	v.Sheet = [2]float64{kx * v.Sheet[0], ky * v.Sheet[1]}
	return v
}
