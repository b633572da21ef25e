package beam

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: %g, want %g", what, got, want)
	}
}

// drilled are sections by hand: a mortise, and a bolt with a round seat of 25 mm across and
// 8.8 mm deep in the outer face, 17 mm over the underside.
var drilled = map[string][]Opening{
	"mortise": {{-3.15, 3.15, 0, 20}},
	"bolt":    {{2.2, 11, 4.5, 29.5}, {-11, 11, 13.8, 20.2}},
}

// squares cuts a section into small squares and sums over those that are wood, which shares
// nothing with the formula but the theory.
func squares(w, h float64, out []Opening, sum func(y, z, area float64)) {
	const n = 800
	for i := range n {
		for j := range n {
			y, z := (float64(i)+0.5)/n*w-w/2, (float64(j)+0.5)/n*h
			wood := true
			for _, o := range out {
				wood = wood && !(y > o.From && y < o.To && z > o.Bottom && z < o.Top)
			}
			if wood {
				sum(y, z, w*h/n/n)
			}
		}
	}
}

// TestLeft: the shares of the modulus, and the stress under both moments at once, by the
// textbooks' formula for a section that is not alike on both sides,
//
//	stress = ((Mz Iy - My Iyz) y + (My Iz - Mz Iyz) z) / (Iy Iz - Iyz²)
//
// about the middle of what is left.
func TestLeft(t *testing.T) {
	const w, h, plan, edge = 22.0, 42.0, 11.6, 10.4 // N/mm2 at the corners of the whole stick
	for name, out := range drilled {
		var area, ay, az, iy, iz, iyz, side, top, worst float64
		squares(w, h, out, func(y, z, a float64) { area += a; ay += y * a; az += z * a })
		my, mz := ay/area, az/area
		squares(w, h, out, func(y, z, a float64) {
			iz, iy, iyz = iz+(y-my)*(y-my)*a, iy+(z-mz)*(z-mz)*a, iyz+(y-my)*(z-mz)*a
			side, top = math.Max(side, math.Abs(y-my)), math.Max(top, math.Abs(z-mz))
		})
		n := Opened(w, h, nil, out...)
		flat, tall := n.Left()
		near(t, name+", flat", flat, iz/side/(h*w*w/6), 0.01)
		near(t, name+", tall", tall, iy/top/(w*h*h/6), 0.01)
		Mz, My := plan*h*w*w/6, -edge*w*h*h/6 // the underside is pulled
		squares(w, h, out, func(y, z, a float64) {
			worst = math.Max(worst, math.Abs(((Mz*iy-My*iyz)*(y-my)+(My*iz-Mz*iyz)*(z-mz))/(iy*iz-iyz*iyz)))
		})
		near(t, name+", stress", bears(n, func(y, z float64) float64 { return plan*y/(w/2) + edge*(1-z/(h/2)) }), worst, 0.01)
	}
	for _, out := range [][]Opening{nil, {{-3, 3, 5, 5}}, {{11, 30, 0, 42}}} {
		n := Opened(w, h, nil, out...)
		flat, tall := n.Left()
		near(t, "whole, flat", flat, 1, 1e-12)
		near(t, "whole, tall", tall, 1, 1e-12)
		near(t, "whole, stress", bears(n, func(y, z float64) float64 { return plan*y/(w/2) + edge*(1-z/(h/2)) }), plan+edge, 1e-12)
	}
	none := Opened(w, h, nil, Opening{-30, 30, -1, 50})
	if flat, tall := none.Left(); flat != 0 || tall != 0 || !math.IsInf(bears(none, func(y, z float64) float64 { return y }), 1) {
		t.Error("nothing is left, and bears")
	}
}

// TestNotch: a notch over the whole height or width leaves a smaller rectangle, which bears
// the moment by 6 M / (b h²); two openings that overlap are taken out once.
func TestNotch(t *testing.T) {
	const w, h, s = 22.0, 42.0, 10.0
	side, tall := func(y, z float64) float64 { return s * y / (w / 2) }, func(y, z float64) float64 { return s * (1 - z/(h/2)) }
	near(t, "8.8 mm off the outer face", bears(Opened(w, h, nil, Opening{2.2, 11, 0, h}), side), s*math.Pow(w/13.2, 2), 1e-12)
	near(t, "12 mm off the top", bears(Opened(w, h, nil, Opening{-11, 11, 30, h}, Opening{-11, 4, 33, h}), tall), s*math.Pow(h/30, 2), 1e-12)
	// A hole in the middle of the height, bent sideways: a stick less high.
	near(t, "hole", bears(Opened(w, h, nil, Opening{-11, 11, 17.8, 24.2}), side), s*h/(h-6.4), 1e-12)
	near(t, "and what that leaves", first(Opened(w, h, nil, Opening{-11, 11, 17.8, 24.2}).Left()), (h-6.4)/h, 1e-12)
}

func first(v, _ float64) float64 { return v }

// TestPly: three plies of t, each bent to the curvature k before they were glued, bear E t k/2
// at each face, and each a moment E I k of its own. Where the outer ply is gone the other two
// take over its moment as one stick of twice the thickness, of 8 I: E t k/8 more at its faces.
func TestPly(t *testing.T) {
	const ply, e, k = 7.0, 12000.0, 1.0 / 4000
	saw := func(y, z float64) float64 {
		return e * k * (y - ply*math.Round(y/ply))
	}
	n := Opened(3*ply, 40, []float64{-ply / 2, ply / 2}, Opening{ply / 2, 3 * ply / 2, 0, 40})
	near(t, "two plies of three", bears(n, saw), e*ply*k*(0.5+0.125), 1e-9)
}

// bears is the most that a net section bears where the whole stick bore so much.
func bears(n Net, whole Stress) float64 { return n.Worst(n.Over(whole)) }
