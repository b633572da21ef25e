package frame

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/wood/timber"
)

func build(t *testing.T, name string, change func(*design.Design)) *Frame {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(d)
	}
	if p := d.Check(); p != nil {
		t.Fatalf("%s: %s %s", name, p.Key, p.Text)
	}
	f, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func everyShipped(t *testing.T, check func(t *testing.T, f *Frame)) {
	t.Helper()
	for _, name := range design.ShippedNames() {
		t.Run(name, func(t *testing.T) { check(t, build(t, name, nil)) })
	}
}

// walk follows a half section step by step with plain trigonometry, sharing no
// code with the chain.
func walk(half curve.Chain) (x, y float64) {
	heading := 0.0
	for _, b := range half {
		if b.Radius == 0 {
			x, y = x+b.Length*math.Cos(heading), y+b.Length*math.Sin(heading)
			continue
		}
		x += b.Radius * (math.Sin(heading+b.Sweep) - math.Sin(heading))
		y += b.Radius * (math.Cos(heading) - math.Cos(heading+b.Sweep))
		heading += b.Sweep
	}
	return x, y
}

// TestRibs walks every rib and adds up its blank.
func TestRibs(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		for _, r := range f.Ribs {
			x, y := walk(r.Section.Half)
			if math.Hypot(x-r.Section.HalfBreadth, y-r.Section.Depth) > 1e-6 {
				t.Errorf("rib %s ends on (%.6f, %.6f) mm, want (%.6f, %.6f)", r.Name, x, y, r.Section.HalfBreadth, r.Section.Depth)
			}
			correction, girth := 0.0, 0.0
			for _, b := range r.Section.Half {
				girth += 2 * b.Length
				if b.Radius > 0 {
					// The outer face stretches by 2 % at most, the rest is
					// compression: derived, no published measurement.
					neutral := math.Max(b.Radius, (b.Radius+r.Thickness/2)/1.02)
					correction += 2 * b.Sweep * (neutral - b.Radius)
				}
			}
			if math.Abs(r.Correction-correction) > 1e-9 || math.Abs(r.Length-girth-correction) > 1e-9 {
				t.Errorf("rib %s: length %.6f with correction %.6f mm, want %.6f with %.6f", r.Name, r.Length, r.Correction, girth+correction, correction)
			}
			if got := r.OnBlank(r.Section.Half.Length()); math.Abs(got-r.Length/2) > 1e-9 {
				t.Errorf("rib %s: the shoulder falls %.6f mm from the middle of the blank, want %.6f", r.Name, got, r.Length/2)
			}
			last := 0.0
			for _, m := range r.BendMarks {
				if m <= last || m >= r.Length/2 {
					t.Errorf("rib %s: bend marks %v do not run from middle to shoulder", r.Name, r.BendMarks)
				}
				last = m
			}
		}
	})
}

// TestBendLimits holds the shipped ribs to the limits of the wood they name
// without a strap; the limits are from memory and said to be so.
func TestBendLimits(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		wood, err := timber.Lookup(f.Design.Ribs.Species)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range f.Ribs {
			if r.Tightest < wood.FreeRatio {
				t.Errorf("rib %s bends to %.1f thicknesses, %s takes %.1f without a strap", r.Name, r.Tightest, wood.Name, wood.FreeRatio)
			}
		}
	})
}

// TestMortisesOnTheGunwale measures every mortise's place along the gunwale by
// adding up short chords, which shares nothing with the track's quadrature.
func TestMortisesOnTheGunwale(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		for _, m := range f.Gunwale.Mortises {
			sum, n := 0.0, 4000
			last := f.Gunwale.Line.Point(0)
			for i := 1; i <= n; i++ {
				p := f.Gunwale.Line.Point(m.Station * float64(i) / float64(n))
				sum += p.Sub(last).Norm()
				last = p
			}
			if want := math.Copysign(sum, m.Station); m.Station != 0 && math.Abs(m.AlongLine-want) > 0.001 {
				t.Errorf("mortise %s at %.4f mm along the line, chords give %.4f", m.Rib, m.AlongLine, want)
			}
			if m.Wall*2+m.Width != f.Gunwale.Width || m.Wall < 4.5 {
				t.Errorf("mortise %s leaves walls of %.2f mm; general joinery texts want 4.5 mm", m.Rib, m.Wall)
			}
		}
	})
}

