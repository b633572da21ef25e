package design

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/wood/timber"
	"ribwright/geometry/wording"
)

// Wood is a wood of the builder's own, or other values for a known one. What is
// left out of a known wood stays as the table has it.
type Wood struct {
	Name       string  `toml:"name" comment:"A wood that 'ribwright help species' lists, to give it other values, or a new name, with every value from density to free_ratio."`
	Density    float64 `toml:"density" comment:"Kilograms per cubic meter at 12 % moisture, water included. 100 to 1400."`
	Stiff      float64 `toml:"stiff" comment:"Modulus of elasticity in bending, N/mm2. 1000 to 30000."`
	Strong     float64 `toml:"strong" comment:"Modulus of rupture in bending, N/mm2. 10 to 300."`
	Strength   string  `toml:"strength_standing" comment:"How firmly density, stiff and strong are known: handbook, common practice, from memory or measured; measured when left out."`
	StrapRatio float64 `toml:"strap_ratio" comment:"Least inner radius over thickness when steamed and bent with a strap. 0.1 to 100."`
	FreeRatio  float64 `toml:"free_ratio" comment:"The same without a strap; at least strap_ratio."`
	Bending    string  `toml:"bending_standing" comment:"How firmly the two ratios are known; measured when left out."`
	Tangential float64 `toml:"tangential" comment:"Movement along the growth rings for 1 % of moisture, mm per mm, as 0.0027; 0 when not known."`
	Radial     float64 `toml:"radial" comment:"The same square to the rings."`
	Crush      float64 `toml:"crush" json:",omitempty" comment:"Strength across the grain where it begins to stay dented, N/mm2; 0.5 to 40. For joints; derived from strong when left out of a new wood, as the next two."`
	Shear      float64 `toml:"shear" json:",omitempty" comment:"Strength in shear along the grain, N/mm2; 1 to 50."`
	Split      float64 `toml:"split" json:",omitempty" comment:"Strength against being pulled apart across the grain, N/mm2; 0.3 to 20."`
	Joints     string  `toml:"joints_standing" json:",omitempty" comment:"How firmly these three are known; measured when left out."`
	Movement   string  `toml:"movement_standing" comment:"How firmly the movement is known; measured when left out."`
}

// Wood returns the wood of that name: the builder's own values where the design
// gives some, the table's for the rest.
//
// Errors: a name that neither the design nor the table knows.
func (d *Design) Wood(name string) (timber.Species, error) {
	known, err := timber.Lookup(name)
	for _, w := range d.Woods {
		if sameWood(w.Name, name) || err == nil && sameWood(w.Name, known.Name) {
			base, _ := timber.Lookup(w.Name) // all zero for a new wood
			return w.over(base), nil
		}
	}
	return known, err
}

// sameWood compares names as people write them: capitals and hyphens apart.
func sameWood(a, b string) bool {
	plain := func(s string) string { return strings.ToLower(strings.NewReplacer("-", "", " ", "").Replace(s)) }
	return plain(a) == plain(b)
}

func (w Wood) over(s timber.Species) timber.Species {
	if s.Name == "" {
		s.Name = w.Name
	}
	set := func(to *float64, v float64, standing *finding.Standing, said string) {
		if v == 0 {
			return
		}
		*to = v
		*standing = finding.Measured
		if said != "" {
			*standing = finding.Standing(said)
		}
	}
	set(&s.Density, w.Density, &s.Strength, w.Strength)
	set(&s.MOE, w.Stiff, &s.Strength, w.Strength)
	set(&s.MOR, w.Strong, &s.Strength, w.Strength)
	set(&s.StrapRatio, w.StrapRatio, &s.Bending, w.Bending)
	set(&s.FreeRatio, w.FreeRatio, &s.Bending, w.Bending)
	set(&s.Tangential, w.Tangential, &s.Movement, w.Movement)
	set(&s.Radial, w.Radial, &s.Movement, w.Movement)
	set(&s.Crush, w.Crush, &s.Joints, w.Joints)
	set(&s.Shear, w.Shear, &s.Joints, w.Joints)
	set(&s.Split, w.Split, &s.Joints, w.Joints)
	return s.Derived()
}

