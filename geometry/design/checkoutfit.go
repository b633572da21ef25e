package design

func (d *Design) checkOutfit(c *checker) {
	o := d.Fitted()
	if o.Sail != nil {
		o.Sail.check(c, d)
	}
	if o.Pair != nil {
		o.Pair.check(c, d)
	}
	if o.Row != nil {
		o.Row.check(c, d)
	}
}

// The largest and the least sail that is drawn, m2: a cruising canoe's is about
// 4.1, a racing canoe's 10 with a plank to sit out on.
const (
	leastSail = 0.5
	mostSail  = 8.0
)

func (s *Sail) check(c *checker, d *Design) {
	const key = "outfit.sail."
	half := float64(d.Hull.Length) / 2
	c.must(s.Area == 0 || s.Area >= leastSail && s.Area <= mostSail, key+"area",
		"%s m2 is out of range; accepted: %s to %s m2, or 0 to let the boat decide", short(s.Area), short(leastSail), short(mostSail))
	c.must(s.Wind >= 2 && s.Wind <= 12, key+"wind", "%s m/s is out of range; accepted: 2 to 12 m/s", short(s.Wind))
	c.must(s.Reefs >= 0 && s.Reefs <= 3, key+"reefs", "%d are out of range; accepted: 0 to 3", s.Reefs)
	c.length(key+"mast_at", s.MastAt, -half*0.8, half*0.8)
	c.species(d, key+"spars", s.Spars)
	c.species(d, key+"boards", s.Boards)
	c.must(s.Cloth >= 30 && s.Cloth <= 400, key+"cloth", "%s g/m2 is out of range; accepted: 30 to 400", short(s.Cloth))
	c.length(key+"bolt", s.Bolt, 500, 2000)
	c.length(key+"seam", s.Seam, 6, 40)
	c.length(key+"hem", s.Hem, 10, 80)
	c.must(s.Roach >= 0 && s.Roach <= 0.06, key+"roach", "%s is out of range; accepted: 0 to 0.06, a share of the edge", short(s.Roach))
}

func (p *Pair) check(c *checker, d *Design) {
	const key = "outfit.pair."
	length := float64(d.Hull.Length)
	c.must(len(p.With) <= 500, key+"with", "has %d bytes; accepted: up to 500", len(p.With))
	if p.Spacing != 0 {
		c.length(key+"spacing", p.Spacing, float64(d.Hull.Beam), length*1.5)
	}
	c.must(p.Beams >= 2 && p.Beams <= 4, key+"beams", "%d are out of range; accepted: 2 to 4", p.Beams)
	if p.Apart != 0 {
		c.length(key+"apart", p.Apart, length*0.15, length*0.7)
	}
	c.species(d, key+"species", p.Species)
	c.must(p.Width == 0 || p.Width >= 25, key+"width", "%s mm is too little; accepted: 25 to 300 mm, or 0 mm to let the loads decide", short(float64(p.Width)))
	c.length(key+"width", p.Width, 0, 300)
	c.must(p.Depth == 0 || p.Depth >= 25, key+"depth", "%s mm is too little; accepted: 25 to 300 mm, or 0 mm to let the loads decide", short(float64(p.Depth)))
	c.length(key+"depth", p.Depth, 0, 300)
	c.must(p.Person >= 40 && p.Person <= 250, key+"person", "%s kg is out of range; accepted: 40 to 250 kg", short(p.Person))
}

func (r *Row) check(c *checker, d *Design) {
	const key = "outfit.row."
	half := float64(d.Hull.Length) / 2
	c.must(r.Stature == 0 || r.Stature >= 1200, key+"stature", "%s mm is too little; accepted: 1200 to 2200 mm, or 0 mm for the median", short(float64(r.Stature)))
	c.length(key+"stature", r.Stature, 0, 2200)
	c.must(r.Mass == 0 || r.Mass >= 25 && r.Mass <= 200, key+"mass", "%s kg is out of range; accepted: 25 to 200 kg, or 0 for the median", short(r.Mass))
	if r.Span != 0 {
		c.length(key+"span", r.Span, 700, 2000)
	}
	if r.Oar != 0 {
		c.length(key+"oar", r.Oar, 1000, 4000)
		c.must(r.Oar > r.Span, key+"oar", "%s mm is no longer than the span of %s mm; accepted: about twice the span", short(float64(r.Oar)), short(float64(r.Span)))
	}
	c.length(key+"seat_at", r.SeatAt, -half*0.6, half*0.6)
	c.must(r.Seat == 0 || r.Seat >= 40, key+"seat", "%s mm is too low; accepted: 40 to 450 mm, or 0 mm", short(float64(r.Seat)))
	c.length(key+"seat", r.Seat, 0, 450)
	c.species(d, key+"species", r.Species)
	c.must(r.Pull >= 50 && r.Pull <= 600, key+"pull", "%s N is out of range; accepted: 50 to 600 N", short(r.Pull))
}
