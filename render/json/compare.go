package json

import (
	"ribwright/geometry/design"
	"ribwright/geometry/edition"
	"ribwright/geometry/marks"
	"ribwright/layout/reprint"
)

// Compare gathers what changed between two editions. Values are in the unit given, mm or
// deg; a mark that one edition alone has is null in the other.
//
// Errors: a design that has no fingerprint, which Check would have refused.
func Compare(c *edition.Comparison, behave []edition.Figure, sheets reprint.Set, paper string, cut []edition.Judged, kept *edition.Kept) (Object, error) {
	var heads [2]Object
	for i, e := range []*edition.Edition{c.Old, c.New} {
		head, err := headerOf(e.Design)
		if err != nil {
			return nil, err
		}
		heads[i] = append(head, field{"changed", e.Design.Changed})
	}
	out := Object{
		{"design", heads[1][:4]}, {"old", heads[0]}, {"new", heads[1]},
		{"keys", each(c.Keys, func(d design.Difference) Object { return Object{{"key", d.Key}, {"old", d.Old}, {"new", d.New}} })},
		{"changes", each(c.Changes, change)},
		{"same", c.Same},
		{"shifted", each(c.Shifted, func(s edition.Shifted) Object {
			return Object{{"part", s.Part}, {"along_mm", fixed(s.Along)}, {"up_mm", fixed(s.Up)}, {"turn_deg", deg(s.Turn)}, {"apart_mm", fixed(s.Apart)}}
		})},
		{"behavior", each(behave, func(f edition.Figure) Object {
			k, unit := 1.0, map[edition.Quantity]string{edition.Length: "mm", edition.Mass: "kg", edition.Angle: "deg", edition.Force: "n", edition.Time: "h"}[f.Quantity]
			if f.Quantity == edition.Angle {
				k = inDegrees(1)
			}
			return Object{{"about", f.About}, {"old", k * f.Old}, {"new", k * f.New}, {"unit", unit}, {"trend", f.Trend.String()}}
		})},
		{"paper", paper},
		{"pieces", Object{{"reprint", pieces(sheets, reprint.Reprint)}, {"serve", pieces(sheets, reprint.Serves)}, {"keep", pieces(sheets, reprint.Keep)}}},
		{"sheets", Object{{"reprint", list(sheets.Sheets(reprint.Reprint))}, {"serve", list(sheets.Sheets(reprint.Serves))}, {"keep", list(sheets.Sheets(reprint.Keep))}}},
		{"cut", each(cut, judged)},
	}
	if kept == nil {
		return append(out, field{"keeps", nil}), nil
	}
	head, err := headerOf(kept.Design)
	if err != nil {
		return nil, err
	}
	return append(out, field{"keeps", Object{{"design", append(head, field{"changed", kept.Design.Changed})},
		{"takes", each(kept.Takes, func(t edition.Taken) Object {
			return Object{{"key", t.Key}, {"old", t.Old}, {"new", t.New}, {"value", t.Value}, {"whole", t.Whole}, {"held_by", t.Held}}
		})},
		{"leaves", each(kept.Leaves, func(l edition.Left) Object {
			return Object{{"key", l.Key}, {"old", l.Old}, {"new", l.New}, {"held_by", l.Held}}
		})}}}), nil
}

// list is a list of numbers, empty where there are none.
func list(all []int) []int { return each(all, func(n int) int { return n }) }

func change(c edition.Change) Object {
	in := func(v float64) fixed {
		if c.Unit == marks.Radian {
			return deg(v)
		}
		return fixed(v)
	}
	unit := "mm"
	if c.Unit == marks.Radian {
		unit = "deg"
	}
	return Object{{"part", c.Part}, {"quantity", c.Quantity}, {"number", c.Number}, {"old", in(c.Old)}, {"new", in(c.New)}, {"unit", unit}, {"tolerance", in(c.Tolerance)}, {"matters", c.Matters()}}
}

func pieces(s reprint.Set, u reprint.Use) []Object {
	out := []Object{}
	for _, p := range s.All {
		if p.Use == u {
			out = append(out, Object{{"pattern", p.Pattern}, {"tile", p.Tile}, {"sheet", p.Sheet}})
		}
	}
	return out
}

func judged(j edition.Judged) Object {
	var instead any
	if j.Instead != "" {
		instead = j.Instead
	}
	return Object{{"part", j.Name}, {"verdict", j.Verdict.String()}, {"instead", instead},
		{"reasons", each(j.Reasons, func(r edition.Reason) Object {
			c := change(r.Change)
			off := fixed(r.Off)
			if r.Unit == marks.Radian {
				off = deg(r.Off)
			}
			return append(c, Object{{"off", off}, {"verdict", r.Verdict.String()}, {"do", r.Do}}...)
		})}}
}
