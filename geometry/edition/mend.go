package edition

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/marks"
)

// How far a slot may be moved or filled, mm, before the wood round it is worth no more:
// a sliver as thick is still held by glue on its whole face. Our own choice.
const (
	slotReach = 6.0
	sliver    = 2.0
)

// mend says what can be done to wood where a mark moved by more than its tolerance, by
// as much on the piece.
func mend(kind rule, d Change, by float64) (Verdict, string) {
	much := inUnit(math.Abs(by), d.Unit)
	more := by > 0
	switch kind {
	case pencil:
		return Rework, "mark it anew, " + much + way(d.Name, by)
	case endPlace:
		if math.Abs(d.New) < math.Abs(d.Old) && d.Old*d.New > 0 {
			return Rework, "cut " + much + " off"
		}
		return Again, much + " too short"
	case long:
		if more {
			return Again, much + " too short"
		}
		return Rework, "cut " + much + " off"
	case thick:
		if more {
			return Again, much + " too thin"
		}
		return Rework, "plane " + much + " off"
	case slotSize:
		switch {
		case more:
			return Rework, "cut the slot " + much + " larger"
		case -by <= sliver:
			return Rework, "glue a sliver of " + much + " in"
		}
		return Again, "the slot is " + much + " too large"
	case slotAt:
		if math.Abs(by) <= slotReach {
			return Rework, fmt.Sprintf("open the slot by %s%s and glue a block in behind", much, way(d.Name, by))
		}
		return Again, "the slot is " + much + " from its place"
	case slotLean:
		return Rework, "pare the slot to its new lean, " + much + " other, and wedge it"
	case holeAt:
		return Rework, "plug the hole and bore it " + much + way(d.Name, by)
	case holeSize:
		if more {
			return Rework, "bore it " + much + " larger"
		}
		return Rework, "plug the hole and bore it " + much + " smaller"
	case bent:
		return Rework, "steam it again and bend it to the new marks"
	case curved:
		return Rework, "spring it to the new beams; cross pieces then carry what its glued curve lacks"
	case bevel:
		return Rework, "trim it to the new bevel, " + much + " other"
	case cloth:
		if more {
			return Again, much + " too little"
		}
		return Rework, "cut " + much + " off"
	}
	return Again, much + " off, and it is glued"
}

// way is which way a place moved along the boat, "" for one that is measured otherwise.
func way(n marks.Name, by float64) string {
	switch {
	case strings.HasSuffix(n.Quantity, "from midship"):
		if by > 0 {
			return " forward"
		}
		return " aft"
	case strings.HasSuffix(n.Quantity, " height"):
		if by > 0 {
			return " up"
		}
		return " down"
	case n.Quantity == "stringer mark":
		if by > 0 {
			return " outward"
		}
		return " inward"
	}
	return ""
}
