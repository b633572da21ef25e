package balance

import (
	"errors"
	"math"
	"ribwright/geometry/sidebyside"
	"slices"
)

// Range is what may come, from the least through the likely to the most.
type Range struct{ Least, Likely, Most float64 }

// take widens a range.
func (r *Range) take(v float64) { r.Least, r.Most = min(r.Least, v), max(r.Most, v) }

// Band is what may come of taking members out, whatever the case.
type Band struct {
	Moved       []Range // change of the boat's beam at the nodes of the states, mm, wider positive
	Forces      []Range // push of each cross piece on either gunwale with everything in, N
	Least, Most Extreme // the greatest narrowing and widening anywhere: 0 where the boat never moves so
	Likely      Extreme // the greatest change in the likely case
	x           []float64
}

// Extreme is a change of the beam with its place and the case in which it comes.
type Extreme struct {
	Moved, X float64 // mm
	Case     Case
}

// At returns the range at the station x of a rib or a cross piece: that of the node
// nearest to it.
func (b Band) At(x float64) Range {
	i, _ := slices.BinarySearch(b.x, x)
	if i == len(b.x) || i > 0 && x-b.x[i-1] < b.x[i]-x {
		i--
	}
	return b.Moved[i]
}

// Over is the whole band in three numbers: the greatest narrowing and widening anywhere
// in any case, and the greatest change in the likely one.
func (b Band) Over() Range { return Range{b.Least.Moved, b.Likely.Moved, b.Most.Moved} }

// Trial is the frame with its ribs set one way: with all members in, and with the
// chosen ones out, in the likely case, and the band of all cases.
type Trial struct {
	Set     string    // "unset", "neutral" or "off"
	Open    []float64 // of each rib, mm; nil for none
	In, Out *State
	Band    Band
	Causes  []Cause // of the first trial without a neutral set, of the neutral one with it: the one that is promised
}

// Cause is one thing that no drawing settles, alone at one of its limits while all else
// is as likely, with the greatest narrowing and widening of the beam anywhere when the
// members come out, mm; 0 where it never moves so.
type Cause struct {
	Case        Case
	Least, Most float64
}

// Moved returns by how much the boat's beam changes at the station x when the
// members come out, mm, wider positive.
func (t Trial) Moved(x float64) float64 { return 2 * (t.Out.At(x) - t.In.At(x)) }

// Off returns how far the boat's beam at the station x is from the design with
// everything in, mm, wider positive.
func (t Trial) Off(x float64) float64 { return 2 * t.In.At(x) }

// Trials returns what comes of taking members out with ribs that are unset, just
// as wide as their places; with the neutral set; and with every rib miss mm wider
// than that, as a builder may come to it. Without a neutral set only the first.
func (b *Boat) Trials(w *Without, miss float64) ([]Trial, error) {
	trials := []Trial{{Set: "unset"}}
	if b.Why == nil {
		off := slices.Clone(b.Open)
		for i := range off {
			off[i] += miss
		}
		trials = append(trials, Trial{Set: "neutral", Open: b.Open}, Trial{Set: "off", Open: off})
	}
	j, err := b.jury(w)
	if err != nil {
		return nil, err
	}
	in, out := j.in[j.likely.Heads], j.out[j.likely.Heads]
	for i := range trials {
		t := &trials[i]
		set := j.set(t.Open)
		if t.In, err = in.rest(j.likely, t.Open, set.before.in(j.likely), b.Fit); err != nil {
			return nil, err
		}
		if t.Out, err = out.rest(j.likely, t.Open, set.after.in(j.likely), b.Fit); err != nil {
			return nil, err
		}
		t.Band = set.band()
		if i == min(1, len(trials)-1) {
			t.Causes = set.causes()
		}
	}
	return trials, nil
}

