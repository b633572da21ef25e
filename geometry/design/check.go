package design

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/timber"
)

// Problem is one value that makes no sense, before its place in a file is known.
type Problem struct {
	Key  string // "ribs.thickness", "hull.section.1.flare"
	Text string
}

// Check returns the first thing in the design that cannot be built, nil when
// all is well. It looks at each value and at values side by side; whether the
// sections can be bent at every rib is for the hull to find.
func (d *Design) Check() *Problem {
	c := &checker{}
	d.checkWords(c)
	d.checkHull(c)
	checkStem(c, "bow", d.Bow, d)
	if d.Stern != nil {
		checkStem(c, "stern", *d.Stern, d)
	}
	d.checkGunwale(c)
	d.checkRibs(c)
	d.checkBattens(c)
	d.checkCrossPieces(c)
	return c.first
}

// checker keeps the first problem found.
type checker struct{ first *Problem }

// must notes a problem unless ok.
func (c *checker) must(ok bool, key, format string, args ...any) {
	if !ok && c.first == nil {
		c.first = &Problem{key, fmt.Sprintf(format, args...)}
	}
}

// length accepts lo <= v <= hi, in mm; NaN falls out.
func (c *checker) length(key string, v measure.Length, lo, hi float64) {
	if v == 0 && lo > 0 {
		c.must(false, key, "is missing or zero; accepted: %s to %s mm", short(lo), short(hi))
	}
	c.must(float64(v) >= lo && float64(v) <= hi, key,
		"%s mm is out of range; accepted: %s to %s mm", short(float64(v)), short(lo), short(hi))
}

// angle accepts lo <= v <= hi, in degrees.
func (c *checker) angle(key string, v measure.Angle, lo, hi float64) {
	deg := float64(v) * 180 / math.Pi
	c.must(deg >= lo-1e-9 && deg <= hi+1e-9, key,
		"%s deg is out of range; accepted: %s to %s deg", short(deg), short(lo), short(hi))
}

func (c *checker) species(key, name string) {
	if name == "" {
		c.must(false, key, "is missing; accepted: a wood that 'ribwright help species' lists")
		return
	}
	_, err := timber.Lookup(name)
	c.must(err == nil, key, "%v", err)
}

// short prints a number with at most three decimals and no trailing zeros.
func short(v float64) string { return fmt.Sprint(math.Round(v*1000) / 1000) }

func (d *Design) checkWords(c *checker) {
	c.must(d.Title != "", "title", `is missing; accepted: a name in quotes`)
	c.must(len(d.Title) <= 2000, "title", "has %d bytes; accepted: up to 2000", len(d.Title))
	c.must(len(d.For) <= 2000, "for", "has %d bytes; accepted: up to 2000", len(d.For))
}

func (d *Design) checkHull(c *checker) {
	h := d.Hull
	c.length("hull.length", h.Length, 2000, 9000)
	c.length("hull.beam", h.Beam, 400, 1500)
	c.length("hull.depth", h.Depth, 150, 700)
	c.length("hull.keel_straight", h.KeelStraight, 0, 0.8*float64(h.Length))
	c.length("hull.rocker_bow", h.RockerBow, 0, 250)
	c.length("hull.rocker_stern", h.RockerStern, 0, 250)
	c.length("hull.waterline", h.Waterline, 20, float64(h.Depth))
	d.checkSpreaders(c)
	d.checkSections(c)
}

func (d *Design) checkSpreaders(c *checker) {
	half := float64(d.Hull.Length) / 2
	for i, s := range d.Hull.Spreaders {
		key := fmt.Sprintf("hull.spreader.%d.", i)
		c.must(s.At != 0, key+"at", "0 mm is midship, which hull.beam already sets; give another place")
		c.must(!d.Hull.Symmetric || s.At > 0, key+"at",
			"%s mm is abaft midship in a symmetric design, where it is mirrored by itself; give it forward, positive", short(float64(s.At)))
		c.length(key+"at", s.At, -half*0.95, half*0.95)
		c.length(key+"beam", s.Beam, 50, 1500)
	}
	all := d.AllSpreaders()
	for i := 1; i < len(all); i++ {
		c.must(all[i].At-all[i-1].At >= 50, "hull.spreader",
			"two spreaders stand %s mm apart at %s mm; accepted: at least 50 mm", short(float64(all[i].At-all[i-1].At)), short(float64(all[i].At)))
	}
}

