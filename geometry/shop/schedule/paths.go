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

// Bound is a time before which nobody has all done: the critical path, and for each resource
// what it has to bear once the first job that needs it can begin, with the shortest way that
// is left behind one of those jobs. The problem holds what Check asks.
func (p *Problem) Bound() int {
	soonest, _, bound := p.Paths()
	turn := p.inTurn()
	starts := make([]int, len(p.Jobs))
	for r, capacity := range p.Capacity {
		last := p.borne(r, capacity, soonest)
		if last.end == 0 {
			continue
		}
		least := -1
		for _, i := range last.jobs {
			copy(starts, soonest)
			starts[i] = max(starts[i], last.end-p.Jobs[i].Length)
			if end := p.pushed(turn, starts); least < 0 || end < least {
				least = end
			}
		}
		bound = max(bound, least)
	}
	return bound
}

// load is the jobs that need a resource, and when it has borne them at the soonest.
type load struct {
	jobs []int
	end  int
}

func (p *Problem) borne(resource, capacity int, soonest []int) (out load) {
	sum, first := 0, 0
	for i, j := range p.Jobs {
		for _, n := range j.Needs {
			if n.Of == resource && n.Many*j.Length > 0 {
				if len(out.jobs) == 0 || soonest[i] < first {
					first = soonest[i]
				}
				sum += n.Many * j.Length
				out.jobs = append(out.jobs, i)
			}
		}
	}
	if sum > 0 {
		out.end = first + (sum+capacity-1)/capacity
	}
	return out
}

// pushed moves jobs behind those they wait for, with all hands and machines in plenty, and
// returns when the last is done.
func (p *Problem) pushed(turn, starts []int) (end int) {
	free := table{p: p, free: true}
	for _, i := range turn {
		starts[i] = free.room(&p.Jobs[i], free.ready(&p.Jobs[i], starts, starts[i]))
		end = max(end, starts[i]+p.Jobs[i].Length)
	}
	return end
}

func reversed(all []int) []int {
	out := make([]int, len(all))
	for i, v := range all {
		out[len(all)-1-i] = v
	}
	return out
}
