package sail

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
	"ribwright/geometry/wording"
)

// The bed is a plank on ribs and keel under the mast's step; the box is two boards that
// join the step to the partner, before the mast and behind it, mm. Common practice, no
// source.
const (
	BedThick  = 16.0
	BedWide   = 120.0
	BoxThick  = 18.0
	rodsLeast = 50.0 // of a rod from the middle line
	rodRoom   = 16.0 // of its middle from a hole
	rodEdge   = 20.0 // and from the side's edge
	bedEnds   = 30.0 // beyond the last rib

	bedThinnest = 4.0 // of the bed's edges
)

// bedRibs are over how many ribs the bed reaches at least and at most. Our own choice.
const (
	leastRibs = 4
	mostRibs  = 8
)

// RodsAt is how far from the middle line the rods go that hold the box, mm: clear of
// the mast, or of both spars where they stand in the step.
func (f *Fit) RodsAt() float64 {
	out := f.Mast.Diameter / 2
	if f.Sail.Rig == design.Vee {
		out += f.Spread(f.Mast.StepZ + StepThick)
	}
	return math.Max(rodsLeast, math.Ceil(out)+rodRoom)
}

// BoxWide is how wide a side of the box is across the boat, mm.
func (f *Fit) BoxWide() float64 { return 2 * (f.RodsAt() + rodEdge) }

// Bed is how the mast's foot is held sideways. The box carries it up to the partner,
// which turns on the gunwales; ribs are a hundred times softer and share what they bend
// for as far as the box gives.
type Bed struct {
	Ribs    []frame.Rib // under the bed
	Long    float64     // of the bed, mm
	Share   float64     // N, of the step's load that the ribs and the keel take
	Stress  float64     // N/mm2, in the rib that bears it worst
	Asked   float64     // N/mm2, of the ribs' wood
	Partner float64     // N/mm2, in the partner beside the mast's hole
	Boards  float64     // N/mm2, asked of the boards
	Rod     float64     // N, on each rod at each side of the box
	Lift    float64     // N, up on one gunwale and down on the other
	Gives   float64     // mm, of the mast's foot
}

// layBed works out what box, partner and ribs bear, and lays the bed over as few ribs as
// carry their share.
func (f *Fit) layBed(boards, ribs timber.Species) {
	m, d := f.Mast, f.Boat.Frame.Design
	inner, outer := f.Boat.GunwaleTop(m.At)
	high, wide := m.PartnerZ-m.StepZ, inner.Y+outer.Y
	moment := m.Step * high
	clear := PartnerWide - m.Diameter - PartnerRoom
	b := Bed{Asked: beam.Working(ribs), Boards: beam.Working(boards), Lift: moment / wide, Rod: moment / (2 * f.RodsAt()) / 2}
	// A couple at the middle of a plank that rests on both ends: half of it on each side.
	b.Partner = moment / 2 / beam.Rectangle(clear, PartnerThick).Modulus
	plank, box := beam.Rectangle(PartnerWide, PartnerThick), beam.Rectangle(2*BoxThick, f.BoxWide())
	give := high*high*wide/(12*boards.MOE*plank.Inertia) + math.Pow(high, 3)/(3*boards.MOE*box.Inertia) // mm a newton
	all := f.Boat.Frame.Ribs
	fore := 0 // the first forward of the mast
	for fore < len(all)-1 && all[fore].Station < m.At {
		fore++
	}
	for n := leastRibs; n <= mostRibs; n += 2 {
		b.Ribs = all[max(0, fore-n/2):min(len(all), fore+n/2)]
		stiff := 0.0 // of all ribs together, N/mm
		for _, r := range b.Ribs {
			stiff += 1 / ribGives(r, float64(d.Ribs.Width), ribs.MOE)
		}
		b.Gives = m.Step / (stiff + 1/give)
		b.Share, b.Stress = stiff*b.Gives, 0
		far := 0.0
		for _, r := range b.Ribs {
			each := b.Gives / ribGives(r, float64(d.Ribs.Width), ribs.MOE)
			most, _ := sway(r)
			b.Stress = math.Max(b.Stress, each*most/beam.Rectangle(float64(d.Ribs.Width), r.Thickness).Modulus)
			far = math.Max(far, math.Abs(r.Station-m.At))
		}
		b.Long = 2 * math.Ceil(far+float64(d.Ribs.Width)/2+bedEnds)
		if b.Stress <= b.Asked {
			break
		}
	}
	f.Bed = b
}

// sway returns, of a rib whose middle is pushed aside, the greatest moment over the
// force, mm, and the integral along the rib of the square of that, mm3. Its heads are
// taken as hinges in the gunwales. Half of the force goes to each head by symmetry, and
// the couple of force and depth becomes a pull up and a push down over the beam, so
// statics alone give the moment at every place.
func sway(r frame.Rib) (most, squares float64) {
	pts := r.Outer.Flatten(0.1)
	keel, head := pts[0], pts[len(pts)-1]
	last := 0.0
	for i, q := range pts {
		arm := ((head.Y - q.Y) - (head.Y-keel.Y)*(head.X-q.X)/head.X) / 2
		most = math.Max(most, math.Abs(arm))
		if i > 0 { // both halves; a straight line between two places
			squares += 2 * q.Sub(pts[i-1]).Norm() * (arm*arm + arm*last + last*last) / 3
		}
		last = arm
	}
	return most, squares
}

// ribGives is how far a newton moves the middle of a rib aside, mm, by the work of
// bending (Castigliano).
func ribGives(r frame.Rib, wide, moe float64) float64 {
	_, squares := sway(r)
	return squares / (moe * beam.Rectangle(wide, r.Thickness).Inertia)
}

// Names lists ribs.
func Names(all []frame.Rib) string {
	return wording.List(all, func(r frame.Rib) string { return r.Name })
}

func (f *Fit) judgeBed() {
	b := f.Bed
	v, cure := finding.Holds, ""
	if f.BedLeast() < bedThinnest {
		f.Findings.Judge(finding.Unfit, "mast box", finding.Arithmetic, "planed to the ribs the bed would be %.0f mm thick at its edges: move the mast towards midship (outfit.sail.mast_at)", math.Max(0, f.BedLeast()))
	}
	if b.Stress > b.Asked || b.Partner > b.Boards {
		v, cure = finding.Weak, ". That is too much: take a smaller sail, less wind, or harder boards"
	}
	f.Findings.Judge(v, "mast box", finding.Estimate, "two boards join the step to the partner and carry the %.0f N sideways up to it: the partner then bears %.1f N/mm2 of the %.1f asked of %s, each rod %.0f N at each side of the box, and one gunwale is lifted by %.0f N, which its two clips hold. The bed under the step lies on ribs %s and is lashed to %s, beside the box; the foot gives %.1f mm, for which the ribs bear %.0f N together and %.1f N/mm2 of the %.1f asked of theirs%s",
		f.Mast.Step, b.Partner, b.Boards, f.Sail.Boards, b.Rod, b.Lift, Names(b.Ribs), Names(f.Lashed()), b.Gives, b.Share, b.Stress, b.Asked, cure)
}
