package json

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/trial/bend"
)

// addBending adds how ribs and gunwales are bent; where no balance can be worked
// out the fields stay null.
func (b *boat) addBending(f *frame.Frame) {
	d, g := f.Design.Gunwale, &b.Gunwale
	g.Plies, g.Ply, g.Glued = d.Plies, fixed(float64(d.Width)/float64(d.Plies)), d.Glued
	r, err := bend.Of(f)
	for i := range b.Ribs {
		b.Ribs[i].Forms = make([]*fixed, len(b.Ribs[i].HalfArcs))
		if err != nil {
			continue
		}
		if r.Ribs[i].Relax > 0 {
			b.Ribs[i].Relax = known(r.Ribs[i].Relax)
		}
		for _, a := range r.Ribs[i].Arcs {
			b.Ribs[i].Forms[a.Bend] = known(a.Form)
		}
	}
	if err == nil && d.Plies > 1 {
		g.Form = known(r.Gunwale.Form)
	}
}

// known is a number that may be missing: nil when it is infinite.
func known(v float64) *fixed {
	if math.IsInf(v, 0) {
		return nil
	}
	out := fixed(v)
	return &out
}
