package course

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"ribwright/geometry/shop/schedule"
)

// Terms are the days that a course has and what stands in its shop, beside one boiler and one
// rip saw.
type Terms struct {
	Days      int // 0 for as many as it takes
	HoursADay int // of work
	Benches   int // 0 for one each
}

// Builder is one of the course, with the work on the boat.
type Builder struct {
	Name string
	Work []Operation
}

// Task is an operation of a builder with its time.
type Task struct {
	Builder int
	Operation
	From, To Time
}

// Time is a quarter of an hour of a course.
type Time struct {
	Day  int     // from 1
	Hour float64 // of work since the day began
}

// Plan is what is done when.
type Plan struct {
	Terms          // with the benches there are
	Builders       []Builder
	Tasks          []Task // by their beginnings
	Takes          int    // days
	Fewest         int    // days: no plan of the same work takes less
	AsItIs         int    // days that it takes with nothing prepared and nothing left for later
	Prepared, Left []Part // where the days do not reach
	Held           []Held // what makes it as long as it is, from the first to the last
	Machines       []Use
}

// Fits reports whether the days given are enough.
func (p *Plan) Fits() bool { return p.Days == 0 || p.Takes <= p.Days }

// Part is an operation of all builders that is taken out of the course.
type Part struct {
	Name      string
	Hours     float64 // by the builders
	Practiced float64 // by an experienced woodworker
}

// Held is a task, and what it waited for: Machine or Hands where those were taken, else for
// the one before it.
type Held struct {
	Task
	For string
}

// Hands is what Held says of a task that waited for its own builder.
const Hands = "hands"

// Use is how long a machine, or all benches together, is in use and how long it could be, hours.
type Use struct {
	Of        string
	Count     int
	Used, Can float64
}

const (
	quarters = 4 // slots of an hour
	effort   = 60000
	mostTry  = 400
)

// shop is a course as a problem: for each task in it a job.
type shop struct {
	schedule.Problem
	tasks []Task
}

// Make plans a course. The boiler and the saw serve one at a time, a builder does one thing at
// a time, and all other work wants a bench. Where the days do not reach it takes parts out of
// the course, as few as do.
func Make(all []Builder, t Terms) (*Plan, error) {
	if t.Benches == 0 {
		t.Benches = len(all)
	}
	out := newSet()
	s := shopOf(all, t, out)
	found, err := s.plan(t)
	if err != nil {
		return nil, err
	}
	asItIs := s.days(found.End)
	if t.Days > 0 && asItIs > t.Days {
		if out, err = reach(all, t); err != nil {
			return nil, err
		}
		s = shopOf(all, t, out)
		if found, err = s.plan(t); err != nil {
			return nil, err
		}
	}
	p := &Plan{Terms: t, Builders: all, AsItIs: asItIs, Takes: s.days(found.End), Fewest: s.days(found.Bound)}
	p.Prepared, p.Left = out.parts(all)
	s.fill(p, found.Starts)
	return p, nil
}

// shopOf is the course without what is taken out of it.
func shopOf(all []Builder, t Terms, out set) shop {
	benches := len(all)
	machines := map[Machine]int{Bench: benches, Saw: benches + 1, Boiler: benches + 2}
	s := shop{Problem: schedule.Problem{Day: schedule.Day{Work: t.HoursADay * quarters, Night: (24 - t.HoursADay) * quarters}}}
	for range all {
		s.Capacity = append(s.Capacity, 1)
	}
	s.Capacity = append(s.Capacity, t.Benches, 1, 1)
	for b, builder := range all {
		jobs := map[string]int{}
		for _, o := range builder.Work {
			if out.has(o.Name) {
				continue
			}
			long := max(1, int(math.Round(o.Hours*quarters)))
			j := schedule.Job{Length: long, Whole: o.Whole && long <= s.Day.Work, Needs: []schedule.Need{{Of: b, Many: 1}, {Of: machines[o.At], Many: 1}}}
			for _, a := range o.After {
				if before, there := jobs[a.Name]; there {
					j.After = append(j.After, schedule.After{Job: before, Wait: int(math.Ceil(a.Hours * quarters))})
				}
			}
			jobs[o.Name] = len(s.Jobs)
			s.Jobs, s.tasks = append(s.Jobs, j), append(s.tasks, Task{Builder: b, Operation: o})
		}
	}
	return s
}

// plan searches for a plan that takes no day more than it must.
func (s *shop) plan(t Terms) (*schedule.Plan, error) {
	enough := t.Days * s.Day.Work
	if bound := s.Bound(); bound > enough {
		enough = s.days(bound) * s.Day.Work
	}
	return s.Find(min(mostTry, effort/max(1, len(s.Jobs))), enough)
}

// days is how many days begin before an end.
func (s *shop) days(end int) int { return (end + s.Day.Work - 1) / s.Day.Work }

// fill tells the plan in days and hours.
func (s *shop) fill(p *Plan, starts []int) {
	at := func(slot int) Time {
		day, in := s.Day.Of(slot)
		return Time{day + 1, float64(in) / quarters}
	}
	for i, j := range s.Jobs {
		t := &s.tasks[i]
		t.From, t.To = at(starts[i]), at(starts[i]+j.Length-1)
		t.To.Hour += 1.0 / quarters
	}
	for _, l := range s.Chain(starts) {
		h := Held{Task: s.tasks[l.Job]}
		switch r := l.Resource; {
		case r >= len(p.Builders):
			h.For = []string{"a bench", "the " + string(Saw), "the " + string(Boiler)}[r-len(p.Builders)]
		case r >= 0:
			h.For = Hands
		}
		p.Held = append(p.Held, h)
	}
	p.Machines = s.machines(p)
	p.Tasks = slices.Clone(s.tasks)
	order := func(a, b *Task) int {
		return cmp.Or(cmp.Compare(a.From.Day, b.From.Day), cmp.Compare(a.From.Hour, b.From.Hour), cmp.Compare(a.Builder, b.Builder))
	}
	sort.SliceStable(p.Tasks, func(i, j int) bool { return order(&p.Tasks[i], &p.Tasks[j]) < 0 })
}

// machines says how long each is in use.
func (s *shop) machines(p *Plan) []Use {
	out := []Use{{Of: "benches", Count: p.Benches}, {Of: string(Saw), Count: 1}, {Of: string(Boiler), Count: 1}}
	for k := range out {
		for _, j := range s.Jobs {
			if j.Needs[1].Of == len(p.Builders)+k {
				out[k].Used += float64(j.Length) / quarters
			}
		}
		out[k].Can = float64(out[k].Count * p.Takes * p.HoursADay)
	}
	return out
}
