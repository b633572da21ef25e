// Package lines draws a boat to be looked at on a screen while it is changed: a
// three-quarter view that turns, the sheer plan, the plan and the sections, with the
// people on their seats and the water as it lies.
package lines

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/solid"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water/float"
	"ribwright/layout"
	"ribwright/layout/sight"
)

// Scale is mm of drawing for each mm of boat.
const Scale = 0.05

// Boat is what is drawn.
type Boat struct {
	aboard.Boat
	Water *float.Plane // as it lies at rest; nil for none
	Sail  *sail.Fit    // what the three-quarter view shows of a sail; nil for none
}

// Eye is where the three-quarter view is seen from.
type Eye struct {
	Turn   float64 // radians, from ahead towards port
	Rise   float64 // radians, over level
	Hidden bool    // leave out what is hidden, which takes ten times as long
}

// Draw returns the drawings "quarter", "sheer", "plan" and "sections". The water is
// drawn with the pen Center, people with Guide.
func (b Boat) Draw(e Eye) []layout.Drawing {
	bones := b.bones(e)
	return []layout.Drawing{b.quarter(e, bones), sheerPlan(bones), planView(bones), b.sections()}
}

// direction is from the boat to the eye.
func (e Eye) direction() geometry.Point3 {
	sinT, cosT := math.Sincos(e.Turn)
	sinR, cosR := math.Sincos(e.Rise)
	return geometry.Point3{X: cosT * cosR, Y: sinT * cosR, Z: sinR}
}

func (b Boat) quarter(e Eye, bones []bone) layout.Drawing {
	d := layout.Drawing{Name: "quarter", Title: "The boat from over its side"}
	v := sight.NewView(solid.Eye{At: e.direction(), Parallel: true}, Scale)
	if !e.Hidden {
		var thin thinner
		d.Strokes = make([]layout.Stroke, 0, len(bones))
		for _, l := range bones {
			pts := thin.room(len(l.pts))
			for i, p := range l.pts {
				pts[i], _ = v.Place(p) // seen from so far off that all lies ahead
			}
			d.Line(l.pen, thin.line())
		}
		return d
	}
	body := solid.Of(b.Frame, solid.AsDrawn{}, nil)
	body.Cover(b.Cloth)
	if b.Sail != nil {
		body.Faces = append(body.Faces, b.cloths()...)
	}
	for _, l := range bones {
		if l.kind != wood {
			body.Lines = append(body.Lines, solid.Line{Part: solid.Tool, Number: int(l.pen), Points: l.pts})
		}
	}
	sight.Picture{View: v, Window: geometry.EmptyBox(), Fold: layout.Mark, Pen: penOf}.Draw(&d, body, geometry.Point{})
	return d
}

// penOf draws what bounds the boat bolder than what is in it.
func penOf(l solid.Line) (layout.Pen, bool) {
	switch l.Part {
	case solid.Gunwales, solid.Stems:
		return layout.Mark, true
	case solid.Tool:
		return layout.Pen(l.Number), true
	}
	return layout.Tick, true
}

// flat draws bones without their depth.
func flat(name, title string, bones []bone, shown func(bone) bool, at func(geometry.Point3) geometry.Point) layout.Drawing {
	d := layout.Drawing{Name: name, Title: title, Strokes: make([]layout.Stroke, 0, len(bones))}
	var thin thinner
	for _, l := range bones {
		if !shown(l) {
			continue
		}
		pts := thin.room(len(l.pts))
		for i, p := range l.pts {
			pts[i] = at(p).Scale(Scale)
		}
		d.Line(l.pen, thin.line())
	}
	return d
}

func sheerPlan(bones []bone) layout.Drawing {
	return flat("sheer", "From the side", bones, func(l bone) bool { return l.side >= 0 && l.kind != rig },
		func(p geometry.Point3) geometry.Point { return geometry.Pt(p.X, p.Z) })
}

func planView(bones []bone) layout.Drawing {
	return flat("plan", "From above", bones, func(l bone) bool { return l.kind == wood || l.kind == seat },
		func(p geometry.Point3) geometry.Point { return geometry.Pt(p.X, p.Y) })
}

// sections are those of the cloth at the ribs, the fore body on the right and the after
// body on the left, with the water amidships.
func (b Boat) sections() layout.Drawing {
	d := layout.Drawing{Name: "sections", Title: "From the ends"}
	widest, ribs := 0.0, b.Frame.Ribs
	var thin thinner
	for i, r := range ribs {
		pen := layout.Tick
		if i == len(ribs)/2 {
			pen = layout.Cut
		}
		outline := b.Cloth.At(r.Station)
		for _, side := range []float64{1, -1} {
			if r.Station*side < 0 && i != len(ribs)/2 {
				continue
			}
			pts := thin.room(len(outline))
			for k, p := range outline {
				widest = math.Max(widest, p.X)
				pts[k] = geometry.Pt(p.X*side, p.Y).Scale(Scale)
			}
			d.Line(pen, thin.line())
		}
	}
	if b.Water != nil {
		z := b.Water.Rise * Scale
		d.Straight(layout.Center, -widest*1.15*Scale, z, widest*1.15*Scale, z)
	}
	return d
}
