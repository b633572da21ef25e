// Package learn says what many builds say of the program's figures: what ribs spring back,
// how much deeper they come out, what parts weigh, what stages take, and where ribs break.
//
// Figures are drawn together by geometry/learn/pool, and each is told with what the builds
// alone say, what was counted on before, and what follows of both: what was counted on
// counts as a few builds more.
package learn

import (
	"math"
	"slices"
	"sort"

	"ribwright/geometry/learn/feedback"
	"ribwright/geometry/learn/pool"
	"ribwright/geometry/shop/hours"
)

// UsualBuilds is how many builds a figure that was counted on is worth where nobody says
// otherwise. With five, one build moves it by a sixth, three by three eighths, and twenty by
// four fifths. Our own choice.
const UsualBuilds = 5

// Priors are how many builds the figures counted on are worth, by kind of line.
type Priors map[feedback.What]float64

func (p Priors) of(w feedback.What) float64 {
	if n, ok := p[w]; ok {
		return n
	}
	return UsualBuilds
}

// Report is what the builds say.
type Report struct {
	Builds     []*feedback.Build
	Quantities []*Quantity // those that anything is known of: springback, deeper, weight, hours
	Breaks     *Breaks     // nil where no rib's bend is told
}

// Quantity is one kind of figure. Springback is in shares and Deeper in mm; Weight and Hours
// are the natural logarithm of what was found over what was worked out.
type Quantity struct {
	What   feedback.What
	Kinds  []Kind // woods and how they were dried; skills; one for all
	Sides  []Side // boilers, parts, stages; none where there is one alone
	Boards bool   // units are boards, and not builds
	Units  int
	Unit   float64 // one standard deviation between boards or builds; 0 where the readings do not tell them apart
	Chance float64 // of readings beside their board or build
	Odd    []Odd   // readings, by file and line
	Unlike []Unlike
	Left   Left
}

// Kind is the mean of a kind.
type Kind struct {
	Name     string
	Says     pool.Interval // what the builds alone say; without ends where too few do
	Units    int           // boards or builds
	Readings int
	Before   float64 // what was counted on
	Worth    float64 // builds that this counts as; fewer where the builds flatly disagree
	Doubt    bool    // three or more lie so far from it as one in a hundred such courses
	Now      float64 // both together
}

// Side is a boiler, a part or a stage. Springback and Hours tell how much it differs from the
// mean of all, Weight what it comes to itself.
type Side struct {
	Name     string
	Says     pool.Interval
	Units    int
	Readings int
}

// Odd is a reading that does not go with the others; it counts for less.
type Odd struct {
	Build *feedback.Build
	Line  feedback.Line
	Found float64 // as the quantity has it
	Guess float64
	Z     float64
	Slip  string // what would explain it, "" for nothing
}

// Unlike is a board or a build that does not go with the others.
type Unlike struct {
	Build *feedback.Build // the first that has it
	Error float64
	Z     float64
}

// Left is the error of guessing a board or a build from all others.
type Left struct {
	RMS   float64
	Held  int // within what was told to hold nine in ten
	Of    int // of so many of which that can be told
	Units int
}

// Of learns from builds.
func Of(builds []*feedback.Build, p Priors) *Report {
	r := &Report{Builds: builds}
	for _, plan := range plans() {
		if q := plan.learn(builds, p); q != nil {
			r.Quantities = append(r.Quantities, q)
		}
	}
	r.Breaks = breaksOf(builds, p.of(feedback.Rib))
	return r
}

// Find is a quantity; nil where nothing is known of it.
func (r *Report) Find(w feedback.What) *Quantity {
	for _, q := range r.Quantities {
		if q.What == w {
			return q
		}
	}
	return nil
}

// plan is how a kind of line is read.
type plan struct {
	what   feedback.What
	boards bool
	total  bool // sides are told as what they come to
	value  func(*feedback.Build, feedback.Line) float64
	kind   func(*feedback.Build) string
	before func(*feedback.Build, feedback.Line) float64
	side   func(*feedback.Build, feedback.Line) string
	prior  pool.Prior // how far sides and units are thought to lie apart
	noise  float64    // the least that readings of a unit are off
}

