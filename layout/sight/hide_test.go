package sight

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/solid"
	"ribwright/layout"
)

type (
	point = geometry.Point3
	eye   = solid.Eye
)

func pt(x, y, z float64) point { return point{X: x, Y: y, Z: z} }

func of(faces []solid.Face) *solid.Boat { return &solid.Boat{Faces: faces} }

// shown adds up the length that shows of a straight line over its whole length, in the
// picture.
func shown(s *Screen, a, b point) float64 {
	sum := 0.0
	for _, r := range s.Runs([]point{a, b}) {
		for i := 1; i < len(r); i++ {
			sum += r[i].Sub(r[i-1]).Norm()
		}
	}
	p, _ := s.view.Place(a)
	q, _ := s.view.Place(b)
	return sum / p.Sub(q).Norm()
}

// cube is a box of a side with its middle at zero, its faces square or in triangles.
func cube(side float64, triangles bool) []solid.Face {
	h := side / 2
	var out []solid.Face
	for axis := range 3 {
		for _, at := range []float64{-h, h} {
			var f solid.Face
			for _, c := range [4][2]float64{{-h, -h}, {h, -h}, {h, h}, {-h, h}} {
				v := [3]float64{}
				v[axis], v[(axis+1)%3], v[(axis+2)%3] = at, c[0], c[1]
				f = append(f, pt(v[0], v[1], v[2]))
			}
			if triangles {
				out = append(out, solid.Face{f[0], f[1], f[2]}, solid.Face{f[0], f[2], f[3]})
			} else {
				out = append(out, f)
			}
		}
	}
	return out
}

// TestBox: of a box seen over a corner nine edges show whole and the three that meet in
// the far corner not at all, from near and from afar.
func TestBox(t *testing.T) {
	const h = 50.0
	for _, triangles := range []bool{false, true} {
		for _, parallel := range []bool{false, true} {
			e := eye{At: pt(300, 210, 160), Parallel: parallel}
			s := NewScreen(NewView(e, 0.5), of(cube(2*h, triangles)), geometry.EmptyBox())
			for axis := range 3 {
				for _, c := range [4][2]float64{{-h, -h}, {h, -h}, {h, h}, {-h, h}} {
					a, b := [3]float64{}, [3]float64{}
					a[axis], b[axis] = -h, h
					a[(axis+1)%3], a[(axis+2)%3] = c[0], c[1]
					b[(axis+1)%3], b[(axis+2)%3] = c[0], c[1]
					want := 1.0
					if c[0] < 0 && c[1] < 0 {
						want = 0
					}
					// A hidden edge shows where it lies less than the skin behind the faces that
					// meet at its end.
					if got := shown(s, pt(a[0], a[1], a[2]), pt(b[0], b[1], b[2])); math.Abs(got-want) > 1e-3 {
						t.Errorf("triangles %v, parallel %v: of the edge %v to %v shows %.4f, want %g", triangles, parallel, a, b, got, want)
					}
				}
			}
		}
	}
}

// TestBehindBox: a line past a box is hidden over the box's width, from afar, and over
// the width of its shadow from near: similar triangles.
func TestBehindBox(t *testing.T) {
	faces := cube(100, true)
	for _, c := range []struct {
		e    eye
		deep float64 // of the line behind the middle
		want float64 // half of what is hidden
	}{
		{eye{At: pt(1000, 0, 0), Parallel: true}, 200, 50},
		{eye{At: pt(1000, 0, 0)}, 200, 50 * 1200 / 950.0}, // the front face throws the shadow
		{eye{At: pt(1000, 0, 0)}, -70, 0},                 // before the box
		{eye{At: pt(1000, 0, 0)}, 0, 50 * 1000 / 950.0},   // through its middle
	} {
		s := NewScreen(NewView(c.e, 0.1), of(faces), geometry.EmptyBox())
		const half = 300.0
		runs := s.Runs([]point{pt(-c.deep, -half, 5), pt(-c.deep, half, 5)})
		got := 0.0
		if len(runs) == 2 {
			got = (runs[1][0].X - runs[0][1].X) / 2 / 0.1 * (1000 + c.deep) / 1000
			if c.e.Parallel {
				got = (runs[1][0].X - runs[0][1].X) / 2 / 0.1
			}
		}
		if math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%+v, %g behind: %.6f hidden to either side, want %.6f", c.e, c.deep, got, c.want)
		}
	}
}

