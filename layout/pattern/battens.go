package pattern

import (
	"fmt"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// laneHigh is the height of one batten's lane on the story stick, mm.
const laneHigh = 9.5

// Battens draws one story stick for keel and stringers: x is the distance from
// midship along the batten. Each lane is marked from its upper edge; the lanes
// are used from the top down and cut off when done. Where fore and aft are equal
// it is the forward half.
func Battens(f *frame.Frame, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: "battens", Title: "Keel and stringers",
		Make: "one lane a stick, marked along the lane's upper edge; cut each lane off when done"}
	if halved(f) {
		d.Make = "one half, turn over at midship; one lane a stick, marked along the lane's upper edge; cut each lane off when done"
	}
	top, from, to := 0.0, f.Keel.Aft, f.Keel.Fore
	for i := len(f.Stringers) - 1; i >= 0; i-- {
		s := f.Stringers[i]
		drawLane(&d, f, units, top, fmt.Sprintf("S%d", s.Number), s.Aft, s.Fore, s.RibMarks)
		top, from, to = top-laneHigh, min(from, s.Aft), max(to, s.Fore)
	}
	drawLane(&d, f, units, top, "keel", f.Keel.Aft, f.Keel.Fore, f.Keel.RibMarks)
	if halved(f) {
		from = 0
		d.Straight(layout.Center, 0, laneHigh/2, 0, top-laneHigh)
		d.Write(1.2, 1.2, small, layout.Left, "midship, turn over here")
	}
	d.Straight(layout.Tick, from-3, top-laneHigh, to+3, top-laneHigh)
	tape(&d, units, from, to, top-laneHigh)
	return d
}

func drawLane(d *layout.Drawing, f *frame.Frame, units measure.System, y float64, batten string, aft, fore float64, ribs []float64) {
	const high, low = 3.8, 7.6 // mm under the lane's edge: two lines of words
	off := strings.TrimSpace(within(marks.Joined, units))
	from, end, free := aft-3, " forward end ", aft
	if halved(f) {
		from, end = -3, " end "
	} else {
		d.Straight(layout.Cut, aft, y, aft, y-laneHigh+1)
		words := batten + " after end " + units.Fine(aft)
		d.Write(aft+2, y-high, small, layout.Left, off)
		d.Write(aft+2, y-low, small, layout.Left, words)
		free = aft + 4 + lettering.Width(words, small)
		d.Keep = append(d.Keep, layout.Span{From: aft - 5, To: aft + 60})
	}
	d.Straight(layout.Mark, from, y, fore+3, y)
	d.Straight(layout.Cut, fore, y, fore, y-laneHigh+1)
	d.Write(fore-2, y-high, small, layout.Right, off)
	d.Write(fore-2, y-low, small, layout.Right, batten+end+units.Fine(fore))
	d.Keep = append(d.Keep, layout.Span{From: fore - 60, To: fore + 5})
	for i, x := range ribs {
		if halved(f) && !onHalf(x) {
			continue
		}
		d.Straight(layout.Mark, x, y, x, y-4)
		if x-2 < aft+60 || x+30 > fore-60 || float64(f.Design.Ribs.Pitch) < 60 {
			d.Write(x+1, y-high, small, layout.Left, twins(f, i))
			continue
		}
		words := batten + " " + twins(f, i) + " " + units.Fine(x)
		d.Write(x+1, y-high, small, layout.Left, words)
		if x > free {
			d.Write(x+1, y-low, small, layout.Left, off)
		}
		d.Keep = append(d.Keep, layout.Span{From: x - 6, To: x + 4 + lettering.Width(words, small)})
	}
}
