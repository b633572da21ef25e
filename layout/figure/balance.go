package figure

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/balance"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// readby is about how large a movement is drawn, mm.
const readby = 6.0

// Balance draws a boat's gunwales from above, before and after members are taken out,
// with the forces in the cross pieces: one plan for each trial, one above the other.
// miss is by how much the ribs of the last trial miss the neutral set, mm.
func Balance(title string, b *balance.Boat, w *balance.Without, trials []balance.Trial, miss float64) layout.Drawing {
	f, aft := newPlan(b, w, trials, wideFigure)
	f.d = layout.Drawing{Name: "balance", Title: title + ": plan shape before and after"}
	low := 0.0
	f.write(aft, low, head, title+", plan shape of the gunwales")
	low -= row * 1.2
	for _, l := range lettering.Wrap("Dashed with all members in, solid without "+w.String()+".", small, wideFigure) {
		f.write(aft, low, small, l)
		low -= row
	}
	f.write(aft, low, small, fmt.Sprintf("Drawn at 1 to %.0f; changes of shape are exaggerated %.0f times. Bow to the right. Forces in newtons: + a strut, - a tie.", 1/f.scale, f.factor))
	low -= row
	f.write(aft, low, small, "Ticks at the ribs are their push on the gunwales, 0.6 mm for 1 N, outward from the gunwale; inward they pull.")
	for _, t := range trials {
		low = f.plan(t, low-row*1.6, miss)
	}
	return f.d
}

// BalanceTrial draws one trial alone, the gunwales wide mm long, for a page that says
// in its own words what is to be seen. factor is by how much changes of shape are
// exaggerated.
func BalanceTrial(b *balance.Boat, w *balance.Without, t balance.Trial, miss, wide float64) (d layout.Drawing, factor float64) {
	f, _ := newPlan(b, w, []balance.Trial{t}, wide)
	f.d = layout.Drawing{Name: "balance-" + t.Set, Title: fmt.Sprintf("Plan shape, ribs %s", t.Set)}
	f.plan(t, 0, miss)
	return f.d, f.factor
}

// exaggeration is the roundest factor of 1, 2, 5, 10 and 20 that draws the largest
// change no larger than readby. More would make a shape of what nobody can measure.
func exaggeration(trials []balance.Trial, scale float64) float64 {
	most := 0.0
	for _, t := range trials {
		for i := range t.In.Offset {
			most = math.Max(most, math.Max(math.Abs(t.In.Offset[i]), math.Abs(t.Out.Offset[i])))
		}
	}
	for _, f := range []float64{20, 10, 5, 2} {
		if most*scale*f <= readby {
			return f
		}
	}
	return 1
}

type planView struct {
	d       layout.Drawing
	boat    *balance.Boat
	without *balance.Without
	scale   float64
	factor  float64
}

// newPlan scales the gunwales to be so many mm long; they begin at the station aft.
func newPlan(b *balance.Boat, w *balance.Without, trials []balance.Trial, wide float64) (f *planView, aft float64) {
	aft, fore := b.Frame.Gunwale.Line.Ends()
	scale := wide / (fore - aft)
	return &planView{boat: b, without: w, scale: scale, factor: exaggeration(trials, scale)}, aft
}

// write letters a line that begins at the station x, low mm of the figure up.
func (f *planView) write(x, low, height float64, words string) {
	f.d.Write(x*f.scale, low, height, layout.Left, words)
}

// plan draws one trial under the height top and returns its lowest point.
func (f *planView) plan(t balance.Trial, top, miss float64) float64 {
	aft, fore := f.boat.Frame.Gunwale.Line.Ends()
	f.write(aft, top, small, heading(t.Set, miss))
	half := 0.0
	for x := aft; x <= fore; x += 20 {
		half = math.Max(half, f.side(x, t.In, t.Out))
	}
	middle := top - row - half - 3
	f.d.Straight(layout.Center, aft*f.scale-3, middle, fore*f.scale+3, middle)
	for _, side := range []float64{1, -1} {
		f.gunwale(layout.Guide, t.In, middle, side)
		f.gunwale(layout.Cut, t.Out, middle, side)
	}
	for i, s := range f.boat.Frame.Thwarts {
		f.strut(s.At, t.In.Struts[i], f.without.Struts(i), t.In, middle)
	}
	f.ribs(t, middle)
	return f.moves(t, middle-half-3-row)
}

