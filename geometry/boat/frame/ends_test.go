package frame

import (
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// anyStem draws a stem's keys from all that a file may hold that could be meant.
func anyStem(r *rand.Rand, s *design.Stem) {
	in := func(lo, hi float64) float64 { return math.Round(lo + (hi-lo)*r.Float64()) }
	s.Rake = measure.Angle(in(-10, 45) * math.Pi / 180)
	s.ForefootRadius = measure.Length(in(60, 360))
	s.HeadTurn, s.HeadRadius = 0, 0
	if r.IntN(4) > 0 {
		s.HeadTurn = measure.Angle(in(0, 55) * math.Pi / 180)
	}
	if r.IntN(3) == 0 {
		s.HeadRadius = measure.Length(in(50, 700))
	}
	s.Moulded, s.Horn, s.Landing = measure.Length(in(45, 90)), measure.Length(in(15, 45)), measure.Length(in(30, 100))
}

// TestAnyEnds: stems of random keys, bow and stern each of its own, are either stems
// that hold the gunwales' ends, or are refused in one plain line that names an end or a
// key and says what to do.
func TestAnyEnds(t *testing.T) {
	const tries = 150
	built, recurved := 0, 0
	for seed := range uint64(tries) {
		r := rand.New(rand.NewPCG(seed, 14))
		d, err := design.Shipped(design.ShippedNames()[seed%3])
		if err != nil {
			t.Fatal(err)
		}
		stern := d.After()
		d.Stern = &stern
		anyStem(r, &d.Bow)
		anyStem(r, d.Stern)
		if p := d.Check(); p != nil {
			plainly(t, seed, p.Key+": "+p.Text)
			continue
		}
		f, err := Build(d)
		if err != nil {
			plainly(t, seed, err.Error())
			continue
		}
		built++
		for _, e := range []struct {
			stem Stem
			end  hull.End
			d    design.Stem
			hook Breasthook
		}{{f.Bow, f.Hull.Bow, d.Bow, f.BowHook}, {f.Stern, f.Hull.Stern, *d.Stern, f.SternHook}} {
			if e.d.HeadTurn > e.d.Rake {
				recurved++
			}
			holds(t, seed, f, e.stem, e.end, e.hook)
		}
	}
	t.Logf("%d of %d built, %d ends with a head that leans inboard", built, tries, recurved)
	if built < tries/5 || recurved < 20 {
		t.Errorf("only %d of %d were built, %d heads lean inboard", built, tries, recurved)
	}
}

// plainly wants one line with its cure.
func plainly(t *testing.T, seed uint64, text string) {
	t.Helper()
	cured := false
	for _, w := range []string{"give", "accepted", "shorten", "move", "set ", "bring"} {
		cured = cured || strings.Contains(text, w)
	}
	if !cured || strings.ContainsAny(text, "\n\r") || strings.Contains(text, "NaN") || len(text) > 400 {
		t.Errorf("seed %d: %q is no plain refusal", seed, text)
	}
}

// holds wants wood where the joints need it, read off the outline's points: nothing where
// gunwales and breasthook lie, a shelf under the gunwales' ends, wood outside them all the
// way up, and the skin's thickness from the outermost place to half the length.
func holds(t *testing.T, seed uint64, f *Frame, s Stem, e hull.End, hook Breasthook) {
	t.Helper()
	if !s.Outline.Closed() || !s.Outline.Joined() {
		t.Errorf("seed %d, %s: the outline does not close", seed, s.End)
	}
	pts := s.Outline.Flatten(0.02)
	at, rise := s.Shelf[1], (s.Shelf[1].Y-s.Shelf[0].Y)/(s.Shelf[1].X-s.Shelf[0].X)
	least := math.Inf(1)
	for i, p := range pts {
		if p.X < at.X-0.01 && p.Y > at.Y+rise*(p.X-at.X)+0.05 {
			t.Fatalf("seed %d, %s: wood at %v, where the gunwales and the breasthook lie", seed, s.End, p)
		}
		q := pts[(i+1)%len(pts)]
		if mid := p.Lerp(q, 0.5); q.Y > p.Y && mid.Y > at.Y { // up the outer edge
			least = math.Min(least, math.Min(p.X, q.X)-at.X)
		}
	}
	if least < leastHorn-0.05 {
		t.Errorf("seed %d, %s: %.2f mm of wood outside the gunwale ends, want %.0f", seed, s.End, least, leastHorn)
	}
	if long := at.X - s.Shelf[0].X; long < leastShelf-1e-9 {
		t.Errorf("seed %d, %s: a shelf of %.2f mm", seed, s.End, long)
	}
	// The breasthook's nose stands at the gunwales' ends, inside the horn.
	if nose := hook.Outline.Bounds().Max.X; nose > 1e-6 || s.Outline.Bounds().Max.X < at.X+leastHorn {
		t.Errorf("seed %d, %s: the breasthook reaches %.3f mm past the gunwale ends", seed, s.End, nose)
	}
	skin, half := float64(f.Design.Skin.Thickness()), float64(f.Design.Hull.Length)/2
	if out := half - s.Outline.Bounds().Max.X; out < skin-0.01 || out > 2*skin {
		t.Errorf("seed %d, %s: the wood ends %.3f mm inside the length overall, want the skin's %.1f", seed, s.End, out, skin)
	}
	for i, l := range s.Landings {
		if !inside(pts, l) {
			t.Errorf("seed %d, %s: stringer %d lands at %v, off the wood", seed, s.End, i+1, l)
		}
	}
}

// inside counts how often a ray to the right crosses an outline.
func inside(pts []geometry.Point, p geometry.Point) bool {
	in := false
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// horned finds the horn and the moulded depth that a refusal asks for.
var horned = regexp.MustCompile(`give a horn of (\d+) mm( and (\d+) mm more moulded depth)?, or less head_turn$`)

// TestHeadCure follows what a refused head asks for: with the horn and the moulded depth
// it names, the head holds.
func TestHeadCure(t *testing.T) {
	d, err := design.Shipped("lake")
	if err != nil {
		t.Fatal(err)
	}
	d.Bow.HeadTurn, d.Bow.Horn, d.Bow.Landing, d.Bow.Moulded = 1.35, 12, 60, 45
	for range 4 {
		_, err := Build(d)
		if err == nil {
			return
		}
		text := err.Error()
		cure := horned.FindStringSubmatch(text)
		if cure == nil {
			t.Fatalf("another refusal: %s", text)
		}
		horn, _ := strconv.Atoi(cure[1])
		more, _ := strconv.Atoi(cure[3])
		d.Bow.Horn, d.Bow.Moulded = measure.Length(horn), d.Bow.Moulded+measure.Length(more)
	}
	t.Errorf("no cure: horn %v, moulded %v", d.Bow.Horn, d.Bow.Moulded)
}

// TestHeadCureKeepsShelf: a longer horn takes from the shelf what it gives the head. With
// 13 mm of shelf and 1 mm of head, 3 mm more horn leave 10 mm, 2 mm short of a shelf.
func TestHeadCureKeepsShelf(t *testing.T) {
	s := Stem{Shelf: [2]geometry.Point{{X: 87}, {X: 100}}}
	err := s.checkHead("bow", design.Stem{Horn: 10, HeadTurn: 0.5}, 101)
	if want := "give a horn of 13 mm and 2 mm more moulded depth, or less head_turn"; err == nil || !strings.HasSuffix(err.Error(), want) {
		t.Errorf("got %v, want %q", err, want)
	}
}
