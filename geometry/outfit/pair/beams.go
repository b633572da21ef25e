package pair

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// Case is one way in which the beams are loaded, and what it does to the beam that
// bears most of it.
type Case struct {
	Name   string
	Load   float64 // N, on that beam
	Moment float64 // N m, greatest
	Stress float64 // N/mm2
	Sag    float64 // mm; 0 where it is not worked
	Lash   float64 // N, the greatest pull on one lashing
	Why    string  // how it is taken
}

// Load cases are taken with these. From memory, estimates.
const (
	stepping = 1.5  // a person who steps or jumps weighs so many times more
	aheadOf  = 0.25 // of the waterline: where a wave lifts a bow, and the other's stern
	softest  = 60.0 // a beam that sags more than the spacing over this feels unsafe
)

// Lashings: turns of cord of this working pull in each part, N; braided polyester
// of 4 mm breaks at some 3 kN, a knot halves it, and a third of that is worked with.
// From memory.
const CordPull = 500.0

// Turns returns how many turns of cord a lashing needs for a pull, at least 4.
func Turns(pull float64) int { return max(4, int(math.Ceil(pull/(2*CordPull)))) }

type bearing struct {
	spacing   float64    // between the hulls' middle lines, mm
	at        []float64  // stations of the beams, mm
	hull      float64    // weight of the heavier hull with its people, N
	waterline float64    // length of the longer waterline, mm
	grip      float64    // between the lashings on one hull, over its gunwales, mm
	person    float64    // N
	area      [2]float64 // area of each waterplane, mm2
	inertia   float64    // of both, mm4
}

func (b bearing) cases(s beam.Section, wood timber.Species) []Case {
	n := float64(len(b.at))
	sumSq, far := 0.0, 0.0
	for _, x := range b.at {
		sumSq += x * x
		far = math.Max(far, math.Abs(x))
	}
	var out []Case
	add := func(c Case) {
		c.Stress = c.Moment * 1000 / s.Modulus
		out = append(out, c)
	}
	// A person between the hulls: each hull's water holds up its own middle line and
	// lets it roll, so the beam rests there.
	step := stepping * b.person
	add(Case{Name: "person on the middle of one beam", Load: step, Moment: beam.Middle().Bending(step, b.spacing) / 1000,
		Sag: beam.Middle().Gives(b.person, b.spacing, wood.MOE, s), Lash: step / 4,
		Why: fmt.Sprintf("resting on the hulls' middle lines, %g times the weight for a step; %.0f kg, and the sag without a step", stepping, b.person/measure.Gravity)})
	// A person at the outer gunwale of one hull turns that hull against the beams;
	// the other hull's water gives or takes what keeps the whole in balance.
	y := (b.spacing + b.grip) / 2
	other := step * (b.area[1]/(b.area[0]+b.area[1]) - b.area[1]*b.spacing/2*y/b.inertia)
	side := step * b.grip / 2 / n
	add(Case{Name: "person on the outer gunwale of one hull", Load: math.Abs(other) / n, Moment: side / 1000, Lash: side/b.grip + math.Abs(other)/n/2,
		Why: fmt.Sprintf("the hull may not roll by itself; shared by the beams, %g times the weight for a step", stepping)})
	// Bow of one hull and stern of the other lifted: the weight of a hull times its
	// arm turns it against the beams, which sway, held from turning by both gunwales.
	arm := aheadOf * b.waterline
	f := b.hull * arm * far / sumSq
	m := beam.Sway().Bending(f, b.spacing)
	add(Case{Name: "hulls lifted at opposite ends", Load: f, Moment: m / 1000, Sag: beam.Sway().Gives(f, b.spacing, wood.MOE, s), Lash: m/b.grip + f/2,
		Why: "each hull on a crest a quarter of its waterline from midship"})
	// The windward hull hangs in the air: no wind can load the beams more. The mast
	// stands between the hulls and its moment is what holds the hull up.
	h := b.hull / n
	add(Case{Name: "sail: windward hull lifted clear", Load: h, Moment: h * b.spacing / 2 / 1000, Lash: h / 2,
		Why: "its weight at half the spacing, shared by the beams: the mast must stand on a plank across all of them, which is not drawn here"})
	return out
}

// worst returns the greatest stress of the cases, the greatest pull on a lashing and
// the sag under a person.
func worst(all []Case) (stress, lash, sag float64) {
	for _, c := range all {
		stress, lash = math.Max(stress, c.Stress), math.Max(lash, c.Lash)
	}
	return stress, lash, all[0].Sag
}

// size finds the least beam in whole steps of 5 mm, one and a half times as deep as
// wide where its width is not given, that carries all cases.
func size(b bearing, wood timber.Species, width, depth float64) (w, d float64, enough bool) {
	fits := func(w, d float64) bool {
		stress, _, sag := worst(b.cases(beam.Rectangle(w, d), wood))
		return stress <= beam.Working(wood) && sag <= b.spacing/softest
	}
	if width > 0 && depth > 0 {
		return width, depth, fits(width, depth)
	}
	for v := 30.0; v <= mostBeam; v += 5 {
		w, d = width, v
		if width == 0 {
			w = math.Max(30, math.Ceil(v/1.5/5)*5)
		}
		if depth > 0 {
			w, d = v, depth
		}
		if fits(w, d) {
			return w, d, true
		}
	}
	return w, d, false
}

// mostBeam is the largest beam that is tried, mm.
const mostBeam = 300.0

func newtons(kg float64) float64 { return kg * measure.Gravity }
