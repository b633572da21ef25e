package json

import (
	"fmt"

	"ribwright/geometry/boat/inside"
)

// insideOf tells what is fitted for people: floor slats, footbraces, backrests. Lists are
// empty where the boat has none.
func insideOf(l *lookup, o inside.Fit) Object {
	return Object{
		{"species", o.Wood},
		{"floors", upTo(len(o.Floors), func(i int) Object {
			p, fl := l.part(fmt.Sprintf("floor %d", i+1)), o.Floors[i]
			return Object{{"slats", fl.Count}, {"ends_mm", []any{p.of("aft end"), p.of("fore end")}}, {"width_mm", p.of("width")}, {"thickness_mm", p.of("thickness")},
				{"from_middle_line_mm", p.all("slat from the middle line", fl.Count)}, {"ribs", fl.Ribs}}
		})},
		{"footbraces", upTo(len(o.Braces), func(i int) Object {
			p, b := l.part(fmt.Sprintf("footbrace %d", i+1)), o.Braces[i]
			return Object{{"person", b.Who}, {"leg_mm", fixed(b.Leg)}, {"station_mm", p.of("after face")}, {"adjusts_mm", fixed(inside.Step * (inside.Holes - 1) / 2)}, {"step_mm", fixed(inside.Step)},
				{"board_mm", p.of("board")}, {"rail_mm", p.of("rail")}, {"rail_from_middle_line_mm", p.of("rail from the middle line")}}
		})},
		{"backrests", upTo(len(o.Backs), func(i int) Object {
			p, b := l.part(fmt.Sprintf("backrest %d", i+1)), o.Backs[i]
			return Object{{"person", b.Who}, {"station_mm", p.of("fore face")}, {"over_floor_mm", p.of("lower edge over the floor")}, {"board_mm", p.of("board")}}
		})},
	}
}
