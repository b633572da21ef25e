// Package clip places the blocks that hold an outfit to a gunwale: bolted under a bar, they
// stand inside the gunwale and hook under its inner lower edge. No cord goes round a gunwale,
// for its outer face is under the cloth.
package clip

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// NoCord says why nothing is lashed round a gunwale.
const NoCord = "No cord goes round a gunwale: it would pierce the cloth, which is tacked to the outer face"

// BoltIn is how far inside the gunwale's upper inner edge the bolt goes, mm, square to it.
const BoltIn = kit.ClipWide / 2

// Wide is half of the room that a clip takes along the boat, mm: its thickness, turned.
const Wide = 25.0

// ribRoom is kept between a hook and the head of a rib, mm. Our own choice.
const ribRoom = 3.0

// Clip is one clip on the port side; its twin is the mirror.
type Clip struct {
	Hole     geometry.Point // of its bolt: X the station, Y from the middle line, mm
	Turn     float64        // about its bolt, to lie against the gunwale: its forward edge outboard positive, radians
	From, To float64        // stations of what lies under the gunwale, mm
}

// Lay places a clip whose bolt stands at a station.
func Lay(f *frame.Frame, x float64) Clip {
	g := f.Gunwale
	edge := func(x float64) float64 { return g.EdgeAt(x, -g.Width/2, g.Height).Y }
	const half = kit.ClipThick / 2
	m := (edge(x+half) - edge(x-half)) / kit.ClipThick
	c := Clip{Turn: math.Atan(m)}
	sin, cos := math.Sincos(c.Turn)
	c.Hole = geometry.Pt(x, edge(x)-BoltIn/cos)
	foot, lip := hook(g)
	c.From, c.To = math.Inf(1), math.Inf(-1)
	for _, across := range []float64{BoltIn + foot.X, BoltIn + lip.X} {
		for _, along := range []float64{-half, half} {
			s := x + along*cos - across*sin
			c.From, c.To = math.Min(c.From, s), math.Max(c.To, s)
		}
	}
	return c
}

// hook returns where a clip's inner face meets the hook, and the hook's end.
func hook(g frame.Gunwale) (foot, lip geometry.Point) {
	p := kit.ClipOutline(g)
	return p[len(p)-2], p[len(p)-3]
}

// Clear reports whether the hook lies between the heads of ribs, and the clip beside cross
// pieces and the hangers of seats.
func (c Clip) Clear(f *frame.Frame) bool {
	return offRibs(f, c.From, c.To) && offPieces(f, math.Min(c.From, c.Hole.X-kit.ClipThick/2), math.Max(c.To, c.Hole.X+kit.ClipThick/2))
}

// Free reports whether something under the gunwales, from one station to another, meets no
// rib's head, no cross piece and no hanger of a seat.
func Free(f *frame.Frame, from, to float64) bool {
	return offRibs(f, from, to) && offPieces(f, from, to)
}

func free(at, wide, from, to float64) bool {
	return to <= at-wide/2-ribRoom || from >= at+wide/2+ribRoom
}

func offRibs(f *frame.Frame, from, to float64) bool {
	for _, r := range f.Ribs {
		if !free(r.Station, float64(f.Design.Ribs.Width), from, to) {
			return false
		}
	}
	return true
}

func offPieces(f *frame.Frame, from, to float64) bool {
	for _, t := range f.Thwarts {
		if !free(t.At, t.Outline.Bounds().H(), from, to) {
			return false
		}
	}
	for _, s := range f.Seats {
		if h := s.Hung; h != nil && !(free(h.Front.Hanger.Station, h.Front.Hanger.Wide, from, to) && free(h.After.Hanger.Station, h.After.Hanger.Wide, from, to)) {
			return false
		}
	}
	return true
}

// Near places a clip as near to a station as ribs, cross pieces and seats let it, from lo to hi, mm;
// at the station itself, and reports false, where there is no room.
func Near(f *frame.Frame, x, lo, hi float64) (Clip, bool) {
	at, ok := Nearest(x, hi-lo, func(at float64) bool { return at >= lo && at <= hi && Lay(f, at).Clear(f) })
	return Lay(f, at), ok
}

// Nearest returns the place nearest to x, no farther than so many mm, that suits, in steps
// of half a millimeter; x itself and false where there is none.
func Nearest(x, most float64, suits func(x float64) bool) (float64, bool) {
	for off := 0.0; off <= most; off += 0.5 {
		for _, at := range []float64{x - off, x + off} {
			if suits(at) {
				return at, true
			}
		}
	}
	return x, false
}

// Pull is what a clip bears when its bar is lifted.
type Pull struct {
	Load  float64 // N, on the hook
	Bolt  float64 // N
	Press float64 // N, of the clip's inboard edge on the bar
	Lip   float64 // N/mm2, at the root of the hook, the grain along it
	Under float64 // N/mm2, on the gunwale's lower face
	Asked float64 // N/mm2, of the clip's wood in bending
	Dents float64 // N/mm2, asked of the gunwale's wood across its grain
}

// denting is how far under the stress at which wood stays dented it is asked. From memory,
// 1.5 to 1.7.
const denting = 1.5

// Bears works out what a load on one clip, N, asks of it: hook and inboard edge balance
// about the bolt.
func Bears(g frame.Gunwale, load float64, wood, gunwale timber.Species) Pull {
	foot, lip := hook(g)
	const rim = 4.0 // of the inboard edge, that presses
	back := kit.ClipOutline(g)[0].X + rim
	p := Pull{Load: load, Asked: beam.Working(wood), Dents: gunwale.Crush / denting}
	p.Bolt = load * ((foot.X+lip.X)/2 - back) / (-BoltIn - back)
	p.Press = p.Bolt - load
	p.Lip = load * kit.ClipLip / 2 / beam.Rectangle(kit.ClipThick, kit.LipThick).Modulus
	p.Under = load / (kit.ClipThick * kit.ClipLip)
	return p
}

// Holds reports whether the clip and the gunwale under it carry that.
func (p Pull) Holds() bool { return p.Lip <= p.Asked && p.Under <= p.Dents }

// BoltLong is how long a clip's bolt is under a bar so thick, mm, in steps of 10: through both,
// with washers and a nut.
func BoltLong(g frame.Gunwale, bar float64) float64 {
	low := 0.0
	for _, p := range kit.ClipOutline(g) {
		low = math.Min(low, p.Y)
	}
	const nut = 12.0
	return math.Ceil((bar-low+nut)/10) * 10
}
