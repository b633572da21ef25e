package balance

import (
	"errors"
	"fmt"
	"math"
	"ribwright/geometry/equations"
)

// effort weighs a rib's opening against an error of the boat's beam in the search
// for the neutral set: 1 mm of beam counts as much as 1/effort mm of opening at
// one rib. Our own choice: a free width is set to some 5 mm, so to mend less beam by
// more opening would be work for nothing. Where that leaves the beam too far off, the
// weight is halved so often at the most.
const (
	effort  = 0.05
	halved  = 6
	offBeam = 3.0 // mm by which the neutral set may leave the beam off the drawing: what spreaders set by hand are off
)

// ErrNoNeutral says that the ribs cannot hold the beam without cross pieces.
var ErrNoNeutral = errors.New("no setting of the ribs holds the beam")

// Neutral returns how much wider than its place in the boat each rib should stand
// before it is fitted, mm, so that in the likely case the frame holds its beam without
// any cross piece. Cut to the frame as it then stands, Fit longer than drawn, every
// cross piece carries nothing and can be taken out without the boat moving.
//
// How: without cross pieces the offsets v follow from the openings o by v = v0 +
// G o. Of all openings those are taken that make
//
//	Σ (2 v)² + effort² Σ o²
//
// over the ribs least. Both terms are lengths, so the stiffness of the wood as
// such plays no part.
// Errors: ErrNoNeutral, with the rib where the beam cannot be held.
func (m *Model) Neutral() ([]float64, error) {
	n := len(m.ribs)
	effect := equations.Rows(n, n)
	for i, u := range m.opens {
		for k, at := range m.ribAt {
			effect[i][k] = 2 * u[at]
		}
	}
	start := make([]float64, n)
	for k, at := range m.ribAt {
		start[k] = 2 * m.settled.free(at, m.likely, nil)
	}
	worst, at := 0.0, 0
	for weight, k := effort, 0; k <= halved; weight, k = weight/2, k+1 {
		open := lightest(effect, start, weight)
		if worst, at = farthest(effect, start, open); worst <= offBeam {
			return open, nil
		}
	}
	if n == 0 {
		return nil, ErrNoNeutral
	}
	return nil, fmt.Errorf("gunwales too stiff for these ribs: %w, which stands %.0f mm off at rib %s", ErrNoNeutral, worst, m.ribs[at].Name)
}

// lightest returns the openings that make the sum of squares least; nil where no
// numbers come out.
func lightest(effect [][]float64, start []float64, weight float64) []float64 {
	n := len(effect)
	a, y := equations.Rows(n, n), make([]float64, n)
	for i := range n {
		y[i] = -equations.Dot(effect[i], start)
		for j := range i + 1 {
			a[i][j] = equations.Dot(effect[i], effect[j])
			a[j][i] = a[i][j]
		}
	}
	for i := range n {
		a[i][i] += weight * weight
	}
	open, ok := equations.Eliminate(a, y)
	if !ok {
		return nil
	}
	return open
}

// farthest is the greatest change of beam that openings leave, and the rib; +Inf for
// none.
func farthest(effect [][]float64, start, open []float64) (off float64, at int) {
	if len(open) == 0 {
		return math.Inf(1), 0
	}
	for k, v := range start {
		for i, o := range open {
			v += o * effect[i][k]
		}
		if math.Abs(v) > off {
			off, at = math.Abs(v), k
		}
	}
	return off, at
}

// Fit returns how much longer than its place as drawn each cross piece is, mm, when it
// is cut to the frame as it stands in the likely case with ribs so open and no cross
// piece in it.
func (m *Model) Fit(open []float64) []float64 {
	opened := m.settled.opened(open, m.likely.Upright)
	out := make([]float64, len(m.struts))
	for i, at := range m.strutAt {
		out[i] = 2 * m.settled.free(at, m.likely, opened)
	}
	return out
}
