package handwork

import (
	"math"
	"slices"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// arc is a half rib that is one quarter of a circle.
func arc(radius float64) rib {
	half := curve.Chain{curve.Turned(radius, math.Pi/2)}
	return newRib(frame.Rib{Section: hull.Section{HalfBreadth: radius, Depth: radius, Half: half}, Thickness: 6})
}

// TestQuarterCircle: a half rib of one quarter circle of the radius R that keeps a share
// less of its bend opens by that share of R and falls by (pi/2 - 1) of it. A level force
// bends it by pi/4, across by 1/2, a rising one by 3 pi/4 - 2, all of R cubed. Integrals
// of sines and cosines.
func TestQuarterCircle(t *testing.T) {
	const r = 350.0
	a := arc(r)
	near(t, "level", a.level, math.Pi/4*r*r*r, 2e-6*r*r*r)
	near(t, "cross", a.cross, r*r*r/2, 2e-6*r*r*r)
	near(t, "rise", a.rise, (3*math.Pi/4-2)*r*r*r, 2e-6*r*r*r)
	near(t, "lift", a.lift, 2/math.Pi, 1e-5)
	s := a.opened(0.04)
	near(t, "opens", s.out, 0.04*r, 1e-4)
	near(t, "falls", s.up, -0.04*r*(math.Pi/2-1), 1e-4)
	stiff := 2 * a.level / (a.level*a.rise - a.cross*a.cross)
	near(t, "upright", a.upright(), stiff, 1e-9*stiff)
	near(t, "longer, out", a.longer().out, 0, 1e-12)
	near(t, "longer, up", a.longer().up, 0.5, 1e-12)
	m := a.markedOut() // all of the quarter turn is moved out
	near(t, "marked out", m.out, 1, 1e-12)
	near(t, "marked out, up", m.up, -1, 1e-12)
}

// TestMarks: a bilge that is bent e too far out on both sides opens the rib by twice e
// (cos a - cos b), a and b the headings before and after it.
func TestMarks(t *testing.T) {
	const a, b = 16 * math.Pi / 180, 80 * math.Pi / 180
	s, err := hull.Solve(360, 285, hull.Shape{BottomTurn: a, BilgeRadius: 115, Flare: math.Pi/2 - b})
	if err != nil {
		t.Fatal(err)
	}
	m := newRib(frame.Rib{Section: s}).markedOut()
	near(t, "out", m.out, math.Cos(a)-math.Cos(b), 1e-9)
	near(t, "up", m.up, math.Sin(a)-math.Sin(b), 1e-9)
	flat := newRib(frame.Rib{Section: hull.Section{Half: curve.Chain{curve.Straight(300)}}})
	if got := flat.markedOut(); got != (step{}) {
		t.Errorf("a flat bar: %+v", got)
	}
	near(t, "a flat bar stands", flat.upright(), 2*3/(300.0*300*300), 1e-12)
}

// TestBoardOfShipped: for a point of springback the ribs of a boat open by its share of
// their curve times the height of the head over each piece of it, added up here.
func TestBoardOfShipped(t *testing.T) {
	y := newYard(t, "brook", nil)
	d := y.m.allRibs(y.m.sprung)
	for i, r := range y.f.Ribs {
		head, _ := r.Section.Half.End()
		want, from := 0.0, 0.0
		for _, b := range r.Section.Half {
			const steps = 2000
			for k := range steps {
				p, _ := r.Section.Half.At(from + b.Length*(float64(k)+0.5)/steps)
				want += 2 * 0.01 / (1 - y.f.Design.Bending.Springback) * b.Sweep / steps * (head.Y - p.Y)
			}
			from += b.Length
		}
		near(t, "rib "+r.Name, d.in.open.at(i), want, 1e-4)
	}
}

// TestKeelOnOneRib: a beam between two supports that are a length L apart takes 48 EI/L3
// for each mm at its middle, so on a spring there it takes part of what the spring asks
// for; a support that is raised tips it. Any text on beams.
func TestKeelOnOneRib(t *testing.T) {
	const ei, l, spring = 4.4e7, 3000.0, 0.05
	k, err := newKeel(ei, -l/2, l/2, []float64{0}, []float64{spring})
	if err != nil {
		t.Fatal(err)
	}
	beam := 48 * ei / (l * l * l)
	near(t, "asked for 1", k.rests([]float64{1}, 0, 0, nil)[0], spring/(spring+beam), 1e-9)
	near(t, "bow up 1", k.rests(nil, 0, 1, nil)[0], beam/2/(spring+beam), 1e-9)
	near(t, "all up 1", k.rests([]float64{1}, 1, 1, nil)[0], 1, 1e-9)
	near(t, "at midship", k.midship([]float64{0.3}, 5, 5), 0.3, 1e-12)
}

// TestKeelOnManyRibs: on springs of k for each mm of length a long beam that one of them
// pushes sinks to P b/(2 k), b = (k/4EI)^1/4 (M. Hetenyi, Beams on Elastic Foundation).
func TestKeelOnManyRibs(t *testing.T) {
	const ei, pitch, spring = 4.4e7, 40.0, 0.04
	var at, springs []float64
	for x := -3200.0; x <= 3200; x += pitch {
		at, springs = append(at, x), append(springs, spring)
	}
	k, err := newKeel(ei, -3240, 3240, at, springs)
	if err != nil {
		t.Fatal(err)
	}
	wanted := make([]float64, len(at))
	wanted[len(at)/2] = 1
	foundation := spring / pitch
	beta := math.Pow(foundation/(4*ei), 0.25)
	want := spring * beta / (2 * foundation)
	near(t, "at the push", k.rests(wanted, 0, 0, nil)[len(at)/2], want, 2e-3*want)
}

// TestKeelTakes: what the keel takes of one rib's error amidships is what a long beam on a
// foundation as stiff as the midship rib over the pitch takes (Hetenyi, as above): ribs
// near midship are stiffer by a few hundredths only, the beam carries over a few of them.
func TestKeelTakes(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		y := newYard(t, name, nil)
		r, err := Of(y.b, &y.carried)
		if err != nil {
			t.Fatal(err)
		}
		d := y.f.Design
		wood, err := d.Wood(d.Keel.Species)
		if err != nil {
			t.Fatal(err)
		}
		w, h, pitch := float64(d.Keel.Width), float64(d.Keel.Depth), float64(d.Ribs.Pitch)
		ei := wood.MOE * w * h * h * h / 12
		i := len(y.f.Ribs) / 2
		thick := float64(d.Ribs.Thickness)
		spring := y.b.Ribs.MOE * float64(d.Ribs.Width) * thick * thick * thick / 12 * y.m.ribs[i].upright()
		beta := math.Pow(spring/pitch/(4*ei), 0.25)
		want := pitch * beta / 2
		near(t, name, r.KeelTakes[i], want, 0.1*want)
		if len(r.KeelTakes) != len(y.f.Ribs) {
			t.Errorf("%s: %d shares for %d ribs", name, len(r.KeelTakes), len(y.f.Ribs))
		}
	}
}

