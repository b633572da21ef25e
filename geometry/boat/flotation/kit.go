package flotation

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wording"
)

// strapLong is a strap with its loops where there is no frame yet, m. Estimate.
const strapLong = 1.6

// The minutes of a piece of foam, of a bag, and of a loop on the bare frame. Common
// practice, no source.
const (
	minutesFoam = 25.0
	minutesBag  = 15.0
	minutesLoop = 2.0
)

// Kit lists what the flotation is bought as, foam and bags each with its middle.
func (f Fit) Kit() kit.Kit {
	k := kit.Kit{Name: "flotation"}
	foam := f.sum(func(b Bag) bool { return b.Foam })
	bags := f.sum(func(b Bag) bool { return !b.Foam })
	if foam.pieces > 0 {
		k.Things = append(k.Things,
			kit.Thing{Group: Group, Key: "foam", Name: "closed-cell foam", Amount: math.Ceil(foam.Liters * foamWaste), Unit: "L", Mass: foam.Mass, At: foam.At, Dense: 1000 * foamMass, How: fmt.Sprintf("%s, %.0f L when they are shaped, a quarter more for taper and round edges; sheets of %.0f mm", wording.Counted(foam.pieces, "side piece"), foam.Liters, FoamSheet)},
			kit.Thing{Group: Group, Key: "foam-glue", Name: "glue for foam, tins of 0.5 l", Amount: math.Ceil(foam.Liters / glueCovers), Unit: "each", How: "layers of side pieces", At: foam.At})
		k.Works = append(k.Works, kit.Work{Name: "cut, glue and strap side pieces of flotation", Count: float64(foam.pieces), Unit: "pieces", Minutes: minutesFoam})
	}
	if bags.pieces > 0 {
		k.Things = append(k.Things, kit.Thing{Group: Group, Key: "float-bag", Name: "float bags for the ends", Amount: bags.Liters, Unit: "L", Mass: bags.Mass, At: bags.At, Dense: 1000 * bagMass, How: wording.Counted(bags.pieces, "bag")},
			kit.Thing{Group: Group, Key: "cord", Name: "lashing cord", Amount: bags.lace, Unit: "m", How: "to lace " + wording.Counted(bags.pieces, "float bag")})
		k.Works = append(k.Works, kit.Work{Name: "place and strap float bags", Count: float64(bags.pieces), Unit: "bags", Minutes: minutesBag})
	}
	if n := foam.loops + bags.loops; n > 0 {
		k.Works = append(k.Works, kit.Work{Name: "tie loops of webbing for the straps of flotation, as Inside says", Count: float64(n), Unit: "loops", Minutes: minutesLoop, Bare: true})
	}
	for _, g := range []group{foam, bags} {
		if long := g.webbing + float64(g.loops)*inside.LoopLong; long > 0 {
			k.Things = append(k.Things, kit.Webbing(Group, long,
				fmt.Sprintf("%s for flotation, %.1f m in all, as many buckles; %s of %.2f m", wording.Counted(g.Straps, "strap"), g.webbing, wording.Counted(g.loops, "loop"), inside.LoopLong), g.At))
		}
	}
	return k
}

// glueCovers is how many liters of foam in layers a tin of glue is good for. Estimate.
const glueCovers = 60.0

// FoamSheet is the thickness of sheets that side pieces are glued from, mm, as it is sold;
// foamWaste is what is bought for what is fitted. Common practice, no source.
const (
	FoamSheet = 50.0
	foamWaste = 1.25
)

// group is several pieces together.
type group struct {
	Bag
	pieces, loops int
	webbing, lace float64 // m of straps without their loops, and of cord
}

// sum adds up the pieces of a kind that hold anything.
func (f Fit) sum(of func(Bag) bool) (g group) {
	var loads []float.Load
	for _, b := range f.Bags {
		if b.Liters == 0 || !of(b) {
			continue
		}
		g.pieces++
		g.Liters, g.Straps = g.Liters+b.Liters, g.Straps+b.Straps
		g.loops, g.webbing, g.lace = g.loops+b.Loops(), g.webbing+float64(b.Straps)*b.StrapLong(), g.lace+b.LaceLong()
		loads = append(loads, float.Load{Mass: b.Mass, At: b.At})
	}
	all := float.Total(loads...)
	g.Mass, g.At = all.Mass, all.At
	g.At.Y = 0 // the sides are a pair, to the last bit
	return g
}

// Roughly is an estimate of what flotation weighs, kg, where there is no frame yet to place
// it in, for the people and gear of a design whose own parts lift what the item says: it
// takes eight straps for a side and two for a bag, and room for all of it. Within a fifth
// of what the finished boats of the families have.
func Roughly(d *design.Design, own weight.Item) float64 {
	need := needAboard(d, []weight.Item{own}).Seat
	const foamStraps, bagStraps = 2 * 8 * strapLong * kit.WebbingMass, 2 * 2 * strapLong * kit.WebbingMass
	sides, ends := d.Inside.Flotation.Sides(), d.Inside.Flotation.Ends()
	switch {
	case need == 0 || !sides && !ends:
		return 0
	case sides && ends:
		return need*(atSides*foamMass+atEnds*bagMass) + foamStraps + bagStraps
	case sides:
		return reserve*need*foamMass + foamStraps
	}
	return reserve*need*bagMass + bagStraps
}
