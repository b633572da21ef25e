package flotation

import (
	"fmt"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
)

// Straps, m and kg a meter. Estimates.
const (
	strapLong  = 1.2
	strapMass  = 0.022
	strapDense = 950.0 // kg/m3, polypropylene
)

// Kit lists what the flotation is bought as.
func (f Fit) Kit() kit.Kit {
	k := kit.Kit{Name: "flotation"}
	for _, b := range f.Bags {
		if b.Liters == 0 {
			continue
		}
		b.At.Y = 0 // the sides are a pair
		t := kit.Thing{Group: Group, Key: "foam", Name: "closed-cell foam", Amount: b.Liters, Unit: "l", Mass: b.Mass, At: b.At, Dense: 30,
			How: fmt.Sprintf("%.0f l of flotation, %s", b.Liters, b.Where)}
		if !b.Foam {
			t.Key, t.Name, t.Dense = "float-bag", "float bags for the ends", 1000*bagMass
		}
		straps := float64(b.Straps) * strapLong
		k.Things = append(k.Things, t, kit.Thing{Group: Group, Key: "strap", Name: "webbing of 25 mm with buckles", Amount: straps, Unit: "m",
			How: fmt.Sprintf("%d straps of flotation, %s", b.Straps, b.Where), Mass: straps * strapMass, Dense: strapDense, At: b.At})
		k.Works = append(k.Works, kit.Work{Name: "cut, strap and try flotation, " + b.Where, Count: 1, Unit: "piece", Minutes: 30})
	}
	return k
}

// Roughly returns what flotation weighs before there is a frame, kg, for the people and
// gear of a design whose own parts lift what the item says. Three straps a piece are an
// estimate, and so is that there is room for all of it.
func Roughly(d *design.Design, own weight.Item) float64 {
	people, gear := 0.0, 0.0
	for _, p := range crew(d) {
		people += p.Mass
	}
	for _, g := range d.Gear {
		gear += g.Mass
	}
	need := NeedOf([]weight.Item{own}, people, gear).Seat
	const pair = 2 * 3 * strapLong * strapMass
	sides, ends := d.Inside.Flotation.Sides(), d.Inside.Flotation.Ends()
	switch {
	case need == 0 || !sides && !ends:
		return 0
	case sides && ends:
		return need*(atSides*foamMass+atEnds*bagMass) + 2*pair
	case sides:
		return reserve*need*foamMass + pair
	}
	return reserve*need*bagMass + pair
}
