package design

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

func mm(v measure.Length) string { return short(float64(v)) }

func (d *Design) checkHull(c *checker) {
	h := d.Hull
	c.length("hull.keel_straight", h.KeelStraight, 0, 0.8*float64(h.Length))
	c.length("hull.waterline", h.Waterline, 20, float64(h.Depth))
	c.sameAft(d, "hull.rocker_stern", h.RockerStern, h.RockerBow)
	c.must(len(h.Sections) > 0, "hull.section", "is missing; give at least one [[hull.section]], at midship")
	if c.first == nil { // no more places than are accepted
		d.checkSpreaders(c)
		d.checkSections(c)
	}
}

// sameAft refuses a value for the stern of a symmetric design that is not the
// bow's: one of the two would be ignored.
func (c *checker) sameAft(d *Design, key string, stern, bow measure.Length) {
	c.must(!d.Hull.Symmetric || stern == bow, key,
		"%s mm is not the bow's %s mm in a symmetric design; leave it out, or set hull.symmetric = false", mm(stern), mm(bow))
}

func (d *Design) checkSpreaders(c *checker) {
	reach := float64(d.Hull.Length) / 2 * 0.95
	places := []measure.Length{0} // hull.beam holds midship
	for i, s := range d.Hull.Spreaders {
		key := fmt.Sprintf("hull.spreader.%d.", i)
		c.must(s.At != 0, key+"at", "is missing, or 0 mm, which is midship, where hull.beam already sets the width; give another place")
		places = append(places, s.At)
		c.place(d, key+"at", places, reach)
		least := 50.0
		if s.Tie {
			least = 20
		}
		c.length(key+"beam", s.Beam, least, 1500)
	}
}

func (d *Design) checkSections(c *checker) {
	var places []measure.Length
	for i, s := range d.Hull.Sections {
		key := fmt.Sprintf("hull.section.%d.", i)
		places = append(places, s.At)
		c.place(d, key+"at", places, float64(d.Hull.Length)/2)
		turn := s.BottomTurn + s.Flare + s.TopsideCurve
		c.must(turn < math.Pi/2, key+"bottom_turn",
			"%s deg, with flare %s deg and topside_curve %s deg, makes %s deg and leaves no turn for the bilge; accepted: less than 90 deg together",
			degrees(s.BottomTurn), degrees(s.Flare), degrees(s.TopsideCurve), degrees(turn))
	}
}

// place holds the last of the places to the reach of the boat and refuses one abaft
// midship in a symmetric design, where the after half is the image of the forward
// one. It keeps it at least 50 mm from those before it and from all images: a smooth
// curve through two places on top of one another would leap.
func (c *checker) place(d *Design, key string, places []measure.Length, reach float64) {
	at, mirrored := places[len(places)-1], d.Hull.Symmetric
	c.must(!mirrored || at >= 0, key, "%s mm is abaft midship in a symmetric design, where it is mirrored by itself; give it forward, positive", mm(at))
	c.length(key, at, -reach, reach)
	others := slices.Clone(places[:len(places)-1])
	for _, p := range places {
		if mirrored && p != 0 {
			others = append(others, -p)
		}
	}
	for _, o := range others {
		off := measure.Length(math.Abs(float64(at - o)))
		c.must(off >= 50, key, "%s mm is %s mm from the one at %s mm; accepted: at least 50 mm apart", mm(at), mm(off), mm(o))
	}
}

// mostLean is how far a stem head may lean inboard at its top: farther, the gunwales'
// ends find no wood to lie against. Our own choice.
const mostLean = measure.Angle(60 * math.Pi / 180)

func (d *Design) checkStem(c *checker, end string, s Stem) {
	c.must(s.Moulded < s.ForefootRadius, end+".moulded", "%s mm is not less than the forefoot radius %s mm, so the stem has no inner edge; accepted: less than that", mm(s.Moulded), mm(s.ForefootRadius))
	c.must(s.Siding >= d.Gunwale.Width, end+".siding",
		"%s mm is less than the gunwale width %s mm, so the gunwale ends would run into each other; accepted: the gunwale width or more", mm(s.Siding), mm(d.Gunwale.Width))
	c.must(s.Horn < s.Moulded, end+".horn", "%s mm is not less than the moulded depth %s mm, so no shelf is left for the gunwales; accepted: less than that", mm(s.Horn), mm(s.Moulded))
	c.must(s.HeadRadius == 0 || s.HeadRadius > s.Moulded, end+".head_radius", "%s mm is not more than the moulded depth %s mm, so the head has no inner edge; accepted: more than that, or 0 mm", mm(s.HeadRadius), mm(s.Moulded))
	c.must(s.HeadTurn-s.Rake <= mostLean+1e-9, end+".head_turn", "%s deg over a rake of %s deg leans the head %s deg inboard at its top; accepted: up to %s deg",
		degrees(s.HeadTurn), degrees(s.Rake), degrees(s.HeadTurn-s.Rake), degrees(mostLean+s.Rake))
}

