package edition

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// sawnTo is how far off an outline may be sawn, mm: to the pencil line. Common practice,
// no source.
const sawnTo = 1.0

// shape is a part that is sawn to an outline.
type shape struct {
	part, which string // which of several of the part; "" for one
	outline     curve.Path
}

func (s shape) quantity() string {
	if s.which == "" {
		return Outline
	}
	return Outline + ", " + s.which
}

// shapesOf lists them. Stems lie as in the boat, the others in frames of their own.
func shapesOf(e *Edition) []shape {
	f := e.Bend.Frame
	out := []shape{{"bow stem", "", f.Bow.Outline}, {"stern stem", "", f.Stern.Outline}, {"bow breasthook", "", f.BowHook.Outline}, {"stern breasthook", "", f.SternHook.Outline}}
	for i, t := range f.Thwarts {
		out = append(out, shape{fmt.Sprintf("thwart %d", i+1), "", t.Outline})
	}
	for _, s := range f.Seats {
		if s.Saddle != nil {
			out = append(out, shape{fmt.Sprintf("seat %d", s.Number+1), "cheek", curve.Polygon(s.Saddle.Cheek...)})
		}
	}
	return out
}

// fit is an outline laid on another.
type fit struct {
	move    geometry.Affine // of the old one
	turn    float64         // radians
	middle  geometry.Point  // how far its middle moves
	apart   float64         // largest distance of the two lines, either way, mm
	outside float64         // how far the new one reaches out of the old at most, mm
	spare   float64         // how far the old one reaches out of the new at most, mm
}

// Steps along an outline, mm: what it is laid on the other by, and what it is measured by.
const (
	layStep     = 10.0
	measureStep = 2.0
	chord       = 0.01 // of the lines that stand for an outline, mm
	settled     = 1e-5 // how little a round of laying may move it to be done, mm
	rounds      = 12
	easeFrom    = 0.1 // first and last step by which it is eased then, mm
	easeTo      = 0.005
	easeMost    = 60   // steps at most
	coarse      = 0.03 // of the lines it is eased by, mm
	easeWithin  = 3.0  // lines that are farther apart are other parts anyhow, mm
)

// layOn finds the shift and turn that lay the old outline on the new one as close as can
// be, and how far they are apart then. What it returns is never
// less than the least possible: where a better way to lay them exists, the parts are more
// alike than it says.
//
// How: points of equal share of length are paired and the motion is the closed form for
// pairs; then each point is paired with the nearest place of the other line, again and
// again (P. Besl, N. McKay, IEEE Trans. PAMI 14(2), 1992). At last it is shifted and
// turned by small steps as long as the largest distance becomes less by that, where the
// lines are near enough for it to matter.
func layOn(old, new curve.Path) fit {
	out := fit{move: geometry.Shift(0, 0)}
	if slices.Equal(old, new) {
		return out
	}
	was, is := old.Flatten(chord), new.Flatten(chord)
	n := max(16, int(math.Ceil(lengthOf(is)/layStep)))
	from, to := spaced(was, n), spaced(is, n)
	best := from
	wanted := newContour(is)
	for k := range rounds {
		moved := motion(best, to)
		next := mapped(best, moved)
		most := 0.0
		for i := range next {
			most = max(most, next[i].Sub(best[i]).Norm())
		}
		best, out.move = next, out.move.Then(moved)
		if k > 0 && most < settled {
			break
		}
		for i := range best {
			to[i] = wanted.nearest(best[i])
		}
	}
	out.measure(was, wanted)
	if out.apart > chord && out.apart < easeWithin {
		out.move = eased(old.Flatten(coarse), new.Flatten(coarse), out.move)
		out.measure(was, wanted)
	}
	out.turn = math.Atan2(out.move.B, out.move.A)
	box := geometry.Around(was...).Center()
	out.middle = out.move.Apply(box).Sub(box)
	return out
}

// eased shifts and turns a line that is laid on another by small steps, as long as the
// largest distance between them becomes less.
func eased(was, is []geometry.Point, at geometry.Affine) geometry.Affine {
	n := max(16, int(math.Ceil(lengthOf(is)/layStep)))
	from, to := append(spaced(was, n), was...), append(spaced(is, n), is...)
	from, to = thinned(from), thinned(to)
	wanted := newContour(is)
	most := func(m geometry.Affine, enough float64) float64 { // no farther than enough, for then it is no use
		laid, out := newContour(mapped(was, m)), 0.0
		for i := 0; i < len(from) && out < enough; i++ {
			q := m.Apply(from[i])
			out = max(out, wanted.nearest(q).Sub(q).Norm())
		}
		for i := 0; i < len(to) && out < enough; i++ {
			out = max(out, laid.nearest(to[i]).Sub(to[i]).Norm())
		}
		return out
	}
	least, middle, arm := most(at, math.Inf(1)), geometry.Around(is...).Center(), geometry.Around(is...).W()/2
	for step, tries := easeFrom, 0; step > easeTo && least > easeTo && tries < easeMost; {
		better := false
		for _, move := range []geometry.Affine{
			geometry.Shift(step, 0), geometry.Shift(-step, 0), geometry.Shift(0, step), geometry.Shift(0, -step),
			about(middle, step/arm), about(middle, -step/arm),
		} {
			tries++
			m, enough := at.Then(move), least-easeTo/10
			if far := most(m, enough); far < enough {
				least, at, better = far, m, true
			}
		}
		if !better {
			step /= 2
		}
	}
	return at
}

