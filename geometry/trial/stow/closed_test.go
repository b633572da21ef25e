package stow

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry"
)

// bowl is the lower half of a sphere resting on the baseline, as sections that
// carry the arc exactly at their points.
func bowl(r, step float64) []Section {
	var out []Section
	for x := -r; x <= r+1e-9; x += step {
		at := math.Sqrt(max(0, r*r-x*x))
		s := Section{X: x, Half: []geometry.Point{{Y: r - at}}}
		const n = 50
		for i := 1; i <= n; i++ {
			a := math.Pi / 2 * float64(i) / n
			s.Half = append(s.Half, geometry.Point{X: at * math.Sin(a), Y: r - at*math.Cos(a)})
		}
		out = append(out, s)
	}
	return out
}

// trough is one section of a boat of plumb ends: a flat bottom and flared sides.
func trough(half, flare, depth, length float64, lift float64) []Section {
	out := []geometry.Point{{Y: lift}, {X: half, Y: lift}, {X: half + depth*math.Tan(flare), Y: lift + depth}}
	return []Section{{X: -length / 2, Half: out}, {X: 0, Half: out}, {X: length / 2, Half: out}}
}

func outside(t *testing.T, s []Section) *Outside {
	t.Helper()
	parts := make([]Part, len(s[0].Half)-1)
	for i := range parts {
		parts[i] = Part{Cloth, "cloth"}
	}
	o, err := NewOutside(s, parts)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// shell takes sections as the inner face of a boat.
func shell(t *testing.T, s []Section) *Inside {
	t.Helper()
	var e []Edge
	for k, sec := range s {
		for i := 1; i < len(sec.Half); i++ {
			e = append(e, Edge{at(sec.X, sec.Half[i-1]), at(sec.X, sec.Half[i]), 0})
		}
		for i := range sec.Half {
			if k > 0 && s[k-1].X > sec.X-20 {
				e = append(e, Edge{at(s[k-1].X, s[k-1].Half[i]), at(sec.X, sec.Half[i]), 0})
			}
		}
	}
	in, err := NewInside(e, []Part{{Rib, "rib"}})
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// TestSpheres: a sphere of radius r in a bowl of radius R touches at the bottom,
// has R - r of room all round when their centers meet, and before that as much as
// it has been lifted.
func TestSpheres(t *testing.T) {
	const big, small = 400.0, 340.0
	in, o := shell(t, bowl(big, 8)), outside(t, bowl(small, 8))
	z, c := Drop(in, o, 0, false)
	if math.Abs(z) > 0.05 || math.Abs(c.At.Y) > 15 {
		t.Errorf("touches at height %.3f, %+v; want 0 on the middle line", z, c)
	}
	for _, lift := range []float64{5, 20, 40, 55} {
		got := Clearance(in, o, Place{Z: lift}).Least().Room
		if math.Abs(got-lift) > 0.1 {
			t.Errorf("lifted %.0f mm: room %.3f mm, want %.0f", lift, got, lift)
		}
	}
	// Moved along by s the centers stand hypot(s, R-r-lift) apart.
	got := Clearance(in, o, Place{X: 20, Z: 40}).Least().Room
	if want := big - small - math.Hypot(20, 20); math.Abs(got-want) > 0.1 {
		t.Errorf("moved 20 mm: room %.3f mm, want %.3f", got, want)
	}
	// And it comes down on the slope, by the same triangle.
	z, _ = Drop(in, o, 30, false)
	if want := (big - small) - math.Sqrt(60*60-30*30); math.Abs(z-want) > 0.1 {
		t.Errorf("moved 30 mm: touches at %.3f mm, want %.3f", z, want)
	}
}

// TestScaled: a trough and the same one made smaller by the factor k stand
// (1 - k) of the half-breadth apart at the floor, and square to the side by the
// cosine of the flare.
func TestScaled(t *testing.T) {
	for _, k := range []float64{0.9, 0.8} {
		const half, flare, depth, lift = 300.0, 0.2, 300.0, 5.0
		in := shell(t, trough(half, flare, depth, 3000, 0))
		o := outside(t, trough(half*k, flare, depth*k, 3000*k, 0))
		p := Place{Z: lift}
		if got, want := Squeeze(in, o, p).Room, half*(1-k)+lift*math.Tan(flare); math.Abs(got-want) > 1e-9 {
			t.Errorf("k %.1f: %.6f mm a side, want %.6f", k, got, want)
		}
		rooms := Clearance(in, o, p)
		want := (half*(1-k) + lift*math.Tan(flare)) * math.Cos(flare)
		if got := rooms[Sides].Room; math.Abs(got-want) > 1e-6 {
			t.Errorf("k %.1f: room %.6f mm square to the side, want %.6f", k, got, want)
		}
		if got := rooms[Floor].Room; math.Abs(got-lift) > 1e-9 {
			t.Errorf("k %.1f: %.6f mm over the floor, want %.0f", k, got, lift)
		}
	}
}

// TestSameMould: hulls from one mould with walls of thickness t and sides
// flared by f stack t / sin f apart: lowered by that much, the sides close by
// t square to them. With thin bottoms the sides decide.
func TestSameMould(t *testing.T) {
	for _, c := range []struct{ thick, deg float64 }{{6, 5}, {6, 10}, {10, 20}, {3, 30}, {25, 9}} {
		t.Run(fmt.Sprintf("%g mm at %g deg", c.thick, c.deg), func(t *testing.T) {
			f := c.deg * math.Pi / 180
			out := trough(300, f, 300, 3000, 0)
			// The inner face of the sides lies t inside, square to them.
			inner := trough(300-c.thick/math.Cos(f), f, 300, 3000, 0)
			got, contact := Drop(shell(t, inner), outside(t, out), 0, false)
			if want := c.thick / math.Sin(f); math.Abs(got-want) > 1e-9 {
				t.Errorf("stacks %.6f mm apart, want %.6f", got, want)
			}
			if !contact.Meets() {
				t.Error("no contact")
			}
		})
	}
}

// TestTumblehome: a boat whose sides lean in at the top cannot be lowered into
// its like at all: it stands on the gunwales.
func TestTumblehome(t *testing.T) {
	half := []geometry.Point{{}, {X: 300}, {X: 350, Y: 150}, {X: 300, Y: 300}}
	s := []Section{{X: -1500, Half: half}, {X: 1500, Half: half}}
	z, _ := Drop(shell(t, s), outside(t, s), 0, false)
	// The widest place, 150 mm up, comes down on the edge 300 mm up where its own
	// side has the same half-breadth: the flat bottom's edge.
	if math.Abs(z-300) > 1e-9 {
		t.Errorf("stands %.3f mm up, want 300: its bottom on the gunwales", z)
	}
}
