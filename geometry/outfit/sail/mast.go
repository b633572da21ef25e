package sail

import (
	"math"

	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// Mast is what holds the sail up.
type Mast struct {
	At       float64 // station, mm
	StepZ    float64 // height of its foot over the baseline, mm
	PartnerZ float64 // of the partner, mm
	Long     float64 // mm
	Diameter float64 // at the partner, mm
	Force    float64 // of the sail at the most that the boat stands, with a gust, N
	Partner  float64 // N, on the partner
	Step     float64 // N, sideways on the step
	Moment   float64 // N m, at the partner
	Stress   float64 // N/mm2
	Working  float64 // N/mm2
	Count    int     // 1, or 2 spars of a vee
}

// bury works out partner and step for a force at a height: moments about the step,
// then about the partner.
func (m *Mast) bury(force, height float64) {
	m.Force = force
	m.Partner = force * (height - m.StepZ) / (m.PartnerZ - m.StepZ)
	m.Step = m.Partner - force
	m.Moment = force * (height - m.PartnerZ) / 1000
}

// leastSpar is the thinnest mast or spar, mm. Common practice, no source.
const leastSpar = 28.0

// size finds the mast's diameter in whole mm.
func (m *Mast) size(wood timber.Species) {
	m.Working = beam.Working(wood)
	m.Diameter = math.Max(leastSpar+7, math.Ceil(beam.RoundFor(m.Moment*1000/float64(m.Count), m.Working)))
	m.Stress = m.Moment * 1000 / float64(m.Count) / beam.Round(m.Diameter).Modulus
}

// euler is how many times its load a strut must bear before it bows. From memory.
const euler = 4.0

// sized gives a spar its diameter for a sail's force, N: a strut by bowing out, one
// along the sail by bending between its ends.
func (s Spar) sized(force float64, wood timber.Species, mast float64) Spar {
	load := force * s.Share
	switch {
	case s.Hinge:
		s.Diameter = mast
	case s.Pressed:
		for s.Diameter = leastSpar - 6; beam.Buckling(s.Length(), wood.MOE, beam.Round(s.Diameter)) < euler*load; s.Diameter++ {
		}
	default:
		s.Diameter = math.Max(leastSpar, math.Ceil(beam.RoundFor(beam.Even().Bending(load, s.Length()), beam.Working(wood))))
	}
	return s
}
