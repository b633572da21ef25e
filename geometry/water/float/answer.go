package float

import (
	"fmt"

	"ribwright/geometry"
)

// Answer is how a boat that rests upright answers small changes of its sections and of
// its load: to the first order, without floating it anew. It is for one goroutine.
type Answer struct {
	hull   *Hull
	plane  Plane
	load   Load
	under  Immersed
	parts  []Immersed // the same, by section
	now    section    // room for the one that is asked about
	slopes slopes
	gm     float64
	byRise float64 // GM for each mm that the water rises
	byTrim float64 // GM for each radian of trim
}

// Answer readies the boat that rests on the plane p, without heel, with the load l.
func (h *Hull) Answer(p Plane, l Load) *Answer {
	a := &Answer{hull: h, plane: p, load: l, under: h.Immerse(p)}
	a.parts = make([]Immersed, len(h.sections))
	for i, s := range h.sections {
		a.parts[i].add(s, p.knife())
	}
	a.slopes, a.gm = a.under.slopes(p, l.At), GM(p, a.under, l)
	const up, turn = 0.1, 1e-4 // mm, radians: sections are polygons, so the water moves smoothly over them
	at := func(rise, trim float64) float64 {
		q := p
		q.Rise, q.Trim = p.Rise+rise, p.Trim+trim
		return GM(q, h.Immerse(q), l)
	}
	a.byRise = (at(up, 0) - at(-up, 0)) / (2 * up)
	a.byTrim = (at(0, turn) - at(0, -turn)) / (2 * turn)
	return a
}

// Section returns what comes to lie under the water at rest when the section with the
// number i, from aft, has another half outline (see Station).
//
// Errors: an outline that is none.
func (a *Answer) Section(i int, half []geometry.Point) (Immersed, error) {
	was := a.hull.sections[i]
	if err := a.now.outline(Station{X: was.x, Half: half}); err != nil {
		return Immersed{}, fmt.Errorf("station %.1f mm: %w", was.x, err)
	}
	a.now.weight = was.weight
	var after Immersed
	after.add(&a.now, a.plane.knife())
	return after.Plus(a.parts[i], -1), nil
}

// Plus returns m and so many times o.
func (m Immersed) Plus(o Immersed, times float64) Immersed {
	m.Volume += times * o.Volume
	m.Moment = m.Moment.Add(geometry.Point3{X: times * o.Moment.X, Y: times * o.Moment.Y, Z: times * o.Moment.Z})
	m.Area += times * o.Area
	m.alongFirst += times * o.alongFirst
	m.alongSecond += times * o.alongSecond
	m.acrossFirst += times * o.acrossFirst
	m.acrossSecond += times * o.acrossSecond
	return m
}

// To returns by how much trim (radians) and GM (mm) change when so much more lies under
// the water at rest, the weight moves by the step, mm, and a small load comes aboard.
func (a *Answer) To(more Immersed, step geometry.Point3, aboard Load) (trim, gm float64) {
	moved := Total(a.load, aboard)
	moved.At = moved.At.Add(step)
	ahead := a.plane.Ahead()
	lever := ahead.Dot(a.load.At)
	volume := more.Volume - a.under.Volume*(moved.Mass/a.load.Mass-1)
	moment := ahead.Dot(more.Moment) - more.Volume*lever - a.under.Volume*(ahead.Dot(moved.At)-lever)
	rise, trim := a.slopes.step(volume, moment)
	gm = GM(a.plane, a.under.Plus(more, 1), moved) - a.gm
	return trim, gm + a.byRise*rise + a.byTrim*trim
}
