package stow

import (
	"errors"
	"fmt"
	"math"
	"sort"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
)

// Edge is a straight piece of a lower boat's wood that the boat above may meet.
// Of a face both the edges and lines across it are given.
type Edge struct {
	A, B geometry.Point3
	Part int // its number among the parts
}

// Inside is everything of a boat that one lowered into it may touch, on the
// port side; starboard is its mirror.
type Inside struct {
	parts []Part
	edges []Edge
}

// NewInside makes an inside from its edges. Edges must be short where boats
// bend: what lies between two of them is not seen.
//
// Errors: none given, or one that is no place or names no part.
func NewInside(edges []Edge, parts []Part) (*Inside, error) {
	if len(edges) == 0 {
		return nil, errors.New("an inside needs an edge")
	}
	for _, e := range edges {
		for _, p := range []geometry.Point3{e.A, e.B} {
			if !geometry.Finite(p.X + p.Y + p.Z) {
				return nil, errors.New("an edge ends at a point that is no place")
			}
		}
		if e.Part < 0 || e.Part >= len(parts) {
			return nil, errors.New("an edge belongs to no part")
		}
	}
	return &Inside{parts: parts, edges: edges}, nil
}

func (in *Inside) only(keep func(Edge, Part) bool) *Inside {
	out := &Inside{parts: in.parts}
	for _, e := range in.edges {
		if keep(e, in.parts[e.Part]) {
			out.edges = append(out.edges, e)
		}
	}
	return out
}

// Bare returns the inside with thwarts, yoke and seats taken out.
func (in *Inside) Bare() *Inside {
	return in.only(func(_ Edge, p Part) bool { return p.Kind != CrossPiece })
}

// floor returns the edges that may be met in the zone Floor.
func (in *Inside) floor() *Inside {
	return in.only(func(e Edge, p Part) bool { return e.zone(p.Kind, Cloth) == Floor })
}

// level reports whether an edge lies across the boat, flatter than 45 degrees.
func (e Edge) level() bool {
	return e.A.X == e.B.X && math.Abs(e.B.Z-e.A.Z) <= math.Abs(e.B.Y-e.A.Y)
}

// zone says where an edge of a part below and a part of the boat above meet.
func (e Edge) zone(lower, upper Kind) Zone {
	switch {
	case lower == Stem || lower == Breasthook || lower == Gunwale && upper == Keel:
		return Ends
	case lower == CrossPiece:
		return Across
	case lower != Gunwale && e.level():
		return Floor
	}
	return Sides
}

// InsideOf returns the inner faces of a boat: ribs, keel, stringers and cloth
// between and beyond them, gunwales, stems, breasthooks, and the thwarts, yoke
// and seats, which Bare takes out.
func InsideOf(f *frame.Frame, cloth *skin.Cloth) (*Inside, error) {
	w := &wood{f: f, cloth: cloth}
	w.ribs()
	w.gunwales()
	w.bottom()
	w.stem("bow", f.Bow, 1)
	w.stem("stern", f.Stern, -1)
	w.hook("bow", f.BowHook, f.Hull.Bow, 1)
	w.hook("stern", f.SternHook, f.Hull.Stern, -1)
	w.thwarts()
	w.seats()
	return NewInside(w.edges, w.parts)
}

// wood gathers the edges of the inner faces.
type wood struct {
	f     *frame.Frame
	cloth *skin.Cloth
	edges []Edge
	parts []Part
}

func (w *wood) part(k Kind, name string) int {
	w.parts = append(w.parts, Part{k, name})
	return len(w.parts) - 1
}

func (w *wood) line(part int, x float64, pts []geometry.Point) {
	for i := 1; i < len(pts); i++ {
		w.edges = append(w.edges, Edge{at(x, pts[i-1]), at(x, pts[i]), part})
	}
}

func at(x float64, p geometry.Point) geometry.Point3 {
	return geometry.Point3{X: x, Y: p.X, Z: p.Y}
}

// ribs gives each rib its inner face at both its edges and its middle.
func (w *wood) ribs() {
	half := float64(w.f.Design.Ribs.Width) / 2
	for _, r := range w.f.Ribs {
		part := w.part(Rib, "rib "+r.Name)
		pts := r.Inner.Flatten(0.1)
		for _, x := range []float64{-half, 0, half} {
			w.line(part, r.Station+x, pts)
		}
	}
}

// gunwales gives them their under, inner and upper faces.
func (w *wood) gunwales() {
	g, part := &w.f.Gunwale, w.part(Gunwale, "gunwale")
	under, inner := newRail(g, g.Width/2, 0), newRail(g, -g.Width/2, 0)
	top, over := newRail(g, -g.Width/2, g.Height), newRail(g, g.Width/2, g.Height)
	aft, fore := g.Line.Ends()
	n := int((fore-aft)/railStep) + 1
	var was float64
	for i := range n + 1 {
		x := aft + (fore-aft)*float64(i)/float64(n)
		w.line(part, x, []geometry.Point{under.flat(x), inner.flat(x), top.flat(x), over.flat(x)})
		if i > 0 {
			w.edges = append(w.edges, Edge{inner.at(was), inner.at(x), part}, Edge{top.at(was), top.at(x), part})
		}
		was = x
	}
}

// How far apart sections of keel, stringers and cloth are looked at, mm:
// between ribs, which stand proud of them, and past the last rib.
const (
	bayStep = 45.0
	endStep = 12.0
)

