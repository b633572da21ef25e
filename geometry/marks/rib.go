package marks

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/pushed"
)

// rib lists a rib from its place to its blank, then from the middle of the blank
// outward; at last what bending gives (b, nil without it): the radii that it is bent to
// hot, numbered as its arcs, the widths that it is held to then and relaxed to, where
// there is a neutral set, and the shape that it takes when it is only pushed in.
func (l *list) rib(f *frame.Frame, i int, b *bend.Report) {
	r, off := f.Ribs[i], alike(f)
	part := "rib " + r.Name
	l.add(part, length("station", r.Station, set), length("half-breadth", r.Section.HalfBreadth, FreeWidth/2),
		length("depth", r.Section.Depth, set), length("keel height", r.Section.KeelZ, set),
		length("width", float64(f.Design.Ribs.Width), planed), length("thickness", r.Thickness, ribbed), length("length", r.Length, off),
		length("correction", r.Correction, off), length("tenon", r.Tenon, deep), length("blank", r.Blank, sawn))
	bends := math.Max(off, BilgeSlack(r))
	if math.IsInf(bends, 0) {
		bends = off
	}
	for n, a := range r.Section.Half {
		l.add(part, radius("arc radius", a.Radius).nth(n+1), angle("arc sweep", a.Sweep).nth(n+1), length("arc length", a.Length, off).nth(n+1))
	}
	for n, at := range r.BendMarks {
		l.add(part, length("bend mark", at, bends).nth(n+1))
	}
	for n, at := range r.StringerMarks {
		l.add(part, length("stringer mark", at, off).nth(n+1))
	}
	if b == nil {
		return
	}
	for _, a := range b.Ribs[i].Arcs {
		l.add(part, radius("form radius", a.Form).nth(a.Bend+1))
	}
	if hot := b.Ribs[i].Hot; hot > 0 {
		l.add(part, length("hot width", hot, FreeWidth))
	}
	if relax := b.Ribs[i].Relax; relax > 0 {
		l.add(part, length("relax to", relax, FreeWidth))
	}
	if p := b.Ribs[i].Pushed; p.Why == nil {
		l.pushedIn(part, "hinged", p.Hinged)
		l.pushedIn(part, "clamped", p.Clamped)
	}
}

// pushedIn lists the shape of a rib whose heads are held so. It is not to be worked to;
// it is as far off as a head's slack and a spreader let it be.
func (l *list) pushedIn(part, heads string, h pushed.Head) {
	leans := angle("flare pushed in, "+heads, h.Flare)
	leans.Tolerance = pushed.Slack
	l.add(part, leans, length("off pushed in, "+heads, h.Off().By, FreeWidth), radius("least radius pushed in, "+heads, h.Least))
}
