package design

import (
	"cmp"
	"math"

	"ribwright/geometry/fabric"
	"ribwright/geometry/measure"
)

// usualSkin is the skin of a design that says nothing of it: polyester of 8 oz/yd2 under
// three coats, 271 and 324 g/m2. Common practice, no source.
func usualSkin() Skin {
	return Skin{Cloth: 271, Coats: 3, Solids: 100 * fabric.Usual().Solids, Tension: 0.3}
}

// Coated is the cloth with its coats.
func (s Skin) Coated() fabric.Coats {
	can := fabric.Usual()
	if s.Solids > 0 {
		can.Solids = s.Solids / 100
	}
	return fabric.Coats{Fiber: fabric.Fiber(s.Fiber), Cloth: s.Cloth, Count: s.Coats, Coating: can}
}

// Mass returns the finished skin, cloth and dry coats, g/m2; 0 without cloth, for coats need
// something to lie on.
func (s Skin) Mass() float64 {
	if s.Cloth == 0 {
		return 0
	}
	return s.Coated().Mass()
}

// Thickness returns that of the finished skin, mm: as the builder measured it, else what
// cloth and coats make to the nearest 0.1 mm, for cloth and brush are no more even.
func (s Skin) Thickness() measure.Length {
	if s.Thick > 0 {
		return s.Thick
	}
	return measure.Length(math.Round(s.Coated().Thickness()*10) / 10)
}

// Older designs say the mass of cloth and coating together. leastUnder is the lightest
// cloth that they are taken to mean, g/m2, where the number of coats is not said;
// oldThick is how thick theirs is where they do not say, mm.
const (
	leastUnder = 40.0
	oldThick   = 0.6
)

// SkinOfMass works out the cloth of a design that gives the mass of the finished skin and
// no cloth: what is left under its coats, fewer where that many leave no cloth. A mass
// that says what cloth and coats make is dropped; Check refuses one that contradicts
// them.
func (d *Design) SkinOfMass(given func(key string) bool) {
	s := &d.Skin
	switch {
	case !given("skin.mass"):
		return
	case given("skin.cloth"):
		if s.agree() {
			s.Weighed = 0
		}
		return
	case !(s.Weighed >= 0 && s.Weighed <= 5000): // Check refuses it
		return
	}
	for !given("skin.coats") && s.Coats > 0 && s.Coated().ClothUnder(s.Weighed) < leastUnder {
		s.Coats--
	}
	cloth := s.Coated().ClothUnder(s.Weighed)
	if cloth < 0 {
		return
	}
	if !given("skin.thickness") {
		s.Thick = oldThick
	}
	s.Cloth, s.Weighed = cloth, 0
}

// agree reports whether a mass that was given is that of cloth and coats, to what kitchen
// scales tell on a sample.
func (s Skin) agree() bool {
	const scales = 10 // g/m2
	return s.Weighed == 0 || math.Abs(s.Weighed-s.Mass()) <= scales
}

// leastCloth is the lightest that there is, g/m2: a smaller figure is one of ounces a square
// yard. ounce is one of these, g/m2: 28.3495 g over 0.836127 m2.
const (
	leastCloth = 30.0
	ounce      = 33.906
)

func (d *Design) checkSkin(c *checker) {
	s := d.Skin
	c.must(s.Cloth <= 0 || s.Cloth >= leastCloth, "skin.cloth", "%s g/m2 is lighter than any cloth; accepted: 0, or %.0f to 3000 g/m2, of which a cloth of %s oz/yd2 has %.0f",
		short(s.Cloth), leastCloth, short(s.Cloth), s.Cloth*ounce)
	c.must(s.agree(), "skin.mass", "%s g/m2 contradicts skin.cloth, %.0f g/m2, with %d coats, which make %.0f g/m2; leave mass out, or change cloth or coats",
		short(s.Weighed), s.Cloth, s.Coats, s.Mass())
}

// usualOutside is what is outside the skin of a design that does not say. Common practice,
// no source.
func usualOutside() Outside {
	return Outside{Outwale: 9, OutwaleHeight: 20, KeelStrip: 4, KeelStripWidth: 20, Painters: 3000}
}

// OutsideWithin keeps the strips outside the skin, where their widths are not said, within
// the gunwale and the keel.
func (d *Design) OutsideWithin(given func(key string) bool) {
	if !given("outside.outwale_height") {
		d.Outside.OutwaleHeight = min(d.Outside.OutwaleHeight, max(d.Gunwale.Height, 8))
	}
	if !given("outside.keel_strip_width") {
		d.Outside.KeelStripWidth = min(d.Outside.KeelStripWidth, max(d.Keel.Width, 8))
	}
}

// OutsideWood returns the wood of the strips outside the skin.
func (d *Design) OutsideWood() string { return cmp.Or(d.Outside.Species, d.Ribs.Species) }

func (d *Design) checkOutside(c *checker) {
	o := d.Outside
	c.species(d, "outside.species", d.OutsideWood())
	c.must(o.Outwale == 0 || o.OutwaleHeight <= d.Gunwale.Height, "outside.outwale_height", "%s mm is more than the gunwale's height, %s mm; accepted: up to that", mm(o.OutwaleHeight), mm(d.Gunwale.Height))
	c.must(o.KeelStrip == 0 || o.KeelStripWidth <= d.Keel.Width, "outside.keel_strip_width", "%s mm is more than the keel's width, %s mm; accepted: up to that", mm(o.KeelStripWidth), mm(d.Keel.Width))
}
