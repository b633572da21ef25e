package frame_test

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// reshaped is the frame off by so much at each rib.
func reshaped(t *testing.T, f *frame.Frame, off []frame.Off, ends frame.Ends) *frame.Frame {
	t.Helper()
	s, err := f.Sections(off)
	if err != nil {
		t.Fatal(err)
	}
	out, err := frame.Reshaped(f, s, ends)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// rest floats a frame with its people and gear in fresh water.
func rest(t *testing.T, f *frame.Frame) float.Hydrostatics {
	t.Helper()
	b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	p, _, err := b.Hull.Settle(b.Load(), 1000)
	if err != nil {
		t.Fatal(err)
	}
	return b.Hull.Upright(p, b.Load(), 1000)
}

// TestReshapedAsDrawn: nothing off gives the boat of the drawing, to the last bit.
func TestReshapedAsDrawn(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		if got, want := rest(t, reshaped(t, f, make([]frame.Off, len(f.Ribs)), frame.Ends{})), rest(t, f); got != want {
			t.Errorf("%s as drawn floats at\n%+v, want\n%+v", name, got, want)
		}
	}
}

// TestReshapedUp: a boat all of which stands 10 mm higher is the same boat: it floats
// with the same draft, trim and GM and holds as much.
func TestReshapedUp(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		off := make([]frame.Off, len(f.Ribs))
		for i := range off {
			off[i].Keel = 10
		}
		got, want := rest(t, reshaped(t, f, off, frame.Ends{Stern: 10, Bow: 10})), rest(t, f)
		for _, c := range []struct {
			what      string
			got, want float64
		}{
			{"kg", got.Displacement, want.Displacement}, {"draft", got.Draft, want.Draft}, {"GM", got.GM, want.GM},
			{"trim", got.Trim, want.Trim}, {"freeboard", got.Freeboard.Least, want.Freeboard.Least}, {"KB", got.KB, want.KB + 10}, {"LCB", got.LCB, want.LCB},
		} {
			if math.Abs(c.got-c.want) > 1e-5 {
				t.Errorf("%s raised: %s %.9f, want %.9f", name, c.what, c.got, c.want)
			}
		}
	}
}

// TestReshapedAsDesigned: a boat that comes out 10 mm wider between all its spreaders
// floats as one designed so. The gunwale of such a design is another batten, and its
// sheer rises by a millimeter: GM agrees within 1 mm and volume within 1 part in 1,000,
// of changes of some 10 mm and 15 parts.
func TestReshapedAsDesigned(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		wide := frametest.Shipped(t, name, func(d *design.Design) {
			d.Hull.Beam += 10
			for i := range d.Hull.Spreaders {
				d.Hull.Spreaders[i].Beam += 10
			}
		})
		off := make([]frame.Off, len(f.Ribs))
		for i, r := range f.Ribs {
			w := wide.Ribs[i].Section
			off[i] = frame.Off{HalfBreadth: w.HalfBreadth - r.Section.HalfBreadth, Depth: w.Depth - r.Section.Depth, Keel: w.KeelZ - r.Section.KeelZ}
		}
		was, got, want := rest(t, f), rest(t, reshaped(t, f, off, frame.Ends{})), rest(t, wide)
		level := func(f *frame.Frame) float64 {
			b, err := aboard.New(f, nil, nil)
			if err != nil {
				t.Fatal(err)
			}
			return b.Hull.Immerse(float.Level(float64(f.Design.Hull.Waterline))).Volume
		}
		if more := want.GM - was.GM; more < 4 || math.Abs(got.GM-want.GM) > 1 {
			t.Errorf("%s 10 mm wider: GM %.2f mm, designed so %.2f (%.2f as it was)", name, got.GM, want.GM, was.GM)
		}
		v, designed, before := level(reshaped(t, f, off, frame.Ends{})), level(wide), level(f)
		if designed/before < 1.008 || math.Abs(v/designed-1) > 1e-3 {
			t.Errorf("%s 10 mm wider: volume %.5f of one designed so, which is %.4f of what it was", name, v/designed, designed/before)
		}
	}
}

