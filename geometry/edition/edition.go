// Package edition compares two editions of a design: which marks moved, whether that
// matters on wood, what of the wood that is cut already still serves, and which edition
// would keep it.
package edition

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/trial/bend"
)

// Edition is one of the two, worked out.
type Edition struct {
	Design *design.Design
	Bend   *bend.Report
	Marks  []marks.Mark
}

// What moves by less counts as not moved: no tool and no tape shows it, and patterns
// letter angles to a tenth of a degree.
const (
	FloorLength = 0.1                 // mm
	FloorAngle  = 0.1 * math.Pi / 180 // radians
)

// Outline is the quantity of a part's sawn outline: its value is how far the outlines
// lie apart at most when one is laid on the other as well as can be.
const Outline = "outline"

// Change is a mark that moved, or that one edition alone has.
type Change struct {
	marks.Name
	Old, New  float64 // NaN in the edition that does not have it
	Unit      marks.Unit
	Tolerance float64 // the less of the two
}

// By is how far it moved; NaN where one edition alone has it.
func (c Change) By() float64 { return c.New - c.Old }

// Moved reports whether both editions have it.
func (c Change) Moved() bool { return !math.IsNaN(c.By()) }

// Matters reports whether wood that is marked by the one edition is wrong for the other:
// it moved by more than its tolerance, or one edition alone has it.
func (c Change) Matters() bool { return !(math.Abs(c.By()) <= c.Tolerance) }

// Share is how much of its tolerance it moved by; +Inf where one edition alone has it.
func (c Change) Share() float64 {
	if !c.Moved() {
		return math.Inf(1)
	}
	return math.Abs(c.By()) / c.Tolerance
}

// Shifted is a stem that lies elsewhere in the boat, whatever its shape does.
type Shifted struct {
	Part      string
	Along, Up float64 // mm, forward and up positive, of its middle
	Turn      float64 // radians
	Apart     float64 // of the outlines then, mm; 0 for the same shape
}

// Comparison is what changed from one edition to the next.
type Comparison struct {
	Old, New *Edition
	Keys     []design.Difference
	Changes  []Change  // in the order of the marks of the new edition; what the old one alone has stands last
	Shifted  []Shifted // stems that lie elsewhere
	Same     int       // marks that did not move

	was, is map[marks.Name]marks.Mark
	fits    []fit // of the new edition's outlines
}

// Compare finds what moved, of unrounded values.
func Compare(old, new *Edition) *Comparison {
	c := &Comparison{Old: old, New: new, Keys: design.Differ(old.Design, new.Design)}
	c.was, c.is = marks.Index(old.Marks), marks.Index(new.Marks)
	for _, m := range new.Marks {
		before, both := c.was[m.Name]
		d := Change{m.Name, math.NaN(), m.Value, m.Unit, m.Tolerance}
		if both {
			d.Old, d.Tolerance = before.Value, min(m.Tolerance, before.Tolerance)
		}
		if both && math.Abs(d.By()) <= floor(m.Unit) {
			c.Same++
			continue
		}
		c.Changes = append(c.Changes, d)
	}
	for _, m := range old.Marks {
		if _, both := c.is[m.Name]; !both {
			c.Changes = append(c.Changes, Change{m.Name, m.Value, math.NaN(), m.Unit, m.Tolerance})
		}
	}
	c.outlines()
	return c
}

func floor(u marks.Unit) float64 {
	if u == marks.Radian {
		return FloorAngle
	}
	return FloorLength
}

// outlines lays the outlines of both editions on each other.
func (c *Comparison) outlines() {
	was, is := shapesOf(c.Old), shapesOf(c.New)
	c.fits = make([]fit, len(is))
	for k, s := range is {
		i := slices.IndexFunc(was, func(o shape) bool { return o.part == s.part && o.which == s.which })
		if i < 0 {
			continue // its marks say that it is new
		}
		c.fits[k] = c.laid(was, is, i, k)
		f := c.fits[k]
		name := marks.Name{Part: s.part, Quantity: s.quantity()}
		if f.apart > FloorLength {
			c.Changes = append(c.Changes, Change{name, 0, f.apart, marks.Millimeter, sawnTo})
		} else {
			c.Same++
		}
		if s := f.shifted(s); strings.HasSuffix(s.Part, " stem") && (s.Along != 0 || s.Up != 0 || s.Turn != 0) {
			c.Shifted = append(c.Shifted, s)
		}
	}
}

// laid lays an old outline on a new one; what is the same as one before is not laid again.
func (c *Comparison) laid(was, is []shape, i, k int) fit {
	for j := range k {
		if i < len(was) && j < len(was) && was[j].part == is[j].part && slices.Equal(was[j].outline, was[i].outline) && slices.Equal(is[j].outline, is[k].outline) {
			return c.fits[j]
		}
	}
	return layOn(was[i].outline, is[k].outline)
}

// fitOf is how a part's outline was laid.
func (c *Comparison) fitOf(part, quantity string) fit {
	for k, s := range shapesOf(c.New) {
		if s.part == part && s.quantity() == quantity {
			return c.fits[k]
		}
	}
	return fit{move: geometry.Shift(0, 0)}
}

// Mattering lists the changes that matter, those that moved most of their tolerance
// first; what one edition alone has comes last, in order.
func (c *Comparison) Mattering() []Change {
	out := slices.DeleteFunc(slices.Clone(c.Changes), func(d Change) bool { return !d.Matters() })
	slices.SortStableFunc(out, func(a, b Change) int {
		switch {
		case a.Moved() && !b.Moved():
			return -1
		case b.Moved() && !a.Moved():
			return 1
		}
		return cmp.Compare(b.Share(), a.Share())
	})
	return out
}
