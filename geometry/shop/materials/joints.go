package materials

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// joints adds what the joints take, and the plywood of stems that are made of it.
func (n *Needs) joints(add func(key, name string, amount float64, unit, how string, args ...any)) {
	j := n.Joints
	add("cord", "lashing cord", upTo(CordSpare*j.Cord()/1000, 1), "m", "%d crossings, %d lashings at the ends, a tenth to spare", j.Keel.Count+j.Stringers.Count, j.Lashings())
	for _, key := range []struct{ key, name, how string }{
		{"peg", "pegs", "one in each rib head, and the breasthooks'"},
		{"screw", "wood screws for the stems' feet, stainless", "keel to stems"},
		{"bolt-5", "bolts M5 with washers and wing nuts, stainless", "the holes of the cross pieces"},
	} {
		if count := j.Fasteners(key.key); count > 0 {
			add(key.key, key.name, float64(count), "each", "%s", key.how)
		}
	}
	if area, sheets := stemSheets(j.Frame); area > 0 {
		add("stem-ply", "plywood for use outdoors, for the stems", upTo(area/1e6, 0.05), "m2", "%s of %s for each stem", wording.Counted(len(sheets), "layer"), wording.List(sheets, func(t float64) string { return fmt.Sprintf("%s mm", measure.MM(t, 0)) }))
	}
}

// stemSheets returns the plywood that stems take, mm2, with room to saw round each layer,
// and the layers of the bow's; none where they are not made of it.
func stemSheets(f *frame.Frame) (area float64, layers []float64) {
	if f.Design.MadeStems() != design.StemsPlywood {
		return 0, nil
	}
	const round = 12.0 // mm more each way
	for _, s := range []frame.Stem{f.Stern, f.Bow} {
		layers = design.Sheets(s.Thickness)
		box := s.Outline.Map(geometry.Turn(-s.Grain)).Bounds()
		area += float64(len(layers)) * (box.W() + round) * (box.H() + round)
	}
	return area, layers
}
