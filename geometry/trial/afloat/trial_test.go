package afloat

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/survey/offsets"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
)

func shipped(t testing.TB, name string) *design.Design {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func options(t testing.TB) Options {
	t.Helper()
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	return Options{Water: w, Freeboard: 150, Speeds: []float64{1, 1.5, 2}}
}

func boatOf(t testing.TB, d *design.Design) aboard.Boat {
	t.Helper()
	f, err := frame.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	b, err := aboard.New(f, d.Crew, d.Gear)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func run(t testing.TB, d *design.Design) *Report {
	t.Helper()
	r, err := Run(boatOf(t, d), options(t))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func (r *Report) about(what string) string {
	for _, f := range r.Findings {
		if f.About == what {
			return f.Text
		}
	}
	return ""
}

// TestShippedFloat: the shipped boats float upright with their own people, weight
// equal to the water they push aside (Archimedes), and stay clear of 150 mm.
func TestShippedFloat(t *testing.T) {
	for _, name := range design.ShippedNames() {
		d := shipped(t, name)
		r := run(t, d)
		sum := r.Boat.Own().Mass
		for _, p := range d.Crew {
			sum += p.Mass
		}
		for _, g := range d.Gear {
			sum += g.Mass
		}
		if math.Abs(r.Rest.Volume*1e-9*r.Options.Water.Density/sum-1) > 1e-9 {
			t.Errorf("%s: %.4f kg of water for %.4f kg", name, r.Rest.Volume*1e-9*r.Options.Water.Density, sum)
		}
		if r.Fault != nil || r.Rest.GM < 100 || r.Rest.Freeboard.Least < 150 {
			t.Errorf("%s: GM %.0f mm, freeboard %.0f mm, %v", name, r.Rest.GM, r.Rest.Freeboard.Least, r.Fault)
		}
		if len(r.Findings) < 7 {
			t.Errorf("%s: only %d findings", name, len(r.Findings))
		}
		for _, f := range r.Findings {
			if f.Standing == "" || strings.Contains(strings.ToLower(f.Text), "complies") || strings.Contains(strings.ToLower(f.Text), "certif") {
				t.Errorf("%s: finding %+v has no standing, or promises what it must not", name, f)
			}
		}
	}
}

// TestFreeboardFinding follows its own advice: with the weight it names taken
// out, or the depth added, the freeboard asked for is there.
func TestFreeboardFinding(t *testing.T) {
	d := shipped(t, "brook")
	for i := range d.Crew {
		d.Crew[i].Mass = 200
	}
	o := options(t)
	o.Freeboard = 260
	b := boatOf(t, d)
	r, err := Run(b, o)
	if err != nil {
		t.Fatal(err)
	}
	text := r.about("freeboard")
	var least, payload, want, less, depth float64
	if _, err := fmt.Sscanf(text, "freeboard %f mm, least amidships, with %f kg aboard; %f mm needs %f kg less or %f mm more depth", &least, &payload, &want, &less, &depth); err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	if want != 260 || math.Abs(depth-(260-r.Rest.Freeboard.Least)) > 1 {
		t.Errorf("%q does not answer the question for 260 mm from %.1f mm", text, r.Rest.Freeboard.Least)
	}
	for _, f := range r.Findings {
		if f.About == "freeboard" && (f.Verdict != finding.Missed || f.Limit != 260 || !(f.Margin() < 0) || !strings.HasSuffix(f.Text, f.Cure)) {
			t.Errorf("%+v", f)
		}
	}
	for i := range d.Crew {
		d.Crew[i].Mass *= 1 - less/payload
	}
	for i := range d.Gear {
		d.Gear[i].Mass *= 1 - less/payload
	}
	if got := run(t, d).Rest.Freeboard.Least; got < 260 || got > 264 {
		t.Errorf("with %.0f kg less the freeboard is %.1f mm, want 260", less, got)
	}
}

// TestTrimFinding moves the gear as it is told: the boat floats level, to the
// hydrostatics' first order.
func TestTrimFinding(t *testing.T) {
	d := shipped(t, "river")
	r := run(t, d)
	before := r.Rest.Trim
	var rise, mass, step float64
	if _, err := fmt.Sscanf(r.about("trim"), "trims %f mm down by the stern over the waterline; Packs (%f kg) moved %f mm forward", &rise, &mass, &step); err != nil {
		t.Fatalf("%q: %v", r.about("trim"), err)
	}
	d.Gear[0].At += measure.Length(step)
	if after := run(t, d).Rest.Trim; math.Abs(after) > 0.08*math.Abs(before) {
		t.Errorf("trim %.4f deg after the move, %.4f before", deg(after), deg(before))
	}
}

// TestCapsize: a heavy person on a high bench in the narrowest boat. A bench 250 mm
// up is at or past the edge of static stability in narrow hulls, as old handbooks
// warn (Boy Scouts of America 1911; Beard 1911).
func TestCapsize(t *testing.T) {
	d := shipped(t, "brook")
	d.Crew[0].Mass, d.Crew[0].Posture = 100, design.Bench
	d.Seats[0].Kind, d.Seats[0].Height = design.Saddle, 250
	r := run(t, d)
	if r.Fault == nil || r.Fault.Outcome != float.Capsizes || len(r.Curve.Levers) > 0 || r.Rest.GM > 0 {
		t.Errorf("GM %.0f mm and %v; want it to capsize", r.Rest.GM, r.Fault)
	}
	if text := r.about("stability"); !strings.Contains(text, "will not stay upright") || !strings.Contains(text, "sitting on the floor GM is") {
		t.Errorf("stability: %q", text)
	}
	if d := r.Findings.Dangers(); len(d) == 0 || d[0].About != "stability" || d[0].Verdict != finding.Unsafe {
		t.Errorf("dangers %+v", d)
	}
}

// TestSalt: in the sea every boat floats higher, in the ratio of the densities.
func TestSalt(t *testing.T) {
	o := options(t)
	b := boatOf(t, shipped(t, "lake"))
	fresh, err1 := Run(b, o)
	o.Water, _ = water.At(water.Salt, 15)
	salt, err2 := Run(b, o)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	if got, want := fresh.Rest.Volume/salt.Rest.Volume, 1026.0/999.1; math.Abs(got/want-1) > 1e-4 || salt.Rest.Draft >= fresh.Rest.Draft {
		t.Errorf("volumes as %.5f, want %.5f; drafts %.1f and %.1f mm", got, want, fresh.Rest.Draft, salt.Rest.Draft)
	}
}

// TestDraft: a fixed waterline over a box table gives L B T and the weight of it.
func TestDraft(t *testing.T) {
	tab, err := offsets.Read(strings.NewReader("station_mm,height_mm,half_breadth_mm\n-1000,0,400\n-1000,400,400\n0,0,400\n0,400,400\n1000,0,400\n1000,400,400\n"), "box")
	if err != nil {
		t.Fatal(err)
	}
	h, err := tab.Hull()
	if err != nil {
		t.Fatal(err)
	}
	b := aboard.OfHull("Box", h, tab.Notes, 0, 200)
	o := options(t)
	o.Draft = 100
	r, err := Run(b, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"mass", r.Load.Mass, 0.16 * o.Water.Density}, {"draft", r.Rest.Draft, 100}, {"KG", r.Rest.KG, 200},
		{"GM", r.Rest.GM, 50 + 800*800/1200. - 200}, {"freeboard", r.Rest.Freeboard.Least, 300},
	} {
		if math.Abs(c.got/c.want-1) > 1e-9 {
			t.Errorf("%s %.6f, want %.6f", c.name, c.got, c.want)
		}
	}
	o.Draft = 401
	if _, err := Run(b, o); err == nil || !strings.Contains(err.Error(), "accepted: less than 400 mm") {
		t.Errorf("a draft over the sheer: %v", err)
	}
}

// TestTables floats the measured canoes at a load, and needs one.
func TestTables(t *testing.T) {
	for _, name := range []string{"fig31.csv", "fig69.csv", "fig108.csv", "cruising.csv"} {
		f, err := os.Open("../../../testdata/offsets/" + name)
		if err != nil {
			t.Fatal(err)
		}
		tab, err := offsets.Read(f, name)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		h, err := tab.Hull()
		if err != nil {
			t.Fatal(err)
		}
		b := aboard.OfHull(name, h, tab.Notes, 120, 0)
		r, err := Run(b, options(t))
		if err != nil || math.Abs(r.Load.Mass-120) > 1e-9 || math.Abs(r.Rest.Trim) > 1e-9 {
			t.Errorf("%s: %v", name, err)
			continue
		}
		b.Gear[0].Loads[0].Mass = 0
		if _, err := Run(b, options(t)); err == nil {
			t.Errorf("%s: floats without a weight", name)
		}
	}
}

// TestThousandDesigns floats a thousand random designs that can be built, under
// random people and gear: each settles, or is refused by its reason.
func TestThousandDesigns(t *testing.T) {
	r := rand.New(rand.NewPCG(1885, 4))
	o := options(t)
	o.Speeds = nil
	outcomes, made := map[string]int{}, 0
	for tries := 0; made < 1000 && tries < 6000; tries++ {
		d := shuffled(t, r)
		f, err := frame.Build(d)
		if err != nil || d.Check() != nil {
			continue
		}
		made++
		b, err := aboard.New(f, d.Crew, d.Gear)
		if err != nil {
			t.Fatalf("design %d: %v", made, err)
		}
		l := b.Load()
		p, m, err := b.Hull.Settle(l, o.Water.Density)
		var fault *float.Fault
		switch {
		case errors.As(err, &fault):
			outcomes[fault.Outcome.String()]++
			if fault.Text == "" {
				t.Errorf("design %d: no reason", made)
			}
		case err != nil:
			t.Errorf("design %d: %v", made, err)
		default:
			outcomes["floats"]++
			if off := m.Volume*1e-9*o.Water.Density/l.Mass - 1; math.Abs(off) > 1e-9 || b.Hull.Freeboard(p).Least <= 0 || float.GM(p, m, l) <= 0 {
				t.Errorf("design %d: settled with %g of the weight out, freeboard %.1f, GM %.1f", made, off, b.Hull.Freeboard(p).Least, float.GM(p, m, l))
			}
		}
	}
	t.Log(outcomes)
	if made < 1000 || outcomes["floats"] < 100 || len(outcomes) < 4 {
		t.Errorf("%d designs with outcomes %v; want a thousand of every kind", made, outcomes)
	}
}

// shuffled changes a shipped design at random.
func shuffled(t *testing.T, r *rand.Rand) *design.Design {
	d := shipped(t, design.ShippedNames()[r.IntN(3)])
	about := func(v measure.Length, share float64) measure.Length {
		return measure.Length(float64(v) * (1 + share*(2*r.Float64()-1)))
	}
	d.Hull.Beam, d.Hull.Depth = about(d.Hull.Beam, 0.2), about(d.Hull.Depth, 0.3)
	k := d.Hull.Beam
	for i := range d.Hull.Spreaders {
		d.Hull.Spreaders[i].Beam = about(k*0.78, 0.06)
	}
	for i := range d.Hull.Sections {
		s := &d.Hull.Sections[i]
		s.BilgeRadius, s.BottomTurn = about(s.BilgeRadius, 0.4), measure.Angle(float64(s.BottomTurn)*(0.5+r.Float64()))
		s.Flare = measure.Angle(float64(s.Flare) + (r.Float64()-0.5)*0.2)
	}
	d.Hull.Waterline = d.Hull.Depth / 3
	d.Thwarts = nil
	half := float64(d.Hull.Length) / 2
	d.Crew, d.Gear = nil, nil
	for range r.IntN(4) {
		d.Crew = append(d.Crew, design.Person{Name: "P", Mass: 15 + 120*r.Float64(), Posture: design.Posture(r.IntN(2)), Seat: design.OnFloor, At: measure.Length(half * 0.85 * (2*r.Float64() - 1))})
	}
	if r.IntN(2) == 0 {
		d.Gear = append(d.Gear, design.Gear{Name: "G", Mass: 1 + 499*r.Float64()*r.Float64(), At: measure.Length(half * 0.8 * (2*r.Float64() - 1))})
	}
	return d
}