func (d *Design) checkSections(c *checker) {
	half := float64(d.Hull.Length) / 2
	c.must(len(d.Hull.Sections) > 0, "hull.section", "is missing; give at least one [[hull.section]] at midship")
	c.must(len(d.Hull.Sections) <= 40, "hull.section", "%d are given; accepted: up to 40", len(d.Hull.Sections))
	c.must(len(d.Hull.Spreaders) <= 40, "hull.spreader", "%d are given; accepted: up to 40", len(d.Hull.Spreaders))
	for i, s := range d.Hull.Sections {
		key := fmt.Sprintf("hull.section.%d.", i)
		c.must(!d.Hull.Symmetric || s.At >= 0, key+"at",
			"%s mm is abaft midship in a symmetric design, where it is mirrored by itself; give it forward, positive", short(float64(s.At)))
		c.length(key+"at", s.At, -half, half)
		c.angle(key+"bottom_turn", s.BottomTurn, 0, 60)
		c.length(key+"bilge_radius", s.BilgeRadius, 20, 1000)
		c.angle(key+"flare", s.Flare, -30, 45)
		c.angle(key+"topside_curve", s.TopsideCurve, 0, 60)
		c.must(s.BottomTurn+s.Flare+s.TopsideCurve < math.Pi/2, key+"bottom_turn",
			"bottom turn, flare and topside curve leave no turn for the bilge; together they must stay under 90 deg")
	}
	all := d.AllSections()
	for i := 1; i < len(all); i++ {
		c.must(all[i].At-all[i-1].At >= 50, "hull.section",
			"two sections stand %s mm apart at %s mm; accepted: at least 50 mm", short(float64(all[i].At-all[i-1].At)), short(float64(all[i].At)))
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

func (d *Design) checkGunwale(c *checker) {
	g := d.Gunwale
	half := float64(d.Hull.Length) / 2
	c.species("gunwale.species", g.Species)
	c.length("gunwale.width", g.Width, 8, 60)
	c.length("gunwale.height", g.Height, 15, 120)
	c.must(g.Plies >= 1 && g.Plies <= 12, "gunwale.plies", "%d is out of range; accepted: 1 to 12", g.Plies)
	c.angle("gunwale.tilt", g.Tilt, -10, 35)
	c.length("gunwale.edge_set_bow", g.EdgeSetBow, 0, 400)
	c.length("gunwale.edge_set_stern", g.EdgeSetAft, 0, 400)
	c.length("gunwale.edge_set_from", g.EdgeSetFrom, 0, half*0.8)
	c.must(g.ScarfSlope >= 5 && g.ScarfSlope <= 20, "gunwale.scarf_slope", "%s is out of range; accepted: 5 to 20, 8 to 12 is usual", short(g.ScarfSlope))
	c.must(len(g.Scarfs) <= 20, "gunwale.scarfs", "%d are given; accepted: up to 20", len(g.Scarfs))
	for _, s := range g.Scarfs {
		c.length("gunwale.scarfs", s, -half, half)
	}
}

func (d *Design) checkRibs(c *checker) {
	r, g := d.Ribs, d.Gunwale
	c.species("ribs.species", r.Species)
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
	c.length("ribs.mortise_depth", r.MortiseDepth, 4, 0.8*float64(g.Height))
	c.length("ribs.tenon_gap", r.TenonGap, 0, float64(r.MortiseDepth)/2)
	c.length("ribs.fit_width", r.FitWidth, 0, 3)
	c.length("ribs.fit_thickness", r.FitThickness, 0, 2)
	c.length("ribs.trim", r.Trim, 0, 100)
	c.length("ribs.tolerance", r.Tolerance, 0, 10)
}

func (d *Design) checkBattens(c *checker) {
	c.species("keel.species", d.Keel.Species)
	c.length("keel.width", d.Keel.Width, 8, 120)
	c.length("keel.depth", d.Keel.Depth, 3, 60)
	s := d.Stringers
	c.species("stringers.species", s.Species)
	c.length("stringers.width", s.Width, 8, 60)
	c.length("stringers.depth", s.Depth, 3, 40)
	c.must(len(s.At) > 0 && len(s.At) <= 20, "stringers.at", "has %d stringers a side; accepted: 1 to 20", len(s.At))
	for i, f := range s.At {
		c.must(f > 0 && f < 1, "stringers.at", "%s is out of range; accepted: more than 0 (keel) and less than 1 (gunwale)", short(f))
		c.must(i == 0 || f > s.At[i-1], "stringers.at", "must run from the keel up: %s stands after %s", short(f), short(s.At[max(0, i-1)]))
	}
	c.length("skin.thickness", d.Skin.Thickness, 0, 5)
	c.must(d.Skin.Mass >= 0 && d.Skin.Mass <= 5000, "skin.mass", "%s g/m2 is out of range; accepted: 0 to 5000", short(d.Skin.Mass))
}

func (d *Design) checkCrossPieces(c *checker) {
	b := d.Breasthook
	c.species("breasthook.species", b.Species)
	c.length("breasthook.length", b.Length, 40, 600)
	c.length("breasthook.thickness", b.Thickness, 3, 50)
	c.length("breasthook.hollow", b.Hollow, 0, float64(b.Length)/2)
	c.must(len(d.Thwarts) <= 12, "thwart", "%d are given; accepted: up to 12", len(d.Thwarts))
	half := float64(d.Hull.Length) / 2
	for i, t := range d.Thwarts {
		key := fmt.Sprintf("thwart.%d.", i)
		c.must(t.Name != "" && len(t.Name) <= 200, key+"name", "is missing or longer than 200 bytes")
		c.species(key+"species", t.Species)
		c.length(key+"at", t.At, -half*0.9, half*0.9)
		c.length(key+"width", t.Width, 15, 200)
		c.length(key+"waist", t.Waist, 10, 200)
		c.must(t.Waist <= t.Width, key+"waist", "%s mm is wider than its ends, %s mm", short(float64(t.Waist)), short(float64(t.Width)))
		c.length(key+"thickness", t.Thickness, 5, 60)
	}
}
