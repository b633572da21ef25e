package schedule

import (
	"cmp"
	"fmt"
	"slices"
)

// Sweep walks over time and reports the first place where a plan cannot be: more of a resource
// in use than there is, a job before its time, a whole job over an evening. It shares nothing
// with what makes plans.
func (p *Problem) Sweep(starts []int) error {
	if len(starts) != len(p.Jobs) {
		return fmt.Errorf("%d starts for %d jobs", len(starts), len(p.Jobs))
	}
	type event struct{ at, resource, many int }
	var events []event
	for i, j := range p.Jobs {
		if starts[i] < 0 {
			return fmt.Errorf("job %d begins at %d", i, starts[i])
		}
		first, last := p.hour(starts[i]), p.hour(starts[i]+j.Length-1)
		if j.Whole && last-first >= max(j.Length, 1) {
			return fmt.Errorf("job %d is broken off in the evening", i)
		}
		for _, n := range j.Needs {
			if j.Length > 0 {
				events = append(events, event{starts[i], n.Of, n.Many}, event{starts[i] + j.Length, n.Of, -n.Many})
			}
		}
		for _, a := range j.After {
			before := starts[a.Job] + p.Jobs[a.Job].Length
			ready := p.hour(before) // of work that takes no time, and of none
			if p.Jobs[a.Job].Length > 0 {
				ready = p.hour(before-1) + 1
			}
			if starts[i] < before || first < ready+a.Wait {
				return fmt.Errorf("job %d begins before job %d is done and has waited", i, a.Job)
			}
		}
	}
	// What ends in a slot makes room for what begins there.
	slices.SortStableFunc(events, func(a, b event) int { return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.many, b.many)) })
	used := make([]int, len(p.Capacity))
	for _, e := range events {
		if used[e.resource] += e.many; used[e.resource] > p.Capacity[e.resource] {
			return fmt.Errorf("at %d %d of resource %d are in use, and there are %d", e.at, used[e.resource], e.resource, p.Capacity[e.resource])
		}
	}
	return nil
}

// hour is a slot of work by the clock, with every evening before it counted.
func (p *Problem) hour(slot int) int {
	at := slot
	if p.Day.Work > 0 {
		for evening := p.Day.Work; evening <= slot; evening += p.Day.Work {
			at += p.Day.Night
		}
	}
	return at
}
