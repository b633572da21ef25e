package trial

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial/yardstick"
	"ribwright/geometry/water/float"
	"ribwright/layout/report"
)

// Standing lays a boat with so many people aboard between known boats, the steadiest
// first.
func Standing(s float.Standing, people int) report.Table {
	with := "one aboard"
	if people > 1 {
		with = "two aboard"
	}
	t := report.Titled("How it stands, beside known boats with "+with).Words("Boat").
		Numbers("Greatest righting lever, mm", "Greatest righting moment, N m", "Water comes in, or it goes over", "Weight held aside, mm")
	own := func() {
		held := "-"
		if s.Held > 0 {
			held = measure.MM(s.Held, 0)
		}
		t.Row("This boat", measure.MM(s.Most, 0), measure.MM(s.Moment/1000, 0), ends(s), held)
	}
	told := false
	for _, b := range yardstick.For(people) {
		if !told && s.Most >= b.Lever {
			own()
			told = true
		}
		t.Row(b.Name, measure.MM(b.Lever, 0), measure.MM(b.Moment, 0), fmt.Sprintf("in at %.0f deg", b.Flooding), measure.MM(b.Held, 0))
	}
	if !told {
		own()
	}
	return t.Noted("The greatest lever and moment are what the boat can set against being rolled. Weight held aside: how far the middle of all people's weight may be moved off the middle line at once and held. " +
		"The old canoes were floated by their measured lines with people who kneel or sit low; more is steadier, and none of them goes over by itself before water comes in.")
}

// ends says at what heel the boat no longer rights itself.
func ends(s float.Standing) string {
	switch {
	case !math.IsNaN(s.GoesOver):
		return fmt.Sprintf("over at %.0f deg", s.GoesOver*180/math.Pi)
	case !math.IsNaN(s.Flooding):
		return fmt.Sprintf("in at %.0f deg", s.Flooding*180/math.Pi)
	}
	return "neither"
}
