package design

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
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
	d.checkWoods(c) // before the parts, which name them
	c.table(d, "", reflect.ValueOf(d).Elem())
	c.must(!strings.ContainsAny(d.Edition, "\r\n"), "edition", `stands on more than one line; accepted: a short line, as "2"`)
	c.must(!strings.ContainsAny(d.Changed, "\r\n"), "changed", `stands on more than one line; accepted: a line, as "20 mm wider"`)
	c.must(d.Skill == "" || slices.Contains(Skills(), d.Skill), "skill", "%q is no skill; accepted: %s, or leave it out for average", wording.Clip(d.Skill, 40), strings.Join(Skills(), ", "))
	d.checkHull(c)
	d.checkGunwale(c) // before the stems, which are measured against it
	d.checkStem(c, "bow", d.Bow)
	if d.Stern != nil {
		d.checkStem(c, "stern", *d.Stern)
	}
	d.checkMortises(c)
	d.checkRibs(c)
	d.checkSeasoning(c)
	d.checkBoards(c)
	d.checkStringers(c)
	d.checkSkin(c)
	d.checkOutside(c)
	c.species(d, "inside.species", d.InsideWood())
	d.checkFittings(c)
	d.checkOutfit(c)
	return c.first
}

type checker struct{ first *Problem }

func (c *checker) must(ok bool, key, format string, args ...any) {
	if !ok && c.first == nil {
		c.first = &Problem{key, fmt.Sprintf(format, args...)}
	}
}

// Skills are the words for how practiced a builder is.
func Skills() []string { return []string{"experienced", "average", "beginner"} }

// length accepts lo <= v <= hi, in mm; NaN falls out.
func (c *checker) length(key string, v measure.Length, lo, hi float64) {
	switch {
	case float64(v) >= lo && float64(v) <= hi:
	case v == 0 && lo > 0:
		c.must(false, key, "is missing, or 0 mm; accepted: %s to %s mm", short(lo), short(hi))
	default:
		c.must(false, key, "%s mm is out of range; accepted: %s to %s mm", mm(v), short(lo), short(hi))
	}
}

// table holds every value of a table of d to its tags: "accepts" has a range, a wood
// or a name, and "most" how many rows or bytes are read.
func (c *checker) table(d *Design, prefix string, table reflect.Value) {
	for i := range table.NumField() {
		field, v := table.Type().Field(i), table.Field(i)
		key, accepts := prefix+keyName(field), tagged(field.Tag, ` accepts:"`)
		if v.Kind() == reflect.Pointer {
			v = v.Elem()
		}
		c.most(key, v, tagged(field.Tag, ` most:"`))
		switch {
		case !v.IsValid(): // left out
		case v.Kind() == reflect.Struct:
			c.table(d, key+".", v)
		case v.Kind() == reflect.Slice && tableOf(v.Type()) != nil:
			for row := range v.Len() {
				c.table(d, key+"."+strconv.Itoa(row)+".", v.Index(row))
			}
		case accepts == "a wood":
			c.species(d, key, v.String())
		case strings.HasPrefix(accepts, "a name"):
			c.must(strings.TrimSpace(v.String()) != "", key, "is missing; accepted: %s", strings.ReplaceAll(accepts, "'", `"`))
		case accepts != "":
			c.within(key, v, accepts)
		}
	}
}

// tagged reads a tag by what stands before its value, which has no quotes in it: Get would
// read the long comment before it first, at every field.
func tagged(tag reflect.StructTag, before string) string {
	_, value, _ := strings.Cut(string(tag), before)
	value, _, _ = strings.Cut(value, `"`)
	return value
}

func (c *checker) most(key string, v reflect.Value, most string) {
	if most == "" {
		return
	}
	n, err := strconv.Atoi(most)
	switch {
	case err != nil:
		panic("the tag of " + key + " has no number: " + most)
	case v.Kind() == reflect.String:
		c.must(v.Len() <= n, key, "has %d bytes; accepted: up to %d", v.Len(), n)
	default:
		c.must(v.Len() <= n, key, "%d are given; accepted: up to %d", v.Len(), n)
	}
}

// within holds a number to a range such as "8 to 60 mm" or "50 to 5000 mm, or 0 mm for
// a straight rake". NaN falls out.
func (c *checker) within(key string, v reflect.Value, accepts string) {
	lo, hi, unit, ok := span(accepts)
	if !ok {
		panic("the tag of " + key + " has no range: " + accepts)
	}
	const slack = 1e-9 // 45 deg is in when 45 is the limit, whatever its radians round to
	n := number(v)
	switch {
	case n >= lo-slack && n <= hi+slack:
	case n == 0 && lo > 0 && strings.Contains(accepts, "or 0"):
	case n == 0 && lo > 0:
		c.must(false, key, "is missing, or 0%s; accepted: %s", unit, accepts)
	default:
		c.must(false, key, "%s%s is out of range; accepted: %s", short(n), unit, accepts)
	}
}

// span reads a range: its limits, and its unit after a space, "" without one.
func span(accepts string) (lo, hi float64, unit string, ok bool) {
	from, rest, _ := strings.Cut(accepts, " to ")
	to, rest, _ := strings.Cut(rest, " ")
	to, bare := strings.CutSuffix(to, ",") // what follows the comma is no unit
	if unit, _, _ = strings.Cut(rest, " "); bare || unit == "" {
		unit = ""
	} else {
		unit = " " + strings.TrimSuffix(unit, ",")
	}
	lo, err := strconv.ParseFloat(from, 64)
	hi, fault := strconv.ParseFloat(to, 64)
	return lo, hi, unit, err == nil && fault == nil
}

// number is a value as its range has it: an angle in degrees.
func number(v reflect.Value) float64 {
	switch n := v.Interface().(type) {
	case measure.Angle:
		return float64(n) * 180 / math.Pi
	case int:
		return float64(n)
	}
	return v.Float()
}

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
