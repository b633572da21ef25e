package built

import (
	"fmt"
	"math"
	"slices"
)

// room is how far a measure may be from the drawing before it was written wrong: by hand no
// frame comes out so, mm.
func (f *Frame) room(i, measure int) float64 {
	const (
		least  = 40.0
		share  = 0.15
		points = 25 // of springback, for widths
		blank  = 60.0
	)
	switch measure {
	case Free, Hot:
		return math.Max(2*least, points*f.Report.Ribs[i].Point)
	case Blank:
		return blank
	}
	return math.Max(least, share*f.Drawn(i, measure))
}

// factors are slips that multiply a figure, with what they are.
var factors = []struct {
	by   float64
	says string
}{
	{10, "a point is missing, or a nought too many"},
	{0.1, "it looks like centimeters, or a nought is missing"},
	{25.4, "it looks like millimeters in a column of inches"},
	{1 / 25.4, "it looks like inches in a column of millimeters"},
	{0.5, "it looks like half of it, from the middle line"},
	{2, "it looks like twice as much, both sides together"},
	{-1, "it is below zero"},
	{100, "two noughts too many, or the point is missing"},
	{1000, "it looks like micrometers; three noughts too many"},
	{0.001, "it looks like meters"},
}

// plausible refuses a figure that no frame comes to, with the slip that explains it.
func (c *reader) plausible(r Row) error {
	for m := range measures {
		v := r.Is[m]
		if math.IsNaN(v) {
			continue
		}
		if m >= Moisture {
			if most := map[int]float64{Moisture: 200, Steam: 600}[m]; !(v >= 0 && v <= most) {
				return c.fault(r.Line, "rib %s: %s of %.6g is out of range; accepted: 0 to %.6g", c.f.name(r.Rib), columns[m], v, most)
			}
			continue
		}
		want := c.f.Drawn(r.Rib, m)
		if m == Depth { // in the figures that are written
			v, want = v+r.less, want+r.less
		}
		if math.IsNaN(want) {
			return c.fault(r.Line, "rib %s: this frame has no stringers, so no bilge is marked; leave bilge_port and bilge_starboard empty", c.f.name(r.Rib))
		}
		room := c.f.room(r.Rib, m)
		if math.Abs(v-want) <= room {
			continue
		}
		words := fmt.Sprintf("rib %s: %s of %.0f mm is %.0f mm from the %.0f mm of the drawing", c.f.name(r.Rib), c.word(m), v, math.Abs(v-want), want)
		for _, s := range factors {
			if math.Abs(v/s.by-want) <= room/2 {
				return c.fault(r.Line, "%s: %s; write %.0f mm if that is what you read", words, s.says, v/s.by)
			}
		}
		return c.fault(r.Line, "%s; accepted: %.0f to %.0f mm; measure again", words, math.Max(0, want-room), want+room)
	}
	return nil
}

// word is what a measure is called in a sentence.
func (c *reader) word(measure int) string {
	for _, col := range c.columns {
		if col.measure == measure {
			return col.name
		}
	}
	return columns[measure]
}

// slips looks for what shows only beside the other ribs: depths from the straightedge under
// the name of others, port given for starboard, and the figures of one rib on another's line.
func (c *reader) slips() error {
	for _, taken := range []bool{false, true} {
		if err := c.takenOff(taken); err != nil {
			return err
		}
	}
	for _, r := range c.rows {
		if err := c.changedOver(r); err != nil {
			return err
		}
		if err := c.shifted(r); err != nil {
			return err
		}
	}
	return nil
}

// takenOff finds depths, among those from which the gunwales' height was taken here or was
// not, that are all off by just that: it was left out, or taken off twice.
func (c *reader) takenOff(taken bool) error {
	const near = 5.0 // mm, of it
	rail, line := c.f.Rail(), 0
	if rail < far {
		return nil // hands miss by as much
	}
	off := rail
	if taken {
		off = -rail
	}
	for _, r := range c.rows {
		if math.IsNaN(r.Is[Depth]) || (r.less != 0) != taken {
			continue
		}
		if math.Abs(r.Is[Depth]-c.f.Drawn(r.Rib, Depth)-off) > near {
			return nil
		}
		if line == 0 {
			line = r.Line
		}
	}
	switch {
	case line == 0:
		return nil
	case taken:
		return c.fault(line, "all depths are %.0f mm too small, as much as is taken off what a straightedge over the gunwales reads; write what the tape reads, or call the column depth%s if it is off already", rail, c.unit())
	}
	return c.fault(line, "all depths are %.0f mm too large, as much as a straightedge over the gunwales reads more: was that left out? Call the column straightedge%s and it is taken off", rail, c.unit())
}

// unit is how the name of a column of depths ends.
func (c *reader) unit() string {
	if slices.ContainsFunc(c.columns, func(o column) bool { return o.measure == Depth && o.unit != 1 }) {
		return "_in"
	}
	return "_mm"
}

// changedOver finds a rib whose sides are the other way round than those of its neighbors,
// where changing them over makes it one of them.
func (c *reader) changedOver(r Row) error {
	const near, clear = 4.0, 8.0 // mm: of one another, and fuller to one side
	fuller := func(o Row) float64 { return o.Is[BilgePort] - o.Is[BilgeStarboard] }
	mine := fuller(r)
	if math.IsNaN(mine) || math.Abs(mine) < clear {
		return nil
	}
	var beside []float64
	for _, o := range c.rows {
		if d := o.Rib - r.Rib; d != 0 && d >= -2 && d <= 2 && !math.IsNaN(fuller(o)) {
			beside = append(beside, fuller(o))
		}
	}
	if len(beside) < 2 {
		return nil
	}
	slices.Sort(beside)
	least, most := beside[0], beside[len(beside)-1]
	if most-least <= 2*near && -mine >= least-near && -mine <= most+near && math.Min(math.Abs(least), math.Abs(most)) >= clear/2 && least*most > 0 {
		return c.fault(r.Line, "rib %s: the bilge is %.0f mm fuller to %s and %.0f mm fuller to the other side at the ribs beside it: port and starboard look changed over; look again and change them", c.f.name(r.Rib), math.Abs(mine), side(mine), math.Abs(beside[len(beside)/2]))
	}
	return nil
}

func side(fuller float64) string {
	if fuller < 0 {
		return "starboard"
	}
	return "port"
}

// shifted finds a rib with the figures of another one near it, which has none of its own.
func (c *reader) shifted(r Row) error {
	const far, near = 10.0, 3.0 // mm, off the rib's own drawing and off the other's
	if !r.Stands() || math.IsNaN(r.Is[Beam]) || math.IsNaN(r.Is[Depth]) {
		return nil
	}
	off := func(i, m int) float64 { return math.Abs(r.Is[m] - c.f.Drawn(i, m)) }
	if off(r.Rib, Beam) < 2*far || off(r.Rib, Depth) < far/2 {
		return nil
	}
	for _, d := range []int{1, -1, 2, -2} {
		i := r.Rib + d
		if i < 0 || i >= len(c.f.ribs) || off(i, Beam) > near || off(i, Depth) > near {
			continue
		}
		return c.fault(r.Line, "rib %s: beam and depth are those of rib %s, and %.0f and %.0f mm off its own: the line looks shifted by a rib; look again", c.f.name(r.Rib), c.f.name(i), off(r.Rib, Beam), off(r.Rib, Depth))
	}
	return nil
}
