package balance

import "ribwright/geometry/curve"

// sprung puts a model together in which ribs are springs, heads hinged, and nothing else
// holds. fine, 1 or more, cuts every element into that many, for tests of convergence.
//
// Errors: a member off the rail, a stiffness that is no number, a rail that bends
// nothing. Each names the member.
func sprung(rail Rail, ribs, struts []Member, fine int) (*Model, error) {
	m := &Model{rail: rail, ribs: ribs, struts: struts}
	return m, m.build(fine)
}

// headsGive returns how far the heads of a rib open for a pair of equal and opposite
// level forces of 1 N on them, times its bending stiffness: mm3, so that
//
//	opening = P headsGive / (E I)
//
// How: Castigliano, 2 ∫ m² ds over the half rib, m the height of the head above
// the place. half runs from the keel to the head, mm.
// Returns: > 0 for a rib that stands up, 0 for one without depth or length.
// Accuracy: 1e-9 of the result; the tests have the closed forms of arcs and legs.
func headsGive(half curve.Chain) float64 {
	h := newHoop(half, 1, 0, nil, nil)
	if h == nil {
		return 0
	}
	return h.give()
}
