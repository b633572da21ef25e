package cutlist

import (
	"fmt"
	"math"

	"ribwright/geometry/outfit/kit"
	"ribwright/geometry/wording"
)

// glueUp is the thickest spar or beam that is sawn as one, and glueBoard the thickest
// board of an outfit, mm; thicker ones are glued from layers. Common practice, no
// source: nobody buys thick stock for one mast step.
const (
	glueUp    = 45.0
	glueBoard = 25.0
)

// edgeUp is the widest board that is sawn as one, mm; wider ones are glued edge to edge,
// with so much left on each stave to plane the joints. Common practice, no source.
const (
	edgeUp   = 280.0
	jointing = 3.0
)

// outfits lists the pieces of outfits.
func outfits(kits []kit.Kit) []Stick {
	var out []Stick
	number := 0
	for _, k := range kits {
		for _, p := range k.Pieces {
			for i := range p.Count {
				number++
				out = append(out, layers(p, fmt.Sprintf("X%d", number), name(k, p, i))...)
			}
		}
	}
	return out
}

func name(k kit.Kit, p kit.Piece, i int) string {
	if p.Count == 1 {
		return fmt.Sprintf("%s (%s)", wording.Capital(p.Name), k.Name)
	}
	return fmt.Sprintf("%s, %d of %d (%s)", wording.Capital(p.Name), i+1, p.Count, k.Name)
}

// layers are the sticks of one piece: layers of a thick one, staves of a wide board.
func layers(p kit.Piece, mark, name string) []Stick {
	s := Stick{Mark: mark, Part: name, Family: Fitting, Species: p.Wood, Length: p.Long + 2*around, Width: p.Wide, Thickness: p.Thick, Grain: p.Grain, Net: p.Volume()}
	if s.Grain == "" {
		s.Grain = "along"
	}
	switch p.Form {
	case kit.Spar:
		s.Family, s.Grain, s.Length = Spar, "along, straightest, no knots", p.Long+2*endTrim
	case kit.Beam:
		s.Family, s.Grain, s.Length = Beam, "along, straightest, no knots", p.Long+2*endTrim
	}
	thick := glueUp
	if p.Form == kit.Board {
		thick = glueBoard
	}
	n, word := max(1, int(math.Ceil(p.Thick/thick))), "layer"
	s.Thickness /= float64(n)
	if n == 1 && p.Wide > edgeUp { // what is thick as well is left in whole widths
		n, word = int(math.Ceil(p.Wide/edgeUp)), "stave"
		s.Width, s.Edge = p.Wide/float64(n)+jointing, true
	}
	if n == 1 {
		return []Stick{s}
	}
	out := make([]Stick, n)
	for i := range out {
		out[i] = s
		out[i].Mark, out[i].Part, out[i].Member = fmt.Sprintf("%s-%d", mark, i+1), fmt.Sprintf("%s, %s %d of %d", name, word, i+1, n), name
		out[i].Net = s.Net / float64(n)
	}
	return out
}
