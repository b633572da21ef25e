package lines

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/solid"
	"ribwright/geometry/design"
	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
)

// rig is the sail with mast, spars and leeboard, sheeted in along the middle line; a vee
// stands across the boat.
func (b Boat) rig() (out []bone) {
	if b.Sail == nil {
		return nil
	}
	f := b.Sail
	line := func(pts ...geometry.Point3) { out = append(out, bone{rig, 0, layout.Mark, pts}) }
	for _, cloth := range b.cloths() {
		line(append(cloth, cloth[0])...)
	}
	if f.Sail.Rig == design.Vee {
		for _, side := range []float64{1, -1} {
			top := f.Tack + f.Plan.Corners[1].Y
			line(across(geometry.Point3{X: f.Mast.At, Y: f.Spread(f.Mast.StepZ), Z: f.Mast.StepZ}, side), across(geometry.Point3{X: f.Mast.At, Y: f.Spread(top), Z: top}, side))
		}
		return out
	}
	line(geometry.Point3{X: f.Mast.At, Z: f.Mast.StepZ}, geometry.Point3{X: f.Mast.At, Z: f.Mast.StepZ + f.Mast.Long})
	for _, s := range f.Plan.Spars {
		line(b.aloft(s.From), b.aloft(s.To))
	}
	return out
}

// aloft is where a place of the sail stands in the boat.
func (b Boat) aloft(p geometry.Point) geometry.Point3 {
	f := b.Sail
	if f.Sail.Rig == design.Vee {
		return geometry.Point3{X: f.Mast.At, Y: p.X, Z: f.Tack + p.Y}
	}
	return geometry.Point3{X: f.Mast.At + p.X, Z: f.Tack + p.Y}
}

// cloths are what of the rig hides what lies behind it: the sail, and the leeboard to port.
func (b Boat) cloths() []solid.Face {
	f := b.Sail
	var cloth solid.Face
	for _, p := range f.Plan.Corners {
		cloth = append(cloth, b.aloft(p))
	}
	out := []solid.Face{cloth}
	if f.Board.Area > 0 {
		x, y, low, half := f.BracketAt(), f.CheeksAt()-sail.CheekThick, f.Rest.Plane.Water(f.BracketAt())-f.Board.Deep, f.Board.Chord/2
		high := low + f.Board.Long
		out = append(out, solid.Face{{X: x - half, Y: y, Z: low}, {X: x + half, Y: y, Z: low}, {X: x + half, Y: y, Z: high}, {X: x - half, Y: y, Z: high}})
	}
	return out
}
