package pattern

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// ends returns the patterns of stems and breasthooks: one for both ends when they are equal.
func ends(f *frame.Frame, units measure.System) []layout.Drawing {
	if f.Design.EndsAlike() {
		return []layout.Drawing{Stem(f, f.Bow, "stems", "Stems", "make 2", units), Breasthook(f, f.BowHook, "breasthooks", "Breasthooks", "make 2", units)}
	}
	return []layout.Drawing{
		Stem(f, f.Bow, "stem-bow", "Bow stem", "make 1", units), Stem(f, f.Stern, "stem-stern", "Stern stem", "make 1", units),
		Breasthook(f, f.BowHook, "breasthook-bow", "Bow breasthook", "make 1", units),
		Breasthook(f, f.SternHook, "breasthook-stern", "Stern breasthook", "make 1", units),
	}
}

// Stem draws one stem from the side: x is the distance from midship, y the
// height above the baseline.
func Stem(f *frame.Frame, s frame.Stem, key, title, count string, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: key, Title: title, Make: count}
	d.Line(layout.Cut, s.Outline)
	b := s.Outline.Bounds()
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
	d.Write(x, s.Shelf[0].Y-1-row, small, layout.Right, "on this shelf"+within(marks.Joined, units))
	d.Write(s.FootX, b.Min.Y-4.5, small, layout.Left, "keel lies under the foot")
	d.Write(s.ToeX-1.5, b.Min.Y-4.5-row, small, layout.Right, "keel butts against this step")
	// The title runs up the middle of the wood above the forefoot.
	up := s.Rise
	at := s.Middle.Add(geometry.Polar(row*0.9, up+math.Pi/2))
	d.WriteAt(at, head, up, layout.Left, title+", "+count)
	d.WriteAt(at.Add(geometry.Polar(row*1.1, up-math.Pi/2)), small, up, layout.Left, units.Fine(s.Thickness)+" thick")
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
func Breasthook(f *frame.Frame, b frame.Breasthook, key, title, count string, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: key, Title: title, Make: count}
	d.Line(layout.Cut, b.Outline)
	box := b.Outline.Bounds()
	d.Straight(layout.Center, box.Min.X-4, 0, 6, 0)
	x := box.Min.X + float64(f.Design.Breasthook.Hollow) + 4
	d.Write(x, 7, head, layout.Left, title)
	d.Write(x, 2, small, layout.Left, count+", "+units.Fine(b.Thickness)+" thick")
	d.Write(x, -5.5, small, layout.Left, "upper face, flush with the gunwales' tops;")
	d.Write(x, -5.5-row, small, layout.Left, "sides lean "+leaning(b.Bevel)+" at the top, to fit the gunwales; grain this way")
	d.Write(x, -5.5-2*row, small, layout.Left, "nose against the horn")
	return d
}
