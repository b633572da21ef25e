package job

import (
	"fmt"
	"strconv"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/water"
)

// Field is one choice of a request. A flag, a line of a form and a word of an address
// have the same name, words and default, for all read this.
type Field struct {
	Name  string // "paper"
	Short string // one letter, "" for none
	Group string // the heading it stands under; "" for what is the job's own
	Takes string // what a value looks like, "length" or "letter|a4"; "" for yes or no
	Says  string // what it is for
	Value Value
	Many  bool // each setting adds one
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

// list is a value to which each setting adds one.
type list[T any] struct {
	to   *[]T
	read func(string) (T, error)
}

func (l list[T]) String() string { return "" }
func (l list[T]) Set(text string) error {
	v, err := l.read(text)
	if err == nil {
		*l.to = append(*l.to, v)
	}
	return err
}

// words is text as it is.
func words(to *string) Value {
	return bind(to, func(s string) (string, error) { return s, nil }, func(s string) string { return s })
}

// yes is a choice that is made or not.
func yes(to *bool) Value { return bind(to, strconv.ParseBool, strconv.FormatBool) }

// whole is a whole number from low to high.
func whole(to *int, low, high int) Value {
	return bind(to, func(s string) (int, error) {
		n, err := strconv.Atoi(strings.TrimSpace(s))
		if err != nil || n < low || n > high {
			return 0, fmt.Errorf("%q is not understood; accepted: a whole number, %d to %d", s, low, high)
		}
		return n, nil
	}, strconv.Itoa)
}

// length is a length in mm from low to high; 0 stands for none.
func length(to *float64, low, high float64) Value {
	return bind(to, func(s string) (float64, error) {
		v, err := measure.ParseLength(s)
		if err == nil && !(float64(v) >= low && float64(v) <= high) {
			err = fmt.Errorf("%s is out of range; accepted: %s to %s mm", v, measure.MM(low, 1), measure.MM(high, 1))
		}
		return float64(v), err
	}, func(v float64) string {
		if v == 0 {
			return ""
		}
		return measure.Length(v).String()
	})
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

// oneOf is one of several words.
func oneOf[T any](to *T, names []string, values []T, equal func(a, b T) bool) Value {
	return bind(to, func(s string) (T, error) {
		for i, n := range names {
			if strings.EqualFold(strings.TrimSpace(s), n) {
				return values[i], nil
			}
		}
		var none T
		return none, fmt.Errorf("%q is not understood; accepted: %s", s, strings.Join(names, ", "))
	}, func(v T) string {
		for i := range values {
			if equal(values[i], v) {
				return names[i]
			}
		}
		return ""
	})
}
