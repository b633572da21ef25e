package edgeset

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
)

// Hold is a place where the gunwales are held while the set is sprung into them.
type Hold struct {
	At      float64   // station, mm
	Down    float64   // N on both gunwales together; negative where they are held up
	Over    float64   // how much higher than drawn they lie on a trestle, mm
	Between [2]string // the ribs beside a trestle, from aft forward; empty where none are
}

// springing works out what holds the set before a rib is in: the gunwales are held up at both
// ends and drawn down onto two trestles. Elsewhere they bend as they like, a little in the
// middle too, where the set has no bend: the trestles stand so much higher than drawn that the
// ends come as far over midship as they are wanted. A hold amidships that kept the middle to
// its line would take several times the force.
//
// Source: the elastica through pins; at slopes of a few hundredths it is the beam over
// supports of the books, to which the tests hold it.
func (m *Model) springing(f *frame.Frame) ([]Hold, error) {
	both := Trestles(f)
	out := []Hold{{At: m.Gunwales.From}, both[0], both[1], {At: m.Gunwales.To}}
	bent := func(over float64) (*curve.Elastica, float64, error) {
		var x, y []float64
		for i, h := range out {
			if x, y = append(x, h.At), append(y, m.rise(h.At)); i == 1 || i == 2 {
				y[i] += over
			}
		}
		e, err := curve.NewElastica(x, y)
		if err != nil {
			return nil, 0, fmt.Errorf("springing the edge-set: %w", err)
		}
		mid, _ := e.Rise(0)
		return e, mid, nil
	}
	_, low, err := bent(0)
	if err != nil {
		return nil, err
	}
	_, high, err := bent(1)
	if err != nil {
		return nil, err
	}
	over := low / (low - high)
	e, _, err := bent(over)
	if err != nil {
		return nil, err
	}
	out[1].Over, out[2].Over = over, over
	for i, push := range e.Pushes() {
		out[i].Down = -push * m.Gunwales.Bend
	}
	return out, nil
}

// rise is how far the set lifts the gunwales at a station over how they lie by themselves, mm.
func (m *Model) rise(x float64) float64 {
	s := m.Sets[0]
	if x > 0 {
		s = m.Sets[1]
	}
	over := math.Max(0, math.Abs(x)-s.From)
	return s.Curve / 2 * over * over
}

// Trestles are the places of two trestles, aft and forward, where nothing is sprung over them.
func Trestles(f *frame.Frame) [2]Hold { return [2]Hold{trestle(f, -1), trestle(f, 1)} }

// trestle is the place of a trestle forward (1) or aft (-1): in the bay beside the rib at the
// quarter, toward midship, so that its bars come out when the ribs are in.
func trestle(f *frame.Frame, side float64) Hold {
	quarter := side * f.Hull.Length / 4
	for i := 1; i < len(f.Ribs); i++ {
		a, b := f.Ribs[i-1], f.Ribs[i]
		inner, outer := a, b
		if side < 0 {
			inner, outer = b, a
		}
		if outer.Name == f.Nearest(quarter).Name && inner.Station*side >= 0 {
			return Hold{At: (a.Station + b.Station) / 2, Between: [2]string{a.Name, b.Name}}
		}
	}
	return Hold{At: quarter}
}