// TestSymmetry mirrors brook and lake about midship.
func TestSymmetry(t *testing.T) {
	for _, name := range []string{"brook", "lake"} {
		f := build(t, name, nil)
		n := len(f.Ribs)
		for i := range f.Ribs {
			a, b := f.Ribs[i], f.Ribs[n-1-i]
			ma, mb := f.Gunwale.Mortises[i], f.Gunwale.Mortises[n-1-i]
			if math.Abs(a.Length-b.Length) > 1e-6 || math.Abs(ma.FromMidship+mb.FromMidship) > 1e-6 || math.Abs(ma.Bevel-mb.Bevel) > 1e-9 {
				t.Errorf("%s: rib %s (%.6f mm at %.6f) is no mirror of %s (%.6f mm at %.6f)", name,
					a.Name, a.Length, ma.FromMidship, b.Name, b.Length, mb.FromMidship)
			}
		}
		for i := range f.Bow.Outline {
			if d := f.Bow.Outline[i].End().Sub(f.Stern.Outline[i].End()).Norm(); d > 1e-6 {
				t.Errorf("%s: the stems differ by %.2e mm", name, d)
			}
		}
		if len(f.RibGroups) != (n+1)/2 {
			t.Errorf("%s: %d groups of ribs for %d ribs, want one a pair", name, len(f.RibGroups), n)
		}
	}
}

// TestGroups puts every rib in exactly one group whose strip is true to the
// tolerance.
func TestGroups(t *testing.T) {
	f := build(t, "river", func(d *design.Design) { d.Ribs.Tolerance = 4 })
	seen := map[string]int{}
	for _, g := range f.RibGroups {
		for _, n := range g.Names {
			seen[n]++
			for _, r := range f.Ribs {
				if r.Name == n && math.Abs(r.Length-g.Rib.Length) >= 4 {
					t.Errorf("rib %s of %.2f mm shares the strip of %s, %.2f mm", n, r.Length, g.Rib.Name, g.Rib.Length)
				}
			}
		}
	}
	for _, r := range f.Ribs {
		if seen[r.Name] != 1 {
			t.Errorf("rib %s is in %d groups", r.Name, seen[r.Name])
		}
	}
	if len(f.RibGroups) >= len(f.Ribs) {
		t.Error("no two ribs share a strip, so grouping was not tested")
	}
}

// TestOutlines checks that every piece that is cut out is closed, joined, runs
// counter-clockwise and does not cross itself grossly (its area is that of its
// flattened outline, below its box).
func TestOutlines(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		check := func(what string, p curve.Path) {
			t.Helper()
			if !p.Closed() || !p.Joined() {
				t.Errorf("%s: outline closed %v, joined %v", what, p.Closed(), p.Joined())
			}
			area, box := curve.Area(p.Flatten(0.01)), p.Bounds()
			if !(area > 0.05*box.W()*box.H()) || area > box.W()*box.H() {
				t.Errorf("%s: area %.0f mm2 in a box of %.0f mm2", what, area, box.W()*box.H())
			}
		}
		check("bow stem", f.Bow.Outline)
		check("stern stem", f.Stern.Outline)
		check("bow breasthook", f.BowHook.Outline)
		check("stern breasthook", f.SternHook.Outline)
		for _, w := range f.Thwarts {
			check(w.Name, w.Outline)
		}
		for _, g := range f.Gauges {
			check("gauge "+g.Names[0], g.Outline)
		}
	})
}

// TestCurvedHeads checks that stems whose heads curve back in come out whole over
// the range of radii, once the horn is as long as the message asks. A skin of
// 0.7 mm lies on a raked head, so level it measures up to 0.05 mm more.
func TestCurvedHeads(t *testing.T) {
	for _, radius := range []float64{500, 700, 900, 1500, 4000} {
		f := build(t, "lake", func(d *design.Design) {
			d.Bow.Rake, d.Bow.ForefootRadius = 0.24, 210
			d.Bow.HeadRadius, d.Bow.HeadTurn, d.Bow.Horn = measure.Length(radius), 0, 26
		})
		if !f.Bow.Outline.Closed() || !f.Bow.Outline.Joined() {
			t.Errorf("head radius %.0f mm: the outline does not close", radius)
		}
		if reach := f.Bow.Outline.Bounds().Max.X + float64(f.Design.Skin.Thickness()); math.Abs(reach-2135) > 0.05 {
			t.Errorf("head radius %.0f mm: the stem reaches %.3f mm, want 2135", radius, reach)
		}
	}
}

// TestStemJoints checks the notches: the shelf ends at the gunwale's end and
// height, and the shoulder is as deep as the keel.
func TestStemJoints(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		h, s := f.Hull.Bow, f.Bow
		if miss := s.Shelf[1].Sub(geometry.Point{X: h.GunwaleX, Y: h.GunwaleZ}).Norm(); miss > 1e-9 {
			t.Errorf("the shelf misses the gunwale's end by %.2e mm", miss)
		}
		if s.Shelf[0].X >= s.Shelf[1].X-10 {
			t.Errorf("the shelf runs from %.1f to %.1f mm: too short to rest on", s.Shelf[0].X, s.Shelf[1].X)
		}
		// Where the foot's underside meets the shoulder the outline steps out by
		// the keel's depth.
		keel := float64(f.Design.Keel.Depth)
		found := false
		for _, seg := range s.Outline {
			l, ok := seg.(curve.Line)
			if ok && math.Abs(l.A.X-s.ToeX) < 5 && math.Abs(l.Length()-keel) < 1e-6 && l.B.Y < l.A.Y {
				found = true
			}
		}
		if !found {
			t.Errorf("no shoulder of the keel's depth, %.1f mm, at the toe", keel)
		}
	})
}

