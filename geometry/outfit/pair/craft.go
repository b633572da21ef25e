package pair

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/outfit/clip"
	"ribwright/geometry/water"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// Craft is two boats made one. Lengths in mm; heights above the first boat's baseline.
type Craft struct {
	Boats   [2]aboard.Boat // to port and to starboard
	Pair    design.Pair
	Water   water.Water
	Spacing float64
	Rise    float64 // of the second boat over the first, so that their gunwales are level
	Beams   Beams
	Cases   []Case
	Hulls   Hulls

	Load      float.Load
	Rest      Lever
	BM, GM    float64  // upright
	Single    float64  // GM of the first boat alone, for comparison
	Curves    [2]Curve // to starboard and to port
	Lifting   float64  // N m, the righting moment when the windward hull lifts, the lesser of both sides; NaN when water comes in first
	Beneath   float64  // from the water to the beams' lower faces, mm, level
	Over      float64  // width over all
	Waves     []Wave
	Findings  finding.List
	Practices []finding.Range
}

// Beams are the cross beams.
type Beams struct {
	At           []float64 // stations, from aft forward
	Width, Depth float64
	Long         float64
	Wood         timber.Species
	Enough       bool    // whether they carry every case
	Clear        bool    // whether the bars under them find room between the rib heads
	Bar          float64 // of a bar under them, along the boat
}

// Wave is what the hulls' waves do to each other at a speed.
type Wave struct {
	Speed    float64 // m/s
	Apart    float64 // N, wave resistance of both hulls far apart
	Together float64 // N, at the spacing
}

// Change is the share by which the waves cost more, or less.
func (w Wave) Change() float64 { return w.Together/w.Apart - 1 }

const (
	spare   = 60.0 // of the beam beyond the outermost gunwale, mm; common practice, no source
	between = 50.0 // least water between the gunwales, mm
	grain   = 1 * math.Pi / 180
)

// New pairs two boats; each keeps its own people and gear.
//
// Errors: hulls that would touch; beams past the ends; too much weight.
func New(a, b aboard.Boat, p design.Pair, w water.Water) (*Craft, error) {
	c := &Craft{Boats: [2]aboard.Boat{a, b}, Pair: p, Water: w}
	for _, work := range []func() error{c.sizeBars, c.float, c.waves} {
		if err := work(); err != nil {
			return nil, err
		}
	}
	c.judge()
	return c, nil
}

// sizeBars lays out and sizes beams whose bars are as wide as the gunwales' wood asks, as far
// as there is room for them between the ribs.
func (c *Craft) sizeBars() error {
	for wide, step := leastBar, 5.0; ; wide += step {
		c.Over, c.Beams = 0, Beams{Bar: wide}
		err := c.layOut()
		if err == nil {
			err = c.sizeBeams()
		}
		if err != nil {
			return err
		}
		got, asked := c.press()
		switch {
		case !c.Beams.Clear && wide > leastBar:
			step = -5
		case got <= asked || step < 0 || wide >= mostBar:
			return nil
		}
	}
}

func (c *Craft) layOut() error {
	long := math.Inf(1)
	var top [2]float64
	for i, b := range c.Boats {
		long = math.Min(long, b.Frame.Hull.Length)
		outer := b.Rail(0)
		top[i] = outer.Z
		c.Over += outer.Y
	}
	c.Rise = top[0] - top[1]
	c.Spacing = cmp.Or(float64(c.Pair.Spacing), c.asked(long))
	if least := c.Over + between; c.Spacing < least {
		return fmt.Errorf("hulls %.0f mm apart, middle line to middle line, would touch: over the gunwales they are %.0f mm wide together at their middle; accepted: %.0f mm or more", c.Spacing, c.Over, math.Ceil(least))
	}
	c.Over += c.Spacing
	apart := cmp.Or(float64(c.Pair.Apart), math.Round(long*0.4/10)*10)
	c.Beams.Clear = true
	for i := range c.Pair.Beams {
		at, clear := clip.Nearest(apart*(float64(i)/float64(c.Pair.Beams-1)-0.5), 150, func(x float64) bool {
			return clip.Free(c.Boats[0].Frame, x-c.Beams.Bar/2, x+c.Beams.Bar/2) && clip.Free(c.Boats[1].Frame, x-c.Beams.Bar/2, x+c.Beams.Bar/2)
		})
		c.Beams.At, c.Beams.Clear = append(c.Beams.At, at), c.Beams.Clear && clear
	}
	for _, b := range c.Boats {
		first, last := b.Frame.Ribs[0].Station, b.Frame.Ribs[len(b.Frame.Ribs)-1].Station
		if -apart/2 < first || apart/2 > last {
			return fmt.Errorf("beams %.0f mm apart reach past the last ribs of %s, at %.0f and %.0f mm; accepted: up to %.0f mm", apart, b.Frame.Design.Title, first, last, 2*math.Min(-first, last))
		}
	}
	c.Beams.Long = math.Ceil((c.Over+2*spare)/10) * 10
	c.Hulls = NewHulls(c.Boats[0].Hull, c.Boats[1].Hull, c.Spacing, c.Rise)
	return nil
}

