package sail

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/finding"
	"ribwright/geometry/outfit/clip"
)

// Pitch is how far the gunwales under the partner rise forward, radians: the partner lies
// on them, and the mast stands plumb.
func (f *Fit) Pitch() float64 {
	z := func(x float64) float64 { inner, _ := f.Boat.GunwaleTop(x); return inner.Z }
	return math.Atan((z(f.Mast.At+PartnerWide/2) - z(f.Mast.At-PartnerWide/2)) / PartnerWide)
}

// BedPitch is how far the ribs beside the mast rise forward, radians: the bed lies on them.
func (f *Fit) BedPitch() float64 {
	a, b := f.beside()
	return math.Atan((f.Boat.Floor(b) - f.Boat.Floor(a)) / (b - a))
}

// beside returns the stations of the ribs behind and before the mast.
func (f *Fit) beside() (aft, fore float64) {
	all := f.Boat.Frame.Ribs
	i := 1
	for i < len(all)-1 && all[i].Station < f.Mast.At {
		i++
	}
	return all[i-1].Station, all[i].Station
}

// BoxHigh is the height of a side of the box where it meets the partner's edge, mm: from
// the bed to the partner's upper face, before the mast (1) or behind it (-1).
func (f *Fit) BoxHigh(way float64) float64 {
	rise := math.Tan(f.Pitch()) - math.Tan(f.BedPitch())
	return f.Mast.PartnerZ + PartnerThick/2 - f.Mast.StepZ + way*PartnerWide/2*rise
}

// BedLeast is how thin the bed's edges become when its lower face is planed to the ribs, its
// middle lying hard on those beside the mast, mm.
func (f *Fit) BedLeast() float64 {
	least := BedThick
	slope := math.Tan(f.BedPitch())
	near, _ := f.beside()
	for _, r := range f.Bed.Ribs {
		line := f.Boat.Floor(near) + slope*(r.Station-near)
		for _, p := range r.Inner.Flatten(0.1) {
			if p.X <= BedWide/2 {
				least = math.Min(least, BedThick-(p.Y-line))
			}
		}
	}
	return least
}

// Lashes are where cord goes through the bed beside a rib, from the rib's middle and the
// boat's, mm: it must clear the keel under the rib. LashHole is how wide.
func (f *Fit) Lashes() geometry.Point {
	wide := 0.0
	for _, r := range f.Bed.Ribs {
		wide = math.Max(wide, f.Boat.Frame.KeelHalf(r.Station))
	}
	return geometry.Pt(float64(f.Boat.Frame.Design.Ribs.Width)/2+LashHole, math.Min(wide+12, BedWide/2-12))
}

// Lashed are the ribs that the bed is lashed to: those beside the box, which stands on the rest.
func (f *Fit) Lashed() (out []frame.Rib) {
	for _, r := range f.Bed.Ribs {
		if math.Abs(r.Station-f.Mast.At)-f.Lashes().X-LashHole >= StepLong/2+BoxThick {
			out = append(out, r)
		}
	}
	return out
}

// LashHole is the hole for the cord of a lashing, mm.
const LashHole = 6.0

// clipEdge is how near the partner's edge the bolt of a clip stands at least, and clipsFrom how far it wants to be from the middle, mm.
const (
	clipEdge  = 15.0
	clipsFrom = 40.0
)

// Clips are the partner's clips on one side, the fore one first; false when one meets a rib's head.
func (f *Fit) Clips() (out [PartnerClips / 2]clip.Clip, clear bool) {
	at, clear := f.Mast.At, true
	for i, way := range []float64{1, -1} {
		a, b := at+way*clipEdge, at+way*(PartnerWide/2-clipEdge)
		c, ok := clip.Near(f.Boat.Frame, at+way*clipsFrom, math.Min(a, b), math.Max(a, b))
		out[i], clear = c, clear && ok
	}
	return out, clear
}

// BracketClip is the bracket's clip on one side, as near to where the lead wants the
// leeboard as the heads of ribs and what hangs on the gunwales let it.
func (f *Fit) BracketClip() clip.Clip {
	pitch := float64(f.Boat.Frame.Design.Ribs.Pitch)
	c, _ := clip.Near(f.Boat.Frame, f.BracketAt(), f.BracketAt()-pitch, f.BracketAt()+pitch)
	return c
}

// foamed names the side foam that a clip needs a notch in.
func (f *Fit) foamed(c clip.Clip) string {
	if b, foam := f.Boat.SideFoam(c.Hole.X-clip.Wide, c.Hole.X+clip.Wide); foam {
		return foamName(b)
	}
	return ""
}

func foamName(b flotation.Bag) string {
	if b.Number == 0 {
		return "the side foam"
	}
	return fmt.Sprintf("side foam %d", b.Number)
}

// judgeClips says what holds partner and bracket to the gunwales, and what is in their way.
func (f *Fit) judgeClips() {
	n, p := &f.Findings, f.Hold
	v, cure := finding.Holds, ""
	if !p.Holds() {
		v, cure = finding.Weak, ". That is too much: take a smaller sail or less wind"
	}
	n.Judge(v, "clips", finding.Estimate, "%s: the clips alone hold partner and bracket, hooked under its inner edge. One is pulled by %.0f N: its bolt by %.0f N, the hook bears %.1f N/mm2 of the %.1f asked of %s, the gunwale under it %.1f of the %.1f asked of %s across the grain%s. Draw every bolt tight again before each trip",
		clip.NoCord, p.Load, p.Bolt, p.Lip, p.Asked, f.Sail.Boards, p.Under, p.Dents, f.Boat.Frame.Design.Gunwale.Species, cure)
	all, clear := f.Clips()
	what := all[:]
	if f.Board.Area > 0 {
		b := f.BracketClip()
		what, clear = append(what, b), clear && b.Clear(f.Boat.Frame)
	}
	if !clear {
		n.Judge(finding.Unfit, "clips", finding.Arithmetic, "a clip meets the head of a rib: move the mast (outfit.sail.mast_at)")
	}
	var foam []string
	for _, c := range what {
		if s := f.foamed(c); s != "" && !strings.Contains(strings.Join(foam, " "), s) {
			foam = append(foam, s)
		}
	}
	if len(foam) > 0 {
		n.Say("clips", finding.Arithmetic, "clips reach into %s: notch it there, %.0f mm wide", strings.Join(foam, " and "), clip.Wide*2)
	}
	for _, fl := range f.Boat.Places.Inside.Floors {
		if aft, fore := f.Mast.At-f.Bed.Long/2, f.Mast.At+f.Bed.Long/2; fl.Aft < fore && fl.Fore > aft {
			n.Say("mast box", finding.Arithmetic, "the floor slats from %.0f to %.0f mm reach under the mast's bed, from %.0f to %.0f mm: lift them while the mast is in, or end them there", fl.Aft, fl.Fore, aft, fore)
		}
	}
}
