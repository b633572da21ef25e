package schedule

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"testing"
	"time"

	"ribwright/geometry/referencetest"
)

// TestTextbook: two networks of a textbook, with every start and slack; the source stands in
// testdata/cpm-textbook.csv. Activities are arrows there: one waits for those that end where it begins.
func TestTextbook(t *testing.T) {
	rows := referencetest.Table(t, "testdata/cpm-textbook.csv")
	for project, want := range map[string]struct {
		end  int
		path []string
	}{"a": {20, []string{"1-3", "3-4", "4-5", "5-6"}}, "b": {38, []string{"1-3", "3-5", "5-7", "7-8", "8-9"}}} {
		var p Problem
		var of [][]string
		for _, r := range rows {
			if r[0] == project {
				of = append(of, r)
			}
		}
		for _, r := range of {
			j := Job{Length: int(referencetest.Number(t, r[3]))}
			for k, before := range of {
				if before[2] == r[1] {
					j.After = append(j.After, After{Job: k})
				}
			}
			p.Jobs = append(p.Jobs, j)
		}
		soonest, latest, end := p.Paths()
		var path []string
		for i, r := range of {
			if s, l := referencetest.Number(t, r[4]), referencetest.Number(t, r[6]); soonest[i] != int(s) || latest[i] != int(l) {
				t.Errorf("%s %s-%s: begins at %d to %d, want %g to %g", project, r[1], r[2], soonest[i], latest[i], s, l)
			}
			if soonest[i] == latest[i] {
				path = append(path, r[1]+"-"+r[2])
			}
		}
		if end != want.end || !slices.Equal(path, want.path) {
			t.Errorf("project %s: %d by %v, want %d by %v", project, end, path, want.end, want.path)
		}
	}
}

type instance struct {
	Name         string
	Optimum      int
	CriticalPath int `json:"critical_path"`
	Capacity     []int
	Activities   []struct {
		ID, Duration int
		Need, After  []int
	}
}

func (in instance) problem() *Problem {
	p := &Problem{Capacity: in.Capacity}
	for _, a := range in.Activities {
		j := Job{Length: a.Duration}
		for r, n := range a.Need {
			if n > 0 {
				j.Needs = append(j.Needs, Need{r, n})
			}
		}
		for _, b := range a.After {
			j.After = append(j.After, After{Job: b - 1})
		}
		p.Jobs = append(p.Jobs, j)
	}
	return p
}

func instances(t testing.TB) []instance {
	data, err := os.ReadFile("testdata/rcpsp-j30.json")
	if err != nil {
		t.Fatal(err)
	}
	var all struct{ Instances []instance }
	if err := json.Unmarshal(data, &all); err != nil || len(all.Instances) != 6 {
		t.Fatal(len(all.Instances), err)
	}
	return all.Instances
}

// TestPublished: six published problems with four resources and known optima; the source
// stands in testdata/rcpsp-j30.json. A second is some 20,000 tries; these are fewer.
func TestPublished(t *testing.T) {
	within := map[string]float64{"j3013_1": 1.04, "j3029_1": 1.06}
	for _, in := range instances(t) {
		p := in.problem()
		start := time.Now()
		got, err := p.Find(3000, 0)
		if err != nil {
			t.Fatal(err)
		}
		most := float64(in.Optimum)
		if f := within[in.Name]; f > 0 {
			most *= f
		}
		_, _, path := p.Paths()
		if got.End < in.Optimum || float64(got.End) > most || got.Bound > in.Optimum || path != in.CriticalPath {
			t.Errorf("%s: %d, optimum %d; bound %d, critical path %d, want %d", in.Name, got.End, in.Optimum, got.Bound, path, in.CriticalPath)
		}
		long := 0
		for _, l := range p.Chain(got.Starts) {
			long += p.Jobs[l.Job].Length
		}
		if long != got.End {
			t.Errorf("%s: a chain of %d slots holds up a plan of %d", in.Name, long, got.End)
		}
		t.Logf("%s: %d, optimum %d, bound %d, %v", in.Name, got.End, in.Optimum, got.Bound, time.Since(start).Round(time.Millisecond))
	}
}

// small is a random problem of a few jobs, with days and waits.
func small(r *rand.Rand) *Problem {
	p := &Problem{Capacity: []int{1 + r.IntN(2), 1 + r.IntN(3)}}
	if r.IntN(3) > 0 {
		p.Day = Day{2 + r.IntN(3), 1 + r.IntN(5)}
	}
	for i := range 2 + r.IntN(4) {
		j := Job{Length: r.IntN(4)}
		j.Whole = r.IntN(3) == 0 && (p.Day.Work == 0 || j.Length <= p.Day.Work)
		for c, most := range p.Capacity {
			if n := r.IntN(most + 1); n > 0 {
				j.Needs = append(j.Needs, Need{c, n})
			}
		}
		for k := range i {
			if r.IntN(3) == 0 {
				j.After = append(j.After, After{k, r.IntN(3) * r.IntN(5)})
			}
		}
		p.Jobs = append(p.Jobs, j)
	}
	return p
}

