package balance

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/wood/timber"
)

// boat builds the balance of a shipped design after a change.
func boat(t testing.TB, name string, change func(*design.Design)) *Boat {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	if p := f.Design.Check(); p != nil {
		t.Fatalf("%s: %s %s", name, p.Key, p.Text)
	}
	b, err := Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func rest(t testing.TB, b *Boat, open []float64, w *Without) *State {
	t.Helper()
	s, err := b.Settle(open, w)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func choose(t testing.TB, b *Boat, words ...string) *Without {
	t.Helper()
	w, err := b.Choose(words)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestNeutral: with the neutral set every force in a cross piece vanishes, and
// taking out any of them, or all, moves nothing, to 1e-6 of the beam. That is what
// the set is for, by definition.
func TestNeutral(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		if b.Why != nil {
			t.Fatalf("%s: %v", name, b.Why)
		}
		in := rest(t, b, b.Open, nil)
		plain := rest(t, b, nil, nil)
		most := 0.0
		for _, p := range plain.Struts {
			most = math.Max(most, math.Abs(p))
		}
		for i, p := range in.Struts {
			if !(math.Abs(p) <= 1e-6*most) {
				t.Errorf("%s: %s carries %.3g N in the neutral set, %.3g without it", name, b.Frame.Thwarts[i].Name, p, most)
			}
		}
		outs := []*Without{choose(t, b, "all")}
		for i := range b.Frame.Thwarts {
			outs = append(outs, choose(t, b, Code(i)))
		}
		beam := float64(b.Frame.Design.Hull.Beam)
		for _, w := range outs {
			out := rest(t, b, b.Open, w)
			for i := range in.Offset {
				if d := math.Abs(out.Offset[i]-in.Offset[i]) * 2; !(d <= 1e-6*beam) {
					t.Fatalf("%s without %v: the beam at %.0f mm moves by %.3g mm", name, w.Names, in.X[i], d)
				}
			}
		}
		// The boat keeps the beam designed, within what spreaders set by hand are off: 3 mm.
		for _, r := range b.Frame.Ribs {
			if off := 2 * in.At(r.Station); math.Abs(off) > 3 {
				t.Errorf("%s: the neutral set leaves the beam at rib %s off by %.2f mm", name, r.Name, off)
			}
		}
	}
}

// TestMiss sets every rib 10 mm wide or narrow: wide ribs need the cross pieces
// as ties, and the boat widens everywhere when they come out; narrow ones do the
// opposite, by the same amounts within 1 %, and half the miss does half.
func TestMiss(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		all := choose(t, b, "all")
		moved := func(miss float64) []float64 {
			trials, err := b.Trials(all, miss)
			if err != nil || len(trials) != 3 {
				t.Fatalf("%s: %d trials, %v", name, len(trials), err)
			}
			trial := trials[2]
			var out []float64
			for _, s := range b.Frame.Thwarts {
				out = append(out, trial.Moved(s.At))
			}
			sum := 0.0
			for _, p := range trial.In.Struts {
				sum += p
			}
			if sum*miss >= 0 {
				t.Errorf("%s: ribs %+.0f mm off, and the cross pieces together bear %+.1f N", name, miss, sum)
			}
			return out
		}
		wide, narrow, half := moved(10), moved(-10), moved(5)
		for i := range wide {
			if wide[i] <= 0 {
				t.Errorf("%s: ribs 10 mm wide, and the boat moves by %.2f mm at %s", name, wide[i], b.Frame.Thwarts[i].Name)
			}
			within(t, name+", narrow against wide", -narrow[i], wide[i], 0.01)
			within(t, name+", half the miss", 2*half[i], wide[i], 0.01)
		}
	}
}

// TestStiffer doubles the stiffness of every wood and the pull of the cloth: all forces double, nothing
// moves, and the neutral set stays. Elasticity is linear.
func TestStiffer(t *testing.T) {
	for _, name := range design.ShippedNames() {
		soft := boat(t, name, nil)
		hard := boat(t, name, func(d *design.Design) {
			for _, s := range []string{d.Gunwale.Species, d.Ribs.Species, d.Keel.Species, d.Stringers.Species, "white ash"} {
				known, err := timber.Lookup(s)
				if err != nil {
					t.Fatal(err)
				}
				d.Skin.Tension = 0.6
				if !slices.ContainsFunc(d.Woods, func(w design.Wood) bool { return w.Name == known.Name }) {
					d.Woods = append(d.Woods, design.Wood{Name: known.Name, Stiff: 2 * known.MOE})
				}
			}
		})
		a, b := rest(t, soft, nil, nil), rest(t, hard, nil, nil)
		for i := range a.Offset {
			if d := math.Abs(a.Offset[i] - b.Offset[i]); d > 1e-7 {
				t.Fatalf("%s: at %.0f mm it moves by %g mm", name, a.X[i], d)
			}
		}
		for i := range a.Struts {
			within(t, name+", "+soft.Frame.Thwarts[i].Name, b.Struts[i], 2*a.Struts[i], 1e-6)
		}
		for i := range a.Ribs {
			if math.Abs(soft.Open[i]-hard.Open[i]) > 1e-6 {
				t.Errorf("%s: rib %s is relaxed by %.6f mm, and by %.6f in stiffer wood", name, soft.Frame.Ribs[i].Name, soft.Open[i], hard.Open[i])
			}
		}
	}
}

// mirrored turns a design end for end.
func mirrored(d *design.Design) {
	stern := d.After()
	bow := d.Bow
	d.Bow, d.Stern = stern, &bow
	d.Bow.Made, d.Stern.Made = bow.Made, "" // said once for both
	d.Hull.RockerBow, d.Hull.RockerStern = d.Hull.RockerStern, d.Hull.RockerBow
	d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = d.Gunwale.EdgeSetAft, d.Gunwale.EdgeSetBow
	d.Ribs.FromBow, d.Ribs.FromStern = d.Ribs.FromStern, d.Ribs.FromBow
	turn := func(v *measure.Length) { *v = -*v }
	for i := range d.Hull.Spreaders {
		turn(&d.Hull.Spreaders[i].At)
	}
	for i := range d.Hull.Sections {
		turn(&d.Hull.Sections[i].At)
	}
	for i := range d.Gunwale.Scarfs {
		turn(&d.Gunwale.Scarfs[i])
	}
	for i := range d.Thwarts {
		turn(&d.Thwarts[i].At)
	}
	for i := range d.Seats {
		turn(&d.Seats[i].At)
	}
}

// TestMirror turns river end for end: every answer is the mirror of the first.
func TestMirror(t *testing.T) {
	a, b := boat(t, "river", nil), boat(t, "river", mirrored)
	n := len(a.Frame.Ribs)
	sa, sb := rest(t, a, nil, nil), rest(t, b, nil, nil)
	for i := range n {
		if d := a.Open[i] - b.Open[n-1-i]; math.Abs(d) > 1e-6 {
			t.Errorf("rib %s opens by %.6f mm, its mirror by %.6f", a.Frame.Ribs[i].Name, a.Open[i], b.Open[n-1-i])
		}
		x := a.Frame.Ribs[i].Station
		if d := sa.At(x) - sb.At(-x); math.Abs(d) > 1e-6 {
			t.Errorf("at %.0f mm the beam is off by %.6f mm, in the mirror by %.6f", x, sa.At(x), sb.At(-x))
		}
	}
	for i := range sa.Struts {
		if d := sa.Struts[i] - sb.Struts[i]; math.Abs(d) > 1e-4 {
			t.Errorf("%s bears %.5f N, mirrored %.5f", a.Frame.Thwarts[i].Name, sa.Struts[i], sb.Struts[i])
		}
	}
	// And a boat alike at both ends, with its cross pieces laid alike, answers so.
	lake := boat(t, "lake", func(d *design.Design) {
		d.Seats, d.Crew = nil, nil
		d.Thwarts = []design.Thwart{d.Thwarts[1], d.Thwarts[1]}
		d.Thwarts[0].At, d.Thwarts[1].At = -325, 325
	})
	s := rest(t, lake, nil, nil)
	if d := s.Struts[0] - s.Struts[1]; math.Abs(d) > 1e-4 {
		t.Errorf("two bars laid alike bear %.5f and %.5f N", s.Struts[0], s.Struts[1])
	}
}

// TestLostRibs takes ribs out, and ribs that bear nothing: the answer is there and
// is a number, or a clear refusal.
func TestLostRibs(t *testing.T) {
	b := boat(t, "brook", nil)
	finite := func(name string, s *State) {
		t.Helper()
		for _, list := range [][]float64{s.Offset, s.Turn, s.Moment, s.Ribs, s.Struts} {
			for _, v := range list {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%s: %v", name, v)
				}
			}
		}
	}
	out := rest(t, b, b.Open, choose(t, b, "M"))
	finite("without rib M", out)
	if i := slices.IndexFunc(b.Frame.Ribs, func(r frame.Rib) bool { return r.Name == "M" }); out.Ribs[i] != 0 {
		t.Errorf("rib M is out and pushes with %.2f N", out.Ribs[i])
	}
	// Without battens, the gunwales go in where a rib that pushes is out, and out where it
	// pulled.
	_, hoops := hinged(t, b)
	all := choose(t, b, "all").struts
	for i, r := range hoops.ribs {
		with := settle(t, hoops, nil, Setting{Open: b.Open, StrutsOut: all})
		gone := settle(t, hoops, nil, Setting{Open: b.Open, StrutsOut: all, RibsOut: map[int]bool{i: true}})
		if moved := gone.At(r.At) - with.At(r.At); moved*with.Ribs[i] >= 0 {
			t.Errorf("without rib %s, which pushes with %.2f N, the boat moves by %.3f mm there", r.Name, with.Ribs[i], moved)
		}
	}

	ribs, struts := b.Model.ribs, b.Model.struts
	limp := slices.Clone(ribs)
	limp[3].Stiffness = 0
	m, err := sprung(b.Model.rail, limp, struts, 1)
	if err != nil {
		t.Fatal(err)
	}
	open, err := m.Neutral()
	if err != nil || open[3] != 0 {
		t.Errorf("a rib that bears nothing should be set by %v mm (%v), want 0", open[3], err)
	}
	s := settle(t, m, nil, Setting{Open: open, Slack: m.Fit(open)})
	finite("a limp rib", s)
	if math.Abs(s.Struts[0]) > 1e-6 {
		t.Errorf("a limp rib leaves %.2g N in the thwart", s.Struts[0])
	}
	for i := range limp {
		limp[i].Stiffness = 0
	}
	for name, ribs := range map[string][]Member{"all limp": limp, "none": nil} {
		m, err := sprung(b.Model.rail, ribs, struts, 1)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := m.Neutral(); !errors.Is(err, ErrNoNeutral) {
			t.Errorf("%s: got %v, want a refusal", name, err)
		}
		finite(name, settle(t, m, nil, Setting{}))
	}
}

