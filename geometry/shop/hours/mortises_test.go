package hours

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/cutlist"
)

// TestGapsInsteadOfCuts: what gaps spare is what the hours of the same boat fall by, but
// for rips and planing, which follow from the boards.
func TestGapsInsteadOfCuts(t *testing.T) {
	cut := frametest.Shipped(t, "brook", nil)
	gap := frametest.Shipped(t, "brook", func(d *design.Design) { d.Gunwale.Mortises = design.ByGap })
	if Saved(cut) != 0 {
		t.Errorf("cut mortises spare %.2f h", Saved(cut))
	}
	ribs := float64(len(gap.Ribs))
	heads := 0.0
	for _, m := range gap.Gunwale.Mortises {
		if m.Taper > 0 {
			heads += 2
		}
	}
	// Minutes: 3.5 a mortise; a gauge 0.4, a block 0.4 and its crosscut 0.7, a gap 0.6, a
	// slot 0.3, a ply 12, a head 0.5, a meter planed 0.6, two settings of the saw 6.
	planed := 0.0
	for _, z := range gap.Gunwale.Blocks {
		planed += 2 * (z.To - z.From) / 1000 * 0.6
	}
	want := (-planed - 2*6 + 2*ribs*3.5 - ribs*0.4 - 2*(ribs+1)*(0.4+0.7) - 2*ribs*(0.6+0.3) - 2*12 - heads*0.5) / 60
	if math.Abs(Saved(gap)-want) > 1e-9 {
		t.Errorf("gaps spare %.3f h, want %.3f", Saved(gap), want)
	}
	work := func(all []Work) (mortises, gaps int) {
		for _, w := range all {
			switch w.Name {
			case "mark and cut mortises":
				mortises++
			case "set and glue blocks between gauges":
				gaps++
			}
		}
		return
	}
	p := cutlist.Heat(nil).Make(gap)
	c := counter{f: gap, p: p}
	c.wood()
	c.out = append(c.out, Mortises(gap, gap.Design.Gunwale.Mortises)...)
	if m, g := work(c.out); m != 0 || g != 1 {
		t.Errorf("%d times cutting and %d times gaps", m, g)
	}
	if w := c.out[1]; w.Unit != "sections" || w.Minutes != 6 {
		t.Errorf("%+v is no setting of the saw", w)
	}
}
