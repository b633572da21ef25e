package json

import (
	"ribwright/geometry/learn"
	"ribwright/geometry/learn/pool"
	"ribwright/geometry/sizing"
)

// Learn gathers what builds say. Springback is in shares, deeper in mm; weight and hours are
// natural logarithms of what was found over what was worked out, and so are their spreads.
// Least and most hold nine in ten, null where too few builds say so. before and after are
// how the family does on many, null where nobody asked.
func Learn(r *learn.Report, all []learn.Proposal, before, after *sizing.Population) Object {
	out := Object{{"builds", len(r.Builds)},
		{"proposed", each(all, func(p learn.Proposal) Object {
			return Object{{"file", p.Home.String()}, {"name", p.Name}, {"line", p.Line}, {"why", p.Why}, {"evidence", p.Evidence}}
		})},
		{"quantities", each(r.Quantities, learned)}}
	if b := r.Breaks; b == nil {
		out = append(out, field{"breakage", nil})
	} else {
		out = append(out, field{"breakage", Object{{"bent", b.Bent}, {"broken", b.Broken}, {"builds", b.Builds}, {"radius_over_thickness", interval(b.Limit)},
			{"before", b.Before}, {"before_builds", b.Worth}, {"rows", each(b.Rows, func(r learn.BreakRow) Object {
				return Object{{"from", r.From}, {"to", r.To}, {"bent", r.Bent}, {"broken", r.Broken}, {"expected", r.Now}}
			})}}})
	}
	if before == nil || after == nil {
		return append(out, field{"population", nil})
	}
	return append(out, field{"population", Object{{"tried", before.Tried}, {"passed_before", before.Passed}, {"passed_after", after.Passed}}})
}

func interval(i pool.Interval) Object {
	return Object{{"is", i.Is}, {"least", i.Low}, {"most", i.High}}
}

func learned(q *learn.Quantity) Object {
	return Object{{"quantity", q.What.String()}, {"units", q.Units}, {"between_units", q.Unit}, {"within_units", q.Chance},
		{"kinds", each(q.Kinds, func(k learn.Kind) Object {
			return Object{{"name", k.Name}, {"units", k.Units}, {"readings", k.Readings}, {"says", interval(k.Says)}, {"before", k.Before}, {"before_builds", k.Worth}, {"contradicted", k.Doubt}, {"now", k.Now}}
		})},
		{"sides", each(q.Sides, func(s learn.Side) Object {
			return Object{{"name", s.Name}, {"units", s.Units}, {"readings", s.Readings}, {"says", interval(s.Says)}}
		})},
		{"held_out", Object{{"units", q.Left.Units}, {"rms", q.Left.RMS}, {"within_nine_in_ten", q.Left.Held}, {"of", q.Left.Of}}},
		{"odd", each(q.Odd, func(o learn.Odd) Object {
			return Object{{"build", o.Build.Name}, {"line", o.Line.At}, {"of", o.Line.Of}, {"found", o.Found}, {"others_say", o.Guess}, {"deviations", o.Z}, {"looks_like", o.Slip}}
		})},
		{"unlike", each(q.Unlike, func(u learn.Unlike) Object {
			return Object{{"build", u.Build.Name}, {"off", u.Error}, {"deviations", u.Z}}
		})}}
}
