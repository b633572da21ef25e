package balance

import (
	"math"
	"slices"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/referencetest"
)

// tube is a boat of even ribs: half circles at even distances under straight gunwales,
// with battens drawn by line at the angles given, as shares of the quarter circle. Its
// battens bend by off out of the rib's face and by along in it.
func tube(t *testing.T, n int, rail Rail, angles []float64, line func(j int, x float64) (at, slope [2]float64)) *Model {
	t.Helper()
	m := &Model{rail: rail}
	pitch := rail.To / float64(n+1)
	var at []crossing
	for _, a := range angles {
		sin, cos := math.Sincos(a * math.Pi / 2)
		at = append(at, crossing{a * ribR * math.Pi / 2, geometry.Pt(ribR*sin, ribR*(1-cos))})
	}
	for i := range n {
		h := newHoop(semicircle(), ribEI, 7, at, nil)
		h.move = h.move[1:] // it has no keel
		m.hoops, m.pitches = append(m.hoops, h), append(m.pitches, pitch)
		m.ribs = append(m.ribs, Member{"", pitch * float64(i+1), 1 / h.give()})
	}
	for j, a := range angles {
		b := &batten{moe: 12000, wide: 20, deep: 12, ends: true}
		for i := range n + 2 {
			x := pitch * float64(i)
			place, slope := line(j, x)
			b.x, b.at, b.slope, b.face = append(b.x, x), append(b.at, place), append(b.slope, slope), append(b.face, a*math.Pi/2)
		}
		m.battens = append(m.battens, b)
	}
	if err := m.build(1); err != nil {
		t.Fatal(err)
	}
	return m
}

func straight(int, float64) (at, slope [2]float64) { return at, slope }

// TestStraightBatten: straight sticks on a straight boat push nothing, whatever else
// does, and stiffen only.
func TestStraightBatten(t *testing.T) {
	m := tube(t, 9, even(testL, testEI), []float64{0.3, 0.6}, straight)
	for _, c := range []Case{{}, {Cold: 1}, {Heads: 1, Cold: 1}} {
		s := settle(t, m, nil, Setting{Case: &c})
		for i, v := range s.Offset {
			if v != 0 {
				t.Errorf("%+v: at %.0f mm it moves by %g mm", c, s.X[i], v)
			}
		}
	}
}

// TestBattenAtTheHead: a batten at the rib's head does what the gunwale does, so a
// gunwale of the stiffness of both is the same boat: under a load, and when both want to
// straighten from one curve. Superposition.
func TestBattenAtTheHead(t *testing.T) {
	const off = 12000 * 20 * 12 * 12 * 12 / 12.0
	// So slight a curve that no slope shortens anything.
	bow := func(x float64) (y, slope, second float64) {
		const rise = 4 * 2.0 / testL / testL
		return rise * x * (testL - x), rise * (testL - 2*x), -2 * rise
	}
	drawn := func(_ int, x float64) (at, slope [2]float64) {
		y, d, _ := bow(x)
		return [2]float64{y, 0}, [2]float64{d, 0}
	}
	rail := func(ei float64) Rail {
		r := even(testL, ei)
		r.Strain = func(x float64) float64 { _, _, s := bow(x); return s }
		return r
	}
	both := tube(t, 9, rail(testEI), []float64{1}, drawn)
	one := tube(t, 9, rail(testEI+off), nil, nil)
	open := make([]float64, 9)
	for _, o := range []float64{0, 8} {
		open[3] = o
		a, b := settle(t, both, nil, Setting{Open: open, Case: &Case{Cold: 1}}), settle(t, one, nil, Setting{Open: open})
		for i := range both.ribs {
			x := both.ribs[i].At
			// A parabola has a moment at its end and the last bay of a batten none: there alone
			// they differ, by a third of the pitch's own.
			if d := math.Abs(a.At(x) - b.At(x)); d > 0.01*math.Abs(b.At(testL/2)) {
				t.Errorf("rib %d opened by %g mm: %.6f mm, as one gunwale %.6f", i, o, a.At(x), b.At(x))
			}
		}
	}
}

// TestEndStress: a stick bent to the radius R over its depth t bears E t/(2 R); one bent
// along the rib, over its width.
func TestEndStress(t *testing.T) {
	const r = 4000.0
	arc := func(i int) func(j int, x float64) (at, slope [2]float64) {
		return func(_ int, x float64) (at, slope [2]float64) {
			at[i], slope[i] = (x-testL/2)*(x-testL/2)/2/r, (x-testL/2)/r
			return at, slope
		}
	}
	for i, want := range []float64{12000 * 12 / 2 / r, 12000 * 20 / 2 / r} {
		m := tube(t, 34, even(testL, testEI), []float64{1}, arc(i))
		// A parabola bends less at its steep ends, by cos³ of their lean.
		lean := math.Cos(math.Atan(testL / 2 / r))
		if got := m.battens[0].stress(); got > want || got < want*cube(lean) {
			t.Errorf("axis %d: %.3f N/mm2, want up to %.3f", i, got, want)
		}
	}
}

