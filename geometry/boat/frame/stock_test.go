package frame

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/referencetest"
)

// reference reads the rows of one kind for a boat from the table that
// testdata/reference/elastica.py writes: three numbers each.
func reference(t *testing.T, boat, what string) (out [][3]float64) {
	t.Helper()
	for _, row := range referencetest.Table(t, "../../../testdata/reference/elastica.csv") {
		if row[0] != boat || row[1] != what {
			continue
		}
		var v [3]float64
		for i := range v {
			v[i] = referencetest.Number(t, row[2+i])
		}
		out = append(out, v)
	}
	return out
}

// The gunwale against the elastica as a boundary-value problem, worked out by another
// program in another form: testdata/reference/elastica.py.
func TestGunwaleAgainstReference(t *testing.T) {
	for _, name := range design.ShippedNames() {
		t.Run(name, func(t *testing.T) {
			f := build(t, name, nil)
			ribs := reference(t, name, "rib")
			if len(ribs) != len(f.Ribs) {
				t.Fatalf("the table has %d ribs, the boat %d: run the script with the boat's pins and ribs", len(ribs), len(f.Ribs))
			}
			for i, want := range ribs {
				m := f.Gunwale.Mortises[i]
				if math.Abs(m.Station-want[0]) > 1e-6 {
					t.Fatalf("rib %s stands at %.6f mm, in the table at %.6f", m.Rib, m.Station, want[0])
				}
				if got := f.Gunwale.Line.Point(m.Station).Y; math.Abs(got-want[1]) > 0.001 {
					t.Errorf("rib %s: half-breadth %.4f mm, reference %.4f", m.Rib, got, want[1])
				}
				if math.Abs(m.AlongLine-want[2]) > 0.001 {
					t.Errorf("mortise %s: %.4f mm along the line, reference %.4f", m.Rib, m.AlongLine, want[2])
				}
			}
		})
	}
}

// TestMarksOnTheUnderside bends the stock back straight: its middle, half the height
// over the underside and square to it, keeps its length, so the chords of that line up
// to a mortise are where the mortise is marked. The rule takes the edge-set's slope
// over the boat's length instead of the stock's, which is good to a tenth of what it
// corrects; 0.1 mm is what is printed.
func TestMarksOnTheUnderside(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		g := &f.Gunwale
		sin, cos := math.Sincos(g.Tilt)
		middle := func(x float64) geometry.Point3 {
			p := g.Line.Point(x)
			dy, dz := g.Line.Slopes(x)
			// The tall way, turned in the upright plane of the stock until it is square to it.
			lean := (sin*dy + cos*dz) / (1 + dy*dy + dz*dz)
			u := geometry.Point3{X: -lean, Y: sin - lean*dy, Z: cos - lean*dz}
			h := g.Height / 2 / u.Norm()
			return geometry.Point3{X: p.X + h*u.X, Y: p.Y + h*u.Y, Z: p.Z + h*u.Z}
		}
		for _, m := range g.Mortises {
			sum, last := 0.0, middle(0)
			const n = 2000
			for i := 1; i <= n; i++ {
				p := middle(m.Station * float64(i) / n)
				sum += p.Sub(last).Norm()
				last = p
			}
			want := math.Copysign(sum, m.Station)
			if off := math.Abs(m.FromMidship - want); m.Station != 0 && off > 0.1*math.Abs(m.AlongLine-want)+1e-4 {
				t.Errorf("mortise %s marked at %.3f mm, the stock bent straight has it at %.3f", m.Rib, m.FromMidship, want)
			}
			if x := g.StationOf(m.FromMidship); math.Abs(x-m.Station) > 1e-8 {
				t.Errorf("mortise %s: the mark leads back to station %.9f mm, it is at %.9f", m.Rib, x, m.Station)
			}
		}
		if shift := f.Hull.Sheer.BowSet.EndShift(g.Height); math.Abs(g.Line.Length(f.Hull.Bow.GunwaleX)-shift-g.Fore) > 1e-9 {
			t.Errorf("fore end marked at %.4f mm, the shift there is %.4f", g.Fore, shift)
		}
	})
}

// Without edge-set the mark is the length along the line.
func TestMarksWithoutEdgeSet(t *testing.T) {
	f := build(t, "lake", func(d *design.Design) { d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0 })
	for _, m := range f.Gunwale.Mortises {
		if m.FromMidship != m.AlongLine {
			t.Errorf("mortise %s at %g and %g mm", m.Rib, m.FromMidship, m.AlongLine)
		}
	}
}

