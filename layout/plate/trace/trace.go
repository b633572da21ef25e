// Package trace turns a plate into the lines a cutter follows: layer by layer in
// the order of cutting, every line once.
package trace

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// Layer is the lines of one layer in the order they are followed.
type Layer struct {
	Name  string
	Paths []curve.Path
}

// speck is the size below which a line is left out, mm: far below a cutter's step.
const speck = 0.001

// Of returns the layers of a plate, in the order of layout.Layers. In the cut
// layer stand closed outlines, what lies inside another before it. A line that
// lies on one drawn before it is left out, in the cut layer only whole outlines.
// Errors: an outline that is not closed, that is a point, or that shares an edge
// with another.
func Of(p layout.Plate) ([]Layer, error) {
	cut, err := outlines(p)
	if err != nil {
		return nil, err
	}
	once := newOnce()
	for _, c := range cut {
		if once.meets(c.path) {
			return nil, fmt.Errorf("%s shares an edge with another part, so it would be cut twice; lay the parts farther apart", c.part)
		}
		once.add(c.path)
	}
	paths := map[string][]curve.Path{}
	for _, c := range cut {
		paths[layout.LayerCut] = append(paths[layout.LayerCut], c.path)
	}
	draw := func(layer string, path curve.Path) {
		paths[layer] = append(paths[layer], once.rest(path)...)
	}
	for _, q := range p.Parts {
		for _, c := range q.Part.Marks {
			draw(layout.LayerMark, c.Map(q.Move))
		}
		for _, t := range q.Part.Letters {
			for _, s := range t.Strokes() {
				draw(layout.LayerLetters, s.Map(q.Move))
			}
		}
	}
	for _, b := range boards(p) {
		draw(layout.LayerBoard, b)
	}
	for _, s := range scale(p) {
		draw(layout.LayerScale, s)
	}
	var out []Layer
	for _, name := range layout.Layers() {
		out = append(out, Layer{name, paths[name]})
	}
	return out, nil
}

// Pointlike reports whether a path is too small to follow.
func Pointlike(p curve.Path) bool {
	b := p.Bounds()
	return b.Empty() || b.W() < speck && b.H() < speck
}

// boards draws the corners of every sheet of stock and, where the rim has room for
// it, what it is.
func boards(p layout.Plate) []curve.Path {
	const arm, high = 20, 5 // mm
	var out []curve.Path
	for _, b := range p.Boards {
		lo, hi := b.Box.Min, b.Box.Max
		for _, c := range [][3]float64{{lo.X, lo.Y, 1}, {hi.X, lo.Y, -1}, {hi.X, hi.Y, -1}, {lo.X, hi.Y, 1}} {
			up := 1.0
			if c[1] == hi.Y {
				up = -1
			}
			at := geometry.Point{X: c[0], Y: c[1]}
			out = append(out, curve.Polyline(at.Add(geometry.Point{X: arm * c[2]}), at, at.Add(geometry.Point{Y: arm * up})))
		}
		if b.Rim < 2+high+2 {
			continue
		}
		at := geometry.Point{X: lo.X + arm + 5, Y: lo.Y + 2}
		out = append(out, layout.Text{At: at, Height: high, Words: b.Title}.Strokes()...)
	}
	return out
}

// scale draws the square that shows whether a file has come through at its true
// size.
func scale(p layout.Plate) []curve.Path {
	const high = 5 // mm
	if p.Check.W() <= 0 {
		return nil
	}
	out := []curve.Path{curve.Rectangle(p.Check)}
	for i, words := range []string{"do not cut", fmt.Sprintf("%.0f mm = %.3f in", p.Check.W(), p.Check.W()/25.4)} {
		at := p.Check.Min.Add(geometry.Point{X: high, Y: high + 2*high*float64(i)})
		out = append(out, layout.Text{At: at, Height: high, Words: words}.Strokes()...)
	}
	return out
}

// outline is one closed edge where it lies on the plate.
type outline struct {
	part  string
	path  curve.Path
	depth int // how many outlines it lies in
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
				out = append(out, outline{part: q.Part.Name, path: moved})
			}
		}
	}
	return ordered(out), nil
}

// key is the same for two outlines that are one, whichever way round and from
// wherever they are drawn.
func key(p curve.Path) string {
	sides := make([]string, len(p))
	for i, s := range p {
		a, b, m := quantum(s.Start()), quantum(s.End()), quantum(s.At(0.5))
		if slices.Compare(a[:], b[:]) > 0 {
			a, b = b, a
		}
		sides[i] = fmt.Sprint(a, m, b)
	}
	slices.Sort(sides)
	return strings.Join(sides, ";")
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
	inside := make([][]int, len(in)) // what lies in each
	for i := range in {
		for k := range in {
			if i != k && boxes[k].Holds(boxes[i].Min) && boxes[k].Holds(boxes[i].Max) && curve.Holds(polygons[k], polygons[i][0]) {
				inside[k] = append(inside[k], i)
				in[i].depth++
			}
		}
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
		for _, k := range inside[i] {
			put(k)
		}
		out = append(out, in[i])
	}
	for i := range in {
		put(i)
	}
	return out
}
