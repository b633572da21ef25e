package frame

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestEndCut checks the cut at the gunwales' ends against the stock itself: the
// four corners of a section cut as printed must lie in one plane across the boat.
// Without edge-set that needs no allowance at the upper face at all.
func TestEndCut(t *testing.T) {
	for _, rise := range []float64{0, 25, 60} {
		f := build(t, "brook", func(d *design.Design) {
			d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = measure.Length(rise), measure.Length(rise)
			d.Gunwale.Tilt = 0.2
		})
		g := &f.Gunwale
		if rise == 0 && g.ForeRise != 0 {
			t.Errorf("without edge-set the upper face is left %.3f mm longer, want nothing", g.ForeRise)
		}
		// By hand: the tall way tips by the slope of the edge-set, 2 e / run.
		run := f.Hull.Bow.GunwaleX - float64(f.Design.Gunwale.EdgeSetFrom)
		dy, dz := g.Line.Slopes(f.Hull.Bow.GunwaleX)
		if want := g.Height * math.Cos(0.2) * 2 * rise / run / math.Sqrt(1+dy*dy+dz*dz); math.Abs(g.ForeRise-want) > 1e-9 {
			t.Errorf("edge-set %.0f mm: upper face %.4f mm longer, want %.4f", rise, g.ForeRise, want)
		}
		// The printed angle takes both edges of the underside to one station.
		in, out := g.At(f.Hull.Bow.GunwaleX, -g.Width/2, 0), g.At(f.Hull.Bow.GunwaleX, g.Width/2, 0)
		if got, want := math.Tan(g.ForeCut)*g.Width, (out.X-in.X)*math.Sqrt(1+math.Pow(dy/math.Cos(0.2), 2)); math.Abs(got-want) > 1e-9 {
			t.Errorf("end cut over %.4f mm of the width, the edges lie %.4f mm apart", got, want)
		}
	}
}

// TestShelf checks that the shelf runs in the gunwales' underside: at constant
// half-breadth that rises by the edge-set alone.
func TestShelf(t *testing.T) {
	f := build(t, "brook", func(d *design.Design) { d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0 })
	if drop := f.Bow.Shelf[1].Y - f.Bow.Shelf[0].Y; math.Abs(drop) > 1e-6 {
		t.Errorf("without edge-set the shelf drops %.3f mm inward, want level", drop)
	}
}

// TestThwartsClearTheSkin checks that the lower edge of a thwart's end, cut back
// as marked, stays inside the polygon the skin lies on.
func TestThwartsClearTheSkin(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		for _, w := range f.Thwarts {
			near := f.Ribs[0]
			for _, r := range f.Ribs {
				if math.Abs(r.Station-w.At) < math.Abs(near.Station-w.At) {
					near = r
				}
			}
			pts := f.Corners(near)
			low, under := pts[len(pts)-2], pts[len(pts)-3]
			// The gunwale's lower outer corner at the thwart's own station.
			corner := f.Gunwale.EdgeAt(w.At, f.Gunwale.Width/2, 0)
			skin := corner.Y - w.Thickness*(low.X-under.X)/(low.Y-under.Y)
			if end := (w.ForeEnd+w.AftEnd)/2 - w.Under; end > skin-1 {
				t.Errorf("%s: its lower edge reaches %.2f mm, the skin lies at %.2f", w.Name, end, skin)
			}
		}
	})
}

// TestLeaningMortises refuses slots that would break out of the gunwale's side.
func TestLeaningMortises(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	d.Gunwale.Tilt = 0.5
	d.Hull.Sections[0].Flare, d.Hull.Sections[1].Flare = 0.05, 0.05
	_, err = Build(d)
	if err == nil || !strings.Contains(err.Error(), "of wood beside its bottom") {
		t.Errorf("got %v", err)
	}
	for _, name := range design.ShippedNames() {
		for _, m := range build(t, name, nil).Gunwale.Mortises {
			// 20 mm deep at 5 degrees carries the slot 1.7 mm to one side.
			if want := m.Wall - m.Depth*math.Tan(math.Abs(m.Bevel)); m.Deep != want || m.Deep < 4 {
				t.Errorf("%s, mortise %s: %.2f mm at the bottom, want %.2f and at least 4", name, m.Rib, m.Deep, want)
			}
		}
	}
}

