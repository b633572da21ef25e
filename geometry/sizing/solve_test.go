package sizing

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"
)

// wish reads targets and what is free.
func wish(t testing.TB, c *Case, aim Aim, free string, targets ...string) Goal {
	t.Helper()
	w := Goal{Aim: aim}
	for _, text := range targets {
		target, err := ParseTarget(text, c.Family.Program)
		if err != nil {
			t.Fatal(err)
		}
		w.Targets = append(w.Targets, target)
	}
	var err error
	if w.Free, err = c.Free(free); err != nil {
		t.Fatal(err)
	}
	return w
}

// TestSolveAgainstGrid compares a search with the best of a grid of some 1300 boats, 340
// where time is short, over the same limits: the finished boat meets every target and is no
// more than half a hundredth larger than the best of the grid, whose steps are coarse.
func TestSolveAgainstGrid(t *testing.T) {
	for _, targets := range [][]string{{"draft<=95mm", "freeboard>=240mm"}, {"gm>=90mm", "length<=4400mm"}} {
		c := benchCase(t, "solo")
		w := wish(t, c, Smallest, "length,beam,depth", targets...)
		best := gridBest(t, w)
		start := time.Now()
		a, err := c.Solve(w)
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%v: %d tried, %v", targets, a.Tried, time.Since(start).Round(time.Millisecond))
		h := a.Boat.Design.Hull
		if got := float64(h.Length * h.Beam * h.Depth); got > best*1.005 {
			t.Errorf("%v: %.0f L of length x beam x depth, the grid has %.0f L", targets, got/1e6, best/1e6)
		}
		for _, target := range w.Targets {
			if m := target.margin(c.run.Number(target.Name)); m < -1e-3 {
				t.Errorf("%s: the finished boat has %s", target, c.run.Shown(target.Name))
			}
		}
		if f := a.Boat.Failures(); len(f) > 0 {
			t.Errorf("%v: %s", targets, f[0].String())
		}
		if len(a.Obstacles)+len(a.AtEdge) == 0 {
			t.Errorf("%v: nothing stands in the way of a smaller boat, which cannot be", targets)
		}
	}
}

func gridBest(t *testing.T, w Goal) float64 {
	t.Helper()
	c := benchCase(t, "solo")
	s := &search{c: c, free: w.Free, memory: map[string]candidate{}}
	var err error
	if s.targets, err = c.withRules(w.Targets); err != nil {
		t.Fatal(err)
	}
	best := math.Inf(1)
	n := some(7, 11)
	for i := range n * n * n {
		x := []float64{float64(i % n), float64(i / n % n), float64(i / n / n)}
		for k := range x {
			x[k] /= float64(n - 1)
		}
		if l := s.at(x); l.worst() <= met {
			best = math.Min(best, math.Exp(l.cost))
		}
	}
	if math.IsInf(best, 1) {
		t.Fatal("no boat of the grid meets the targets")
	}
	return best
}

// TestSolveAgain: the same wish gives the same boat.
func TestSolveAgain(t *testing.T) {
	var first string
	for range 2 {
		c := benchCase(t, "pack")
		a, err := c.Solve(wish(t, c, Easiest, "length,beam", "length<=3400mm"))
		if err != nil {
			t.Fatal(err)
		}
		got, err := a.Boat.Design.Fingerprint()
		if err != nil {
			t.Fatal(err)
		}
		if first != "" && got != first {
			t.Errorf("fingerprint %s, then %s", first, got)
		}
		first = got
	}
}

