package label

import (
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
)

// TestFan: a straight way from a place meets as many lines when it is asked of those that lie
// its way alone as when it is asked of all, on grounds of the dice: whichever way it leads,
// and where lines begin at the place, lead over it or past it by a hair.
func TestFan(t *testing.T) {
	dice := rand.New(rand.NewPCG(7, 2))
	at := geometry.Pt(30, -12)
	any := func() geometry.Point {
		return at.Add(geometry.Pt(40*math.Floor(10*dice.Float64())-200, 300*dice.Float64()-150))
	}
	met := 0
	for range 300 {
		var g Ground
		for range 60 {
			p := any()
			q := [...]geometry.Point{any(), p.Add(geometry.Polar(5, 7*dice.Float64())), at, at.Add(at.Sub(p)), at.Add(geometry.Pt(1e-7, -1e-7)), p}[dice.IntN(6)]
			g.Straight(p, q)
		}
		f := g.fan(at)
		for k := range 100 {
			q, most := any(), 1+dice.IntN(20)
			switch k % 3 {
			case 1:
				q = at.Add(geometry.Polar(150*dice.Float64(), float64(k-50)*math.Pi/4))
			case 2:
				q = at.Add(geometry.Polar(150*dice.Float64(), float64(dice.IntN(sectors))*2*math.Pi/sectors))
			}
			got, want := f.crossings(q, most), g.crossings(at, q, most)
			if got != want {
				t.Fatalf("to %v: %d lines up to %d, %d of all", q, got, most, want)
			}
			met += got
		}
	}
	if met < 10000 {
		t.Errorf("%d lines met: too few to tell", met)
	}
}
