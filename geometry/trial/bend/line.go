package bend

import (
	"fmt"

	"ribwright/geometry/finding"
)

// InALine says in a line whether the wood takes every bend that is asked of it and bears
// what it carries: with the part that is nearest to its limit, or with the worst that does
// not and what would cure it. It passes where every part does.
func (r *Report) InALine() finding.Finding {
	out := finding.Finding{About: "wood", Verdict: finding.Holds}
	var worst, nearest *finding.Finding
	missed := 0
	for i := range r.Findings {
		f := &r.Findings[i]
		if !f.Verdict.Passes() {
			missed++
			if worst == nil || f.Verdict > worst.Verdict || f.Verdict == worst.Verdict && f.Margin() < worst.Margin() {
				worst = f
			}
		} else if f.IsSet() && (nearest == nil || f.Margin() < nearest.Margin()) {
			nearest = f
		}
	}
	if worst == nil {
		out.Text = "every bend can be made and every part bears its load"
		if nearest != nil {
			out.Standing = nearest.Standing
			out.Text += fmt.Sprintf("; nearest to its limit: %s (%s, %.0f %% to spare)", nearest.About, nearest.Verdict, 100*nearest.Margin())
		}
		return out
	}
	out.Verdict, out.Standing, out.Measure, out.Cure, out.Mend = worst.Verdict, worst.Standing, worst.Measure, worst.Cure, worst.Mend
	out.Text = "it does not bend as drawn: " + worst.String()
	if missed > 1 {
		out.Text += fmt.Sprintf(" (and %d more)", missed-1)
	}
	return out
}
