package pattern

import (
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// breasthooks returns the patterns: one for both ends when they are equal.
func breasthooks(f *frame.Frame, units measure.System) []layout.Drawing {
	if f.Design.EndsAlike() {
		return []layout.Drawing{Breasthook(f, f.BowHook, "breasthooks", "Breasthooks", "make 2", units)}
	}
	return []layout.Drawing{
		Breasthook(f, f.BowHook, "breasthook-bow", "Bow breasthook", "make 1", units),
		Breasthook(f, f.SternHook, "breasthook-stern", "Stern breasthook", "make 1", units),
	}
}

// Breasthook draws the plate's upper face: x along the boat with the nose at 0,
// y across it.
func Breasthook(f *frame.Frame, b frame.Breasthook, key, title, count string, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: key, Title: title, Make: count}
	d.Line(layout.Cut, b.Outline)
	box := b.Outline.Bounds()
	d.Straight(layout.Center, box.Min.X-4, 0, 6, 0)
	x := box.Min.X + float64(f.Design.Breasthook.Hollow) + 4
	d.Write(x, 7, head, layout.Left, title)
	d.Write(x, 2, small, layout.Left, count+", "+units.Fine(b.Thickness)+" thick")
	d.Write(x, -5.5, small, layout.Left, "upper face, flush with the gunwales' tops;")
	d.Write(x, -5.5-row, small, layout.Left, "sides lean with the gunwales, "+leaning(b.Bevel)+" at the top; grain this way")
	d.Write(x, -5.5-2*row, small, layout.Left, "nose against the horn")
	return d
}
