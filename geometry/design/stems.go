package design

import (
	"cmp"
	"slices"

	"ribwright/geometry/wording"
)

// The ways to make stems.
const (
	StemsSolid     = "solid"     // sawn from a plank
	StemsPlywood   = "plywood"   // sawn from sheets and glued to the siding
	StemsLaminated = "laminated" // glued from layers round the forefoot
)

// MadeStems returns how the stems are made. A design that gives layers laminates them; one
// that says nothing saws them from a plank.
func (d *Design) MadeStems() string {
	if d.Bending.StemPlies > 0 {
		return StemsLaminated
	}
	return cmp.Or(d.Bow.Made, StemsSolid)
}

// stemSheet is the wood of plywood for stems where the design does not say: the plywood
// that is sold nearly everywhere for use outdoors.
const stemSheet = "Douglas-fir"

// StemWood returns the wood of the stems. A design that does not say how stems are made
// saws them from the breasthooks' wood, whatever bending.stem_species says.
func (d *Design) StemWood() string {
	if d.Bow.Made == "" && d.Bending.StemPlies == 0 {
		return d.Breasthook.Species
	}
	usual := d.Breasthook.Species
	if d.MadeStems() == StemsPlywood {
		usual = stemSheet
	}
	return cmp.Or(d.Bending.StemSpecies, usual)
}

func (d *Design) checkStems(c *checker) {
	b := d.Bending
	ways := []string{StemsSolid, StemsPlywood, StemsLaminated}
	c.must(d.Bow.Made == "" || slices.Contains(ways, d.Bow.Made), "bow.made", "%q is no way to make stems; accepted: solid, plywood, laminated", wording.Clip(d.Bow.Made, 40))
	c.must(d.Bow.Made != StemsLaminated || b.StemPlies > 0, "bending.stem_plies", "is missing for laminated stems; accepted: 2 to 40")
	c.must(d.Stern == nil || d.Stern.Made == "" || d.Stern.Made == d.Bow.Made, "stern.made", "%q is not the bow's %q: both stems are made alike; leave it out", wording.Clip(d.After().Made, 40), d.Bow.Made)
	if b.StemPlies > 0 || d.Bow.Made != "" && b.StemSpecies != "" {
		c.species(d, "bending.stem_species", b.StemSpecies)
	}
}

// Sheets returns the plywood that a piece of the siding is glued from, mm: one, two or
// three sheets of usual thickness whose sum is nearest to it.
func Sheets(siding float64) []float64 {
	usual := []float64{4, 6, 8, 9, 10, 12, 15, 18, 22, 25}
	var best []float64
	off, uneven := 1e9, 0.0
	try := func(s ...float64) {
		sum := 0.0
		for _, t := range s {
			sum += t
		}
		miss := max(sum-siding, siding-sum)
		// Two sheets or three cross their plies more often than one; alike is simplest.
		spread := slices.Max(s) - slices.Min(s) + 10*float64(len(s))
		if miss < off-1e-9 || miss <= off && spread < uneven {
			best, off, uneven = s, miss, spread
		}
	}
	for i, a := range usual {
		for j, b := range usual[:i+1] {
			try(a, b)
			for _, c := range usual[:j+1] {
				try(a, b, c)
			}
		}
	}
	for n := 4; off > 0.5 && n <= 8; n++ {
		for _, a := range usual {
			try(slices.Repeat([]float64{a}, n)...)
		}
	}
	return best
}
