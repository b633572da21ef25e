package pattern

import (
	"fmt"
	"math"
	"sort"

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

// BodyPlan draws every rib at full size, its outer face: x is the
// half-breadth, y the height above the baseline. The fore body stands on the
// right, the after body on the left; where they are equal one half serves both. A line
// that would lie too near to another joins it. Thin lines across them show where bends
// begin and end; dashed runs what the rib amidships does when it is only pushed in.
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
	notes := []string{"dashed: only pushed in", "heads apart" + within(marks.FreeWidth, units)}
	y := top - row
	step, _ := levelStep(units)
	if level := math.Floor(top/step) * step; y-row*float64(len(notes)-1)-1 < level {
		y = level - row // under the level line that would strike them
	}
	for i, note := range notes {
		d.Write(6, y-float64(i)*row, small, layout.Left, note)
	}
	d.Keep = append(d.Keep, layout.Span{From: -12, To: d.Texts[len(d.Texts)-len(notes)-1].Bounds().Max.X + 3})
	for _, side := range sides {
		drawSide(&d, b, side)
	}
	return d
}

// drawLoose draws the middle lines that the rib nearest midship takes on one side when it
// is only pushed in, heads hinged and heads clamped. It returns the points of the first.
func drawLoose(d *layout.Drawing, b *bend.Report, i int, side float64) []geometry.Point {
	p := b.Ribs[i].Pushed
	var first []geometry.Point
	for _, h := range []pushed.Head{p.Hinged, p.Clamped} {
		path := h.Half.Path(geometry.Point{Y: b.Frame.Ribs[i].Section.KeelZ}, 0).Map(geometry.Stretch(side, 1))
		d.Line(layout.Guide, path)
		if first == nil {
			first = dense(path)
		}
	}
	return first
}

// drawBends joins, on one side from rib to rib, the places on their outer faces where one
// bend passes into the next: a rib's line has its bend mark where it crosses. Bends are
// counted from the head, and a line ends where ribs have another number of them.
func drawBends(d *layout.Drawing, f *frame.Frame, on []int, side float64) [][]geometry.Point {
	var out [][]geometry.Point
	for first := 0; first < len(on); {
		bends, last := len(f.Ribs[on[first]].Section.Half), first+1
		for last < len(on) && len(f.Ribs[on[last]].Section.Half) == bends {
			last++
		}
		for n := 1; n < bends && last-first > 1; n++ {
			var run []geometry.Point
			for _, i := range on[first:last] {
				r := f.Ribs[i]
				run = append(run, geometry.Stretch(side, 1).Apply(r.Face(r.Section.Half[:n].Length(), r.Thickness/2)))
			}
			line := curve.Polyline(run...)
			d.Line(layout.Tick, line)
			out = append(out, dense(line))
		}
		first = last
	}
	return out
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
	label(y, waterline)
	nameAgain(d, left, wide, z)
}

const waterline = "waterline"

// nameAgain notes where a tile can have the waterline's name, over the line or under it.
func nameAgain(d *layout.Drawing, from, to, z float64) {
	const step, air = 5.0, 1.0
	for x := from; x < to; x += step {
		for _, y := range []float64{z + air, z - air - small} {
			d.Again = append(d.Again, layout.Text{At: geometry.Pt(x, y), Height: small, Words: waterline})
		}
	}
}

type ribHead struct {
	at   geometry.Point // the head of the line that is drawn, its outer face
	name string
}

// steep is how much a line from a rib's name to its head falls at the least, mm a mm.
const steep = 0.7

// nameHeads letters the ribs upright above their heads. Amidships, where heads lie close,
// names fan out from the innermost, each with a line to its own head, so steep that it does
// not run along a shoulder's line.
func nameHeads(d *layout.Drawing, heads []ribHead) {
	sort.SliceStable(heads, func(i, j int) bool { return math.Abs(heads[i].at.X) < math.Abs(heads[j].at.X) })
	last := math.Inf(-1)
	for _, h := range heads {
		last = math.Max(math.Abs(h.at.X), last+small+wordsApart)
		foot := geometry.Point{X: math.Copysign(last, h.at.X), Y: h.at.Y + math.Max(2.5, (last-math.Abs(h.at.X))*steep)}
		d.Line(layout.Tick, curve.Polyline(h.at, foot))
		d.WriteAt(foot.Add(geometry.Point{X: small / 2, Y: 0.8}), small, math.Pi/2, layout.Left, h.name)
	}
}
