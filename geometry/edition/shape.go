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
	out.apart, out.outside, out.spare = distances(was, is)
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
			to[i] = nearest(is, best[i])
		}
	}
	laid := mapped(was, out.move)
	if far, _, _ := distances(laid, is); far > chord && far < easeWithin {
		out.move = eased(old.Flatten(coarse), new.Flatten(coarse), out.move)
		laid = mapped(was, out.move)
	}
	out.turn = math.Atan2(out.move.B, out.move.A)
	box := geometry.Around(was...).Center()
	out.middle = out.move.Apply(box).Sub(box)
	out.apart, out.outside, out.spare = distances(laid, is)
	return out
}

// eased shifts and turns a line that is laid on another by small steps, as long as the
// largest distance between them becomes less.
func eased(was, is []geometry.Point, at geometry.Affine) geometry.Affine {
	n := max(16, int(math.Ceil(lengthOf(is)/layStep)))
	from, to := append(spaced(was, n), was...), append(spaced(is, n), is...)
	from, to = thinned(from), thinned(to)
	most := func(m geometry.Affine) float64 {
		laid, out := mapped(was, m), 0.0
		for _, p := range from {
			q := m.Apply(p)
			out = max(out, nearest(is, q).Sub(q).Norm())
		}
		for _, p := range to {
			out = max(out, nearest(laid, p).Sub(p).Norm())
		}
		return out
	}
	least, middle, arm := most(at), geometry.Around(is...).Center(), geometry.Around(is...).W()/2
	for step, tries := easeFrom, 0; step > easeTo && least > easeTo && tries < easeMost; {
		better := false
		for _, move := range []geometry.Affine{
			geometry.Shift(step, 0), geometry.Shift(-step, 0), geometry.Shift(0, step), geometry.Shift(0, -step),
			about(middle, step/arm), about(middle, -step/arm),
		} {
			tries++
			m := at.Then(move)
			if far := most(m); far < least-easeTo/10 {
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

// distances are how far two closed lines are apart at most, either way, how far the
// second reaches out of the first and how far the first out of the second.
func distances(a, b []geometry.Point) (apart, out, spare float64) {
	for _, way := range []struct {
		from, of []geometry.Point
		past     *float64
	}{{b, a, &out}, {a, b, &spare}} {
		for _, p := range dense(way.from) {
			d := nearest(way.of, p).Sub(p).Norm()
			apart = max(apart, d)
			if d > *way.past && !curve.Holds(way.of, p) {
				*way.past = d
			}
		}
	}
	return apart, out, spare
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

// nearest is the place of a line nearest to a point.
func nearest(line []geometry.Point, p geometry.Point) geometry.Point {
	at, least := p, math.Inf(1)
	for i := 1; i < len(line); i++ { // in plain numbers: most of the time goes here
		a, b := line[i-1], line[i]
		dx, dy, px, py := b.X-a.X, b.Y-a.Y, p.X-a.X, p.Y-a.Y
		t, long := px*dx+py*dy, dx*dx+dy*dy
		switch {
		case t <= 0:
			t = 0
		case t >= long:
			t = 1
		default:
			t /= long
		}
		ex, ey := px-t*dx, py-t*dy
		if d := ex*ex + ey*ey; d < least {
			least, at = d, geometry.Point{X: a.X + t*dx, Y: a.Y + t*dy}
		}
	}
	return at
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
