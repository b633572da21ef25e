package offsets

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// The largest table read: far more than a hull has, little enough to refuse a
// wrong file fast.
const (
	maxFile     = 4 << 20
	maxStations = 400
	maxPoints   = 400 // of one station
	maxRows     = maxStations * maxPoints
)

// row is one measured point.
type row struct {
	x    float64
	p    geometry.Point
	line int
}

// Read reads a table of offsets. The name is used in messages only.
//
// Stations may stand in any order and come back later in the file; blank lines,
// comments and rows without a number for height or half-breadth are passed over,
// and a point given twice counts once. When all stations lie on one side of a
// midship that is the fullest, the hull is taken as alike at both ends. Heights
// are counted from the lowest point, and stations from the middle when zero is
// one of the ends.
//
// Errors: *wording.Fault with the line; the reader's own error.
func Read(r io.Reader, name string) (*Table, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	switch {
	case len(data) > maxFile:
		return nil, &wording.Fault{File: name, Text: "is larger than 4 MB, so it is no table of offsets"}
	case bytes.IndexByte(data, 0) >= 0:
		return nil, &wording.Fault{File: name, Text: "is no text file; a table of offsets is CSV text"}
	}
	t := new(Table)
	rows, mirrored, fault := t.readRows(string(data), name)
	if fault == nil {
		fault = t.gather(rows, name)
	}
	if fault != nil {
		return nil, fault
	}
	if len(t.Stations) > 0 {
		t.mirror(mirrored)
		t.settle()
	}
	if len(t.Stations) < 3 {
		return nil, &wording.Fault{File: name, Text: fmt.Sprintf("has %d stations; accepted: three and more along the hull, or two and more from midship", len(t.Stations))}
	}
	return t, nil
}

// readRows reads header and rows; mirrored says that the file counts its stations from
// midship.
func (t *Table) readRows(text, name string) (rows []row, mirrored bool, fault *wording.Fault) {
	var head header
	blanks, split := 0, "" // split is "" above the header
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(strings.TrimLeft(line, `"`), "#") || strings.Trim(line, ",;\t ") == "" {
			continue
		}
		var r row
		var err error
		ok, first := false, split == ""
		if first {
			split = separator(line)
			head, err = readHeader(strings.Split(line, split))
		} else if r, ok, err = head.row(strings.Split(line, split)); ok && len(rows) == maxRows {
			err = fmt.Errorf("has more than %d points", maxRows)
		}
		switch {
		case err != nil:
			return nil, false, &wording.Fault{File: name, Line: i + 1, Text: err.Error()}
		case ok:
			r.line = i + 1
			rows = append(rows, r)
		case !first:
			blanks++
		}
	}
	if split == "" {
		return nil, false, &wording.Fault{File: name, Text: "is empty; its first line names the columns, as station_mm,height_mm,half_breadth_mm"}
	}
	if blanks > 0 {
		t.Notes = append(t.Notes, counted(blanks, "row without a height or half-breadth is passed over", "rows without a height or half-breadth are passed over"))
	}
	return rows, head.mirrored, nil
}

// separator is what stands between the cells of the header.
func separator(line string) string {
	for _, s := range []string{",", ";", "\t"} {
		if strings.Contains(line, s) {
			return s
		}
	}
	return ","
}

// row reads the three cells of a line; ok is false when height or half-breadth
// were not measured.
func (h header) row(cells []string) (r row, ok bool, err error) {
	var v [3]float64
	ok = true
	for i, c := range h.columns {
		text := ""
		if c.at < len(cells) {
			text = strings.TrimSpace(strings.Trim(strings.TrimSpace(cells[c.at]), `"`))
		}
		if missing(text) {
			if i == 0 {
				return r, false, fmt.Errorf("no station is given; every row needs one")
			}
			ok = false
			continue
		}
		if v[i], err = c.unit.cell(text); err != nil {
			return r, false, fmt.Errorf("%s: %w", quantities[i], err)
		}
	}
	if ok && v[2] < 0 {
		return r, false, fmt.Errorf("half-breadth: %g mm is negative; give the port half, positive", v[2])
	}
	return row{x: v[0], p: geometry.Point{X: v[2], Y: v[1]}}, ok, nil
}

// missing reports whether a cell says that nothing was measured.
func missing(text string) bool { return strings.Trim(text, ".-") == "" }

// The tolerances, mm: two places nearer than same are one; two stations nearer
// than apart but not the same are a slip.
const (
	same  = 0.05
	apart = 2.0
)