// Alone returns the band of each chosen member when it alone comes out, in the order of
// Names, with the ribs in the neutral set, or unset when there is none.
func (b *Boat) Alone(w *Without) ([]Band, error) {
	var open []float64
	if b.Why == nil {
		open = b.Open
	}
	whole, err := b.jury(&Without{})
	if err != nil {
		return nil, err
	}
	var out []Band
	set := whole.set(open)
	for i := range b.Frame.Thwarts {
		if !w.struts[i] {
			continue
		}
		less, err := set.without(map[int]bool{i: true})
		if err != nil {
			return nil, err
		}
		out = append(out, less.band())
	}
	for range w.seats {
		out = append(out, Band{}) // nothing moves
	}
	for i := range b.Frame.Ribs {
		if !w.ribs[i] {
			continue
		}
		j, err := b.jury(&Without{ribs: map[int]bool{i: true}})
		if err != nil {
			return nil, err
		}
		out = append(out, j.set(open).band())
	}
	return out, nil
}

// jury is all that is asked of a frame before and after members come out: the likely
// case and every corner of what is not known, with cross pieces as they are cut.
type jury struct {
	likely  Case
	corners []Case
	slack   []float64
	in, out map[float64]*tied // by the share of the heads' moment
}

// set is a jury of ribs that are set in one way.
type set struct {
	*jury
	before, after openings
}

// openings are what ribs that are set in one way do to a frame without cross pieces, by
// the share of the heads' moment and how they were opened.
type openings map[[2]float64][]float64

func (o openings) in(c Case) []float64 { return o[[2]float64{c.Heads, c.Upright}] }

// set opens the ribs.
func (j *jury) set(open []float64) set {
	s := set{jury: j, before: j.opened(j.in, open)}
	if s.after = s.before; j.out[j.likely.Heads].bare != j.in[j.likely.Heads].bare {
		s.after = j.opened(j.out, open)
	}
	return s
}

func (j *jury) opened(by map[float64]*tied, open []float64) openings {
	out := openings{}
	for _, c := range append([]Case{j.likely}, j.corners...) {
		if out.in(c) == nil {
			out[[2]float64{c.Heads, c.Upright}] = by[c.Heads].opened(open, c.Upright)
		}
	}
	return out
}

// without is the same set where other cross pieces come out, and all ribs stay.
func (s set) without(struts map[int]bool) (set, error) {
	j := *s.jury
	whole := map[float64]*bare{}
	for heads, t := range j.in {
		whole[heads] = t.bare
	}
	var err error
	j.out, err = tie(whole, struts)
	return set{&j, s.before, s.before}, err
}

// Corners are the cases at the limits of what no drawing settles. The beam does not
// rise with each of them all the way, so all are tried: heads that turn freely and heads
// that cannot, these with ribs opened as forms do and by their width alone; ends of
// stringers steamed and forced; slack cloth and taut.
func (b *Boat) Corners() []Case {
	var out []Case
	tension := b.Frame.Design.Skin.Tension
	for _, heads := range []Case{{Heads: 0}, {Heads: 1}, {Heads: 1, Upright: 1}} {
		for _, cold := range []float64{0, 1} {
			for _, pull := range []float64{slacker, tauter} {
				out = append(out, Case{heads.Heads, heads.Upright, cold, pulls(tension, pull)})
			}
		}
	}
	return out
}

// pulls is the pull of cloth that is so many times as taut, N/mm: more than a design may
// say only where it says so.
func pulls(likely, times float64) float64 { return math.Min(times*likely, math.Max(likely, tautest)) }

func (b *Boat) jury(w *Without) (*jury, error) {
	j := &jury{likely: b.Likely(), corners: b.Corners(), slack: b.Fit}
	whole, err := b.Model.held()
	if err != nil {
		return nil, err
	}
	if j.in, err = tie(whole, nil); err != nil {
		return nil, err
	}
	left := whole
	if len(w.ribs) > 0 {
		less, err := b.Model.lacking(w.ribs)
		if err != nil {
			return nil, err
		}
		if left, err = less.held(); err != nil {
			return nil, err
		}
	}
	j.out, err = tie(left, w.struts)
	return j, err
}

