package body

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Estimate is a measure that was not taken, worked out from those that were.
type Estimate struct {
	Name   string  // in the trade's words, as formulas use it
	Value  float64 // mm
	Spread float64 // one standard deviation, mm; 0 for a value measured on the person
	Doc    string
}

// line is a regression on stature (mm) and weight (kg), with the standard
// deviation of what it leaves, mm.
type line struct{ base, stature, weight, spread float64 }

func (l line) at(p Person) float64 { return l.base + l.stature*p.Stature + l.weight*p.Weight }

// regressed is a measure with a line for each sex. The lines were fitted by
// least squares to the individual records of the survey named by Source.
type regressed struct {
	name, doc  string
	woman, man line
}

// The arm span stands first.
func regressions() []regressed {
	return []regressed{
		{"span", "arm span, fingertip to fingertip", line{-64, 1.059, 0, 48}, line{29, 1.016, 0, 48}},
		{"sitting_height", "crown above the seat, sitting", line{216, 0.393, 0, 21}, line{206, 0.406, 0, 22}},
		{"hip_breadth", "breadth of the hips, sitting", line{306, -0.052, 2.64, 18}, line{261, -0.027, 1.94, 14}},
		{"buttock_knee", "back of the buttocks to front of the knee, sitting", line{-28, 0.380, 0, 22}, line{-9, 0.357, 0, 18}},
		{"popliteal_height", "hollow of the knee above the floor, sitting", line{-94, 0.296, 0, 14}, line{-107, 0.306, 0, 13}},
		{"knee_height", "top of the knee above the floor, sitting", line{-91, 0.370, 0, 13}, line{-84, 0.363, 0, 13}},
		{"thigh", "thickness of the thigh, sitting", line{148, -0.037, 1.18, 8}, line{166, -0.040, 1.00, 8}},
		{"shoulder_breadth", "breadth over the upper arms", line{387, -0.063, 2.44, 14}, line{433, -0.061, 2.15, 15}},
	}
}

// scaled is a measure that is taken to grow in proportion to stature: the
// survey's median over its median stature.
type scaled struct{ name, doc, measure string }

func proportions() []scaled {
	return []scaled{
		{"shoulder_joints", "between the points of the shoulders", "biacromialbreadth"},
		{"shoulder_height", "point of the shoulder above the floor, standing", "acromialheight"},
		{"upper_arm", "point of the shoulder to elbow", "shoulderelbowlength"},
		{"forearm", "elbow to fingertip", "forearmhandlength"},
		{"hand_breadth", "breadth of the hand", "handbreadth"},
		{"foot", "length of the foot", "footlength"},
		{"eye_height", "eyes above the seat, sitting", "eyeheightsitting"},
	}
}

// Estimates returns every measure that formulas may use besides weight and
// stature. An arm span measured on the person counts as measured and moves the
// arms: each takes half of what the span differs from its estimate, shared
// between upper arm and forearm by their lengths.
func (p Person) Estimates() []Estimate {
	var out []Estimate
	longer := 0.0
	for _, r := range regressions() {
		e := r.of(p)
		if r.name == "span" && p.Span != 0 {
			longer = (p.Span - e.Value) / 2
			e.Value, e.Spread = p.Span, 0
		}
		out = append(out, e)
	}
	for _, s := range proportions() {
		out = append(out, s.of(p))
	}
	is := func(name string) *Estimate {
		return &out[slices.IndexFunc(out, func(e Estimate) bool { return e.Name == name })]
	}
	upper, fore := is("upper_arm"), is("forearm")
	share := upper.Value / (upper.Value + fore.Value)
	upper.Value += longer * share
	fore.Value += longer * (1 - share)
	return out
}

func (r regressed) of(p Person) Estimate {
	w, m := r.woman.at(p), r.man.at(p)
	switch p.Sex {
	case Woman:
		return Estimate{r.name, w, r.woman.spread, r.doc}
	case Man:
		return Estimate{r.name, m, r.man.spread, r.doc}
	}
	return Estimate{r.name, (w + m) / 2, math.Hypot((r.woman.spread+r.man.spread)/2, (w-m)/2), r.doc}
}

// of scales a median. The spread is what the survey's spread of the measure
// leaves when the share that follows stature is taken off; 1.645 standard
// deviations reach from the median to the 95th percentile of a normal spread.
func (s scaled) of(p Person) Estimate {
	stature, m := mustMeasure("stature").Of(p.Sex), mustMeasure(s.measure).Of(p.Sex)
	ratio := m.P50 / stature.P50
	own := (m.P95 - m.P5) / (2 * 1.645)
	by := ratio * (stature.P95 - stature.P5) / (2 * 1.645)
	left := math.Max(0.3*own, math.Sqrt(math.Max(0, own*own-by*by)))
	return Estimate{Name: s.name, Value: ratio * p.Stature, Spread: left, Doc: s.doc}
}

// alike is the correlation of weight with stature among adults of one sex, from
// memory: between 0.4 and 0.5 in most surveys.
const alike = 0.45

// Random returns a body of either sex, as common as the survey has it, with
// weight, stature and arm span inside the 5th to 95th percentile of its sex. The
// span scatters about its estimate. The same source of chance gives the same bodies.
func Random(r *rand.Rand) Person {
	p := Person{Sex: Woman}
	if r.IntN(2) == 1 {
		p.Sex = Man
	}
	tall, heavy := within90(r), math.Inf(1)
	for math.Abs(heavy) > limit90 {
		heavy = alike*tall + math.Sqrt(1-alike*alike)*r.NormFloat64()
	}
	p.Stature = mustMeasure("stature").Of(p.Sex).at(tall)
	p.Weight = mustMeasure("weightkg").Of(p.Sex).at(heavy)
	e, common := regressions()[0].of(p), mustMeasure("span").Of(p.Sex)
	p.Span = math.Max(common.P5, math.Min(common.P95, e.Value+e.Spread*within90(r)))
	return p
}

// limit90 is how many standard deviations hold the middle 90 of 100.
const limit90 = 1.6448536

func within90(r *rand.Rand) float64 {
	for {
		if z := r.NormFloat64(); math.Abs(z) <= limit90 {
			return z
		}
	}
}

// at returns the value z standard deviations from the median of a spread that
// has its own scale on each side.
func (p Percentiles) at(z float64) float64 {
	if z < 0 {
		return p.P50 + z/limit90*(p.P50-p.P5)
	}
	return p.P50 + z/limit90*(p.P95-p.P50)
}
