// Package offsets reads the table of offsets of a hull that was measured
// elsewhere and makes a hull of it. A table is CSV text whose first line names
// the columns with their units:
//
//	station_mm,height_mm,half_breadth_mm
//
// or the same with _cm, _m, _in or _ft. Cells may also be feet-inches-eighths,
// as 1-2-6 for 1 ft 2 6/8 in (a + behind adds a sixteenth), or carry their own
// unit, as 34 1/2 in. Other columns are passed over; # begins a comment.
package offsets

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// Station is the measured half section at one place.
type Station struct {
	X      float64          // mm from midship, forward positive
	Points []geometry.Point // half-breadth and height, mm, from the keel up
	Line   int              // of the file, where it is first given
}

// Table is a hull as measured, from aft forward.
type Table struct {
	Stations []Station
	Notes    []string // what was understood or passed over, for the reader to see
}

// Sheer returns the uppermost point of the station.
func (s Station) Sheer() geometry.Point { return s.Points[len(s.Points)-1] }

// Keel returns the lowest point of the station.
func (s Station) Keel() geometry.Point { return s.Points[0] }

// area is twice the area between the outline and the middle line, for comparing
// stations.
func (s Station) area() float64 {
	sum := 0.0
	for i := 1; i < len(s.Points); i++ {
		a, b := s.Points[i-1], s.Points[i]
		sum += (a.X + b.X) * (b.Y - a.Y)
	}
	return sum
}

// Length returns the distance from the first station to the last, mm.
func (t *Table) Length() float64 {
	return t.Stations[len(t.Stations)-1].X - t.Stations[0].X
}

// unit is what a bare number in a column means.
type unit struct {
	name string
	mm   float64
}

func units() []unit {
	return []unit{{"mm", 1}, {"cm", 10}, {"m", 1000}, {"in", 25.4}, {"ft", 304.8}}
}

// farthest is the largest number read, mm: 100 m. More is a slip of the unit.
const farthest = 1e5

// cell reads one number of a column and returns it in mm.
func (u unit) cell(text string) (float64, error) {
	v, err := u.value(text)
	if err == nil && !(math.Abs(v) <= farthest) {
		return 0, fmt.Errorf("%q is %g mm, which no hull has", wording.Clip(text, 40), v)
	}
	return v, err
}

func (u unit) value(text string) (float64, error) {
	sign, rest := 1.0, text
	if strings.HasPrefix(rest, "-") {
		sign, rest = -1, rest[1:]
	}
	if strings.Count(rest, "-") > 0 && strings.Trim(rest, "0123456789-+") == "" {
		if u.name != "in" && u.name != "ft" {
			return 0, fmt.Errorf("%q is feet-inches-eighths in a column of %s; accepted: numbers of %s, or name the column _in", wording.Clip(text, 40), u.name, u.name)
		}
		v, err := eighths(rest)
		return sign * v, err
	}
	if v, err := strconv.ParseFloat(text, 64); err == nil && strings.Trim(text, "+-0123456789.eE") == "" {
		return v * u.mm, nil
	}
	if l, err := measure.ParseLength(text); err == nil {
		return float64(l), nil
	}
	if strings.Contains(text, ",") {
		return 0, fmt.Errorf("%q has a decimal comma; write 3.5", wording.Clip(text, 40))
	}
	return 0, fmt.Errorf("%q is no number; accepted: a number of %s, as 34.5, feet-inches-eighths, as 1-2-6, or a length with its unit, as 34 1/2 in", wording.Clip(text, 40), u.name)
}

// eighths reads feet-inches-eighths: 1-2-6, with + for a sixteenth more.
func eighths(text string) (float64, error) {
	body, more := strings.CutSuffix(text, "+")
	parts := strings.Split(body, "-")
	if len(parts) == 2 {
		return 0, fmt.Errorf("%q may be feet and inches or inches and eighths; write all three, as 1-2-6 for 1 ft 2 6/8 in", wording.Clip(text, 40))
	}
	eighth, under := 0, []int{10000, 12, 8}
	for i, p := range parts {
		v, err := strconv.Atoi(p)
		if err != nil || len(parts) != 3 || v < 0 || v >= under[i] || len(p) > 4 {
			return 0, fmt.Errorf("%q is not feet-inches-eighths; write it as 1-2-6, inches under 12 and eighths under 8", wording.Clip(text, 40))
		}
		eighth = eighth*under[i] + v
	}
	mm := float64(eighth) * 3.175
	if more {
		mm += 1.5875
	}
	return mm, nil
}

type column struct {
	at   int // place in a row, from 0
	unit unit
}

// header is what the first line says.
type header struct {
	columns  [3]column // of the quantities
	mirrored bool      // stations are counted from midship towards the ends
}

// quantities are what the columns give.
var quantities = [3]string{"station", "height", "half-breadth"}

func readHeader(cells []string) (header, error) {
	var h header
	stems := map[string]int{"station": 0, "station_from_midship": 0, "height": 1, "half_breadth": 2}
	for i, c := range cells {
		name := strings.ToLower(strings.TrimSpace(c))
		for _, u := range units() {
			stem, _ := strings.CutSuffix(name, "_"+u.name)
			k, ok := stems[stem]
			if !ok || stem == name {
				continue
			}
			if h.columns[k].unit.name != "" {
				return h, fmt.Errorf("two columns give the %s; keep one", quantities[k])
			}
			h.columns[k] = column{i, u}
			h.mirrored = h.mirrored || stem == "station_from_midship"
		}
	}
	for _, c := range h.columns {
		if c.unit.name == "" {
			return h, errors.New("the first line must name the columns with their units, as station_mm,height_mm,half_breadth_mm or the same with _in")
		}
	}
	return h, nil
}
