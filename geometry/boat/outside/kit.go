package outside

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/design"
	"ribwright/geometry/wording"
)

// The entries of the list of weights.
const (
	strips   = "Outwales and keel strip"
	painters = "Painters"
	drain    = "Drain"
)

// What things weigh, kg: a screw of bronze, a meter of line, a drain with its cap and nut.
// Estimates.
const (
	screwMass = 0.0015
	lineMass  = 0.045
	drainMass = 0.06
)

// whipping is the thread for one end of a line of 8 mm, m: some twelve turns and tails.
// Estimate.
const whipping = 0.75

// stow is the cord from gunwale to gunwale that a painter is tucked under, m. Estimate.
const stow = 1.0

// perTube is how far a tube of bedding compound goes under strips of this width, m.
// Estimate.
const perTube = 12.0

// name is the kit's.
const name = "outside"

// Named reports whether a kit is what is outside the skin.
func Named(k kit.Kit) bool { return k.Own && k.Name == name }

// Kit lists what all of it is made of. A wood that is not known shows when the kit is
// weighed.
func (o Fit) Kit(f *frame.Frame) kit.Kit {
	k := kit.Kit{Name: name}
	if o.Outwale.There() {
		o.strip(&k, f, "outwale", 2, o.Outwale)
	}
	if o.Keel.There() {
		o.strip(&k, f, "keel strip", 1, o.Keel)
	}
	if long := (2*o.Outwale.Long + o.Keel.Long) / 1000; long > 0 {
		tubes := math.Ceil(long / perTube)
		k.Things = append(k.Things, kit.Thing{Group: strips, Key: "bedding", Name: "bedding compound that stays soft, tubes of 300 ml", Amount: tubes, Unit: "each",
			How: fmt.Sprintf("%.1f m of strips, a tube for %.0f m", long, perTube)})
	}
	if o.Painter > 0 {
		long := 2 * o.Painter / 1000
		k.Things = append(k.Things, kit.Thing{Group: painters, Key: "painter-line", Name: fmt.Sprintf("line of %g mm that floats, for painters", LineWide), Amount: long, Unit: "m",
			How: fmt.Sprintf("%.1f m at each end", o.Painter/1000), Mass: lineMass * long, At: o.top},
			kit.Thing{Group: painters, Key: "cord", Name: "lashing cord", Amount: stow * 2, Unit: "m", How: "to tuck the coiled painters under"},
			kit.Thing{Group: painters, Key: "thread", Name: "waxed thread", Amount: 4 * whipping, Unit: "m", How: fmt.Sprintf("%g m to whip each end of the painters", whipping), At: o.top})
		k.Works = append(k.Works, kit.Work{Name: "bore for painters", Count: 2, Unit: "holes", Minutes: 4, Bare: true},
			kit.Work{Name: "whip and tie painters", Count: 2, Unit: "painters", Minutes: 8})
	}
	if o.Drain {
		k.Pieces = append(k.Pieces, kit.Piece{Group: drain, Name: "drain pad", Count: 1, Wood: o.Wood, Long: PadAcross, Wide: PadAcross, Thick: PadThick, Fill: kit.Round, At: o.pad})
		k.Things = append(k.Things, kit.Thing{Group: drain, Key: "drain", Name: "drain with a flange and a screw cap", Amount: 1, Unit: "each", How: "beside the keel", Mass: drainMass, At: o.pad})
		k.Works = append(k.Works, kit.Work{Name: "bed the pad and the drain", Count: 1, Unit: "drain", Minutes: 30})
	}
	return k
}

// strip adds so many strips that are alike, their screws and the work on them.
func (o Fit) strip(k *kit.Kit, f *frame.Frame, name string, count int, s Strip) {
	k.Pieces = append(k.Pieces, kit.Piece{Group: strips, Name: name, Count: count, Form: kit.Beam, Wood: o.Wood,
		Long: s.Long, Wide: math.Max(s.Across, s.Tall), Thick: math.Min(s.Across, s.Tall), Fill: 1, At: s.At, Scarf: f.Design.Gunwale.ScarfSlope})
	n := float64(count)
	k.Works = append(k.Works, kit.Work{Name: "bend on, bed and screw each " + name, Count: n * s.Long / 1000, Unit: "m", Minutes: 7})
	if s.Screws != nil {
		k.Things = append(k.Things, kit.Thing{Group: strips, Key: "strip-screw", Name: fmt.Sprintf("bronze or stainless screws of %g mm", ScrewWide), Amount: n * float64(len(s.Screws)), Unit: "each",
			How: fmt.Sprintf("%s of %.0f mm in each %s", wording.Counted(len(s.Screws), "screw"), s.Screw, name), Mass: n * float64(len(s.Screws)) * screwMass, At: s.At})
	}
}

// Roughly returns what it takes before there is a frame: the wood, mm3, and what is bought,
// kg, for gunwales and a keel of such lengths, mm, and so many ribs.
func Roughly(d *design.Design, gunwale, keel float64, ribs int) (wood, bought float64) {
	o := d.Outside
	screws := 0
	if o.Outwale > 0 {
		wood += 2 * gunwale * float64(o.Outwale*o.OutwaleHeight)
		screws += 2 * (ribs + 1)
	}
	if o.KeelStrip > 0 {
		wood += keel * float64(o.KeelStrip*o.KeelStripWidth)
		screws += ribs + 1
	}
	bought = float64(screws)*screwMass + 2*float64(o.Painters)/1000*lineMass
	if o.Drain {
		bought += drainMass
	}
	return wood, bought
}
