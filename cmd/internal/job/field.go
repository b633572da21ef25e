package job

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/water"
	"ribwright/geometry/wording"
)

// Field is one choice of a request. A flag, a line of a form and a word of an address
// have the same name, words and default, for all read this.
type Field struct {
	Name  string // "paper"
	Group string // the heading it stands under; "" for what is the job's own
	Takes string // what a value looks like, "length" or "letter|a4"; "" for yes or no
	Says  string // what it is for
	Value
	Many bool // each setting adds one
}

// Value reads and writes a field's value as text.
type Value interface {
	// String returns the value as Set reads it, "" where nothing is set.
	String() string
	// Set reads a value. Errors: what is wrong with it, and what is accepted.
	Set(string) error
}

// The groups of fields that several requests share.
const (
	paperGroup  = "Paper and printer"
	cutterGroup = "Cutter"
)

// binding is a value that lives in a request.
type binding[T any] struct {
	to   *T
	read func(string) (T, error)
	show func(T) string
}

func (b binding[T]) String() string { return b.show(*b.to) }
func (b binding[T]) Set(text string) error {
	v, err := b.read(text)
	if err == nil {
		*b.to = v
	}
	return err
}

// bind makes a value of a place in a request and of how its text is read and shown.
func bind[T any](to *T, read func(string) (T, error), show func(T) string) Value {
	return binding[T]{to, read, show}
}

// orNothing shows a value, and nothing of one that stands for none.
func orNothing[T comparable](show func(T) string) func(T) string {
	return func(v T) string {
		var none T
		if v == none {
			return ""
		}
		return show(v)
	}
}

// list is a value to which each setting adds one, or several with semicolons between.
func list[T any](to *[]T, read func(string) (T, error), show func(T) string) Value {
	return bind(to, func(text string) ([]T, error) {
		all := slices.Clone(*to)
		for _, one := range strings.Split(text, ";") {
			v, err := read(strings.TrimSpace(one))
			if err != nil {
				return nil, err
			}
			all = append(all, v)
		}
		return all, nil
	}, func(all []T) string {
		var out []string
		for _, v := range all {
			out = append(out, show(v))
		}
		return strings.Join(out, "; ")
	})
}

// words is text as it is.
func words(to *string) Value {
	return bind(to, asIs, func(s string) string { return s })
}

// without is the field that names what is taken out.
func without(to *[]string) Field {
	return Field{Name: "without", Takes: "members", Says: "members to take out: seat, seat-1, yoke, thwart, thwart-2, a name, a rib as F3; a boat afloat gives up seats alone", Value: bind(to, listed, joined)}
}

// listed and joined are words with commas between them.
func listed(s string) ([]string, error) { return strings.Split(s, ","), nil }

func joined(v []string) string { return strings.Join(v, ",") }

func asIs(s string) (string, error) { return s, nil }

// yes is a choice that is made or not.
func yes(to *bool) Value { return bind(to, yesOrNo, strconv.FormatBool) }

// yesOrNo reads whether a choice is made.
func yesOrNo(s string) (bool, error) {
	is, err := strconv.ParseBool(s)
	if err != nil {
		return false, fmt.Errorf("%q is not understood; accepted: true or false", s)
	}
	return is, nil
}

// whole is a whole number from low to high; a lower one stands for none.
func whole(to *int, low, high int) Value {
	return bind(to, func(s string) (int, error) {
		n, err := strconv.Atoi(strings.TrimSpace(s))
		if err != nil || n < low || n > high {
			return 0, fmt.Errorf("%q is not understood; accepted: a whole number, %d to %d", s, low, high)
		}
		return n, nil
	}, func(n int) string {
		if n < low {
			return ""
		}
		return strconv.Itoa(n)
	})
}

// length is a length in mm from low to high; 0 stands for none.
func length(to *float64, low, high float64) Value {
	return bind(to, func(s string) (float64, error) {
		v, err := measure.ParseLength(s)
		if err == nil && !(float64(v) >= low && float64(v) <= high) {
			err = fmt.Errorf("%s is out of range; accepted: %.6g to %.6g mm", v, low, high)
		}
		return float64(v), err
	}, orNothing(func(v float64) string { return measure.Length(v).String() }))
}

