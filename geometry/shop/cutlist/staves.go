package cutlist

import (
	"math"
	"slices"
	"strings"

	"ribwright/geometry/design"
)

// jointing is what is left on each stave to plane the joints true, mm. Common practice,
// no source.
const jointing = 3.0

// staves shares a wide part out over so many strips, glued edge to edge along the grain.
func (s Stick) staves(n int) []Stick {
	s.Width, s.Edge = s.Width/float64(n)+jointing, true
	return s.parted(n, "stave")
}

// unstaved undoes staves.
func unstaved(staves []Stick) Stick {
	s, n := staves[0], float64(len(staves))
	s.Mark, _ = strings.CutSuffix(s.Mark, "-1")
	s.Part, s.Member, s.Edge = s.Member, "", false
	s.Width, s.Net = (s.Width-jointing)*n, s.Net*n
	return s
}

// edgeGlued makes parts that are sawn to an outline of staves where no board that is
// thick and long enough for them is as wide as they are.
func edgeGlued(d *design.Design, sticks []Stick) []Stick {
	var out []Stick
	for len(sticks) > 0 {
		n := 1
		for sticks[0].Edge && n < len(sticks) && sticks[n].Member == sticks[0].Member {
			n++
		}
		part := sticks[:n]
		sticks = sticks[n:]
		if s := part[0]; s.Edge || s.shaped() && s.Member == "" {
			if wide := widest(d, s); wide > jointing && s.Width > wide {
				if s.Edge {
					s = unstaved(part)
				}
				part = s.staves(int(math.Ceil(s.Width / (wide - jointing))))
			}
		}
		out = append(out, part...)
	}
	return out
}

// widest is the width of the widest board that is thick and long enough for a stick, 0
// without any.
func widest(d *design.Design, s Stick) float64 {
	boards := named(d, s.Species)
	if len(boards) == 0 {
		boards = yard(s.Species, float64(d.Stock.Longest))
	}
	wide := 0.0
	for _, b := range boards {
		if b.Thickness >= s.Thickness && b.Clear() >= s.Length {
			wide = math.Max(wide, b.Width)
		}
	}
	return wide
}

// GlueLines returns how many joints there are between the staves of the frame's own
// parts, kits left out.
func (p *Plan) GlueLines() int {
	lines, begun := 0, []string{}
	for _, s := range p.Sticks {
		if !s.Edge || s.Kit != "" {
			continue
		}
		if slices.Contains(begun, s.Member) {
			lines++
		} else {
			begun = append(begun, s.Member)
		}
	}
	return lines
}
