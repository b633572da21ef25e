package pattern

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// The rows of words over the stock's upper edge, and where the tape hangs under the lower
// one, mm: so near that four pieces go across a sheet.
const (
	lowerRow = 0.9
	upperRow = 4.2
	underBar = 2.3
	// overMiddle is where words stand over the stock's middle line.
	overMiddle = 0.7
)

// Mortises draws the strip for the gunwale's underside: x is the distance from
// midship along the straight stock, y = 0 its middle line. Seen on the port
// gunwale the upper edge is inboard; on the starboard one it is outboard. Where
// fore and aft are equal it is the forward half, which serves for all four.
func Mortises(b *bend.Report, units measure.System) layout.Drawing {
	f := b.Frame
	g := &f.Gunwale
	half, aft := g.Width/2, g.Aft-6
	d := layout.Drawing{Name: "mortises", Title: "Gunwale mortises", Make: "underside; upper edge port inboard, starboard outboard"}
	if halved(f) {
		aft, d.Turns = -overMidship, true
		d.Make = "underside; one half, turn over at midship, end for end"
	}
	places := "places" + within(marks.Placed, units)
	d.Make += "; " + places
	d.Straight(layout.Mark, aft, half, g.Fore+6, half)
	d.Straight(layout.Mark, aft, -half, g.Fore+6, -half)
	d.Straight(layout.Center, aft, 0, g.Fore+6, 0)
	for i, m := range g.Mortises {
		if !d.Turns || onHalf(m.FromMidship) {
			drawMortise(&d, m, twins(f, i), half, g.Blocks != nil)
		}
	}
	drawScarfs(&d, f, half, units)
	drawThwarts(&d, f, half, units)
	drawSeatBolts(&d, f, half, units)
	drawSpreaders(&d, b, half, units)
	drawZones(&d, f, half)
	drawEndCut(&d, g.Fore, g.ForeCut, g.ForeRise, half, 1, units)
	if !d.Turns {
		drawEndCut(&d, g.Aft, g.AftCut, g.AftRise, half, -1, units)
	}
	drawMidship(&d, half, placesAtMidship(f, places))
	drawPlies(&d, b, half, units)
	tape(&d, units, math.Max(g.Aft, aft), g.Fore, -half-underBar)
	return d
}

func drawMortise(d *layout.Drawing, m frame.Mortise, rib string, half float64, gap bool) {
	lo, hi := m.Ends()
	d.Line(layout.Cut, curve.Rectangle(geometry.Rect(lo, -m.Width/2, hi, m.Width/2)))
	x := m.FromMidship
	d.Straight(layout.Mark, x, m.Width/2, x, half+upperRow+small)
	d.Straight(layout.Mark, x, -m.Width/2, x, -half)
	d.Write(x-1.5, half+1.2, name, layout.Right, rib)
	place := measure.MM(x, 1) + " mm"
	d.Write(x+1.5, half+upperRow, small, layout.Left, place)
	d.Write(x+4.5+lettering.Width(place, small), half+upperRow, small, layout.Left, measure.Sixteenths(x))
	lean := "lean " + leaning(m.Bevel)
	if gap {
		lean = "rib leans " + leaning(m.Bevel)
		if words := lean + ", taper " + measure.MM(m.Taper, 1) + " mm"; m.Taper > 0 && lettering.Width(words, small) < m.ToNext {
			lean = words
		}
	}
	d.Write(x+1.5, half+lowerRow, small, layout.Left, lean)
	// A joint's code stands up to 4 mm to its right, and must not lie on a slot.
	d.Whole = append(d.Whole, layout.Span{From: lo - 5, To: hi + 1})
	// Nor half of its crosses on the name of the rib.
	d.Keep = append(d.Keep, layout.Span{From: x - 8 - lettering.Width(rib, name), To: x + 38})
}

// drawScarfs marks where one ply at a time is joined.
func drawScarfs(d *layout.Drawing, f *frame.Frame, half float64, units measure.System) {
	drawn := map[float64]bool{}
	for _, s := range f.Gunwale.Scarfs {
		mid, whose := s.Middle, ""
		if d.Turns {
			mid, whose = folded(mid)
			if slices.ContainsFunc(f.Gunwale.Scarfs, func(t frame.Scarf) bool { return t.Middle == -s.Middle }) {
				whose = ""
			}
		}
		if drawn[mid] {
			continue
		}
		drawn[mid] = true
		from, to := mid-s.Length/2, mid+s.Length/2
		d.Straight(layout.Guide, from, -half, from, half)
		d.Straight(layout.Guide, to, -half, to, half)
		d.Write(mid, half+lowerRow, small, layout.Middle, "scarf of one ply, "+units.Fine(s.Length)+" long"+whose)
		d.Keep = append(d.Keep, layout.Span{From: from, To: to})
	}
}

