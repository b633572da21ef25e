package schedule

import (
	"cmp"
	"slices"
)

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
	free, starts := newSearch(p), slices.Clone(soonest)
	for r, capacity := range p.Capacity {
		last := p.borne(r, capacity, soonest)
		if last.end == 0 {
			continue
		}
		least := -1
		for _, i := range last.jobs {
			if end := free.pushed(i, last.end-p.Jobs[i].Length, starts); least < 0 || end < least {
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

// pushed is when the last of a job and those behind it is done where it begins no sooner than
// at, with all hands and machines in plenty. The starts stay as they were.
func (s *search) pushed(i, at int, starts []int) (end int) {
	all, free := s.behind(i), table{p: s.p, free: true}
	var were []int
	for _, k := range all {
		were = append(were, starts[k])
		from := starts[k]
		if k == i {
			from = max(from, at)
		}
		starts[k] = free.room(&s.p.Jobs[k], free.ready(&s.p.Jobs[k], starts, from))
		end = max(end, starts[k]+s.p.Jobs[k].Length)
	}
	for n, k := range all {
		starts[k] = were[n]
	}
	return end
}

// behind lists a job and all that wait for it, in turn.
func (s *search) behind(i int) []int {
	all, seen := []int{i}, map[int]bool{i: true}
	for n := 0; n < len(all); n++ {
		for _, a := range s.back.p.Jobs[all[n]].After {
			if !seen[a.Job] {
				seen[a.Job], all = true, append(all, a.Job)
			}
		}
	}
	slices.SortFunc(all, func(a, b int) int { return cmp.Compare(s.place[a], s.place[b]) })
	return all
}

func reversed(all []int) []int {
	out := slices.Clone(all)
	slices.Reverse(out)
	return out
}
