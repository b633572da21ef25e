package nested

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/body"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/trial/stow"
)

const room = 5.0 // mm, as people ask for it

// median people, near the survey's medians.
func woman() sizing.Paddler { return paddler(body.Person{Weight: 62, Stature: 1630, Sex: body.Woman}) }
func man() sizing.Paddler   { return paddler(body.Person{Weight: 84, Stature: 1760, Sex: body.Man}) }

func paddler(p body.Person) sizing.Paddler { return sizing.Paddler{Person: p, Posture: family.Either} }

// maker makes cases of a family for people.
func maker(t *testing.T, use string, crew ...sizing.Paddler) func() (*sizing.Case, error) {
	t.Helper()
	f, err := family.Shipped(use)
	if err != nil {
		t.Fatal(err)
	}
	b := sizing.DefaultBrief()
	b.Crew, b.Title = crew, strings.ToUpper(use[:1])+use[1:]
	return func() (*sizing.Case, error) { return sizing.NewCase(f, b) }
}

// ready sizes a boat for its people alone, as one that others nest with.
func ready(t *testing.T, make func() (*sizing.Case, error)) *stow.Boat {
	t.Helper()
	b, err := (&seeker{make: make}).boat(nil)
	if err != nil {
		t.Fatal(err)
	}
	return boatOf(t, b.Frame)
}

func boatOf(t *testing.T, f *frame.Frame) *stow.Boat {
	t.Helper()
	b, err := stow.NewBoat(f)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// sampled is the least room in the stations of the outer boat's ribs and along its
// gunwales, by its own means: outlines as polygons, and how near their points come. It is
// below 0 where the inner one's outline crosses the outer one's wood.
func sampled(t *testing.T, outer, inner *frame.Frame, at stow.Place) float64 {
	t.Helper()
	cloth, err := skin.Of(inner)
	if err != nil {
		t.Fatal(err)
	}
	least := math.Inf(1)
	look := func(x float64, wood []geometry.Point) {
		u := x - at.X
		if at.Turned {
			u = -u
		}
		if a, f := inner.Gunwale.Line.Ends(); u < a || u > f {
			return
		}
		var out []geometry.Point
		for _, p := range cloth.At(u) {
			out = append(out, geometry.Point{X: p.X, Y: p.Y + at.Z})
		}
		top := out[len(out)-1].Y
		for _, p := range dense(wood) {
			d := math.Inf(1)
			for _, q := range dense(out) {
				d = math.Min(d, math.Hypot(p.X-q.X, p.Y-q.Y))
			}
			if p.Y < top && p.X < across(out, p.Y) {
				d = -d
			}
			least = math.Min(least, d)
		}
	}
	for _, r := range outer.Ribs {
		look(r.Station, r.Inner.Flatten(0.1))
	}
	g := &outer.Gunwale
	aft, fore := g.Line.Ends()
	for x := aft + 60; x < fore-60; x += 60 {
		low, high := g.EdgeAt(x, -g.Width/2, 0), g.EdgeAt(x, -g.Width/2, g.Height)
		look(x, []geometry.Point{{X: low.Y, Y: low.Z}, {X: high.Y, Y: high.Z}})
	}
	return least
}

// dense puts points no more than 2 mm apart on an outline.
func dense(pts []geometry.Point) []geometry.Point {
	out := pts[:1:1]
	for i := 1; i < len(pts); i++ {
		n := int(math.Hypot(pts[i].X-pts[i-1].X, pts[i].Y-pts[i-1].Y)/2) + 1
		for k := 1; k <= n; k++ {
			out = append(out, pts[i-1].Lerp(pts[i], float64(k)/float64(n)))
		}
	}
	return out
}

// across is the greatest half-breadth of an outline at a height, 0 under it.
func across(pts []geometry.Point, z float64) float64 {
	most := 0.0
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		if (a.Y > z) != (b.Y > z) {
			most = math.Max(most, a.X+(b.X-a.X)*(z-a.Y)/(b.Y-a.Y))
		}
	}
	return most
}

