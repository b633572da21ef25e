package edition

import (
	"strings"

	"ribwright/geometry/marks"
)

// rule says what a mark is on the wood, and so what can be done where it moved.
type rule int

const (
	setUp    rule = iota // of the boat on its trestles: no wood is cut by it
	pencil               // a line on the wood, drawn anew at no cost
	endPlace             // an end, by its place: a length can be cut off and not put on
	long                 // a length, as an end
	thick                // a thickness or width: more can be planed off
	slotSize             // of a slot: it can be opened
	slotAt               // where a slot lies
	slotLean             // which way a slot leans
	holeAt               // where a hole lies
	holeSize             // a hole's diameter
	bent                 // a bend: a rib can be steamed again
	bevel                // an angle that is planed or sawn at an end
	glued                // a block or a ply that is glued in
	scarf                // where plies are joined
	curved               // the curve that plies were glued to
	cloth                // cut over size
	outline              // a sawn outline
)

// rules are what marks are, by the beginning of their part and of their quantity; the
// first that holds counts. What no row names is taken as glued: it cannot be changed.
var rules = []struct {
	part, quantity string
	rule
}{
	{"", Outline, outline},
	{"gunwale", "stock length", long}, {"gunwale", "width", thick}, {"gunwale", "height", thick}, {"gunwale", "ply thickness", glued},
	{"gunwale", "form radius", curved}, {"gunwale", "tilt", setUp}, {"gunwale", "aft end longer", bevel}, {"gunwale", "fore end longer", bevel},
	{"gunwale", "aft end cut", bevel}, {"gunwale", "fore end cut", bevel}, {"gunwale", "aft end", endPlace}, {"gunwale", "fore end", endPlace},
	{"gunwale", "bolt of", holeAt}, {"gunwale", "scarf", scarf}, {"gunwale", "no scarf", setUp}, {"gunwale", "edge-set made", glued}, {"gunwale", "edge-set", setUp},
	{"mortise", "station", setUp}, {"mortise", "from midship", slotAt}, {"mortise", "bevel", slotLean}, {"mortise", "wall", setUp}, {"mortise", "to ", setUp},
	{"mortise", "head taper", setUp}, {"mortise", "", slotSize},
	{"block", "", glued},
	{"bow stem", "screw", holeAt}, {"stern stem", "screw", holeAt}, {"bow stem", "gunwale hole from its end", setUp}, {"stern stem", "gunwale hole from its end", setUp},
	{"bow stem", "gunwale hole up", setUp}, {"stern stem", "gunwale hole up", setUp}, {"bow stem", "thickness", thick}, {"stern stem", "thickness", thick},
	{"bow stem", "stringer landing", pencil}, {"stern stem", "stringer landing", pencil},
	{"bow stem", "stringer hole diameter", holeSize}, {"stern stem", "stringer hole diameter", holeSize}, {"bow stem", "gunwale hole diameter", holeSize}, {"stern stem", "gunwale hole diameter", holeSize},
	{"bow stem", "", holeAt}, {"stern stem", "", holeAt},
	{"bow breasthook", "thickness", thick}, {"stern breasthook", "thickness", thick}, {"bow breasthook", "bevel", bevel}, {"stern breasthook", "bevel", bevel},
	{"bow breasthook", "slope", setUp}, {"stern breasthook", "slope", setUp}, {"bow breasthook", "peg diameter", holeSize}, {"stern breasthook", "peg diameter", holeSize},
	{"bow breasthook", "", holeAt}, {"stern breasthook", "", holeAt},
	{"thwart", "station", setUp}, {"thwart", "between", setUp}, {"thwart", "thickness", thick}, {"thwart", "length", long}, {"thwart", "end cut", bevel},
	{"thwart", "bolts lean", bevel}, {"thwart", "hole diameter", holeSize}, {"thwart", "hole", holeAt},
	{"seat", "station", setUp}, {"seat", "top", setUp}, {"seat", "front edge", setUp}, {"seat", "clear", setUp}, {"seat", "long", long}, {"seat", "wide", long},
	{"seat", "rail width", thick}, {"seat", "rail depth", thick}, {"seat", "spreader", long},
	{"seat", "front rail station", setUp}, {"seat", "front rail top", setUp}, {"seat", "after rail station", setUp}, {"seat", "after rail top", setUp},
	{"seat", "front rail length", long}, {"seat", "after rail length", long}, {"seat", "front hanger length", long}, {"seat", "after hanger length", long},
	{"seat", "front hanger width", long}, {"seat", "after hanger width", long}, {"seat", "front hanger lean", slotLean}, {"seat", "after hanger lean", slotLean},
	{"seat", "front hanger skew", slotLean}, {"seat", "after hanger skew", slotLean}, {"seat", "front hanger block", thick}, {"seat", "after hanger block", thick},
	{"seat", "front bolts", holeAt}, {"seat", "after bolts", holeAt},
	{"seat", "front hanger", slotAt}, {"seat", "after hanger", slotAt},
	{"rib", "station", setUp}, {"rib", "keel height", setUp}, {"rib", "half-breadth", bent}, {"rib", "depth", bent}, {"rib", "width", thick}, {"rib", "thickness", thick},
	{"rib", "length", long}, {"rib", "correction", bent}, {"rib", "tenon", long}, {"rib", "blank", long}, {"rib", "arc", bent}, {"rib", "bend mark", bent}, {"rib", "stringer mark", pencil},
	{"rib", "form radius", bent}, {"rib", "hot width", bent}, {"rib", "relax to", bent}, {"rib", "flare pushed in", setUp}, {"rib", "off pushed in", setUp}, {"rib", "least radius pushed in", setUp},
	{"keel strip", "length", long}, {"keel strip", "screw", holeAt}, {"keel strip", "", thick},
	{"outwale", "length", long}, {"outwale", "screw", holeAt}, {"outwale", "", thick},
	{"keel", "middle", pencil}, {"keel", "", endPlace}, {"stringer", "middle", pencil}, {"stringer", "", endPlace},
	{"floor", "aft end", endPlace}, {"floor", "fore end", endPlace}, {"floor", "width", thick}, {"floor", "thickness", thick}, {"floor", "slat", pencil},
	{"footbrace", "board", long}, {"footbrace", "rail from", pencil}, {"footbrace", "rail", long}, {"footbrace", "after face", setUp},
	{"backrest", "board", long}, {"backrest", "", setUp},
	{"skin", "", cloth}, {"painters", "", cloth},
}

func ruleOf(n marks.Name) rule {
	for _, r := range rules {
		if strings.HasPrefix(n.Part, r.part) && strings.HasPrefix(n.Quantity, r.quantity) {
			return r.rule
		}
	}
	return glued
}
