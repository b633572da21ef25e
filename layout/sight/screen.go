package sight

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/solid"
)

// Screen is what an eye sees of a boat's faces: it tells which parts of a line show.
//
// How: in the picture, with its depth, lines are straight and faces flat, so what one
// face hides of a straight line is the stretch inside its outline, cut where the line
// comes out in front of it. Nothing is sampled.
type Screen struct {
	view    View
	window  geometry.Box // of the picture, mm
	bounded bool         // lines end at the window
	patches []patch
	faces   []face
	spots   []spot // their corners
	squares squares
	number  int32 // of the line that is asked for
	whole   int32 // a patch that hid the whole of a line before: likely of the next one too
	line    asked
	shown   []span // room for what shows of it
}

// patch is faces that lie together: those between one pair of places of a band.
type patch struct {
	box         geometry.Box
	near        float64 // the least depth of their corners
	first, past int32   // of the faces
	asked       int32   // the last line that has been asked for here
}

// face is a face in the picture; its depth is base + slope . place.
type face struct {
	slope       geometry.Point
	base        float64
	first, past int32 // of its corners
}

// thin is the least height of a face in the picture that can hide anything, mm of paper.
const thin = 1e-4

// NewScreen readies the faces of a boat for a window of the picture, an empty one for
// all. Faces behind the eye hide nothing.
func NewScreen(v View, b *solid.Boat, window geometry.Box) *Screen {
	s := &Screen{view: v, window: window, bounded: !window.Empty()}
	n := len(b.Faces)
	for _, t := range b.Bands {
		n += len(t.A) - 1
	}
	s.patches, s.faces, s.spots = make([]patch, 0, n), make([]face, 0, 3*n/2), make([]spot, 0, 9*n/2) // half of a stick turns away
	for _, f := range b.Faces {
		first := len(s.faces)
		s.face(f...)
		s.patch(first)
	}
	for _, t := range b.Bands {
		s.band(t)
	}
	if !s.bounded {
		s.window = geometry.EmptyBox()
		for i := range s.patches {
			s.window = s.window.Union(s.patches[i].box)
		}
	}
	s.squares = squared(s.window, s.patches)
	return s
}

// band readies what of a band can hide anything. Seen from afar, what turns away of a closed
// body hides nothing that its near side does not: but for lines that lie behind its very
// outline, as port does behind starboard from abeam.
func (s *Screen) band(t solid.Band) {
	out := t.Out
	if !s.view.eye.Parallel || math.Abs(s.view.ahead.Y) == 1 { // from near, the near side may lie behind the eye
		out = 0
	}
	for i := 1; i < len(t.A); i++ {
		p, q, r, u := t.A[i-1], t.A[i], t.B[i], t.B[i-1]
		first, edge := len(s.faces), r.Sub(p).Cross(s.view.ahead)
		if out*edge.Dot(q.Sub(p)) <= 0 {
			s.face(p, q, r)
		}
		if out*edge.Dot(u.Sub(p)) >= 0 {
			s.face(p, r, u)
		}
		s.patch(first)
	}
}

// face finds where a face lies in the picture and how deep; none is added for one that is
// seen on its edge.
func (s *Screen) face(pts ...geometry.Point3) {
	first := len(s.spots)
	for _, p := range s.view.cut(pts) {
		s.spots = append(s.spots, s.view.place(p))
	}
	// Newell: the sum over the edges is square to the face, however its corners lie.
	var n geometry.Point3
	var mid geometry.Point
	deep, box, corners := 0.0, geometry.EmptyBox(), s.spots[first:]
	for i, p := range corners {
		q := corners[0]
		if i+1 < len(corners) {
			q = corners[i+1]
		}
		n.X += (p.Y - q.Y) * (p.deep + q.deep)
		n.Y += (p.deep - q.deep) * (p.X + q.X)
		n.Z += (p.X - q.X) * (p.Y + q.Y)
		mid, deep = mid.Add(p.Point), deep+p.deep
		box.Add(p.Point)
	}
	if len(corners) < 3 || math.Abs(n.Z) <= thin*max(box.W(), box.H()) {
		s.spots = s.spots[:first]
		return
	}
	k := 1 / float64(len(corners))
	slope := geometry.Pt(-n.X/n.Z, -n.Y/n.Z)
	s.faces = append(s.faces, face{slope, deep*k - slope.Dot(mid.Scale(k)), int32(first), int32(len(s.spots))})
}

// patch adds the faces from first on, if any of them reaches into the window.
func (s *Screen) patch(first int) {
	if first == len(s.faces) {
		return
	}
	p := patch{box: geometry.EmptyBox(), near: math.Inf(1), first: int32(first), past: int32(len(s.faces))}
	for _, c := range s.spots[s.faces[first].first:] {
		p.box.Add(c.Point)
		if c.deep < p.near {
			p.near = c.deep
		}
	}
	if !s.bounded || p.box.Overlaps(s.window) {
		s.patches = append(s.patches, p)
	}
}

// squares are the squares of a picture with the patches that reach into each.
type squares struct {
	window     geometry.Box
	size       float64
	cols, rows int
	starts     []int32 // where each square's patches begin in the list; at last where all end
	list       []int32 // the last ones first: those of the cloth, which hide the most
}

// square is the least side of the picture's squares, mm, and most is how many there are at
// the most to either side.
const (
	square = 2.0
	most   = 100
)

func squared(window geometry.Box, patches []patch) squares {
	q := squares{window: window}
	if window.Empty() {
		return q
	}
	q.size = max(square, window.W()/most, window.H()/most)
	q.cols, q.rows = int(window.W()/q.size)+1, int(window.H()/q.size)+1
	q.starts = make([]int32, q.cols*q.rows+1)
	q.sort(patches)
	return q
}

// sort lists the patches. They are counted before, so that all squares share one list, which
// is filled from its end.
func (q *squares) sort(patches []patch) {
	for i := range patches {
		left, right, low, top := q.reach(patches[i].box)
		for row := low; row <= top; row++ {
			for at := row*q.cols + left; at <= row*q.cols+right; at++ {
				q.starts[at]++
			}
		}
	}
	all := int32(0)
	for i, n := range q.starts {
		all += n
		q.starts[i] = all
	}
	q.list = make([]int32, all)
	for i := range patches {
		left, right, low, top := q.reach(patches[i].box)
		for row := low; row <= top; row++ {
			for at := row*q.cols + left; at <= row*q.cols+right; at++ {
				q.starts[at]--
				q.list[q.starts[at]] = int32(i)
			}
		}
	}
}

// reach is which squares a box reaches: columns and rows, the last ones too.
func (q *squares) reach(b geometry.Box) (left, right, low, top int) {
	at := func(v, from float64, n int) int { return min(max(int((v-from)/q.size), 0), n-1) }
	return at(b.Min.X, q.window.Min.X, q.cols), at(b.Max.X, q.window.Min.X, q.cols), at(b.Min.Y, q.window.Min.Y, q.rows), at(b.Max.Y, q.window.Min.Y, q.rows)
}
