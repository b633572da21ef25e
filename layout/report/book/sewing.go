package book

import (
	"fmt"
	"math"

	"ribwright/geometry/fabric"
	"ribwright/geometry/shop/materials"
)

// pastSeam is what is left beyond the stitches of a stem for its fell, mm. Common practice.
const pastSeam = 15.0

// sewing is the cloth from the roll to the last tack.
func (w *writer) sewing() []string {
	c, out := w.Needs.Cloth, []string(nil)
	if c.Sheets > 1 {
		out = append(out, w.joining())
	}
	if w.trims() {
		out = append(out, fmt.Sprintf("Trim the sheet to %s, as much off one edge as off the other.", w.Length(c.Wide)))
	}
	out = append(out,
		"Turn the frame upside down, level. Draw the middle thread along the whole sheet with a soft pencil, and its middle. Draw the marks of the table, a short line at each rib on either side, with the rib's name.",
		w.layOn())
	out = append(out,
		"Tack amidships on one side, "+w.tackDown()+" under the gunwale's upper edge with the rib's mark on that edge, over the heads of the ribs"+w.covered()+". "+w.noTacks()+w.drawOver()+" Work outward, a rib toward the bow, a rib toward the stern, one side and then the other, and stop at the last ribs. At each rib draw the slack toward the end first, by hand, and then across. The tacks between two ribs, every "+w.Length(materials.TackPitch)+", follow when both are in.",
		"Pin both sides together along each stem's middle line, from the forefoot, where the stem turns up, to its head; they meet on the curves of the figure. "+w.slack(),
		fmt.Sprintf("Sew %s at the after end and %s at the fore end, from the forefoot to the stem's head: a backstitch of %s through both sides, close to the wood.%s", w.Letters.Units.Rough(c.Ends[0]), w.Letters.Units.Rough(c.Ends[1]), w.Length(6), w.pleatsDown()),
		fmt.Sprintf("Trim to %s beyond the stitches, fold one edge over the other and turn both down to one side; whip the fold down every %s. That is a flat fell: no raw edge is left, and the coats seal it.", w.Length(pastSeam), w.Length(8)))
	return append(out, "Draw both ends over in the same way and tack them along the gunwales. Do not cut the cloth there yet: you pull by it once more.")
}

// trims reports whether the roll is wider than the sheet.
func (w *writer) trims() bool { return w.Needs.Cloth.Sewn()-w.Needs.Cloth.Wide >= 1 }

// noTacks keeps tacks off the bolts that go down through the gunwales.
func (w *writer) noTacks() string {
	if len(w.Frame.Thwarts) == 0 && !w.hungSeats() {
		return ""
	}
	return "Set no tack within " + w.Length(10) + " of a bolt. "
}

func (w *writer) joining() string {
	c := w.Needs.Cloth
	where := "one along the keel, where the strip under the keel covers it"
	if c.Sheets > 2 {
		where = "along the boat"
	}
	return fmt.Sprintf("No roll that is sold covers the boat in one. Cut %d lengths of %s and sew them side by side, %s: lap them by %s and sew two rows of stitches of %s, each %s from an edge.",
		c.Sheets, w.Length(c.Length), where, w.Length(materials.JoinLap), w.Length(4), w.Length(5))
}

// layOn is how the sheet comes on the frame.
func (w *writer) layOn() string {
	how := map[fabric.Fiber]string{
		fabric.Polyester: "smooth and dry: heat does the pulling later.",
		fabric.Nylon:     "damp: wet it, wring it out, and work while it is damp, for damp nylon is longest and drums when it dries.",
		fabric.Cotton:    "dry: wetting it at the end shrinks it.",
	}[w.fiber()]
	return fmt.Sprintf("Lay the sheet over with its middle thread on the keel and as much beyond one stem as beyond the other, %s or more. Lay it on %s", w.Handy(materials.GripLength/2), how)
}

// drawOver says how hard the other side is pulled.
func (w *writer) drawOver() string {
	p := w.Needs.Cloth.Pull
	return fmt.Sprintf("Pull the other side over until the mark stands on the edge: at the girth that is %s in all, by common practice for %s; the middle thread comes to lie on the keel again; pull with flat pliers, not with the tacks.", w.Length(math.Max(1, p)), w.fiber())
}

// tackDown is how far tacks stand under the gunwale's upper edge: half-way down the wood that
// is whole above the mortises.
func (w *writer) tackDown() string {
	g := &w.Frame.Gunwale
	whole := g.Height
	for _, m := range g.Mortises {
		whole = math.Min(whole, g.Height-m.Depth)
	}
	return w.Letters.Units.Whole(math.Floor(whole / 2))
}

// covered says what hides the tacks.
func (w *writer) covered() string {
	if w.Bend.Outside.Outwale.There() {
		return ", where the outwale will cover it"
	}
	return ""
}

// slack says what becomes of what the cloth has too much along the keel.
func (w *writer) slack() string {
	c, rough := w.Needs.Cloth, w.Letters.Units.Rough
	text := fmt.Sprintf("The way along a gunwale is %s longer than along the keel: so much the cloth is slack along the bottom. ", rough(c.Slack))
	if c.Pleats == 0 {
		return text + fmt.Sprintf("Drawn taut, %s takes all of it up: lay no pleats.", w.fiber())
	}
	return text + fmt.Sprintf("Drawn taut, %s takes up %s. Lay the rest now, before the seam is sewn, in pleats from the stem's seam toward the gunwale, between the stem and the last rib: %s of %s on either side at each end. Pin them down.", w.fiber(), rough(c.TakesUp), fmt.Sprint(c.Pleats), w.Length(c.Pleat))
}

// pleatsDown ends the sewing of the seams.
func (w *writer) pleatsDown() string {
	if w.Needs.Cloth.Pleats == 0 {
		return ""
	}
	return " Sew through the pleats where they start, then sew each down flat along its fold."
}
