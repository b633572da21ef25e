package json

import (
	"strings"

	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/handwork"
)

// HowTrue is what errors of hand work do to a boat, to be added to a report of bending:
// the spread of what comes out, within which nine boats in ten lie, and all errors by
// their rank. An error's usual size is one standard deviation, in mm, percent or points of
// springback as its unit says; usual_moves_mm is what a first builder's does by itself to
// each measure where it does most, and moves_mm, in the order of spread, within what it
// moves nine boats in ten.
// The free width for a point of springback is that of the rib that is bent first.
func HowTrue(r *handwork.Report, b *bend.Report) Object {
	return Object{{"handwork", Object{
		{"spread", each(r.Outcomes, func(o handwork.Outcome) Object {
			return Object{{"outcome", o.Name}, {"measure", measureKey(o.Of)}, {"first_mm", fixed(o.Spread.First)}, {"practiced_mm", fixed(o.Spread.Practiced)}, {"matters_mm", fixed(o.Matters)}}
		})},
		{"errors", each(r.Errors, func(e handwork.Error) Object {
			from := none
			if e.Placed {
				from = e.From
			}
			return Object{
				{"rank", e.Rank}, {"error", e.Name}, {"from_midship_mm", fixed(from)}, {"unit", e.Unit}, {"each", e.Each},
				{"usual_first", fixed(e.Usual.First)}, {"usual_practiced", fixed(e.Usual.Practiced)}, {"matters", e.Matters()},
				{"hits", r.Outcomes[e.Hits].Name}, {"share_percent", fixed(100 * e.Share)},
				{"usual_moves_mm", Object(each(r.Measures(), func(m handwork.Measure) field { return field{measureKey(m), fixed(r.Moved(e, m))} }))},
				{"moves_mm", each(e.Moves, func(s handwork.Spread) Object {
					return Object{{"first", fixed(s.First)}, {"practiced", fixed(s.Practiced)}}
				})},
			}
		})},
		{"free_width_mm_per_point", fixed(b.Ribs[b.TestRib()].Point)},
	}}}
}

// measureKey is a measure as a key.
func measureKey(m handwork.Measure) string { return strings.ToLower(string(m)) }
