package fair

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"ribwright/geometry/design"
	"ribwright/geometry/hull"
	"ribwright/geometry/offsets"
)

// gunwaleIn is how far the gunwale line lies inboard of and under the measured
// sheer, the gunwale's upper outer edge with the skin on it, mm.
func (f *fit) gunwaleIn() (in, under float64) {
	g := f.d.Gunwale
	sin, cos := math.Sincos(float64(g.Tilt))
	w, h := float64(g.Width)/2, float64(g.Height)
	return w*cos + h*sin + float64(f.d.Skin.Thickness), h*cos - w*sin
}

// fitSheer finds tilt, edge-set and where it begins from the heights of the
// sheer, and with them the depth.
func (f *fit) fitSheer() error {
	mid := f.bow[0]
	if mid.X > 0.25*f.half || len(mid.Points) < 3 {
		return errors.New("no section is given near midship; the table needs one of three points or more within an eighth of the length")
	}
	type height struct{ out, y, z float64 }
	var bow, aft []height
	top := func(half []offsets.Station) []height {
		var out []height
		for _, s := range half {
			out = append(out, height{s.X, s.Sheer().X, s.Sheer().Y})
		}
		return out
	}
	bow, aft = top(f.bow), top(f.aft)
	if f.even {
		aft = bow
	}
	z0, b0 := mid.Sheer().Y, mid.Sheer().X
	model := func(p []float64, h height, end float64) float64 {
		rise := 0.0
		if from := p[3]; h.out > from {
			t := (h.out - from) / (f.half - from)
			rise = end * t * t
		}
		return p[4] + (b0-h.y)*math.Tan(p[0]) + rise
	}
	spans := []span{{-0.10, f.rail.tilt}, {0, 395}, {0, 395}, {0, 0.79 * f.half}, {z0 - 25, z0 + 25}}
	cost := func(p []float64) float64 {
		sum := 0.0
		for _, h := range bow {
			d := model(p, h, p[1]) - h.z
			sum += d * d
		}
		for _, h := range aft {
			d := model(p, h, p[2]) - h.z
			sum += d * d
		}
		return sum + 200*p[0]*p[0] // of equals the plainer tilt
	}
	rise := math.Max(1, bow[len(bow)-1].z-z0)
	var starts [][]float64
	for _, tilt := range []float64{0, 0.1, 0.2} {
		for _, from := range []float64{0.2, 0.5} {
			starts = append(starts, []float64{math.Min(tilt, f.rail.tilt), math.Min(390, rise*(1-tilt)), math.Min(390, rise*(1-tilt)), from * f.half, z0})
		}
	}
	p, _ := least(spans, starts, cost)
	if p == nil {
		return errors.New("no sheer fits the heights of the uppermost points")
	}
	g := &f.d.Gunwale
	g.Tilt = turned(p[0] * 180 / math.Pi)
	g.EdgeSetBow, g.EdgeSetAft, g.EdgeSetFrom = rounded(p[1]), rounded(p[2]), rounded(p[3])
	if f.even {
		g.EdgeSetAft = g.EdgeSetBow
	}
	in, under := f.gunwaleIn()
	f.d.Hull.Beam = rounded(2 * (b0 - in))
	f.d.Hull.Depth = rounded(p[4] - under - f.seat())
	f.d.Hull.Waterline = rounded(math.Max(20, float64(f.d.Hull.Depth)/3))
	return nil
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