// plans are those of all kinds. Spreads are our own choice: boards as a design's springback
// is in doubt, boilers half of that; weights of parts as densities of one wood differ;
// hands as hours.Off has them; what readings are off by chance from tapes, scales and clocks.
func plans() []plan {
	ratio := func(_ *feedback.Build, l feedback.Line) float64 { return math.Log(l.Found / l.Drawn) }
	drawn := func(_ *feedback.Build, l feedback.Line) float64 { return l.Drawn }
	found := func(_ *feedback.Build, l feedback.Line) float64 { return l.Found }
	nothing := func(*feedback.Build, feedback.Line) float64 { return 0 }
	all := func(word string) func(*feedback.Build) string {
		return func(*feedback.Build) string { return word }
	}
	of := func(_ *feedback.Build, l feedback.Line) string { return l.Of }
	return []plan{
		{what: feedback.Springback, boards: true, value: found, before: drawn, noise: 0.005, prior: pool.Prior{Side: 0.02, Unit: 0.04, Chance: 0.012},
			kind: func(b *feedback.Build) string { return b.Wood + ", " + b.Stock },
			side: func(b *feedback.Build, _ feedback.Line) string { return b.Boiler }},
		{what: feedback.Deeper, value: found, before: nothing, noise: 1, prior: pool.Prior{Unit: 2}, kind: all("all ribs")},
		{what: feedback.Weight, value: ratio, before: nothing, noise: 0.02, prior: pool.Prior{Side: 0.08, Unit: 0.06, Chance: 0.04}, kind: all("all parts"), side: of, total: true},
		{what: feedback.Hours, value: ratio, noise: 0.05, prior: pool.Prior{Side: 0.2, Unit: hours.Off, Chance: 0.15},
			kind:   func(b *feedback.Build) string { return b.Skill.String() },
			before: func(b *feedback.Build, _ feedback.Line) float64 { return math.Log(b.Skill.Factor()) }, side: of},
	}
}

// names numbers words in their order.
type names []string

func (n names) of(word string) int { return slices.Index(n, word) }

