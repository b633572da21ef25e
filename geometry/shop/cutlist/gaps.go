package cutlist

import (
	"fmt"

	"ribwright/geometry/boat/frame"
)

// blockTrim is what a block of a middle ply is sawn longer than it is in the end, mm, to
// be trimmed to its length. Common practice, no source.
const blockTrim = 2.0

// overGaps makes a middle ply of a gunwale of the given height the strip that lies over its blocks and the gaps between.
func (s *Stick) overGaps(deep, height float64) {
	s.Part += ", strip over the blocks"
	s.Net *= (height - deep) / height
	s.Width -= deep
}

// blocks are those of one side's middle ply, from aft; the end ones reach as far past
// the gunwale's ends as its plies do. They may be sawn from short offcuts.
func blocks(f *frame.Frame, side string) []Stick {
	g := &f.Gunwale
	var out []Stick
	for i, z := range g.Blocks {
		m, long := g.Mortises[0], z.To-z.From
		s := Stick{Mark: fmt.Sprintf("GB%d%s", i+1, side[:1]), Part: fmt.Sprintf("%s gunwale, block %d of %d", side, i+1, len(g.Blocks)), Family: Block, Member: side + " gunwale",
			Species: f.Design.Gunwale.Species, Length: long + blockTrim, Width: m.Depth, Thickness: m.Width, Grain: "along; offcuts serve", Net: long * m.Depth * m.Width}
		if i == 0 || i == len(g.Blocks)-1 {
			s.Length = long + blockTrim + frame.EndTrim
		}
		out = append(out, s)
	}
	return out
}