// TestSuperposed: what two settings do together is what they do one after the other. The
// model is linear, so exactly, but for rounding.
func TestSuperposed(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		n := len(b.Frame.Ribs)
		one, two, both := make([]float64, n), make([]float64, n), make([]float64, n)
		for i := range n {
			one[i], two[i] = float64(i), 20-float64(i*i%17)
			both[i] = one[i] + two[i]
		}
		for _, heads := range []Case{{}, {Heads: 0.5}, {Heads: 1, Upright: 1}} {
			at := func(open []float64, cold, cloth float64) *State {
				c := heads
				c.Cold, c.Cloth = cold, cloth
				return settle(t, b.Model, nil, Setting{Open: open, Case: &c})
			}
			zero := at(nil, 0, 0)
			all, a, o, e, s := at(both, 1, 0.7), at(one, 0, 0), at(two, 0, 0), at(nil, 1, 0), at(nil, 0, 0.7)
			for i, v := range all.Offset {
				sum := a.Offset[i] + o.Offset[i] + e.Offset[i] + s.Offset[i] - 3*zero.Offset[i]
				if math.Abs(v-sum) > 1e-8 {
					t.Fatalf("%s, %+v: at %.0f mm %.9f together, %.9f one by one", name, heads, all.X[i], v, sum)
				}
			}
			for i, v := range all.Struts {
				sum := a.Struts[i] + o.Struts[i] + e.Struts[i] + s.Struts[i] - 3*zero.Struts[i]
				if math.Abs(v-sum) > 1e-6 {
					t.Errorf("%s: cross piece %d bears %.9f N, %.9f one by one", name, i, v, sum)
				}
			}
		}
	}
}

// TestBand holds every band in order, and against each of its corners settled on its own.
func TestBand(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		if b.Why != nil {
			t.Fatalf("%s: %v", name, b.Why)
		}
		for _, w := range []*Without{choose(t, b, "all"), choose(t, b, Code(0)), choose(t, b, "M", Code(0))} {
			trials, err := b.Trials(w, 10)
			if err != nil {
				t.Fatal(err)
			}
			for _, tr := range trials {
				at, met := 0.0, Range{math.Inf(1), 0, math.Inf(-1)}
				at = b.Frame.Ribs[3].Station
				for _, c := range append(b.Corners(), b.Likely()) {
					in := settle(t, b.Model, nil, Setting{Open: tr.Open, Slack: b.Fit, Case: &c})
					out := settle(t, b.Model, nil, Setting{Open: tr.Open, Slack: b.Fit, Case: &c, StrutsOut: w.struts, RibsOut: w.ribs})
					met.take(2 * (out.At(at) - in.At(at)))
				}
				got := tr.Band.At(at)
				if math.Abs(got.Least-met.Least)+math.Abs(got.Most-met.Most) > 1e-7 || math.Abs(got.Likely-tr.Moved(at)) > 1e-7 {
					t.Errorf("%s, %s: the band at rib 3 is %+v, its corners give %+v, the likely case %.6f", name, tr.Set, got, met, tr.Moved(at))
				}
				for i, r := range slices.Concat(tr.Band.Moved, tr.Band.Forces) {
					if !(r.Least <= r.Likely && r.Likely <= r.Most) {
						t.Fatalf("%s, %s: range %d is %+v", name, tr.Set, i, r)
					}
				}
				over := tr.Band.Over()
				if !(over.Least <= 0 && over.Least <= got.Least && over.Most >= 0 && over.Most >= got.Most && over.Least <= over.Likely && over.Likely <= over.Most) {
					t.Errorf("%s, %s: over all %+v, at rib 3 %+v", name, tr.Set, over, got)
				}
			}
			// One thing at a time never does more than all at once.
			told := trials[1]
			if len(told.Causes) != 6 {
				t.Errorf("%s: %d causes", name, len(told.Causes))
			}
			for _, c := range told.Causes {
				if c.Least < told.Band.Least.Moved-1e-9 || c.Most > told.Band.Most.Moved+1e-9 || c.Least > 0 || c.Most < 0 {
					t.Errorf("%s: %+v is beyond the band %+v", name, c, told.Band.Over())
				}
			}
			alone, err := b.Alone(w)
			if err != nil || len(alone) != len(w.Names) {
				t.Fatalf("%s: %d bands for %d members, %v", name, len(alone), len(w.Names), err)
			}
			if len(alone) == 1 && alone[0].Over() != told.Band.Over() {
				t.Errorf("%s: alone %+v, chosen alone %+v", name, alone[0].Over(), told.Band.Over())
			}
		}
	}
}