// TestReshapedBySteps: a rib that came out as a chain of many short arcs makes the boat
// of the arcs that it follows.
func TestReshapedBySteps(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	var many []hull.Section
	for _, r := range f.Ribs {
		s := r.Section
		s.Half = nil
		for _, b := range r.Section.Half {
			const steps = 40
			for range steps {
				s.Half = append(s.Half, curve.Bend{Radius: b.Radius, Sweep: b.Sweep / steps, Length: b.Length / steps})
			}
		}
		many = append(many, s)
	}
	out, err := frame.Reshaped(f, many, frame.Ends{})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := rest(t, out), rest(t, f); math.Abs(got.GM-want.GM) > 1e-6 || math.Abs(got.Displacement-want.Displacement) > 1e-6 {
		t.Errorf("in steps: GM %.9f mm at %.6f kg, want %.9f at %.6f", got.GM, got.Displacement, want.GM, want.Displacement)
	}
}

// TestReshapedThroughRibs: gunwale, keel and stringers go through every rib as it came
// out, on the trestles with the gunwales as drawn, and end where the stems stand.
func TestReshapedThroughRibs(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	off := make([]frame.Off, len(f.Ribs))
	for i := range off {
		off[i] = frame.Off{HalfBreadth: float64(i%3) * 2, Depth: float64(i%4) - 1}
		off[i].Keel = -off[i].Depth
	}
	out := reshaped(t, f, off, frame.Ends{Bow: 4, Stern: -3})
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 1e-8 {
			t.Errorf("%s at %.9f, want %.9f", what, got, want)
		}
	}
	half := float64(f.Design.Ribs.Thickness+f.Design.Stringers.Depth) / 2
	for i, r := range out.Ribs {
		was := f.Gunwale.Line.Point(r.Station)
		now := out.Gunwale.Line.Point(r.Station)
		near("gunwale, across", now.Y, was.Y+off[i].HalfBreadth)
		near("gunwale, height", now.Z, was.Z)
		keel, _ := out.Hull.KeelZ(r.Station)
		drawn, _ := f.Hull.KeelZ(r.Station)
		near("keel", keel, drawn-off[i].Depth)
		near("keel's stick", out.Keel.Line.Point(r.Station).Z, f.Keel.Line.Point(r.Station).Z-off[i].Depth)
		for _, s := range out.Stringers {
			drawn := f.Ribs[i]
			share := drawn.Stringers[s.Number-1] / drawn.Section.Half.Length()
			p := r.Face(share*r.Section.Half.Length(), half)
			near("stringer, across", s.Line.Point(r.Station).Y, p.X)
			near("stringer, height", s.Line.Point(r.Station).Z, p.Y)
		}
	}
	aft, fore := out.Gunwale.Line.Ends()
	near("gunwale at the bow", out.Gunwale.Line.Point(fore).Z, f.Gunwale.Line.Point(fore).Z+4)
	near("gunwale at the stern", out.Gunwale.Line.Point(aft).Z, f.Gunwale.Line.Point(aft).Z-3)
	toe, _ := out.Hull.KeelZ(out.Hull.Bow.Toe.X)
	near("keel at the bow", toe, out.Hull.Bow.Toe.Y)
	near("bow", out.Hull.Bow.Toe.Y, f.Hull.Bow.Toe.Y+4)
	near("landing", out.Bow.Landings[0].Y, f.Bow.Landings[0].Y+4)
	if f.Bow.Landings[0] == out.Bow.Landings[0] || f.Ribs[1].Section.HalfBreadth == out.Ribs[1].Section.HalfBreadth {
		t.Error("the frame of the drawing has changed")
	}
}

// TestReshapedRefuses names what does not go.
func TestReshapedRefuses(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	if _, err := f.Sections(make([]frame.Off, 2)); err == nil || !strings.Contains(err.Error(), "2 ribs are measured") {
		t.Errorf("too few ribs: %v", err)
	}
	off := make([]frame.Off, len(f.Ribs))
	off[3].HalfBreadth = -400
	if _, err := f.Sections(off); err == nil || !strings.Contains(err.Error(), "rib "+f.Ribs[3].Name) {
		t.Errorf("a rib of no width: %v", err)
	}
	if _, err := frame.Reshaped(f, nil, frame.Ends{}); err == nil {
		t.Error("no sections are taken")
	}
	s, err := f.Sections(make([]frame.Off, len(f.Ribs)))
	if err != nil {
		t.Fatal(err)
	}
	s[2].Station = s[3].Station
	if _, err := frame.Reshaped(f, s, frame.Ends{}); err == nil {
		t.Error("two ribs on one place are taken")
	}
}
