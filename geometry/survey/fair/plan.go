package fair

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/survey/offsets"
)

// fitPlan holds the gunwales where the batten alone would leave the measured
// sheer, the worst place first.
func (f *fit) fitPlan() error {
	const close = 1.0 // mm: nearer than this a spreader tells a builder nothing
	in, _ := f.gunwaleIn()
	for range 14 {
		h, err := f.hullNow()
		if err != nil {
			return err
		}
		aft, fore := h.Gunwale.Ends()
		worst, at, beam := close, 0.0, 0.0
		look := func(half []offsets.Station, side float64) {
			for _, s := range half {
				x := side * s.X
				y := s.Sheer().X - in
				if s.X == 0 || x <= aft+60 || x >= fore-60 || s.X > 0.95*f.half || y < 10 || f.held(x) {
					continue
				}
				if off := math.Abs(h.Gunwale.Point(x).Y - y); off > worst {
					worst, at, beam = off, x, 2*y
				}
			}
		}
		look(f.bow, 1)
		if !f.even {
			look(f.aft, -1)
		}
		if worst == close {
			break
		}
		f.hold(at, beam)
	}
	if err := f.easeEnds(); err != nil {
		return err
	}
	slices.SortFunc(f.d.Hull.Spreaders, func(a, b design.Spreader) int { return cmp.Compare(a.At, b.At) })
	return nil
}

// easeEnds adds a tie between the outermost spreader and the stem where the batten
// would else come closer together than it ends.
func (f *fit) easeEnds() error {
	h, err := f.hullNow()
	if err != nil {
		return err
	}
	aft, fore := h.Gunwale.Ends()
	f.easeEnd(h, fore)
	if !f.even {
		f.easeEnd(h, aft)
	}
	return nil
}

func (f *fit) easeEnd(h *hull.Hull, end float64) {
	out, beam := 0.0, float64(f.d.Hull.Beam)
	for _, s := range f.d.Hull.Spreaders {
		if float64(s.At)*end > 0 && math.Abs(float64(s.At)) > math.Abs(out) {
			out, beam = float64(s.At), float64(s.Beam)
		}
	}
	dips := false
	const steps = 40
	last := h.Gunwale.Point(end).Y
	for i := 1; i < steps; i++ {
		dips = dips || h.Gunwale.Point(out+(end-out)*float64(i)/steps).Y < last
	}
	at := (out + end) / 2
	if dips && math.Abs(at) < 0.95*f.half && !f.held(at) {
		f.hold(at, math.Max(20, beam/2+last))
	}
}

// held reports whether a spreader stands at a place or too near to it.
func (f *fit) held(x float64) bool {
	for _, s := range f.d.Hull.Spreaders {
		if math.Abs(float64(s.At)-x) < 50 {
			return true
		}
	}
	return false
}

// hold puts a spreader at a place: a plain one when the gunwales can be spread so,
// else a tie.
func (f *fit) hold(x, beam float64) {
	s := design.Spreader{At: rounded(x), Beam: rounded(beam)}
	before := f.d.Hull.Spreaders
	for _, tie := range []bool{false, true} {
		s.Tie = tie
		f.d.Hull.Spreaders = append(append([]design.Spreader(nil), before...), s)
		if !tie && beam < 50 {
			continue
		}
		if _, err := f.hullNow(); err == nil {
			return
		}
	}
	// Neither can be bent: those farther out pull in too.
	for i := range f.d.Hull.Spreaders {
		if o := &f.d.Hull.Spreaders[i]; math.Abs(float64(o.At)) > math.Abs(x) && float64(o.At)*x > 0 {
			o.Tie = true
		}
	}
	if _, err := f.hullNow(); err == nil {
		return
	}
	// The batten will not go there at all: leave the place where it falls.
	f.d.Hull.Spreaders = before
	f.d.Hull.Spreaders = append(f.d.Hull.Spreaders, f.fallen(x))
}

// fallen is a spreader at the place where the batten lies by itself.
func (f *fit) fallen(x float64) design.Spreader {
	s := design.Spreader{At: rounded(x), Beam: 50, Tie: true}
	if h, err := f.hullNow(); err == nil {
		s.Beam = rounded(math.Max(20, 2*h.Gunwale.Point(x).Y))
	}
	return s
}
