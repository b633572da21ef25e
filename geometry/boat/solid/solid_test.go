package solid

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// passes is how far the nearest line of a part passes a place.
func passes(b *Boat, part Part, p geometry.Point3) float64 {
	best := math.Inf(1)
	for _, l := range b.Lines {
		for i := 1; l.Part == part && i < len(l.Points); i++ {
			a, way := l.Points[i-1], l.Points[i].Sub(l.Points[i-1])
			to := p.Sub(a)
			share := 0.0
			if n := way.Norm(); n > 0 {
				share = math.Max(0, math.Min(1, (to.X*way.X+to.Y*way.Y+to.Z*way.Z)/(n*n)))
			}
			best = math.Min(best, to.Sub(geometry.Point3{X: way.X * share, Y: way.Y * share, Z: way.Z * share}).Norm())
		}
	}
	return best
}

// triangles are those of a band.
func (t Band) triangles() (out []Face) {
	for i := 1; i < len(t.A); i++ {
		out = append(out, Face{t.A[i-1], t.A[i], t.B[i]}, Face{t.A[i-1], t.B[i], t.B[i-1]})
	}
	return out
}

// closedIn is the volume that a body without hollows closes in round a place inside it,
// mm3, by the divergence theorem. Its bands tell themselves which side is out.
func closedIn(t *testing.T, b *Boat, middle geometry.Point3) float64 {
	t.Helper()
	sum := 0.0
	part := func(f Face) (sum float64) {
		for i := 2; i < len(f); i++ {
			a, b, c := f[0].Sub(middle), f[i-1].Sub(middle), f[i].Sub(middle)
			sum += a.Dot(b.Cross(c)) / 6
		}
		return sum
	}
	for _, f := range b.Faces {
		sum += math.Abs(part(f))
	}
	for _, band := range b.Bands {
		for _, f := range band.triangles() {
			if v := part(f) * band.Out; v < 0 {
				t.Errorf("the outside of %v is taken for its inside", f)
			} else {
				sum += v
			}
		}
	}
	return sum
}

// TestBar: a straight bar's faces close in its volume, to port and to starboard, and it has
// four edges and two ends.
func TestBar(t *testing.T) {
	for _, side := range []float64{1, -1} {
		b := &Boat{}
		var edges [4][]geometry.Point3
		for _, x := range []float64{0, 100, 400} {
			for e, c := range [4][2]float64{{0, 0}, {20, 0}, {20, 11}, {0, 11}} {
				edges[e] = append(edges[e], geometry.Point3{X: x, Y: c[0] * side, Z: c[1]})
			}
		}
		b.bar(Line{Part: Keel}, edges)
		inside := geometry.Point3{X: 200, Y: 10 * side, Z: 5.5}
		near(t, "volume", closedIn(t, b, inside), 400*20*11, 1e-6)
		if len(b.Lines) != 6 || len(b.Bands) != 4 || len(b.Faces) != 2 {
			t.Errorf("%d lines, %d bands and %d faces", len(b.Lines), len(b.Bands), len(b.Faces))
		}
	}
}

// TestPlate: the same for a plate, whose corners have edges between its two faces.
func TestPlate(t *testing.T) {
	b := &Boat{}
	outline := []geometry.Point3{{}, {X: 100}, {X: 100, Z: 50}, {X: 50, Z: 50}, {Z: 50}}
	b.plate(Line{Part: Stems}, outline, stepped(outline, geometry.Point3{Y: -16}))
	inside := geometry.Point3{X: 50, Y: -8, Z: 25}
	near(t, "volume", closedIn(t, b, inside), 100*50*16, 1e-6)
	if len(b.Lines) != 4+2 {
		t.Errorf("%d lines, want an edge at each of four corners and two outlines", len(b.Lines))
	}
}

