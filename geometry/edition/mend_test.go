package edition

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/marks"
)

// TestMend: wood can be taken away and not put on, a line drawn anew, a bend steamed again.
func TestMend(t *testing.T) {
	for _, c := range []struct {
		part, quantity string
		old, new       float64
		want           Verdict
		do             string
	}{
		{"rib M", "length", 1000, 990, Rework, "cut 10.0 mm off"}, {"rib M", "length", 1000, 1010, Again, "10.0 mm too short"},
		{"keel", "fore end", 1480, 1470, Rework, "cut 10.0 mm off"}, {"keel", "fore end", 1470, 1480, Again, "too short"},
		{"keel", "aft end", -1480, -1470, Rework, "cut 10.0 mm off"}, {"keel", "aft end", -1470, -1480, Again, "too short"},
		{"rib M", "thickness", 6, 5, Rework, "plane 1.0 mm off"}, {"rib M", "thickness", 5, 6, Again, "too thin"},
		{"mortise F1", "width", 6, 8, Rework, "larger"}, {"mortise F1", "width", 8, 7, Rework, "sliver"}, {"mortise F1", "width", 9, 6, Again, "too large"},
		{"mortise F1", "from midship", 125, 129, Rework, "4.0 mm forward"}, {"mortise F1", "from midship", 125, 115, Again, "from its place"},
		{"rib M", "stringer mark", 300, 320, Rework, "mark it anew, 20.0 mm outward"}, {"rib M", "bend mark", 300, 320, Rework, "steam it again"},
		{"skin", "midship girth", 1200, 1250, Again, "too little"}, {"skin", "midship girth", 1250, 1200, Rework, "cut 50.0 mm off"},
		{"bow breasthook", "bevel", 0.1, 0.2, Rework, "5.7 deg"}, {"block 1", "length", 100, 110, Again, "glued"},
	} {
		d := Change{marks.Name{Part: c.part, Quantity: c.quantity}, c.old, c.new, marks.Millimeter, 1}
		if c.quantity == "bevel" {
			d.Unit, d.Tolerance = marks.Radian, math.Pi/180
		}
		if v, do := mend(ruleOf(d.Name), d, d.By()); v != c.want || !strings.Contains(do, c.do) {
			t.Errorf("%s, %s from %g to %g: %v, %q; want %v, %q", c.part, c.quantity, c.old, c.new, v, do, c.want, c.do)
		}
	}
}
