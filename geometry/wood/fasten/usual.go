package fasten

// Usual are values that are remembered and have not been read: defaults, each to be
// replaced by its name where better is known.
type Usual struct {
	PilotSoft, PilotHard float64 // pilot hole over the root of the thread; Wood Handbook chapter 8

	BoltEdge float64 // of a bolt from an edge, in diameters; NDS 12.5
	// Distances of screws and nails under 6.35 mm in bored holes, in diameters; NDS commentary.
	ScrewEdge, ScrewEndPulled, ScrewEndPressed, ScrewAlong float64

	SplitFactor float64 // N/mm^1.5: splitting at a bolt that pulls across softwood's grain; Eurocode 5 (8.4)

	// A wooden peg that shears, psi over the powers of the gravities of peg and wood; the
	// standard of the timber framers' council.
	PegShear, PegPower, WoodPower float64
	// Where a peg stands: in diameters of the peg, and its diameter as a share of the
	// thinner piece; timber practice.
	PegEdge, PegEnd, PegShare float64

	KnotKeeps  float64 // share of a cord's strength that a reef knot leaves; a rope maker's tests say the same
	TurnShare  float64 // share of the strength that all turns of a lashing bear together
	CordFull   float64 // share of a cord's round that is fiber
	CordTwist  float64 // share of the fibers' strength that twist or braid leaves
	Tenacity   float64 // gram-force a denier: polyester of high tenacity, the middle of 6 to 7
	CordEdge   float64 // least radius of a wooden edge under cord, in diameters of the cord
	WorkingEnd float64 // share of the breaking load that a cord is asked to bear for years
}

// Remembered returns the defaults.
func Remembered() Usual {
	return Usual{
		PilotSoft: 0.70, PilotHard: 0.90,
		BoltEdge:  1.5,
		ScrewEdge: 2.5, ScrewEndPulled: 10, ScrewEndPressed: 5, ScrewAlong: 10,
		SplitFactor: 14,
		PegShear:    4810, PegPower: 0.926, WoodPower: 0.778,
		PegEdge: 2.5, PegEnd: 4, PegShare: 1.0 / 3,
		KnotKeeps: 0.5, TurnShare: 0.6, CordFull: 0.6, CordTwist: 0.6, Tenacity: 6.5, CordEdge: 2, WorkingEnd: 0.2,
	}
}