// TestSpreads: no errors, no spread; twice the errors, twice the spread.
func TestSpreads(t *testing.T) {
	y := newYard(t, "lake", nil)
	slips := y.m.slips()
	effects := make([]effect, len(slips))
	for i, s := range slips {
		effects[i] = y.m.effect(s.does)
	}
	report := func(times float64) *Report {
		scaled := slices.Clone(slips)
		for i := range scaled {
			k := *scaled[i].kind
			k.usual.First *= times
			k.usual.Practiced *= times
			scaled[i].kind = &k
		}
		r := &Report{Frame: y.f, Outcomes: y.m.outcomes()}
		r.worst(y.m, scaled, effects)
		r.sum(scaled, effects)
		return r
	}
	once, twice, none := report(1), report(2), report(0)
	for k, o := range once.Outcomes {
		near(t, o.Name, twice.Outcomes[k].Spread.First, 2*o.Spread.First, 1e-9)
		near(t, o.Name, twice.Outcomes[k].Spread.Practiced, 2*o.Spread.Practiced, 1e-9)
		if o.Spread.First <= 0 || none.Outcomes[k].Spread != (Spread{}) {
			t.Errorf("%s: %v, without errors %v", o.Name, o.Spread, none.Outcomes[k].Spread)
		}
	}
	for _, e := range none.Errors {
		if e.Matters() {
			t.Errorf("%s of nothing matters", e.Name)
		}
	}
	share := make([]float64, len(once.Outcomes))
	for _, e := range once.Errors {
		for k, v := range e.Moves {
			share[k] += v.First * v.First
		}
	}
	for k, o := range once.Outcomes {
		near(t, "squares of "+o.Name, math.Sqrt(share[k]), o.Spread.First, 1e-9)
	}
}