// holds checks what a result says by sampled sections, and that a boat that was changed
// fails nothing that the people's own passes. Points stand 2 mm apart, which hides less
// than 0.3 mm of 5; sections that wood crosses askew hide nothing.
func holds(t *testing.T, name string, w Wish, make func() (*sizing.Case, error)) *Result {
	t.Helper()
	r, err := w.Of(make)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	own, err := (&seeker{make: make}).boat(nil)
	if err != nil {
		t.Fatal(err)
	}
	v := r.Boat.Checks[len(r.Boat.Checks)-1]
	if v.Name != w.name() || v.Passed != r.Pair.Nests || !v.Sized || v.Limit != w.Room {
		t.Errorf("%s: the check says %+v of a pair that nests: %v", name, v, r.Pair.Nests)
	}
	got := sampled(t, r.Pair.Lower.Frame, r.Pair.Upper.Frame, r.Pair.Place)
	t.Logf("%s: %v, room %.1f mm sampled, changed %v", name, r.Pair.Nests, got, r.Changes)
	switch {
	case !v.Passed:
		if !strings.Contains(v.Reason, "; cure: ") || len(r.Changes) > 0 {
			t.Errorf("%s: refused without a cure: %s", name, v.Reason)
		}
		return r
	case got < w.Room-0.1:
		t.Errorf("%s: %.2f mm of room by sampled sections, want %.1f", name, got, w.Room)
	}
	for _, f := range r.Boat.Failures() {
		if passes(own, f.About) {
			t.Errorf("%s: with %v %s fails, which the people's own boat passes", name, r.Changes, f.About)
		}
	}
	return r
}

// TestMedianPeople: of the boats that the shipped families give a median woman and man, a
// pack canoe goes into a solo canoe for the same or a bigger body and that into their tandem,
// each with a little less beam where it does not by itself.
func TestMedianPeople(t *testing.T) {
	tandem := ready(t, maker(t, "tandem", man(), woman()))
	solo := holds(t, "his solo in their tandem", Wish{Other: tandem, Room: room}, maker(t, "solo", man()))
	pack := holds(t, "her pack in his solo", Wish{Other: boatOf(t, solo.Boat.Frame), Room: room}, maker(t, "pack", woman()))
	for _, r := range []*Result{solo, pack} {
		if !r.Pair.Nests || r.Pair.Far != nil {
			t.Errorf("%s does not go %s", r.Boat.Design.Title, r.Wish)
		}
		for _, c := range r.Changes {
			if c.Name != "beam" || c.To >= c.From || c.From-c.To > 10 {
				t.Errorf("%s has %v", r.Boat.Design.Title, c)
			}
		}
	}
}

// TestAround: a tandem is drawn around a solo canoe that is a little too wide for it, or it
// is told in words of these people why not.
func TestAround(t *testing.T) {
	solo := ready(t, maker(t, "solo", man()))
	r := holds(t, "their tandem around his solo", Wish{Other: solo, Around: true, Room: room}, maker(t, "tandem", man(), woman()))
	if r.Pair.Lower.Title != "Tandem" || r.Pair.Upper != solo {
		t.Error("the tandem is not the outer boat")
	}
	for _, c := range r.Changes {
		if c.Name != "depth" && c.To < c.From || c.Name == "depth" && c.To > c.From {
			t.Errorf("drawn around with %v", c)
		}
	}
}

// TestRefused: a man's pack canoe does not go into a light woman's solo canoe; the check
// says what lacks, what would make it and what that would break, and the boat is his own.
func TestRefused(t *testing.T) {
	solo := ready(t, maker(t, "solo", woman()))
	big := paddler(body.Person{Weight: 95, Stature: 1850, Sex: body.Man})
	r := holds(t, "his pack in her solo", Wish{Other: solo, Room: room}, maker(t, "pack", big))
	if r.Pair.Nests {
		t.Fatal("it goes in")
	}
	text := r.Boat.Failures().Sorted()[0].String()
	for _, s := range []string{"inside: ", "wanted at least 5 mm", "it does not go inside Solo", "a side at station", "mm less beam it would, but not for these people: ", "Solo with", "more beam would do"} {
		if !strings.Contains(text, s) {
			t.Errorf("no %q in: %s", s, text)
		}
	}
}

// TestHandStays: a measure that was set by hand is not moved, and an unsound way leaves the
// others.
func TestHandStays(t *testing.T) {
	make := maker(t, "solo", man())
	s := &seeker{make: func() (*sizing.Case, error) {
		c, err := make()
		if err != nil {
			return nil, err
		}
		return c, c.Set("beam", 740)
	}}
	var err error
	if s.own, err = s.boat(nil); err != nil {
		t.Fatal(err)
	}
	if got := fmt.Sprint(s.ways()); got != "[{depth 1} {length -5}]" {
		t.Errorf("moves %s", got)
	}
	s.wish.Around, s.own.Case = true, mustCase(t, make)
	if got := fmt.Sprint(s.ways()); got != "[{beam 1} {depth -1} {length 5}]" {
		t.Errorf("around moves %s", got)
	}
}

