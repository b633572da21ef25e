package flotation

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/measure"
	"ribwright/geometry/water/awash"
	"ribwright/geometry/water/float"
)

// Bag is a piece of flotation: foam beside the people, or an air bag in an end.
type Bag struct {
	Where        string // "bow", "stern", "port side", "starboard side"; with a number where a side has several
	Number       int    // of a side piece, from aft; 0 where a side has one
	Foam         bool
	Liters       float64 // that it holds
	Aft, Fore    float64 // stations of its ends
	Across, Tall float64 // at its thickest
	Top          float64 // height of its upper face over the baseline, at its middle
	Straps       int
	Pull         float64       // N, that each strap and what it is tied to must hold
	Blocks       []awash.Block // that it is made of, each with its share of the mass
	Mass         float64
	At           geometry.Point3
	Wanted       float64 // liters that were asked for
	Room, ToRib  float64 // liters there is room for, and of it beyond the last rib; 0 at the sides
}

// Fit is the flotation of one boat.
type Fit struct {
	Need Need
	Bags []Bag // port side from aft, starboard side likewise, stern, bow
}

// Liters returns what all of it holds.
func (f Fit) Liters() float64 {
	sum := 0.0
	for _, b := range f.Bags {
		sum += b.Liters
	}
	return sum
}

// Wanted returns what there would be if there were room for all of it, liters: what the
// sides lack goes into the ends.
func (f Fit) Wanted() float64 {
	sides, ends, wanted := 0.0, 0.0, 0.0
	for _, b := range f.Bags {
		if b.Foam {
			sides, wanted = sides+b.Liters, wanted+b.Wanted
		} else {
			ends += b.Wanted
		}
	}
	if ends > 0 {
		return sides + ends
	}
	return wanted
}

// Sizes and places, mm. Our own choice.
const (
	under      = 10.0 // below the gunwale
	slice      = 50.0
	strapEvery = 350.0
	filled     = 0.8 // of the room in an end, that a bag fills
	step       = 1.0 // liters
	reserve    = 1.5 // times the need, in one place, for bags leak and people are seldom still
	atSides    = 1.5 // times the need at the sides of a boat that has some in the ends too
	atEnds     = 0.5 // and there
	strapSafe  = 2.0 // times the lift, on each strap
)

// Boat is what flotation is placed in: a covered frame with what else is inside it.
type Boat struct {
	Frame  *frame.Frame
	Cloth  *skin.Cloth
	Inside inside.Fit
}

// Of works out the flotation of a boat whose other parts are given.
func Of(b Boat, parts []weight.Item) Fit {
	d := b.Frame.Design
	out, where := Fit{Need: needAboard(d, parts)}, d.Inside.Flotation
	out.Bags = Placed(b, out.Need.Seat, where.Sides(), where.Ends())
	return out
}

// Placed puts half as much again as so many liters, net of what foam and bags weigh, at
// the sides or in the ends. In both, the sides have as much, so that the boat stays upright
// under people who sit on its floor, and the ends half the need besides; what the sides
// have no room for goes into the ends.
func Placed(b Boat, liters float64, sides, ends bool) (out []Bag) {
	toSides, toEnds := reserve*liters, reserve*liters
	if sides && ends {
		toSides, toEnds = atSides*liters, atEnds*liters
	}
	each := func(liters, mass float64) float64 { return math.Ceil(liters/2/(1-mass)/step) * step }
	if sides && liters > 0 {
		want := each(toSides, foamMass)
		out = append(out, sidesOf(b, want)...)
		toEnds += math.Max(0, 2*want-Fit{Bags: out}.Liters())
	}
	if ends && liters > 0 {
		for _, way := range []float64{-1, 1} {
			out = append(out, endOf(b.Frame, b.Cloth, each(toEnds, bagMass), way))
		}
	}
	return out
}

// wood is what stands inside the cloth's inner face where there are ribs, mm.
func wood(f *frame.Frame) float64 {
	d := f.Design
	return float64(d.Skin.Thickness() + d.Stringers.Depth + d.Ribs.Thickness)
}

// endOf fills an end, from the stem inward, with so many liters: as far as the last rib,
// and where that is too little on towards the people, never to within a hand of them.
func endOf(f *frame.Frame, c *skin.Cloth, liters, way float64) Bag {
	b := Bag{Where: "bow", Wanted: liters}
	e, rib := f.Hull.Bow, f.Ribs[len(f.Ribs)-1].Station
	limit := 0.0
	if way < 0 {
		b.Where, e, rib = "stern", f.Hull.Stern, -f.Ribs[0].Station
	}
	if aft, fore, ok := inside.Reach(f.Design); ok {
		limit = math.Max(0, way*map[bool]float64{true: fore, false: aft}[way > 0]) + 80
	}
	u := e.GunwaleX - float64(f.Design.Bow.Moulded)
	b.Aft, b.Fore = u, u
	for ; u-slice > limit; u -= slice {
		block := room(c.Hull, way*(u-slice/2), wood(f))
		v := block.Volume() * 1e-6
		if b.Room += v; u-slice >= rib {
			b.ToRib += v
		}
		if b.Liters >= liters || v == 0 {
			continue
		}
		if share := (liters - b.Liters) / v; share < 1 { // the last slice is as long as it takes
			block.Long *= share
			block.At.X = way * (u - block.Long/2)
		}
		b.Blocks = append(b.Blocks, block)
		b.Liters += block.Volume() * 1e-6
		b.Across, b.Tall = math.Max(b.Across, block.Wide/filled), math.Max(b.Tall, block.Tall)
		b.Aft, b.Fore = math.Min(b.Aft, u-block.Long), e.GunwaleX-float64(f.Design.Bow.Moulded)
	}
	if way < 0 {
		b.Aft, b.Fore = -b.Fore, -b.Aft
	}
	b.finish(bagMass)
	return b
}

