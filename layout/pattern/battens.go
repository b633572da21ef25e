package pattern

import (
	"fmt"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// The rows of words under a lane's upper edge, mm. One row serves where ribs stand far
// enough apart: so five strips go across a sheet; else the ends' words have a second.
const (
	laneRow = 3.8
	laneEnd = 1.8 // under the last row
)

// lane is a stick on the story stick.
type lane struct {
	batten    string
	aft, fore float64
	marks     []laneMark
	ends      [2]string // what stands at its after and its fore end
}

// laneMark is a rib's mark on a lane.
type laneMark struct {
	x, next    float64
	rib, words string
}

// Battens draws one story stick for keel and stringers: x is the distance from
// midship along the batten. The lanes stay on one stick, for each alone is a sliver: a
// square along the stick's upper edge carries their marks over. Where fore and aft are equal
// it is the forward half, and is turned end for end.
func Battens(f *frame.Frame, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: "battens", Title: "Keel and stringers", Stacked: true, Make: "one stick: square marks up to its edge" + within(marks.Joined, units)}
	if halved(f) {
		d.Make = "turn end for end at midship, face up; " + d.Make
	}
	var lanes []lane
	for i := len(f.Stringers) - 1; i >= 0; i-- {
		s := f.Stringers[i]
		lanes = append(lanes, newLane(f, units, fmt.Sprintf("S%d", s.Number), s.Aft, s.Fore, s.RibMarks))
	}
	lanes = append(lanes, newLane(f, units, "keel", f.Keel.Aft, f.Keel.Fore, f.Keel.RibMarks))
	high := laneRow + laneEnd
	if slices.ContainsFunc(lanes, lane.crowded) {
		high += laneRow
	}
	top, from, to := 0.0, 0.0, 0.0
	for _, l := range lanes {
		l.draw(&d, top, high)
		top, from, to = top-high, min(from, l.aft), max(to, l.fore)
	}
	if halved(f) {
		d.Straight(layout.Center, 0, 2.9, 0, top)
		d.Write(1.2, 1.2, small, layout.Left, "midship, turn end for end here")
	}
	d.Straight(layout.Tick, from-3, top, to+3, top)
	tape(&d, units, from, to, top)
	return d
}

func newLane(f *frame.Frame, units measure.System, batten string, aft, fore float64, ribs []float64) lane {
	l := lane{batten: batten, aft: aft, fore: fore}
	l.ends = [2]string{batten + " after end " + units.Fine(aft), batten + " forward end " + units.Fine(fore)}
	if halved(f) {
		l.aft, l.ends = 0, [2]string{"", batten + " end " + units.Fine(fore)}
	}
	for i, x := range ribs {
		if halved(f) && !onHalf(x) {
			continue
		}
		next := fore
		if i+1 < len(ribs) {
			next = ribs[i+1]
		}
		l.marks = append(l.marks, laneMark{x, next, twins(f, i), batten + " " + twins(f, i) + " " + units.Fine(x)})
	}
	return l
}

// free is what the words at a lane's ends leave of its row.
func (l lane) free() (from, to float64) {
	const air = 4.0
	from, to = l.aft-air, l.fore-air
	for i, words := range l.ends {
		switch wide := lettering.Width(lettering.Safe(words), small) + 2; {
		case words == "":
		case i == 0:
			from += wide + air
		default:
			to -= wide
		}
	}
	return from, to
}

// crowded reports whether a rib's name would lie on the words at an end.
func (l lane) crowded() bool {
	from, to := l.free()
	return slices.ContainsFunc(l.marks, func(m laneMark) bool { return m.x < from || m.x+1+lettering.Width(m.rib, small) > to })
}

func (l lane) draw(d *layout.Drawing, y, high float64) {
	d.Straight(layout.Mark, l.aft-3, y, l.fore+3, y)
	foot := y - high + laneEnd
	from, to := l.free()
	if high > laneRow+laneEnd {
		from, to = l.aft, l.fore
	}
	for i, x := range []float64{l.aft, l.fore} {
		if l.ends[i] == "" {
			continue
		}
		d.Straight(layout.Cut, x, y, x, y-high+1)
		side := [2]float64{2, -2}[i]
		d.Write(x+side, foot, small, [2]layout.Align{layout.Left, layout.Right}[i], l.ends[i])
		d.Keep = append(d.Keep, layout.Span{From: x - [2]float64{5, 60}[i], To: x + [2]float64{60, 5}[i]})
	}
	for _, m := range l.marks {
		d.Straight(layout.Mark, m.x, y, m.x, y-4)
		words := m.words
		wide := lettering.Width(lettering.Safe(words), small)
		if end := m.x + 1 + wide; end > to || end+2 > m.next || m.x < from {
			words, wide = m.rib, lettering.Width(m.rib, small)
		}
		d.Write(m.x+1, y-laneRow, small, layout.Left, words)
		d.Keep = append(d.Keep, layout.Span{From: m.x - 6, To: m.x + 4 + wide})
	}
}
