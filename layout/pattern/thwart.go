package pattern

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// Thwart draws half of the cross piece with the given index, from the middle
// line of the boat (x = 0) out to one end; y runs forward. The other half is
// its mirror: turn the pattern over on the middle line.
func Thwart(f *frame.Frame, i int, units measure.System) layout.Drawing {
	t := f.Thwarts[i]
	d := layout.Drawing{
		Name: fmt.Sprintf("thwart-%d", i+1), Title: t.Name, Family: crossPieces(f),
		Make: fmt.Sprintf("%s thick, under the gunwales; turn over on the line at 0", units.Fine(t.Thickness)),
	}
	for _, p := range rightHalf(t.Outline) {
		d.Line(layout.Cut, p)
	}
	for _, h := range t.Holes {
		if h.Bounds().Min.X > 0 {
			d.Line(layout.Mark, h)
		}
	}
	b := t.Outline.Bounds()
	d.Straight(layout.Center, 0, b.Min.Y-3, 0, b.Max.Y+3)
	d.Straight(layout.Center, 0, 0, b.Max.X+4, 0)
	high, lines := head, lettering.Wrap(t.Name, head, b.Max.X-60)
	if len(lines) > 1 {
		high, lines = small, lettering.Wrap(t.Name, small, b.Max.X-60)
	}
	for i, words := range lines {
		d.Write(8, 2+row*float64(len(lines)-1-i), high, layout.Left, words)
	}
	d.Write(2, b.Min.Y+2, small, layout.Left, "0")
	d.Write(8, -2-small, small, layout.Left, "middle at "+units.Fine(t.At)+", "+units.Fine(t.Between)+" clear between gunwales")
	written := len(d.Texts)
	d.Write(b.Max.X-20, b.Max.Y-4.5, small, layout.Right, "this edge forward in the boat")
	// The ends are cut back below, because the skin falls inward there.
	d.Straight(layout.Guide, t.ForeEnd-t.Under, b.Max.Y, t.AftEnd-t.Under, b.Min.Y)
	d.Write(b.Max.X-20, b.Min.Y+2+row, small, layout.Right, "lower face: cut the end back to the dashed line")
	d.Write(b.Max.X-18, 1.5, small, layout.Right, "holes "+units.Drill(t.Hole)+": bore in the boat, through the gunwale's")
	d.Write(b.Max.X-20, b.Min.Y+2, small, layout.Right, fmt.Sprintf("ease the top to the gunwales' lean, %s", leaning(f.Gunwale.Tilt)))
	end := layout.Span{From: b.Max.X - 55, To: b.Max.X + 10}
	for _, t := range d.Texts[written:] {
		end.From = math.Min(end.From, t.Bounds().Min.X-3)
	}
	d.Keep = append(d.Keep, layout.Span{From: -10, To: 110}, end)
	return d
}

// crossPieces is what the first sheet lists all cross pieces under, with the kinds that there
// are: sheets call each by its own name.
func crossPieces(f *frame.Frame) string {
	var kinds []string
	for _, t := range f.Design.Thwarts {
		if kind := t.Kind.String() + "s"; !slices.Contains(kinds, kind) {
			kinds = append(kinds, kind)
		}
	}
	slices.Sort(kinds)
	return "Cross pieces (" + strings.Join(kinds, ", ") + ")"
}

// rightHalf keeps what lies right of the middle line, cutting the pieces that
// cross it. The outline crosses it on smooth pieces that are symmetric about
// it, so half of the parameter is half of the piece.
func rightHalf(outline curve.Path) []curve.Path {
	var out []curve.Path
	for _, s := range outline {
		a, b := s.Start(), s.End()
		switch {
		case a.X >= -1e-9 && b.X >= -1e-9:
			out = append(out, curve.Path{s})
		case a.X < 0 && b.X > 0:
			out = append(out, curve.Path{curve.Stretch(s, 0.5, 1)})
		case a.X > 0 && b.X < 0:
			out = append(out, curve.Path{curve.Stretch(s, 0, 0.5)})
		}
	}
	return out
}
