package schedule

// Paths is when each job may begin with all hands and machines in plenty: at the soonest, and
// at the latest where the whole is not to take longer. A job whose two times are one lies on
// a critical path. End is when the last is done. The problem holds what Check asks.
func (p *Problem) Paths() (soonest, latest []int, end int) {
	soonest, latest = make([]int, len(p.Jobs)), make([]int, len(p.Jobs))
	turn := p.inTurn()
	end = newTable(p, true).place(turn, soonest, 0)
	whole := p.Day.rounded(end) // time that runs backward begins in an evening too
	newTable(p.backward(), true).place(reversed(turn), latest, whole-end)
	for i, j := range p.Jobs {
		latest[i] = whole - latest[i] - j.Length
	}
	return soonest, latest, end
}

// Bound is a time before which nobody has all done: the critical path, and what each resource
// has to bear once the first job that needs it can begin.
func (p *Problem) Bound() int {
	soonest, _, bound := p.Paths()
	for r, capacity := range p.Capacity {
		sum, first := 0, -1
		for i, j := range p.Jobs {
			for _, n := range j.Needs {
				if n.Of == r && n.Many*j.Length > 0 {
					sum += n.Many * j.Length
					if first < 0 || soonest[i] < first {
						first = soonest[i]
					}
				}
			}
		}
		if sum > 0 {
			bound = max(bound, first+(sum+capacity-1)/capacity)
		}
	}
	return bound
}

func reversed(all []int) []int {
	out := make([]int, len(all))
	for i, v := range all {
		out[len(all)-1-i] = v
	}
	return out
}
