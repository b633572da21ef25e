// Package outside is what goes on a boat outside its skin: outwales over the tacks, the
// strip under the keel, painters, a drain. Units: mm, kg.
package outside

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/wood/fasten"
)

// Strip is a batten outside the skin.
type Strip struct {
	Across, Tall, Long float64   // off the skin, along it, and the finished length; 0 for none
	From, To           float64   // its ends, along the gunwale's stock or the keel from midship
	Screws             []float64 // where they stand, along the same; none where the wood under it is too thin
	Screw              float64   // length of one
	Into               float64   // how deep it goes into the wood under the skin
	Pilot              float64   // the hole for its thread, in half millimeters as drills come
	Apart              float64   // the farthest that two neighbors stand from one another
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
	Drain   bool
	DrainAt float64 // station of the drain, between two ribs at the lowest place

	top geometry.Point3 // between the painters
	pad geometry.Point3 // of the drain
}

// What is put on outside, mm. Common practice, no source.
const (
	ScrewWide = 3.5
	LineWide  = 8.0  // of painters
	Feather   = 60.0 // over so much the keel strip is thinned to nothing at either end
	PadAcross = 70.0 // of the drain's pad, round
	PadThick  = 8.0
)

// Of works out what the design of a frame has outside, clear of what its joints drive in.
func Of(f *frame.Frame, driven joint.Driven) Fit {
	d := f.Design.Outside
	out := Fit{Wood: f.Design.OutsideWood(), Painter: float64(d.Painters), Drain: d.Drain}
	skin := float64(f.Design.Skin.Thickness())
	if d.Outwale > 0 {
		out.Outwale = Strip{Across: float64(d.Outwale), Tall: float64(d.OutwaleHeight)}
		out.Outwale.Long, out.Outwale.At = alongGunwale(f, out.Outwale.Tall/2)
		out.Outwale.screwed(alongOutwale(f, driven), skin, f.Gunwale.Width, hard(f, f.Design.Gunwale.Species))
	}
	if d.KeelStrip > 0 {
		out.Keel = Strip{Across: float64(d.KeelStrip), Tall: float64(d.KeelStripWidth), Long: f.Keel.Fore - f.Keel.Aft}
		out.Keel.At = underKeel(f, out.Keel.Across/2)
		out.Keel.screwed(alongKeel(f, driven), skin, float64(f.Design.Keel.Depth), hard(f, f.Design.Keel.Species))
	}
	aft, fore := -f.Hull.Stern.GunwaleX, f.Hull.Bow.GunwaleX
	out.top = geometry.Point3{X: (fore + aft) / 2, Z: (f.Gunwale.Outer(fore)[1].Y + f.Gunwale.Outer(aft)[1].Y) / 2}
	out.drain(f)
	return out
}

// hard tells whether a wood is; one that is not known shows when the kit is weighed.
func hard(f *frame.Frame, name string) bool {
	wood, _ := f.Design.Wood(name)
	return wood.Hard
}

// EdgeShort is how much wider the strip must be for its screws, in the middle of its breadth, to
// stand as far from its edges as they should, mm; 0 or less where they do. A strip flush with a
// gunwale's top has the gunwale's edge there too.
func (s Strip) EdgeShort() float64 {
	if s.Screws == nil {
		return 0
	}
	return 2*fasten.Remembered().ScrewEdge*ScrewWide - s.Tall
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
