package fan

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// TestLeastWorst: no straight line has a smaller worst error than the worst that any three
// of the points ask for by themselves, and the best line has just that one (de la Vallée
// Poussin's theorem for lines: Cheney, Introduction to Approximation Theory, 1966, from
// memory). For three points it is half of how far the middle one lies off the chord of the
// others, plumb.
func TestLeastWorst(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 19))
	for range 300 {
		points := make([]point, 3+r.IntN(8))
		for i := range points {
			points[i] = point{r.Float64(), r.Float64(), 600 + 100*r.Float64()}
		}
		want := 0.0
		for i := range points {
			for j := range points {
				for k := range points {
					a, m, b := points[i], points[j], points[k]
					if a.u < m.u && m.u < b.u {
						want = math.Max(want, math.Abs(a.y+(b.y-a.y)*(m.u-a.u)/(b.u-a.u)-m.y)/2)
					}
				}
			}
		}
		if got := fitted(points, false).worst(points); got < want-1e-6 || got > 1.02*want+1e-3 {
			t.Fatalf("%v: worst error %.4f mm, three points alone ask for %.4f", points, got, want)
		}
	}
}

// TestNetThroughNet: points that lie on a net by construction are read to a thousandth, and
// a single ray through them is worse.
func TestNetThroughNet(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 19))
	for range 100 {
		made := corners{{500, 620}, {505 + 20*r.Float64(), 640}}
		points := make([]point, 8)
		for i := range points {
			points[i].u, points[i].v = r.Float64(), r.Float64()
			points[i].y = made.at(points[i].u, points[i].v)
		}
		if w := fitted(points, true).worst(points); w > 1e-3 {
			t.Fatalf("a net is %.4f mm off points that lie on it", w)
		}
		if w := fitted(points, false).worst(points); w < 0.01 {
			t.Fatalf("a single ray is %.4f mm off points of a net", w)
		}
	}
}

// course is some boats of one rib beside midship, whose marks lie on rays by construction.
func course() []Boat {
	var out []Boat
	for i, beam := range []float64{700, 715, 709, 730, 722} {
		rib := 1000 + 20*float64(i)
		out = append(out, Boat{Builder: string(rune('A' + i)), Ribs: 1, Reading: Reading{rib, 1700 + 30*float64(i), beam}, Marks: map[Mark]float64{
			{Length, 0, 0}: rib / 2, {Length, 1, 0}: 0.48 * rib, {Bend, 1, 0}: 0.2*rib - 30, {Stringer, 1, 0}: 0.3 * rib,
			{Mortise, 1, 0}: 0.07 * (1700 + 30*float64(i)),
		}})
	}
	return out
}

// TestRefusesByName: a boat whose one mark lies off is refused by that mark, its rib and
// by how much, and the others stay; so is one whose marks are others.
func TestRefusesByName(t *testing.T) {
	for _, c := range []struct {
		mark  Mark
		by    float64
		words string
	}{
		{Mark{Length, 1, 0}, 2.7, "length of rib F1 and A1"},
		{Mark{Bend, 1, 0}, -30, "bend 1 of rib F1 and A1"},
		{Mark{Stringer, 1, 0}, 9, "stringer 1 on rib F1 and A1"},
		{Mark{Mortise, 1, 0}, -4, "mortise of rib F1 and A1"},
	} {
		boats := course()
		// More boats of the same marks, so that no net through all can follow one of them.
		boats = append(boats, course()...)
		boats[2].Marks[c.mark] += c.by
		b, err := Make(boats)
		if err != nil {
			t.Fatal(err)
		}
		if len(b.Refused) != 1 || b.Refused[0].Builder != "C" || !strings.Contains(b.Refused[0].Why, c.words) || !strings.Contains(b.Refused[0].Why, " mm off; accepted: ") {
			t.Errorf("%v off by %v: %d off, %+v", c.mark, c.by, len(b.Refused), b.Refused)
		}
	}
	boats := course()
	delete(boats[1].Marks, Mark{Bend, 1, 0})
	if b, err := Make(boats); err != nil || len(b.Refused) != 1 || b.Refused[0].Why != "it has no bend 1 of rib F1 and A1" {
		t.Errorf("a boat without a bend: %v, %+v", err, b.Refused)
	}
	if _, err := Make(course()[:1]); err == nil || !strings.Contains(err.Error(), "two builders") {
		t.Errorf("a board for one: %v", err)
	}
}

// TestOffTheScale: a boat longer, wider or larger in its midship rib than any on the board is
// told so: rays are straight only over the range that they were drawn through.
func TestOffTheScale(t *testing.T) {
	b, err := Make(course())
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range b.Rays {
		if r.Net {
			t.Errorf("%s is read as a net though its marks lie on a ray", r.Mark)
		}
	}
	for what, at := range map[string]Reading{"midship rib of 1090 mm": {1090, 1700, 710}, "half length of 1600 mm": {1000, 1600, 700}, "beam of 740 mm": {1000, 1700, 740}} {
		far := course()[0]
		far.Reading = at
		if why := b.Refuses(far); !strings.Contains(why, what+" is off the board, which goes from ") {
			t.Errorf("%s: %q", what, why)
		}
	}
	if why := b.Refuses(course()[3]); why != "" {
		t.Error(why)
	}
}
