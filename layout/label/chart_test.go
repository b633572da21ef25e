package label

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ribwright/geometry"
	"ribwright/layout"
)

// TestLevel: on grounds of the dice a chart finds what Clear finds place by place, among them
// lines and words that touch places without covering them.
func TestLevel(t *testing.T) {
	const step = 3.0
	dice := rand.New(rand.NewPCG(7, 1))
	box := geometry.Rect(-31, 12, 68, 74)
	at := func() geometry.Point { // every other one where the edges of places lie
		p := geometry.Pt(box.Min.X-20+140*dice.Float64(), box.Min.Y-20+100*dice.Float64())
		if dice.IntN(2) == 0 {
			p = geometry.Pt(box.Min.X+step/2*math.Floor(70*dice.Float64()), box.Max.Y-step/2*math.Floor(45*dice.Float64()))
		}
		return p
	}
	for range 2000 {
		var g Ground
		for range dice.IntN(40) {
			a := at()
			b := [...]geometry.Point{at(), a.Add(geometry.Pt(9, 0)), a.Add(geometry.Pt(0, 15)), a, a.Add(geometry.Polar(8, 7*dice.Float64()))}[dice.IntN(5)]
			g.Straight(a, b)
		}
		for range dice.IntN(8) {
			g.Text(layout.Text{At: at(), Height: 3, Angle: [...]float64{0, math.Pi / 2, -1.2, 7 * dice.Float64()}[dice.IntN(4)], Words: fmt.Sprint("og"[dice.IntN(2):], dice.IntN(5000))})
			g.Block(Block{At: at(), Wide: 6, High: 3})
		}
		wide, high, off := 1.5*float64(dice.IntN(30)), 1.5*float64(1+dice.IntN(9)), 1.5*float64(dice.IntN(3))
		var want []Block
		in := box.Grow(-off)
		for y := in.Max.Y - high; y >= in.Min.Y; y -= step {
			for x := in.Min.X; x+wide <= in.Max.X; x += step {
				if b := (Block{At: geometry.Pt(x, y), Wide: wide, High: high}); g.Clear(b, off) {
					want = append(want, b)
				}
			}
		}
		if got := slices.Collect(g.Chart(box).Level(wide, high, step, off)); !slices.Equal(got, want) {
			t.Fatalf("%d places for a block of %.1f x %.1f mm, %d one by one", len(got), wide, high, len(want))
		}
	}
}

// TestLevelDrawnOn: what is drawn on the ground after a place was found counts for the next.
func TestLevelDrawnOn(t *testing.T) {
	var g Ground
	n := 0
	for b := range g.Chart(geometry.Rect(0, 0, 100, 10)).Level(20, 8, 1, 0) {
		g.Block(b)
		n++
	}
	if n != 5 {
		t.Errorf("%d blocks of 20 mm one after another in 100 mm, want 5", n)
	}
}
