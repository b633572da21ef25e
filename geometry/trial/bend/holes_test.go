package bend

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
)

// TestBolted: what a hanger's bolt leaves of lake's gunwale, 20 x 40 mm, worked by hand from
// its pieces. The drill for the nut is 25 mm across and goes in 8.8 mm, the bolt's 6.4 mm, both 23 mm
// under the top: so the section is two strips over and under, and between them the seat's
// floor over and under the bolt.
func TestBolted(t *testing.T) {
	r := report(t, "lake", nil)
	pieces := [][4]float64{ // across from the inner face, up from the underside; each from and to
		{0, 20, 0, 4.5}, {0, 20, 29.5, 40}, {0, 11.2, 4.5, 13.8}, {0, 11.2, 20.2, 29.5}}
	var area, ay, az, iy, iz float64
	for _, p := range pieces {
		w, h := p[1]-p[0], p[3]-p[2]
		area, ay, az = area+w*h, ay+w*h*(p[0]+p[1])/2, az+w*h*(p[2]+p[3])/2
		iz, iy = iz+h*(p[1]*p[1]*p[1]-p[0]*p[0]*p[0])/3, iy+w*(p[3]*p[3]*p[3]-p[2]*p[2]*p[2])/3
	}
	my, mz := ay/area, az/area
	flat := (iz - area*my*my) / math.Max(my, 20-my) / (40 * 20 * 20 / 6.0)
	tall := (iy - area*mz*mz) / math.Max(mz, 40-mz) / (20 * 40 * 40 / 6.0)
	n := 0
	for _, h := range r.Bolted {
		if h.Of != "Seat" {
			continue
		}
		n++
		near(t, "left in plan", h.Flat, flat, 1e-9)
		near(t, "left in the tall way", h.Tall, tall, 1e-9)
	}
	if n != 4 {
		t.Errorf("%d bolts of a seat on a gunwale", n)
	}
	// A cross piece's bolt, 6 mm, goes down through the middle; head and washer, 16 mm across
	// in 20 mm of gunwale, are sunk 5 mm deep.
	yoke := r.Bolted[0]
	near(t, "left by a cross piece's bolt in plan", yoke.Flat, 1-(35*6.0*6*6+5*16*16*16)/(40*20*20*20), 1e-9)
}

// TestBoltsWeak: bolts in a gunwale of one stick, bent whole, or in one that is sprung too
// much, ask more than the wood bears; the finding says so, and its cures mend it.
func TestBoltsWeak(t *testing.T) {
	for _, c := range []struct {
		weak  func(*design.Design)
		cure  string
		mends []func(*design.Design)
	}{
		{func(d *design.Design) { d.Gunwale.Glued, d.Gunwale.EdgeSetBow = design.GluedStraight, 70 }, "plies glued bent",
			[]func(*design.Design){func(d *design.Design) { d.Gunwale.Glued = design.GluedBent }}},
		{func(d *design.Design) { d.Gunwale.EdgeSetBow = 150 }, "begins nearer midship or is made",
			[]func(*design.Design){func(d *design.Design) { d.Gunwale.EdgeSetFrom = 200 }, func(d *design.Design) { d.Gunwale.EdgeSetMade = 60 }}},
	} {
		bolts := func(mend func(*design.Design)) finding.Finding {
			r := report(t, "river", func(d *design.Design) { c.weak(d); mend(d) })
			i := slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return strings.HasPrefix(f.About, "gunwale at the bolts of ") })
			return r.Findings[i]
		}
		if f := bolts(func(*design.Design) {}); f.Verdict.Passes() || !strings.Contains(f.Cure, c.cure) {
			t.Errorf("%v, want a cure by %q", f, c.cure)
		}
		for _, mend := range c.mends {
			if f := bolts(mend); !f.Verdict.Passes() {
				t.Errorf("mended: %v", f)
			}
		}
	}
}
