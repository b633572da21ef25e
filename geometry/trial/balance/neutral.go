package balance

import "errors"

// effort weighs a rib's opening against an error of the boat's beam in the search
// for the neutral set: 1 mm of beam counts as much as 1/effort mm of opening at
// one rib. More would leave the shape; less would ask one rib to carry what its
// neighbours can share. Our own choice; the tests hold what it brings.
const effort = 0.02

// ErrNoNeutral says that the ribs cannot take the load off the cross pieces.
var ErrNoNeutral = errors.New("no setting of the ribs takes the load off every cross piece: the ribs bear nothing there, or two cross pieces lie on one place")

// Neutral returns how much wider than its place in the boat each rib should stand
// before it is fitted, mm, so that every cross piece carries nothing and can be
// taken out without the boat moving.
//
// How: without cross pieces the offsets v follow from the openings o by v = v0 +
// G o. The offset at every cross piece is held at 0; of all openings that do so,
// those are taken that make
//
//	Σ (2 v)² + effort² Σ o²
//
// over the ribs least. Both terms are lengths, so the stiffness of the wood as
// such plays no part.
// Errors: ErrNoNeutral.
func (m *Model) Neutral() ([]float64, error) {
	start, effect, err := m.responses()
	if err != nil {
		return nil, err
	}
	n, all := len(m.ribs), len(m.ribs)+len(m.struts)
	a, y := make([][]float64, all), make([]float64, all)
	for i := range a {
		a[i] = make([]float64, all)
	}
	for i := range n {
		for _, node := range m.ribNode {
			y[i] -= 4 * effect[i][2*node] * start[2*node]
			for j := range n {
				a[i][j] += 4 * effect[i][2*node] * effect[j][2*node]
			}
		}
		a[i][i] += effort * effort
		for t, node := range m.strutNode {
			a[i][n+t], a[n+t][i] = effect[i][2*node], effect[i][2*node]
		}
	}
	for t, node := range m.strutNode {
		y[n+t] = -start[2*node]
	}
	x, ok := eliminate(a, y)
	if !ok || n == 0 {
		return nil, ErrNoNeutral
	}
	return x[:n], nil
}

// responses returns the unknowns of the frame without cross pieces: with its ribs
// unset, and what 1 mm of opening at each rib adds.
func (m *Model) responses() (start []float64, effect [][]float64, err error) {
	bare := Setting{StrutsOut: map[int]bool{}}
	for i := range m.struts {
		bare.StrutsOut[i] = true
	}
	f, err := m.held(bare)
	if err != nil {
		return nil, nil, err
	}
	load := append([]float64(nil), m.push...)
	load[0], load[len(load)-2] = 0, 0
	for i, r := range m.ribs {
		unit := make([]float64, len(load))
		unit[2*m.ribNode[i]] = r.Stiffness
		effect = append(effect, f.solve(unit))
	}
	return f.solve(load), effect, nil
}
