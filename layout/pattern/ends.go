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
	"ribwright/layout/label"
	"ribwright/layout/lettering"
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
	s := [2]frame.Stem{r.Frame.Stern, r.Frame.Bow}[end]
	d := layout.Drawing{Name: key, Title: title, Make: count}
	d.Line(layout.Cut, s.Outline)
	b := s.Outline.Bounds()
	stemHoles(&d, r, end)
	// The station lines and the waterline place the stem in the boat.
	d.Straight(layout.Guide, b.Min.X-4, s.Waterline, b.Max.X+4, s.Waterline)
	d.Write(b.Min.X-4, s.Waterline+1, small, layout.Left, waterline+", "+units.Fine(s.Waterline)+" up")
	nameAgain(&d, b.Min.X, b.Max.X, s.Waterline)
	d.Straight(layout.Guide, s.ToeX, b.Min.Y-15, s.ToeX, s.Waterline+6)
	d.Write(s.ToeX+1.2, b.Min.Y-4.5, small, layout.Left, "station "+units.Fine(s.ToeX))
	d.Write(s.ToeX+1.2, b.Min.Y-4.5-row, small, layout.Left, "keel's end on its stick "+units.Fine([2]float64{-r.Frame.Keel.Aft, r.Frame.Keel.Fore}[end]))
	for _, l := range s.Landings {
		d.Straight(layout.Mark, l.X-3, l.Y, l.X+3, l.Y)
		d.Straight(layout.Mark, l.X, l.Y-3, l.X, l.Y+3)
		d.KeepUp = append(d.KeepUp, layout.Span{From: l.Y - 9, To: l.Y + 6}) // with its words
	}
	drawGrain(&d, s)
	x := s.Shelf[0].X - 4
	d.Write(x, s.Shelf[0].Y-1, small, layout.Right, "gunwales rest")
	d.Write(x, s.Shelf[0].Y-1-row, small, layout.Right, "here"+within(marks.Joined, units))
	d.Write(s.FootX, b.Min.Y-4.5, small, layout.Left, "keel lies under the foot")
	d.Write(s.ToeX-2*labelGap, b.Min.Y-4.5-row, small, layout.Right, "keel butts here") // not read on into the words behind the station line
	d.Write(s.FootX, b.Min.Y-4.5-2*row, small, layout.Left, "dash-dot: keel's screws")
	g := label.On(s.Outline)
	g.Drawing(&d)
	stemWords(&d, g, r, end, units)
	stemTitle(&d, g, r, s, title+", "+count, units)
	return d
}

// stemWords letters the holes and the crosses of a stem, each beside its own and clear of
// all others.
func stemWords(d *layout.Drawing, g *label.Room, r *bend.Report, end int, units measure.System) {
	s, l, lash := [2]frame.Stem{r.Frame.Stern, r.Frame.Bow}[end], &r.Joints.Landings[end], &r.Joints.Ends[end]
	around := func(at geometry.Point, reach float64, words string, sides ...layout.Align) layout.Text {
		var all []layout.Text
		at = at.Sub(geometry.Point{Y: 1.2})
		for _, side := range sides {
			all = append(all, layout.Text{At: at.Add(geometry.Point{X: reach * (1 - float64(side))}), Height: small, Align: side, Words: lettering.Safe(words)})
		}
		for _, up := range []float64{reach + 1.2, -reach - small + 1.2} {
			all = append(all, layout.Text{At: at.Add(geometry.Point{Y: up}), Height: small, Align: layout.Middle, Words: lettering.Safe(words)})
		}
		return g.First(all...)
	}
	d.Texts = append(d.Texts, around(l.Holes[0].At, l.Drill/2+1, units.Drill(l.Drill), layout.Left, layout.Right),
		around(lash.At, lash.Drill/2+1, units.Drill(lash.Drill), layout.Left, layout.Right))
	for i, c := range s.Landings {
		d.Texts = append(d.Texts, around(c, 4, fmt.Sprintf("S%d", i+1), layout.Right, layout.Left))
		words := strings.TrimSpace(within(marks.Joined, units))
		tolerance := layout.Text{At: geometry.Point{X: c.X + 3, Y: besideCross(c.Y, s.Waterline)}, Height: small, Align: layout.Right, Words: lettering.Safe(words)}
		all := []layout.Text{tolerance}
		for _, by := range []geometry.Point{{Y: 10.7}, {X: 6}, {X: -6}, {X: 6, Y: 10.7}, {X: -6, Y: 10.7}, {X: 10, Y: 5.2}, {X: -8, Y: 5.2}} {
			t := tolerance
			t.At = geometry.Point{X: c.X + 3, Y: c.Y - 3 - 1.2 - small}.Add(by)
			all = append(all, t)
		}
		d.Texts = append(d.Texts, g.First(all...))
	}
}