// TestKeelLength adds up chords of the keel line lifted square to itself to the middle
// of the keel's depth. Where the keel rises it is shorter than its underside by the
// height times the turn.
func TestKeelLength(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		up := float64(f.Design.Skin.Thickness() + f.Design.Keel.Depth/2)
		at := func(x float64) geometry.Point3 {
			z, slope := f.Hull.KeelZ(x)
			sin, cos := math.Sincos(math.Atan(slope))
			return geometry.Point3{X: x - up*sin, Z: z + up*cos}
		}
		sum, a, b := 0.0, -f.Hull.Stern.Toe.X, f.Hull.Bow.Toe.X
		const n = 20000
		for i := range n {
			sum += at(a + (b-a)*float64(i+1)/n).Sub(at(a + (b-a)*float64(i)/n)).Norm()
		}
		if got := f.Keel.Fore - f.Keel.Aft; math.Abs(got-sum) > 1e-3 {
			t.Errorf("the keel is %.4f mm long, chords give %.4f", got, sum)
		}
	})
}

// TestBreasthookBevel measures the angle between plate and gunwale on the bodies: two
// directions in each plane at the middle of the joint, their normals, the angle between.
// The edge bends along the plate by some 3 degrees, the bevel by a tenth of one.
func TestBreasthookBevel(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		g, aft, fore := &f.Gunwale, -f.Hull.Stern.GunwaleX, f.Hull.Bow.GunwaleX
		long := float64(f.Design.Breasthook.Length)
		for _, c := range []struct {
			hook     Breasthook
			tip, way float64
		}{{f.BowHook, fore, -1}, {f.SternHook, aft, 1}} {
			edge := func(back, up float64) geometry.Point3 { return g.EdgeAt(c.tip+c.way*back, -g.Width/2, g.Height-up) }
			a, b := edge(long/2-1, 0), edge(long/2+1, 0)
			tip, root := edge(0, 0), edge(long, 0)
			low := g.At(a.X, -g.Width/2, 0).Sub(g.At(a.X, -g.Width/2, g.Height)) // down the face
			face := cross(b.Sub(a), low)
			plate := cross(geometry.Point3{X: root.X - tip.X, Z: root.Z - tip.Z}, geometry.Point3{Y: 1})
			cos := (face.X*plate.X + face.Y*plate.Y + face.Z*plate.Z) / face.Norm() / plate.Norm()
			want := math.Abs(math.Pi/2-math.Acos(cos)) * 180 / math.Pi
			if got := c.hook.Bevel * 180 / math.Pi; math.Abs(got-want) > 0.1 || got < g.Tilt*180/math.Pi {
				t.Errorf("%s breasthook: sides lean %.2f deg, planes meet at %.2f", c.hook.End, got, want)
			}
		}
	})
}

func cross(a, b geometry.Point3) geometry.Point3 {
	return geometry.Point3{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}

// TestRaised: stock with its whole edge-set made is marked along its curved underside, and
// stands off the tilted plane of its natural sheer by so much, square to that plane; from
// it the book's curve is sawn. A set that is sprung leaves the stock straight.
func TestRaised(t *testing.T) {
	f := build(t, "river", func(d *design.Design) { d.Gunwale.EdgeSetMade = 54 })
	g := &f.Gunwale
	sin, cos := math.Sincos(g.Tilt)
	mid := g.Line.Point(0)
	for _, m := range g.Mortises {
		if m.FromMidship != m.AlongLine {
			t.Errorf("mortise %s at %g and %g mm", m.Rib, m.FromMidship, m.AlongLine)
		}
		p := g.Line.Point(m.Station)
		if off, got := (p.Y-mid.Y)*sin+(p.Z-mid.Z)*cos, g.Raised(m.FromMidship); math.Abs(got-off) > 1e-9 {
			t.Errorf("at mortise %s the stock is raised by %.9f mm, it leaves its plane by %.9f", m.Rib, got, off)
		}
	}
	sprung := build(t, "river", nil).Gunwale
	if g.Raised(2000) <= 0 || sprung.Raised(2000) != 0 || !g.Made() || sprung.Made() {
		t.Errorf("raised by %g mm made and %g mm sprung", g.Raised(2000), sprung.Raised(2000))
	}
}
