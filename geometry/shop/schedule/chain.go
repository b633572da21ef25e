package schedule

import "slices"

// Link is a job of the chain that holds a plan up, and what it waited for: the job of the
// link before by its order, or because that one held the resource; nothing in the first.
type Link struct {
	Job      int
	Resource int // -1 where it comes after the job before
}

// Chain lists the jobs that make a plan as long as it is, from the first to the last: each
// begins when the one before lets it. Where several do, the one that is waited for by order.
func (p *Problem) Chain(starts []int) (out []Link) {
	if len(p.Jobs) == 0 {
		return nil
	}
	last := 0
	for i, j := range p.Jobs {
		if starts[i]+j.Length > starts[last]+p.Jobs[last].Length {
			last = i
		}
	}
	for at := last; at >= 0; {
		before, by := p.holds(starts, at)
		out = append(out, Link{at, by})
		at = before
	}
	out[len(out)-1].Resource = -1
	slices.Reverse(out)
	return out
}

// holds finds the job that a job waits for longest, and by which resource; before is -1 where
// it could begin on the first morning.
func (p *Problem) holds(starts []int, i int) (before, by int) {
	before, by = -1, -1
	ready := 0
	for _, a := range p.Jobs[i].After {
		if t := p.Day.soonest(p.Day.done(starts[a.Job], p.Jobs[a.Job].Length) + a.Wait); t > ready || t == ready && before < 0 && t > 0 {
			before, ready = a.Job, t
		}
	}
	for k, j := range p.Jobs {
		end := starts[k] + j.Length
		if k == i || j.Length == 0 || end > starts[i] || end <= ready {
			continue
		}
		for _, n := range p.Jobs[i].Needs {
			if slices.ContainsFunc(j.Needs, func(m Need) bool { return m.Of == n.Of }) && p.busy(starts, n, end-1) {
				before, by, ready = k, n.Of, end
				break
			}
		}
	}
	return before, by
}

// busy reports whether a need has no room in a slot.
func (p *Problem) busy(starts []int, n Need, slot int) bool {
	used := n.Many
	for i, j := range p.Jobs {
		for _, m := range j.Needs {
			if m.Of == n.Of && starts[i] <= slot && slot < starts[i]+j.Length {
				used += m.Many
			}
		}
	}
	return used > p.Capacity[n.Of]
}
