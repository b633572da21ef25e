package weighing

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/wording"
)

// CanMiddle is how high over the floor the middle of a can of water of 10 kg stands, mm.
const CanMiddle = 150.0

// ParseIncline reads a test as people write it: a mass, a distance from the middle line and
// angles in degrees, as "10kg 200mm 7.5 -7.9".
//
// Errors: fewer than four figures, one that is not understood or out of range, and what
// Check refuses.
func ParseIncline(text string) (*Incline, error) {
	words := figures(text)
	if len(words) < 4 {
		return nil, errors.New("a mass, a distance and at least two angles are wanted, as '10kg 200mm 7.5 -7.9'")
	}
	kg, dim, err := formula.Quantity(words[0])
	if err != nil || dim != formula.Mass {
		return nil, fmt.Errorf("%q is not understood; accepted: a number with its unit, as 10kg or 22lb", wording.Clip(words[0], 30))
	}
	if !(kg >= 0.5 && kg <= 200) {
		return nil, fmt.Errorf("%s is out of range; accepted: 0.5 kg to 200 kg", formula.ShowNumber(kg, formula.Mass))
	}
	d, err := measure.ParseLength(words[1])
	if err == nil && !(d >= 50 && d <= 1000) {
		err = fmt.Errorf("a distance of %s is out of range; accepted: 50 to 1000 mm", d)
	}
	if err != nil {
		return nil, err
	}
	out := &Incline{Mass: kg, Distance: float64(d)}
	for _, w := range words[2:] {
		a, err := strconv.ParseFloat(strings.TrimSuffix(w, "deg"), 64)
		if err != nil || !(a >= -90 && a <= 90) {
			return nil, fmt.Errorf("angle %q of degrees is not understood; accepted: a number, -90 to 90", wording.Clip(w, 30))
		}
		out.Angles = append(out.Angles, a*math.Pi/180)
	}
	return out, out.Check()
}

// figures are the words of a text, each unit behind its figure.
func figures(text string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' }) {
		if n := len(out); n > 0 && !strings.ContainsAny(w, "0123456789") {
			out[n-1] += w
		} else {
			out = append(out, w)
		}
	}
	return out
}

// ShowIncline writes a test as ParseIncline reads it, "" for none.
func ShowIncline(i *Incline) string {
	if i == nil {
		return ""
	}
	out := []string{formula.WriteMass(i.Mass), measure.Length(i.Distance).String()}
	for _, a := range i.Angles {
		out = append(out, strconv.FormatFloat(a*180/math.Pi, 'g', 6, 64))
	}
	return strings.Join(out, " ")
}
