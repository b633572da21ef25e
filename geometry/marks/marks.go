// Package marks lists every number that a builder puts on wood or holds the boat to,
// in one flat list: what the JSON of a boat is written from, and what two editions of
// a design or a boat as built can be compared by.
package marks

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/trial/bend"
)

// Unit is what the value and the tolerance of a mark are in.
type Unit string

// The units, as everywhere inside.
const (
	Millimeter Unit = "mm"
	Radian     Unit = "rad"
)

// Name says which mark of a boat one is. No two marks of a list have the same.
type Name struct {
	Part     string // "gunwale", "mortise F3", "block 1" from aft, "rib F3", "bow stem", "spreader 1" from aft, "thwart 1" as the patterns number it, "seat 1" as the design has it, "stringer 1" from the keel up
	Quantity string // "stock length", "from midship", "bend mark", "middle of rib F3"
	Number   int    // from 1 where a part has several of the quantity; 0 where it has one
}

// Mark is one number.
type Mark struct {
	Name
	Value     float64 // finite
	Unit      Unit
	Tolerance float64 // how far the work may be off without harm, either way, in the same unit; > 0
}

// Of lists the marks of a frame in the order of the work: gunwales and their
// mortises, the ends, the shape to hold, the cross pieces, the ribs, the battens, the
// skin and what goes on over it. The starboard half is the mirror of the port one and has no marks of its own.
// What a boat does not have (a scarf, a radius of a straight piece) has no mark.
//
// b is how the wood of the same frame is bent and joined; without it (nil) the radii and
// widths that ribs are bent and relaxed to are left out, and the holes of the joints.
//
// Errors: a number that is not finite, by its name; without b a wood that is not known.
func Of(f *frame.Frame, b *bend.Report) ([]Mark, error) {
	l := &list{}
	l.gunwale(f, b)
	for _, m := range f.Gunwale.Mortises {
		l.mortise(m)
	}
	l.blocks(&f.Gunwale)
	l.ends(f, b)
	l.hull(f)
	l.spreaders(f)
	for i, t := range f.Thwarts {
		l.thwart(i, t, f.Gunwale.Tilt)
	}
	for _, s := range f.Seats {
		l.seat(s)
	}
	for i := range f.Ribs {
		l.rib(f, i, b)
	}
	if b != nil {
		l.ribPeg(&b.Joints.Head)
	}
	l.battens(f)
	l.skin(f)
	if err := l.fitted(f, b); err != nil {
		return nil, err
	}
	for _, m := range *l {
		if !geometry.Finite(m.Value) {
			return nil, fmt.Errorf("%s: %s is not a finite number (%v)", m.Part, m.Quantity, m.Value)
		}
	}
	return *l, nil
}

// fitted adds what is fitted outside the skin and inside.
func (l *list) fitted(f *frame.Frame, b *bend.Report) error {
	if b != nil {
		l.outside(f, b.Outside.Fit)
		l.inside(b.Inside)
		return nil
	}
	p, err := fittings.Placed(f)
	if err != nil {
		return err
	}
	l.outside(f, p.Outside)
	l.inside(p.Inside)
	return nil
}

// Index returns the marks of a list by name.
func Index(all []Mark) map[Name]Mark {
	out := make(map[Name]Mark, len(all))
	for _, m := range all {
		out[m.Name] = m
	}
	return out
}

// list is a list that is being written.
type list []Mark

// add adds marks of a part and passes over those that are none.
func (l *list) add(part string, all ...Mark) {
	for _, m := range all {
		if m.Unit != "" {
			m.Part = part
			*l = append(*l, m)
		}
	}
}

// length is a length, mm, with its tolerance.
func length(quantity string, mm, tolerance float64) Mark {
	return Mark{Name{Quantity: quantity}, mm, Millimeter, tolerance}
}

// radius is that of a bend or a form; no mark for a straight one, whose radius is 0 or
// infinite.
func radius(quantity string, r float64) Mark {
	if r == 0 || math.IsInf(r, 0) {
		return Mark{}
	}
	return length(quantity, r, turned*r)
}

// angle is an angle, radians.
func angle(quantity string, a float64) Mark { return Mark{Name{Quantity: quantity}, a, Radian, bevel} }

// nth is the mark with the number n of several.
func (m Mark) nth(n int) Mark {
	m.Number = n
	return m
}
