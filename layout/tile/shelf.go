package tile

import "ribwright/geometry"

// captionHigh is the room for the line of lettering over a piece, mm.
const captionHigh = 4.4

// pieceGap is left between pieces on one sheet, mm: room for scissors.
const pieceGap = 2.5

// spot is where a piece lies: its frame's lower left corner on a sheet.
type spot struct {
	sheet int
	at    geometry.Point
}

// shelf is one row of pieces on a sheet.
type shelf struct {
	sheet       int
	top, bottom float64
	used        float64 // x up to which it is taken
}

// stack lays pieces on shelves, each on the first shelf with room and nearly
// its height, else on a new one under the last, else on a new sheet. It returns
// the spots in the order of the pieces, and the number of sheets.
func stack(pieces []piece, room geometry.Box) ([]spot, int) {
	var shelves []shelf
	floor := []float64{} // of each sheet, how far down it is taken
	out := make([]spot, len(pieces))
	for i, p := range pieces {
		high := p.frame.H() + captionHigh
		s := findShelf(shelves, p, high, room.Max.X)
		if s < 0 {
			sheet := findSheet(floor, high, room.Min.Y)
			if sheet == len(floor) {
				floor = append(floor, room.Max.Y+pieceGap)
			}
			top := floor[sheet] - pieceGap
			floor[sheet] = top - high
			shelves = append(shelves, shelf{sheet, top, top - high, room.Min.X})
			s = len(shelves) - 1
		}
		sh := &shelves[s]
		out[i] = spot{sh.sheet, geometry.Point{X: sh.used, Y: sh.top - high}}
		sh.used += p.frame.W() + pieceGap
	}
	return out, len(floor)
}

// findShelf returns the first shelf that takes the piece without wasting more
// than half its own height, -1 when none does.
func findShelf(shelves []shelf, p piece, high, right float64) int {
	for i, s := range shelves {
		tall := s.top - s.bottom
		if s.used+p.frame.W() <= right+closeEnough && high <= tall+closeEnough && high > tall/2 {
			return i
		}
	}
	return -1
}

// findSheet returns the first sheet with room for a new shelf, or the number of
// a new sheet.
func findSheet(floor []float64, high, bottom float64) int {
	for i, f := range floor {
		if f-pieceGap-high >= bottom-closeEnough {
			return i
		}
	}
	return len(floor)
}