func about(p geometry.Point, a float64) geometry.Affine {
	return geometry.Shift(-p.X, -p.Y).Then(geometry.Turn(a)).Then(geometry.Shift(p.X, p.Y))
}

// thinned keeps every point that is farther than a millimeter from the last one kept.
func thinned(pts []geometry.Point) []geometry.Point {
	var out []geometry.Point
	for _, p := range pts {
		if len(out) == 0 || out[len(out)-1].Sub(p).Norm() > 1 {
			out = append(out, p)
		}
	}
	return out
}

// shifted says where the part went; what no tape shows is nothing.
func (f fit) shifted(s shape) Shifted {
	large := func(v, floor float64) float64 {
		if math.Abs(v) <= floor {
			return 0
		}
		return v
	}
	return Shifted{s.part, large(f.middle.X, FloorLength), large(f.middle.Y, FloorLength), large(f.turn, FloorAngle), large(f.apart, FloorLength)}
}

// motion is the shift and turn that bring points nearest to their partners.
func motion(from, to []geometry.Point) geometry.Affine {
	a, b := mean(from), mean(to)
	sin, cos := 0.0, 0.0
	for i := range from {
		p, q := from[i].Sub(a), to[i].Sub(b)
		sin += p.Cross(q)
		cos += p.Dot(q)
	}
	return geometry.Shift(-a.X, -a.Y).Then(geometry.Turn(math.Atan2(sin, cos))).Then(geometry.Shift(b.X, b.Y))
}

func mean(pts []geometry.Point) geometry.Point {
	var sum geometry.Point
	for _, p := range pts {
		sum = sum.Add(p)
	}
	return sum.Scale(1 / float64(len(pts)))
}

func mapped(pts []geometry.Point, m geometry.Affine) []geometry.Point {
	out := make([]geometry.Point, len(pts))
	for i, p := range pts {
		out[i] = m.Apply(p)
	}
	return out
}

// measure finds how far the old line, laid on the new one, is from it at most, either way, and
// how far each reaches out of the other.
func (f *fit) measure(was []geometry.Point, is contour) {
	laid := newContour(mapped(was, f.move))
	f.apart, f.outside, f.spare = 0, 0, 0
	for _, way := range []struct {
		from, of contour
		past     *float64
	}{{is, laid, &f.outside}, {laid, is, &f.spare}} {
		for _, p := range dense(way.from.points) {
			d := way.of.nearest(p).Sub(p).Norm()
			f.apart = max(f.apart, d)
			if d > *way.past && !curve.Holds(way.of.points, p) {
				*way.past = d
			}
		}
	}
}

// dense are the corners of a line and places between them.
func dense(pts []geometry.Point) []geometry.Point {
	var out []geometry.Point
	for i := 1; i < len(pts); i++ {
		n := math.Ceil(pts[i].Sub(pts[i-1]).Norm() / measureStep)
		for k := 0.0; k < n; k++ {
			out = append(out, pts[i-1].Lerp(pts[i], k/n))
		}
	}
	return out
}

func lengthOf(line []geometry.Point) float64 {
	sum := 0.0
	for i := 1; i < len(line); i++ {
		sum += line[i].Sub(line[i-1]).Norm()
	}
	return sum
}

// spaced are n places evenly spaced along a closed line from its start.
func spaced(line []geometry.Point, n int) []geometry.Point {
	step := lengthOf(line) / float64(n)
	out := make([]geometry.Point, 0, n)
	passed := 0.0
	for i := 1; i < len(line) && len(out) < n; i++ {
		long := line[i].Sub(line[i-1]).Norm()
		for len(out) < n && float64(len(out))*step <= passed+long && long > 0 {
			out = append(out, line[i-1].Lerp(line[i], (float64(len(out))*step-passed)/long))
		}
		passed += long
	}
	for len(out) < n { // rounding at the very end
		out = append(out, line[len(line)-1])
	}
	return out
}
