package size

import (
	"fmt"
	"testing"
	"time"
)

func TestZ(t *testing.T) {
	for _, tc := range []struct {
		fam     string
		targets []string
		free    string
		aim     Aim
	}{
		{"solo", []string{"draft<=110mm", "freeboard>=200mm"}, "length,beam,depth", Smallest},
		{"solo", []string{"draft<=95mm", "freeboard>=260mm"}, "length,beam,depth", Smallest},
		{"pack", []string{"length<=3400mm", "gm>=90mm"}, "length,beam,depth", Smallest},
		{"pack", []string{"length<=3400mm"}, "length,beam,depth", Easiest},
		{"tandem", []string{"gunwale_stick<=5 m", "gm>=100mm", "draft<=120mm"}, "length,beam,depth,fullness", Smallest},
		{"pack", []string{"draft<=60mm", "beam<=600mm"}, "length,beam,depth", Smallest},
		{"pack", []string{"boat_weight<=8kg", "gm>=150mm"}, "length,beam,depth", Smallest},
	} {
		c := benchCase(t, tc.fam)
		var w Wish
		w.Aim = tc.aim
		for _, x := range tc.targets {
			tt, err := ParseTarget(x, c.Family.Program)
			if err != nil {
				t.Fatal(err)
			}
			w.Targets = append(w.Targets, tt)
		}
		var err error
		w.Free, err = c.Free(tc.free)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Println(tc, "own", c.run.Shown("length"), c.run.Shown("beam"), c.run.Shown("depth"), c.run.Shown("draft"), c.run.Shown("freeboard"), c.run.Shown("gm"))
		t0 := time.Now()
		a, err := c.Solve(w)
		el := time.Since(t0)
		if err != nil {
			fmt.Println("  ", err, el)
			continue
		}
		r := c.run
		fmt.Println("  ", r.Shown("hull.length"), r.Shown("hull.beam"), r.Shown("hull.depth"), r.Shown("draft"), r.Shown("freeboard"), r.Shown("gm"), r.Shown("effort"), r.Shown("gunwale_stick"), a.Looks, el, len(a.Boat.Failures()))
		for _, b := range a.Binds {
			fmt.Println("     ", b)
		}
		fmt.Println("     ", a.AtEdge)
	}
}
