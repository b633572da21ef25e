package pattern

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
)

// ends returns the patterns of stems and breasthooks: one for both ends when they are equal.
func ends(b *bend.Report, units measure.System) []layout.Drawing {
	f := b.Frame
	if f.Design.EndsAlike() {
		return []layout.Drawing{Stem(b, 1, "stems", "Stems", "make 2", units), Breasthook(b, 1, "breasthooks", "Breasthooks", "make 2", units)}
	}
	return []layout.Drawing{
		Stem(b, 1, "stem-bow", "Bow stem", "make 1", units), Stem(b, 0, "stem-stern", "Stern stem", "make 1", units),
		Breasthook(b, 1, "breasthook-bow", "Bow breasthook", "make 1", units),
		Breasthook(b, 0, "breasthook-stern", "Stern breasthook", "make 1", units),
	}
}

// Stem draws one stem from the side, the stern's (end 0) or the bow's (1): x is the
// distance from midship, y the height above the baseline.
func Stem(r *bend.Report, end int, key, title, count string, units measure.System) layout.Drawing {
	f, s := r.Frame, [2]frame.Stem{r.Frame.Stern, r.Frame.Bow}[end]
	d := layout.Drawing{Name: key, Title: title, Make: count}
	d.Line(layout.Cut, s.Outline)
	b := s.Outline.Bounds()
	stemHoles(&d, r, end, units)
	// The station lines and the waterline place the stem in the boat.
	d.Straight(layout.Guide, b.Min.X-4, s.Waterline, b.Max.X+4, s.Waterline)
	d.Write(b.Min.X-4, s.Waterline+1, small, layout.Left, "waterline, "+units.Fine(s.Waterline)+" up")
	d.Straight(layout.Guide, s.ToeX, b.Min.Y-15, s.ToeX, s.Waterline+6)
	d.Write(s.ToeX+1.2, b.Min.Y-4.5, small, layout.Left, "station "+units.Fine(s.ToeX))
	for i, l := range s.Landings {
		d.Straight(layout.Mark, l.X-3, l.Y, l.X+3, l.Y)
		d.Straight(layout.Mark, l.X, l.Y-3, l.X, l.Y+3)
		d.Write(l.X-4, l.Y-1.2, small, layout.Right, fmt.Sprintf("S%d", i+1))
		d.Write(l.X+3, besideCross(l.Y, s.Waterline), small, layout.Right, strings.TrimSpace(within(marks.Joined, units)))
	}
	drawGrain(&d, s)
	x := s.Shelf[0].X - 4
	d.Write(x, s.Shelf[0].Y-1, small, layout.Right, "gunwales rest")
	d.Write(x, s.Shelf[0].Y-1-row, small, layout.Right, "here"+within(marks.Joined, units))
	d.Write(s.FootX, b.Min.Y-4.5, small, layout.Left, "keel lies under the foot")
	d.Write(s.ToeX-1.5, b.Min.Y-4.5-row, small, layout.Right, "keel butts against this step")
	// The title runs up the middle of the wood above the forefoot.
	up := s.Rise
	at := s.Middle.Add(geometry.Polar(row*0.9, up+math.Pi/2))
	d.WriteAt(at, head, up, layout.Left, title+", "+count)
	d.WriteAt(at.Add(geometry.Polar(row*1.1, up-math.Pi/2)), small, up, layout.Left, units.Fine(s.Thickness)+" thick, "+stemMade(f))
	d.WriteAt(at.Add(geometry.Polar(row*2.1, up-math.Pi/2)), small, up, layout.Left, f.Design.Title)
	return d
}

// besideCross is where the foot of words under the cross at a height stands: over the
// cross where they would lie on the waterline.
func besideCross(y, waterline float64) float64 {
	const arm, air = 3.0, 1.2
	under := y - arm - air - small
	if waterline > under-air && waterline < y-arm {
		return y + arm + air
	}
	return under
}

