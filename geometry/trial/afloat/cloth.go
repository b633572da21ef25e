package afloat

import (
	"fmt"

	"ribwright/geometry/boat/skin"
	"ribwright/geometry/finding"
)

// findCloth tells of ribs that stand outside the flat cloth: it lies on them, so
// the volume worked out between the stringers is a little less than the boat's.
func (r *Report) findCloth() {
	f := r.Boat.Frame
	if f == nil {
		return
	}
	c := skin.ClearanceOf(f)
	r.Clearance = c
	if len(c.Proud) == 0 {
		return
	}
	worst := c.Nearest
	mm := func(v float64) string { return fmt.Sprintf("%.1f mm", v) }
	text := fmt.Sprintf("between %s the cloth lies on ribs instead of spanning flat: rib %s stands %s out of it, the most of %s. Ribs then show and chafe the cloth, and the boat floats a little higher than worked out here",
		worst.Between(f), worst.Rib, mm(worst.By), skin.Runs(f, c.Proud))
	if c.Cure != nil {
		text += fmt.Sprintf("; to keep all ribs %s inside it, %s", mm(-c.Cure.By), c.Cure.Words(f.Design, mm))
	}
	r.Findings.Say("skin", finding.Arithmetic, "%s", text)
}
