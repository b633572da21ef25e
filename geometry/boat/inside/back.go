package inside

import (
	"math"

	"ribwright/geometry/design"
)

// Back is two bars to lean on, one over the other.
type Back struct {
	Who                          string
	At, Low, Across, Tall, Thick float64 // station of its fore face; lower edge over the floor; over both bars
	Bar                          float64 // height of one of them
	Gunwale                      float64 // between the gunwales there
	Rib                          string  // round whose heads its loops are tied
	RibAt                        float64 // its station
	Floor                        float64 // as of a brace
}

// Sizes of a backrest, mm. Our own choice.
const (
	backLow, backTall, backThick, backBar = 110.0, 130.0, 10.0, 60.0
	backWide                              = 340.0
)

func back(f Boat, p design.Person, w place) Back {
	inner := f.Gunwale.EdgeAt(w.back, -float64(f.Design.Gunwale.Width)/2, 0)
	r := f.nearest(w.back)
	return Back{Rib: r.Name, RibAt: r.Station, Who: p.Name, At: w.back, Low: w.seat + backLow, Across: math.Min(backWide, 2*inner.Y-60), Tall: backTall, Thick: backThick, Bar: backBar,
		Gunwale: 2 * inner.Y, Floor: f.Hull.FloorZ(w.back)}
}
