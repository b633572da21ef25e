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
	"fmt"

	"ribwright/geometry"
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

// Fault is something wrong in a table, with its place.
type Fault struct {
	File string
	Line int // from 1; 0 when no line is to blame
	Text string
}

// Error gives file, line and text on one line.
func (f *Fault) Error() string {
	if f.Line == 0 {
		return fmt.Sprintf("%s: %s", f.File, f.Text)
	}
	return fmt.Sprintf("%s:%d: %s", f.File, f.Line, f.Text)
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

// Beam returns the greatest breadth, mm.
func (t *Table) Beam() float64 {
	wide := 0.0
	for _, s := range t.Stations {
		for _, p := range s.Points {
			wide = max(wide, 2*p.X)
		}
	}
	return wide
}

// Length returns the distance from the first station to the last, mm.
func (t *Table) Length() float64 {
	return t.Stations[len(t.Stations)-1].X - t.Stations[0].X
}