// tube is a cylinder along z of so many flat sides, with its ends closed.
func tube(radius, long float64, sides int) []solid.Face {
	at := func(k int, z float64) point {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(sides))
		return pt(radius*cos, radius*sin, z)
	}
	var low, top solid.Face
	var out []solid.Face
	for k := range sides {
		out = append(out, solid.Face{at(k, 0), at(k+1, 0), at(k+1, long), at(k, long)})
		low, top = append(low, at(k, 0)), append(top, at(k, long))
	}
	return append(out, low, top)
}

// TestCylinder: from afar half of a cylinder's straight sides show; from near, at a
// distance d from its middle, those within acos(radius/d) of the eye. Of the far rim all
// shows that is on those sides, of the near one all.
func TestCylinder(t *testing.T) {
	const radius, long, sides = 40.0, 90.0, 360
	for _, c := range []struct {
		e    eye
		most float64 // angle off the eye to which sides show
	}{
		{eye{At: pt(1000, 0, 600), Parallel: true}, math.Pi / 2},
		{eye{At: pt(100, 0, 600)}, math.Acos(radius / 100)},
	} {
		s := NewScreen(NewView(c.e, 1), of(tube(radius, long, sides)), geometry.EmptyBox())
		for k := range sides {
			// Off the corners' own angles, which lie half a side on.
			a := 2 * math.Pi * float64(k) / sides
			sin, cos := math.Sincos(a)
			off := math.Abs(math.Remainder(a, 2*math.Pi))
			if math.Abs(off-c.most) < 2*math.Pi/sides {
				continue // within one flat of the outline
			}
			want := 0.0
			if off < c.most {
				want = 1
			}
			x, y := radius*cos, radius*sin
			if got := shown(s, pt(x, y, 0), pt(x, y, long)); math.Abs(got-want) > 0.02 {
				t.Errorf("%+v: of the side at %.0f degrees shows %.3f, want %g", c.e, a*180/math.Pi, got, want)
			}
			next := 2 * math.Pi * float64(k+1) / sides
			nx, ny := radius*math.Cos(next), radius*math.Sin(next)
			if got := shown(s, pt(x, y, long), pt(nx, ny, long)); math.Abs(got-1) > 1e-9 {
				t.Errorf("%+v: of the upper rim at %.0f degrees shows %.3f", c.e, a*180/math.Pi, got)
			}
			if math.Abs(math.Abs(math.Remainder(next, 2*math.Pi))-c.most) < 2*math.Pi/sides {
				continue
			}
			if got := shown(s, pt(x, y, 0), pt(nx, ny, 0)); math.Abs(got-want) > 0.1 {
				t.Errorf("%+v: of the lower rim at %.0f degrees shows %.3f, want %g", c.e, a*180/math.Pi, got, want)
			}
		}
	}
}

// TestClosed: a tube whose bands tell which side is out hides as much as one whose faces
// hide from both sides, whichever way its bands run; the eye may stand so near that the
// side towards it is cut open.
func TestClosed(t *testing.T) {
	const radius, long, sides = 40.0, 90.0, 24
	faces := tube(radius, long, sides)
	for _, out := range []float64{1, -1} {
		rings := [2][]point{faces[sides], faces[sides+1]} // from below up it runs counter-clockwise
		if out < 0 {
			rings[0], rings[1] = rings[1], rings[0]
		}
		for i, r := range rings {
			rings[i] = append(slices.Clone(r), r[0])
		}
		closed := &solid.Boat{Faces: faces[sides:], Bands: []solid.Band{{A: rings[0], B: rings[1], Out: out}}}
		for _, e := range []eye{{At: pt(100, 30, 60), Parallel: true}, {At: pt(100, 30, 60)}, {At: pt(38, 0, 45), To: pt(-2000, 0, 45)}} {
			v := NewView(e, 1)
			is, want := NewScreen(v, closed, geometry.EmptyBox()), NewScreen(v, of(faces), geometry.EmptyBox())
			r := rand.New(rand.NewPCG(7, 3))
			for range 300 {
				any := func() point { return pt(200*(r.Float64()-0.7), 200*(r.Float64()-0.5), 200*(r.Float64()-0.5)) }
				a, b := any(), any()
				if !v.seen(a) || !v.seen(b) {
					continue
				}
				if got, want := shown(is, a, b), shown(want, a, b); math.Abs(got-want) > 1e-9 {
					t.Fatalf("%+v, out %g: of %v to %v shows %.6f, want %.6f", e, out, a, b, got, want)
				}
			}
		}
	}
}

