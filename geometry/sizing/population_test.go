package sizing

import (
	"flag"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/skin"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/referencetest"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/trial/bend"
)

// bodies is how many random briefs each family is tried on, unless told 300, and 2000
// with RIBWRIGHT_LONG, which takes some minutes.
var bodies = flag.Int("bodies", 0, "random briefs to try each family on")

func howMany() int {
	if *bodies > 0 {
		return *bodies
	}
	return some(300, 2000)
}

// some is how many of a kind there is time for: all in CI, else a few.
func some(few, all int) int {
	if os.Getenv("RIBWRIGHT_LONG") != "" {
		return all
	}
	return few
}

func shipped(t testing.TB, name string) *family.Family {
	t.Helper()
	f, err := family.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func briefFor(f *family.Family, p body.Person, gear float64) Brief {
	b := DefaultBrief()
	b.Title, b.Gear = "Trial", gear
	for range f.Seats {
		b.Crew = append(b.Crew, Paddler{Person: p, Posture: family.Either})
	}
	return b
}

// settledCase is a case of a family for a brief, its formulas settled.
func settledCase(t testing.TB, f *family.Family, b Brief) *Case {
	t.Helper()
	c, err := NewCase(f, b)
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Settle(); err != nil {
		t.Fatal(err)
	}
	return c
}

// designed is the design of a case, not yet finished.
func designed(t testing.TB, c *Case) *design.Design {
	t.Helper()
	d, err := c.design()
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// bending adds what the bending check refuses.
func bending(b *Boat) finding.List {
	r, err := bend.Of(b.Frame)
	if err != nil {
		return finding.List{{About: "bend", Text: err.Error(), Verdict: finding.Unfit}}
	}
	var out finding.List
	for _, f := range r.Findings {
		if !f.Verdict.Passes() {
			out = append(out, f)
		}
	}
	return out
}

// judged adds ribs that stand outside the flat cloth to what the bending check
// refuses.
func judged(b *Boat) finding.List {
	out := bending(b)
	if ribs, worst := skin.ProudRibs(b.Frame); len(ribs) > 0 {
		out.Judge(finding.Missed, "cloth", finding.Arithmetic, "rib %s stands %.2f mm out of it", worst.Rib, worst.By)
	}
	return out
}

// TestPopulation sizes, lofts, floats, covers and bends boats for random bodies, loads,
// waters, skills and postures, and judges how they stand by limits written out here. No
// boat goes over by itself under 40 degrees before water comes in. Of a hundred bodies
// one may ask for more than a boat can give: then a check of the family fails that
// says what would cure it. Nothing else may fail.
func TestPopulation(t *testing.T) {
	bodyLimits := []string{"lever", "held", "level", "reach_at_seat", "partner_reach_at_seat"}
	for _, name := range family.Names() {
		f := shipped(t, name)
		p := Trying{Family: f, Judge: func(b *Boat) finding.List { return append(judged(b), stands(b)...) }}.Try(howMany())
		for _, trial := range p.Failing {
			t.Logf("%s, trial %d, %s: %s %v", name, trial.Number, trial.Brief.Who(), trial.Fault, trial.Failed)
			if trial.Fault != "" {
				t.Errorf("%s, trial %d, %s: %s", name, trial.Number, trial.Brief.Who(), trial.Fault)
			}
			for _, v := range trial.Failed {
				if !slices.Contains(bodyLimits, v.About) || !strings.Contains(v.Text, "cure: ") {
					t.Errorf("%s, trial %d, %s: %s", name, trial.Number, trial.Brief.Who(), v)
				}
			}
		}
		if n := len(p.Failing); 100*n > p.Tried {
			t.Errorf("%s: %d of %d fail", name, n, p.Tried)
		}
	}
}

// stands adds what a boat has too little of that its family's checks do not tell of.
func stands(b *Boat) finding.List {
	var out finding.List
	lever, held := 28.0, 36.0
	if len(b.Design.Crew) == 2 {
		lever, held = 20, 18
	}
	trim := 45.0
	if b.Case.Brief.Gear >= 10 {
		trim = 25
	}
	told := func(name string) bool {
		return slices.ContainsFunc(b.Failures(), func(v finding.Finding) bool { return v.About == name })
	}
	s := b.Standing
	for name, short := range map[string]bool{"lever": s.Most < lever, "held": s.Held < held, "level": math.Abs(s.Trim) > trim} {
		if short && !told(name) {
			out.Judge(finding.Missed, "unsaid "+name, finding.Arithmetic, "%+v", s)
		}
	}
	if !math.IsNaN(s.GoesOver) && s.GoesOver < 40*math.Pi/180 {
		out.Judge(finding.Unsafe, "over", finding.Arithmetic, "goes over by itself at %.1f deg", s.GoesOver*180/math.Pi)
	}
	return out
}

// corners returns bodies at the survey's 5th, 50th and 95th percentiles of weight and
// of stature, in every pairing, for both sexes.
func corners(t *testing.T) []body.Person {
	t.Helper()
	weight, err := body.FindMeasure("weightkg")
	if err != nil {
		t.Fatal(err)
	}
	stature, err := body.FindMeasure("stature")
	if err != nil {
		t.Fatal(err)
	}
	var out []body.Person
	for _, s := range []body.Sex{body.Woman, body.Man} {
		w, h := weight.Of(s), stature.Of(s)
		for _, kg := range []float64{w.P5, w.P50, w.P95} {
			for _, mm := range []float64{h.P5, h.P50, h.P95} {
				out = append(out, body.Person{Sex: s, Weight: kg, Stature: mm})
			}
		}
	}
	return out
}

// TestCorners tries the 5th, 50th and 95th percentiles of weight and stature of
// both sexes in every pairing (ANSUR II) with 0, 20 and 40 kg of gear, the middle one
// where there is time, against the
// limits that the families state, written out here: draft, freeboard and GM; and
// against the proportions of measured canoes.
//
// Source of the proportions: dimensioned drawings of Adney and Chapelle, Smithsonian
// Bulletin 230 (1964), testdata/canoes/proportions.csv. Freeboard: 152 mm, 6 in, is
// what the trade leaves amidships at capacity.
func TestCorners(t *testing.T) {
	small, large, deep := proportions(t)
	most := map[string]float64{"pack": 150, "solo": 150, "tandem": 170}
	for _, name := range family.Names() {
		f := shipped(t, name)
		for _, p := range corners(t) {
			for _, gear := range []float64{0, 40, 20}[:some(2, 3)] {
				boat, err := Size(f, briefFor(f, p, gear))
				if err != nil {
					t.Fatalf("%s %+v %v kg: %v", name, p, gear, err)
				}
				at := boat.Found
				if at["draft"] > most[name] || at["freeboard"] < 152 || at["gm"] < 50 {
					t.Errorf("%s %+v %v kg: draft %.0f, freeboard %.0f, GM %.0f mm", name, p, gear, at["draft"], at["freeboard"], at["gm"])
				}
				length, beam := float64(boat.Design.Hull.Length), at["extreme_beam"]
				band := large
				if length <= 14*304.8 {
					band = small
				}
				if r := length / beam; r < band[0] || r > band[1] {
					t.Errorf("%s %+v %v kg: length over beam %.3f, measured canoes %.2f to %.2f", name, p, gear, r, band[0], band[1])
				}
				if r := boat.Case.run.Number("depth_inside") / beam; r < deep[0] || r > deep[1] {
					t.Errorf("%s %+v %v kg: depth over beam %.3f, measured canoes %.2f to %.2f", name, p, gear, r, deep[0], deep[1])
				}
				// Bulletin 230, three round-bilged drawings measured: 0.83 to 0.86.
				if r := at["girth"] / float64(boat.Design.Hull.Beam+2*boat.Design.Hull.Depth); r < 0.83 || r > 0.86 {
					t.Errorf("%s %+v %v kg: girth over beam and two depths %.3f", name, p, gear, r)
				}
				if w := at["seat_width"]; w > boat.Case.run.Number("reach")+0.5 {
					t.Errorf("%s %+v %v kg: %.0f mm at the seat, arms reach %.0f mm", name, p, gear, w, boat.Case.run.Number("reach"))
				}
				if failed := boat.Failures(); len(failed) > 0 {
					t.Errorf("%s %+v %v kg: %s", name, p, gear, failed[0].String())
				}
			}
		}
	}
}

// proportions reads the least and greatest length over beam of canoes up to and
// over 14 ft, and depth over beam.
func proportions(t *testing.T) (small, large, deep [2]float64) {
	t.Helper()
	small, large, deep = [2]float64{9, 0}, [2]float64{9, 0}, [2]float64{9, 0}
	grow := func(b *[2]float64, v float64) { b[0], b[1] = math.Min(b[0], v), math.Max(b[1], v) }
	for _, r := range referencetest.Table(t, "../../testdata/canoes/proportions.csv") {
		v := [4]float64{}
		for i := 1; i < 4; i++ {
			v[i] = referencetest.Number(t, r[i])
		}
		if v[1] <= 14*304.8 {
			grow(&small, v[1]/v[2])
		} else {
			grow(&large, v[1]/v[2])
		}
		grow(&deep, v[3]/v[2])
	}
	return small, large, deep
}

// TestMoreLoad: at the same dimensions more gear never gives more freeboard or less
// draft, for a hundred bodies a family, or thirty where time is short. The gear lies where the whole load has its
// middle: packs forward of it would lift the stern, which may gain freeboard there.
func TestMoreLoad(t *testing.T) {
	for _, name := range family.Names() {
		f := shipped(t, name)
		r := rand.New(rand.NewPCG(5, 6))
		for range some(30, 100) {
			c := settledCase(t, f, briefFor(f, body.Random(r), 15))
			d := designed(t, c)
			draft, freeboard := 0.0, math.Inf(1)
			moment, weight := 0.0, c.found["boat_weight"]
			for _, p := range d.Crew {
				moment, weight = moment+p.Mass*float64(p.At), weight+p.Mass
			}
			d.Gear[0].At = measure.Length(moment / weight)
			for gear := 1.0; gear <= 61; gear += 10 {
				d.Gear[0].Mass = gear
				found, _, err := c.Brief.floatSketch(d, c.seats(), nil, c.woods, asked{})
				if err != nil {
					t.Fatal(err)
				}
				if found["draft"] < draft || found["freeboard"] > freeboard {
					t.Fatalf("%s, %s: with %.0f kg draft %.2f mm after %.2f, freeboard %.2f mm after %.2f", name, c.Brief.Who(), gear, found["draft"], draft, found["freeboard"], freeboard)
				}
				draft, freeboard = found["draft"], found["freeboard"]
			}
		}
	}
}

// TestTallerReachesFarther works the reach out for 4000 bodies, each beside one up
// to 20 mm taller.
func TestTallerReachesFarther(t *testing.T) {
	f := shipped(t, "pack")
	r := rand.New(rand.NewPCG(7, 8))
	reach := func(p body.Person) float64 {
		b := briefFor(f, p, 0)
		run := f.Program.NewRun()
		if err := b.put(run); err != nil {
			t.Fatal(err)
		}
		if err := run.Work(f.Program.Behind("reach")); err != nil {
			t.Fatal(err)
		}
		return run.Number("reach")
	}
	for range 4000 {
		p := body.Random(r)
		p.Span = 0
		q := p
		q.Stature += 20 * r.Float64()
		if a, b := reach(p), reach(q); b < a {
			t.Fatalf("%.1f mm reaches %.3f mm, %.1f mm reaches %.3f mm", p.Stature, a, q.Stature, b)
		}
	}
}

// TestSmallChanges: a little more weight, stature, span or gear changes a boat a
// little. 200 g and 2 mm move no dimension by more than 8 mm: length goes with the
// fourth or fifth root of the load, some 10 mm a kilogram, and beam over reach is
// drawn out five times into length where it holds it. Where arms hold the beam the seat
// makes up for it: 1 mm of beam is a quarter of a millimeter of lever, and that more than
// 1 mm of seat.
func TestSmallChanges(t *testing.T) {
	for _, name := range family.Names() {
		f := shipped(t, name)
		r := rand.New(rand.NewPCG(9, 10))
		for range some(40, 120) {
			b := briefFor(f, body.Random(r), 40*r.Float64())
			was := settled(t, f, b)
			switch r.IntN(3) {
			case 0:
				b.Crew[0].Weight += 0.2
			case 1:
				b.Crew[0].Stature += 2
			default:
				b.Gear += 0.2
			}
			now := settled(t, f, b)
			for _, n := range []string{"length", "beam", "depth", "draft", "freeboard", "seat_height"} {
				most := map[string]float64{"length": 12, "seat_height": 9}[n]
				if most == 0 {
					most = 5
				}
				if d := math.Abs(now[n] - was[n]); d > most {
					t.Errorf("%s, %s: %s moves by %.1f mm", name, b.Who(), n, d)
				}
			}
		}
	}
}

func settled(t *testing.T, f *family.Family, b Brief) map[string]float64 {
	t.Helper()
	c := settledCase(t, f, b)
	out := map[string]float64{}
	for _, n := range []string{"length", "beam", "depth", "draft", "freeboard", "seat_height"} {
		out[n] = c.run.Number(n)
	}
	return out
}
