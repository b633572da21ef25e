// Package handwork tells how true a builder must be: what each error of hand work does
// to the finished boat, which errors matter, and how far boats come out apart.
//
// To the first order a finished shape is the design and the sum of sensitivity times
// error. The model of the frame is the one of the package balance with a keel under it:
//
//   - A rib's head. Every error of a rib moves its free head: out by u and up by v. A
//     length more at each end moves it along its last heading; a bend e too far out
//     moves it by e (cos a - cos b) and e (sin a - sin b), a and b the headings before
//     and after the bend; a rib that keeps less of its bends swings open about each of
//     them (see rib.go).
//   - Breadth. The gunwales rest where ribs, cross pieces and their own bend balance. A
//     rib that stands free wider, a cross piece that is longer and a gunwale that was
//     glued wider around a spreader go into that balance as such.
//   - Depth. A rib whose head is held where the gunwale is stands deeper by v and by
//     what closing it to that breadth lifts it. The keel is a batten, a hundred times
//     stiffer over a few ribs than a rib is: it rests on the ribs as on springs, between
//     the stems. So a rib that is long does not make a hollow in the keel; the builder
//     feels it push, and the boat takes a share of it over a meter of its length. The
//     string at the rocker heights sets the stems; it does not stay in the boat.
//   - The stems stand too high or too low with the ends of keel and gunwales on them.
//   - Afloat, trim and GM follow from the half-breadth and the keel at every rib, and
//     from the weights that ride on them.
//
// Left out: the two sides of one rib differ, gunwales bend in height, a rib that the
// keel pushes spreads the gunwales, ends of the boat lengthen.
//
// Source: the rule of errors as in F. Scholz, Tolerance stack analysis methods, 1995:
// an error that all ribs share is one error; those that do not are added by squares.
package handwork

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/trial/balance"
)

// Within is how many standard deviations to either side nine boats in ten lie.
const Within = 1.645

// Report is how true the builder of one frame must be.
type Report struct {
	Frame    *frame.Frame
	Outcomes []Outcome // what comes out, those that the frame has
	Errors   []Error   // all, the worst first

	KeelTakes []float64 // by rib from aft: of each mm that one rib by itself stands too deep or too shallow, what the keel there takes
}

// Outcome is one measure of the finished boat, mm.
type Outcome struct {
	Name    string
	Of      Measure
	Matters float64 // a change of it that a builder would notice or mind, mm: our own choice
	Spread  Spread  // nine boats in ten lie within so much of the design, mm
	at      func(effect) float64
}

// Spread is how far off nine in ten of each kind of builder's work lies.
type Spread struct{ First, Practiced float64 }

// Error is one kind of error of hand work, with what it does.
type Error struct {
	Name   string
	Rank   int      // its place among all, from 1
	From   float64  // midship, either way, of spreaders; 0 for midship, mm
	Placed bool     // From means something
	Unit   string   // "mm", "%", or "points" of springback
	Usual  Spread   // one standard deviation of it, in its unit
	Each   bool     // it is one error at each place, none knowing of the others
	Moves  []Spread // by outcome: nine boats in ten are moved within so much by it alone, mm
	Hits   int      // the outcome that it moves most, measured by what matters there
	Share  float64  // of the spread of that outcome, squares added, for a first boat
	weight float64  // moves over matters there, for a first boat
}

// Matters tells whether it alone moves anything by a fifth of what a builder would mind,
// in one of ten first boats: our own limit.
func (e Error) Matters() bool { return e.weight >= 0.2 }

// Of works it out for a frame and its balance, with the boat and what it carries for
// trim and GM; a boat that does not rest upright has none of the two.
//
// Errors: a section from which half a millimeter takes the shape away, a wood that is
// not known, a frame that does not stand.
func Of(b *balance.Boat, carried *aboard.Boat) (*Report, error) {
	m, err := newModel(b, carried)
	if err != nil {
		return nil, fmt.Errorf("how true to work: %w", err)
	}
	slips := m.slips()
	r := &Report{Frame: b.Frame, Outcomes: m.outcomes()}
	for i, rests := range m.keel.by {
		r.KeelTakes = append(r.KeelTakes, rests[i])
	}
	effects := make([]effect, len(slips))
	for i, s := range slips {
		effects[i] = m.effect(s.does)
	}
	r.worst(m, slips, effects)
	r.sum(slips, effects)
	return r, nil
}

// worst points the outcomes that are read where they are worst at the rib where first
// boats spread most.
func (r *Report) worst(m *model, slips []slip, effects []effect) {
	for k := range r.Outcomes {
		o := &r.Outcomes[k]
		along := worstAlong[o.Name]
		if along == nil {
			continue
		}
		most, at := -1.0, 0
		for i := range m.ribs {
			sum := 0.0
			for s := range slips {
				v := along(effects[s])[i] * slips[s].usual.First
				sum += v * v
			}
			if sum > most*(1+1e-9) { // of two that are alike the after one
				most, at = sum, i
			}
		}
		o.Name = fmt.Sprintf(o.Name, m.ribs[at].Name)
		o.at = func(e effect) float64 { return along(e)[at] }
	}
}

// sum adds the slips of a kind up to its error, and all errors to the spreads.
func (r *Report) sum(slips []slip, effects []effect) {
	squares := make([]Spread, len(r.Outcomes))
	var moves [][]Spread // by error and outcome, squares
	for i, s := range slips {
		at := slices.IndexFunc(r.Errors, func(e Error) bool { return e.Name == s.name && e.From == s.from })
		if at < 0 {
			at = len(r.Errors)
			r.Errors = append(r.Errors, Error{Name: s.name, From: s.from, Placed: s.placed, Unit: s.unit, Usual: s.usual, Each: s.each})
			moves = append(moves, make([]Spread, len(r.Outcomes)))
		}
		sum := moves[at]
		for k, o := range r.Outcomes {
			v := o.at(effects[i])
			first, practiced := v*s.usual.First, v*s.usual.Practiced
			sum[k].First += first * first
			sum[k].Practiced += practiced * practiced
			squares[k].First += first * first
			squares[k].Practiced += practiced * practiced
		}
	}
	for k := range r.Outcomes {
		r.Outcomes[k].Spread = within(squares[k])
	}
	for i := range r.Errors {
		r.Errors[i].judge(moves[i], squares, r.Outcomes)
	}
	rank(r.Errors)
}

func within(squares Spread) Spread {
	return Spread{Within * math.Sqrt(squares.First), Within * math.Sqrt(squares.Practiced)}
}