// TestTooStiff has gunwales that the ribs cannot hold: no neutral set, and why.
func TestTooStiff(t *testing.T) {
	b := boat(t, "river", func(d *design.Design) {
		d.Gunwale.Glued = design.GluedStraight
		d.Gunwale.Width, d.Gunwale.Height = 24, 60
		d.Ribs.Thickness = 5
	})
	if b.Why == nil || !strings.Contains(b.Why.Text, "too stiff for these ribs") {
		t.Errorf("got %v", b.Why)
	}
	trials, err := b.Trials(choose(t, b, "all"), 10)
	if err != nil || len(trials) != 1 || trials[0].Set != "unset" {
		t.Errorf("got %d trials, %v; want only the one with ribs unset", len(trials), err)
	}
	// A boat without cross pieces has nothing to relieve, and a neutral set still.
	if b := boat(t, "brook", func(d *design.Design) { d.Thwarts = nil }); b.Why != nil {
		t.Errorf("without cross pieces: %v", b.Why)
	}
}

// TestRefused gives the model what is no frame.
func TestRefused(t *testing.T) {
	good := even(testL, testEI)
	nan, inf := math.NaN(), math.Inf(1)
	with := func(f func(*Rail)) Rail { r := good; f(&r); return r }
	for _, c := range []struct {
		name   string
		rail   Rail
		ribs   []Member
		struts []Member
	}{
		{"turned rail", with(func(r *Rail) { r.From, r.To = r.To, r.From }), nil, nil},
		{"rail without an end", with(func(r *Rail) { r.To = inf }), nil, nil},
		{"rail of no stiffness", with(func(r *Rail) { r.Stiffness = func(float64) float64 { return 0 } }), nil, nil},
		{"rail of NaN stiffness", with(func(r *Rail) { r.Stiffness = func(float64) float64 { return nan } }), nil, nil},
		{"rail of endless stiffness", with(func(r *Rail) { r.Stiffness = func(float64) float64 { return inf } }), nil, nil},
		{"curve that is no number", with(func(r *Rail) { r.Strain = func(float64) float64 { return nan } }), nil, nil},
		{"rib of negative stiffness", good, []Member{{"F1", 100, -1}}, nil},
		{"rib of NaN stiffness", good, []Member{{"F1", 100, nan}}, nil},
		{"rib off the end", good, []Member{{"F1", testL + 1, 1}}, nil},
		{"rib nowhere", good, []Member{{"F1", nan, 1}}, nil},
		{"strut on the stem", good, nil, []Member{{"bar", 0, 1}}},
		{"strut of no stiffness", good, nil, []Member{{"bar", 100, 0}}},
		{"strut of endless stiffness", good, nil, []Member{{"bar", 100, inf}}},
	} {
		if _, err := sprung(c.rail, c.ribs, c.struts, 1); err == nil || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: got %v, want a refusal in a line", c.name, err)
		}
	}
	// Two cross pieces on one place, both cut to the frame, carry nothing.
	m, err := sprung(good, []Member{{"a", 1000, 1}, {"b", 2000, 1}}, []Member{{"one", 1500, 1}, {"two", 1500, 1}}, 1)
	if err != nil {
		t.Fatal(err)
	}
	open, err := m.Neutral()
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range settle(t, m, nil, Setting{Open: open, Slack: m.Fit(open)}).Struts {
		if math.Abs(p) > 1e-9 {
			t.Errorf("of two cross pieces on one place number %d bears %g N", i, p)
		}
	}
	m, _ = sprung(good, []Member{{"a", 1000, 1}}, nil, 1)
	if _, err := m.Settle(Setting{Open: []float64{1e9}}); err == nil {
		t.Error("a rib a kilometre too wide is taken")
	}
	if _, err := m.Settle(Setting{Open: []float64{nan}}); err == nil {
		t.Error("a rib that is NaN wide is taken")
	}
}

