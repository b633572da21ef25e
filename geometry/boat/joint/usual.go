package joint

import "ribwright/geometry/wood/fasten"

// Usual are the sizes and loads that joints go by where the design says nothing: each a
// default that can be replaced by its name. Common practice or from memory, no source,
// unless said otherwise.
type Usual struct {
	fasten.Usual

	Cord      fasten.Cord // of all lashings
	LeastPeg  float64     // a peg of less breaks when it is driven
	MostPeg   float64     // in a wall of 5 mm: 2 to 2.5
	PegInWall float64     // least wall round a peg, in diameters
	PegWide   float64     // the most for a peg in a wider piece
	Bolt      float64     // of cross pieces, mm
	BoltHole  float64     // 0.8 to 1.6 mm over it (NDS commentary)
	Washer    float64     // across, the most: it is sunk into the gunwale's top and must leave wood beside it
	Sunk      float64     // how deep: the head of an M5 bolt, 3.5 (ISO 4014), and a washer of 1.2 (from memory)
	Beside    float64     // that wood, on each side
	PegInHook float64     // how deep a peg goes into the breasthook, in diameters
	EndRib    int         // heads of so many ribs at each end are glued as well, where an edge-set is sprung

	Knock    float64 // N against a stem at the waterline, as on a stone
	Hull     float64 // kg: a boat that is lifted or carried
	Handling float64 // how many times its weight a boat or what is in it bears on a joint when it is lifted
	EndPull  float64 // N along a stringer at its end, or on any joint for which nothing is known
}

// Remembered returns the defaults.
func Remembered() Usual {
	return Usual{
		Usual:    fasten.Remembered(),
		Cord:     fasten.Cord{Diameter: 1.5, Density: fasten.Polyester},
		LeastPeg: 2, MostPeg: 2.5, PegInWall: 2, PegWide: 6, Bolt: 5, BoltHole: 6, Washer: 18, Sunk: 5, Beside: 2, PegInHook: 8, EndRib: 2,
		Knock: 1000, Hull: 30, Handling: 1.5, EndPull: 100,
	}
}
