package rendertest

import "math"

// OnEachOther returns the words of each two lines of lettering that lie on each other where
// both show: boxes from the baseline to the capitals, along or across the page, less a
// hair round them.
func OnEachOther(all []Text) [][2]string {
	const hair = 0.3 // mm
	var out [][2]string
	boxes := make([]Box, len(all))
	for i, w := range all {
		if boxes[i] = Nowhere(); math.Abs(math.Sin(2*w.Angle)) < 1e-6 {
			boxes[i] = w.capitals().Meet(w.Clip).Grow(-hair)
		}
		for j := range i {
			if !boxes[i].Meet(boxes[j]).Empty() {
				out = append(out, [2]string{w.Words, all[j].Words})
			}
		}
	}
	return out
}

// capitals is the box of the lettering without what hangs under its baseline.
func (t Text) capitals() Box {
	sin, cos := math.Sincos(t.Angle)
	along, up := Point{t.Advance() * cos, t.Advance() * sin}, Point{-t.CapHeight() * sin, t.CapHeight() * cos}
	return Around(t.At, Point{t.At.X + along.X, t.At.Y + along.Y}, Point{t.At.X + up.X, t.At.Y + up.Y})
}
