package seat

// side is the ribs' inner face beside one edge of a hanger, and how much farther out the
// gunwale is there than at the hanger's middle.
type side struct {
	face
	top float64 // height of the face's upper end
	out float64
}

func (b Boat) beside(h Hanger) (out [3]side, err error) {
	middle := h.Point(0, 0).X
	for i := range out {
		x := h.Station + float64(i-1)*h.Wide/2
		f, err := b.inside(x)
		if err != nil {
			return out, err
		}
		out[i] = side{f, f.at(faceSteps).Y, b.Gunwale.EdgeAt(x, -float64(b.Design.Gunwale.Width)/2, h.high).Y - middle}
	}
	return out, nil
}

// free reports whether a hanger clears the ribs below the gunwale.
func (h Hanger) free(sides [3]side) bool {
	for _, s := range sides {
		if !h.clears(s) {
			return false
		}
	}
	return true
}

// clears looks every few millimeters down the hanger. It is straight: inside a face that
// bulges, what lies between two places that clear it clears it too.
func (h Hanger) clears(s side) bool {
	const step = 8.0
	for down := h.high + 4; down < h.Length+step; down += step {
		p := h.Point(min(down, h.Length), h.Block)
		if p.X+s.out > s.broad(p.Y)-toRibs {
			return false
		}
		if s.bulges && p.Y <= s.top {
			down = max(down, h.Length-step)
		}
	}
	return true
}
