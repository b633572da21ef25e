package design

import (
	"fmt"
	"math"
	"strings"
)

func (d *Design) checkGunwale(c *checker) {
	g := d.Gunwale
	half := float64(d.Hull.Length) / 2
	c.species(d, "gunwale.species", g.Species)
	c.length("gunwale.width", g.Width, 8, 60)
	c.length("gunwale.height", g.Height, 15, 120)
	c.must(g.Plies >= 1 && g.Plies <= 12, "gunwale.plies", "%d layers are out of range; accepted: 1 to 12", g.Plies)
	c.angle("gunwale.tilt", g.Tilt, -10, 35)
	c.length("gunwale.edge_set_bow", g.EdgeSetBow, 0, 400)
	c.length("gunwale.edge_set_stern", g.EdgeSetAft, 0, 400)
	c.sameAft(d, "gunwale.edge_set_stern", g.EdgeSetAft, g.EdgeSetBow)
	c.length("gunwale.edge_set_from", g.EdgeSetFrom, 0, half*0.8)
	c.must(g.ScarfSlope >= 5 && g.ScarfSlope <= 20, "gunwale.scarf_slope", "%s is out of range; accepted: 5 to 20, 8 to 12 is usual", short(g.ScarfSlope))
	c.must(len(g.Scarfs) <= 20, "gunwale.scarfs", "%d are given; accepted: up to 20", len(g.Scarfs))
	for _, s := range g.Scarfs {
		c.length("gunwale.scarfs", s, -half, half)
	}
}

func (d *Design) checkRibs(c *checker) {
	r, g := d.Ribs, d.Gunwale
	c.species(d, "ribs.species", r.Species)
	c.length("ribs.width", r.Width, 8, 80)
	c.length("ribs.thickness", r.Thickness, 2, 25)
	c.must(r.Thickness <= g.Width/2, "ribs.thickness", "%s mm is more than half the gunwale width %s mm; accepted: up to %s mm",
		short(float64(r.Thickness)), short(float64(g.Width)), short(float64(g.Width)/2))
	c.length("ribs.pitch", r.Pitch, 40, 400)
	c.must(r.Pitch >= r.Width+25, "ribs.pitch", "%s mm leaves less than 25 mm of gunwale between mortises for ribs %s mm wide; accepted: %s mm or more",
		short(float64(r.Pitch)), short(float64(r.Width)), short(float64(r.Width)+25))
	quarter := float64(d.Hull.Length) * 0.4
	c.length("ribs.from_bow", r.FromBow, 25, quarter)
	c.length("ribs.from_stern", r.FromStern, 25, quarter)
	c.sameAft(d, "ribs.from_stern", r.FromStern, r.FromBow)
	c.length("ribs.mortise_depth", r.MortiseDepth, 4, 0.8*float64(g.Height))
	c.length("ribs.tenon_gap", r.TenonGap, 0, float64(r.MortiseDepth)/2)
	c.length("ribs.fit_width", r.FitWidth, 0, 3)
	c.length("ribs.fit_thickness", r.FitThickness, 0, 2)
	c.length("ribs.trim", r.Trim, 0, 100)
	c.length("ribs.tolerance", r.Tolerance, 0, 10)
}

func (d *Design) checkBattens(c *checker) {
	c.species(d, "keel.species", d.Keel.Species)
	c.length("keel.width", d.Keel.Width, 8, 120)
	c.length("keel.depth", d.Keel.Depth, 3, 60)
	s := d.Stringers
	c.species(d, "stringers.species", s.Species)
	c.length("stringers.width", s.Width, 8, 60)
	c.length("stringers.depth", s.Depth, 3, 40)
	c.must(len(s.At) > 0 && len(s.At) <= 20, "stringers.at", "has %d stringers a side; accepted: 1 to 20, as [0.3, 0.6]", len(s.At))
	for i, f := range s.At {
		c.must(f > 0 && f < 1, "stringers.at", "%s is out of range; accepted: more than 0 (at the keel) and less than 1 (at the gunwale)", short(f))
		c.must(i == 0 || f > s.At[i-1], "stringers.at", "%s stands after %s; accepted: shares that rise from the keel up", short(f), short(s.At[max(0, i-1)]))
	}
	c.length("skin.thickness", d.Skin.Thickness, 0, 5)
	c.must(d.Skin.Mass >= 0 && d.Skin.Mass <= 5000, "skin.mass", "%s g/m2 is out of range; accepted: 0 to 5000", short(d.Skin.Mass))
}

func (d *Design) checkCrossPieces(c *checker) {
	b := d.Breasthook
	c.species(d, "breasthook.species", b.Species)
	c.length("breasthook.length", b.Length, 40, 600)
	c.length("breasthook.thickness", b.Thickness, 3, math.Min(50, float64(d.Gunwale.Height)*math.Cos(float64(d.Gunwale.Tilt))))
	c.length("breasthook.hollow", b.Hollow, 0, float64(b.Length)/2)
	c.must(len(d.Thwarts) <= 12, "thwart", "%d are given; accepted: up to 12", len(d.Thwarts))
	half := float64(d.Hull.Length) / 2
	for i, t := range d.Thwarts {
		key := fmt.Sprintf("thwart.%d.", i)
		c.must(strings.TrimSpace(t.Name) != "", key+"name", `is missing; accepted: a name in quotes, as "Yoke"`)
		c.must(len(t.Name) <= 200, key+"name", "has %d bytes; accepted: up to 200", len(t.Name))
		c.species(d, key+"species", t.Species)
		c.length(key+"at", t.At, -half*0.9, half*0.9)
		c.length(key+"width", t.Width, 15, 200)
		c.length(key+"waist", t.Waist, 10, 200)
		c.must(t.Waist <= t.Width, key+"waist", "%s mm is wider than its ends, %s mm; accepted: up to their width", short(float64(t.Waist)), short(float64(t.Width)))
		c.length(key+"thickness", t.Thickness, 5, 60)
	}
}