// units is a system of units.
func units(to *measure.System, says string) Field {
	return Field{Name: "units", Takes: "metric|imperial", Says: says, Value: bind(to, measure.ParseSystem, measure.System.String)}
}

// kindOfWater is what a boat floats in.
func kindOfWater(to *water.Kind) Field {
	return Field{Name: "water", Takes: "fresh|salt", Says: "what it floats in", Value: bind(to, water.Parse, water.Kind.String)}
}

// picture asks for a figure as a file.
func picture(to *bool, says string) Field {
	return Field{Name: "svg", Says: says, Value: yes(to)}
}

// among reads one of several words.
func among[T any](names []string, values []T) func(string) (T, error) {
	return func(s string) (none T, err error) {
		for i, n := range names {
			if strings.EqualFold(strings.TrimSpace(s), n) {
				return values[i], nil
			}
		}
		// No word at all is accepted where it comes first, and not worth a word.
		return none, fmt.Errorf("%q is not understood; accepted: %s", s, strings.TrimPrefix(strings.Join(names, ", "), ", "))
	}
}

// oneOf is one of several words.
func oneOf[T comparable](to *T, names []string, values []T) Value {
	return bind(to, among(names, values), func(v T) string {
		if i := slices.Index(values, v); i >= 0 {
			return names[i]
		}
		return ""
	})
}

// namesOf are the words for values.
func namesOf[T fmt.Stringer](values []T) []string {
	var out []string
	for _, v := range values {
		out = append(out, v.String())
	}
	return out
}

// massOf is a mass in kg from low to high; 0 stands for none. accepted shows one as
// people write it. It is read to the milligram, so that its text says all of it.
func massOf(to *float64, low, high float64, accepted string) Value {
	read := func(s string) (float64, error) {
		kg, err := parseQuantity(s, formula.Mass, low, high, accepted)
		return math.Round(kg*1e6) / 1e6, err
	}
	return bind(to, read, orNothing(formula.WriteMass))
}

func parseQuantity(s string, dim formula.Dim, low, high float64, accepted string) (float64, error) {
	v, d, err := formula.Quantity(strings.TrimSpace(s))
	switch {
	case err != nil || d != dim:
		return 0, fmt.Errorf("%q is not understood; accepted: a number with its unit, as %s%s", wording.Clip(s, 30), accepted, wording.Decimals(s))
	case !(v >= low && v <= high):
		return 0, fmt.Errorf("%s is out of range; accepted: %s to %s", formula.ShowNumber(v, dim), formula.ShowNumber(low, dim), formula.ShowNumber(high, dim))
	}
	return v, nil
}

// mass is a mass in kg, more than nothing and up to 5000 kg.
func mass(to *float64) Value { return massOf(to, 0.001, 5000, "120kg or 265lb") }

// parseTemperature reads a temperature of the water.
func parseTemperature(s string) (float64, error) {
	text := strings.ToUpper(strings.TrimSpace(s))
	for _, scale := range []struct {
		mark       string
		zero, step float64 // its zero and its degree, in degrees Celsius
	}{{"C", 0, 1}, {"F", -32 / 1.8, 1 / 1.8}} {
		number, ok := strings.CutSuffix(text, scale.mark)
		v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
		if ok && err == nil && !math.IsNaN(v) && !math.IsInf(v, 0) {
			return scale.zero + v*scale.step, nil
		}
	}
	return 0, fmt.Errorf("%q is not understood; accepted: degrees with their scale, as 15C or 59F%s", wording.Clip(s, 30), wording.Decimals(s))
}

func showTemperature(v float64) string { return trimmed(v) + "C" }

// plainNumber reads a number without a unit, from low to high.
func plainNumber(s string, low, high float64) (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
	if err != nil || !(v >= low && v <= high) {
		return 0, fmt.Errorf("%q is not understood; accepted: a number, %.6g to %.6g%s", wording.Clip(s, 30), low, high, wording.Decimals(s))
	}
	return v, nil
}

func trimmed(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
