package outfits

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water"
)

func boat(t *testing.T, name string) (aboard.Boat, water.Water) {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	f, err := frame.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	b, err := aboard.New(f, aboard.People(d), d.Gear)
	if err != nil {
		t.Fatal(err)
	}
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	return b, w
}

// TestWindPage: in the table of winds no sail comes in past 7.9 m/s, none goes over
// past the 20.7 m/s where force 8 of the scale ends, and "take in a reef" has no 7.9.
func TestWindPage(t *testing.T) {
	pair := regexp.MustCompile(`([0-9.]+)([ *])\([ 0-9]+\) +(over 20|[0-9.]+ \([ 0-9]+\))`)
	for _, r := range design.Rigs() {
		for _, area := range []float64{0.5, 2, 4} {
			b, w := boat(t, "lake")
			s := b.Frame.Design.Sail()
			s.Rig, s.Area, s.Reefs = r, area, 3
			f, err := sail.New(b, s, w)
			if err != nil {
				t.Fatal(err)
			}
			var out bytes.Buffer
			if err := SailPage(&out, f, measure.Metric); err != nil {
				t.Fatal(err)
			}
			_, table, _ := strings.Cut(out.String(), "WIND in m/s")
			table, what, _ := strings.Cut(table, "WHAT TO DO")
			found := pair.FindAllStringSubmatch(table, -1)
			if len(found) < 3 {
				t.Fatalf("%v of %g m2: no winds in %q", r, area, table)
			}
			for _, m := range found {
				in, _ := strconv.ParseFloat(m[1], 64)
				if in > 7.9 || (in == 7.9) != (m[2] == "*") {
					t.Errorf("%v of %g m2: taken in at %s", r, area, m[0])
				}
				at, _, _ := strings.Cut(m[3], " (")
				if v, err := strconv.ParseFloat(at, 64); err == nil && v > 20.7 {
					t.Errorf("%v of %g m2: goes over in %s", r, area, m[3])
				}
			}
			if regexp.MustCompile(`7\.9 .*take in a reef`).MatchString(what) {
				t.Errorf("%v of %g m2: %q", r, area, what)
			}
		}
	}
}
