package marks

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/trial/bend"
)

// rib lists a rib from its place to its blank, then from the middle of the blank
// outward.
func (l *list) rib(f *frame.Frame, i int, b *bend.Report) {
	r, off := f.Ribs[i], alike(f)
	l.part = "rib " + r.Name
	l.length("station", r.Station, set)
	l.length("half-breadth", r.Section.HalfBreadth, FreeWidth/2)
	l.length("depth", r.Section.Depth, set)
	l.length("keel height", r.Section.KeelZ, set)
	l.length("width", float64(f.Design.Ribs.Width), planed)
	l.length("thickness", r.Thickness, ribbed)
	l.length("length", r.Length, off)
	l.length("correction", r.Correction, off)
	l.length("tenon", r.Tenon, deep)
	l.length("blank", r.Blank, sawn)
	bends := math.Max(off, BilgeSlack(r))
	if math.IsInf(bends, 0) {
		bends = off
	}
	for n, a := range r.Section.Half {
		if a.Radius > 0 {
			l.nth("arc radius", n+1, a.Radius, turned*a.Radius)
		}
		l.nthAngle("arc sweep", n+1, a.Sweep)
		l.nth("arc length", n+1, a.Length, off)
	}
	for n, at := range r.BendMarks {
		l.nth("bend mark", n+1, at, bends)
	}
	for n, at := range r.StringerMarks {
		l.nth("stringer mark", n+1, at, off)
	}
	if b != nil {
		l.bent(b.Ribs[i])
	}
}

// bent lists the forms of a rib, numbered as its arcs, and the width that it is
// relaxed to, where there is a neutral set.
func (l *list) bent(r bend.Rib) {
	for _, a := range r.Arcs {
		if !math.IsInf(a.Form, 0) {
			l.nth("form radius", a.Bend+1, a.Form, turned*a.Form)
		}
	}
	if r.Relax > 0 {
		l.length("relax to", r.Relax, FreeWidth)
	}
}
