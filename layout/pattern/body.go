package pattern

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/pushed"
	"ribwright/layout"
)

// levelStep is the distance between the level lines of the body plan, mm, and how each is lettered.
func levelStep(units measure.System) (float64, func(z float64) string) {
	if units == measure.Imperial {
		return 50.8, measure.Sixteenths
	}
	return 50, func(z float64) string { return fmt.Sprintf("%.0f mm", z) }
}

// BodyPlan draws every rib at full size, inner and outer face: x is the
// half-breadth, y the height above the baseline. The fore body stands on the
// right, the after body on the left; where they are equal one half serves both. Dashed
// beside a few of them runs what they do when they are only pushed in.
func BodyPlan(b *bend.Report, units measure.System) layout.Drawing {
	f := b.Frame
	d := layout.Drawing{Name: "body", Title: "Body plan", Make: "hold bent ribs against it"}
	top := 0.0
	for _, r := range f.Ribs {
		top = math.Max(top, r.Section.KeelZ+r.Section.Depth)
	}
	wide := f.Hull.Beam/2 + 28 // room for lettering outside the ribs
	left, sides := -wide, []float64{1, -1}
	fore := "fore body"
	if halved(f) {
		left, sides, fore = -8, sides[:1], "fore and after body alike"
		d.Make = "one half of every rib, turn over at midship and on the middle line; hold bent ribs against it"
	} else {
		d.Write(-6, top+10, head, layout.Right, "after body")
	}
	drawWaterlines(&d, f, left, wide, top, units)
	d.Straight(layout.Center, 0, -8, 0, top+16)
	d.Write(6, top+10, head, layout.Left, fore)
	d.Write(6, top+4.5, small, layout.Left, "middle line of the boat")
	notes := []string{"dashed: some ribs if only pushed in,", "heads loose and heads tight", "width between heads" + within(marks.FreeWidth, units)}
	y := top - row
	step, _ := levelStep(units)
	if level := math.Floor(top/step) * step; y-row*float64(len(notes)-1)-1 < level {
		y = level - row // under the level line that would strike them
	}
	for i, note := range notes {
		d.Write(6, y-float64(i)*row, small, layout.Left, note)
	}
	for _, side := range sides {
		var heads []ribHead
		for i, r := range f.Ribs {
			if r.Station*side >= 0 {
				heads = append(heads, drawSection(&d, f, r, twins(f, i), side))
			}
		}
		nameHeads(&d, heads)
		drawLoose(&d, b, side)
	}
	return d
}

// drawLoose draws the middle lines that ribs take which are only pushed in, heads hinged
// and heads clamped, for a few ribs of one side, so that they do not crowd: the one
// nearest midship, the last, and the one half way.
func drawLoose(d *layout.Drawing, b *bend.Report, side float64) {
	var on []int // from midship outward
	for i, r := range b.Frame.Ribs {
		if r.Station*side >= 0 {
			on = append(on, i)
		}
	}
	if side < 0 {
		slices.Reverse(on)
	}
	if len(on) == 0 {
		return
	}
	var few []int
	for k := range 3 {
		if i := on[(len(on)-1)*k/2]; !slices.Contains(few, i) {
			few = append(few, i)
		}
	}
	for _, i := range few {
		p := b.Ribs[i].Pushed
		for _, h := range []pushed.Head{p.Hinged, p.Clamped} {
			path := h.Half.Path(geometry.Point{Y: b.Frame.Ribs[i].Section.KeelZ}, 0)
			d.Line(layout.Guide, path.Map(geometry.Stretch(side, 1)))
		}
	}
}

func drawWaterlines(d *layout.Drawing, f *frame.Frame, left, wide, top float64, units measure.System) {
	step, letter := levelStep(units)
	label := func(y float64, words string) {
		d.Write(wide, y, small, layout.Right, words)
		if left < -14 {
			d.Write(left+14, y, small, layout.Left, words)
		}
	}
	for i := 0; float64(i)*step <= top; i++ {
		z := float64(i) * step
		d.Straight(layout.Guide, left, z, wide, z)
		words := letter(z)
		if z == 0 {
			words = "baseline"
		}
		label(z+1, words)
	}
	z := float64(f.Design.Hull.Waterline)
	d.Straight(layout.Mark, left, z, wide, z)
	y := z - 1 - small
	if math.Mod(z, step) < 2*small+3 { // a level line's own label stands there
		y = z - math.Mod(z, step) + 2 + small
	}
	label(y, "waterline")
}

// drawSection draws one half section under a name and returns its head; side is 1
// to the right, -1 to the left.
func drawSection(d *layout.Drawing, f *frame.Frame, r frame.Rib, name string, side float64) ribHead {
	place := geometry.Stretch(side, 1)
	d.Line(layout.Cut, r.Outer.Map(place))
	d.Line(layout.Mark, r.Inner.Map(place))
	_, heading := r.Section.Half.End()
	girth := r.Section.Half.Length()
	tip := place.Apply(r.Face(girth, 0))
	across := geometry.Polar(r.Thickness/2+2, heading-math.Pi/2)
	across.X *= side
	d.Line(layout.Mark, curve.Polyline(tip.Sub(across), tip.Add(across)))
	for _, along := range r.Stringers {
		a, b := r.Face(along, r.Thickness/2), r.Face(along, -r.Thickness/2)
		d.Straight(layout.Mark, side*a.X, a.Y, side*b.X, b.Y)
	}
	return ribHead{tip, name}
}

type ribHead struct {
	at   geometry.Point
	name string
}

// nameHeads letters the ribs upright above their heads; names that would lie on
// each other, amidships where ribs are nearly alike, climb in steps.
func nameHeads(d *layout.Drawing, heads []ribHead) {
	slices.SortFunc(heads, func(a, b ribHead) int { return cmp.Compare(math.Abs(b.at.X), math.Abs(a.at.X)) })
	step, last := 0.0, math.Inf(1)
	for _, h := range heads {
		if math.Abs(last-h.at.X) < small+1.2 {
			step += 9
		} else {
			step = 0
		}
		last = h.at.X
		foot := h.at.Add(geometry.Point{Y: 2.5 + step})
		d.Line(layout.Tick, curve.Polyline(h.at, foot))
		d.WriteAt(foot.Add(geometry.Point{X: small / 2, Y: 0.8}), small, math.Pi/2, layout.Left, h.name)
	}
}
