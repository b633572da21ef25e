package sizing

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/water"
)

// sought sizes a brief for one person and gear by a search over length, beam and depth.
func sought(t *testing.T, name string, kg, stature, gear float64, wishes ...string) (*Answer, Goal, error) {
	t.Helper()
	f, err := family.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	b := DefaultBrief()
	b.Title, b.Gear, b.Density = "Sought", gear, water.Density(water.Fresh, water.Usual)
	for range f.Seats {
		b.Crew = append(b.Crew, Paddler{Person: body.Person{Weight: kg, Stature: stature}, Posture: family.Either})
	}
	c := settledCase(t, f, b)
	g := wish(t, c, Smallest, "length,beam,depth", wishes...)
	a, err := c.Solve(g)
	return a, g, err
}

// flaws tells what is wrong with a boat that a search found: a length between
// millimeters, a wish missed, a check that fails.
func flaws(a *Answer, g Goal) (out []string) {
	run := a.Boat.Case.run
	for _, f := range g.Free {
		if v := run.Number(f.Name); f.Dim == formula.Length && v != math.Round(v) {
			out = append(out, fmt.Sprintf("%s is %.4f mm, no whole millimeter", f.Name, v))
		}
	}
	for _, t := range g.Targets {
		if t.margin(run.Number(t.Name)) < 0 {
			out = append(out, fmt.Sprintf("%s: %s", t, run.Shown(t.Name)))
		}
	}
	for _, v := range a.Boat.Failures() {
		out = append(out, v.String())
	}
	return out
}

// TestStand sizes briefs whose unrounded best cannot be built, because the foot of a stem
// would lie under the last rib, or fails a check once it is rounded. A boat that meets
// all stands near by; where one of whole millimeters was found by hand, it is no larger.
func TestStand(t *testing.T) {
	rows := []struct {
		family            string
		kg, stature, gear float64
		freeboard         float64
		byHand            [3]float64 // length, beam, depth
	}{
		{"solo", 95, 1820, 12, 256, [3]float64{4270, 734, 311}}, // of all beams and depths beside; 732 x 312 is larger, 733 x 311 leaves too little freeboard. 727 x 310 stood before floor slats and flotation were weighed
		{"pack", 62, 1680, 12, 252, [3]float64{}},
		{"pack", 45, 1680, 12, 223, [3]float64{}},
		{"solo", 95, 1820, 12, 250, [3]float64{4270, 726, 310}},
		{"pack", 45, 1680, 12, 238, [3]float64{}},
		{"pack", 62, 1680, 12, 242, [3]float64{}},
		{"pack", 62, 1680, 12, 245, [3]float64{}},
		{"pack", 62, 1680, 12, 250, [3]float64{}},
		{"pack", 62, 1680, 12, 260, [3]float64{}},
		{"pack", 62, 1680, 12, 267, [3]float64{}},
	}
	for _, row := range rows[:some(3, len(rows))] {
		a, g, err := sought(t, row.family, row.kg, row.stature, row.gear, fmt.Sprintf("freeboard>=%.0fmm", row.freeboard))
		if err != nil {
			t.Errorf("%+v: %v", row, err)
			continue
		}
		h := a.Boat.Design.Hull
		t.Logf("%s %.0f kg, %.0f mm: %s x %s x %s", row.family, row.kg, row.freeboard, h.Length, h.Beam, h.Depth)
		for _, flaw := range flaws(a, g) {
			t.Errorf("%+v: %s", row, flaw)
		}
		if most := row.byHand[0] * row.byHand[1] * row.byHand[2]; most > 0 && float64(h.Length*h.Beam*h.Depth) > most {
			t.Errorf("%+v: %s x %s x %s is larger", row, h.Length, h.Beam, h.Depth)
		}
	}
}

// long is a number with more than six places.
var long = regexp.MustCompile(`\.[0-9]{7,}`)

