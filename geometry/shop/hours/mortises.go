package hours

import (
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
)

// Saved is how many hours mortises by gap spare an experienced woodworker, less what it
// takes to crosscut and plane their blocks and to set the saw for blocks and strip; below 0
// where they take longer. 0 for mortises that are cut. How much more is ripped is not in
// it: that follows from the boards.
func Saved(f *frame.Frame) float64 {
	if f.Gunwale.Blocks == nil {
		return 0
	}
	sum := func(all []Work) float64 { return Hours(all, "", Experienced) }
	long := 0.0 // of the blocks of both gunwales, m
	for _, z := range f.Gunwale.Blocks {
		long += 2 * (z.To - z.From) / 1000
	}
	sawing := (2*float64(len(f.Gunwale.Blocks))*crosscut + long*planing + 2*setting) / 60
	return sum(Mortises(f, design.CutMortises)) - sum(Mortises(f, design.ByGap)) - sawing
}

// Mortises lists the work on the mortises of a frame made in one of the ways, besides
// sawing, which is counted with the boards. Minutes are common practice, no source.
func Mortises(f *frame.Frame, way design.MortiseWay) []Work {
	c, ribs := counter{}, float64(len(f.Ribs))
	if way == design.CutMortises {
		c.add(Gunwale, "mark and cut mortises", 2*ribs, "mortises", 3.5)
		return c.out
	}
	c.add(Gunwale, Gauges, ribs, "gauges", 0.4)
	c.add(Gunwale, TrimBlocks, 2*(ribs+1), "blocks", 0.4)
	c.add(Gunwale, GlueBlocks, 2*ribs, "gaps", 0.6)
	c.add(Gunwale, PlanePlies, 2, "plies", 12)
	c.add(Gunwale, "clear the slots", 2*ribs, "slots", 0.3)
	leaning := 0.0
	for _, m := range f.Gunwale.Mortises {
		if m.Taper > 0 {
			leaning += 2
		}
	}
	c.add(Bend, TaperHeads, leaning, "heads", 0.5)
	return c.out
}
