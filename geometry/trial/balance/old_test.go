package balance

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/equations"
	"ribwright/geometry/measure"
	"ribwright/geometry/referencetest"
)

// hinged is the frame of springs that this package once was: heads hinged, no stringers,
// no cloth, and the gunwale a natural spline through its spreaders. All of it is put
// together here from the frame, the ribs' sections solved anew under that line.
func hinged(t testing.TB, b *Boat) (springs, hoops *Model) {
	t.Helper()
	d, line := b.Frame.Design, b.Frame.Gunwale.Line
	aft, fore := line.Ends()
	x, y := []float64{aft}, []float64{float64(d.After().Siding) / 2}
	rail := Rail{From: aft, To: fore}
	for _, s := range d.AllSpreaders() {
		x, y = append(x, float64(s.At)), append(y, float64(s.Beam)/2)
		rail.Kinks = append(rail.Kinks, float64(s.At))
	}
	plan, err := curve.NewBatten(append(x, fore), append(y, float64(d.Bow.Siding)/2))
	if err != nil {
		t.Fatal(err)
	}
	sin, tilt := math.Sincos(b.Frame.Gunwale.Tilt)
	slant := func(x float64) float64 {
		_, slope, _ := plan.At(x)
		return 1 / math.Hypot(1, slope/tilt)
	}
	rail.Stiffness = func(x float64) float64 { return b.Stiff() * slant(x) / (tilt * tilt) }
	rail.Strain = func(x float64) float64 {
		_, _, second := plan.At(x)
		return second * slant(x) * slant(x) * (1 - b.Glue.Kept)
	}
	var ribs, struts []Member
	var bent []*hoop
	for _, r := range b.Frame.Ribs {
		half, _, _ := plan.At(r.Station)
		lower := (half - r.Section.HalfBreadth) * sin / tilt
		s, err := hull.Solve(half, r.Section.Depth-lower, r.Section.Shape)
		if err != nil {
			t.Fatal(err)
		}
		bent = append(bent, newHoop(s.Half, b.ribStiff(), r.Thickness, nil, nil))
		ribs = append(ribs, Member{r.Name, r.Station, b.ribStiff() / headsGive(s.Half)})
	}
	for i, s := range b.Model.struts {
		half, _, _ := plan.At(s.At)
		s.Stiffness *= line.Point(b.Frame.Thwarts[i].At).Y / half
		struts = append(struts, s)
	}
	if springs, err = sprung(rail, ribs, struts, 1); err != nil {
		t.Fatal(err)
	}
	hoops = &Model{rail: rail, ribs: ribs, struts: struts, hoops: bent, pitches: make([]float64, len(ribs))}
	if err := hoops.build(1); err != nil {
		t.Fatal(err)
	}
	return springs, hoops
}

// plainEnds gives a shipped boat the ends, the sheer and the sections that it had when
// the old answers were recorded: straight rakes over small forefoots.
func plainEnds(name string) func(*design.Design) {
	const deg = math.Pi / 180
	stem := func(s *design.Stem, rake measure.Angle, forefoot, landing, horn measure.Length) {
		s.Rake, s.HeadTurn, s.ForefootRadius, s.Landing, s.Horn = rake*deg, 0, forefoot, landing, horn
	}
	return func(d *design.Design) {
		g := &d.Gunwale
		g.Tilt = 8 * deg
		for i := range d.Hull.Sections {
			if d.Hull.Sections[i].At != 0 {
				d.Hull.Sections[i].Flare = 3 * deg
			}
		}
		switch name {
		case "brook":
			stem(&d.Bow, 12, 190, 110, 16)
			g.EdgeSetBow, g.EdgeSetAft, g.EdgeSetFrom = 25, 25, 700
		case "lake":
			stem(&d.Bow, 14, 210, 120, 18)
			g.EdgeSetBow, g.EdgeSetAft, g.EdgeSetFrom = 35, 35, 900
		case "river":
			stem(&d.Bow, 15, 230, 130, 20)
			stem(d.Stern, 12, 220, 130, 20)
			g.EdgeSetBow, g.EdgeSetAft, g.EdgeSetFrom = 50, 35, 900
			d.Hull.Sections[1].BilgeRadius, d.Hull.Sections[1].Flare, d.Hull.Sections[2].Flare = 130, 9*deg, 5*deg
		}
	}
}

// asRecorded gives a boat the cross pieces that it had when the answers were recorded:
// bars for seats in place of today's thwarts beside the yoke, and the yoke where it was.
func asRecorded(d *design.Design) {
	d.Seats, d.Crew = nil, nil
	d.Thwarts[0].At = measure.Length(d.Ribs.Pitch / 2) // what it is carried by was forward of midship
	if d.Title == "Brook" {
		d.Thwarts[0].Waist = 38
		return
	}
	bars := map[string]measure.Length{"Seat bar, forward": -325, "Seat bar, after": -585}
	keep := 1
	if d.Title == "River" {
		bars = map[string]measure.Length{"Bow seat bar, forward": 1050, "Bow seat bar, after": 770, "Stern seat bar, forward": -1330, "Stern seat bar, after": -1610}
		keep = 2
	}
	d.Thwarts = d.Thwarts[:keep]
	for _, end := range []string{"Bow s", "Stern s", "S"} {
		for _, edge := range []string{"forward", "after"} {
			if at, ok := bars[end+"eat bar, "+edge]; ok {
				d.Thwarts = append(d.Thwarts, design.Thwart{Name: end + "eat bar, " + edge, At: at, Species: "white ash", Width: 45, Waist: 45, Thickness: 20})
			}
		}
	}
}