// TestBreasthookFits lays the plate's sides on the gunwales' inner upper edges.
func TestBreasthookFits(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		g := &f.Gunwale
		stretch := math.Hypot(1, f.BowHook.Slope)
		for _, p := range f.BowHook.Outline.Flatten(0.01) {
			if p.X < -float64(f.Design.Breasthook.Length)*stretch+0.01 || p.X > -0.01 || math.Abs(p.Y) < 20 {
				continue // the ends and the hollow
			}
			if p.X > -f.BowHook.Outline.Bounds().W()+float64(f.Design.Breasthook.Hollow)+1 {
				edge := g.EdgeAt(f.Hull.Bow.GunwaleX+p.X/stretch, -g.Width/2, g.Height)
				if math.Abs(math.Abs(p.Y)-edge.Y) > 0.02 {
					t.Errorf("at %.1f mm the plate is %.3f mm wide, the gunwales stand %.3f mm apart", p.X, 2*math.Abs(p.Y), 2*edge.Y)
				}
			}
		}
	})
}

// TestRefusals checks that what cannot be made is named with a cure.
func TestRefusals(t *testing.T) {
	tests := []struct {
		name   string
		change func(*design.Design)
		want   []string
	}{
		{"flare too wide for the last rib", func(d *design.Design) { d.Hull.Sections[1].Flare = 0.5 },
			[]string{"rib A", "station", "flare under"}},
		{"thwart on a mortise", func(d *design.Design) { d.Thwarts[0].At = 125 },
			[]string{"Carrying thwart", "mortise of rib F1", "put it at"}},
		{"scarf on a mortise", func(d *design.Design) { d.Gunwale.Scarfs = append(d.Gunwale.Scarfs, 1010) },
			[]string{"scarf at 1010 mm", "put its middle at"}},
		{"thwart wider than any gap", func(d *design.Design) { d.Ribs.Pitch = 80; d.Thwarts[0].At = 40 },
			[]string{"does not fit between two ribs", "up to 58 mm"}},
		{"thwart on a thwart", func(d *design.Design) { d.Thwarts = append(d.Thwarts, d.Thwarts[0]) },
			[]string{"overlaps", "by 60 mm"}},
		{"scarf on a scarf", func(d *design.Design) { d.Gunwale.Scarfs = append(d.Gunwale.Scarfs, 1073, 1073) },
			[]string{"stagger"}},
		{"stringers too close", func(d *design.Design) { d.Stringers.At = []float64{0.27, 0.28, 0.74} },
			[]string{"stringer 2 lies ", "over stringer 1", "stringers.at"}},
		{"stringer in the keel", func(d *design.Design) { d.Stringers.At = []float64{0.02, 0.5} },
			[]string{"stringer 1 lies ", "over the keel"}},
		{"stringer in the gunwale", func(d *design.Design) { d.Stringers.At = []float64{0.5, 0.99} },
			[]string{"over the gunwale"}},
		{"hourglass", func(d *design.Design) { d.Hull.Spreaders[0].Beam = 900 },
			[]string{"gunwale", "bent hollow between two spreaders"}},
		{"over the middle line", func(d *design.Design) { d.Hull.Spreaders[0].Beam = 50 },
			[]string{"gunwale", "cross the middle line"}},
		{"horn too short for the head", func(d *design.Design) { d.Bow.HeadTurn = 0.95 },
			[]string{"stem head stands -", "give a horn of"}},
		{"siding hardly enough", func(d *design.Design) { d.Bow.Siding = 19; d.Gunwale.Tilt = 0 },
			[]string{"inner edges cross", "more siding (bow.siding)"}},
		{"scarf in the middle third", func(d *design.Design) { d.Gunwale.Scarfs = append(d.Gunwale.Scarfs, 60) },
			[]string{"scarf at 60 mm", "middle third"}},
		{"foot under a rib", func(d *design.Design) { d.Bow.Landing = 300 },
			[]string{"foot reaches", "shorten bow.landing"}},
		{"hardly any ribs", func(d *design.Design) { d.Ribs.Pitch = 400; d.Ribs.FromBow = 1390; d.Ribs.FromStern = 1390 },
			[]string{"ribs fit", "at least 3"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d, err := design.Shipped("brook")
			if err != nil {
				t.Fatal(err)
			}
			tt.change(d)
			_, err = Build(d)
			for _, w := range tt.want {
				if err == nil || !strings.Contains(err.Error(), w) {
					t.Errorf("got %v, want a message with %q", err, w)
				}
			}
		})
	}
}
