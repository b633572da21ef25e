package lines

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/layout"
)

// The measures of a person as drawn, mm: shares of no one's body, only to show where and
// how high people sit. From memory.
const (
	headRadius = 105.0
	neck       = 40.0
	shoulders  = 200.0 // half, across
	chest      = 115.0 // half, from back to front
	knees      = 430.0 // before the hips
	apart      = 110.0 // of a leg from the middle
	least      = 800.0 // a sitting height from which on all is drawn so large; a child smaller
)

// people are outlines that face the eye, with their legs.
func (b Boat) people(e Eye) (out []bone) {
	d := b.Frame.Design
	for _, p := range b.People {
		x := d.WeightAt(p)
		if p.Role == design.Dog {
			out = append(out, bone{person, 0, layout.Guide, lying(p.Mass, geometry.Point3{X: x, Z: b.Frame.Hull.FloorZ(x)})})
			continue
		}
		floor := b.Frame.Hull.FloorZ(x)
		hips := floor + weight.Hips(d, p)
		out = append(out, trunk(geometry.Point3{X: x, Z: hips}, weight.Sitting(p), e)...)
		for _, side := range []float64{1, -1} {
			out = append(out, bone{person, side, layout.Guide, leg(p.Posture, geometry.Point3{X: x, Y: apart * side, Z: hips}, floor)})
		}
	}
	return out
}

// lying is a dog seen from the side, curled up on the floor.
func lying(mass float64, at geometry.Point3) []geometry.Point3 {
	long, high := body.DogLong(mass)/2, body.DogLying*body.Shoulder(mass)
	return even(0, 2*math.Pi, 24, func(a float64) geometry.Point3 {
		return at.Add(geometry.Point3{X: long * math.Cos(a), Z: high * (1 + math.Sin(a))})
	})
}

// trunk is a body from the hips up and its head.
func trunk(hips geometry.Point3, sitting float64, e Eye) []bone {
	sin, cos := math.Sincos(e.Turn)
	size := math.Min(1, sitting/least)
	wide := size * math.Hypot(shoulders*cos, chest*sin) // as broad as it is seen from there
	radius := size * headRadius
	at := func(out, up float64) geometry.Point3 {
		return hips.Add(geometry.Point3{X: -sin * out, Y: cos * out, Z: up})
	}
	top := sitting - 2*radius - size*neck
	half := []geometry.Point{{X: 0.75, Y: 0}, {X: 0.72, Y: 0.3}, {X: 0.85, Y: 0.6}, {X: 1, Y: 0.85}, {X: 0.95, Y: 0.96}, {X: 0.7, Y: 1}, {X: 0.3, Y: 1.03}}
	var outline []geometry.Point3
	for _, q := range half {
		outline = append(outline, at(q.X*wide, q.Y*top))
	}
	for i := len(half) - 1; i >= 0; i-- {
		outline = append(outline, at(-half[i].X*wide, half[i].Y*top))
	}
	head := even(0, 2*math.Pi, 20, func(a float64) geometry.Point3 {
		return at(radius*0.85*math.Cos(a), sitting-radius+radius*math.Sin(a))
	})
	return []bone{{person, 0, layout.Guide, append(outline, outline[0])}, {person, 0, layout.Guide, head}}
}

// leg runs from the hips to the foot.
func leg(how design.Posture, hips geometry.Point3, floor float64) []geometry.Point3 {
	const foot = 60.0 // the middle of a limb over the floor that it lies on
	at := func(forward, z float64) geometry.Point3 {
		return geometry.Point3{X: hips.X + forward, Y: hips.Y, Z: z}
	}
	start := at(0, hips.Z+foot)
	switch how {
	case design.Kneeling:
		return []geometry.Point3{start, at(knees*0.8, floor+foot), at(-80, floor+foot)}
	case design.Bench:
		return []geometry.Point3{start, at(knees, hips.Z+foot), at(knees, floor+foot)}
	}
	return []geometry.Point3{start, at(knees, floor+170), at(2*knees, floor+foot)}
}
