package nested

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry/finding"
	"ribwright/geometry/sizing"
	"ribwright/geometry/trial/stow"
	"ribwright/geometry/wording"
)

// seeker looks for a boat that nests beside the people's own.
type seeker struct {
	wish    Wish
	make    func() (*sizing.Case, error)
	own     *sizing.Boat
	at      stow.Place // where their own boat lies best; others are tried there
	refused []tried    // the first to nest each way, of those that fail another check
}

// tried is a boat that nests.
type tried struct {
	boat    *sizing.Boat
	changes []Change
	pair    *stow.Pair
}

// most is how far a measure is moved, as a share: beyond it is another kind of boat.
const most = 0.2

// way is a measure that is moved, and by what step, mm, in the direction that helps.
type way struct {
	name string
	step float64
}

// ways lists them: an inner boat goes in narrower, shorter, or with its gunwales clear over
// the other's; an outer one is the other way about.
func (s *seeker) ways() (out []way) {
	sign := -1.0
	if s.wish.Around {
		sign = 1
	}
	for _, w := range []way{{"beam", sign}, {"depth", -sign}, {"length", 5 * sign}} {
		run := s.own.Case.Run()
		if s.own.Case.Family.Program.HasFormula(w.name) && !run.IsFixed(w.name) {
			out = append(out, w)
		}
	}
	return out
}

// steps is how often a way can be gone within a share of its measure.
func (s *seeker) steps(w way, share float64) int {
	return int(share * s.from(w.name) / math.Abs(w.step))
}

func (s *seeker) from(name string) float64 { return math.Round(s.own.Case.Run().Number(name)) }

// change is a measure moved by so many steps.
func (s *seeker) change(w way, steps int) Change {
	from := s.from(w.name)
	return Change{w.name, from, from + w.step*float64(steps)}
}

// boat sizes the people's boat with some measures in the place of the family's.
func (s *seeker) boat(changes []Change) (*sizing.Boat, error) {
	c, err := s.make()
	if err != nil {
		return nil, err
	}
	for _, v := range changes {
		if err := c.Set(v.Name, v.To); err != nil {
			return nil, err
		}
	}
	if err := c.Settle(); err != nil {
		return nil, c.Refused(err)
	}
	b, err := c.Finish()
	return b, c.Refused(err)
}

// seek tries each measure alone, and beam with another where none will do. It is nil where
// none does.
func (s *seeker) seek() *tried {
	ways := s.ways()
	var good []tried
	for _, w := range ways {
		good = s.along(good, w, nil)
	}
	if len(good) == 0 && len(ways) > 1 && ways[0].name == "beam" {
		const thirds = 3
		for _, w := range ways[1:] {
			for k := 1; k < thirds; k++ {
				good = s.along(good, ways[0], []Change{s.change(w, s.steps(w, most*float64(k)/thirds/2))})
			}
		}
	}
	if len(good) == 0 {
		return nil
	}
	return least(good)
}

// least is the boat that is changed least.
func least(good []tried) *tried {
	best := slices.MinFunc(good, func(a, b tried) int { return cmp.Compare(a.moved(), b.moved()) })
	return &best
}

// along adds the first boat on a way that nests, where it does for its people.
func (s *seeker) along(good []tried, w way, with []Change) []tried {
	share := most
	for _, g := range good { // what would be changed more is not asked for
		share = math.Min(share, g.moved())
	}
	var last *tried
	stow.FirstGood(s.steps(w, share), func(n int) bool {
		changes := append([]Change{s.change(w, n)}, with...)
		b, err := s.boat(changes)
		if err != nil || !s.wish.stands(b, s.at) {
			return false
		}
		last = &tried{boat: b, changes: changes}
		return true
	})
	if last == nil {
		return good
	}
	var err error
	if last.pair, err = s.wish.pair(last.boat); err != nil || !last.pair.Nests {
		return good
	}
	if fails := last.fails(s.own); len(fails) == 0 {
		good = append(good, *last)
	} else if len(with) == 0 {
		s.refused = append(s.refused, *last)
	}
	return good
}

// moved is how far the measures are from the people's own, as a sum of shares.
func (t tried) moved() float64 {
	sum := 0.0
	for _, c := range t.changes {
		sum += math.Abs(math.Log(c.To / c.From))
	}
	return sum
}

func (t tried) words() string { return wording.List(t.changes, Change.String) }

// fails lists the checks that the people's own boat passes and this one does not.
func (t tried) fails(own *sizing.Boat) (out finding.List) {
	for _, f := range t.boat.Failures() {
		if passes(own, f.About) {
			out = append(out, f)
		}
	}
	return out
}

// passes reports whether a boat passes the check of a name.
func passes(b *sizing.Boat, name string) bool {
	for _, v := range b.Checks {
		if v.Name == name {
			return v.Passed
		}
	}
	return true
}