// stemMade says of what a stem is made.
func stemMade(f *frame.Frame) string {
	d := f.Design
	switch d.MadeStems() {
	case design.StemsLaminated:
		return fmt.Sprintf("%d layers", d.Bending.StemPlies)
	case design.StemsPlywood:
		return "plywood"
	}
	return d.StemWood()
}

// stemHoles draws what is bored in a stem: for the stringers' and the gunwales' lashings,
// and where the keel's screws come up.
func stemHoles(d *layout.Drawing, r *bend.Report, end int, units measure.System) {
	l, g, f := &r.Joints.Landings[end], &r.Joints.Ends[end], &r.Joints.Feet[end]
	for i, h := range l.Holes {
		d.Line(layout.Cut, curve.Circle(h.At, l.Drill/2))
		if i == 0 {
			d.Write(h.At.X+l.Drill/2+1, h.At.Y-1, small, layout.Left, units.Fine(l.Drill))
		}
	}
	d.Line(layout.Cut, curve.Circle(g.At, g.Drill/2))
	d.Write(g.At.X+g.Drill/2+1, g.At.Y-1, small, layout.Left, units.Fine(g.Drill))
	for _, p := range f.At {
		d.Straight(layout.Center, p.X, p.Y-2, p.X, p.Y+f.Deep)
	}
}

// pegMark is how far into the plate a peg's line is drawn, mm.
const pegMark = 8.0

// pegMarks draws where pegs enter a breasthook's edges, level in the middle of its
// thickness.
func pegMarks(h *joint.Hook) []curve.Path {
	var out []curve.Path
	for i, p := range h.At {
		line := curve.Polyline(p, p.Sub(h.Out[i].Scale(math.Min(h.Into, pegMark))))
		out = append(out, line, line.Map(geometry.Stretch(1, -1)))
	}
	return out
}

func drawGrain(d *layout.Drawing, s frame.Stem) {
	along := geometry.Polar(s.Moulded*0.4, s.Grain)
	from, to := s.Forefoot.Sub(along), s.Forefoot.Add(along)
	d.Line(layout.Guide, curve.Polyline(from, to))
	for _, turn := range []float64{math.Pi * 0.9, -math.Pi * 0.9} {
		d.Line(layout.Tick, curve.Polyline(to, to.Add(geometry.Polar(4, s.Grain+turn))))
		d.Line(layout.Tick, curve.Polyline(from, from.Sub(geometry.Polar(4, s.Grain+turn))))
	}
	d.WriteAt(s.Forefoot.Add(geometry.Polar(1.5, s.Grain+math.Pi/2)), small, s.Grain, layout.Middle, "grain")
}

// Breasthook draws the plate's upper face: x along the boat with the nose at 0, y across it.
func Breasthook(r *bend.Report, end int, key, title, count string, units measure.System) layout.Drawing {
	f, b, pegs := r.Frame, [2]frame.Breasthook{r.Frame.SternHook, r.Frame.BowHook}[end], &r.Joints.Hooks[end]
	d := layout.Drawing{Name: key, Title: title, Make: count}
	for _, p := range pegMarks(pegs) {
		d.Line(layout.Mark, p)
	}
	d.Line(layout.Cut, b.Outline)
	box := b.Outline.Bounds()
	d.Straight(layout.Center, box.Min.X-4, 0, 6, 0)
	x := box.Min.X + float64(f.Design.Breasthook.Hollow) + 4
	d.Write(x, 7, head, layout.Left, title)
	d.Write(x, 2, small, layout.Left, count+", "+units.Fine(b.Thickness)+" thick")
	d.Write(x, -5.5, small, layout.Left, "upper face, flush with the gunwales' tops;")
	d.Write(x, -5.5-row, small, layout.Left, "sides lean "+leaning(b.Bevel)+" at the top, to fit the gunwales; grain this way")
	d.Write(x, -5.5-2*row, small, layout.Left, "nose against the horn; short lines: pegs "+units.Fine(pegs.Fastener.Diameter)+", level,")
	d.Write(x, -5.5-3*row, small, layout.Left, units.Fine(pegs.Down)+" under the upper face")
	return d
}
