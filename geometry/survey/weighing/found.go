package weighing

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/equations"
	"ribwright/geometry/water/float"
)

// Value is a figure with one standard deviation either way.
type Value struct{ Is, Off float64 }

// Found is what the tests and what was worked out come to together.
type Found struct {
	Mass, Along, High Value // kg; mm from midship forward; mm over the baseline: of the boat alone
	GM                Value // mm, of the boat with the test's weight in it, upright

	Worked   float.Load // what was worked out before
	Closed   *Value     // GM by the closed form, with all the weight found; nil without an inclining
	Apart    []Apart    // how far each thing measured lies from what all say together
	Disagree bool       // they lie farther apart than one in a hundred sets of such tests
}

// Apart is one thing measured beside what is found.
type Apart struct {
	What     string
	Measured float64 // in its unit: kg, mm or kg mm
	Found    float64
	Off      float64 // one standard deviation of the measuring
}

// Load is the boat alone as found.
func (f *Found) Load() float.Load {
	return float.Load{Mass: f.Mass.Is, At: geometry.Point3{X: f.Along.Is, Y: f.Worked.At.Y, Z: f.High.Is}}
}

// Of takes the tests together with what was worked out, each counting by how well it is
// known: weighted least squares on the mass of the boat and the place of its center.
//
// How: Gauss and Newton's steps, with every floating position worked out anew on the hull
// as it is. The moment of the weight moved is compared with what the hull itself brings up
// against that heel, so that a wide heel needs no correction.
// Errors: nothing measured, or a weight with which the hull does not float upright.
func Of(b Boat, t Tests) (*Found, error) {
	m := model{b: b, t: t}
	m.list()
	if len(m.seen) == priors {
		return nil, fmt.Errorf("nothing is weighed; accepted: a mass, three freeboards or an inclining")
	}
	at := [3]float64{b.Own.Mass, b.Own.At.X, b.Own.At.Z}
	var spread [3][3]float64
	const steps = 6 // two or three reach 1e-9; more is a boat that swamps
	for range steps {
		is, slopes, err := m.slopes(at)
		if err != nil {
			return nil, err
		}
		left := make([]float64, len(is))
		for i := range is {
			left[i] = m.seen[i].Measured - is[i]
		}
		step, by, ok := fit(slopes, left, m.seen)
		if !ok {
			return nil, fmt.Errorf("the tests do not settle the boat's weight")
		}
		spread = by
		for k := range at {
			at[k] += step[k]
		}
	}
	return m.found(at, spread)
}

// priors is how many entries stand for what was worked out before.
const priors = 3

// model is the tests as a list of things seen, each a function of three unknowns.
type model struct {
	b    Boat
	t    Tests
	seen []Apart
}

func (m *model) list() {
	add := func(what string, v, off float64) { m.seen = append(m.seen, Apart{What: what, Measured: v, Off: off}) }
	own := m.b.Own
	add("mass worked out", own.Mass, usual.own*own.Mass)
	add("its place along the boat, worked out", own.At.X, usual.along)
	add("its height, worked out", own.At.Z, usual.high)
	if w := m.t.Scale; w > 0 {
		add("scale", w, math.Hypot(usual.scale, usual.scaleShare*w))
	}
	if f := m.t.Freeboards; f != nil {
		for k, name := range [3]string{"freeboard aft", "freeboard amidships", "freeboard forward"} {
			add(name, f[k], usual.freeboard)
		}
	}
	if i := m.t.Incline; i != nil {
		heel, off := i.Heel()
		moment := i.Mass * i.Distance
		share := math.Sqrt(sq(usual.moved) + sq(usual.distance/i.Distance) + sq(off/(math.Sin(heel)*math.Cos(heel))))
		add("inclining", moment, share*moment)
	}
}

// inclined is the boat with the test's weight in it; the boat alone where none was moved.
func (m *model) inclined(own float.Load) float.Load {
	if m.t.Incline == nil {
		return own
	}
	return float.Total(own, float.Load{Mass: m.t.Incline.Mass, At: m.b.Weight})
}

// load is the boat alone.
func load(at [3]float64) float.Load {
	return float.Load{Mass: at[0], At: geometry.Point3{X: at[1], Z: at[2]}}
}

