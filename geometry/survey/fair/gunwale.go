package fair

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/survey/offsets"
)

// gunwaleIn is how far the gunwale line lies inboard of and under the measured
// sheer, the gunwale's upper outer edge with the skin on it, mm.
func (f *fit) gunwaleIn() (in, under float64) {
	g := f.d.Gunwale
	sin, cos := math.Sincos(float64(g.Tilt))
	w, h := float64(g.Width)/2, float64(g.Height)
	return w*cos + h*sin + float64(f.d.Skin.Thickness()), h*cos - w*sin
}

// sheerFit is what shapes the sheer: tilt, the edge-set at bow and stern, where it
// begins, and the height amidships. Radians and mm.
type sheerFit struct{ tilt, bow, stern, from, mid float64 }

// off is how far the sheer lies over the top of a station, for the edge-set of its end,
// in a hull of a half length and a half-breadth amidships.
func (s sheerFit) off(at offsets.Station, set, half, wide float64) float64 {
	rise := 0.0
	if at.X > s.from {
		t := (at.X - s.from) / (half - s.from)
		rise = set * t * t
	}
	return s.mid + (wide-at.Sheer().X)*math.Tan(s.tilt) + rise - at.Sheer().Y
}

// fitSheer finds tilt, edge-set and where it begins from the heights of the
// sheer, and with them the depth.
func (f *fit) fitSheer() error {
	mid := f.bow[0]
	if mid.X > 0.25*f.half || len(mid.Points) < 3 {
		return errors.New("no section is given near midship; the table needs one of three points or more within an eighth of the length")
	}
	s, err := f.searchSheer(mid.Sheer().X, mid.Sheer().Y)
	if err != nil {
		return err
	}
	g := &f.d.Gunwale
	g.Tilt = turned(s.tilt * 180 / math.Pi)
	g.EdgeSetBow, g.EdgeSetAft, g.EdgeSetFrom = rounded(s.bow), rounded(s.stern), rounded(s.from)
	if f.even {
		g.EdgeSetAft = g.EdgeSetBow
	}
	in, under := f.gunwaleIn()
	f.d.Hull.Beam = rounded(2 * (mid.Sheer().X - in))
	f.d.Hull.Depth = rounded(s.mid - under - f.seat())
	f.d.Hull.Waterline = rounded(math.Max(20, float64(f.d.Hull.Depth)/3))
	return nil
}

// searchSheer looks for the sheer of least squares; of equals the one of less tilt.
func (f *fit) searchSheer(wide, top float64) (sheerFit, error) {
	bow, aft := f.bow, f.aft
	if f.even {
		aft = bow
	}
	of := func(p []float64) sheerFit { return sheerFit{p[0], p[1], p[2], p[3], p[4]} }
	cost := func(p []float64) float64 {
		s, sum := of(p), 200*p[0]*p[0]
		for _, h := range bow {
			d := s.off(h, s.bow, f.half, wide)
			sum += d * d
		}
		for _, h := range aft {
			d := s.off(h, s.stern, f.half, wide)
			sum += d * d
		}
		return sum
	}
	const most = 395.0 // mm of edge-set; the design file takes 400
	spans := []span{{-0.10, f.rail.tilt}, {0, most}, {0, most}, {0, 0.79 * f.half}, {top - 25, top + 25}}
	rise := math.Max(1, bow[len(bow)-1].Sheer().Y-top)
	var starts [][]float64
	for _, tilt := range []float64{0, 0.1, 0.2} {
		for _, from := range []float64{0.2, 0.5} {
			set := math.Min(most-5, rise*(1-tilt))
			starts = append(starts, []float64{math.Min(tilt, f.rail.tilt), set, set, from * f.half, top})
		}
	}
	p, _ := least(spans, starts, cost)
	if p == nil {
		return sheerFit{}, errors.New("no sheer fits the heights of the uppermost points")
	}
	return of(p), nil
}

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
		for side, s := range f.stations() {
			x, y := side*s.X, s.Sheer().X-in
			if s.X == 0 || x <= aft+60 || x >= fore-60 || s.X > 0.95*f.half || y < 10 || f.held(x) {
				continue
			}
			if off := math.Abs(h.Gunwale.Point(x).Y - y); off > worst {
				worst, at, beam = off, x, 2*y
			}
		}
		if worst == close {
			break
		}
		f.hold(at, beam)
	}
	h, err := f.hullNow()
	if err != nil {
		return err
	}
	aft, fore := h.Gunwale.Ends()
	f.easeEnd(h, fore)
	if !f.even {
		f.easeEnd(h, aft)
	}
	slices.SortStableFunc(f.d.Hull.Spreaders, func(a, b design.Spreader) int { return cmp.Compare(a.At, b.At) })
	return nil
}

// easeEnd adds a tie between the outermost spreader and the stem where the batten
// would else come closer together than it ends.
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
	return slices.ContainsFunc(f.d.Hull.Spreaders, func(s design.Spreader) bool { return math.Abs(float64(s.At)-x) < 50 })
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
	s.Beam = 50
	if h, err := f.hullNow(); err == nil {
		s.Beam = rounded(math.Max(20, 2*h.Gunwale.Point(x).Y))
	}
	f.d.Hull.Spreaders = append(before, s)
}