// TestSticksLieWhereTheyAre: at every rib the stringers' outer edges are the corners on
// which the cloth lies, as are the keel's lower edge and the gunwale's outer face; a
// rib's outer face runs from the keel's top to the underside of the gunwale.
func TestSticksLieWhereTheyAre(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		b := Of(f, AsDrawn{}, nil)
		for _, r := range f.Ribs {
			corners := f.Corners(r)
			for _, side := range []float64{1, -1} {
				at := func(p geometry.Point) geometry.Point3 {
					return geometry.Point3{X: r.Station, Y: side * p.X, Z: p.Y}
				}
				near(t, name+" "+r.Name+" keel", passes(b, Keel, at(corners[1])), 0, 0.3) // square to the rocker, not to the rib
				for _, p := range corners[2 : len(corners)-2] {
					near(t, name+" "+r.Name+" stringer", passes(b, Stringers, at(p)), 0, 1e-6)
				}
				for _, p := range corners[len(corners)-2:] {
					near(t, name+" "+r.Name+" gunwale", passes(b, Gunwales, at(p)), 0, 0.2) // chords of a third of a bay
				}
				for _, out := range []float64{0.5, -0.5} {
					for share, off := range map[float64]float64{0: 1e-9, 0.5: flat * 1.1, 1: 1e-9} { // chords of the middle leave 0.3 mm, of a face outside it a little more
						p := at(r.Face(share*r.Section.Half.Length(), out*r.Thickness))
						p.X += float64(f.Design.Ribs.Width) / 2
						near(t, name+" "+r.Name+" face", passes(b, Ribs, p), 0, off)
					}
				}
			}
		}
		bow := f.Hull.Bow
		tip, _ := bow.Point(bow.Outer.Length() / 2)
		near(t, name+" stem", passes(b, Stems, geometry.Point3{X: tip.X - float64(f.Design.Skin.Thickness()), Y: f.Bow.Thickness / 2, Z: tip.Y}), 0, 1)
	}
}

// TestHook: the breasthook lies between the gunwales' inner upper edges, at both ends.
func TestHook(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		b := Of(f, AsDrawn{}, nil)
		g := &f.Gunwale
		aft, fore := g.Line.Ends()
		for _, x := range []float64{aft, fore} {
			for _, back := range []float64{0, float64(f.Design.Breasthook.Length)} {
				on := x - math.Copysign(back, x)
				p := g.EdgeAt(on, -g.Width/2, g.Height)
				near(t, name+" hook", passes(b, Hooks, p), 0, 0.05)
				p.Y = -p.Y
				near(t, name+" hook", passes(b, Hooks, p), 0, 0.05)
			}
		}
	}
}

// TestChoice: what is left out is in neither lines nor faces.
func TestChoice(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	all := Of(f, AsDrawn{}, nil)
	some := Of(f, AsDrawn{}, func(p Part, n int) bool { return p != Thwarts && (p != Stringers || n == 2) })
	count := map[Part]map[int]bool{}
	for _, l := range some.Lines {
		if count[l.Part] == nil {
			count[l.Part] = map[int]bool{}
		}
		count[l.Part][l.Number] = true
	}
	if len(count[Thwarts]) != 0 || len(count[Stringers]) != 1 || !count[Stringers][2] || len(count[Ribs]) != len(f.Ribs) {
		t.Errorf("left are %v", count)
	}
	if len(some.Faces) >= len(all.Faces) || len(some.Bands) >= len(all.Bands) {
		t.Error("no face is left out")
	}
}

// shift moves every part by one step.
type shift geometry.Point3

func (s shift) Rib(int, float64, float64) geometry.Point3      { return geometry.Point3(s) }
func (s shift) Stringer(int, float64, float64) geometry.Point3 { return geometry.Point3(s) }
func (s shift) Gunwale(float64, float64) geometry.Point3       { return geometry.Point3(s) }
func (s shift) Keel(float64) geometry.Point3                   { return geometry.Point3(s) }
func (s shift) Stem(geometry.Point3) geometry.Point3           { return geometry.Point3(s) }

// TestMoves: a boat whose every part is moved by one step is the boat moved by it.
func TestMoves(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	by := geometry.Point3{Y: 7, Z: -4}
	is, was := Of(f, shift(by), nil), Of(f, AsDrawn{}, nil)
	for i, l := range was.Lines {
		for k, p := range l.Points {
			if off := is.Lines[i].Points[k].Sub(p.Add(by)).Norm(); off > 1e-9 {
				t.Fatalf("part %d, line %d moves %.9f mm otherwise", l.Part, i, off)
			}
		}
	}
	for i, band := range was.Bands {
		for k, p := range band.B {
			if off := is.Bands[i].B[k].Sub(p.Add(by)).Norm(); off > 1e-9 {
				t.Fatalf("band %d moves %.9f mm otherwise", i, off)
			}
		}
	}
}

// TestCover: the cloth's bands have the cloth's area, and every fold is an edge of it.
func TestCover(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		c, err := skin.Of(f)
		if err != nil {
			t.Fatal(err)
		}
		b := &Boat{}
		b.Cover(c)
		area := 0.0
		for _, band := range b.Bands {
			for _, q := range band.triangles() {
				area += q[1].Sub(q[0]).Cross(q[2].Sub(q[0])).Norm() / 2
			}
		}
		near(t, name+" area", area, c.Area(), 0.01*area)
		if len(b.Folds) == 0 {
			t.Errorf("%s: no folds", name)
		}
	}
}
