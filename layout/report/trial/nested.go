package trial

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/sizing/nested"
	"ribwright/geometry/trial/stow"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Nested tells how a sized boat and the other it was asked to nest with lie in one another,
// what comes out of the outer one, and what was changed for it.
func Nested(r *nested.Result) []report.Block {
	p := r.Pair
	names := p.Upper.Title + " inside " + p.Lower.Title
	if !p.Nests {
		return []report.Block{report.Section("In one another"), report.Say("%s: it does NOT go in with %.0f mm of room; the check that does not hold, at the top of this page, says by how much not and what would cure it.", names, r.Room)}
	}
	words := []string{fmt.Sprintf("%s: it goes in, on pads of %.0f mm, with that much room or more all round", names, r.Room)}
	if c := p.Rooms[stow.Sides]; c.Meets() {
		words = append(words, fmt.Sprintf("the sides have least, %.0f mm, where its %s passes the %s at %.0f mm from midship", c.Room, c.Upper.Name, c.Lower.Name, math.Round(c.At.X)+0))
	}
	if p.Place.Turned {
		words = append(words, "turned end for end")
	}
	items := []string{strings.Join(words, "; ") + "."}
	if len(p.Out) > 0 {
		items = append(items, fmt.Sprintf("Take out of %s: %s. Put a stick of a thwart's length across its gunwales meanwhile, or they spring.", p.Lower.Title, strings.Join(p.TakenOut(), ", ")))
	}
	if !r.Searched {
		items = append(items, changes(r))
	}
	return []report.Block{report.Section("In one another"), report.List{Items: items}}
}

// changes says what was moved from the people's own boat.
func changes(r *nested.Result) string {
	if len(r.Changes) == 0 {
		return "Nothing was changed for that: it is the boat that these people get anyway."
	}
	return "For that it has " + wording.Joined(r.Changes, " and ", func(c nested.Change) string {
		return fmt.Sprintf("%s (%.0f mm instead of %.0f mm)", c.String(), c.To, c.From)
	}) + ", and its other measures follow; all that these people's own boat passes holds still."
}
