package design

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/measure"
)

// Problem is one value that makes no sense, before its place in a file is known.
type Problem struct {
	Key  string // "ribs.thickness"; "hull.section.1.flare" is in the second [[hull.section]]
	Text string // what is wrong, with its value and unit, and what is accepted
}

// Check returns the first thing in the design that cannot be built, nil when
// all is well. It looks at each value and at values side by side; whether the
// sections can be bent at every rib is for the hull to find.
func (d *Design) Check() *Problem {
	c := &checker{}
	d.checkWords(c)
	d.checkWoods(c) // before the parts, which name them
	d.checkHull(c)
	d.checkGunwale(c) // before the stems, which are measured against it
	checkStem(c, "bow", d.Bow, d)
	if d.Stern != nil {
		checkStem(c, "stern", *d.Stern, d)
	}
	d.checkRibs(c)
	d.checkBattens(c)
	d.checkCrossPieces(c)
	d.checkAboard(c)
	d.checkBending(c)
	d.checkStock(c)
	d.checkOutfit(c)
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
		c.must(false, key, "is missing, or 0 mm; accepted: %s to %s mm", short(lo), short(hi))
	}
	c.must(float64(v) >= lo && float64(v) <= hi, key,
		"%s mm is out of range; accepted: %s to %s mm", short(float64(v)), short(lo), short(hi))
}

// angle accepts lo <= v <= hi, in degrees.
func (c *checker) angle(key string, v measure.Angle, lo, hi float64) {
	const slack = 1e-9 // 45 deg is in when 45 is the limit, whatever its radians round to
	deg := float64(v) * 180 / math.Pi
	c.must(deg >= lo-slack && deg <= hi+slack, key,
		"%s deg is out of range; accepted: %s to %s deg", degrees(v), short(lo), short(hi))
}

// degrees prints an angle as its number of degrees.
func degrees(v measure.Angle) string { return short(float64(v) * 180 / math.Pi) }

func (c *checker) species(d *Design, key, name string) {
	if name == "" {
		c.must(false, key, "is missing; accepted: the name of a wood, as white ash")
		return
	}
	_, err := d.Wood(name)
	c.must(err == nil, key, "%v", err)
}

// short prints a number with at most three decimals and no trailing zeros.
func short(v float64) string { return fmt.Sprint(math.Round(v*1000) / 1000) }

func (d *Design) checkWords(c *checker) {
	c.must(strings.TrimSpace(d.Title) != "", "title", `is missing; accepted: a name in quotes, as title = "Brook"`)
	c.must(len(d.Title) <= 2000, "title", "has %d bytes; accepted: up to 2000", len(d.Title))
	c.must(len(d.Edition) <= 80, "edition", "has %d bytes; accepted: up to 80", len(d.Edition))
	c.must(!strings.ContainsAny(d.Edition, "\r\n"), "edition", `stands on more than one line; accepted: a short line, as "2"`)
	c.must(len(d.For) <= 2000, "for", "has %d bytes; accepted: up to 2000", len(d.For))
}
