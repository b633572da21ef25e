package formula

import "strings"

// Class is the sort of a value.
type Class int8

// The classes.
const (
	Number Class = iota
	Truth        // true or false
	Text
	List // of numbers
)

// Kind is the class of a value and what its numbers measure.
type Kind struct {
	Class Class
	Dim   Dim
}

// Of returns the kind of a number that measures d.
func Of(d Dim) Kind { return Kind{Number, d} }

func (k Kind) String() string {
	switch k.Class {
	case Truth:
		return "true or false"
	case Text:
		return "a text"
	case List:
		return "a list, each value " + k.Dim.String()
	}
	return k.Dim.String()
}

// Value is a worked-out value; which field counts depends on its kind. Num is in
// mm, kg, s and radians, and 1 or 0 for true or false.
type Value struct {
	Num  float64
	Text string
	List []float64
}

// Num, Word and Yes make values.
func Num(v float64) Value { return Value{Num: v} }

// Word makes a text.
func Word(s string) Value { return Value{Text: s} }

// Yes makes true or false.
func Yes(b bool) Value {
	if b {
		return Value{Num: 1}
	}
	return Value{}
}

// True reports whether a value of the class Truth is true.
func (v Value) True() bool { return v.Num != 0 }

// Show writes the value as it stands on a page.
func (v Value) Show(k Kind) string {
	switch k.Class {
	case Truth:
		if v.True() {
			return "yes"
		}
		return "no"
	case Text:
		return v.Text
	case List:
		var all []string
		for _, n := range v.List {
			all = append(all, ShowNumber(n, k.Dim))
		}
		return "[" + strings.Join(all, ", ") + "]"
	}
	return ShowNumber(v.Num, k.Dim)
}
