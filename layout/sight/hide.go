package sight

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/solid"
)

// Screen is what an eye sees of a boat's faces: it tells which parts of a line show.
//
// How: in the picture, with its depth, lines are straight and faces flat, so what one
// face hides of a straight line is the stretch inside its outline, cut where the line
// comes out in front of it. Nothing is sampled.
type Screen struct {
	view  View
	faces []face
	cells map[[2]int][]int // faces by the square of the picture that they reach
	side  float64          // of a square, mm
	asked int              // how many lines have been asked for
}

// face is a face in the picture; its depth is base + slope . place.
type face struct {
	pts   []spot
	slope geometry.Point
	base  float64
	asked int // the last line that has been asked for here
}

// skin is how deep behind a face a line must lie to be hidden by it, mm of the boat: far
// above rounding, so that the edges of a face are not hidden by it.
const skin = 0.01

// thin is the least height of a face in the picture that can hide anything, mm of paper.
const thin = 1e-4

// square is the side of the picture's squares, mm.
const square = 4.0

// NewScreen readies the faces of a boat. Faces behind the eye hide nothing.
func NewScreen(v View, faces []solid.Face) *Screen {
	s := &Screen{view: v, cells: map[[2]int][]int{}, side: square}
	for _, f := range faces {
		var pts []spot
		for _, p := range v.cut(f) {
			pts = append(pts, v.place(p))
		}
		f, ok := newFace(pts)
		if !ok {
			continue
		}
		n := len(s.faces)
		s.faces = append(s.faces, f)
		s.each(box(pts), func(cell [2]int) { s.cells[cell] = append(s.cells[cell], n) })
	}
	return s
}

// newFace finds the plane of a face; none for one that is seen on its edge.
func newFace(pts []spot) (face, bool) {
	if len(pts) < 3 {
		return face{}, false
	}
	// Newell: the sum over the edges is square to the face, however its corners lie.
	var n geometry.Point3
	var mid geometry.Point
	deep := 0.0
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		n.X += (p.Y - q.Y) * (p.deep + q.deep)
		n.Y += (p.deep - q.deep) * (p.X + q.X)
		n.Z += (p.X - q.X) * (p.Y + q.Y)
		mid, deep = mid.Add(p.Point), deep+p.deep
	}
	b := box(pts)
	if math.Abs(n.Z) <= thin*math.Max(b.W(), b.H()) {
		return face{}, false
	}
	k := 1 / float64(len(pts))
	f := face{pts: pts, slope: geometry.Pt(-n.X/n.Z, -n.Y/n.Z)}
	f.base = deep*k - f.slope.Dot(mid.Scale(k))
	return f, true
}

func box(pts []spot) geometry.Box {
	b := geometry.EmptyBox()
	for _, p := range pts {
		b = b.Union(geometry.Around(p.Point))
	}
	return b
}

// widest is how many squares a face or a line may reach to either side; what is larger is
// looked at everywhere on them.
const widest = 200

// each calls f for every square that a box reaches, none too far off the picture's middle.
func (s *Screen) each(b geometry.Box, f func([2]int)) {
	at := func(v float64) int { return int(math.Floor(math.Max(-widest, math.Min(widest, v/s.side)))) }
	for i := at(b.Min.X); i <= at(b.Max.X); i++ {
		for j := at(b.Min.Y); j <= at(b.Max.Y); j++ {
			f([2]int{i, j})
		}
	}
}

// span is a stretch of a line, shares of it.
type span struct{ from, to float64 }

// showing returns what of a straight line shows.
func (s *Screen) showing(a, b spot) []span {
	var hidden []span
	s.asked++
	s.each(box([]spot{a, b}), func(cell [2]int) {
		for _, n := range s.cells[cell] {
			if f := &s.faces[n]; f.asked != s.asked {
				f.asked = s.asked
				hidden = f.hides(hidden, a, b)
			}
		}
	})
	return rest(hidden)
}

// rest is what spans leave of a whole line.
func rest(taken []span) []span {
	const joint = 1e-9 // shares: faces that share an edge leave no gap
	slices.SortFunc(taken, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	var out []span
	at := 0.0
	for _, t := range taken {
		if t.from > at+joint {
			out = append(out, span{at, t.from})
		}
		at = math.Max(at, t.to)
	}
	if at < 1-joint {
		out = append(out, span{at, 1})
	}
	return out
}

// hides adds the stretches of a line that lie behind a face.
func (f *face) hides(to []span, a, b spot) []span {
	way := b.Point.Sub(a.Point)
	behind := func(p spot) float64 { return p.deep - f.base - f.slope.Dot(p.Point) - skin }
	ga, gb := behind(a), behind(b)
	if ga <= 0 && gb <= 0 {
		return to
	}
	lo, hi := 0.0, 1.0
	if ga <= 0 {
		lo = ga / (ga - gb)
	} else if gb <= 0 {
		hi = ga / (ga - gb)
	}
	for _, in := range f.inside(a.Point, way) {
		if from, till := math.Max(lo, in.from), math.Min(hi, in.to); from < till {
			to = append(to, span{from, till})
		}
	}
	return to
}

// inside returns the stretches of the line through a that lie in the face's outline, by
// counting how often it has been crossed.
func (f *face) inside(a, way geometry.Point) []span {
	var at []float64
	before := f.pts[len(f.pts)-1]
	was := way.Cross(before.Sub(a))
	for _, p := range f.pts {
		is := way.Cross(p.Sub(a))
		if (was > 0) != (is > 0) {
			q := before.Lerp(p.Point, was/(was-is))
			at = append(at, q.Sub(a).Dot(way)/way.Dot(way))
		}
		before, was = p, is
	}
	slices.Sort(at)
	var out []span
	for i := 1; i < len(at); i += 2 {
		out = append(out, span{at[i-1], at[i]})
	}
	return out
}