func (d *Design) checkGunwale(c *checker) {
	g := d.Gunwale
	half := float64(d.Hull.Length) / 2
	c.sameAft(d, "gunwale.edge_set_stern", g.EdgeSetAft, g.EdgeSetBow)
	c.length("gunwale.edge_set_from", g.EdgeSetFrom, 0, half*0.8)
	most := max(g.EdgeSetBow, g.EdgeSetAft)
	c.must(g.EdgeSetMade <= most, "gunwale.edge_set_made", "%s mm is more than the edge-set, which rises %s mm; accepted: up to that", mm(g.EdgeSetMade), mm(most))
	for _, s := range g.Scarfs {
		c.length("gunwale.scarfs", s, -half, half)
	}
	switch g.Glued {
	case GluedStraight:
	case GluedBent, GluedOnForm:
		c.must(g.Plies >= 2, "gunwale.glued", "%q needs at least 2 plies, and gunwale.plies is %d; a single one springs back straight", g.Glued, g.Plies)
	default:
		c.must(false, "gunwale.glued", "%q is no way of gluing; accepted: straight, bent, form", wording.Clip(g.Glued, 40))
	}
}

func (d *Design) checkRibs(c *checker) {
	r, g := d.Ribs, d.Gunwale
	c.must(r.Thickness <= g.Width/2, "ribs.thickness", "%s mm is more than half the gunwale width %s mm; accepted: up to %s mm", mm(r.Thickness), mm(g.Width), mm(g.Width/2))
	c.must(r.Pitch >= r.Width+25, "ribs.pitch", "%s mm leaves less than 25 mm of gunwale between mortises for ribs %s mm wide; accepted: %s mm or more", mm(r.Pitch), mm(r.Width), mm(r.Width+25))
	most := float64(d.Hull.Length) * 0.4
	c.length("ribs.from_bow", r.FromBow, 25, most)
	c.length("ribs.from_stern", r.FromStern, 25, most)
	c.sameAft(d, "ribs.from_stern", r.FromStern, r.FromBow)
	c.length("ribs.mortise_depth", r.MortiseDepth, 4, 0.8*float64(g.Height))
	c.length("ribs.tenon_gap", r.TenonGap, 0, float64(r.MortiseDepth)/2)
	d.checkStems(c)
}

func (d *Design) checkStringers(c *checker) {
	at := d.Stringers.At
	c.must(len(at) > 0 && len(at) <= 20, "stringers.at", "has %d stringers a side; accepted: 1 to 20, as [0.3, 0.6]", len(at))
	for i, f := range at {
		c.must(f > 0 && f < 1, "stringers.at", "%s is out of range; accepted: more than 0 (at the keel) and less than 1 (at the gunwale)", short(f))
		c.must(i == 0 || f > at[i-1], "stringers.at", "%s stands after %s; accepted: shares that rise from the keel up", short(f), short(at[max(0, i-1)]))
	}
}

func (d *Design) checkFittings(c *checker) {
	b, reach := d.Breasthook, float64(d.Hull.Length)/2*0.9
	c.length("breasthook.thickness", b.Thickness, 3, math.Min(50, float64(d.Gunwale.Height)*math.Cos(float64(d.Gunwale.Tilt))))
	c.length("breasthook.hollow", b.Hollow, 0, float64(b.Length)/2)
	for i, t := range d.Thwarts {
		c.length(fmt.Sprintf("thwart.%d.at", i), t.At, -reach, reach)
		c.must(t.Waist <= t.Width, fmt.Sprintf("thwart.%d.waist", i), "%s mm is wider than its ends, %s mm; accepted: up to their width", mm(t.Waist), mm(t.Width))
	}
	d.checkSeats(c, reach)
	d.checkCrew(c, reach)
	for i, g := range d.Gear {
		c.length(fmt.Sprintf("gear.%d.at", i), g.At, -reach, reach)
	}
}

func (d *Design) checkOutfit(c *checker) {
	o, length := d.Fitted(), float64(d.Hull.Length)
	if s := o.Sail; s != nil {
		c.length("outfit.sail.mast_at", s.MastAt, -length*0.4, length*0.4)
	}
	if p := o.Pair; p != nil && p.Spacing != 0 {
		c.length("outfit.pair.spacing", p.Spacing, float64(d.Hull.Beam), length*1.5)
	}
	if p := o.Pair; p != nil && p.Apart != 0 {
		c.length("outfit.pair.apart", p.Apart, length*0.15, length*0.7)
	}
	if p := o.Pair; p != nil {
		c.must(p.Purpose != Unsaid || p.Spacing != 0, "outfit.pair.purpose", "is not said; accepted: moving (river and current, middle lines about 1.4 m apart), open or sail (half the length of the boat apart), or a spacing of your own")
	}
	if r := o.Row; r != nil {
		c.must(r.Oar == 0 || r.Oar > r.Span, "outfit.row.oar", "%s mm is no longer than the span of %s mm; accepted: about twice the span", mm(r.Oar), mm(r.Span))
		c.length("outfit.row.seat_at", r.SeatAt, -length*0.3, length*0.3)
	}
}
