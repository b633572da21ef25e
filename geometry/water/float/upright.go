package float

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/measure"
)

// Hydrostatics are the figures of a boat at rest, upright but for its trim. mm,
// mm2, mm3, kg, radians; places are stations from midship and heights above the
// baseline.
type Hydrostatics struct {
	Displacement float64 // kg
	Volume       float64 // mm3
	Draft        float64 // of the deepest point under the water
	Trim         float64 // positive with the bow up
	Freeboard    Freeboard
	Wetted       float64 // mm2
	Waterplane   float64 // mm2
	LWL, BWL     float64 // length and greatest breadth of the waterline
	Aft, Fore    float64 // stations of the waterline's ends
	CB, CP       float64 // block and prismatic coefficients
	CM, CWP      float64 // of the fullest section and of the waterplane
	LCB, LCF     float64 // stations of buoyancy and of the waterplane's center
	KB, BM, BML  float64
	KM           float64
	KG, GM, GML  float64 // of the load given
	MomentToTrim float64 // N mm for a trim of 1 mm over the waterline's length
	Plane        Plane
}

// TrimRise returns the trim as mm over the waterline's length, positive with the bow up.
func (o Hydrostatics) TrimRise() float64 { return math.Tan(o.Trim) * o.LWL }

// Upright returns the figures of the hull on a plane without heel, with the load
// that rests there.
func (h *Hull) Upright(p Plane, l Load, density float64) Hydrostatics {
	o := h.Resting(p, l, density)
	o.Wetted = h.Wetted(p)
	return o
}

// Resting is Upright without the wetted skin, which takes as long as all else.
func (h *Hull) Resting(p Plane, l Load, density float64) Hydrostatics {
	m := h.Immerse(p)
	b := m.Center()
	o := Hydrostatics{
		Displacement: m.Volume * density * 1e-9, Volume: m.Volume, Trim: p.Trim, Plane: p,
		Freeboard: h.Freeboard(p), Waterplane: m.Area,
		LCB: b.X, LCF: m.alongFirst / m.Area, KB: b.Z, KG: l.At.Z,
		BM: m.AcrossInertia() / m.Volume, BML: (m.alongSecond - m.alongFirst*m.alongFirst/m.Area) / m.Volume, GM: GM(p, m, l),
	}
	o.KM = o.KB + o.BM
	o.GML = o.BML + o.GM - o.BM
	o.Aft, o.Fore = h.waterEnds(p)
	o.LWL = (o.Fore - o.Aft) / math.Cos(p.Trim)
	fullest := 0.0
	for _, s := range h.sections {
		z := p.Water(s.x)
		fullest = math.Max(fullest, s.clip(0, 1, z).area)
		o.BWL = math.Max(o.BWL, 2*s.breadth(z))
		o.Draft = math.Max(o.Draft, (z-s.low)*math.Cos(p.Trim))
	}
	o.CB = m.Volume / (o.LWL * o.BWL * o.Draft)
	o.CM = fullest / (o.BWL * o.Draft)
	o.CP = m.Volume / (o.LWL * fullest)
	o.CWP = m.Area / (o.LWL * o.BWL)
	o.MomentToTrim = o.Displacement * measure.Gravity * o.GML / o.LWL
	return o
}

// LWL returns the length of the waterline on a plane without heel, mm.
func (h *Hull) LWL(p Plane) float64 {
	aft, fore := h.waterEnds(p)
	return (fore - aft) / math.Cos(p.Trim)
}

// breadth returns the greatest half-breadth of the outline at the height z; zero
// off the section. A line that touches its lowest place is on it, whatever the last bit
// says: a flat keel has its whole breadth there and none a hair below.
func (s *section) breadth(z float64) float64 {
	const rounding = 1e-6 // mm
	if math.Abs(z-s.low) < rounding {
		z = s.low
	}
	wide := 0.0
	for k := 1; k < len(s.half); k++ {
		a, b := s.half[k-1], s.half[k]
		switch {
		case a.Y == z:
			wide = math.Max(wide, a.X)
		case (a.Y < z) != (b.Y < z):
			wide = math.Max(wide, a.Lerp(b, (z-a.Y)/(b.Y-a.Y)).X)
		}
	}
	if last := s.sheer(); last.Y == z {
		wide = math.Max(wide, last.X)
	}
	return wide
}

// HalfBreadth returns the half-breadth of the hull at a station and a height, mm,
// between stations in a straight line; zero outside the hull.
func (h *Hull) HalfBreadth(x, z float64) float64 {
	for i := 1; i < len(h.sections); i++ {
		a, b := h.sections[i-1], h.sections[i]
		if x >= a.x && x <= b.x {
			t := (x - a.x) / (b.x - a.x)
			return a.breadth(z)*(1-t) + b.breadth(z)*t
		}
	}
	return 0
}

// waterEnds returns the stations between which the keel is under water.
func (h *Hull) waterEnds(p Plane) (aft, fore float64) {
	first, last := -1, -1
	for i, s := range h.sections {
		if s.keel().Y < p.Water(s.x) {
			if last = i; first < 0 {
				first = i
			}
		}
	}
	if first < 0 {
		return 0, 0
	}
	aft, fore = h.sections[first].x, h.sections[last].x
	if first > 0 {
		aft = h.keelCrossing(first-1, first, p)
	}
	if last < len(h.sections)-1 {
		fore = h.keelCrossing(last, last+1, p)
	}
	return aft, fore
}

// Freeboard is the least height of the sheer above the water.
type Freeboard struct {
	Least float64         // mm, negative when the sheer is under
	At    geometry.Point3 // the place of the sheer, mm
}

// Freeboard returns the lowest point of the sheer over a plane, on either side.
func (h *Hull) Freeboard(p Plane) Freeboard {
	out := Freeboard{Least: math.Inf(1)}
	up := p.Up()
	for _, s := range h.sections {
		q := s.sheer()
		for _, side := range [2]float64{1, -1} {
			at := geometry.Point3{X: s.x, Y: side * q.X, Z: q.Y}
			if v := up.Dot(at) - p.Rise; v < out.Least {
				out = Freeboard{v, at}
			}
		}
	}
	return out
}
