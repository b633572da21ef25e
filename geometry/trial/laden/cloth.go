package laden

import "ribwright/geometry/equations"

// bay is the cloth from one rib or stem to the next, from keel to gunwale: how far it is drawn
// askew, all of it alike, for it slides on the stringers.
type bay struct {
	on    [8]int
	by    [8]float64
	stiff float64 // for cloth of 1 N for each mm and radian
}

// newBay lays cloth between two rows of joints.
//
// How: a gunwale that goes farther along the boat than the keel, and ribs of which one goes
// farther up than the next, turn its edges toward one another. The upper half of its height goes up with the
// gunwale, the lower half with the keel.
func newBay(near, far []*joint) (b bay) {
	last := len(near) - 1
	girth := 0.0
	for k := 1; k <= last; k++ {
		girth += near[k].at.Sub(near[k-1].at).Norm()/2 + far[k].at.Sub(far[k-1].at).Norm()/2
	}
	long := far[0].at.X - near[0].at.X
	rise := (near[last].at.Z - near[0].at.Z + far[last].at.Z - far[0].at.Z) / 2 / long
	b.stiff = long / girth
	for i, j := range []*joint{near[0], far[0], near[last], far[last]} {
		up := float64(i%2) - 0.5
		b.on[2*i], b.by[2*i] = j.of[0], float64(i/2)-0.5
		b.on[2*i+1], b.by[2*i+1] = j.of[2], up*rise
	}
	return b
}

func (b bay) hold(k equations.Profile, cloth float64) { resist(k, b.stiff*cloth, b.on[:], b.by[:]) }
