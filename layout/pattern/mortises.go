package pattern

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/frame"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// Mortises draws the strip for the gunwale's underside: x is the distance from
// midship along the straight stock, y = 0 its middle line. Seen on the port
// gunwale the upper edge is inboard; on the starboard one it is outboard.
func Mortises(f *frame.Frame, o Options) layout.Drawing {
	g := &f.Gunwale
	half := g.Width / 2
	d := layout.Drawing{Name: "mortises", Title: "Gunwale mortises", Make: "use twice, port and starboard", Strip: true}
	d.Straight(layout.Mark, g.Aft-6, half, g.Fore+6, half)
	d.Straight(layout.Mark, g.Aft-6, -half, g.Fore+6, -half)
	d.Straight(layout.Center, g.Aft-6, 0, g.Fore+6, 0)
	for _, m := range g.Mortises {
		drawMortise(&d, m, half)
	}
	for _, s := range g.Scarfs {
		drawScarf(&d, s, half)
	}
	drawZones(&d, g, half)
	drawEndCut(&d, g.Fore, g.ForeCut, half, 1)
	drawEndCut(&d, g.Aft, g.AftCut, half, -1)
	drawMidship(&d, half)
	tape{g.Aft, g.Fore, -half - 7.6}.draw(&d, o.Units)
	return d
}

func drawMortise(d *layout.Drawing, m frame.Mortise, half float64) {
	lo, hi := m.Ends()
	d.Line(layout.Cut, curve.Rectangle(geometry.Box{
		Min: geometry.Point{X: lo, Y: -m.Width / 2}, Max: geometry.Point{X: hi, Y: m.Width / 2}}))
	x := m.FromMidship
	d.Straight(layout.Mark, x, m.Width/2, x, half+10)
	d.Straight(layout.Mark, x, -m.Width/2, x, -half-1.8)
	d.Write(x-1.5, half+3, name, layout.Right, m.Rib)
	d.Write(x+1.5, half+5.9, small, layout.Left, measure.MM(x, 1)+" mm")
	d.Write(x+1.5, half+1.8, small, layout.Left, measure.Sixteenths(x))
	d.Write(x, -half-5.6, small, layout.Middle, "lean "+leaning(m.Bevel))
	d.Whole = append(d.Whole, layout.Span{From: lo - 1, To: hi + 1})
	d.Keep = append(d.Keep, layout.Span{From: x - 16, To: x + 26})
}

// drawScarf marks where the plies are joined.
func drawScarf(d *layout.Drawing, s frame.Scarf, half float64) {
	from, to := s.Middle-s.Length/2, s.Middle+s.Length/2
	d.Straight(layout.Guide, from, -half, to, half)
	d.Straight(layout.Guide, from, -half, from, half)
	d.Straight(layout.Guide, to, -half, to, half)
	d.Write(s.Middle, half+1.8, small, layout.Middle, fmt.Sprintf("scarf, %.0f mm long", s.Length))
	d.Keep = append(d.Keep, layout.Span{From: from, To: to})
}

// drawZones draws a bar under the stretches that must stay whole, and says
// where a scarf may lie.
func drawZones(d *layout.Drawing, g *frame.Gunwale, half float64) {
	y := -half - 1.8
	for _, z := range g.NoScarf {
		d.Straight(layout.Cut, z.From, y, z.To, y)
	}
	for _, r := range g.ScarfRooms(g.ScarfLength) {
		if r.To-r.From >= 60 {
			mid := (r.From + r.To) / 2
			d.Write(mid, y-3.8, small, layout.Middle, "scarf may lie here")
			d.Keep = append(d.Keep, layout.Span{From: mid - 17, To: mid + 17})
		}
	}
}

// drawEndCut draws the end cuts of both gunwales, which lean opposite ways
// because one strip serves both; side is 1 forward, -1 aft.
func drawEndCut(d *layout.Drawing, x, angle, half, side float64) {
	reach := half * math.Tan(angle)
	d.Straight(layout.Cut, x+side*reach, half, x-side*reach, -half)
	d.Straight(layout.Guide, x-side*reach, half, x+side*reach, -half)
	align := layout.Right
	if side < 0 {
		align = layout.Left
	}
	d.Write(x-side*9, half+5.9, small, align, fmt.Sprintf("end: cut %.1f\u00B0 off square, full line port,", degrees(angle)))
	d.Write(x-side*9, half+1.8, small, align, "dashed line starboard")
	d.Keep = append(d.Keep, layout.Span{From: x - 70, To: x + 70})
}

func drawMidship(d *layout.Drawing, half float64) {
	d.Straight(layout.Center, 0, half+10, 0, -half-7)
	d.Write(30, half+1.8, small, layout.Left, "forward")
	d.Line(layout.Tick, curve.Polyline(
		geometry.Point{X: 43.5, Y: half + 3}, geometry.Point{X: 55, Y: half + 3}))
	d.Line(layout.Tick, curve.Polyline(
		geometry.Point{X: 52.5, Y: half + 4}, geometry.Point{X: 55, Y: half + 3}, geometry.Point{X: 52.5, Y: half + 2}))
	d.Write(30, half+5.9, small, layout.Left, "midship is 0")
}
