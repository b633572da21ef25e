// Package schedule finds when jobs are done that wait for one another and share hands and
// machines, so that all are done soon. Times are whole slots of work counted from the first
// morning; waits are slots of the clock and go on by night.
package schedule

import "fmt"

// Problem is what is to be done, and with how much of what.
type Problem struct {
	Jobs     []Job
	Capacity []int // of each resource, at any one time
	Day      Day
}

// Job is one piece of work.
type Job struct {
	Length int     // slots of work, 0 for a mark in the course of things
	Whole  bool    // it is not broken off in the evening: it begins on a day that has room for it
	Needs  []Need  // what it holds as long as it is worked on
	After  []After // what is done before
}

// Need is so many of a resource.
type Need struct{ Of, Many int }

// After is a job that is done before, and for how many slots of the clock its work then waits.
type After struct{ Job, Wait int }

// Check reports what cannot be done however long it takes: a job that waits for itself or
// needs more than there is, a whole one that is longer than a day, a number out of range.
func (p *Problem) Check() error {
	if p.Day.Work < 0 || p.Day.Night < 0 || p.Day.Work == 0 && p.Day.Night > 0 {
		return fmt.Errorf("a day of %d slots and a night of %d; accepted: 1 slot or more by day", p.Day.Work, p.Day.Night)
	}
	for i, j := range p.Jobs {
		if j.Length < 0 {
			return fmt.Errorf("job %d takes %d slots; accepted: 0 or more", i, j.Length)
		}
		if j.Whole && p.Day.Work > 0 && j.Length > p.Day.Work {
			return fmt.Errorf("job %d takes %d slots and is not broken off; accepted: a day of %d or less", i, j.Length, p.Day.Work)
		}
		for _, n := range j.Needs {
			if n.Of < 0 || n.Of >= len(p.Capacity) || n.Many < 0 || n.Many > p.Capacity[n.Of] {
				return fmt.Errorf("job %d needs %d of resource %d; accepted: what there is", i, n.Many, n.Of)
			}
		}
		for _, a := range j.After {
			if a.Job < 0 || a.Job >= len(p.Jobs) || a.Wait < 0 {
				return fmt.Errorf("job %d comes %d slots after job %d; accepted: another job, 0 slots or more", i, a.Wait, a.Job)
			}
		}
	}
	if len(p.inTurn()) < len(p.Jobs) {
		return fmt.Errorf("jobs wait for one another in a ring")
	}
	return nil
}

// inTurn lists the jobs so that each comes behind those it waits for; those of a ring are
// left out.
func (p *Problem) inTurn() []int {
	next, waits := make([][]int, len(p.Jobs)), make([]int, len(p.Jobs))
	var out []int
	for i, j := range p.Jobs {
		for _, a := range j.After {
			next[a.Job] = append(next[a.Job], i)
		}
		if waits[i] = len(j.After); waits[i] == 0 {
			out = append(out, i)
		}
	}
	for k := 0; k < len(out); k++ {
		for _, i := range next[out[k]] {
			if waits[i]--; waits[i] == 0 {
				out = append(out, i)
			}
		}
	}
	return out
}

// backward is the same problem with time running the other way.
func (p *Problem) backward() *Problem {
	out := &Problem{Jobs: make([]Job, len(p.Jobs)), Capacity: p.Capacity, Day: p.Day}
	for i, j := range p.Jobs {
		b := &out.Jobs[i]
		b.Length, b.Whole, b.Needs = j.Length, j.Whole, j.Needs
		for _, a := range j.After {
			out.Jobs[a.Job].After = append(out.Jobs[a.Job].After, After{i, a.Wait})
		}
	}
	return out
}
