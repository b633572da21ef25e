package book

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/layout/report"
)

// helpsOf returns the sizes of the helps in a book by their names.
func helpsOf(b report.Report) map[string]string {
	out := map[string]string{}
	for _, row := range tables(b)["Helps that the work needs and the boat does not keep"].Rows {
		out[row[0]] = row[2]
	}
	return out
}

// lengthIn reads the length before a word of what is told, mm.
func lengthIn(t *testing.T, said, before, after string) float64 {
	t.Helper()
	m := regexp.MustCompile(before + `(\d+) mm` + after).FindStringSubmatch(said)
	if m == nil {
		t.Fatalf("no length after %q in %q", before, said)
	}
	n, _ := strconv.ParseFloat(m[1], 64)
	return n
}

// TestPastTheBattens: laths reach from the rib that a batten is tied to last to the last rib of
// all, with one to hold by, and the stick for widths is as long as the widest hot rib.
func TestPastTheBattens(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		f := facts(t, shipped(t, name), measure.Metric)
		w := &writer{Facts: f}
		helps := helpsOf(sharedBook(t, f))
		aft, fore := w.dryRun(f.Eye.Sighted)
		ribs, want := f.Frame.Ribs, 0.0
		for _, r := range ribs {
			if r.Name == aft {
				want = math.Max(want, r.Station-ribs[0].Station)
			}
			if r.Name == fore {
				want = math.Max(want, ribs[len(ribs)-1].Station-r.Station)
			}
		}
		pitch := ribs[1].Station - ribs[0].Station
		if long := lengthIn(t, helps["bilge laths"], "thick, ", " long"); long < want+pitch || long > want+3*pitch+50 {
			t.Errorf("%s: laths of %.0f mm for %.0f mm from %s and %s to the ends", name, long, want, aft, fore)
		}
		widest := 0.0
		for _, b := range f.Bend.Ribs {
			widest = math.Max(widest, b.Hot)
		}
		if long := lengthIn(t, helps["width stick"], "up to ", ""); long < widest || long >= widest+50 {
			t.Errorf("%s: a stick of %.0f mm for a width of %.0f mm", name, long, widest)
		}
	}
}

// TestDrillBetweenGunwales: the ribs where a drill of 250 mm and a hand's 50 mm have no room, by
// the gunwales' inner lower edges, are named with the least that is left.
func TestDrillBetweenGunwales(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		f := facts(t, shipped(t, name), measure.Metric)
		var narrow []string
		least, g := math.Inf(1), &f.Frame.Gunwale
		for _, r := range f.Frame.Ribs {
			if room := 2 * g.EdgeAt(r.Station, -g.Width/2, 0).Y; room < 300 {
				narrow, least = append(narrow, r.Name), math.Min(least, room)
			}
		}
		said := told(sharedBook(t, f))
		for _, rib := range narrow {
			if !regexp.MustCompile(fmt.Sprintf(`Between the gunwales at [^.]*\b%s\b[^.]* only %.0f mm are left`, rib, least)).MatchString(said) {
				t.Errorf("%s: %.0f mm at %s are not told", name, least, rib)
			}
		}
		if len(narrow) == 0 && strings.Contains(said, "a short drill") {
			t.Errorf("%s: a short drill where there is room", name)
		}
	}
}

// TestNoToolToSpare: where slats are lashed, nothing is screwed; where foam is strapped, nothing sawn.
func TestNoToolToSpare(t *testing.T) {
	tools := toolsOf(sharedBook(t, facts(t, shipped(t, "lake"), measure.Metric)))
	for step, spare := range map[string]string{"Inside": "screwdriver|drill", "Flotation": "screwdriver|drill|plane|saw"} {
		if m := regexp.MustCompile(spare).FindString(tools[step]); tools[step] == "" || m != "" {
			t.Errorf("%s: %q of %q", step, m, tools[step])
		}
	}
}

// TestLegsUnder: a cross piece over the legs of one who sits on the floor is warned of with its
// height; past the soles, or behind the back, it is not.
func TestLegsUnder(t *testing.T) {
	f := own(t, shipped(t, "brook"))
	brace, bar := f.Bend.Inside.Braces[0], &f.Frame.Thwarts[0]
	g := &f.Frame.Gunwale
	room := g.At(bar.At, -g.Width/2, 0).Z - bar.Thickness - f.Frame.Hull.FloorZ(bar.At)
	if want := fmt.Sprintf("stands over the legs of %s, its underside some %.0f mm", brace.Who, 10*math.Floor(room/10)); !strings.Contains(told(bookOf(t, f)), want) {
		t.Errorf("no caution says %q", want)
	}
	for _, at := range []float64{brace.At + 10, brace.At - brace.Leg} {
		bar.At = at
		if strings.Contains(told(bookOf(t, f)), "stands over the legs") {
			t.Errorf("a caution of legs for a bar at %.0f mm, the soles at %.0f mm", at, brace.At)
		}
	}
}
