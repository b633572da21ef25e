package float

import (
	"math"
	"testing"

	"ribwright/geometry"
)

// box is a barge of the given length and breadth, 1 m deep.
func box(t *testing.T, length, breadth float64) *Hull {
	t.Helper()
	var all []Station
	for i := range 21 {
		all = append(all, Station{X: length * (float64(i)/20 - 0.5), Half: boxHalf(breadth)})
	}
	h, err := New(all)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func boxHalf(breadth float64) []geometry.Point {
	return []geometry.Point{{}, {X: breadth / 2}, {X: breadth / 2, Y: 1000}}
}

// TestAnswerBarge: a barge of the breadth B and the draft T has GM = T/2 + B B/(12 T) -
// KG, so that at one weight a breadth more by 1 gains B/(4 T) - T/(2 B); a weight moved
// ahead by s trims it by s/GML. Any text on ship stability.
func TestAnswerBarge(t *testing.T) {
	const length, breadth, mass = 4000.0, 700.0, 300.0
	h := box(t, length, breadth)
	l := Load{mass, geometry.Point3{Z: 200}}
	p, m, err := h.Settle(l, 1000)
	if err != nil {
		t.Fatal(err)
	}
	a := h.Answer(p, l)
	var more Immersed
	const wide = 0.01
	for i := range h.sections {
		d, err := a.Section(i, boxHalf(breadth+wide))
		if err != nil {
			t.Fatal(err)
		}
		more = more.Plus(d, 1)
	}
	trim, gm := a.To(more, geometry.Point3{}, Load{})
	draft := p.Rise
	if want := breadth/(4*draft) - draft/(2*breadth); math.Abs(gm/wide/want-1) > 1e-4 || math.Abs(trim) > 1e-12 {
		t.Errorf("wider by 1 mm: GM %.6f mm more, want %.6f; trim %g", gm/wide, want, trim)
	}
	gml := draft/2 + length*length/(12*draft) - 200
	if got := (m.alongSecond - m.alongFirst*m.alongFirst/m.Area) / m.Volume; math.Abs(got/(length*length/(12*draft))-1) > 2e-3 {
		t.Fatalf("BML %.1f", got)
	}
	trim, gm = a.To(Immersed{}, geometry.Point3{X: 1}, Load{})
	if math.Abs(trim*gml+1) > 2e-3 || math.Abs(gm) > 1e-6 {
		t.Errorf("weight 1 mm ahead: trim %g, want %g; GM %g", trim, -1/gml, gm)
	}
	if _, gm = a.To(Immersed{}, geometry.Point3{Z: 1}, Load{}); math.Abs(gm+1) > 1e-9 {
		t.Errorf("weight 1 mm higher: GM %g more, want -1", gm)
	}
}

// TestAnswerAnew: a wedge that floats by the head answers as it does when it is floated
// anew with one section wider, its weight moved and a
// little more of it.
func TestAnswerAnew(t *testing.T) {
	half := func(i int, wide float64) []geometry.Point {
		w := 260 + 10*float64(i) - 0.4*float64(i*i) + wide
		return []geometry.Point{{Y: 5}, {X: w * 0.7}, {X: w, Y: 400}}
	}
	made := func(wide float64) *Hull {
		var all []Station
		for i := range 21 {
			by := 0.0
			if i == 14 {
				by = wide
			}
			all = append(all, Station{X: 200 * float64(i-10), Half: half(i, by)})
		}
		h, err := New(all)
		if err != nil {
			t.Fatal(err)
		}
		return h
	}
	const wide, ahead, mass = 0.05, 0.02, 180.0
	at, drop := geometry.Point3{X: 120, Z: 190}, Load{0.002, geometry.Point3{X: -900, Z: 300}}
	rest := func(side float64) (trim, gm float64) {
		l := Load{mass, at.Add(geometry.Point3{X: side * ahead})}
		l = Total(l, Load{side * drop.Mass, drop.At})
		p, m, err := made(side*wide).Settle(l, 1000)
		if err != nil {
			t.Fatal(err)
		}
		return p.Trim, GM(p, m, l)
	}
	t1, g1 := rest(1)
	t0, g0 := rest(-1)
	h, l := made(0), Load{mass, at}
	p, _, err := h.Settle(l, 1000)
	if err != nil {
		t.Fatal(err)
	}
	a := h.Answer(p, l)
	more, err := a.Section(14, half(14, wide))
	if err != nil {
		t.Fatal(err)
	}
	trim, gm := a.To(more, geometry.Point3{X: ahead}, drop)
	if math.Abs(trim/((t1-t0)/2)-1) > 2e-3 || math.Abs(gm/((g1-g0)/2)-1) > 2e-3 {
		t.Errorf("trim %g and GM %g, floated anew %g and %g", trim, gm, (t1-t0)/2, (g1-g0)/2)
	}
}