// TestOddFrames: boats that are out of the ordinary have answers that are numbers, and
// least, likely and most in order.
func TestOddFrames(t *testing.T) {
	for name, change := range map[string]func(*design.Design){
		"one stringer":     func(d *design.Design) { d.Stringers.At = []float64{0.5} },
		"stringer by keel": func(d *design.Design) { d.Stringers.At = []float64{0.2, 0.3} },
		"no thwarts":       func(d *design.Design) { d.Thwarts = nil },
		"no cloth":         func(d *design.Design) { d.Skin.Tension = 0 },
		"hard cloth":       func(d *design.Design) { d.Skin.Tension = 2 },
		"few ribs":         func(d *design.Design) { d.Ribs.Pitch = 400; d.Gunwale.Scarfs = nil },
		"close ribs":       func(d *design.Design) { d.Ribs.Pitch = 85; d.Gunwale.Scarfs, d.Thwarts[0].At = nil, 43 },
		"flat bottom":      func(d *design.Design) { setSections(d, 0, 0) },
		"tumblehome":       func(d *design.Design) { setSections(d, 15, -4); d.Gunwale.Tilt = 0.14 },
		"no edge-set":      func(d *design.Design) { d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0 },
		"stiff stringers":  func(d *design.Design) { d.Stringers.Width, d.Stringers.Depth = 40, 30 },

		"midship without M": func(d *design.Design) { d.Ribs.AtMidship, d.Thwarts[0].At = false, 0 },
	} {
		b := boat(t, "brook", change)
		w := choose(t, b)
		if len(b.Frame.Thwarts) > 0 {
			w = choose(t, b, "all")
		}
		trials, err := b.Trials(w, 10)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, tr := range trials {
			for _, r := range slices.Concat(tr.Band.Moved, tr.Band.Forces) {
				if !(r.Least <= r.Likely && r.Likely <= r.Most) || math.IsInf(r.Most-r.Least, 0) {
					t.Fatalf("%s, %s: %+v", name, tr.Set, r)
				}
			}
		}
		if over := trials[min(1, len(trials)-1)].Band.Over(); b.Why == nil && math.Abs(over.Likely) > 1e-6 {
			t.Errorf("%s: the neutral set moves by %g mm when all is as likely", name, over.Likely)
		}
		if s := rest(t, b, nil, &Without{ribs: map[int]bool{0: true, 1: true, 2: true}}); s.Ribs[1] != 0 || s.Bent[1] != 0 {
			t.Errorf("%s: ribs that are out push with %v", name, s.Ribs[:3])
		}
		all := map[int]bool{}
		for i := range b.Frame.Ribs {
			all[i] = true
		}
		delete(all, len(b.Frame.Ribs)/2)
		rest(t, b, nil, &Without{ribs: all})
	}
}

func setSections(d *design.Design, bottom, flare float64) {
	for i := range d.Hull.Sections {
		if d.Hull.Sections[i].At == 0 {
			d.Hull.Sections[i].BottomTurn, d.Hull.Sections[i].Flare = measure.Angle(bottom*math.Pi/180), measure.Angle(flare*math.Pi/180)
		}
	}
}

// TestLattice sets a tube of ribs and battens against an independent solution, dense,
// with ribs that may bend in any way and battens that slope by themselves:
// testdata/reference/lattice.py. What the few ways of bending and the battens' shape
// between ribs leave out is 0.3 % of the greatest movement at the most.
func TestLattice(t *testing.T) {
	line := func(j int, x float64) (at, slope [2]float64) {
		const k = math.Pi / testL
		a, b := 3-float64(j), 2+float64(j)
		sin, cos := math.Sincos(2 * k * x)
		return [2]float64{a * math.Sin(k*x), b * cos * (1 + x/testL)},
			[2]float64{a * k * math.Cos(k*x), -2*b*k*sin*(1+x/testL) + b*cos/testL}
	}
	m := tube(t, 11, even(testL, testEI), []float64{0.3, 0.6, 0.85}, line)
	for _, row := range referencetest.Table(t, "../../../testdata/reference/lattice.csv") {
		var v []float64
		for _, s := range row {
			v = append(v, referencetest.Number(t, s))
		}
		open := make([]float64, 11)
		open[3] = v[2]
		s := settle(t, m, nil, Setting{Open: open, Case: &Case{Heads: v[0], Cold: v[1]}})
		most, worst := 0.0, 0.0
		for i, want := range v[3:] {
			most = math.Max(most, math.Abs(want))
			worst = math.Max(worst, math.Abs(s.At(m.ribs[i].At)-want))
		}
		t.Logf("heads %g, cold %g, opened %g: up to %.4f mm, off by %.4f", v[0], v[1], v[2], most, worst)
		if worst > 0.003*most {
			t.Errorf("heads %g, cold %g, opened %g: %.4f mm off, of %.4f", v[0], v[1], v[2], worst, most)
		}
	}
}
