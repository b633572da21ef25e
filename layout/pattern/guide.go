package pattern

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// leastBush is how much wider a guide bush is than its bit at the least, mm: half
// a millimetre of steel on each side. Common practice, no source.
const leastBush = 1.0

// How far a guide reaches past its opening, so that the router does not tip, and
// how wide its cheek is, mm. Common practice, no source.
const (
	guideFoot  = 60.0
	guideCheek = 30.0
)

// Guide returns a plate for routing the mortises and the cheek that is fixed
// under it: a bush of one diameter in the router's foot rides in the opening,
// and a bit of another cuts the slot. The opening is the slot and bush less bit
// each way, its corners as round as the bush. The line is the gunwale's edge: the
// cheek's face lies on it, and the short lines on the middle of the mortise. Lean
// the stock, not the guide.
//
// Units: mm. Errors: a bit wider than the slot, or a bush that does not go round
// the bit.
func Guide(f *frame.Frame, bush, bit float64) ([]layout.Part, error) {
	slot := f.Gunwale.Mortises[0]
	for _, m := range f.Gunwale.Mortises {
		slot.Length, slot.Width = math.Min(slot.Length, m.Length), math.Min(slot.Width, m.Width)
	}
	switch {
	case !(bit > 0 && bit <= slot.Width):
		return nil, fmt.Errorf("a bit of %.4g mm cannot cut a slot %.4g mm wide; accepted: a bit of at most %.4g mm", bit, slot.Width, slot.Width)
	case !(bush >= bit+leastBush && bush <= bit+f.Gunwale.Width-slot.Width):
		// A wider opening would reach past the gunwale's edge, where the cheek is.
		return nil, fmt.Errorf("a bush of %.4g mm does not suit a bit of %.4g mm on a gunwale %.4g mm wide; accepted: %.4g to %.4g mm",
			bush, bit, f.Gunwale.Width, bit+leastBush, bit+f.Gunwale.Width-slot.Width)
	}
	more := bush - bit
	long, wide := (slot.Length+more)/2, (slot.Width+more)/2
	mid := f.Gunwale.Width / 2
	reach, top := long+guideFoot, mid+wide+guideFoot
	opening := curve.Rounded(geometry.Rect(-long, mid-wide, long, mid+wide), bush/2)
	plate := layout.Part{Name: "router guide", Thickness: GaugeStock, Loose: true, Cut: []curve.Path{
		append(opening[1:], opening[0]), // the cut begins in a corner
		curve.Rectangle(geometry.Rect(-reach, -guideCheek, reach, top)),
	}}
	plate.Marks = []curve.Path{
		curve.Polyline(geometry.Point{X: -reach + 4}, geometry.Point{X: reach - 4}),
		curve.Polyline(geometry.Point{Y: mid - wide - 2}, geometry.Point{Y: mid - wide - 14}),
		curve.Polyline(geometry.Point{Y: mid + wide + 2}, geometry.Point{Y: mid + wide + 16}),
	}
	engrave(&plate, geometry.Point{Y: top - 12}, 0, fmt.Sprintf("router guide, bush %.4g, bit %.4g", bush, bit))
	engrave(&plate, geometry.Point{Y: top - 22}, 0, fmt.Sprintf("slot %.4g x %.4g mm", slot.Length, slot.Width))
	engrave(&plate, geometry.Point{X: -long - guideFoot/2, Y: 3}, 0, "gunwale's edge")
	engrave(&plate, geometry.Point{X: -long - guideFoot/2, Y: -guideCheek / 2}, 0, "cheek below")
	cheek := layout.Part{Name: "router guide's cheek", Thickness: GaugeStock, Loose: true, Cut: []curve.Path{
		curve.Rectangle(geometry.Box{Max: geometry.Point{X: 2 * reach, Y: guideCheek - 1}})}}
	engrave(&cheek, geometry.Point{X: reach, Y: (guideCheek - engraved) / 2}, 0, "router guide's cheek")
	return []layout.Part{plate, cheek}, nil
}
