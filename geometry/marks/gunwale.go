package marks

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/trial/bend"
)

func (l *list) gunwale(f *frame.Frame, b *bend.Report) {
	g, plies := &f.Gunwale, f.Design.Gunwale.Plies
	l.part = "gunwale"
	l.length("stock length", g.Fore-g.Aft, sawn)
	l.length("width", g.Width, planed)
	l.length("height", g.Height, planed)
	l.length("ply thickness", g.Width/float64(plies), planed)
	if b != nil && plies > 1 && !math.IsInf(b.Gunwale.Form, 0) {
		l.length("form radius", b.Gunwale.Form, turned*b.Gunwale.Form)
	}
	l.angle("tilt", g.Tilt)
	l.length("aft end", g.Aft, sawn)
	l.length("fore end", g.Fore, sawn)
	l.angle("aft end cut", g.AftCut)
	l.angle("fore end cut", g.ForeCut)
	for i, s := range g.Scarfs {
		l.nth("scarf from", i+1, s.Middle-s.Length/2, pencil)
		l.nth("scarf to", i+1, s.Middle+s.Length/2, pencil)
	}
	for i, z := range g.NoScarf {
		l.nth("no scarf from", i+1, z.From, pencil)
		l.nth("no scarf to", i+1, z.To, pencil)
	}
	l.edgeSet("bow", f.Hull.Sheer.BowSet, g.Height)
	l.edgeSet("stern", f.Hull.Sheer.SternSet, g.Height)
}

func (l *list) edgeSet(end string, e hull.EdgeSet, height float64) {
	l.length("edge-set rise, "+end, e.Rise, sprung)
	if r := e.Radius(); !math.IsInf(r, 0) {
		l.length("edge-set radius, "+end, r, turned*r)
	}
	l.length("edge-set end shift, "+end, e.EndShift(height), pencil)
}

func (l *list) mortise(m frame.Mortise) {
	l.part = "mortise " + m.Rib
	l.length("station", m.Station, pencil)
	l.length("from midship", m.FromMidship, pencil)
	l.length("length", m.Length, slot)
	l.length("width", m.Width, slot)
	l.length("depth", m.Depth, deep)
	l.angle("bevel", m.Bevel)
	l.length("wall", m.Wall, planed)
	l.length("wall at bottom", m.Deep, planed)
	l.length("to next", m.ToNext, pencil)
	if !math.IsInf(m.ToScarf, 0) {
		l.length("to scarf", m.ToScarf, pencil)
	}
}