// TestOldAnswers: with heads hinged, no stringers, no cloth and the gunwale's old line
// the answers recorded before any of these was known return, to 1e-6: neutral set,
// offsets, movements, pushes. 1e-6 of a millimeter or newton where they are small.
func TestOldAnswers(t *testing.T) {
	old := recorded(t)
	for _, name := range design.ShippedNames() {
		// The boats had other ends and thicker skins then, which move every rib a little.
		plain := plainEnds(name)
		b := boat(t, name, func(d *design.Design) {
			plain(d)
			asRecorded(d)
			d.Skin.Thick = measure.Length(map[string]float64{"brook": 0.6, "lake": 0.7, "river": 0.8}[name])
		})
		out := map[int]bool{}
		for i := range b.Frame.Thwarts {
			out[i] = true
		}
		springs, hoops := hinged(t, b)
		for model, m := range map[string]*Model{"springs": springs, "hoops": hoops} {
			open := heldAtPieces(t, m)
			wide := make([]float64, len(open))
			for i, o := range open {
				wide[i] = o + 10
			}
			unset, neutral, off := settle(t, m, nil, Setting{}), settle(t, m, nil, Setting{Open: open}), settle(t, m, nil, Setting{Open: wide})
			unsetOut, offOut := settle(t, m, nil, Setting{StrutsOut: out}), settle(t, m, nil, Setting{Open: wide, StrutsOut: out})
			check := func(part, named string, x, open float64, pushes ...float64) {
				t.Helper()
				moved := func(a, b *State) float64 { return 2 * (b.At(x) - a.At(x)) }
				got := append([]float64{open, 2 * unset.At(x), moved(unset, unsetOut), 2 * off.At(x), moved(off, offOut)}, pushes...)
				want := old[fmt.Sprint(name, part, named)]
				for k, v := range got {
					if !(math.Abs(v-want[k]) <= 1e-6*math.Max(1, math.Abs(want[k]))) {
						t.Errorf("%s, %s, %s %s, value %d: %.9f, was %.9f", name, model, part, named, k, v, want[k])
					}
				}
			}
			for i, r := range m.ribs {
				check("rib", r.Name, r.At, open[i], unset.Ribs[i], neutral.Ribs[i], off.Ribs[i])
			}
			for i, s := range m.struts {
				check("cross piece", s.Name, s.At, 0, unset.Struts[i], neutral.Struts[i], off.Struts[i])
			}
		}
	}
}

// recorded reads the old answers: by boat, part and name their figures.
func recorded(t *testing.T) map[string][]float64 {
	t.Helper()
	out := map[string][]float64{}
	for _, r := range referencetest.Table(t, "testdata/springs_only.csv") {
		var v []float64
		for _, s := range r[4:] {
			n := 0.0
			if s != "" {
				n = referencetest.Number(t, s)
			}
			v = append(v, n)
		}
		out[r[0]+r[1]+r[2]] = v
	}
	return out
}

// heldAtPieces is the neutral set as it was worked out before cross pieces were cut to
// the frame: the beam true to the drawing at every one of them, and 1 mm of beam
// elsewhere worth 50 mm of opening.
func heldAtPieces(t *testing.T, m *Model) []float64 {
	t.Helper()
	n, all := len(m.ribs), len(m.ribs)+len(m.struts)
	a, y := make([][]float64, all), make([]float64, all)
	for i := range a {
		a[i] = make([]float64, all)
	}
	free := func(at int) float64 { return m.settled.free(at, m.likely, nil) }
	var effect [][]float64
	for i, r := range m.ribs {
		load := make([]float64, m.unknowns)
		load[m.ribAt[i]] = r.Stiffness
		effect = append(effect, m.settled.under(load))
	}
	for i := range n {
		for _, at := range m.ribAt {
			y[i] -= 4 * effect[i][at] * free(at)
			for j := range n {
				a[i][j] += 4 * effect[i][at] * effect[j][at]
			}
		}
		a[i][i] += 0.02 * 0.02
		for s, at := range m.strutAt {
			a[i][n+s], a[n+s][i] = effect[i][at], effect[i][at]
		}
	}
	for s, at := range m.strutAt {
		y[n+s] = -free(at)
	}
	x, ok := equations.Eliminate(a, y)
	if !ok {
		t.Fatal("no neutral set")
	}
	return x[:n]
}