// TestHollowFace: through the opening of a face that is a horseshoe a line shows.
func TestHollowFace(t *testing.T) {
	f := solid.Face{pt(0, -30, 0), pt(0, 30, 0), pt(0, 30, 40), pt(0, 10, 40), pt(0, 10, 10), pt(0, -10, 10), pt(0, -10, 40), pt(0, -30, 40)}
	s := NewScreen(NewView(eye{At: pt(500, 0, 0), Parallel: true}, 1), of([]solid.Face{f}), geometry.EmptyBox())
	runs := s.Runs([]point{pt(-100, -100, 20), pt(-100, 100, 20)})
	want := [][2]float64{{-100, -30}, {-10, 10}, {30, 100}}
	if len(runs) != len(want) {
		t.Fatalf("%d stretches show, want %d: %v", len(runs), len(want), runs)
	}
	for i, w := range want {
		if math.Abs(runs[i][0].X-w[0]) > 1e-9 || math.Abs(runs[i][1].X-w[1]) > 1e-9 {
			t.Errorf("stretch %d: %v, want %v", i, runs[i], w)
		}
	}
}

// TestAgainstRays: for lines among many triangles every place that shows has a free way
// to the eye, and every place that does not has none: asked of each triangle by solving
// for the point in which the ray meets it.
func TestAgainstRays(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 14))
	any := func(size float64) point {
		return pt(size*(r.Float64()-0.5), size*(r.Float64()-0.5), size*(r.Float64()-0.5))
	}
	for _, parallel := range []bool{false, true} {
		var faces []solid.Face
		for range 60 {
			p := any(200)
			faces = append(faces, solid.Face{p, p.Add(any(90)), p.Add(any(90))})
		}
		e := eye{At: pt(400, 150, 220), Parallel: parallel}
		s := NewScreen(NewView(e, 1), of(faces), geometry.EmptyBox())
		checked, hid := 0, 0
		for range 200 {
			a, b := any(220), any(220)
			showing := s.showing(s.view.place(a), s.view.place(b))
			for range 10 {
				share := r.Float64()
				// The picture's share of a line in perspective is not the line's own.
				p := a.Add(scaled(b.Sub(a), share))
				on := share
				if !parallel {
					za, zb := s.view.before(a), s.view.before(b)
					on = share * zb / (za*(1-share) + zb*share)
				}
				in, edge := false, math.Inf(1)
				for _, sp := range showing {
					in = in || on > sp.from && on < sp.to
					edge = math.Min(edge, math.Min(math.Abs(on-sp.from), math.Abs(on-sp.to)))
				}
				if edge < 1e-3 {
					continue
				}
				checked++
				free := freeWay(e, p, faces)
				if !free {
					hid++
				}
				if free != in {
					t.Errorf("parallel %v: %v shows %v, its way to the eye is free %v", parallel, p, in, free)
				}
			}
		}
		if checked < 1000 || hid < 200 {
			t.Errorf("%d places looked at, %d of them hidden: not enough", checked, hid)
		}
	}
}

