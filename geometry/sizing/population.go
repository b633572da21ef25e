package sizing

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"sort"

	"ribwright/geometry/body"
	"ribwright/geometry/finding"
	"ribwright/geometry/sidebyside"
	"ribwright/geometry/sizing/family"
)

// Attempt is one brief of a population and how it came out.
type Attempt struct {
	Number int
	Brief  Brief
	Fault  string       // why there is no boat, "" when there is one
	Failed finding.List // checks that do not hold, and what Judge found
}

// Population is a family tried on many.
type Population struct {
	Tried   int
	Passed  int
	Failing []Attempt // those that fail, in the order of their numbers
}

// Body returns the n-th brief of the population that a family is tried on: random
// bodies of the survey, loads, waters and skills. It depends on the number alone,
// so that a failure can be looked at again.
func (f Trying) Body(n int) Brief {
	r := rand.New(rand.NewPCG(0x5eed, uint64(n)))
	b := DefaultBrief()
	b.Title = fmt.Sprintf("Trial %d", n)
	for range f.Family.Seats {
		b.Crew = append(b.Crew, Paddler{Person: body.Random(r), Posture: family.Postures()[r.IntN(3)]})
	}
	b.Gear = 40 * r.Float64()
	b.Waters = family.Waters()[r.IntN(3)]
	b.Skill = family.Skills()[r.IntN(3)]
	b.LongestStick = 2400 + 3600*r.Float64()
	return b
}

// Trying is a family to be tried on a population.
type Trying struct {
	Family *family.Family
	Judge  func(*Boat) finding.List // finds what else is wrong with a finished boat; may be nil
}

// Try sizes boats for the first n briefs of the population, on all cores.
func (f Trying) Try(n int) Population {
	trials := make([]Attempt, n)
	sidebyside.Each(n, func(i int) { trials[i] = f.one(i) })
	failing := slices.DeleteFunc(trials, func(t Attempt) bool { return t.Fault == "" && len(t.Failed) == 0 })
	return Population{n, n - len(failing), failing}
}

func (f Trying) one(i int) Attempt {
	t := Attempt{Number: i, Brief: f.Body(i)}
	boat, err := Size(f.Family, t.Brief)
	if err != nil {
		t.Fault = err.Error()
		if why := errors.Unwrap(err); why != nil { // who tries a family is to mend it
			t.Fault = why.Error()
		}
		return t
	}
	t.Failed = boat.Failures()
	if f.Judge != nil {
		t.Failed = append(t.Failed, f.Judge(boat)...)
	}
	return t
}

// short is by how much a finding fails: a share of its limit or its value, 1 where
// nothing was measured.
func short(f finding.Finding) float64 {
	if f.Limit == 0 {
		return 1
	}
	return -f.Margin()
}

// Count is how often a check failed, with the worst case of it.
type Count struct {
	Name  string
	Times int
	Worst Attempt
	Text  string
}

// Counts lists the failed checks, the most frequent first, each with its worst
// case.
func (p Population) Counts() []Count {
	var out []Count
	worst := map[string]float64{}
	add := func(name, text string, by float64, t Attempt) {
		i := slices.IndexFunc(out, func(c Count) bool { return c.Name == name })
		if i < 0 {
			i, out = len(out), append(out, Count{Name: name})
		}
		out[i].Times++
		if s, seen := worst[name]; !seen || by > s {
			worst[name], out[i].Worst, out[i].Text = by, t, text
		}
	}
	for _, t := range p.Failing {
		if t.Fault != "" {
			add("no boat", t.Fault, 0, t)
		}
		for _, s := range t.Failed {
			add(s.About, s.Text, short(s), t)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Times > out[j].Times })
	return out
}