// room is the slice of a bag that fits into the hull at a station, inside so much wood.
func room(h *float.Hull, x, wood float64) awash.Block {
	keel, sheer := h.Heights(x)
	low, high := keel+2*wood, sheer-2*under
	if high <= low {
		return awash.Block{At: geometry.Point3{X: x}}
	}
	const steps = 24
	area, moment := 0.0, 0.0
	for i := range steps {
		z := low + (high-low)*(float64(i)+0.5)/steps
		w := 2 * math.Max(0, h.Side(x, z)-wood) * filled
		area, moment = area+w*(high-low)/steps, moment+w*(high-low)/steps*z
	}
	if area == 0 {
		return awash.Block{At: geometry.Point3{X: x}}
	}
	z := moment / area
	tall := math.Min(high-low, 2*(high-z)) // a prism as high as keeps its middle and its top
	return awash.Block{Long: slice, Wide: area / tall, Tall: tall, At: geometry.Point3{X: x, Z: z}}
}

// StrapRibs names the ribs that the straps of a side piece are tied to, from aft: the
// nearest to places even along it, the outer ones a hand's width from its ends, and each
// but once while there are ribs.
func (b Bag) StrapRibs(f *frame.Frame) []string {
	in := math.Min(handWide, (b.Fore-b.Aft)/4)
	var taken []int
	for i := range b.Straps {
		want := b.Aft + in
		if b.Straps > 1 {
			want += float64(i) / float64(b.Straps-1) * (b.Fore - b.Aft - 2*in)
		}
		best := -1
		for k, r := range f.Ribs {
			if !slices.Contains(taken, k) && (best < 0 || math.Abs(r.Station-want) < math.Abs(f.Ribs[best].Station-want)) {
				best = k
			}
		}
		if best < 0 {
			break
		}
		taken = append(taken, best)
	}
	slices.Sort(taken)
	var out []string
	for _, k := range taken {
		out = append(out, f.Ribs[k].Name)
	}
	return out
}

// LaceRib names the rib that the cord over a bag's open face is laced to: the nearest that
// the bag does not reach.
func (b Bag) LaceRib(f *frame.Frame) string {
	if b.At.X < 0 {
		for _, r := range f.Ribs {
			if r.Station > b.Fore {
				return r.Name
			}
		}
	}
	for _, r := range slices.Backward(f.Ribs) {
		if r.Station < b.Aft {
			return r.Name
		}
	}
	return f.Nearest(b.At.X).Name
}

// handWide is a hand's width, mm.
const handWide = 100.0

// Loops is how many loops of webbing a piece wants on the bare frame: two for each strap, and
// for a bag one more round a rib beside the keel, which its cord is laced to.
func (b Bag) Loops() int {
	if b.Foam {
		return 2 * b.Straps
	}
	return 2*b.Straps + 1
}

// StrapLong is what one strap is cut to, m, to the next 0.05 m: over the face of foam and
// both ways to the ribs behind it, or across the top of a bag, with its buckle and an end to
// pull by.
func (b Bag) StrapLong() float64 {
	long := b.Across
	if b.Foam {
		long = 2*b.Across + b.Tall
	}
	return math.Ceil((long+buckled)/50-1e-9) / 20
}

// LaceLong is the cord that is laced over the open face of a bag, m, to the next half: four
// times across and down it.
func (b Bag) LaceLong() float64 { return math.Ceil(4*(b.Across+b.Tall)/500-1e-9) / 2 }

// buckled is what a strap takes at its buckle and to pull by, mm. Estimate.
const buckled = 250.0

// finish sums up what the blocks of a bag come to.
func (b *Bag) finish(perLiter float64) {
	b.Liters = 0
	for _, k := range b.Blocks {
		v := k.Volume() * 1e-6
		b.Liters += v
		b.At = b.At.Add(geometry.Point3{X: v * k.At.X, Y: v * k.At.Y, Z: v * k.At.Z})
		b.Top = math.Max(b.Top, k.At.Z+k.Tall/2)
	}
	if b.Liters == 0 {
		return
	}
	b.At = geometry.Point3{X: b.At.X / b.Liters, Y: b.At.Y / b.Liters, Z: b.At.Z / b.Liters}
	b.Mass = perLiter * b.Liters
	for i := range b.Blocks {
		k := &b.Blocks[i]
		k.Mass = b.Mass * k.Volume() / (b.Liters * 1e6)
	}
	b.Straps = max(2, int(math.Ceil((b.Fore-b.Aft)/strapEvery)))
	b.Pull = strapSafe * (b.Liters*fresh/1000 - b.Mass) * measure.Gravity
}