// stemTitle letters a stem's name where its wood has room: near the middle, above the
// forefoot, along the wood where that can be; in more and shorter lines where it must, and
// beside the stem where nothing fits. Joints of the paper keep off it.
func stemTitle(d *layout.Drawing, g *label.Room, r *bend.Report, s frame.Stem, title string, units measure.System) {
	thick, boat := units.Fine(s.Thickness)+" thick", lettering.Wrap(r.Frame.Design.Title, small, 50)
	var lines []string
	var at label.Block
	for _, try := range [][]string{append([]string{title, thick + ", " + stemMade(r.Frame)}, boat...), append([]string{title, thick + ",", stemMade(r.Frame)}, boat...), {title, thick}} {
		lines = try
		wide := 0.0
		for i, words := range lines {
			lines[i] = lettering.Safe(words)
			wide = math.Max(wide, lettering.Width(lines[i], titleHeight(i)))
		}
		at = label.Block{Angle: s.Rise, Wide: wide, Low: -row*(float64(len(lines))-0.9) - 0.3*small, High: head}
		var found bool
		if at, found = g.Place(at, s.Middle.Add(geometry.Polar(wide/2, s.Rise))); found {
			break
		}
		at = label.Block{At: geometry.Point{X: s.Outline.Bounds().Min.X - wide - 6, Y: s.Waterline + 6*row}}
	}
	down, box := geometry.Polar(1, at.Angle-math.Pi/2), geometry.EmptyBox()
	for i, words := range lines {
		drop := 0.0
		if i > 0 {
			drop = row * (0.1 + float64(i))
		}
		d.WriteAt(at.At.Add(down.Scale(drop)), titleHeight(i), at.Angle, layout.Left, words)
		box = box.Union(d.Texts[len(d.Texts)-1].Bounds())
	}
	d.Keep, d.KeepUp = append(d.Keep, layout.Span{From: box.Min.X, To: box.Max.X}), append(d.KeepUp, layout.Span{From: box.Min.Y, To: box.Max.Y})
}

// titleHeight is the height of letters of a title's line.
func titleHeight(line int) float64 {
	if line == 0 {
		return head
	}
	return small
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
func stemHoles(d *layout.Drawing, r *bend.Report, end int) {
	l, g, f := &r.Joints.Landings[end], &r.Joints.Ends[end], &r.Joints.Feet[end]
	for _, h := range l.Holes {
		d.Line(layout.Cut, curve.Circle(h.At, l.Drill/2))
	}
	d.Line(layout.Cut, curve.Circle(g.At, g.Drill/2))
	for _, p := range f.At {
		d.Straight(layout.Center, p.X, p.Y-2, p.X, p.Y+f.Deep)
	}
}

// pegMark is how far into the plate a peg's line is drawn, mm.
const pegMark = 8.0

// pegMarks draws where pegs enter a breasthook's edges.
func pegMarks(h *joint.Hook) []curve.Path {
	var out []curve.Path
	for i, p := range h.At {
		line := curve.Polyline(p, p.Sub(h.Out[i].Scale(math.Min(h.Reach(), pegMark))))
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
	words := []string{
		"upper face, flush with the gunwales' tops; nose against the horn; sides lean",
		leaning(b.Bevel) + " at the top, to fit the gunwales",
		"gunwales off upright: " + leaning(r.Frame.Gunwale.Tilt) + "; the plate is not level, so its angle differs",
		"short lines: pegs " + units.Drill(pegs.Fastener.Diameter) + ", their places" + within(marks.Penciled, units) + " along the edge; bore them",
		units.Fine(pegs.Fastener.Length) + " deep from outside the gunwale, " + units.Fine(pegs.Down) + " under its upper edge and square to it",
	}
	if b.Painter > 0 {
		d.Line(layout.Cut, b.Hole())
		d.Straight(layout.Mark, -b.Painter, -frame.PainterHole/2-2, -b.Painter, frame.PainterHole/2+2)
		words = append(words, "hole on the middle line: the painter's, "+units.Drill(frame.PainterHole))
	}
	x := box.Min.X + float64(f.Design.Breasthook.Hollow) + 4
	hookGrain(&d, geometry.Point{X: x, Y: 13.5})
	d.Write(x, 7, head, layout.Left, title)
	d.Write(x, 2, small, layout.Left, count+", "+units.Fine(b.Thickness)+" thick")
	// The rest stands under the plate, where nothing is bored.
	for i, w := range words {
		d.Write(box.Min.X, box.Min.Y-5-row*float64(i), small, layout.Left, w)
	}
	return d
}

// hookGrain draws an arrow along a breasthook, from a place inward.
func hookGrain(d *layout.Drawing, at geometry.Point) {
	const long = 28.0
	to := at.Add(geometry.Point{X: long})
	d.Line(layout.Guide, curve.Polyline(at, to))
	for _, turn := range []float64{math.Pi * 0.9, -math.Pi * 0.9} {
		d.Line(layout.Tick, curve.Polyline(to, to.Add(geometry.Polar(4, turn))))
		d.Line(layout.Tick, curve.Polyline(at, at.Sub(geometry.Polar(4, turn))))
	}
	d.Write(at.X+long/2, at.Y+1.2, small, layout.Middle, "grain")
}