// narrow is how far apart middle lines are on moving water, mm: the pair turns, and
// passes between rocks, but still clears a paddler's hands. From memory.
const narrow = 1400.0

// asked is the spacing that the purpose asks for, mm, of boats of which the shorter is
// so long; on moving water no less than keeps wide hulls apart.
func (c *Craft) asked(long float64) float64 {
	if c.Pair.Purpose == design.MovingWater {
		return math.Max(narrow, math.Ceil((c.Over+between)/50)*50)
	}
	return math.Round(long/2/50) * 50
}

// grip is the least distance between the lashings on one hull, at any beam.
func (c *Craft) grip() float64 {
	least := math.Inf(1)
	for _, b := range c.Boats {
		for _, x := range c.Beams.At {
			least = math.Min(least, 2*(underEdge(b, x).Y-lashIn))
		}
	}
	return least
}

// sizeBeams works out the loads with beams of a guessed weight, and the beams.
func (c *Craft) sizeBeams() error {
	wood, err := c.Boats[0].Frame.Design.Wood(c.Pair.Species)
	if err != nil {
		return err
	}
	c.Beams.Wood = wood
	b := bearing{spacing: c.Spacing, at: c.Beams.At, grip: c.grip(), person: newtons(c.Pair.Person)}
	var weights [2]float64
	for i, boat := range c.Boats {
		l := boat.Load()
		weights[i] = newtons(l.Mass)
		p, _, err := boat.Hull.Balance(l, c.Water.Density, 0, nil)
		if err != nil {
			return fmt.Errorf("%s by itself: %w", boat.Frame.Design.Title, err)
		}
		rest := boat.Hull.Upright(p, l, c.Water.Density)
		b.waterline = math.Max(b.waterline, rest.LWL)
		b.area[i] = rest.Waterplane
		b.inertia += rest.BM*rest.Volume + rest.Waterplane*c.Spacing*c.Spacing/4
		if i == 0 {
			c.Single = rest.GM
		}
	}
	b.hull = math.Max(weights[0], weights[1])
	c.Beams.Width, c.Beams.Depth, c.Beams.Enough = size(b, wood, float64(c.Pair.Width), float64(c.Pair.Depth))
	c.Cases = b.cases(beam.Rectangle(c.Beams.Width, c.Beams.Depth), wood)
	return nil
}

// Worst returns the greatest stress in a beam, N/mm2, and the greatest pull on one lashing, N.
func (c *Craft) Worst() (stress, lash float64) {
	stress, lash, _ = worst(c.Cases)
	return stress, lash
}

// BeamsLie is the height of the beams' lower faces over the first boat's baseline,
// mm: the highest gunwale under them, leather and a saddle's back.
func (c *Craft) BeamsLie() float64 {
	top := 0.0
	for i, b := range c.Boats {
		for _, x := range c.Beams.At {
			for _, s := range c.under(x) {
				inner, outer := b.GunwaleTop(s)
				top = math.Max(top, math.Max(inner.Z, outer.Z)+float64(i)*c.Rise)
			}
		}
	}
	return top + Leather + SaddleBack
}

// under are the stations of a beam's edges and its middle.
func (c *Craft) under(x float64) [3]float64 {
	return [3]float64{x - c.Beams.Width/2, x, x + c.Beams.Width/2}
}

// SaddleBack is the wood between gunwale and beam where the gunwale is highest, Leather
// what lies between saddle and gunwale, mm. Common practice, no source.
const (
	SaddleBack = 15.0
	Leather    = 2.0
)