// gather sorts rows into stations and their points from the keel up.
func (t *Table) gather(rows []row, name string) *wording.Fault {
	slices.SortStableFunc(rows, func(a, b row) int { return cmp.Compare(a.x, b.x) })
	twice := 0
	for _, r := range rows {
		n := len(t.Stations)
		if n == 0 || r.x-t.Stations[n-1].X > same {
			if n > 0 && r.x-t.Stations[n-1].X < apart {
				return &wording.Fault{File: name, Line: r.line, Text: fmt.Sprintf("station %g mm is only %.2g mm from the one at %g mm on line %d; give both the same place, or at least %g mm between them",
					r.x, r.x-t.Stations[n-1].X, t.Stations[n-1].X, t.Stations[n-1].Line, apart)}
			}
			if n == maxStations {
				return &wording.Fault{File: name, Line: r.line, Text: fmt.Sprintf("there are more than %d stations", maxStations)}
			}
			t.Stations = append(t.Stations, Station{X: r.x, Line: r.line})
			n++
		}
		s := &t.Stations[n-1]
		s.Line = min(s.Line, r.line)
		if slices.ContainsFunc(s.Points, func(p geometry.Point) bool { return p.Sub(r.p).Norm() <= same }) {
			twice++
			continue
		}
		if len(s.Points) == maxPoints {
			return &wording.Fault{File: name, Line: r.line, Text: fmt.Sprintf("station %g mm has more than %d points", r.x, maxPoints)}
		}
		s.Points = append(s.Points, r.p)
	}
	if twice > 0 {
		t.Notes = append(t.Notes, counted(twice, "point is given twice and counts once", "points are given twice and count once"))
	}
	for i := range t.Stations {
		t.Stations[i].order()
		if s := t.Stations[i]; len(s.Points) == 1 && s.Points[0].X > 20 {
			return &wording.Fault{File: name, Line: s.Line, Text: fmt.Sprintf("station %.4g mm has one point, %.4g mm off the middle line; accepted: two points and more, or an end on the middle line", s.X, s.Points[0].X)}
		}
	}
	return nil
}

// counted says how many there are of something, in one number or the other.
func counted(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

// order runs the points from the keel up: as the file has them where they rise
// all the way or fall all the way, else by height.
func (s *Station) order() {
	up := slices.IsSortedFunc(s.Points, func(a, b geometry.Point) int { return cmp.Compare(a.Y, b.Y) })
	down := slices.IsSortedFunc(s.Points, func(a, b geometry.Point) int { return cmp.Compare(b.Y, a.Y) })
	switch {
	case up && !down:
	case down && !up:
		slices.Reverse(s.Points)
	default:
		slices.SortStableFunc(s.Points, func(a, b geometry.Point) int {
			return cmp.Or(cmp.Compare(a.Y, b.Y), cmp.Compare(a.X, b.X))
		})
	}
	// A level bottom begins at the keel, whichever way it was written.
	if n := len(s.Points); n > 1 && s.Points[0].Y == s.Points[1].Y && s.Points[0].X > s.Points[1].X {
		s.Points[0], s.Points[1] = s.Points[1], s.Points[0]
	}
}

// mirror completes a hull of which one half is given; counted says that the file
// counts its stations from midship.
func (t *Table) mirror(counted bool) {
	aft := math.Abs(t.Stations[len(t.Stations)-1].X) < same && t.Stations[0].X < 0
	if aft {
		t.turn()
	}
	if !t.half(counted) {
		if aft {
			t.turn()
		}
		return
	}
	for _, s := range slices.Clone(t.Stations) {
		if math.Abs(s.X) >= same {
			s.X = -s.X
			t.Stations = append([]Station{s}, t.Stations...)
		}
	}
	t.Notes = append(t.Notes, "stations are given one way from midship; the other half is taken as their mirror")
}

// turn exchanges the ends.
func (t *Table) turn() {
	for i := range t.Stations {
		t.Stations[i].X = -t.Stations[i].X
	}
	slices.Reverse(t.Stations)
}

// half reports whether the stations run from midship to one end: they begin at
// zero, and there stands the fullest section.
func (t *Table) half(counted bool) bool {
	first := t.Stations[0]
	if counted {
		return first.X > -same
	}
	fuller := func(s Station) bool { return s.area() > first.area() }
	return math.Abs(first.X) <= same && first.area() > 0 && !slices.ContainsFunc(t.Stations, fuller)
}

// settle counts heights from the lowest point and, where zero is not inside the
// hull, stations from its middle.
func (t *Table) settle() {
	low := math.Inf(1)
	for _, s := range t.Stations {
		for _, p := range s.Points {
			low = min(low, p.Y)
		}
	}
	aft, fore := t.Stations[0].X, t.Stations[len(t.Stations)-1].X
	shift := 0.0
	if aft >= 0 || fore <= 0 {
		shift = (aft + fore) / 2
		t.Notes = append(t.Notes, fmt.Sprintf("stations are counted from midship, %s in the table", measure.Metric.Length(shift)))
	}
	if low != 0 {
		t.Notes = append(t.Notes, fmt.Sprintf("heights are counted from the lowest point, %s in the table", measure.Metric.Length(low)))
	}
	for i := range t.Stations {
		t.Stations[i].X -= shift
		pts := slices.Clone(t.Stations[i].Points)
		for k := range pts {
			pts[k].Y -= low
		}
		t.Stations[i].Points = pts
	}
}