// drawThwarts marks the cross pieces' edges and the holes for their bolts, with how wide these
// are between them.
func drawThwarts(d *layout.Drawing, f *frame.Frame, half float64, units measure.System) {
	g := &f.Gunwale
	for i, t := range f.Thwarts {
		at, wide, whose := t.At, float64(f.Design.Thwarts[i].Width)/2, ""
		if d.Turns {
			at, whose = folded(at)
		}
		edge := func(x, inward float64, side layout.Align) {
			d.Straight(layout.Guide, x, -half, x, half)
			d.Write(x+inward, overMiddle+0.6, small, side, "edge")
			d.Keep = append(d.Keep, layout.Span{From: x - 3, To: x + 3}) // beside a joint it would be taken for it
		}
		edge(g.OnStock(at-wide), labelOff, layout.Left)
		edge(g.OnStock(at+wide), -labelOff, layout.Right)
		at = g.OnStock(at)
		for _, h := range t.Holes {
			if b := h.Bounds(); b.Min.X > 0 {
				d.Line(layout.Mark, curve.Circle(geometry.Point{X: at + (b.Min.Y+b.Max.Y)/2}, t.Hole/2))
			}
		}
		d.Write(at, half-3.4, small, layout.Middle, called(t.Name, i)+whose)
		if len(t.Holes) > 0 {
			d.Write(at, overMiddle, small, layout.Middle, "holes "+units.Drill(t.Hole))
		}
		d.Whole = append(d.Whole, layout.Span{From: at - wide/2 - t.Hole/2 - 5, To: at + wide/2 + t.Hole/2 + 1})
	}
}

// called is what a cross piece is called on the strip: by its name, or, where that is longer than
// a short piece of the strip has room for, as the cut list marks its stick.
func called(name string, number int) string {
	const room = 50.0 // mm
	if lettering.Width(lettering.Safe(name), small) > room {
		return frame.CrossMark(number)
	}
	return name
}

// drawZones draws a hollow bar under the stretches that must stay whole, and says
// where a scarf may lie.
func drawZones(d *layout.Drawing, f *frame.Frame, half float64) {
	g := f.Gunwale
	if d.Turns {
		g.NoScarf = foldedZones(g.NoScarf)
	}
	y := -half - 1.4
	for _, z := range g.NoScarf {
		d.Line(layout.Mark, curve.Rectangle(geometry.Rect(z.From, y-0.4, z.To, y+0.4)))
	}
	for _, r := range g.ScarfRooms(g.ScarfLength) {
		if r.To-r.From >= 60 {
			mid := (r.From + r.To) / 2
			d.Write(mid, half-3.4, small, layout.Middle, "scarf may lie here")
			d.Keep = append(d.Keep, layout.Span{From: mid - 17, To: mid + 17})
		}
	}
}

// drawEndCut draws the end cuts of both gunwales, which lean opposite ways
// because one strip serves both. The inboard edge always reaches farther. longer is by
// how much the upper face of the stock reaches on, so that the end stands plumb; side is
// 1 forward, -1 aft.
func drawEndCut(d *layout.Drawing, x, angle, longer, half, side float64, units measure.System) {
	reach := half * math.Tan(angle)
	d.Straight(layout.Cut, x+side*reach, half, x-side*reach, -half)
	d.Straight(layout.Guide, x-side*reach, half, x+side*reach, -half)
	align := layout.Right
	if side < 0 {
		align = layout.Left
	}
	full, dashed := "on port", "on starboard"
	if d.Turns { // aft the strip is turned, and its edges change sides
		full, dashed = "with the upper edge inboard", "with it outboard"
	}
	wide := 0.0
	for i, words := range []string{
		fmt.Sprintf("end: cut %.1f\u00B0 off square, full line %s,", degrees(angle), full),
		fmt.Sprintf("dashed %s; at the gunwale's top face the cut is %s farther out", dashed, units.Fine(longer)),
	} {
		d.Write(x-side*9, half+upperRow-(upperRow-lowerRow)*float64(i), small, align, words)
		wide = math.Max(wide, lettering.Width(lettering.Safe(words), small))
	}
	d.Keep = append(d.Keep, layout.Span{From: x - wide - 12, To: x + wide + 12})
}

// midshipAt is where the words at midship begin, mm.
const midshipAt = 30

// placesAtMidship is what is said of places behind "midship is 0", where the name of the
// next rib leaves room for it.
func placesAtMidship(f *frame.Frame, places string) string {
	words := ", " + places
	to := midshipAt + lettering.Width("midship is 0"+words, small) + 5
	for i, m := range f.Gunwale.Mortises {
		if m.FromMidship > 0 && m.FromMidship-lettering.Width(twins(f, i), name) < to {
			return ""
		}
	}
	return words
}

func drawMidship(d *layout.Drawing, half float64, places string) {
	d.Straight(layout.Center, 0, half+upperRow+small, 0, -half)
	d.Write(midshipAt, half+lowerRow, small, layout.Left, "forward")
	d.Straight(layout.Tick, 43.5, half+2, 55, half+2)
	d.Line(layout.Tick, curve.Polyline(geometry.Pt(52.5, half+3), geometry.Pt(55, half+2), geometry.Pt(52.5, half+1)))
	d.Write(midshipAt, half+upperRow, small, layout.Left, "midship is 0"+places)
}
