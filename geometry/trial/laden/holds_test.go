package laden

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestBed: on the ground with loose heads, midway between its two bolts the gunwale bears upright
// within a tenth what a beam on an even bed bears x mm from a load, P/(4 b) exp(-b x) (cos b x - sin b x),
// b the fourth root of k/(4 E I). The bed is a rib's head beside the bolts that does not go sideways, its
// keel and first stringer on the ground. Source: M. Hetenyi, Beams on Elastic Foundation.
func TestBed(t *testing.T) {
	f := frametest.Shipped(t, "lake", func(d *design.Design) { d.Outside.Outwale = 0 })
	s := f.Seats[0]
	r := f.Nearest(s.Hung.Front.Station)
	h, _ := new(condenser).hoop(r, 22, 12000) // white ash and, below, Sitka spruce: FPL-GTR-282
	h.within.of = make([]int, 10)
	const keel, first, out, up, turn = 0, 2, 7, 5, 9 // up: of those that are free
	k := 1 / gives(t, h.within, 0, keel, first, out, turn).At(up, up) / float64(f.Design.Ribs.Pitch)
	stiff := 10800 * 20 * math.Pow(40, 3) / 12
	b := math.Pow(k/(4*stiff), 0.25)
	bolts := s.Hung.Front.Hanger.Bolts
	bx := b * (bolts[1] - bolts[0]) / 2
	want := s.Share() / (4 * b) * math.Exp(-bx) * (math.Cos(bx) - math.Sin(bx))
	got := under(t, f, Case{Ground: true}, pulls(f)).At(s.Hung.Front.Station).Tall * stiff
	if math.Abs(got/want-1) > 0.1 {
		t.Errorf("%.0f N mm, want %.0f", got, want)
	}
}

// TestWater: the beds of a half boat push up as half of a waterplane does, of which the beam at the
// waterline fills some 0.6 to 0.72 of length by beam: canoes' waterplane coefficients, common practice.
func TestWater(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	b := of(t, f, nil)
	sum, most := 0.0, 0.0
	for i, r := range f.Ribs {
		at := 0.0
		for k := range 4 {
			at += b.beds[4*i+k].afloat
		}
		sum += at
		if wet := wetted(f.Corners(r), float64(f.Design.Hull.Waterline)); math.Abs(at/(weighs*wet*f.Carries(i))-1) > 1e-9 {
			t.Errorf("rib %s: %.4f N/mm on %.0f mm of water", r.Name, at, wet)
		} else if wet > most {
			most = wet
		}
	}
	aft, fore := f.Gunwale.Line.Ends()
	if share := sum / (1e-6 * measure.Gravity * most * (fore - aft)); !(share > 0.6 && share < 0.72) {
		t.Errorf("the water fills %.2f", share)
	}
}

// TestHolds: what holds a frame better spares it.
func TestHolds(t *testing.T) {
	loads := pulls(frametest.Shipped(t, "lake", nil))
	at := func(c Case, change func(*design.Design)) (rib, rail float64) {
		f := frametest.Shipped(t, "lake", func(d *design.Design) {
			d.Seats = nil
			if change != nil {
				change(d)
			}
		})
		b := under(t, f, c, loads)
		for i, r := range f.Ribs {
			if r.Name == "A2" {
				rib = b.Ribs[i]
			}
		}
		return rib, b.At(loads[0].At).Tall
	}
	bare := func(d *design.Design) { d.Thwarts = nil }
	rib, rail := at(Case{}, nil)
	open, _ := at(Case{}, bare)
	thin, _ := at(Case{}, func(d *design.Design) { d.Ribs.Thickness -= 0.5 })
	few, _ := at(Case{}, func(d *design.Design) { bare(d); d.Ribs.Pitch += 10 })
	if !(open > 1.02*rib && thin > 1.02*rib && few > 1.02*open) {
		t.Errorf("a rib bears %.1f N/mm2, without cross pieces %.1f, thinner %.1f, fewer without cross pieces %.1f", rib, open, thin, few)
	}
	_, low := at(Case{}, func(d *design.Design) { d.Outside.Outwale = 0 })
	_, tight := at(Case{Heads: 1}, nil)
	_, covered := at(Case{Cloth: 15}, nil)
	if !(low > 1.03*rail && tight < 0.8*rail && covered < 0.95*rail) {
		t.Errorf("the gunwale is curved by %.3g, without outwales %.3g, with tight heads %.3g, under cloth %.3g", rail, low, tight, covered)
	}
}

// TestAt: between two places the gunwale's bend runs straight from one to the other.
func TestAt(t *testing.T) {
	b := Borne{Gunwale: []Curve{{-10, 1, 4, 0}, {0, 3, 0, 2}, {20, 7, -2, 4}}}
	for _, want := range []Curve{{-10, 1, 4, 0}, {-5, 2, 2, 1}, {0, 3, 0, 2}, {10, 5, -1, 3}, {20, 7, -2, 4}} {
		if got := b.At(want.At); got != want {
			t.Errorf("%+v, want %+v", got, want)
		}
	}
}