func (c *Craft) whole() (float.Load, error) {
	var all []float.Load
	for i, b := range c.Boats {
		l := b.Load()
		l.At.Y += c.Spacing / 2 * (1 - 2*float64(i))
		l.At.Z += float64(i) * c.Rise
		all = append(all, l)
	}
	added, err := c.added()
	return float.Total(append(all, added)...), err
}

func (c *Craft) float() error {
	var err error
	if c.Load, err = c.whole(); err != nil {
		return err
	}
	density := c.Water.Density
	if c.Rest, err = c.Hulls.list(c.Load, density); err != nil {
		return err
	}
	p, w, err := c.Hulls.balance(c.Load, density, 0, float.Plane{})
	if err != nil {
		return err
	}
	inertia, _ := c.Hulls.Inertia(p)
	c.BM = inertia / w.volume
	up := p.Up()
	c.GM = c.BM + up.Dot(w.center()) - up.Dot(c.Load.At)
	c.Lifting = math.NaN()
	for i, way := range []float64{toStarboard, toPort} {
		if c.Curves[i], err = c.Hulls.Curve(c.Load, density, way*grain); err != nil {
			return err
		}
		if lift := c.Curves[i].Lift; !math.IsNaN(lift) {
			v, err := c.Hulls.righting(c.Load, density, lift, way, float.Plane{})
			if err != nil {
				return err
			}
			if n := newtons(c.Load.Mass) * v.GZ / 1000; !(n >= c.Lifting) {
				c.Lifting = n
			}
		}
	}
	c.Beneath = math.Inf(1)
	for _, x := range c.Beams.At {
		c.Beneath = math.Min(c.Beneath, c.Rest.Plane.Above(geometry.Point3{X: x, Z: c.BeamsLie()}))
	}
	return nil
}

// waves compares the waves at some speeds with those of hulls far apart.
func (c *Craft) waves() error {
	var grids [2]effort.Grid
	for i, b := range c.Boats {
		p := c.Hulls.sides[i].local(c.Rest.Plane)
		// Upright on the same water at the middle line.
		p.Rise, p.Heel = p.Rise/math.Cos(p.Heel), 0
		x, depth, half := b.Hull.WetOffsets(p, 11)
		if len(x) < 4 {
			return errors.New("a hull hardly touches the water")
		}
		var err error
		if grids[i], err = (effort.Offsets{X: x, Depth: depth, Half: half}).Even(49, 11); err != nil {
			return fmt.Errorf("waves: %w", err)
		}
	}
	for _, kmh := range []float64{4, 5, 6, 7, 8, 9, 10} {
		u := kmh / 3.6
		w := Wave{Speed: u, Apart: grids[0].Waves(c.Water.Density, u) + grids[1].Waves(c.Water.Density, u)}
		w.Together = effort.Together(grids[0], grids[1], 0, c.Spacing, c.Water.Density, u)
		c.Waves = append(c.Waves, w)
	}
	return nil
}

// Lesser is the curve to count on whichever way the pair goes over: at each heel the
// lesser lever, share and freeboard of both sides, as far as both go, with the earliest
// lift and the earliest flooding. Its heels are positive; a plane belongs to the side
// with the lesser lever.
func (c *Craft) Lesser() Curve {
	a, b := c.Curves[0], c.Curves[1]
	out := Curve{Lift: earlier(a.Lift, b.Lift), Flooded: earlier(a.Flooded, b.Flooded)}
	if out.Lift > out.Flooded { // one side floods before the other lifts
		out.Lift = math.NaN()
	}
	for i := range min(len(a.Levers), len(b.Levers)) {
		v, w := a.Levers[i], b.Levers[i]
		share, freeboard := math.Min(v.Share, w.Share), math.Min(v.Freeboard, w.Freeboard)
		if w.GZ < v.GZ {
			v = w
		}
		v.Share, v.Freeboard = share, freeboard
		v.Heel = math.Abs(v.Heel)
		if v.GZ > out.Most.GZ {
			out.Most = v
		}
		out.Levers = append(out.Levers, v)
	}
	return out
}

// earlier returns the lesser heel, radians either way; NaN is never.
func earlier(a, b float64) float64 {
	a, b = math.Abs(a), math.Abs(b)
	if math.IsNaN(a) || b < a {
		return b
	}
	return a
}
