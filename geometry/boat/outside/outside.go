// Package outside is what goes on a boat outside its skin: outwales over the tacks, the
// strip under the keel, painters, a drain. Units: mm, kg.
package outside

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
)

// Strip is a batten outside the skin.
type Strip struct {
	Across, Tall, Long float64 // off the skin, along it, and the finished length; 0 for none
	Screws             int     // in each; 0 where the wood under it is too thin for any
	Screw              float64 // length of one
	Apart              float64 // the farthest that two screws are from one another
	At                 geometry.Point3
}

// There reports whether the boat has it.
func (s Strip) There() bool { return s.Across > 0 }

// Fit is all that is outside the skin of one boat.
type Fit struct {
	Wood    string
	Outwale Strip   // one of two alike
	Keel    Strip   // under the keel batten, from forefoot to forefoot
	Painter float64 // length of each of the two; 0 for none
	Hole    float64 // for a painter, in each breasthook, from the gunwale ends inward on the middle line
	Drain   bool
	DrainAt float64 // station of the drain, between two ribs at the lowest place

	top geometry.Point3 // between the painters
	pad geometry.Point3 // of the drain
}

// Screws stand midway between ribs, closer where ribs are far apart; EndScrew is how far
// the last is from the end of a strip, under how much wood stays under its tip, mm.
// Common practice, no source.
const (
	mostApart = 200.0
	EndScrew  = 30.0
	ScrewWide = 3.5
	LineWide  = 8.0  // of painters
	LineHole  = 10.0 // for one
	under     = 2.0
	PadAcross = 70.0 // of the drain's pad, round
	PadThick  = 8.0
)

// screwLengths are those that are sold, mm: from 1/2 to 1 5/8 in.
func screwLengths() []float64 { return []float64{12, 16, 20, 25, 30, 35, 40} }

// Of works out what the design of a frame has outside.
func Of(f *frame.Frame) Fit {
	d := f.Design.Outside
	out := Fit{Wood: f.Design.OutsideWood(), Painter: float64(d.Painters), Drain: d.Drain}
	skin := float64(f.Design.Skin.Thickness())
	if d.Outwale > 0 {
		out.Outwale = Strip{Across: float64(d.Outwale), Tall: float64(d.OutwaleHeight)}
		out.Outwale.Long, out.Outwale.At = alongGunwale(f, out.Outwale.Tall/2)
		out.Outwale.screwed(f, skin, f.Gunwale.Width)
	}
	if d.KeelStrip > 0 {
		out.Keel = Strip{Across: float64(d.KeelStrip), Tall: float64(d.KeelStripWidth), Long: f.Keel.Fore - f.Keel.Aft}
		out.Keel.At = underKeel(f, out.Keel.Across/2)
		out.Keel.screwed(f, skin, float64(f.Design.Keel.Depth))
	}
	hook := f.Design.Breasthook
	out.Hole = float64(hook.Length-hook.Hollow) / 2
	aft, fore := -f.Hull.Stern.GunwaleX, f.Hull.Bow.GunwaleX
	out.top = geometry.Point3{X: (fore + aft) / 2, Z: (f.Gunwale.Outer(fore)[1].Y + f.Gunwale.Outer(aft)[1].Y) / 2}
	out.drain(f)
	return out
}

// alongGunwale measures a line on the gunwale's outer face, down from its upper edge, mm:
// its length, and the middle of both sides. A strip beside it that ends at the same
// stations is as long within 1 mm, for what it gains in the bend it loses at the ends.
func alongGunwale(f *frame.Frame, down float64) (long float64, middle geometry.Point3) {
	const steps = 100 // chords of 40 to 80 mm, that cut the bend by less than 0.01 mm each
	from, to := -f.Hull.Stern.GunwaleX, f.Hull.Bow.GunwaleX
	var last geometry.Point3
	var x0, z0 float64
	for i := range steps + 1 {
		x := from + (to-from)*float64(i)/steps
		face := f.Gunwale.Outer(x)
		way := face[1].Sub(face[0]).Unit()
		p := face[1].Sub(way.Scale(down))
		at := geometry.Point3{X: x, Y: p.X, Z: p.Y}
		if i > 0 {
			l := at.Sub(last).Norm()
			long += l
			x0, z0 = x0+l*(at.X+last.X)/2, z0+l*(at.Z+last.Z)/2
		}
		last = at
	}
	return long, geometry.Point3{X: x0 / long, Z: z0 / long} // port and starboard together
}

// underKeel is the middle of a strip under the keel whose own middle lies so far under the
// skin, mm.
func underKeel(f *frame.Frame, down float64) geometry.Point3 {
	const pieces = 40
	from, to := f.Keel.Line.Ends()
	z := 0.0
	for i := range pieces {
		z += f.Keel.Line.Point(from+(to-from)*(float64(i)+0.5)/pieces).Z / pieces
	}
	d := f.Design
	return geometry.Point3{X: (from + to) / 2, Z: z - float64(d.Keel.Depth)/2 - float64(d.Skin.Thickness()) - down}
}

// screwed puts screws midway between ribs, through the skin into wood so deep: the longest
// that are sold and do not come through.
func (s *Strip) screwed(f *frame.Frame, skin, wood float64) {
	for _, l := range screwLengths() {
		if l <= s.Across+skin+wood-under {
			s.Screw = l
		}
	}
	if s.Screw <= s.Across+skin {
		s.Screw = 0
		return
	}
	s.Screws = 2
	for i := 1; i < len(f.Ribs); i++ {
		bay := f.Ribs[i].Station - f.Ribs[i-1].Station
		n := math.Ceil(bay / mostApart)
		s.Screws, s.Apart = s.Screws+int(n), math.Max(s.Apart, bay/n)
	}
}

// drain places the drain beside the keel, between two ribs where the keel is lowest.
func (f *Fit) drain(fr *frame.Frame) {
	if !f.Drain {
		return
	}
	ribs := fr.Ribs
	i := len(ribs) / 2
	f.DrainAt = (ribs[i-1].Station + ribs[i].Station) / 2
	f.pad = geometry.Point3{X: f.DrainAt, Y: float64(fr.Design.Keel.Width)/2 + PadAcross/2, Z: fr.Keel.Line.Point(f.DrainAt).Z}
}
