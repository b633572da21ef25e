package built

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/wording"
)

// mostCard is more than a card of the largest frame has, bytes.
const mostCard = 1 << 18

// straightedge is the column of depths as the tape reads them from a straightedge over the
// gunwales; what it reads more than the depth of the rib is taken off.
const straightedge = "straightedge"

// columns are the heads of a card by measure, without their unit.
var columns = [measures]string{"beam", "depth", "blank", "free_width", "hot_width", "bilge_port", "bilge_starboard", "moisture_percent", "steam_minutes"}

// Heads are the columns of a card to be filled, in mm or inches.
func Heads(imperial bool) []string {
	out := []string{"rib"}
	for m, c := range columns {
		if m == Depth {
			c = straightedge
		}
		switch {
		case m >= Moisture:
		case imperial:
			c += "_in"
		default:
			c += "_mm"
		}
		out = append(out, c)
	}
	return append(out, "broken")
}

// column is where a measure stands in a file and what one of its units is in mm.
type column struct {
	measure int // -1 the rib, -2 broken
	unit    float64
	name    string
	less    float64 // that is taken off what is written, mm
}

// Read reads a card: a heading, then a line a rib, in any order, any cell empty. The name is
// used in messages only.
//
// Errors: *wording.Fault with the line: what cannot be read, a rib that the frame has not or
// that stands twice, and what is so far from the drawing that it was written wrong, with the
// slip that explains it.
func Read(data []byte, name string, f *Frame) ([]Row, error) {
	c := reader{f: f, name: name}
	if len(data) > mostCard || bytes.IndexByte(data, 0) >= 0 {
		return nil, c.fault(0, "is no card; a card is CSV text of a line for each rib")
	}
	text := strings.TrimPrefix(string(data), "\uFEFF")
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "#") || strings.Trim(line, ",;\t ") == "" {
			continue
		}
		var err error
		if c.columns == nil {
			err = c.heading(i+1, line)
		} else {
			err = c.row(i+1, line)
		}
		if err != nil {
			return nil, err
		}
	}
	if c.columns == nil {
		return nil, c.fault(0, "is empty; its first line names the columns: %s", strings.Join(Heads(false), ","))
	}
	if len(c.rows) == 0 {
		return nil, c.fault(0, "has no rib that was measured; give a line for each, as M,%.0f,%.0f", f.Drawn(f.TestRib(), Beam), f.Drawn(f.TestRib(), Depth))
	}
	return c.rows, c.slips()
}

type reader struct {
	f       *Frame
	name    string
	split   string
	columns []column
	rows    []Row
}

func (c *reader) fault(line int, format string, args ...any) error {
	return &wording.Fault{File: c.name, Line: line, Text: fmt.Sprintf(format, args...)}
}

func (c *reader) cells(line string) []string {
	out := strings.Split(line, c.split)
	for i := range out {
		out[i] = strings.TrimSpace(strings.Trim(strings.TrimSpace(out[i]), `"`))
	}
	return out
}

// heading reads the names of the columns.
func (c *reader) heading(line int, text string) error {
	c.split = ","
	for _, s := range []string{";", "\t"} {
		if !strings.Contains(text, ",") && strings.Contains(text, s) {
			c.split = s
		}
	}
	accepted := strings.Join(Heads(false), ", ")
	for _, cell := range c.cells(text) {
		col, ok := c.f.columnOf(strings.ToLower(cell))
		if !ok {
			return c.fault(line, "column %q is not known; accepted: %s, or lengths with _in", wording.Clip(cell, 30), accepted)
		}
		if cell != "" && slices.ContainsFunc(c.columns, func(o column) bool { return o.measure == col.measure && o.less == col.less }) {
			return c.fault(line, "column %q stands twice, or in mm and in inches; give it once", wording.Clip(cell, 30))
		}
		c.columns = append(c.columns, col)
	}
	if !slices.ContainsFunc(c.columns, func(o column) bool { return o.measure == ofRib }) {
		return c.fault(line, "no column is called rib; accepted: %s", accepted)
	}
	return nil
}

// What a column is that holds no measure.
const (
	ofRib = -1 - iota
	ofBroken
	ofNothing
)

