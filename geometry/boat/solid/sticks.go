package solid

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
)

// room is for the four edges of a stick, of so many places each.
func room(places int) (edges [4][]geometry.Point3) {
	all := make([]geometry.Point3, 4*places)
	for e := range edges {
		edges[e] = all[e*places : (e+1)*places : (e+1)*places]
	}
	return edges
}

func (b *Boat) gunwale(f *frame.Frame, m Moves, side float64) {
	g := &f.Gunwale
	aft, fore := g.Line.Ends()
	at := places(aft, fore, f.Ribs)
	edges := room(len(at))
	for i, x := range at {
		by := m.Gunwale(side, x)
		for e, c := range [4][2]float64{{0.5, 0}, {0.5, 1}, {-0.5, 1}, {-0.5, 0}} {
			edges[e][i] = mirrored(g.At(x, c[0]*g.Width, c[1]*g.Height), side).Add(by)
		}
	}
	b.bar(Line{Part: Gunwales, Side: side}, edges)
}

// stringer lies with its flat as it is lashed to ribs and stems. The first two edges are
// those outside, the one towards the keel first.
func (b *Boat) stringer(f *frame.Frame, m Moves, k int, side float64) {
	s := f.Stringers[k]
	wide, deep := float64(f.Design.Stringers.Width)/2, float64(f.Design.Stringers.Depth)/2
	aft, fore := s.Line.Ends()
	at := places(aft, fore, f.Ribs)
	edges := room(len(at))
	for i, x := range at {
		p, by := s.Line.Point(x), m.Stringer(k, side, x)
		flat, _ := s.Stick.Flat(x)
		sin, cos := math.Sincos(flat)
		for e, c := range [4][2]float64{{-wide, deep}, {wide, deep}, {wide, -deep}, {-wide, -deep}} {
			q := p.Add(geometry.Point3{Y: c[0]*cos + c[1]*sin, Z: c[0]*sin - c[1]*cos})
			edges[e][i] = mirrored(q, side).Add(by)
		}
	}
	b.bar(Line{Part: Stringers, Number: s.Number, Side: side}, edges)
}

// rib runs from the port head by the keel to the starboard one. The first two edges are
// those of its outer face, the after one first.
func (b *Boat) rib(f *frame.Frame, m Moves, i int) {
	r := f.Ribs[i]
	wide, girth := float64(f.Design.Ribs.Width)/2, r.Section.Half.Length()
	all := shares(r.Section.Half)
	edges := room(2*len(all) - 1)
	for k, share := range all {
		outer, inner := r.Face(share*girth, 0.5*r.Thickness), r.Face(share*girth, -0.5*r.Thickness)
		for _, side := range []float64{-1, 1} { // port last: at the keel its place stands
			at := len(all) - 1 - k*int(side)
			by := m.Rib(i, side, share)
			edges[0][at] = geometry.Point3{X: r.Station - wide, Y: outer.X * side, Z: outer.Y}.Add(by)
			edges[1][at] = geometry.Point3{X: r.Station + wide, Y: outer.X * side, Z: outer.Y}.Add(by)
			edges[2][at] = geometry.Point3{X: r.Station + wide, Y: inner.X * side, Z: inner.Y}.Add(by)
			edges[3][at] = geometry.Point3{X: r.Station - wide, Y: inner.X * side, Z: inner.Y}.Add(by)
		}
	}
	b.bar(Line{Part: Ribs, Number: i}, edges)
}

// shares are the places from keel to head between which a half rib is drawn straight:
// chords that keep to its arcs, a twelfth of it at the most so that it may bulge.
func shares(half curve.Chain) []float64 {
	const most = 12
	girth, at := half.Length(), 0.0
	out := []float64{0}
	for _, b := range half {
		n := math.Max(1, b.Length/girth*most)
		if b.Radius > 0 {
			n = math.Max(n, b.Length/math.Sqrt(8*b.Radius*flat))
		}
		pieces := int(math.Ceil(n - 1e-9))
		for k := range pieces {
			out = append(out, (at+b.Length*float64(k+1)/float64(pieces))/girth)
		}
		at += b.Length
	}
	out[len(out)-1] = 1
	return out
}

// keel's first edge is the lower port one.
func (b *Boat) keel(f *frame.Frame, m Moves) {
	deep := float64(f.Design.Keel.Depth) / 2
	aft, fore := f.Keel.Line.Ends()
	at := places(aft, fore, f.Ribs)
	edges := room(len(at))
	for i, x := range at {
		_, rise := f.Keel.Line.Slopes(x)
		run := math.Hypot(1, rise)
		p, wide := f.Keel.Line.Point(x).Add(m.Keel(x)), f.KeelHalf(x)
		for e, c := range [4][2]float64{{wide, -deep}, {wide, deep}, {-wide, deep}, {-wide, -deep}} {
			edges[e][i] = p.Add(geometry.Point3{X: -c[1] * rise / run, Y: c[0], Z: c[1] / run})
		}
	}
	b.bar(Line{Part: Keel}, edges)
}

// flat is how far a chord may leave the outline of a plate or the middle of a rib, mm.
const flat = 0.3

// stem stands on the middle line, forward for a side of 1 and aft for -1.
func (b *Boat) stem(s frame.Stem, m Moves, forward float64) {
	pts := s.Outline.Flatten(flat)
	var outline []geometry.Point3
	for _, p := range pts[:len(pts)-1] {
		at := geometry.Point3{X: p.X * forward, Y: s.Thickness / 2, Z: p.Y}
		outline = append(outline, at.Add(m.Stem(at)))
	}
	b.plate(Line{Part: Stems}, outline, stepped(outline, geometry.Point3{Y: -s.Thickness}))
}

// hook lies between the gunwales' ends, its upper face flush with their tops.
func (b *Boat) hook(f *frame.Frame, m Moves, h frame.Breasthook, forward float64) {
	g := &f.Gunwale
	aft, fore := g.Line.Ends()
	end := fore
	if forward < 0 {
		end = aft
	}
	top := g.EdgeAt(end, -g.Width/2, g.Height).Z
	run := math.Hypot(1, h.Slope)
	rise := h.Slope / run // of the plate's own length, towards the end
	pts := h.Outline.Flatten(flat)
	var outline []geometry.Point3
	for _, p := range pts[:len(pts)-1] {
		at := geometry.Point3{X: end + forward*p.X/run, Y: p.Y, Z: top + rise*p.X}
		outline = append(outline, at.Add(m.Stem(at)))
	}
	b.plate(Line{Part: Hooks}, outline, stepped(outline, geometry.Point3{X: forward * h.Thickness * rise, Z: -h.Thickness / run}))
}

// thwart lies under the gunwales, its ends cut back at the lower face.
func (b *Boat) thwart(f *frame.Frame, m Moves, t frame.Thwart) {
	at := f.Gunwale.Line.Point(t.At)
	port, board := m.Gunwale(1, t.At), m.Gunwale(-1, t.At)
	pts := t.Outline.Flatten(flat)
	var outline, lower []geometry.Point3
	for _, p := range pts[:len(pts)-1] {
		share := (1 + p.X/at.Y) / 2
		by := geometry.Point3{Y: board.Y + share*(port.Y-board.Y), Z: board.Z + share*(port.Z-board.Z)}
		top := geometry.Point3{X: t.At + p.Y, Y: p.X, Z: at.Z}.Add(by)
		outline = append(outline, top)
		lower = append(lower, top.Add(geometry.Point3{Y: -p.X * 2 * t.Under / t.Length, Z: -t.Thickness}))
	}
	b.plate(Line{Part: Thwarts}, outline, lower)
}
