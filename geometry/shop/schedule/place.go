package schedule

// table places jobs one after the other, each at the first time that has room for it.
type table struct {
	p    *Problem
	free bool    // no job is in another's way
	used [][]int // of each resource, slot by slot
}

func newTable(p *Problem, free bool) *table {
	return &table{p: p, free: free, used: make([][]int, len(p.Capacity))}
}

// place fills in the starts of all jobs, none sooner than from, taken in an order in which
// each comes behind those it waits for. It returns when the last is done.
func (t *table) place(order, starts []int, from int) (end int) {
	for r := range t.used {
		clear(t.used[r])
	}
	for _, i := range order {
		j := &t.p.Jobs[i]
		starts[i] = t.room(j, t.ready(j, starts, from))
		end = max(end, starts[i]+j.Length)
	}
	return end
}

// ready is when what a job waits for has been done, no sooner than at.
func (t *table) ready(j *Job, starts []int, at int) int {
	for _, a := range j.After {
		at = max(at, t.p.Day.soonest(t.p.Day.done(starts[a.Job], t.p.Jobs[a.Job].Length)+a.Wait))
	}
	return at
}

// room finds the first time that has room for a job, and takes it.
func (t *table) room(j *Job, at int) int {
	for moved := true; moved; {
		moved = false
		if j.Whole {
			at = t.p.Day.whole(at, j.Length)
		}
		if t.free {
			return at
		}
		for _, n := range j.Needs {
			if past := t.past(n, at, j.Length); past > at {
				at, moved = past, true
			}
		}
	}
	for _, n := range j.Needs {
		for s := at; s < at+j.Length; s++ {
			t.used[n.Of][s] += n.Many
		}
	}
	return at
}

// past is the slot behind the last one that lacks what a job needs, else at.
func (t *table) past(n Need, at, length int) int {
	used := t.used[n.Of]
	for len(used) < at+length {
		used = append(used, 0)
	}
	t.used[n.Of] = used
	for s := at + length - 1; s >= at; s-- {
		if used[s]+n.Many > t.p.Capacity[n.Of] {
			return s + 1
		}
	}
	return at
}
