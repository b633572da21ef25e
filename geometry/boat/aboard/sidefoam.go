package aboard

import (
	"strings"

	"ribwright/geometry/boat/flotation"
)

// SideFoam returns the foam that lies along the port side between two stations, which is as
// that along the other; false for none.
func (b Boat) SideFoam(from, to float64) (flotation.Bag, bool) {
	for _, f := range b.Flotation.Bags {
		if f.Foam && strings.HasPrefix(f.Where, "port") && f.Aft < to && f.Fore > from {
			return f, true
		}
	}
	return flotation.Bag{}, false
}
