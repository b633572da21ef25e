package design

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/measure"
)

func (d *Design) checkHull(c *checker) {
	h := d.Hull
	c.length("hull.length", h.Length, 2000, 9000)
	c.length("hull.beam", h.Beam, 400, 1500)
	c.length("hull.depth", h.Depth, 150, 700)
	c.length("hull.keel_straight", h.KeelStraight, 0, 0.8*float64(h.Length))
	c.length("hull.rocker_bow", h.RockerBow, 0, 250)
	c.length("hull.rocker_stern", h.RockerStern, 0, 250)
	c.length("hull.waterline", h.Waterline, 20, float64(h.Depth))
	c.sameAft(d, "hull.rocker_stern", h.RockerStern, h.RockerBow)
	d.checkSpreaders(c)
	d.checkSections(c)
}

// sameAft refuses a value for the stern of a symmetric design that is not the
// bow's: one of the two would be ignored.
func (c *checker) sameAft(d *Design, key string, stern, bow measure.Length) {
	c.must(!d.Hull.Symmetric || stern == bow, key,
		"%s mm is not the bow's %s mm in a symmetric design; leave it out, or set hull.symmetric = false", short(float64(stern)), short(float64(bow)))
}

// most is how many spreaders or sections are read, several times what a boat
// has ribs to hold.
const most = 40

func (d *Design) checkSpreaders(c *checker) {
	half := float64(d.Hull.Length) / 2
	c.must(len(d.Hull.Spreaders) <= most, "hull.spreader", "%d are given; accepted: up to %d", len(d.Hull.Spreaders), most)
	if c.first != nil {
		return
	}
	places := []measure.Length{0} // hull.beam holds midship
	for i, s := range d.Hull.Spreaders {
		key := fmt.Sprintf("hull.spreader.%d.", i)
		c.must(s.At != 0, key+"at", "is missing, or 0 mm, which is midship, where hull.beam already sets the width; give another place")
		c.forward(d, key+"at", s.At)
		c.length(key+"at", s.At, -half*0.95, half*0.95)
		least := 50.0
		if s.Tie {
			least = 20
		}
		c.length(key+"beam", s.Beam, least, 1500)
		places = append(places, s.At)
		c.apart(key+"at", places, d.Hull.Symmetric)
	}
}

func (d *Design) checkSections(c *checker) {
	half := float64(d.Hull.Length) / 2
	c.must(len(d.Hull.Sections) > 0, "hull.section", "is missing; give at least one [[hull.section]], at midship")
	c.must(len(d.Hull.Sections) <= most, "hull.section", "%d are given; accepted: up to %d", len(d.Hull.Sections), most)
	if c.first != nil {
		return
	}
	var places []measure.Length
	for i, s := range d.Hull.Sections {
		key := fmt.Sprintf("hull.section.%d.", i)
		c.forward(d, key+"at", s.At)
		c.length(key+"at", s.At, -half, half)
		c.angle(key+"bottom_turn", s.BottomTurn, 0, 60)
		c.length(key+"bilge_radius", s.BilgeRadius, 20, 1000)
		c.angle(key+"flare", s.Flare, -30, 45)
		c.angle(key+"topside_curve", s.TopsideCurve, 0, 60)
		turn := s.BottomTurn + s.Flare + s.TopsideCurve
		c.must(turn < math.Pi/2, key+"bottom_turn",
			"%s deg, with flare %s deg and topside_curve %s deg, makes %s deg and leaves no turn for the bilge; accepted: less than 90 deg together",
			degrees(s.BottomTurn), degrees(s.Flare), degrees(s.TopsideCurve), degrees(turn))
		places = append(places, s.At)
		c.apart(key+"at", places, d.Hull.Symmetric)
	}
}

// forward refuses a place abaft midship in a symmetric design, where the after
// half is the image of the forward one.
func (c *checker) forward(d *Design, key string, at measure.Length) {
	c.must(!d.Hull.Symmetric || at >= 0, key,
		"%s mm is abaft midship in a symmetric design, where it is mirrored by itself; give it forward, positive", short(float64(at)))
}

// apart keeps the last of the places at least 50 mm from those before it and,
// when they are mirrored, from their images and its own: a smooth curve
// through two places on top of one another would leap.
func (c *checker) apart(key string, places []measure.Length, mirrored bool) {
	at := places[len(places)-1]
	others := slices.Clone(places[:len(places)-1])
	for _, p := range places {
		if mirrored && p != 0 {
			others = append(others, -p)
		}
	}
	for _, o := range others {
		off := math.Abs(float64(at - o))
		c.must(off >= 50, key, "%s mm is %s mm from the one at %s mm; accepted: at least 50 mm apart",
			short(float64(at)), short(off), short(float64(o)))
	}
}

func checkStem(c *checker, end string, s Stem, d *Design) {
	c.angle(end+".rake", s.Rake, -10, 45)
	c.length(end+".forefoot_radius", s.ForefootRadius, 30, 1500)
	c.must(s.HeadRadius == 0 || s.HeadRadius >= 50, end+".head_radius",
		"%s mm is too tight; accepted: 0 mm for a straight rake, or 50 mm and more", short(float64(s.HeadRadius)))
	c.length(end+".head_radius", s.HeadRadius, 0, 5000)
	c.length(end+".moulded", s.Moulded, 20, 300)
	c.must(s.Moulded < s.ForefootRadius, end+".moulded",
		"%s mm is not less than the forefoot radius %s mm, so the stem has no inner edge", short(float64(s.Moulded)), short(float64(s.ForefootRadius)))
	c.length(end+".siding", s.Siding, 10, 100)
	c.must(s.Siding >= d.Gunwale.Width, end+".siding",
		"%s mm is less than the gunwale width %s mm, so the gunwale ends would run into each other; accepted: the gunwale width or more",
		short(float64(s.Siding)), short(float64(d.Gunwale.Width)))
	c.length(end+".landing", s.Landing, 30, 600)
	c.length(end+".horn", s.Horn, 0, 100)
	c.must(s.Horn < s.Moulded, end+".horn", "%s mm is not less than the moulded depth %s mm, so no shelf is left for the gunwales",
		short(float64(s.Horn)), short(float64(s.Moulded)))
}
