package rowing

import (
	"cmp"
	"math"

	"ribwright/geometry/body"
	"ribwright/geometry/design"
)

// Body is a seated rower, mm and kg. Heights are above the seat unless they say otherwise.
type Body struct {
	Stature, Mass float64
	Sitting       float64 // sitting height
	ButtockKnee   float64 // back of the buttocks to the front of the knee, knee bent
	Popliteal     float64 // floor to the hollow of the knee
	Knee          float64 // floor to the top of the knee
	Thigh         float64 // seat to the top of the thigh
	Hip           float64 // breadth, sitting
	Belly         float64 // back to the front of the belly
	Shoulder      float64 // seat to the top of the shoulder
}

// median has the medians of ANSUR II (US Army 2012, 1986 women and 4082 men).
type median struct{ stature, mass, belly, shoulder float64 }

var (
	medianWoman = median{1626, 66.8, 227, 1332}
	medianMan   = median{1755, 84.6, 251, 1439}
)

// BodyOf returns the proportions that go with a stature and a mass; where one is 0
// it is the median's.
//
// Source: the estimates of package body, which are off by 8 to 22 mm (one standard
// deviation) from person to person. Belly and shoulder go with the median's.
func BodyOf(kind design.Body, stature, mass float64) Body {
	m, sex := medianWoman, body.Woman
	if kind == design.Man {
		m, sex = medianMan, body.Man
	}
	stature, mass = cmp.Or(stature, m.stature), cmp.Or(mass, m.mass)
	p := body.Person{Sex: sex, Weight: mass, Stature: stature}
	of := map[string]float64{}
	for _, e := range p.Estimates() {
		of[e.Name] = e.Value
	}
	return Body{
		Stature: stature, Mass: mass,
		Sitting: of["sitting_height"], ButtockKnee: of["buttock_knee"], Popliteal: of["popliteal_height"],
		Knee: of["knee_height"], Thigh: of["thigh"], Hip: of["hip_breadth"],
		Belly:    m.belly * math.Sqrt(mass/m.mass*m.stature/stature),
		Shoulder: of["sitting_height"] - stature*(1-m.shoulder/m.stature),
	}
}

// Legs is how the legs lie from the seat to the footrest, mm.
type Legs struct {
	Heel    float64 // from the back of the buttocks to the heels, level
	KneeTop float64 // over the seat
}

// The legs: the knee nearly straight, and where the hip joint sits in the body.
// From memory, estimates.
const (
	kneeAngle = 150 * math.Pi / 180
	hipAhead  = 100.0 // mm ahead of the back of the buttocks
)

// Stretched lays the legs to heels that stand below the seat by mm: thigh and shank
// as two links from the hip joint, in the middle of the thigh, to the heels.
func (b Body) Stretched(below float64) Legs {
	kneeHalf := (b.Knee - b.Popliteal) / 2
	thigh := b.ButtockKnee - hipAhead - kneeHalf
	shank := b.Popliteal + kneeHalf
	reach := math.Sqrt(thigh*thigh + shank*shank - 2*thigh*shank*math.Cos(kneeAngle))
	hip := b.Thigh / 2
	down := hip + below
	ahead := math.Sqrt(math.Max(0, reach*reach-down*down))
	atHip := math.Acos((thigh*thigh + reach*reach - shank*shank) / (2 * thigh * reach))
	up := atHip - math.Atan2(down, ahead)
	return Legs{Heel: hipAhead + ahead, KneeTop: hip + thigh*math.Sin(up) + kneeHalf}
}