// bottom gives the keel, the stringers and the cloth between them.
func (w *wood) bottom() {
	f := w.f
	keel, cloth := w.part(Keel, "keel"), w.part(Cloth, "cloth")
	var stringers []int
	for _, s := range f.Stringers {
		stringers = append(stringers, w.part(Stringer, fmt.Sprintf("stringer %d", s.Number)))
	}
	first, last := f.Ribs[0].Station, f.Ribs[len(f.Ribs)-1].Station
	for x := first; x < last; x += bayStep {
		w.under(x, keel, cloth, stringers)
	}
	for x := last; x < f.Hull.Bow.GunwaleX; x += endStep {
		w.under(x, keel, cloth, stringers)
	}
	for x := first; x > -f.Hull.Stern.GunwaleX; x -= endStep {
		w.under(x, keel, cloth, stringers)
	}
}

func (w *wood) under(x float64, keel, cloth int, stringers []int) {
	f, d := w.f, w.f.Design
	if x < f.Hull.Bow.Toe.X && -x < f.Hull.Stern.Toe.X {
		z, _ := f.Hull.KeelZ(x)
		z += float64(d.Skin.Thickness() + d.Keel.Depth)
		w.line(keel, x, []geometry.Point{{Y: z}, {X: float64(d.Keel.Width) / 2, Y: z}})
	}
	corners := w.cloth.At(x)
	for i := 1; i+2 < len(corners); i++ { // the last piece is the gunwale
		if i%2 == 1 {
			w.line(cloth, x, corners[i:i+2])
			continue
		}
		// The inner face of a stringer lies its depth inside its outer corners.
		a, b := corners[i], corners[i+1]
		in := b.Sub(a).Left().Unit().Scale(float64(d.Stringers.Depth + d.Skin.Thickness()))
		if a != b {
			w.line(stringers[i/2-1], x, []geometry.Point{a.Add(in), b.Add(in)})
		}
	}
}

// stem gives the piece's outline on its side and the lines across it. Its
// outline is drawn as if it were the bow's.
func (w *wood) stem(end string, s frame.Stem, side float64) {
	part := w.part(Stem, end+" stem")
	pts := outline(s.Outline, 6)
	half := s.Thickness / 2
	place := func(p geometry.Point, y float64) geometry.Point3 {
		return geometry.Point3{X: side * p.X, Y: y, Z: p.Y}
	}
	for i, p := range pts {
		w.edges = append(w.edges, Edge{place(p, 0), place(p, half), part})
		if i > 0 {
			w.edges = append(w.edges, Edge{place(pts[i-1], half), place(p, half), part})
		}
	}
}

// hook gives a breasthook's upper face: its outline and its middle line.
func (w *wood) hook(end string, b frame.Breasthook, e hull.End, side float64) {
	part := w.part(Breasthook, end+" breasthook")
	lean := math.Hypot(1, b.Slope)
	place := func(p geometry.Point) geometry.Point3 {
		return geometry.Point3{X: side * (e.GunwaleX + p.X/lean), Y: math.Abs(p.Y), Z: e.TopZ + p.X*b.Slope/lean}
	}
	pts := outline(b.Outline, 8)
	apex := math.Inf(1)
	for i, p := range pts {
		if i > 0 && (p.Y >= 0 || pts[i-1].Y >= 0) {
			w.edges = append(w.edges, Edge{place(pts[i-1]), place(p), part})
		}
		if math.Abs(p.Y) < 6 && p.X < -1 {
			apex = math.Min(apex, p.X)
		}
	}
	const steps = 24
	for i := 0; i < steps && !math.IsInf(apex, 0); i++ {
		a, b := apex*(1-float64(i)/steps), apex*(1-float64(i+1)/steps)
		w.edges = append(w.edges, Edge{place(geometry.Point{X: a}), place(geometry.Point{X: b}), part})
	}
}

// thwarts gives the upper and lower faces of the cross pieces at their full
// width all along.
func (w *wood) thwarts() {
	for i, t := range w.f.Thwarts {
		part := w.part(CrossPiece, strings.TrimSpace(t.Name))
		half := float64(w.f.Design.Thwarts[i].Width) / 2
		z := w.f.Gunwale.Line.Point(t.At).Z
		for _, x := range []float64{-half, 0, half} {
			for _, h := range []float64{z, z - t.Thickness} {
				w.line(part, t.At+x, []geometry.Point{{Y: h}, {X: math.Min(t.ForeEnd, t.AftEnd), Y: h}})
			}
		}
	}
}

// rail is one long corner of a bent gunwale as points in order of x.
type rail []geometry.Point3

// railStep is how far apart points on a gunwale are taken, mm. Between them a
// gunwale bent to 3 m leaves its chord by less than 0.02 mm.
const railStep = 15.0

// newRail follows the corner across mm outboard of the middle of the gunwale's
// underside and up mm above it, a little past both ends, which are cut across
// the boat.
func newRail(g *frame.Gunwale, across, up float64) rail {
	aft, fore := g.Line.Ends()
	aft, fore = aft-g.Width, fore+g.Width
	n := int((fore-aft)/railStep) + 1
	out := make(rail, n+1)
	for i := range out {
		out[i] = g.At(aft+(fore-aft)*float64(i)/float64(n), across, up)
	}
	return out
}

func (r rail) at(x float64) geometry.Point3 {
	i := sort.Search(len(r), func(i int) bool { return r[i].X > x })
	i = min(max(i, 1), len(r)-1)
	a, b := r[i-1], r[i]
	return along(a, b, (x-a.X)/(b.X-a.X))
}

func (r rail) flat(x float64) geometry.Point {
	p := r.at(x)
	return geometry.Point{X: p.Y, Y: p.Z}
}