// shows is what every test would show for three unknowns, and GM with the test's weight.
func (m *model) shows(at [3]float64) (out []float64, gm float64, err error) {
	h, rho, own := m.b.Hull, m.b.Density, load(at)
	plane, _, err := h.Balance(own, rho, 0, nil)
	if err != nil {
		return nil, 0, fmt.Errorf("with what was measured the boat does not float: %w", err)
	}
	out = append(out, at[:]...)
	if m.t.Scale > 0 {
		out = append(out, at[0])
	}
	if m.t.Freeboards != nil {
		for _, x := range m.b.At {
			_, sheer := h.Heights(x)
			out = append(out, plane.Above(geometry.Point3{X: x, Z: sheer}))
		}
	}
	i := m.t.Incline
	if i == nil {
		return out, h.Upright(plane, own, rho).GM, nil
	}
	all := m.inclined(own)
	if plane, _, err = h.Balance(all, rho, 0, &plane); err != nil {
		return nil, 0, fmt.Errorf("with the weight in it the boat does not float: %w", err)
	}
	heel, _ := i.Heel()
	lever, err := h.Righting(all, rho, heel, &plane)
	if err != nil {
		return nil, 0, fmt.Errorf("heeled %.1f deg the boat does not float: %w", heel*180/math.Pi, err)
	}
	return append(out, all.Mass*lever.GZ/math.Cos(heel)), h.Upright(plane, all, rho).GM, nil
}

// slopes is what every test would show, and how that answers each unknown.
func (m *model) slopes(at [3]float64) (is []float64, slopes [][3]float64, err error) {
	steps := [3]float64{0.01, 1, 1} // kg, mm, mm: the hull answers smoothly, to 1 part in 1,000 of its slope
	if is, _, err = m.shows(at); err != nil {
		return nil, nil, err
	}
	slopes = make([][3]float64, len(is))
	for k := range at {
		moved := at
		moved[k] += steps[k]
		next, _, err := m.shows(moved)
		if err != nil {
			return nil, nil, err
		}
		for i := range is {
			slopes[i][k] = (next[i] - is[i]) / steps[k]
		}
	}
	return is, slopes, nil
}

// fit is the weighted least squares of three unknowns: the step, and how far the unknowns
// may be off together, as variances.
//
// Source: the normal equations, as in any text on adjustment of measurements.
func fit(slopes [][3]float64, left []float64, seen []Apart) (step [3]float64, spread [3][3]float64, ok bool) {
	var normal [3][3]float64
	var right [3]float64
	for i, row := range slopes {
		w := 1 / sq(seen[i].Off)
		for j := range row {
			right[j] += w * row[j] * left[i]
			for k := range row {
				normal[j][k] += w * row[j] * row[k]
			}
		}
	}
	solve := func(y []float64) []float64 {
		a := make([][]float64, 3)
		for j := range a {
			a[j] = append([]float64(nil), normal[j][:]...)
		}
		x, fine := equations.Eliminate(a, y)
		ok = fine
		return x
	}
	for j := range spread {
		unit := make([]float64, 3)
		unit[j] = 1
		if x := solve(unit); ok {
			copy(spread[j][:], x)
		} else {
			return step, spread, false
		}
	}
	copy(step[:], solve(right[:]))
	return step, spread, ok
}

// found reads the answer at the unknowns found.
func (m *model) found(at [3]float64, spread [3][3]float64) (*Found, error) {
	is, gm, err := m.shows(at)
	if err != nil {
		return nil, err
	}
	off := func(k int) float64 { return math.Sqrt(spread[k][k]) }
	f := &Found{Mass: Value{at[0], off(0)}, Along: Value{at[1], off(1)}, High: Value{at[2], off(2)}, Worked: m.b.Own}
	var slope [3]float64
	for k, h := range [3]float64{0.01, 1, 1} {
		moved := at
		moved[k] += h
		_, next, err := m.shows(moved)
		if err != nil {
			return nil, err
		}
		slope[k] = (next - gm) / h
	}
	variance := 0.0
	for j := range slope {
		for k := range slope {
			variance += slope[j] * spread[j][k] * slope[k]
		}
	}
	f.GM = Value{gm, math.Sqrt(variance)}
	apart := 0.0
	for i, s := range m.seen {
		s.Found = is[i]
		f.Apart = append(f.Apart, s)
		apart += sq((s.Measured - s.Found) / s.Off)
	}
	f.Disagree = apart > oneInHundred[len(m.seen)-priors]
	if i := m.t.Incline; i != nil {
		all := m.inclined(load(at)).Mass
		closed := Value{}
		closed.Is, closed.Off = i.GM(all, f.Mass.Off/all)
		f.Closed = &closed
	}
	return f, nil
}

// oneInHundred is what the sum of squares passes once in a hundred sets of tests, by how
// many things were measured: as many as there are more than unknowns.
//
// Source: the chi-square distribution, any table of it.
var oneInHundred = [...]float64{0, 6.635, 9.210, 11.345, 13.277, 15.086}

// Worst is what lies farthest from what is found, measured by how well it is known.
func (f *Found) Worst() Apart {
	worst, most := f.Apart[0], -1.0
	for _, a := range f.Apart {
		if z := math.Abs(a.Measured-a.Found) / a.Off; z > most {
			worst, most = a, z
		}
	}
	return worst
}
