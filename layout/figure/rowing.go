package figure

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/outfit/rowing"
	"ribwright/layout"
)

// RowingSketch draws the boat from the side with the rower's places, so many mm long,
// and from astern with the oars.
func RowingSketch(f *rowing.Fit, wide float64) layout.Drawing {
	d := layout.Drawing{Name: "rowing", Title: f.Boat.Frame.Design.Title + " fitted for rowing"}
	v := sideView(&d, f.Boat.Hull, geometry.Point{}, wide)
	seat := v.at(f.SeatX, f.SeatZ)
	d.Straight(layout.Cut, v.at(f.SeatX-rowing.SeatWide/2, 0).X, seat.Y, v.at(f.SeatX+rowing.SeatWide/2, 0).X, seat.Y)
	lock := v.at(f.LockX, f.LockZ)
	cross(&d, lock)
	foot := v.at(f.FootX, f.Boat.Floor(f.FootX)+rowing.BoardThick)
	d.Line(layout.Cut, curve.Polyline(foot, foot.Add(geometry.Pt(-3, 6))))
	rower(&d, f, v, foot)
	// The places are written under the keel, each under its own.
	under(&d, lock, layout.Right, fmt.Sprintf("rowlocks %.0f", f.LockX), 1)
	under(&d, foot, layout.Right, fmt.Sprintf("heels %.0f", f.FootX), 0)
	under(&d, seat, layout.Left, fmt.Sprintf("seat %.0f, %.0f over the floor", f.SeatX, f.SeatOver), 0)
	if f.Fault != nil {
		d.Write(0, -4.5-3*row, small, layout.Left, "it does not float upright with the rower on the seat: no water and no oars are drawn")
		return d
	}
	onWater(&d, f.Boat.Hull, f.Rest.Plane, v, 0.03)
	fromAstern(&d, f, wide)
	return d
}

// Rowing is the sketch with its headline.
func Rowing(f *rowing.Fit) layout.Drawing {
	d := RowingSketch(f, wideFigure)
	d.Write(0, d.Bounds().Max.Y+8, head+0.4, layout.Left, fmt.Sprintf("%s rowed by a %s of %.0f mm and %.0f kg: oars %.0f mm, span %.0f mm",
		f.Boat.Frame.Design.Title, f.Row.Body, f.Body.Stature, f.Body.Mass, f.Oar.Length, f.Span))
	return d
}

func rower(d *layout.Drawing, f *rowing.Fit, v view, heel geometry.Point) {
	hip := v.at(f.Back()-100, f.SeatZ+f.Body.Thigh/2)
	kneeHalf := (f.Body.Knee - f.Body.Popliteal) / 2
	kneeZ := f.SeatZ + f.Legs.KneeTop - kneeHalf
	thigh := f.Body.ButtockKnee - 100 - kneeHalf
	dz := kneeZ - f.SeatZ - f.Body.Thigh/2
	knee := v.at(f.Back()-100-math.Sqrt(math.Max(0, thigh*thigh-dz*dz)), kneeZ)
	shoulder := v.at(f.Back()-60, f.SeatZ+f.Body.Shoulder)
	top := v.at(f.Back()-60, f.SeatZ+f.Body.Sitting)
	d.Line(layout.Guide, curve.Polyline(heel, knee, hip, shoulder))
	d.Line(layout.Guide, curve.Polyline(shoulder, v.at(f.LockX, f.SeatZ+f.Level.Drive)))
	r := top.Sub(shoulder).Norm() * 0.36
	d.Line(layout.Guide, curve.Circle(geometry.Pt(top.X, top.Y-r), r))
}

// fromAstern draws the section at the rowlocks with both oars, one driven and one
// carried, below the side view.
func fromAstern(d *layout.Drawing, f *rowing.Fit, wide float64) {
	out := f.Oar.Outboard()
	v := view{k: wide / (f.Span + 2*out), x0: wide / 2, y0: -wide / 4}
	endView(d, f.Boat.Hull, f.LockX, 0, v)
	water := f.Rest.Plane.Water(f.LockX)
	left, right := v.at(-f.Span/2-out, water), v.at(f.Span/2+out, water)
	d.Line(layout.Mark, curve.Polyline(left, right))
	oar := func(side, slope float64) {
		lock := geometry.Pt(side*f.Span/2, f.LockZ)
		tip := geometry.Pt(lock.X+side*out*math.Cos(slope), lock.Y-out*math.Sin(slope))
		grip := geometry.Pt(lock.X-side*f.Oar.Inboard*math.Cos(slope), lock.Y+f.Oar.Inboard*math.Sin(slope))
		d.Line(layout.Cut, curve.Polyline(v.at(grip.X, grip.Y), v.at(tip.X, tip.Y)))
		cross(d, v.at(lock.X, lock.Y))
	}
	oar(-1, f.Level.Slope)
	oar(1, math.Asin((f.Level.Recover-(f.LockZ-f.SeatZ))/f.Oar.Inboard))
	d.Straight(layout.Center, v.at(-f.Span/2-30, 0).X, v.at(0, f.GunwaleZ).Y, v.at(f.Span/2+30, 0).X, v.at(0, f.GunwaleZ).Y)
	d.Write(left.X, left.Y-11, small, layout.Left, fmt.Sprintf("blade in: handle %.0f mm over the seat", f.Level.Drive))
	d.Write(right.X, right.Y-11, small, layout.Right, fmt.Sprintf("carried clear: handle %.0f mm over the seat", f.Level.Recover))
}
