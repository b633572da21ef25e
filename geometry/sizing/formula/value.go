package formula

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ribwright/geometry/measure"
)

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

// single reports whether values of the kind are one number, or true or false.
func (k Kind) single() bool { return k.Class == Number || k.Class == Truth }

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

// Num and Word make values.
func Num(v float64) Value { return Value{Num: v} }
func Word(s string) Value { return Value{Text: s} }

// yes is the number of true or false.
func yes(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// True reports whether a value of the class Truth is true.
func (v Value) True() bool { return v.Num != 0 }

// Show writes the value as it stands on a page.
func (v Value) Show(k Kind) string {
	switch {
	case k.Class == Truth && v.True():
		return "yes"
	case k.Class == Truth:
		return "no"
	case k.Class == Text:
		return v.Text
	case k.Class == List:
		var all []string
		for _, n := range v.List {
			all = append(all, ShowNumber(n, k.Dim))
		}
		return "[" + strings.Join(all, ", ") + "]"
	}
	return ShowNumber(v.Num, k.Dim)
}

// Dim is what a number measures: whole powers of length, mass, time and angle.
// The zero Dim is a plain number. Numbers are kept in mm, kg, s and radians.
type Dim [4]int8

// What is met most.
var (
	Plain  = Dim{}
	Length = Dim{1, 0, 0, 0}
	Mass   = Dim{0, 1, 0, 0}
	Angle  = Dim{0, 0, 0, 1}
	Speed  = Dim{1, 0, -1, 0}
	Area   = Dim{2, 0, 0, 0}
	Volume = Dim{3, 0, 0, 0}
	Cloth  = Dim{-2, 1, 0, 0}
	Force  = Dim{1, 1, -2, 0}
	Moment = Dim{2, 1, -2, 0}
	time   = Dim{0, 0, 1, 0}
)

// maxPower is the greatest power of a unit; formulas of boats stay under 6.
const maxPower = 12

// plus is the kind of a number with the powers of e, times n, added.
//
// Errors: one grows past maxPower.
func (d Dim) plus(e Dim, n int) (Kind, error) {
	for i := range d {
		v := int(d[i]) + n*int(e[i])
		if v < -maxPower || v > maxPower {
			return Kind{}, fmt.Errorf("the units grow past the power of %d", maxPower)
		}
		d[i] = int8(v)
	}
	return Of(d), nil
}

// root divides the powers by n; ok is false when they do not divide.
func (d Dim) root(n int8) (out Dim, ok bool) {
	for i := range d {
		if d[i]%n != 0 {
			return d, false
		}
		d[i] /= n
	}
	return d, true
}

// display is how a number of a dimension stands on a page.
type display struct {
	dim      Dim
	name     string  // with the unit a builder would use
	unit     string  // that people read it in
	worth    float64 // of the unit, in mm, kg, s and radians; 0 when it is written with its powers
	decimals int
}

func displays() [11]display {
	return [...]display{
		{Plain, "a plain number", "", 1, 3}, {Length, "a length (mm)", "mm", 1, 0}, {Mass, "a weight (kg)", "kg", 1, 1},
		{Angle, "an angle (deg)", "deg", math.Pi / 180, 1}, {Speed, "a speed (m/s)", "m/s", 1e3, 2}, {Area, "an area (mm2)", "m2", 1e6, 3},
		{Volume, "a volume (mm3)", "L", 1e6, 1}, {Cloth, "a weight on an area (kg/mm2)", "g/m2", 1e-9, 0},
		{Force, "a force", "N", 1e3, 1}, {Moment, "a moment (Nm)", "Nm", 1e6, 0}, {time, "a time (s)", "", 0, 0},
	}
}

func (d Dim) display() display {
	for _, k := range displays() {
		if k.dim == d {
			return k
		}
	}
	return display{name: "a number in " + d.unit()}
}

// Unit returns the unit that people read a number of the dimension in, "" for a plain
// number, and what one of it is worth in mm, kg, s and radians.
func (d Dim) Unit() (word string, worth float64) {
	if k := d.display(); k.worth != 0 {
		return k.unit, k.worth
	}
	return d.unit(), 1
}

// String names the dimension with the unit a builder would use: "a length (mm)".
func (d Dim) String() string { return d.display().name }

// unit writes the powers out: "mm2 kg s-1".
func (d Dim) unit() string {
	var parts []string
	for i, word := range [...]string{"mm", "kg", "s", "rad"} {
		switch d[i] {
		case 0:
		case 1:
			parts = append(parts, word)
		default:
			parts = append(parts, word+strconv.Itoa(int(d[i])))
		}
	}
	return strings.Join(parts, " ")
}

// unit is a word for a unit with what it is worth in mm, kg, s and radians.
type unit struct {
	word  string
	worth float64
	dim   Dim
}

// units lists every unit word, longer before shorter where one begins another.
// The inch and foot are exact (agreement of 1959), and the mile is 5280 ft.
func units() []unit {
	return []unit{
		{"kg/m3", 1e-9, Dim{-3, 1, 0, 0}}, {"kg/m2", 1e-6, Cloth}, {"g/m2", 1e-9, Cloth},
		{"kg/m", 1e-3, Dim{-1, 1, 0, 0}}, {"km/h", 1e6 / 3600, Speed}, {"m/s", 1e3, Speed}, {"knots", 1e3 * measure.Knot, Speed}, {"kn", 1e3 * measure.Knot, Speed}, {"mph", 447.04, Speed},
		{"mm3", 1, Volume}, {"m3", 1e9, Volume}, {"mm2", 1, Area}, {"m2", 1e6, Area}, {"ft2", 304.8 * 304.8, Area}, {"sqft", 304.8 * 304.8, Area},
		{"mm", 1, Length}, {"cm", 10, Length}, {"m", 1e3, Length}, {"in", 25.4, Length}, {"ft", 304.8, Length},
		{"kg", 1, Mass}, {"g", 1e-3, Mass}, {"lbs", measure.Pound, Mass}, {"lb", measure.Pound, Mass},
		{"min", 60, time}, {"h", 3600, time}, {"s", 1, time},
		{"Nm", 1e6, Moment}, {"N", 1e3, Force}, {"L", 1e6, Volume},
		{"deg", math.Pi / 180, Angle}, {"rad", 1, Angle}, {"%", 0.01, Plain},
	}
}

// unitOf finds a unit that the text begins with, as a whole word.
func unitOf(text string) (unit, bool) {
	for _, u := range units() {
		if rest, ok := strings.CutPrefix(text, u.word); ok && (leadingWord(rest) == "") {
			return u, true
		}
	}
	return unit{}, false
}

// ShowNumber writes a number as it stands on a page: lengths to the mm (to
// 0.1 mm under 100 mm), weights to 0.1 kg, angles in degrees, others short.
func ShowNumber(v float64, d Dim) string {
	k := d.display()
	switch {
	case k.worth == 0:
		return fmt.Sprintf("%.4g %s", v, d.unit())
	case d == Length && math.Abs(v) < 100:
		k.decimals = 1
	}
	return strings.TrimRight(trimmed(v/k.worth, k.decimals)+" "+k.unit, " ")
}

// WriteMass writes a mass of kg to the milligram, as Quantity reads it again, where
// ShowNumber rounds for a page.
func WriteMass(kg float64) string { return trimmed(kg, 6) + " kg" }

// wholeLength writes a length that is found afloat, which is not known to less than a millimeter.
func wholeLength(mm float64) string { return trimmed(mm, 0) + " mm" }

// beside writes a value and its limit as they stand on a page, lengths to the millimeter
// where that tells them apart.
func beside(v, limit float64, d Dim) (is, wanted string) {
	is, wanted = ShowNumber(v, d), ShowNumber(limit, d)
	if d == Length && wholeLength(v) != wholeLength(limit) {
		is = wholeLength(v)
	}
	return is, wanted
}

// trimmed writes v with at most so many decimals and no minus before a zero.
func trimmed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
