package joint

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestLanded: stringers so wide that their lashing's holes come out of a stem are refused, those
// of the width that is told in the refusal are not, and those a millimeter wider are.
func TestLanded(t *testing.T) {
	wide := func(mm float64) error {
		_, err := Of(frametest.Shipped(t, "river", func(d *design.Design) { d.Stringers.Width = measure.Length(mm) }))
		return err
	}
	err := wide(60)
	if err == nil {
		t.Fatal("stringers of 60 mm are lashed to stems through holes beside them")
	}
	var most int
	if _, told, _ := strings.Cut(err.Error(), "accepted here: up to "); told != "" {
		fmt.Sscanf(told, "%d mm", &most)
	}
	if most < 20 || wide(float64(most)) != nil || wide(float64(most+1)) == nil {
		t.Errorf("%v: %v, %v", err, wide(float64(most)), wide(float64(most+1)))
	}
}

// TestGunwalesHoleApart: however high the highest stringer lands and narrow the stem is, the hole for
// the gunwales' lashing keeps wood to those of the stringers'.
func TestGunwalesHoleApart(t *testing.T) {
	for at := 0.80; at < 0.94; at += 0.005 {
		for _, moulded := range []measure.Length{32, 38, 55} {
			j, err := Of(frametest.Shipped(t, "brook", func(d *design.Design) {
				d.Stringers.At[len(d.Stringers.At)-1] = at
				d.Bow.Moulded = moulded
			}))
			if err != nil {
				t.Fatal(err)
			}
			for i, e := range j.Ends {
				for _, h := range j.Landings[i].Holes {
					if wall := h.At.Sub(e.At).Norm() - e.Drill/2 - j.Landings[i].Drill/2; wall < leastWall {
						t.Errorf("highest stringer at %.3f, %s of %.0f mm: %.2f mm of wood between holes", at, e.End, moulded, wall)
					}
				}
			}
		}
	}
}