func (f *Frame) columnOf(head string) (column, bool) {
	switch head {
	case "rib":
		return column{measure: ofRib}, true
	case "broken":
		return column{measure: ofBroken}, true
	case "":
		return column{measure: ofNothing}, true
	case straightedge + "_mm":
		return column{Depth, 1, straightedge, f.Rail()}, true
	case straightedge + "_in":
		return column{Depth, 25.4, straightedge, f.Rail()}, true
	}
	for m, name := range columns {
		if m >= Moisture && head == name {
			return column{m, 1, name, 0}, true
		}
		words := strings.ReplaceAll(name, "_", " ")
		if m < Moisture && head == name+"_mm" {
			return column{m, 1, words, 0}, true
		}
		if m < Moisture && head == name+"_in" {
			return column{m, 25.4, words, 0}, true
		}
	}
	return column{}, false
}

// row reads a line.
func (c *reader) row(line int, text string) error {
	r := Row{Line: line, Rib: -1}
	for m := range r.Is {
		r.Is[m] = math.NaN()
	}
	filled := false
	for k, cell := range c.cells(text) {
		if k >= len(c.columns) {
			if cell != "" {
				return c.fault(line, "has more cells than the heading has columns; a comma in a figure is written as a point")
			}
			continue
		}
		if cell == "" || cell == "-" {
			continue
		}
		is, err := c.cell(&r, c.columns[k], cell)
		if err != nil {
			return err
		}
		filled = filled || is
	}
	if r.Rib < 0 {
		return c.fault(line, "no rib is named; every line begins with one")
	}
	if !filled {
		return nil // as on a card that waits to be filled
	}
	if at := slices.IndexFunc(c.rows, func(o Row) bool { return o.Rib == r.Rib }); at >= 0 {
		return c.fault(line, "rib %s stands on line %d already; keep the line that holds now", c.f.name(r.Rib), c.rows[at].Line)
	}
	c.rows = append(c.rows, r)
	return c.plausible(r)
}

// cell reads one that is not empty; filled says that it tells something of the rib.
func (c *reader) cell(r *Row, col column, cell string) (filled bool, err error) {
	switch col.measure {
	case ofNothing:
		return false, nil
	case ofRib:
		if r.Rib = c.rib(cell); r.Rib < 0 {
			return false, c.fault(r.Line, "this frame has no rib %q; accepted: %s to %s", wording.Clip(cell, 20), c.f.name(0), c.f.name(len(c.f.ribs)-1))
		}
		return false, nil
	case ofBroken:
		switch strings.ToLower(cell) {
		case "yes", "y", "x", "true", "1":
			r.Broken = true
		case "no", "n", "false", "0":
		default:
			return false, c.fault(r.Line, "broken: %q is not understood; accepted: yes, no or nothing", wording.Clip(cell, 20))
		}
		return true, nil
	}
	v, err := figure(cell)
	if err != nil {
		return false, c.fault(r.Line, "rib %s: %s: %v", c.called(r.Rib), col.name, err)
	}
	if !math.IsNaN(r.Is[col.measure]) {
		return false, c.fault(r.Line, "rib %s: its depth is given twice, by the straightedge and without it; leave one empty", c.called(r.Rib))
	}
	r.Is[col.measure] = v*col.unit - col.less
	if col.less != 0 {
		r.less = col.less
	}
	return true, nil
}

func (c *reader) rib(cell string) int {
	return slices.IndexFunc(c.f.Frame.Ribs, func(o frame.Rib) bool { return strings.EqualFold(o.Name, cell) })
}

func (c *reader) called(i int) string {
	if i < 0 {
		return "?"
	}
	return c.f.name(i)
}

// figure reads a number, also as inches and a fraction: 14 3/8.
func figure(cell string) (float64, error) {
	whole, part, has := strings.Cut(cell, " ")
	if !has && strings.Contains(cell, "/") {
		whole, part, has = "0", cell, true
	}
	v, err := strconv.ParseFloat(whole, 64)
	if err == nil && has {
		over, under, _ := strings.Cut(strings.TrimSpace(part), "/")
		a, errA := strconv.ParseFloat(over, 64)
		b, errB := strconv.ParseFloat(under, 64)
		if errA != nil || errB != nil || b <= 0 {
			err = strconv.ErrSyntax
		}
		v += a / b
	}
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is no number; accepted: figures alone, with a point, as 412.5, or inches as 16 1/4", wording.Clip(cell, 20))
	}
	return v, nil
}