// freeWay meets every triangle with the ray to the eye by Cramer's rule.
func freeWay(e eye, p point, faces []solid.Face) bool {
	d := e.At.Sub(p)
	if e.Parallel {
		d = e.At.Sub(e.To)
	}
	det := func(a, b, c point) float64 { return a.Dot(cross(b, c)) }
	for _, f := range faces {
		u, v, w := f[1].Sub(f[0]), f[2].Sub(f[0]), p.Sub(f[0])
		n := det(u, v, scaled(d, -1))
		x, y, ray := det(w, v, scaled(d, -1))/n, det(u, w, scaled(d, -1))/n, det(u, v, w)/n
		if x > 0 && y > 0 && x+y < 1 && ray > 0 {
			return false
		}
	}
	return true
}

// TestEye: scale, sides and shrinking of a picture by similar triangles.
func TestEye(t *testing.T) {
	for _, c := range []struct {
		e    eye
		p    point
		x, y float64
	}{
		{eye{At: pt(0, -1000, 0), Parallel: true}, pt(120, 0, 50), 12, 5},       // from starboard: bow to the right
		{eye{At: pt(0, 0, 1000), Parallel: true}, pt(120, 50, 0), 12, 5},        // from above: bow to the right, port up
		{eye{At: pt(1000, 0, 0), Parallel: true}, pt(-300, 50, 70), 5, 7},       // from the bow: port to the right
		{eye{At: pt(1000, 0, 0)}, pt(-1000, 50, 70), 2.5, 3.5},                  // twice as far, half as large
		{eye{At: pt(1000, 0, 0)}, pt(500, 50, 70), 10, 14},                      // half as far, twice as large
		{eye{At: pt(1500, 10, 20), To: pt(500, 10, 20)}, pt(500, 60, 90), 5, 7}, // at the place looked at
	} {
		q, ok := NewView(c.e, 0.1).Place(c.p)
		if !ok || math.Abs(q.X-c.x) > 1e-9 || math.Abs(q.Y-c.y) > 1e-9 {
			t.Errorf("%+v: %v lies at %v, want %g, %g", c.e, c.p, q, c.x, c.y)
		}
	}
	if _, ok := NewView(eye{At: pt(1000, 0, 0)}, 1).Place(pt(1200, 0, 0)); ok {
		t.Error("a place behind the eye is seen")
	}
}

// TestPastEye: a wall that runs past the eye hides what is behind it, and a line that
// runs past it is drawn up to where it is too near.
func TestPastEye(t *testing.T) {
	wall := solid.Face{pt(2000, 20, -100), pt(-500, 20, -100), pt(-500, 20, 100), pt(2000, 20, 100)}
	v := NewView(eye{At: pt(1000, 0, 0)}, 1)
	s := NewScreen(v, of([]solid.Face{wall}), geometry.EmptyBox())
	if got := shown(s, pt(-100, 60, 0), pt(-100, 150, 0)); got != 0 {
		t.Errorf("behind the wall shows %g", got)
	}
	runs := s.Runs([]point{pt(1500, -10, 0), pt(0, -10, 0)})
	if len(runs) != 1 || math.Abs(runs[0][0].X+10/nearest) > 1e-3 || math.Abs(runs[0][1].X+10) > 1e-9 {
		t.Errorf("the line past the eye is drawn as %v", runs)
	}
}

// TestWindow: lines end at a window's edges.
func TestWindow(t *testing.T) {
	s := NewScreen(NewView(eye{At: pt(0, 0, 1000), Parallel: true}, 1), of(nil), geometry.Rect(-10, -5, 10, 5))
	for _, c := range []struct{ a, b, want string }{
		{"-20 0", "20 0", "[[{-10 0} {10 0}]]"}, {"0 0", "40 20", "[[{0 0} {10 5}]]"}, {"0 -9", "0 9", "[[{0 -5} {0 5}]]"},
		{"-20 0", "-11 4", "[]"}, {"0 6", "11 -5", "[[{1 5} {10 -4}]]"},
	} {
		var a, b point
		fmt.Sscan(c.a, &a.X, &a.Y)
		fmt.Sscan(c.b, &b.X, &b.Y)
		if got := fmt.Sprint(s.Runs([]point{a, b})); got != c.want {
			t.Errorf("%s to %s: %s, want %s", c.a, c.b, got, c.want)
		}
	}
}