func heading(set string, miss float64) string {
	switch set {
	case "neutral":
		return "Ribs in the neutral set: relaxed as the rib table says"
	case "off":
		way := " mm wider"
		if miss < 0 {
			way = " mm narrower"
		}
		return "Every rib " + measure.MM(math.Abs(miss), 1) + way + " than the neutral set"
	}
	return "Ribs unset: just as wide as their places before they are fitted"
}

// side is how far the wider of two states reaches from the middle line, drawn.
func (f *planView) side(x float64, a, b *balance.State) float64 {
	y := f.boat.Frame.Gunwale.Line.Point(x).Y
	return f.scale * (y + f.factor*math.Max(a.At(x), b.At(x)))
}

func (f *planView) gunwale(p layout.Pen, s *balance.State, middle, side float64) {
	aft, fore := f.boat.Frame.Gunwale.Line.Ends()
	f.d.Line(p, through(aft, fore, 160, func(x float64) geometry.Point {
		y := f.boat.Frame.Gunwale.Line.Point(x).Y + f.factor*s.At(x)
		return geometry.Pt(x*f.scale, middle+side*y*f.scale)
	}))
}

// strut draws a cross piece, dashed when it is taken out, with its force and
// arrow heads that show which way it pushes the gunwales.
func (f *planView) strut(at, force float64, out bool, in *balance.State, middle float64) {
	x, half := at*f.scale, f.scale*(f.boat.Frame.Gunwale.Line.Point(at).Y+f.factor*in.At(at))
	pen := layout.Mark
	if out {
		pen = layout.Guide
	}
	f.d.Straight(pen, x, middle-half, x, middle+half)
	if math.Abs(force) >= idle {
		for _, side := range []float64{1, -1} {
			f.arrow(x, middle+side*half*0.92, side*math.Copysign(1, force))
		}
	}
	f.d.WriteAt(geometry.Pt(x-1, middle+half*0.45), small, math.Pi/2, layout.Middle, newtons(force))
}

// idle is the force in N under which a cross piece is said to carry nothing:
// less than its own weight, and less than the whole newtons that are lettered.
const idle = 0.5

func newtons(v float64) string {
	if math.Abs(v) < idle {
		return "0"
	}
	return fmt.Sprintf("%+.0f", v)
}

// arrow draws a head at (x, y) that points up for way 1, down for -1.
func (f *planView) arrow(x, y, way float64) {
	f.d.Line(layout.Cut, curve.Polyline(
		geometry.Pt(x-0.9, y-way*1.8), geometry.Pt(x, y), geometry.Pt(x+0.9, y-way*1.8)))
}

// ribs ticks the ribs outside the gunwales: the longer the harder they push, from
// the gunwale outward; a rib that pulls is ticked inward.
func (f *planView) ribs(t balance.Trial, middle float64) {
	const perNewton = 0.6 // mm
	for i, r := range f.boat.Frame.Ribs {
		half := f.side(r.Station, t.In, t.In)
		for _, side := range []float64{1, -1} {
			x := r.Station * f.scale
			reach := math.Max(-8, math.Min(8, t.In.Ribs[i]*perNewton))
			f.d.Straight(layout.Tick, x, middle+side*half, x, middle+side*(half+reach))
		}
	}
}

// moves letters how the beam changes when the members come out, likely and at the worst.
func (f *planView) moves(t balance.Trial, low float64) float64 {
	aft, _ := f.boat.Frame.Gunwale.Line.Ends()
	most := t.Band.Likely
	words := "In the likely case taking them out moves nothing."
	if math.Abs(most.Moved) >= 0.5 {
		words = fmt.Sprintf("In the likely case taking them out changes the beam by %+.0f mm at most, at station %+.0f mm.", most.Moved, most.X)
	}
	f.write(aft, low, small, words)
	low -= row
	over := t.Band.Over()
	f.write(aft, low, small, fmt.Sprintf("At the worst it becomes %.0f mm narrower or %.0f mm wider.", math.Abs(over.Least), over.Most))
	return low
}
