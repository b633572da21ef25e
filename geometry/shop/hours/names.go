package hours

// Operations that others look up by their names. Those of kits stand behind the kit's name
// and a colon.
const (
	PlaneSticks = "plane and ease the edges"
	Scarf       = "scarf and glue"
	Staves      = "joint and glue staves of wide parts"

	Sheer      = "saw and fair the sheer's curve"
	GluePlies  = "glue plies of a pair of gunwales"
	Gauges     = "saw and wax gauges for the gaps"
	TrimBlocks = "trim blocks to their length"
	GlueBlocks = "set and glue blocks between gauges"
	PlanePlies = "plane the middle plies flush"

	RigBox     = "rig the steam box"
	ReadyRibs  = "mark, trim and ease ribs"
	SawForms   = "saw, drill and fair forms"
	FitRibs    = "fit, true by eye and peg"
	TaperHeads = "taper heads that lean"

	Battens     = "fit keel and stringers"
	CrossPieces = "make and fit cross pieces"
	OilWood     = "oil"

	GlueLayers  = "glue layers and staves"
	ShapeBoards = "shape and drill boards"
	PlaneSpars  = "plane spars round"
	PlaneBeams  = "plane beams, round their edges"

	// FirstWater is the operation after which the boat is ready.
	FirstWater = "weigh, float, load and swamp the boat"
)