// folds are the edges of a box, each with a place on either side.
func folds(h float64) []solid.Fold {
	var out []solid.Fold
	for axis := range 3 {
		for _, c := range [4][2]float64{{-h, -h}, {h, -h}, {h, h}, {-h, h}} {
			at := func(a, b, c float64) point {
				v := [3]float64{}
				v[axis], v[(axis+1)%3], v[(axis+2)%3] = a, b, c
				return pt(v[0], v[1], v[2])
			}
			out = append(out, solid.Fold{A: at(-h, c[0], c[1]), B: at(h, c[0], c[1]), P: at(0, 0, c[1]), Q: at(0, c[0], 0)})
		}
	}
	return out
}

// TestOutline: a box seen over a corner is outlined by the six edges that do not meet in
// the near corner or the far one.
func TestOutline(t *testing.T) {
	for _, parallel := range []bool{false, true} {
		v := NewView(eye{At: pt(300, 210, 160), Parallel: parallel}, 1)
		n := 0
		for _, f := range folds(50) {
			mid := scaled(f.A.Add(f.B), 0.5)
			want := mid.X*mid.Y < 0 || mid.Y*mid.Z < 0 || mid.X*mid.Z < 0
			if got := v.outline(f); got != want {
				t.Errorf("parallel %v: the edge at %v is an outline %v", parallel, mid, got)
			}
			if want {
				n++
			}
		}
		if n != 6 {
			t.Fatalf("%d edges looked for", n)
		}
	}
}

// TestDraw: of a boat that is a box with one edge drawn and its folds, the drawing holds
// that edge in its own pen and six outlines, moved to their place; what has no pen is
// left out.
func TestDraw(t *testing.T) {
	b := &solid.Boat{Faces: cube(100, true), Folds: folds(50), Lines: []solid.Line{
		{Part: solid.Keel, Points: []point{pt(-50, 50, 50), pt(50, 50, 50)}},
		{Part: solid.Ribs, Points: []point{pt(50, -50, 50), pt(50, 50, 50)}},
		{Part: solid.Keel, Points: []point{pt(-50, -50, -50), pt(50, -50, -50)}}, // behind
	}}
	var d layout.Drawing
	p := Picture{View: NewView(eye{At: pt(3, 2.1, 1.6), Parallel: true}, 0.1), Window: geometry.EmptyBox(), Fold: layout.Mark,
		Pen: func(l solid.Line) (layout.Pen, bool) { return layout.Cut, l.Part == solid.Keel }}
	p.Draw(&d, b, geometry.Pt(200, 300))
	pens := map[layout.Pen]int{}
	for _, s := range d.Strokes {
		pens[s.Pen]++
	}
	if pens[layout.Cut] != 1 || pens[layout.Mark] != 6 || len(pens) != 2 {
		t.Errorf("drawn are %v", pens)
	}
	if c := d.Bounds().Center(); math.Abs(c.X-200) > 1e-9 || math.Abs(c.Y-300) > 1e-9 {
		t.Errorf("the box lies round %v", c)
	}
}

// TestThinned: a line of many places on an arc is drawn by few, none of them farther from
// it than 0.01 mm, and keeps its ends and corners.
func TestThinned(t *testing.T) {
	var pts []geometry.Point
	for k := range 401 {
		pts = append(pts, geometry.Polar(30, float64(k)/400))
	}
	pts = append(pts, geometry.Pt(0, 0))
	got := thinned(pts[:1:1], pts)
	if len(got) > 40 || got[0] != pts[0] || got[len(got)-1] != pts[401] || !slices.Contains(got, pts[400]) {
		t.Fatalf("%d places: %v", len(got), got)
	}
	for _, p := range pts {
		off := math.Inf(1)
		for i := 1; i < len(got); i++ {
			off = math.Min(off, p.Off(got[i-1], got[i]))
		}
		if off > 0.01+1e-12 {
			t.Errorf("%v lies %.4f mm off the line", p, off)
		}
	}
}
