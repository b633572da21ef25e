package sizing

import (
	"math"
	"slices"
	"testing"
)

// TestLastMillimeter: of the boat that a search finds, every free length is a whole
// number of millimeters, and with one less of any a wish or a check of the family fails,
// found by sizing each of these boats alone.
func TestLastMillimeter(t *testing.T) {
	for _, row := range []struct {
		family string
		free   string
		wishes []string
	}{
		{"solo", "length,beam,depth", []string{"draft<=95mm", "freeboard>=240mm"}},
		{"pack", "length,beam", []string{"gm>=70mm"}},
	} {
		c := benchCase(t, row.family)
		w := wish(t, c, Smallest, row.free, row.wishes...)
		a, err := c.Solve(w)
		if err != nil {
			t.Fatal(err)
		}
		values := make([]float64, len(w.Free))
		for i, f := range w.Free {
			values[i] = a.Boat.Case.run.Number(f.Name)
		}
		t.Logf("%v: %v", row.wishes, values)
		if why := misses(t, w, row.family, values); len(why) > 0 {
			t.Errorf("%v of %v misses %v itself", row.wishes, values, why)
		}
		for i, f := range w.Free {
			if values[i] != math.Round(values[i]) {
				t.Errorf("%s is %.3f mm, no whole millimeter", f.Name, values[i])
			}
			shorter := slices.Clone(values)
			if shorter[i]--; shorter[i] < f.Lo {
				continue
			}
			if why := misses(t, w, row.family, shorter); len(why) == 0 {
				t.Errorf("%v: %s of %.0f mm passes too", row.wishes, f.Name, shorter[i])
			} else {
				t.Logf("%s of %.0f mm fails %v", f.Name, shorter[i], why)
			}
		}
	}
}

// misses sizes the boat of some values anew and names what it misses.
func misses(t *testing.T, w Goal, family string, values []float64) (why []string) {
	t.Helper()
	c := benchCase(t, family)
	for i, f := range w.Free {
		if err := c.Set(f.Name, values[i]); err != nil {
			t.Fatal(err)
		}
	}
	c.forget()
	if err := c.Settle(); err != nil {
		return []string{err.Error()}
	}
	boat, err := c.Finish()
	if err != nil {
		return []string{err.Error()}
	}
	for _, target := range w.Targets {
		if target.margin(c.run.Number(target.Name)) < 0 {
			why = append(why, target.String())
		}
	}
	for _, f := range boat.Failures() {
		why = append(why, f.About)
	}
	return why
}
