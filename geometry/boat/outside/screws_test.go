package outside

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/design"
)

// TestScrews walks every screw of every strip, of shipped boats and of odd ones: it bites,
// its tip stays in the wood when its head is sunk, neighbors are no farther apart than is
// said, the ends are held, and none meets a slot, a lashing, a bolt or a peg.
func TestScrews(t *testing.T) {
	odd := map[string]func(*design.Design){
		"as shipped": full,
		"far ribs":   func(d *design.Design) { full(d); d.Ribs.Pitch, d.Seats, d.Crew, d.Thwarts = 260, nil, nil, nil },
		"close ribs": func(d *design.Design) {
			full(d)
			d.Ribs.Pitch, d.Seats, d.Crew, d.Thwarts, d.Gunwale.Scarfs = 70, nil, nil, nil, nil
			d.Bow.Landing = 60 // clear of the last rib
			if d.Stern != nil {
				d.Stern.Landing = 60
			}
		},
		"no seats": func(d *design.Design) { full(d); d.Seats, d.Crew = nil, nil },
		"thick":    func(d *design.Design) { full(d); d.Outside.Outwale, d.Outside.KeelStrip = 15, 10 },
	}
	for what, change := range odd {
		for _, name := range design.ShippedNames() {
			f := frametest.Shipped(t, name, change)
			o := of(t, f)
			about := fmt.Sprintf("%s, %s", name, what)
			checkStrip(t, about+", outwale", o.Outwale, float64(f.Design.Skin.Thickness()), f.Gunwale.Width, OutwaleEnd)
			checkStrip(t, about+", keel strip", o.Keel, float64(f.Design.Skin.Thickness()), float64(f.Design.Keel.Depth), Feather)
			checkOutwale(t, about, f, o.Outwale.Screws)
			checkKeel(t, about, f, o.Keel.Screws)
		}
	}
}

func checkStrip(t *testing.T, about string, s Strip, skin, wood, end float64) {
	t.Helper()
	if into := s.Screw + Sunk - s.Across - skin; into < leastBite || wood-into < Under {
		t.Errorf("%s: a screw of %g mm goes %.1f mm into %.1f mm of wood", about, s.Screw, into, wood)
	}
	first, last := s.Screws[0]-s.From, s.To-s.Screws[len(s.Screws)-1]
	if math.Min(first, last) < end || math.Max(first, last) > MostFromEnd {
		t.Errorf("%s: the end screws stand %.0f and %.0f mm from the ends", about, first, last)
	}
	for i := 1; i < len(s.Screws); i++ {
		if apart := s.Screws[i] - s.Screws[i-1]; apart > MostApart+1e-9 || apart < leastApart/2 || apart > s.Apart+1e-9 {
			t.Errorf("%s: screws %.0f mm apart at %.0f mm, said %.0f", about, apart, s.Screws[i], s.Apart)
		}
	}
}

// off reports a screw that stands nearer to a place than it may.
func off(t *testing.T, about string, screws []float64, place, least float64) {
	t.Helper()
	for _, at := range screws {
		if math.Abs(at-place) < least-1e-6 {
			t.Errorf("%s: the screw at %.1f mm stands %.1f mm from %.1f mm, want %.0f", about, at, math.Abs(at-place), place, least)
		}
	}
}

func checkOutwale(t *testing.T, about string, f *frame.Frame, screws []float64) {
	t.Helper()
	j, err := joint.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	g := &f.Gunwale
	for _, m := range g.Mortises {
		off(t, about+", mortise "+m.Rib, screws, m.FromMidship, m.Length/2+4)
	}
	for i := range f.Thwarts {
		for _, h := range f.Thwarts[i].Holes {
			if c := h.Bounds().Center(); c.X > 0 {
				off(t, about+", bolt of "+f.Thwarts[i].Name, screws, g.OnStock(f.Thwarts[i].At+c.Y), 10)
			}
		}
	}
	for _, s := range f.Seats {
		if s.Hung == nil {
			continue
		}
		for _, r := range []float64{s.Hung.Front.Hanger.Bolts[0], s.Hung.Front.Hanger.Bolts[1], s.Hung.After.Hanger.Bolts[0], s.Hung.After.Hanger.Bolts[1]} {
			off(t, about+", bolt of "+s.Name, screws, r, 24/2+2)
		}
	}
	for _, in := range j.Hooks[1].FromEnd {
		off(t, about+", peg of the breasthook", screws, g.Fore+g.Width/2*math.Tan(g.ForeCut)-in, 10)
	}
	for _, in := range j.Hooks[0].FromEnd {
		off(t, about+", peg of the breasthook", screws, g.Aft-g.Width/2*math.Tan(g.AftCut)+in, 10)
	}
}

func checkKeel(t *testing.T, about string, f *frame.Frame, screws []float64) {
	t.Helper()
	j, err := joint.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	for i, at := range f.Keel.RibMarks {
		off(t, about+", lashing of rib "+f.Ribs[i].Name, screws, at, float64(f.Design.Ribs.Width)/2+4)
	}
	for _, in := range append(j.Feet[1].FromEnd, j.Feet[1].Lash) {
		off(t, about+", bow's foot", screws, f.Keel.Fore-in, 10)
	}
	for _, in := range append(j.Feet[0].FromEnd, j.Feet[0].Lash) {
		off(t, about+", stern's foot", screws, f.Keel.Aft+in, 10)
	}
}