// TestScarfPastTheEnd refuses a scarf that would run off the stock.
func TestScarfPastTheEnd(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	d.Gunwale.Scarfs = append(d.Gunwale.Scarfs, 1770)
	if _, err := Build(d); err == nil || !strings.Contains(err.Error(), "past its end; put its middle at") {
		t.Errorf("got %v", err)
	}
}

// TestHeadsInSlots turns a rib's head as printed and looks at it in space: after the twist
// its width lies over the stock, and its lean along the stock is what its axis is off a
// right angle to the line of the gunwale, whose way is taken from chords.
func TestHeadsInSlots(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := build(t, name, nil)
		g := &f.Gunwale
		for i, m := range g.Mortises {
			a, b := g.Line.Point(m.Station-0.1), g.Line.Point(m.Station+0.1)
			long := b.Sub(a).Norm()
			x, y, z := (b.X-a.X)/long, (b.Y-a.Y)/long, (b.Z-a.Z)/long
			sin, cos := math.Sincos(f.Ribs[i].Section.Shape.Flare) // the head's axis is (0, sin, cos)
			if lean := math.Pi/2 - math.Acos(y*sin+z*cos); math.Abs(lean-m.Along) > 1e-5 {
				t.Errorf("%s, %s: leans %.5f along the stock, want %.5f", name, m.Rib, m.Along, lean)
			}
			// The head's width, turned from forward by the twist about its axis, outboard positive.
			wx, wy, wz := math.Cos(m.Twist), math.Sin(m.Twist)*cos, -math.Sin(m.Twist)*sin
			// It lies in the plane of the axis and the stock: their triple product is nothing.
			if off := wx*(sin*z-cos*y) + wy*(cos*x) + wz*(-sin*x); math.Abs(off) > 1e-5 {
				t.Errorf("%s, %s: twisted by %.4f its width stands %.5f off the slot", name, m.Rib, m.Twist, off)
			}
			if tip := f.Ribs[i].Tenon * math.Abs(math.Tan(m.Along)); math.Abs(tip-m.Ease-math.Min(tip, float64(f.Design.Ribs.FitWidth))) > 1e-9 {
				t.Errorf("%s, %s: the tip goes %.2f mm along, %.2f mm are eased", name, m.Rib, tip, m.Ease)
			}
		}
	}
}

// TestHeadsWithoutEdgeSet: where no rise is sprung in, stock that leans by psi stays in its
// plane, z' = -y' tan psi, and a head with a bevel leans along it by asin(y' sin(bevel) /
// (cos psi sqrt(1 + y'2 + z'2))): one without bevel not at all.
func TestHeadsWithoutEdgeSet(t *testing.T) {
	f := build(t, "lake", func(d *design.Design) { d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0 })
	g := &f.Gunwale
	for _, m := range g.Mortises {
		dy, dz := g.Line.Slopes(m.Station)
		if want := math.Asin(dy * math.Sin(m.Bevel) / math.Cos(g.Tilt) / math.Sqrt(1+dy*dy+dz*dz)); math.Abs(m.Along-want) > 1e-9 {
			t.Errorf("mortise %s leans %.6f along, want %.6f", m.Rib, m.Along, want)
		}
	}
}

// TestKeelHalf: by hand, the keel of a boat is whole up to its last ribs, half-way between
// those and its ends half-way to the stem's siding, and as wide as the stem at the ends. A
// keel narrower than the stem keeps its width.
func TestKeelHalf(t *testing.T) {
	f := build(t, "brook", nil)
	aft, fore := f.Keel.Line.Ends()
	first, last := f.Ribs[0].Station, f.Ribs[len(f.Ribs)-1].Station
	wide, siding := float64(f.Design.Keel.Width), f.Bow.Thickness
	for _, c := range [][2]float64{{0, wide / 2}, {first, wide / 2}, {last, wide / 2}, {(last + fore) / 2, (wide + siding) / 4}, {(first + aft) / 2, (wide + siding) / 4}, {fore, siding / 2}, {aft, siding / 2}} {
		if got := f.KeelHalf(c[0]); math.Abs(got-c[1]) > 1e-9 {
			t.Errorf("at %.1f mm it is %.3f mm to a side, want %.3f", c[0], got, c[1])
		}
	}
	f.Design.Keel.Width = measure.Length(siding - 4)
	if got, want := f.KeelHalf(fore), (siding-4)/2; math.Abs(got-want) > 1e-9 {
		t.Errorf("a narrow keel ends %.3f mm to a side, want %.3f", got, want)
	}
}