// TestRank: what matters most stands first, alike stand by their names, each has its
// number, and the first ten are told of, whether they matter or not.
func TestRank(t *testing.T) {
	var all []Error
	for _, name := range []string{"c", "a", "b"} {
		all = append(all, Error{Name: name, weight: 1})
	}
	all = append(all, Error{Name: "d", weight: 2}, Error{Name: "e", weight: 0.1})
	rank(all)
	got := ""
	for i, e := range all {
		got += e.Name
		if e.Rank != i+1 {
			t.Errorf("%s has rank %d in its place %d", e.Name, e.Rank, i+1)
		}
	}
	if got != "dabce" {
		t.Errorf("ranked %s, want dabce", got)
	}
	r := Report{Errors: all}
	if len(r.Ranked()) != 5 || len(r.Rest()) != 0 || all[3].Matters() == all[4].Matters() {
		t.Errorf("%d are ranked and %d not, want 5 and 0, of which the last does not matter", len(r.Ranked()), len(r.Rest()))
	}
	for range 10 {
		r.Errors = append([]Error{{Name: "x", weight: 3}}, r.Errors...)
	}
	if len(r.Ranked()) != 10 || len(r.Rest()) != 5 {
		t.Errorf("%d are ranked and %d not, want 10 and 5", len(r.Ranked()), len(r.Rest()))
	}
}

// TestMoved: two stems that are off by 4 mm each, and the keel between them a batten that
// the ribs hold, change the rocker of either end by 4 mm and no beam; a measure moves as
// far as that of its outcomes which moves most, and all are in order.
func TestMoved(t *testing.T) {
	for _, name := range design.ShippedNames() {
		y := newYard(t, name, nil)
		r, err := Of(y.b, &y.carried)
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Measures(); !slices.Equal(got, []Measure{Beam, Depth, Rocker, Trim, GM, Balance}) {
			t.Errorf("%s: measures %v", name, got)
		}
		if len(r.Ranked()) != 10 {
			t.Errorf("%s: %d errors are ranked, want 10", name, len(r.Ranked()))
		}
		for _, e := range r.Errors {
			if e.Name == "height of each stem" {
				near(t, name+", rocker", r.Moved(e, Rocker), 4, 0.05)
				near(t, name+", beam", r.Moved(e, Beam), 0, 1e-9)
			}
			near(t, name+", "+e.Name+", beam", r.Moved(e, Beam)*Within, math.Max(e.Moves[0].First, e.Moves[1].First), 1e-9)
		}
	}
}