// TestChoose names members every way a builder may.
func TestChoose(t *testing.T) {
	b := boat(t, "river", nil)
	for _, c := range []struct {
		words []string
		want  int
	}{
		{[]string{"seat"}, 2}, {[]string{"SEAT", "thwart-2"}, 3}, {[]string{"yoke"}, 1}, {[]string{"thwart"}, 2},
		{[]string{"bow seat"}, 1}, {[]string{"seat-2"}, 1}, {[]string{"After-Thwart"}, 1}, {[]string{"all"}, 5}, {nil, 0},
		{[]string{"rib F3", "a1"}, 2}, {[]string{"thwart-1", "yoke"}, 1},
	} {
		if got := choose(t, b, c.words...); len(got.Names) != c.want {
			t.Errorf("%v takes out %v, want %d", c.words, got.Names, c.want)
		}
	}
	if got := choose(t, boat(t, "brook", nil), "all").String(); got != "Carrying thwart" {
		t.Errorf("without all brook is without %q; its pad bears on nothing", got)
	}
	for _, w := range []string{"mast", "", "thwart-4", "seat-3", strings.Repeat("x", 1000)} {
		if _, err := b.Choose([]string{w}); err == nil || !strings.Contains(err.Error(), "thwart-3, seat, seat-1, seat-2, all") || len(err.Error()) > 300 {
			t.Errorf("%.10q: got %v", w, err)
		}
	}
}

// TestForms bends each rib free on its arcs as the forms make them, straight runs
// straight: the width between its heads is then what it is to be relaxed to,
// to what the turn of a bend costs at second order, which grows with the square of the
// opening: o²/2000 mm, 0.8 mm at 40 mm; or 0.5 mm. Width of an arc chain by walking
// it, which shares nothing with the moments behind the radii.
func TestForms(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		for i, r := range b.Frame.Ribs {
			x, heading := 0.0, 0.0
			for j, bend := range r.Section.Half {
				if bend.Radius == 0 {
					x += bend.Length * math.Cos(heading)
					continue
				}
				free := b.FreeRadius(i, j)
				turn := bend.Length / free
				x += free * (math.Sin(heading+turn) - math.Sin(heading))
				heading += turn
			}
			miss := 2*x - b.Width(i)
			if math.Abs(miss) > math.Max(0.5, b.Open[i]*b.Open[i]/2000) {
				t.Errorf("%s rib %s: forms make it %.1f mm wide, it is to be %.1f (opened by %.1f)", name, r.Name, 2*x, b.Width(i), b.Open[i])
			}
		}
	}
}