const mostWoods = 20

func (d *Design) checkWoods(c *checker) {
	c.must(len(d.Woods) <= mostWoods, "wood", "%d are given; accepted: up to %d", len(d.Woods), mostWoods)
	for i, w := range d.Woods {
		key := fmt.Sprintf("wood.%d.", i)
		c.must(strings.TrimSpace(w.Name) != "", key+"name", `is missing; accepted: a name in quotes, as "ash from the yard"`)
		c.must(len(w.Name) <= 40, key+"name", "has %d bytes; accepted: up to 40", len(w.Name))
		for _, o := range d.Woods[:i] {
			c.must(!sameWood(o.Name, w.Name), key+"name", "%q is given twice; keep one", wording.Clip(w.Name, 40))
		}
		_, err := timber.Lookup(w.Name)
		w.check(c, key, err == nil)
	}
}

// checkBoards refuses a word for how a board is sawn that is none, and sticks that are too
// short to scarf.
func (d *Design) checkBoards(c *checker) {
	const shortest = 1000 // mm
	long := d.Stock.Longest
	c.must(long == 0 || long >= shortest, "stock.longest", "%s is too short for the sticks of a boat; accepted: %d mm or more, or leave it out for any", long, shortest)
	for i, b := range d.Stock.Boards {
		c.must(slices.Contains([]string{"", "flat", "quarter"}, b.Sawn), fmt.Sprintf("stock.board.%d.sawn", i),
			"%q is no way to saw a board; accepted: flat, quarter, or leave it out when you do not know", wording.Clip(b.Sawn, 40))
	}
}

// check holds each value to what wood can be; a known wood may leave any out.
func (w Wood) check(c *checker, key string, known bool) {
	for _, v := range []struct {
		key     string
		v       float64
		lo, hi  float64
		without bool // may be left out of a new wood too
	}{
		{"density", w.Density, 100, 1400, false},
		{"stiff", w.Stiff, 1000, 30000, false},
		{"strong", w.Strong, 10, 300, false},
		{"strap_ratio", w.StrapRatio, 0.1, 100, false},
		{"free_ratio", w.FreeRatio, 0.1, 200, false},
		{"tangential", w.Tangential, 0.0001, 0.01, true},
		{"radial", w.Radial, 0.0001, 0.01, true},
		{"crush", w.Crush, 0.5, 40, true},
		{"shear", w.Shear, 1, 50, true},
		{"split", w.Split, 0.3, 20, true},
	} {
		if v.v == 0 {
			c.must(known || v.without, key+v.key, "is missing, or 0, and %q is no known wood; accepted: %s to %s", wording.Clip(w.Name, 40), short4(v.lo), short4(v.hi))
			continue
		}
		c.must(v.v >= v.lo && v.v <= v.hi, key+v.key, "%s is out of range; accepted: %s to %s", short4(v.v), short4(v.lo), short4(v.hi))
	}
	base, _ := timber.Lookup(w.Name)
	s := w.over(base)
	c.must(s.FreeRatio >= s.StrapRatio, key+"free_ratio", "%s is less than the ratio with a strap, %s; accepted: that or more", short4(s.FreeRatio), short4(s.StrapRatio))
	standings := []string{"", string(finding.Handbook), string(finding.Common), string(finding.Memory), string(finding.Measured)}
	for _, v := range []struct{ key, said string }{
		{"strength_standing", w.Strength}, {"bending_standing", w.Bending}, {"movement_standing", w.Movement}, {"joints_standing", w.Joints},
	} {
		c.must(slices.Contains(standings, v.said), key+v.key, "%q is no standing; accepted: handbook, common practice, from memory, measured", wording.Clip(v.said, 40))
	}
}

// short4 prints a number as it is written, however small.
func short4(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
