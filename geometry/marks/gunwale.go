package marks

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/trial/bend"
)

func (l *list) gunwale(f *frame.Frame, b *bend.Report) {
	const part = "gunwale"
	g, plies := &f.Gunwale, f.Design.Gunwale.Plies
	l.add(part, length("stock length", g.Fore-g.Aft, sawn), length("width", g.Width, planed), length("height", g.Height, planed),
		length("ply thickness", g.Width/float64(plies), planed))
	if b != nil && plies > 1 {
		l.add(part, radius("form radius", b.Gunwale.Form))
	}
	l.add(part, angle("tilt", g.Tilt), length("aft end", g.Aft, sawn), length("fore end", g.Fore, sawn),
		angle("aft end cut", g.AftCut), angle("fore end cut", g.ForeCut),
		length("aft end longer above", g.AftRise, pencil), length("fore end longer above", g.ForeRise, pencil))
	for i, s := range g.Scarfs {
		l.add(part, length("scarf from", s.Middle-s.Length/2, pencil).nth(i+1), length("scarf to", s.Middle+s.Length/2, pencil).nth(i+1))
	}
	for i, z := range g.NoScarf {
		l.add(part, length("no scarf from", z.From, pencil).nth(i+1), length("no scarf to", z.To, pencil).nth(i+1))
	}
	l.bolts(f)
	edgeSet := func(end string, e hull.EdgeSet) {
		l.add(part, length("edge-set rise, "+end, e.Rise, sprung), radius("edge-set radius, "+end, e.Radius()),
			length("edge-set end shift, "+end, e.EndShift(g.Height), pencil))
		if e.Made > 0 {
			l.add(part, length("edge-set made, "+end, e.Made, sawn))
		}
	}
	edgeSet("bow", f.Hull.Sheer.BowSet)
	edgeSet("stern", f.Hull.Sheer.SternSet)
}

// bolts lists where the bolts of cross pieces and of seats' hangers go through the stock:
// its holes, wherever the piece that they hold has its own.
func (l *list) bolts(f *frame.Frame) {
	for i, t := range f.Thwarts {
		quantity, n := fmt.Sprintf("bolt of thwart %d from midship", i+1), 0
		for _, h := range t.Holes {
			if at := h.Bounds().Center(); at.X > 0 {
				n++
				l.add("gunwale", length(quantity, f.Gunwale.OnStock(t.At)+at.Y, pencil).nth(n))
			}
		}
	}
	for _, s := range f.Seats {
		if s.Hung == nil {
			continue
		}
		for _, r := range []struct {
			name string
			rail seat.Rail
		}{{"front", s.Hung.Front}, {"after", s.Hung.After}} {
			for n, at := range r.rail.Hanger.Bolts {
				l.add("gunwale", length(fmt.Sprintf("bolt of seat %d, %s, from midship", s.Number+1, r.name), at, pencil).nth(n+1))
			}
		}
	}
}

func (l *list) mortise(m frame.Mortise) {
	part := "mortise " + m.Rib
	l.add(part, length("station", m.Station, pencil), length("from midship", m.FromMidship, placed), length("length", m.Length, slot),
		length("width", m.Width, slot), length("depth", m.Depth, deep), angle("bevel", m.Bevel), length("wall", m.Wall, planed),
		length("wall at bottom", m.Deep, planed), length("to next", m.ToNext, pencil), angle("lean along", m.Along), angle("twist", m.Twist))
	if m.Ease > 0 {
		l.add(part, length("ease", m.Ease, ribbed))
	}
	if !math.IsInf(m.ToScarf, 0) {
		l.add(part, length("to scarf", m.ToScarf, pencil))
	}
	if m.Taper > 0 {
		l.add(part, length("head taper", m.Taper, ribbed))
	}
}

// blocks lists those of a middle ply that is left open for mortises, by number from aft.
func (l *list) blocks(g *frame.Gunwale) {
	for i, z := range g.Blocks {
		l.add(fmt.Sprintf("block %d", i+1), length("from", z.From, planed), length("to", z.To, planed), length("length", z.To-z.From, planed))
	}
}