// TestLeastChange: of boats that would do, the one that is moved least by its measures'
// shares is taken: 1 of 100 before 3 of 200.
func TestLeastChange(t *testing.T) {
	small, big := tried{changes: []Change{{"beam", 100, 99}}}, tried{changes: []Change{{"length", 200, 203}}}
	for _, all := range [][]tried{{small, big}, {big, small}} {
		if got := least(all); got.changes[0].Name != "beam" {
			t.Errorf("takes %v", got.changes)
		}
	}
	if two := (tried{changes: []Change{{"beam", 100, 90}, {"depth", 100, 110}}}).moved(); math.Abs(two-math.Log(110.0/90)) > 1e-12 {
		t.Errorf("two changes come to %.4f", two)
	}
}

// TestSearched: a search for a wide boat keeps to the wish: without it its boat does not go
// into the other, with it the nearest that goes in is narrower than was asked.
func TestSearched(t *testing.T) {
	w := Wish{Other: ready(t, maker(t, "solo", man())), Room: room}
	make := maker(t, "pack", man())
	solve := func(target string, asked bool) (*sizing.Answer, error) {
		c := mustCase(t, make)
		if asked {
			c.Trials = []sizing.Trial{w.Trial()}
		}
		if err := c.Settle(); err != nil {
			t.Fatal(err)
		}
		wide, err := sizing.ParseTarget(target, c.Family.Program)
		if err != nil {
			t.Fatal(err)
		}
		free, err := c.Free("beam")
		if err != nil {
			t.Fatal(err)
		}
		return c.Solve(sizing.Goal{Targets: []sizing.Target{wide}, Free: free})
	}
	a, err := solve("beam>=715mm", false)
	if err != nil {
		t.Fatal(err)
	}
	if r, err := w.Found(a.Boat); err != nil || r.Pair.Nests {
		t.Errorf("the wide boat nests: %v (%v)", r.Pair.Nests, err)
	}
	if _, err := solve("beam>=715mm", true); err == nil || !strings.Contains(err.Error(), " for beam>=715 mm") {
		t.Errorf("asked to nest too: %v", err)
	}
}

func mustCase(t *testing.T, make func() (*sizing.Case, error)) *sizing.Case {
	t.Helper()
	c, err := make()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestTriples: three boats for bodies drawn at random, each sized to go into the next, lie
// in it with the room asked for by sampled sections, or it is said why not.
func TestTriples(t *testing.T) {
	n := 3
	if os.Getenv("RIBWRIGHT_LONG") != "" {
		n = 30
	}
	r := rand.New(rand.NewPCG(15, 5))
	some := func() sizing.Paddler {
		sex := []body.Sex{body.Woman, body.Man}[r.IntN(2)]
		share := 0.2 + 0.6*r.Float64()
		low, high := body.Person{Weight: 50, Stature: 1530, Sex: sex}, body.Person{Weight: 88, Stature: 1740, Sex: sex}
		if sex == body.Man {
			low, high = body.Person{Weight: 65, Stature: 1650, Sex: sex}, body.Person{Weight: 108, Stature: 1880, Sex: sex}
		}
		return paddler(body.Person{Weight: low.Weight + share*(high.Weight-low.Weight), Stature: math.Round(low.Stature + share*(high.Stature-low.Stature)), Sex: sex})
	}
	nests := 0
	for i := range n {
		tandem := ready(t, maker(t, "tandem", some(), some()))
		solo := holds(t, fmt.Sprintf("%d, solo in tandem", i), Wish{Other: tandem, Room: room}, maker(t, "solo", some()))
		pack := holds(t, fmt.Sprintf("%d, pack in solo", i), Wish{Other: boatOf(t, solo.Boat.Frame), Room: room}, maker(t, "pack", some()))
		for _, b := range []*Result{solo, pack} {
			if b.Pair.Nests {
				nests++
			}
		}
	}
	t.Logf("%d of %d nest", nests, 2*n)
	if nests < n {
		t.Errorf("only %d of %d nest", nests, 2*n)
	}
}

// TestSampledNotices: the sections tell a boat that does not fit.
func TestSampledNotices(t *testing.T) {
	solo, pack := ready(t, maker(t, "solo", woman())), ready(t, maker(t, "pack", man()))
	p := stow.Fit(solo, pack, stow.Options{Pad: room})
	at := p.Place
	at.Z = p.Seat
	if got := sampled(t, solo.Frame, pack.Frame, at); got > 0 {
		t.Errorf("%.1f mm of room where the boats overlap", got)
	}
}