func gather[T any](all []T, word func(T) string) names {
	var out names
	for _, v := range all {
		if w := word(v); w != "" && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	slices.Sort(out)
	return out
}

// entry is a line with its build.
type entry struct {
	b *feedback.Build
	l feedback.Line
}

// sides names the sides of all lines: two or more, or none. One part alone is told as what
// it is.
func (p plan) sides(all []entry) (sides names, alone string) {
	if p.side == nil {
		return nil, ""
	}
	sides = gather(all, func(e entry) string { return p.side(e.b, e.l) })
	switch {
	case len(sides) > 1:
		return sides, ""
	case len(sides) == 1 && p.total:
		return nil, sides[0]
	}
	return nil, ""
}

// learn learns one kind; nil where no line is of it.
func (p plan) learn(builds []*feedback.Build, priors Priors) *Quantity {
	var all []entry
	for _, b := range builds {
		for _, l := range b.All(p.what) {
			all = append(all, entry{b, l})
		}
	}
	if len(all) == 0 {
		return nil
	}
	kinds := gather(all, func(e entry) string { return p.kind(e.b) })
	sides, alone := p.sides(all)
	unit := p.units(builds)
	readings := make([]pool.Reading, len(all))
	for i, e := range all {
		readings[i] = pool.Reading{Value: p.value(e.b, e.l), Kind: kinds.of(p.kind(e.b)), Side: -1, Unit: unit[e.b]}
		if sides != nil {
			readings[i].Side = sides.of(p.side(e.b, e.l))
		}
	}
	q := &Quantity{What: p.what, Boards: p.boards}
	p.count(q, kinds, sides, all, unit)
	if alone != "" {
		q.Kinds[0].Name = alone
	}
	p.estimate(q, all, readings, priors.of(p.what))
	return q
}

// estimate draws the readings together.
func (p plan) estimate(q *Quantity, all []entry, readings []pool.Reading, worth float64) {
	d := pool.New(readings)
	f, odd, ok := d.Robust(p.noise)
	if !ok { // one reading of each kind, or all the same
		for k := range q.Kinds {
			q.Kinds[k].Says = p.plain(k, readings)
			q.Kinds[k].settle(worth, 0)
		}
		q.Sides = nil
		return
	}
	q.Unit, q.Chance = f.Unit, f.Chance
	for k := range q.Kinds {
		q.Kinds[k].Says = f.Kind(k)
		q.Kinds[k].settle(worth, math.Max(f.Unit, p.prior.Unit))
	}
	if len(q.Sides) > 0 {
		s := f.Spread(p.prior)
		for k := range q.Sides {
			if q.Sides[k].Says = s.Of(k); p.total {
				q.Sides[k].Says = s.Total(k)
			}
		}
	}
	for _, o := range odd {
		e := all[o.Reading]
		q.Odd = append(q.Odd, Odd{e.b, e.l, readings[o.Reading].Value, o.Guess, o.Z, p.slip(e, o.Guess)})
	}
	p.leaveOut(q, d, f, all)
}

// units numbers boards or builds. A board that has a mark is the same for all builds of its
// wood that name it; else each build has one of its own.
func (p plan) units(builds []*feedback.Build) map[*feedback.Build]int {
	out, marks := map[*feedback.Build]int{}, map[string]int{}
	for i, b := range builds {
		out[b] = i
		if !p.boards || b.Board == "" {
			continue
		}
		key := b.Board + " " + b.Wood + " " + b.Stock
		if first, met := marks[key]; met {
			out[b] = first
		} else {
			marks[key] = i
		}
	}
	return out
}

// count counts readings and units of kinds and sides, and takes what was counted on: the
// middle one of their lines.
func (p plan) count(q *Quantity, kinds, sides names, all []entry, unit map[*feedback.Build]int) {
	tally := func(in func(entry) bool) (units, readings int, before float64) {
		seen := map[int]bool{}
		var priors []float64
		for _, e := range all {
			if in(e) {
				seen[unit[e.b]] = true
				priors = append(priors, p.before(e.b, e.l))
			}
		}
		slices.Sort(priors)
		return len(seen), len(priors), priors[len(priors)/2]
	}
	q.Units, _, _ = tally(func(entry) bool { return true })
	for _, name := range kinds {
		k := Kind{Name: name}
		k.Units, k.Readings, k.Before = tally(func(e entry) bool { return p.kind(e.b) == name })
		q.Kinds = append(q.Kinds, k)
	}
	for _, name := range sides {
		s := Side{Name: name}
		s.Units, s.Readings, _ = tally(func(e entry) bool { return p.side(e.b, e.l) == name })
		q.Sides = append(q.Sides, s)
	}
}

// plain is the mean of a kind of which no spread is known.
func (p plan) plain(kind int, all []pool.Reading) pool.Interval {
	sum, n := 0.0, 0.0
	for _, r := range all {
		if r.Kind == kind {
			sum, n = sum+r.Value, n+1
		}
	}
	return pool.Interval{Is: sum / n, Low: math.Inf(-1), High: math.Inf(1)}
}

// settle takes a kind's mean and what was counted on together. apart is how far units lie
// apart: a figure worth so many builds is in doubt by that over their root. One that as many
// builds flatly contradict counts for less; fewer do not shout it down.
func (k *Kind) settle(worth, apart float64) {
	k.Worth = worth
	n := float64(k.Units)
	if apart > 0 && worth > 0 {
		const oneInHundred = 6.635 // the chi-square distribution of one degree of freedom
		off := k.Says.Is - k.Before
		if q := off * off / (apart * apart * (1/worth + 1/n)); q > oneInHundred {
			if k.Doubt = k.Units > 2; n >= worth {
				k.Worth = worth / q
			}
		}
	}
	k.Now = (n*k.Says.Is + k.Worth*k.Before) / (n + k.Worth)
}

// slip is what would explain an odd weight.
func (p plan) slip(e entry, guess float64) (says string) {
	if p.what != feedback.Weight {
		return ""
	}
	off, near := math.Log(e.l.Found/e.l.Drawn)-guess, 0.15
	for _, s := range []struct {
		by   float64
		says string
	}{{2.2046, "pounds given as kilograms"}, {1 / 2.2046, "kilograms given as pounds"}, {2, "both sides together"}, {0.5, "one side alone"}} {
		if d := math.Abs(off - math.Log(s.by)); d < near {
			near, says = d, s.says
		}
	}
	return says
}

// leaveOut guesses every unit from the others.
func (p plan) leaveOut(q *Quantity, d *pool.Data, f *pool.Fit, all []entry) {
	first := map[int]*feedback.Build{} // by the unit's number in d, which counts in the order of readings
	for i, r := range d.Readings {
		if first[r.Unit] == nil {
			first[r.Unit] = all[i].b
		}
	}
	left := d.HeldOut(f)
	q.Left.Units = len(left)
	q.Left.RMS, q.Left.Held, q.Left.Of = pool.Sum(left)
	for _, l := range left {
		if l.Odd {
			q.Unlike = append(q.Unlike, Unlike{first[l.Unit], l.Error, l.Z})
		}
	}
	sort.SliceStable(q.Unlike, func(i, j int) bool { return math.Abs(q.Unlike[j].Z) < math.Abs(q.Unlike[i].Z) })
}
