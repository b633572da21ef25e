package design

import "ribwright/geometry/wording"

// Bending is how the wood is bent and glued.
type Bending struct {
	Moisture    float64 `toml:"moisture" comment:"Moisture of the rib stock when it is steamed, percent. 8 to 40; at least 16 for mild bends and 23 for severe ones."`
	Strap       bool    `toml:"strap" comment:"true: ribs are bent with a metal strap and end stops where they need it."`
	Springback  float64 `toml:"springback" comment:"Share of its curvature that a rib loses when it comes off the form. 0 to 0.4; 0.05 to 0.1 when dried on the form, 0.1 to 0.2 when only cooled on it, from memory: measure your first rib."`
	GlueCreep   float64 `toml:"glue_creep" comment:"How much more a lamination springs back than plies alone explain. 1 for a rigid glue line, up to 1.3 for a soft one, from memory."`
	StemPlies   int     `toml:"stem_plies" comment:"Number of layers when the stems are laminated round their forefoot; 0 when they are cut from sheet or plank."`
	StemSpecies string  `toml:"stem_species" comment:"Wood of laminated stems."`
}

// The ways to glue a gunwale's plies.
const (
	GluedStraight = "straight" // flat, and sprung round the spreaders as one stick
	GluedBent     = "bent"     // while held to the finished curve by the spreaders
	GluedOnForm   = "form"     // on a form tightened by what springs back
)

func (d *Design) checkBending(c *checker) {
	b, g := d.Bending, d.Gunwale
	c.must(b.Moisture >= 8 && b.Moisture <= 40, "bending.moisture", "%s %% is out of range; accepted: 8 to 40", short(b.Moisture))
	c.must(b.Springback >= 0 && b.Springback <= 0.4, "bending.springback", "%s is out of range; accepted: 0 to 0.4, a share", short(b.Springback))
	c.must(b.GlueCreep >= 1 && b.GlueCreep <= 1.3, "bending.glue_creep", "%s is out of range; accepted: 1 to 1.3", short(b.GlueCreep))
	c.must(b.StemPlies == 0 || b.StemPlies >= 2 && b.StemPlies <= 40, "bending.stem_plies", "%d layers are out of range; accepted: 0 for stems that are cut, or 2 to 40", b.StemPlies)
	if b.StemPlies > 0 {
		c.species(d, "bending.stem_species", b.StemSpecies)
	}
	switch g.Glued {
	case GluedStraight:
	case GluedBent, GluedOnForm:
		c.must(g.Plies >= 2, "gunwale.glued", "%q needs at least 2 plies, and gunwale.plies is %d; a single one springs back straight", g.Glued, g.Plies)
	default:
		c.must(false, "gunwale.glued", "%q is no way of gluing; accepted: straight, bent, form", wording.Clip(g.Glued, 40))
	}
}