// soonestOf tries every start of every job.
func soonestOf(p *Problem, most int) int {
	best, starts := most, make([]int, len(p.Jobs))
	var try func(i, end int)
	try = func(i, end int) {
		if end >= best {
			return
		}
		if i == len(p.Jobs) {
			best = end
			return
		}
		for s := 0; s+p.Jobs[i].Length < best; s++ {
			starts[i] = s
			if (&Problem{p.Jobs[:i+1], p.Capacity, p.Day}).Sweep(starts[:i+1]) == nil {
				try(i+1, max(end, s+p.Jobs[i].Length))
			}
		}
	}
	try(0, 0)
	return best
}

// TestSmall: no plan of a few jobs is done sooner than the one found, among all there are; and
// the bound is not above it.
func TestSmall(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for n := range 400 {
		p := small(r)
		got, err := p.Find(200, 0)
		if err != nil {
			t.Fatal(err)
		}
		if want := soonestOf(p, got.End+1); got.End != want || got.Bound > want {
			t.Errorf("%d: done at %d, bound %d, want %d: %+v", n, got.End, got.Bound, want, p)
		}
	}
}

// TestSwept: the sweep finds what cannot be, one fault each.
func TestSwept(t *testing.T) {
	p := &Problem{Capacity: []int{1}, Day: Day{4, 6}, Jobs: []Job{
		{Length: 3, Needs: []Need{{0, 1}}}, {Length: 3, Whole: true, Needs: []Need{{0, 1}}}, {Length: 1, After: []After{{0, 5}}}}}
	for starts, want := range map[[3]int]string{
		{0, 4, 4}:  "",
		{0, 5, 4}:  "",
		{3, 0, 8}:  "", // a job that is not whole goes on in the morning
		{0, 2, 4}:  "job 1 is broken off in the evening",
		{2, 4, 8}:  "at 4 2 of resource 0 are in use, and there are 1",
		{0, 4, 3}:  "job 2 begins before job 0 is done and has waited",
		{0, 4, -1}: "job 2 begins at -1",
	} {
		err := p.Sweep(starts[:])
		if fmt.Sprint(err) != want && !(want == "" && err == nil) {
			t.Errorf("%v: %v, want %q", starts, err, want)
		}
	}
	if p.Sweep(nil) == nil {
		t.Error("no starts are a plan")
	}
}

// TestNight counts by hand: a day of 8 slots and a night of 16. Work that ends in the evening
// has waited 12 by the morning; work that ends at noon and waits for 24 goes on at the next noon.
func TestNight(t *testing.T) {
	for _, c := range []struct {
		first, wait int
		whole       bool
		length      int
		start, end  int
	}{{8, 12, false, 2, 8, 10}, {8, 17, false, 2, 9, 11}, {4, 24, false, 2, 12, 14}, {4, 12, false, 2, 8, 10}, {6, 0, true, 3, 8, 11}, {6, 0, false, 3, 6, 9}} {
		p := &Problem{Day: Day{8, 16}, Jobs: []Job{{Length: c.first}, {Length: c.length, Whole: c.whole, After: []After{{0, c.wait}}}}}
		got, err := p.Find(10, 0)
		if err != nil || got.Starts[1] != c.start || got.End != c.end || got.Bound != c.end {
			t.Errorf("%+v: %+v, %v", c, got, err)
		}
	}
}

// TestChain by hand: two whole jobs of 3 slots share a machine by days of 4 slots, and after each
// a job of 1 waits for 5 slots of the clock; nights are 6. The second job waits for the machine
// and the next morning, and its follower for it.
func TestChain(t *testing.T) {
	p := &Problem{Capacity: []int{1}, Day: Day{4, 6}, Jobs: []Job{
		{Length: 3, Whole: true, Needs: []Need{{0, 1}}}, {Length: 3, Whole: true, Needs: []Need{{0, 1}}}, {Length: 1, After: []After{{0, 5}}}, {Length: 1, After: []After{{1, 5}}}}}
	if got, want := p.Chain([]int{0, 4, 4, 8}), []Link{{0, -1}, {1, 0}, {3, -1}}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if len((&Problem{}).Chain(nil)) != 0 {
		t.Error("nothing holds up no jobs")
	}
}

func TestRefused(t *testing.T) {
	for want, p := range map[string]Problem{
		"jobs wait for one another in a ring":                                     {Jobs: []Job{{After: []After{{Job: 1}}}, {After: []After{{Job: 0}}}}},
		"job 0 needs 2 of resource 0; accepted: what there is":                    {Capacity: []int{1}, Jobs: []Job{{Needs: []Need{{0, 2}}}}},
		"job 0 takes 9 slots and is not broken off; accepted: a day of 8 or less": {Day: Day{8, 16}, Jobs: []Job{{Length: 9, Whole: true}}},
		"job 0 takes -1 slots; accepted: 0 or more":                               {Jobs: []Job{{Length: -1}}},
		"job 0 comes 0 slots after job 3; accepted: another job, 0 slots or more": {Jobs: []Job{{After: []After{{Job: 3}}}}},
		"a day of 0 slots and a night of 8; accepted: 1 slot or more by day":      {Day: Day{0, 8}},
	} {
		if _, err := p.Find(1, 0); fmt.Sprint(err) != want {
			t.Errorf("%v, want %s", err, want)
		}
	}
}

// BenchmarkPublished reports how many tries a second takes on problems of 30 jobs.
func BenchmarkPublished(b *testing.B) {
	hard := instances(b)[5].problem()
	for b.Loop() {
		if _, err := hard.Find(1000, 0); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(1000*float64(b.N)/b.Elapsed().Seconds(), "tries/s")
}
