package seat

import (
	"cmp"
	"slices"

	"ribwright/geometry"
)

// side is the ribs' inner face beside one edge of a hanger, and how much farther out the
// gunwale is there than at the hanger's middle.
type side struct {
	face   []geometry.Point
	rising bool // all the way
	out    float64
}

// broad is that of the face. On one that rises all the way only the pieces at the height
// itself are looked at: hangers are tried at hundreds of them.
func (s side) broad(z float64) float64 {
	if !s.rising {
		return broad(s.face, z)
	}
	up := func(p geometry.Point, z float64) int { return cmp.Compare(p.Y, z) }
	from, _ := slices.BinarySearchFunc(s.face, z, up)
	till := from
	for till < len(s.face) && s.face[till].Y <= z {
		till++
	}
	return broad(s.face[max(0, from-1):min(till+1, len(s.face))], z)
}

func (b Boat) beside(h Hanger) ([]side, error) {
	var out []side
	for _, edge := range []float64{-1, 0, 1} {
		x := h.Station + edge*h.Wide/2
		face, err := b.inside(x)
		if err != nil {
			return nil, err
		}
		rising := slices.IsSortedFunc(face, func(a, b geometry.Point) int { return cmp.Compare(a.Y, b.Y) })
		out = append(out, side{face, rising, b.Gunwale.EdgeAt(x, -float64(b.Design.Gunwale.Width)/2, h.high).Y - h.Point(0, 0).X})
	}
	return out, nil
}

// free reports whether a hanger clears the ribs below the gunwale.
func (h Hanger) free(sides []side) bool {
	const step = 8.0
	for _, s := range sides {
		for down := h.high + 4; down < h.Length+step; down += step {
			p := h.Point(min(down, h.Length), h.Block)
			if p.X+s.out > s.broad(p.Y)-toRibs {
				return false
			}
		}
	}
	return true
}