// TestClash names the wish, or the two, that cannot be met.
func TestClash(t *testing.T) {
	for _, row := range []struct {
		targets []string
		want    string
	}{
		{[]string{"draft<=60mm"}, "nothing fits: draft<=60 mm cannot be met by moving what is free"},
		{[]string{"boat_weight<=11kg", "gm>=150mm"}, "nothing fits: boat_weight<=11 kg and gm>=150 mm cannot be met together"},
		{[]string{"length<=3200mm", "draft<=80mm", "freeboard>=200mm"}, "nothing fits: length<=3200 mm and draft<=80 mm cannot be met together"},
	} {
		c := benchCase(t, "pack")
		_, err := c.Solve(wish(t, c, Smallest, "length,beam,depth", row.targets...))
		var clash *Clash
		if !errors.As(err, &clash) || !strings.HasPrefix(err.Error(), row.want) {
			t.Errorf("%v: %v, want %q", row.targets, err, row.want)
		}
	}
}

func TestParseTargetRefuses(t *testing.T) {
	c := benchCase(t, "pack")
	for text, want := range map[string]string{
		"draft": "accepted: a name, <= or >=", "draft<=3kg": "draft is a length (mm), not a weight (kg)", "drat<=3mm": "the nearest name is draft",
		"draft<=": `"" is no number`, "waters<=3": "waters is a text", "draft<=1,5mm": "is no number with its unit",
	} {
		if _, err := ParseTarget(text, c.Family.Program); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	for text, want := range map[string]string{
		"beem": "the nearest name is beam", "beam,beam": "given twice", "waters": "no number with a formula", "draft": "no number with a formula",
		"length,beam,depth,fullness,pitch,from_end,keel_straight": "7 values are free; accepted: up to 6", "beginner": "no number",
	} {
		if _, err := c.Free(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("free %q: %v, want %q", text, err, want)
		}
	}
}

func TestParseSweep(t *testing.T) {
	c := benchCase(t, "pack")
	s, err := ParseSweep("beam=680mm..78cm/20mm", c.Family.Program)
	if err != nil || s.From != 680 || s.To != 780 || s.Step != 20 || s.Name != "beam" {
		t.Errorf("%+v %v", s, err)
	}
	for text, want := range map[string]string{
		"beam": "is not understood", "beam=1mm..2mm": "is not understood", "beam=2mm..1mm/1mm": "goes nowhere", "beam=1mm..2mm/0mm": "goes nowhere",
		"beam=1mm..900mm/1mm": "makes 899 boats, more than 200", "beam=1mm..2kg/1mm": "is a weight (kg)", "draft=1mm..2mm/1mm": "given from outside",
	} {
		if _, err := ParseSweep(text, c.Family.Program); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	if err := c.Set("firm", 0); err != nil { // else the section gives up what the beam gains
		t.Fatal(err)
	}
	rows, err := c.Sweep(s)
	if err != nil || len(rows) != 6 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for i := 1; i < len(rows); i++ {
		if rows[i].Values["gm"] <= rows[i-1].Values["gm"] {
			t.Errorf("a wider boat is less stiff: %v", rows)
		}
	}
}

// BenchmarkSolve is a whole search with its explanation.
func BenchmarkSolve(b *testing.B) {
	for b.Loop() {
		c := benchCase(b, "solo")
		if _, err := c.Solve(wish(b, c, Smallest, "length,beam,depth", "draft<=95mm", "freeboard>=240mm")); err != nil {
			b.Fatal(err)
		}
	}
}

// TestAskedForSkin: the skin under water is measured in a search where a target or a check of
// the family asks for it, and only there.
func TestAskedForSkin(t *testing.T) {
	c := benchCase(t, "pack")
	if got := c.run.Number("wetted"); got != 0 {
		t.Errorf("%g mm2 are measured and nothing asks for them", got)
	}
	if _, err := c.Solve(wish(t, c, Smallest, "length", "wetted<=1.9 m2")); err != nil {
		t.Fatal(err)
	}
	again := ownCase(t, "check slips = wetted <= 3 m2 # as a test\n")
	if err := again.Settle(); err != nil {
		t.Fatal(err)
	}
	if got := again.run.Number("wetted"); !(got > 1e6) {
		t.Errorf("%g mm2 of skin under water where a check asks for it", got)
	}
}