// bares holds the ribs' heads by the shares that are tried: none, the likely one and all.
func (m *Model) bares() (map[float64]*bare, error) {
	shares := []float64{0, 1}
	out := map[float64]*bare{}
	if m.settled != nil {
		out[m.likely.Heads] = m.settled
	} else {
		shares = append(shares, m.likely.Heads)
	}
	found, faults := make([]*bare, len(shares)), make([]error, len(shares))
	sidebyside.Each(len(shares), func(i int) { found[i], faults[i] = m.bare(shares[i]) })
	for i, heads := range shares {
		out[heads] = found[i]
	}
	return out, errors.Join(faults...)
}

// tie puts all cross pieces but those that are out into each of the frames.
func tie(by map[float64]*bare, out map[int]bool) (map[float64]*tied, error) {
	all := map[float64]*tied{}
	for heads, b := range by {
		var err error
		if all[heads], err = b.with(out); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// causes moves one thing after another from where it is likely to its limits.
func (s set) causes() []Cause {
	var out []Cause
	room := s.room()
	for _, limit := range []func(c *Case){
		func(c *Case) { c.Cloth = pulls(c.Cloth, slacker) },
		func(c *Case) { c.Cloth = pulls(c.Cloth, tauter) },
		func(c *Case) { c.Cold = 1 },
		func(c *Case) { c.Heads = 0 },
		func(c *Case) { c.Heads = 1 },
		func(c *Case) { c.Heads, c.Upright = 1, 1 },
	} {
		c := s.likely
		if limit(&c); c != s.likely { // no cloth, no pull
			_, moved := s.try(c, room)
			out = append(out, Cause{c, min(0, slices.Min(moved)), max(0, slices.Max(moved))})
		}
	}
	return out
}

// band tries the likely case and every corner.
func (s set) band() Band {
	m := s.in[s.likely.Heads].m
	b, room := Band{x: m.x}, s.room()
	for _, c := range append([]Case{s.likely}, s.corners...) {
		push, moved := s.try(c, room)
		if b.Moved == nil {
			b.Moved, b.Forces = ranges(moved), ranges(push)
		}
		for k, v := range push {
			b.Forces[k].take(v)
		}
		for k, v := range moved {
			b.Moved[k].take(v)
			here := Extreme{v, m.x[k], c}
			if c == s.likely && math.Abs(v) > math.Abs(b.Likely.Moved) {
				b.Likely = here
			}
			if v < b.Least.Moved {
				b.Least = here
			}
			if v > b.Most.Moved {
				b.Most = here
			}
		}
	}
	return b
}

func ranges(likely []float64) []Range {
	out := make([]Range, len(likely))
	for i, v := range likely {
		out[i] = Range{v, v, v}
	}
	return out
}

// room is for the changes of beam at every node.
func (s set) room() []float64 { return make([]float64, len(s.in[s.likely.Heads].m.first)) }

// try returns the push of each cross piece in one case, and the change of beam at every
// node, in the room given, when members come out.
func (s set) try(c Case, moved []float64) (push, _ []float64) {
	in, out := s.in[c.Heads], s.out[c.Heads]
	before, after := s.before.in(c), s.after.in(c)
	push = in.pushes(func(k int) float64 { return in.free(k, c, before) }, s.slack)
	left := out.pushes(func(k int) float64 { return out.free(k, c, after) }, s.slack)
	for i, at := range in.m.first {
		then := out.m.first[i]
		v := 0.0
		if out.bare != in.bare {
			v = out.free(then, c, after) - in.free(at, c, before)
		}
		for k, p := range push {
			v += left[k]*out.struts[k][then] - p*in.struts[k][at]
		}
		moved[i] = 2 * v
	}
	return push, moved
}
