package built

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/equations"
	"ribwright/geometry/measure"
)

// AsItIs is the frame as it will be: ribs that stand as measured, the others as re-solved.
//
// Errors: a half-breadth and depth from which a section cannot be made.
func (r *Report) AsItIs() (*frame.Frame, error) {
	off := make([]frame.Off, len(r.Kept))
	for i, k := range r.Kept {
		off[i] = frame.Off{HalfBreadth: k.Beam / 2, Depth: k.Depth, Keel: -k.Depth}
	}
	made, err := r.Frame.Frame.Sections(off)
	if err != nil {
		return nil, err
	}
	return frame.Reshaped(r.Frame.Frame, made, frame.Ends{})
}

// Design is the boat as built as a design of its own, with how far the ribs of that design
// lie off what was measured.
type Design struct {
	*design.Design
	Beam, Depth Fit
}

// Fit is how near the design comes to the ribs, mm.
type Fit struct {
	RMS, Worst float64
	At         int // the worst rib, from aft
}

// Design returns the boat as built. A design has no widths and depths of its own for each
// rib: beams at midship and at the spreaders, the depth and the rocker of both ends come as
// near to the ribs as they can, by least squares. A board that was measured takes its
// springback along.
//
// Errors: a design that cannot be built, with why.
func (r *Report) Design() (*Design, error) {
	d := r.Frame.Frame.Design.Copy()
	unfold(d)
	beam, depth := make([]float64, len(r.Kept)), make([]float64, len(r.Kept))
	for i, k := range r.Kept {
		beam[i], depth[i] = k.Beam, k.Depth
	}
	if err := r.widen(d, beam); err != nil {
		return nil, err
	}
	r.deepen(d, depth)
	if len(r.Spring.Readings) > 0 {
		d.Bending.Springback = math.Round(math.Min(math.Max(r.Spring.Now, 0), 0.4)*100) / 100
	}
	d.Next(r.Frame.Frame.Design, "as built: "+r.Summary())
	if p := d.Check(); p != nil {
		return nil, fmt.Errorf("as built it is no design: %s: %s", p.Key, p.Text)
	}
	f, err := frame.Build(d)
	if err != nil {
		return nil, fmt.Errorf("as built it is no design: %w", err)
	}
	out := &Design{Design: d}
	for i, rib := range f.Ribs {
		if i >= len(r.Kept) {
			break
		}
		out.Beam.add(i, 2*rib.Section.HalfBreadth-r.Drawn(i, Beam)-beam[i], len(r.Kept))
		out.Depth.add(i, rib.Section.Depth-r.Drawn(i, Depth)-depth[i], len(r.Kept))
	}
	return out, nil
}

func (f *Fit) add(i int, off float64, n int) {
	f.RMS = math.Sqrt(f.RMS*f.RMS + off*off/float64(n))
	if math.Abs(off) > math.Abs(f.Worst) {
		f.Worst, f.At = off, i
	}
}

// unfold gives a design that is alike at both ends each end of its own.
func unfold(d *design.Design) {
	if !d.Hull.Symmetric {
		return
	}
	sections, spreaders := d.AllSections(), d.AllSpreaders()
	if d.Stern == nil {
		bow := d.Bow
		d.Stern = &bow
	}
	d.Hull.Sections, d.Hull.Spreaders, d.Hull.Symmetric = sections, nil, false
	for _, s := range spreaders {
		if s.At != 0 {
			d.Hull.Spreaders = append(d.Hull.Spreaders, s)
		}
	}
}

// widen moves the spreaders: the gunwales answer as battens through them.
func (r *Report) widen(d *design.Design, off []float64) error {
	aft, fore := r.at[0], r.at[len(r.at)-1]
	pins := []float64{aft}
	for _, s := range d.AllSpreaders() {
		pins = append(pins, float64(s.At))
	}
	pins = append(pins, fore)
	var units [][]float64
	for k := 1; k < len(pins)-1; k++ {
		y := make([]float64, len(pins))
		y[k] = 1
		b, err := curve.NewBatten(pins, y)
		if err != nil {
			return err
		}
		units = append(units, r.along(func(x float64) float64 { v, _ := b.Rise(x); return v }))
	}
	by := nearest(units, off)
	for k, v := range by {
		at := pins[k+1]
		if at == 0 {
			d.Hull.Beam += half(v)
		}
		for j := range d.Hull.Spreaders {
			if float64(d.Hull.Spreaders[j].At) == at {
				d.Hull.Spreaders[j].Beam += half(v)
			}
		}
	}
	return nil
}

// deepen changes the depth and the rocker: the keel rises from the ends of its straight run
// as the rocker of each end says.
func (r *Report) deepen(d *design.Design, off []float64) {
	h := r.Frame.Frame.Hull
	rocker := func(bow bool, all measure.Length) []float64 {
		return r.along(func(x float64) float64 {
			if (x > 0) != bow || all == 0 {
				return 0
			}
			z, _ := h.KeelZ(x)
			level, _ := h.KeelZ(0)
			return -(z - level) / float64(all)
		})
	}
	by := nearest([][]float64{r.along(func(float64) float64 { return 1 }), rocker(false, d.Hull.RockerStern), rocker(true, d.Hull.RockerBow)}, off)
	d.Hull.Depth += half(by[0])
	for k, to := range []*measure.Length{&d.Hull.RockerStern, &d.Hull.RockerBow} {
		if v := *to + half(by[k+1]); v > 0 {
			*to = v
		}
	}
}

// along reads a function at every rib.
func (r *Report) along(f func(x float64) float64) []float64 {
	out := make([]float64, len(r.Kept))
	for i := range out {
		out[i] = f(r.at[i+1])
	}
	return out
}

// nearest is how much of each row of units comes nearest to what is wanted, by least
// squares. A little is held back, so that a row that no rib feels stays as it is.
func nearest(units [][]float64, want []float64) []float64 {
	const held = 1e-3
	n := len(units)
	a, y := make([][]float64, n), make([]float64, n)
	for j := range a {
		a[j] = make([]float64, n)
		for k := range units {
			a[j][k] = equations.Dot(units[j], units[k])
		}
		a[j][j] += held
		y[j] = equations.Dot(units[j], want)
	}
	x, _ := equations.Eliminate(a, y)
	return x
}

// half rounds to half a millimeter, as a rule reads it.
func half(mm float64) measure.Length { return measure.Length(math.Round(2*mm) / 2) }

// Summary is the frame in a line, for the log of the design.
func (r *Report) Summary() string {
	return fmt.Sprintf("%d of %d ribs measured, %.0f mm off in beam and %.0f mm in depth (rms)", r.Off.Standing, len(r.ribs), zero(r.Off.Beam), zero(r.Off.Depth))
}

// zero is a figure, and nothing where it is not known.
func zero(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}
