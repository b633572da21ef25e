package cutlist

import (
	"math"

	"ribwright/geometry/design"
)

// Board is one size of board, mm.
type Board struct {
	Species                  string
	Length, Width, Thickness float64
	Count                    int     // 0 for as many as needed
	Price                    float64 // of one; 0 when not known
	Asked                    bool    // not named by the builder: a size to ask the yard for
}

// Volume returns the wood of one board, mm3.
func (b Board) Volume() float64 { return b.Length * b.Width * b.Thickness }

// Dressing is what is planed off the two sawn faces of a rip together, mm. Common
// practice, no source.
const Dressing = 1.0

// lie says how sticks of a section lie in a board: across of its width for a rip
// that is layers sticks high.
func (b Board) lie(s Stick, kerf float64) (across float64, layers int, ok bool) {
	best := math.Inf(1)
	for _, way := range [][2]float64{{s.Width, s.Thickness}, {s.Thickness, s.Width}} {
		n := 0
		if way[1] <= b.Thickness {
			n = max(1, int((b.Thickness+kerf+Dressing)/(way[1]+kerf+Dressing)))
		}
		if way[0] > b.Width || n == 0 {
			continue
		}
		if cost := (way[0] + kerf + Dressing) / float64(n); cost < best-1e-9 {
			best, across, layers, ok = cost, way[0], n, true
		}
	}
	return across, layers, ok
}

// named returns the boards that the builder names for a wood.
func named(d *design.Design, species string) []Board {
	var out []Board
	for _, b := range d.Stock.Boards {
		if same(d, b.Species, species) {
			out = append(out, Board{Species: species, Length: float64(b.Length), Width: float64(b.Width), Thickness: float64(b.Thickness), Count: b.Count, Price: b.Price})
		}
	}
	return out
}

// same reports whether two names mean one wood of the design.
func same(d *design.Design, a, b string) bool {
	x, errX := d.Wood(a)
	y, errY := d.Wood(b)
	return a == b || errX == nil && errY == nil && x.Name == y.Name
}

// yard lists the sizes to ask for when none are named: 8 to 18 feet long, 4 to 12
// inches wide, 1 to 2 inches thick, in even mm. Common practice, no source.
func yard(species string) []Board {
	var out []Board
	for _, long := range []float64{2440, 3050, 3660, 4270, 4880, 5490} {
		for _, wide := range []float64{100, 150, 200, 250, 300} {
			for _, thick := range []float64{25, 32, 38, 50} {
				out = append(out, Board{Species: species, Length: long, Width: wide, Thickness: thick, Asked: true})
			}
		}
	}
	return out
}