// TestSought: whatever the brief and the wish, a search finds a boat without a flaw or
// says that nothing fits; and its file is short and reads back as the same design.
func TestSought(t *testing.T) {
	n := some(6, 300)
	r := rand.New(rand.NewPCG(5, 12))
	fits, between := 0, 0
	for i := range n {
		name := []string{"pack", "solo", "tandem"}[i%3]
		kg, stature, gear := 45+65*r.Float64(), 1520+400*r.Float64(), 25*r.Float64()
		wish := fmt.Sprintf("freeboard>=%.0fmm", 160+120*r.Float64())
		switch r.IntN(4) {
		case 0:
			wish = fmt.Sprintf("gm>=%.0fmm", 50+60*r.Float64())
		case 1:
			wish = fmt.Sprintf("draft<=%.0fmm", 85+50*r.Float64())
		}
		about := fmt.Sprintf("%d: %s, %.1f kg, %.0f mm, gear %.1f kg, %s", i, name, kg, stature, gear, wish)
		a, g, err := sought(t, name, kg, stature, gear, wish)
		var clash *Clash
		switch {
		case errors.As(err, &clash):
			if clash.Whole {
				between++
				t.Logf("%s: %v", about, err)
			}
			continue
		case err != nil:
			t.Errorf("%s: %v", about, err)
			continue
		}
		fits++
		for _, flaw := range flaws(a, g) {
			t.Errorf("%s: %s", about, flaw)
		}
		readBack(t, about, a.Boat)
	}
	if t.Logf("%d of %d fit", fits, n); fits < n/2 || between > n/50 {
		t.Errorf("only %d of %d briefs fit, %d between millimeters", fits, n, between)
	}
}

// readBack writes a boat's design and reads it again.
func readBack(t *testing.T, about string, b *Boat) {
	t.Helper()
	var file bytes.Buffer
	if err := b.Write(&file); err != nil {
		t.Fatalf("%s: %v", about, err)
	}
	for _, line := range strings.Split(file.String(), "\n") {
		if long.MatchString(line) && strings.Contains(line, "mm") && !strings.HasPrefix(line, "#") {
			t.Errorf("%s: the file says %s", about, line)
		}
	}
	back, err := design.Decode(&file, "back")
	if err != nil {
		t.Fatalf("%s: %v", about, err)
	}
	if !reflect.DeepEqual(back, b.Design) {
		t.Errorf("%s: the file reads back as another design", about)
	}
}

// standing is a search that has settled on a solo canoe with 256 mm of freeboard, and the
// free values of that boat.
func standing(t *testing.T) (*search, []float64) {
	t.Helper()
	a, g, err := sought(t, "solo", 95, 1820, 12, "freeboard>=256mm")
	if err != nil {
		t.Fatal(err)
	}
	c := a.Boat.Case
	asked, err := c.withRules(g.Targets)
	if err != nil {
		t.Fatal(err)
	}
	var values []float64
	for _, f := range g.Free {
		values = append(values, c.run.Number(f.Name))
	}
	return &search{c: c, free: g.Free, asked: asked, aim: g.Aim, memory: map[string]candidate{}}, values
}

// TestStandFromShort: from a boat a few millimeters too small for what was asked, the
// search steps on to one that meets all of it.
func TestStandFromShort(t *testing.T) {
	s, values := standing(t)
	for i := range values {
		values[i] -= 3
	}
	m, err := s.stand(values)
	if err != nil || m.short != 0 {
		t.Errorf("from %v: %v misses by %g, %v", values, m.values, m.short, err)
	}
}

// TestStandFromUnbuilt: from a boat so shallow that its seat would hang beside the
// gunwales, the search goes up to where it can be built, and on to the least depth that
// meets all that was asked: that of the boat as it was found. Where the depth must stay,
// it says why the boat cannot be built.
func TestStandFromUnbuilt(t *testing.T) {
	s, found := standing(t)
	i := slices.IndexFunc(s.free, func(f FreeValue) bool { return f.Name == "depth" })
	s.free = slices.Clone(s.free[i : i+1])
	s.free[0].Lo = 150 // less than a seat that feet go under, and nothing left to hang it by
	shallow := []float64{s.free[0].Lo}
	_, why := s.make(shallow)
	if why == nil {
		t.Fatalf("a depth of %v can be built, so it tries nothing; choose a boat that cannot be", shallow)
	}
	if m, err := s.stand(shallow); err != nil || m.short != 0 || m.values[0] != found[i] {
		t.Errorf("from a depth of %v: %v misses by %g, %v; found before: %v", shallow, m.values, m.short, err, found[i])
	}
	s.free[0].Hi = s.free[0].Lo
	if m, err := s.stand(shallow); err == nil || err.Error() != why.Error() {
		t.Errorf("with no way to go from %v: %v, %v; want: %v", shallow, m.values, err, why)
	}
}
