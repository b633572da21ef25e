// Package float sets a hull on the water: how deep it floats, how it trims and
// heels, and how hard it comes back. It knows nothing of frames or of files: a
// hull is a row of half sections, watertight up to the sheer.
//
// Every waterplane is a true plane in the boat's own axes, so nothing is lost
// to small angles. Sections are polygons and are clipped exactly; along the boat
// the areas are added up by a rule that is exact for cubics where the stations
// allow it. Units: mm, mm2, mm3; mass in kg; density in kg/m3; radians.
package float

import (
	"errors"
	"fmt"
	"slices"

	"ribwright/geometry"
)

// Station is one half section of a hull.
type Station struct {
	X float64 // mm from midship, forward positive

	// Half runs from the keel out to the sheer: X the half-breadth, not
	// negative, Y the height, mm. A first point off the middle line closes the
	// bottom level; a single point, or points all on the middle line, is an end
	// of the hull. The hull keeps it as it is, so leave it so.
	Half []geometry.Point

	// Knuckle says that the lines break here or the spacing changes, so that
	// the rule along the boat starts afresh.
	Knuckle bool
}

// Hull is a row of sections. Nothing in it changes after New, so it may be
// used from several goroutines at once.
type Hull struct {
	sections []*section
	deepest  float64 // mm, the lowest point of the keel
}

// section is a station made ready for clipping.
type section struct {
	x      float64
	weight float64          // mm of length that the section stands for
	half   []geometry.Point // from the middle line out to the sheer
	whole  float64          // mm2, up to the sheer
	low    float64          // least height
}

func (s *section) keel() geometry.Point  { return s.half[0] }
func (s *section) sheer() geometry.Point { return s.half[len(s.half)-1] }

// New makes a hull of stations given from aft forward.
//
// Requires: at least two stations at strictly increasing places, half-breadths
// not negative, all finite, and some volume under the sheer.
// Errors: the first station that breaks this, by its place.
func New(stations []Station) (*Hull, error) {
	if len(stations) < 2 {
		return nil, errors.New("a hull needs at least two stations")
	}
	h := &Hull{sections: make([]*section, len(stations))}
	x, breaks := make([]float64, len(stations)), make([]bool, len(stations))
	all := make([]section, len(stations))
	for i, s := range stations {
		sec := &all[i]
		if err := sec.make(s); err != nil {
			return nil, fmt.Errorf("station %.1f mm: %w", s.X, err)
		}
		if i > 0 && !(s.X > x[i-1]) {
			return nil, fmt.Errorf("station %.1f mm does not follow the one at %.1f mm", s.X, x[i-1])
		}
		x[i], breaks[i] = s.X, s.Knuckle
		h.sections[i] = sec
		if i == 0 || sec.low < h.deepest {
			h.deepest = sec.low
		}
	}
	for i, w := range Weights(x, breaks) {
		h.sections[i].weight = w
	}
	if !(h.Holds() > 0) {
		return nil, errors.New("the sections hold no volume under the sheer")
	}
	return h, nil
}

// make makes a station ready for clipping.
func (s *section) make(st Station) error {
	if err := s.outline(st); err != nil {
		return err
	}
	for i := 1; i < len(s.half); i++ {
		a, b := s.half[i-1], s.half[i]
		s.whole += (a.X + b.X) * (b.Y - a.Y)
	}
	return nil
}

// outline makes a station ready for clipping, without its whole.
func (s *section) outline(st Station) error {
	if len(st.Half) == 0 {
		return errors.New("has no points")
	}
	if !geometry.Finite(st.X) {
		return errors.New("its place is no number")
	}
	s.x, s.half = st.X, st.Half[:len(st.Half):len(st.Half)]
	if st.Half[0].X > 0 {
		s.half = slices.Insert(s.half, 0, geometry.Point{Y: st.Half[0].Y})
	}
	s.low = s.half[0].Y
	for _, p := range s.half {
		if !p.Finite() || p.X < 0 {
			return fmt.Errorf("half-breadth %g mm at height %g mm is no place on the port side", p.X, p.Y)
		}
		s.low = min(s.low, p.Y)
	}
	return nil
}

// round is how many points go round the whole section, counter-clockwise.
func (s *section) round() int { return 2*len(s.half) - 1 }

// at is one of them: from the keel out to the sheer on port, and back on starboard; ok is
// false for one of starboard on the middle line, which port has already.
func (s *section) at(i int) (p geometry.Point, ok bool) {
	if i < len(s.half) {
		return s.half[i], true
	}
	p = s.half[s.round()-i]
	return geometry.Point{X: -p.X, Y: p.Y}, p.X > 0
}

// last is the last of them.
func (s *section) last() geometry.Point {
	for _, p := range s.half[1:] {
		if p.X > 0 {
			return geometry.Point{X: -p.X, Y: p.Y}
		}
	}
	return s.sheer()
}

// Ends returns the places of the first and the last station, mm.
func (h *Hull) Ends() (aft, fore float64) {
	return h.sections[0].x, h.sections[len(h.sections)-1].x
}

// Deepest returns the height of the lowest point of the keel, mm.
func (h *Hull) Deepest() float64 { return h.deepest }

// Holds returns the volume up to the sheer, mm3.
func (h *Hull) Holds() float64 {
	sum := 0.0
	for _, s := range h.sections {
		sum += s.weight * s.whole
	}
	return sum
}
