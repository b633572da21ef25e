package trace

import (
	"encoding/binary"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// outline is one closed edge where it lies on the plate.
type outline struct {
	part string
	path curve.Path
}

// outlines returns every closed edge once, what lies inside another before it
// and the edges of a part together as far as that allows.
func outlines(p layout.Plate) ([]outline, error) {
	var out []outline
	seen := map[string]bool{}
	for _, q := range p.Parts {
		for _, c := range q.Part.Cut {
			if !c.Closed() || !c.Joined() {
				return nil, fmt.Errorf("the outline of %s is not closed, so it cannot be cut out", q.Part.Name)
			}
			if Pointlike(c) {
				return nil, fmt.Errorf("an outline of %s is a single point, so it cannot be cut out", q.Part.Name)
			}
			moved := c.Map(q.Move)
			if k := key(moved); !seen[k] {
				seen[k] = true
				out = append(out, outline{q.Part.Name, moved})
			}
		}
	}
	return ordered(out), nil
}

// key is the same for two outlines that are one, whichever way round and from
// wherever they are drawn.
func key(p curve.Path) string {
	sides := make([][6]int64, len(p))
	for i, s := range p {
		a, b, m := quantum(s.Start()), quantum(s.End()), quantum(s.At(0.5))
		if slices.Compare(a[:], b[:]) > 0 {
			a, b = b, a
		}
		sides[i] = [6]int64{a[0], a[1], m[0], m[1], b[0], b[1]}
	}
	slices.SortStableFunc(sides, func(a, b [6]int64) int { return slices.Compare(a[:], b[:]) })
	var out []byte
	for _, s := range sides {
		for _, v := range s {
			out = binary.LittleEndian.AppendUint64(out, uint64(v))
		}
	}
	return string(out)
}

// quantum is a place in whole thousandths of a millimeter.
func quantum(p geometry.Point) [2]int64 {
	return [2]int64{int64(math.Round(p.X * 1000)), int64(math.Round(p.Y * 1000))}
}

// ordered puts every outline behind all that lie inside it. Without parts in the
// holes of others the order of the parts stays.
func ordered(in []outline) []outline {
	polygons := make([][]geometry.Point, len(in))
	boxes := make([]geometry.Box, len(in))
	for i, o := range in {
		polygons[i], boxes[i] = o.path.Flatten(0.05), o.path.Bounds()
	}
	var out []outline
	done := make([]bool, len(in))
	var put func(i int)
	put = func(i int) {
		if done[i] {
			return
		}
		done[i] = true
		// The deepest first, so that nothing is cut loose before what is in it.
		for k := range in {
			if k != i && boxes[i].Holds(boxes[k].Min) && boxes[i].Holds(boxes[k].Max) && curve.Holds(polygons[i], polygons[k][0]) {
				put(k)
			}
		}
		out = append(out, in[i])
	}
	for i := range in {
		put(i)
	}
	return out
}