// TestOddBoats: whatever is left out, nothing is no number.
func TestOddBoats(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*design.Design)
		has    int // outcomes
	}{
		{"no cross pieces", func(d *design.Design) { d.Thwarts = nil }, 7},
		{"one stringer", func(d *design.Design) { d.Stringers.At = []float64{0.5} }, 8},
		{"no edge-set", func(d *design.Design) { d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0 }, 8},
		{"glued straight", func(d *design.Design) { d.Gunwale.Glued = design.GluedStraight }, 0},
		{"few ribs", func(d *design.Design) { d.Ribs.Pitch = 420 }, 0},
		{"no crew", func(d *design.Design) { d.Crew, d.Gear = nil, nil }, 8},
		{"too heavy to stand", func(d *design.Design) {
			d.Crew[0].Mass = 80
			d.Seats[0].Kind, d.Seats[0].Height, d.Crew[0].Posture = design.Saddle, 600, design.Bench
		}, 6},
	} {
		t.Run(c.name, func(t *testing.T) {
			y := newYard(t, "brook", c.change)
			r, err := Of(y.b, &y.carried)
			if err != nil {
				t.Fatal(err)
			}
			if c.has > 0 && len(r.Outcomes) != c.has {
				t.Errorf("%d outcomes, want %d", len(r.Outcomes), c.has)
			}
			for _, o := range r.Outcomes {
				if !(o.Spread.First > 0) || math.IsInf(o.Spread.First, 0) || !(o.Spread.Practiced < o.Spread.First) {
					t.Errorf("%s: %+v", o.Name, o.Spread)
				}
			}
			for i, e := range r.Errors {
				if math.IsNaN(e.weight) || i > 0 && e.weight > r.Errors[i-1].weight+1e-9 {
					t.Errorf("%s weighs %v in its place %d", e.Name, e.weight, i)
				}
			}
		})
	}
}

// TestMirrored: a boat with two ends alike and its crew amidships spreads at bow and
// stern alike, and nothing but the stems, the ribs and what lies off the middle trims it.
func TestMirrored(t *testing.T) {
	y := newYard(t, "lake", func(d *design.Design) {
		d.Thwarts, d.Gear, d.Seats = nil, nil, nil
		d.Inside.Slats, d.Inside.Flotation = 0, design.NoFlotation // they lie where toes and hips do, not even about a person
		for i := range d.Crew {
			d.Crew[i].Seat = design.OnFloor
		}
	})
	r, err := Of(y.b, &y.carried)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rocker at the stern", r.Outcomes[4].Spread.First, r.Outcomes[3].Spread.First, 1e-6)
	for _, e := range r.Errors {
		if !e.Each && e.Moves[5].First > 1e-3 {
			t.Errorf("%s trims by %.4f mm", e.Name, e.Moves[5].First)
		}
	}
}

// TestMarksMayBeOff: whatever the patterns allow a mark, one that is all of it off moves
// nothing by half of what a builder would mind.
func TestMarksMayBeOff(t *testing.T) {
	for _, name := range design.ShippedNames() {
		y := newYard(t, name, nil)
		r, err := Of(y.b, &y.carried)
		if err != nil {
			t.Fatal(err)
		}
		allowed := map[string]func(rib int) float64{
			"length of each rib":     func(int) float64 { return 2 * marks.ShoulderSlack(y.f) },
			"bend marks of each rib": func(i int) float64 { return marks.BilgeSlack(y.f.Ribs[i]) },
			"spreaders":              func(int) float64 { return marks.Held },
			"place of each mortise":  func(int) float64 { return marks.Placed },
			"height of each stem":    func(int) float64 { return marks.Joined }, // its shelf
		}
		slips := y.m.slips()
		held := map[string]bool{}
		for i, n := range numbered(slips) {
			s := slips[i]
			off := allowed[s.name]
			if off == nil {
				continue
			}
			held[s.name] = true
			e := y.m.effect(s.does)
			for _, o := range r.Outcomes {
				if moves := math.Abs(o.at(e)) * off(n); moves > o.Matters/2 {
					t.Errorf("%s, %s %d off by %.1f mm: %s moves by %.1f mm", name, s.name, n, off(n), o.Name, moves)
				}
			}
		}
		if len(held) != len(allowed) {
			t.Errorf("%s: only %v are tried", name, held)
		}
	}
}

func BenchmarkOf(b *testing.B) {
	y := newYard(&testing.T{}, "river", nil)
	for b.Loop() {
		if _, err := Of(y.b, &y.carried); err != nil {
			b.Fatal(err)
		}
	}
}
