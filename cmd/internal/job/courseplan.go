package job

import (
	"encoding/csv"
	"fmt"
	"io"

	"ribwright/geometry/shop/course"
	"ribwright/geometry/wording"
)

// planGroup is the heading of what a course is planned for.
const planGroup = "The days of the course"

// usualTerms are as many days as it takes, from nine to five with an hour at noon.
var usualTerms = course.Terms{HoursADay: 7}

// terms are the fields of what a course has.
func terms(t *course.Terms) []Field {
	return grouped(planGroup, []Field{
		{Name: "days", Takes: "number", Says: "days of the course; without, as many as it takes", Value: whole(&t.Days, 1, 365)},
		{Name: "hours-a-day", Takes: "number", Says: "hours of work on each day", Value: whole(&t.HoursADay, 1, 12)},
		{Name: "benches", Takes: "number", Says: "benches in the shop, beside one boiler and one rip saw; without, one for each builder", Value: whole(&t.Benches, 1, 1000)},
	})
}

// PlanName is the file of the plan of a course.
const PlanName = courseStem + "plan.csv"

// planned is the plan as a table for a spreadsheet.
func planned(p *course.Plan) Output {
	says := fmt.Sprintf("what is done when by whom: %s of %s", wording.Counted(p.Takes, "day"), wording.Counted(p.HoursADay, "hour"))
	if !p.Fits() {
		says += fmt.Sprintf(", which are more than the %d given", p.Days)
	}
	return Output{PlanName, says, func(w io.Writer) error { return csv.NewWriter(w).WriteAll(planRows(p)) }}
}

// planRows have hours of work since a day began. A part that is prepared or left for later has
// no time, and the sum of its hours in place of one builder's.
func planRows(p *course.Plan) [][]string {
	out := [][]string{{"when", "day", "from_h", "to_day", "to_h", "builder", "work", "at", "hours"}}
	hours := func(h float64) string { return fmt.Sprintf("%.2f", h) }
	for _, k := range p.Prepared {
		out = append(out, []string{"before", "", "", "", "", "teacher", k.Name, "", fmt.Sprintf("%.1f", k.Practiced)})
	}
	for _, k := range p.Tasks {
		at := string(k.At)
		if k.At == course.Bench {
			at = "bench"
		}
		out = append(out, []string{"course", fmt.Sprint(k.From.Day), hours(k.From.Hour), fmt.Sprint(k.To.Day), hours(k.To.Hour), harmless(p.Builders[k.Builder].Name), k.Name, at, fmt.Sprintf("%.1f", k.Hours)})
	}
	for _, k := range p.Left {
		out = append(out, []string{"later", "", "", "", "", "all", k.Name, "", fmt.Sprintf("%.1f", k.Hours)})
	}
	return out
}
