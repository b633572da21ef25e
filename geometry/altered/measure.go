package altered

import (
	"math"
	"slices"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// Measure is something of a boat that can be changed alone.
type Measure int

// The measures, in the order in which people ask for them.
const (
	Length Measure = iota
	Beam
	Depth
	Rocker
	SeatHeight // of the first seat; others rise as much
	SeatPlace  // of the first seat, with all others
	RibThickness
	ThwartPlace // of the yoke, or of the first thwart where there is none
	Flare       // of the section nearest midship; the ends keep theirs
	Fullness    // of the first spreader; others are as much wider
)

// All lists the measures.
func All() []Measure {
	return []Measure{Length, Beam, Depth, Rocker, SeatHeight, SeatPlace, RibThickness, ThwartPlace, Flare, Fullness}
}

// String is the measure's name.
func (m Measure) String() string {
	return [...]string{"length", "beam", "depth", "rocker", "seat height", "seat place", "rib thickness", "thwart place", "flare", "fullness"}[m]
}

// Unit is what the measure's values are in: mm, deg, or % of the beam.
func (m Measure) Unit() string {
	switch m {
	case Flare:
		return "deg"
	case Fullness:
		return "%"
	}
	return "mm"
}

// Says is what the measure is and what more of it does, in a sentence.
func (m Measure) Says() string {
	return [...]string{
		"Overall, from stem head to stem head. A longer boat carries more and runs straighter; it takes longer sticks.",
		"Between the gunwales amidships. A wider boat stands stiffer; beyond your arms' reach it is hard to paddle.",
		"From keel to gunwales amidships. A deeper boat stays drier and catches more wind.",
		"How far the keel rises towards the bow. More rocker turns easily; less runs straight.",
		"The top of the seat over the floor. A lower seat is steadier; a higher one is easier on the knees.",
		"The middle of the seat from midship, forward positive. It trims the boat: sit so that the ends float level, or the bow a little high.",
		"The way ribs bend. Thinner ribs bend round tighter bilges; thicker ones hold the gunwales better.",
		"The middle of what the boat is carried by, from midship, forward positive. Under it the empty boat should balance.",
		"How far the sides lean out at the gunwales amidships; under 0 deg they lean in. More sheds waves and stiffens the boat as it heels; less is easier to reach over.",
		"How wide the gunwales are at the quarters, of the beam amidships. Fuller ends carry more and ride over waves; finer ends run easier.",
	}[m]
}

// Band is how far a measure may be changed in a design, in its unit, and why no farther.
type Band struct {
	Now, Least, Most float64
	Step             float64 // that it is set by
	Why              string
}

// How far length, beam and depth may be stretched, as shares of what they are: beyond it
// the boat wants its other measures drawn anew. Our own choice.
const (
	lengthShare = 0.15
	beamShare   = 0.14
	depthShare  = 0.22
	mostRocker  = 90.0 // mm; more leaves no straight keel in boats of these lengths
	seatWay     = 250.0
	thwartWay   = 200.0
	thinnest    = 4.0
	thickest    = 14.0
)

// Band returns how far the measure may be changed; false where the design has no such
// thing.
func (m Measure) Band(d *design.Design) (Band, bool) {
	const stretched = "beyond that a boat wants to be sized anew, not stretched"
	about := func(now measure.Length, share, least, most float64) (Band, bool) {
		v := float64(now)
		return Band{v, math.Max(least, math.Ceil(v*(1-share))), math.Min(most, math.Floor(v*(1+share))), 1, stretched}, true
	}
	switch m {
	case Length:
		return about(d.Hull.Length, lengthShare, 2000, 9000)
	case Beam:
		return about(d.Hull.Beam, beamShare, 400, 1500)
	case Depth:
		return about(d.Hull.Depth, depthShare, 150, 700)
	case Rocker:
		now := float64(d.Hull.RockerBow)
		return Band{now, 0, math.Max(mostRocker, now), 1, "more than that leaves no straight keel to steer by"}, true
	case RibThickness:
		now := float64(d.Ribs.Thickness)
		most := math.Min(thickest, float64(d.Gunwale.Width)/2) // more leaves too little beside the mortises
		return Band{now, math.Min(now, thinnest), math.Max(now, most), 0.1, "thinner ribs are hard to keep fair, thicker ones hard to bend"}, true
	case Flare:
		return flares(d)
	case Fullness:
		return fills(d)
	case ThwartPlace:
		i := carrier(d)
		if i < 0 {
			return Band{}, false
		}
		now := float64(d.Thwarts[i].At)
		return Band{now, now - thwartWay, now + thwartWay, 1, "farther off one end would pull down"}, true
	}
	return m.ofSeats(d)
}

// carrier is the cross piece that the boat is carried by: the first yoke, or the first
// thwart where there is none; -1 where there is neither.
func carrier(d *design.Design) int {
	for _, kind := range []design.Kind{design.Yoke, design.PlainThwart} {
		if i := slices.IndexFunc(d.Thwarts, func(t design.Thwart) bool { return t.Kind == kind }); i >= 0 {
			return i
		}
	}
	return -1
}

func (m Measure) ofSeats(d *design.Design) (Band, bool) {
	if len(d.Seats) == 0 {
		return Band{}, false
	}
	s := d.Seats[0]
	if m == SeatPlace {
		now := float64(s.At)
		return Band{now, now - seatWay, now + seatWay, 1, "farther off the boat would lie on its end"}, true
	}
	kind, now := bandOf(s.Kind), float64(s.Height)
	kind.Step, kind.Now, kind.Least, kind.Most = 1, now, math.Min(kind.Least, now), math.Max(kind.Most, now)
	return kind, true
}

// bandOf is how high a seat of a kind may be.
func bandOf(k design.SeatKind) Band {
	switch k {
	case design.Hung:
		return Band{Least: 150, Most: 260, Why: "lower leaves no room for feet under it, higher rolls the boat"}
	case design.Saddle:
		return Band{Least: 70, Most: 230, Why: "lower is a pad, higher rolls the boat"}
	}
	return Band{Least: 10, Most: 70, Why: "foam that is thicker rolls under you"}
}

// put gives a design the measure's value, in its unit, which was now.
func (m Measure) put(d *design.Design, now, to float64) {
	h := &d.Hull
	switch m {
	case Length:
		lengthen(d, to/now)
		h.Length = measure.Length(to)
	case Beam:
		widen(d, to/now)
		h.Beam = measure.Length(to)
	case Depth:
		deepen(d, to/now)
		h.Depth = measure.Length(to)
	case Rocker:
		if now > 0 {
			scale(to/now, &h.RockerStern)
		} else {
			h.RockerStern += measure.Length(to)
		}
		h.RockerBow = measure.Length(to)
		if h.Symmetric {
			h.RockerStern = h.RockerBow
		}
	case SeatHeight:
		for i := range d.Seats {
			d.Seats[i].Height += measure.Length(to - now)
		}
	case SeatPlace:
		for i := range d.Seats {
			d.Seats[i].At += measure.Length(to - now)
		}
	case RibThickness:
		d.Ribs.Thickness = measure.Length(to)
	case ThwartPlace:
		d.Thwarts[carrier(d)].At = measure.Length(to)
	case Flare:
		h.Sections[middle(d)].Flare = measure.Angle(to * degree)
	case Fullness:
		k := to / 100 * float64(h.Beam) / float64(h.Spreaders[0].Beam)
		for i := range h.Spreaders {
			scale(k, &h.Spreaders[i].Beam)
		}
	}
}
