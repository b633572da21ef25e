package altered

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
)

const degree = math.Pi / 180

// middle is the section nearest midship.
func middle(d *design.Design) int {
	best := 0
	for i, s := range d.Hull.Sections {
		if math.Abs(float64(s.At)) < math.Abs(float64(d.Hull.Sections[best].At)) {
			best = i
		}
	}
	return best
}

// flares is the band of the flare amidships: rib heads lean with the sides, and their
// mortises with them.
func flares(d *design.Design) (Band, bool) {
	if len(d.Hull.Sections) == 0 {
		return Band{}, false
	}
	now := tenth(float64(d.Hull.Sections[middle(d)].Flare) / degree)
	tilt, most := float64(d.Gunwale.Tilt)/degree, frame.MostLean(d)/degree
	return Band{now, math.Min(now, math.Ceil((tilt-most)*10)/10), math.Max(now, math.Floor((tilt+most)*10)/10), 0.1,
		"farther from the lean of the gunwales, the ribs' mortises would leave too little wood beside them"}, true
}

// finest is the least fullness, % of the beam: our own choice, a little under that of the
// families of boats.
const finest = 68.0

// fills is the band of the fullness.
func fills(d *design.Design) (Band, bool) {
	all := d.Hull.Spreaders
	if len(all) == 0 {
		return Band{}, false
	}
	now, most := 100*float64(all[0].Beam/d.Hull.Beam), math.Inf(1)
	for _, s := range all {
		wide := float64(s.Beam / d.Hull.Beam)
		most = math.Min(most, now*flat(d, s)/wide)
	}
	now = tenth(now)
	return Band{now, math.Min(now, finest), math.Max(now, math.Floor(most*10)/10), 0.1,
		"fuller, the gunwales would run hollow amidships; finer, there is no room for seats and feet at the quarters"}, true
}

// flat is the width at a spreader, as a share of the beam, at which the gunwales no longer
// bend at all amidships; wider they are hollow there.
//
// How: a gunwale is a beam that rests on midship, the spreader and the stem, alike on
// both sides of midship. The equation of three moments, with none amidships and none at
// the stem, gives the drop from midship to the spreader, D, against that from there to the
// stem, F: D (3a + 2b) / a2 = F / b, where a and b are the two lengths.
// Accuracy: for small slopes, and as if no other spreader stood there.
// Source: Clapeyron's three moments, any text on beams.
func flat(d *design.Design, s design.Spreader) float64 {
	end := d.Bow
	if s.At < 0 {
		end = d.After()
	}
	a := math.Abs(float64(s.At))
	b, half, tip := float64(d.Hull.Length)/2-float64(end.Horn)-a, float64(d.Hull.Beam)/2, float64(end.Siding)/2
	if a == 0 || b <= 0 {
		return 1
	}
	drop := (half - tip) / (1 + b*(3*a+2*b)/(a*a))
	return (half - drop) / half
}

func tenth(v float64) float64 { return math.Round(v*10) / 10 }
