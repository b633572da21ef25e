package aboard

import "strings"

// ribRoom is kept between the head of a rib and what hooks under a gunwale, mm. Our own
// choice.
const ribRoom = 3.0

// Free reports whether something under the gunwales, from one station to another, meets
// no rib's head, no cross piece and no hanger of a seat.
func (b Boat) Free(from, to float64) bool {
	meets := func(at, wide float64) bool { return at-wide/2 < to && at+wide/2 > from }
	for _, r := range b.Frame.Ribs {
		if meets(r.Station, float64(b.Frame.Design.Ribs.Width)+2*ribRoom) {
			return false
		}
	}
	for _, t := range b.Frame.Thwarts {
		if meets(t.At, t.Outline.Bounds().H()) {
			return false
		}
	}
	for _, s := range b.Seats {
		if h := s.Hung; h != nil && (meets(h.Front.Hanger.Station, h.Front.Hanger.Wide) || meets(h.After.Hanger.Station, h.After.Hanger.Wide)) {
			return false
		}
	}
	return true
}

// Foamed reports whether foam lies along the sides between two stations.
func (b Boat) Foamed(from, to float64) bool {
	for _, f := range b.Flotation.Bags {
		if f.Foam && strings.HasPrefix(f.Where, "port") && f.Aft < to && f.Fore > from {
			return true
		}
	}
	return false
}

// Nearest returns the place nearest to x, no farther than so many mm, that suits, in steps
// of half a millimeter; x itself and false where there is none.
func Nearest(x, most float64, suits func(x float64) bool) (float64, bool) {
	for off := 0.0; off <= most; off += 0.5 {
		for _, at := range []float64{x - off, x + off} {
			if suits(at) {
				return at, true
			}
		}
	}
	return x, false
}
