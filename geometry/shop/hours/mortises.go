package hours

import (
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
)

// Saved is how many hours mortises by gap spare an experienced woodworker, with the
// crosscuts of their blocks, or cost where it is negative; 0 for mortises that are cut.
func Saved(f *frame.Frame) float64 {
	if f.Gunwale.Blocks == nil {
		return 0
	}
	sum := func(all []Work) float64 { return Hours(all, "", Experienced) }
	blocks := Work{Saw, "", 2 * float64(len(f.Gunwale.Blocks)), "", crosscut}
	return sum(Mortises(f, design.CutMortises)) - sum(Mortises(f, design.ByGap)) - blocks.Hours(Experienced)
}

// Mortises lists the work on the mortises of a frame made in one of the ways, besides
// sawing, which is counted with the boards. Minutes are common practice, no source.
func Mortises(f *frame.Frame, way design.MortiseWay) []Work {
	ribs := float64(len(f.Ribs))
	if way == design.CutMortises {
		return []Work{{Gunwale, "mark and cut mortises", 2 * ribs, "mortises", 3.5}}
	}
	out := []Work{
		{Gunwale, "saw and wax gauges for the gaps", ribs, "gauges", 0.4},
		{Gunwale, "trim blocks to their length", 2 * (ribs + 1), "blocks", 0.4},
		{Gunwale, "set and glue blocks between gauges", 2 * ribs, "gaps", 0.6},
		{Gunwale, "plane the middle plies flush", 2, "plies", 12},
		{Gunwale, "clear the slots", 2 * ribs, "slots", 0.3},
	}
	leaning := 0.0
	for _, m := range f.Gunwale.Mortises {
		if m.Taper > 0 {
			leaning += 2
		}
	}
	if leaning > 0 {
		out = append(out, Work{Bend, "taper heads that lean", leaning, "heads", 0.5})
	}
	return out
}
