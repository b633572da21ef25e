// Package altered gives a design other measures, those that a person asks for first, and
// keeps what belongs to each in proportion: a longer boat has its ribs, seats and
// spreaders farther apart, a wider one its spreaders wider too.
package altered

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// Change gives one measure another value, mm.
type Change struct {
	Measure Measure
	To      float64 // in the measure's unit
}

// Of returns the design with its measures changed, one after the other; the design
// itself stays as it is. No change gives the same design.
//
// Units: each measure's own; new lengths are rounded to half a millimetre, as a rule reads them.
// Errors: a measure that the design has not, a value outside its band, or a design that
// nobody can build; each says which measure, the value and what is accepted.
func Of(d *design.Design, changes ...Change) (*design.Design, error) {
	out := d.Copy()
	for _, c := range changes {
		b, ok := c.Measure.Band(d)
		if !ok {
			return nil, fmt.Errorf("%s: this boat has none", c.Measure)
		}
		if !(c.To >= b.Least && c.To <= b.Most) {
			return nil, fmt.Errorf("%s of %s %s is out of range; accepted: %s to %s %s: %s", c.Measure, plain(c.To), c.Measure.Unit(), plain(b.Least), plain(b.Most), c.Measure.Unit(), b.Why)
		}
		// Not what it was in d: a longer boat has moved its seats.
		if now, _ := c.Measure.Band(out); c.To != now.Now {
			c.Measure.put(out, now.Now, c.To)
		}
	}
	if p := out.Check(); p != nil {
		return nil, fmt.Errorf("altered so, %s %s", p.Key, p.Text)
	}
	return out, nil
}

// plain writes a value to a tenth, as no slider sets it finer.
func plain(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64) }

// Said is what changes do to a design, in a line, as its next edition says it.
func Said(d *design.Design, changes ...Change) string {
	var out []string
	for _, c := range changes {
		if b, ok := c.Measure.Band(d); ok && b.Now != c.To {
			out = append(out, fmt.Sprintf("%s %s %s to %s %[3]s", c.Measure, plain(b.Now), c.Measure.Unit(), plain(c.To)))
		}
	}
	return strings.Join(out, ", ")
}

// scale multiplies lengths.
func scale(k float64, all ...*measure.Length) {
	for _, l := range all {
		*l = rounded(float64(*l) * k)
	}
}

func rounded(mm float64) measure.Length { return measure.Length(math.Round(mm*2) / 2) }

// lengthen stretches all that is measured along the boat but its ends: a stem keeps its
// form.
func lengthen(d *design.Design, k float64) {
	h, g := &d.Hull, &d.Gunwale
	scale(k, &h.Length, &h.KeelStraight, &g.EdgeSetFrom, &d.Ribs.Pitch, &d.Ribs.FromBow, &d.Ribs.FromStern)
	for i := range h.Spreaders {
		scale(k, &h.Spreaders[i].At)
	}
	for i := range h.Sections {
		scale(k, &h.Sections[i].At)
	}
	for i := range g.Scarfs {
		scale(k, &g.Scarfs[i])
	}
	for i := range d.Thwarts {
		scale(k, &d.Thwarts[i].At)
	}
	for i := range d.Seats {
		scale(k, &d.Seats[i].At)
	}
	for i := range d.Crew {
		scale(k, &d.Crew[i].At)
	}
	for i := range d.Gear {
		scale(k, &d.Gear[i].At)
	}
}

// widen spreads the gunwales, and rounds the bilges by half of it.
func widen(d *design.Design, k float64) {
	scale(k, &d.Hull.Beam)
	for i := range d.Hull.Spreaders {
		scale(k, &d.Hull.Spreaders[i].Beam)
	}
	bilges(d, math.Sqrt(k))
}

// deepen raises the sides, and rounds the bilges by half of it.
func deepen(d *design.Design, k float64) {
	scale(k, &d.Hull.Depth)
	bilges(d, math.Sqrt(k))
}

func bilges(d *design.Design, k float64) {
	for i := range d.Hull.Sections {
		scale(k, &d.Hull.Sections[i].BilgeRadius)
	}
}
