package pattern

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// What a lashing takes up, and what a spreader may be off, as the patterns letter it.
var (
	joinedWords = map[measure.System]string{measure.Metric: "\u00b12 mm", measure.Imperial: "\u00b11/16 in"}
	heldWords   = map[measure.System]string{measure.Metric: "\u00b13 mm", measure.Imperial: "\u00b11/8 in"}
)

// TestLanesMayBeOff: the stick says by how much its marks may be off, once for all of them,
// and every lane has its figures.
func TestLanesMayBeOff(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		d := Battens(f, units)
		figures := 0
		for _, w := range d.Texts {
			fields := strings.Fields(w.Words)
			if len(fields) < 4 || fields[0] != "keel" && fields[0][0] != 'S' {
				continue
			}
			figures++
		}
		if !strings.Contains(d.Make, "up to its edge "+joinedWords[units]) {
			t.Errorf("%q does not say by how much a mark may be off", d.Make)
		}
		if sticks := len(f.Stringers) + 1; figures < 4*sticks {
			t.Errorf("%d figures on %d lanes", figures, sticks)
		}
	})
}

// TestStemMayBeOff: every cross of a stem has its tolerance beside it, on the wood and
// off the waterline, and so has the shelf.
func TestStemMayBeOff(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		r := bent(t, f)
		for end, s := range []frame.Stem{f.Stern, f.Bow} {
			d := Stem(r, end, "stem", "Stem", "make 1", units)
			if !strings.Contains(words(d), "gunwales rest | here "+joinedWords[units]) {
				t.Errorf("the %s shelf does not say by how much it may be off", s.End)
			}
			for i, l := range s.Landings {
				found := false
				for _, w := range d.Texts {
					b := w.Bounds()
					if w.Words != joinedWords[units] || b.Center().Sub(l).Norm() > 14 {
						continue
					}
					found = true
					for _, corner := range []geometry.Point{b.Min, b.Max, {X: b.Min.X, Y: b.Max.Y}, {X: b.Max.X, Y: b.Min.Y}} {
						if !inside(corner, s.Outline) {
							t.Errorf("%s stem, S%d: %q reaches off the wood", s.End, i+1, w.Words)
						}
					}
					if w.At.Y < s.Waterline && w.At.Y+w.Height > s.Waterline {
						t.Errorf("%s stem, S%d: %q lies on the waterline", s.End, i+1, w.Words)
					}
				}
				if !found {
					t.Errorf("%s stem, S%d does not say by how much it may be off", s.End, i+1)
				}
			}
		}
	})
}

// TestBesideCross: words stand under a cross whose arms are 3 mm long, or over it where
// the waterline would run through them.
func TestBesideCross(t *testing.T) {
	for _, waterline := range []float64{50, 90, 94, 96, 99, 100, 101, 110} {
		y := besideCross(100, waterline)
		if y+small > 97 && y < 103 {
			t.Errorf("waterline %g: the words lie on the cross, at %.1f", waterline, y)
		}
		if waterline > y && waterline < y+small {
			t.Errorf("the waterline at %g runs through the words at %.1f", waterline, y)
		}
		if math.Abs(y-100) > 8 {
			t.Errorf("waterline %g: the words stand far off, at %.1f", waterline, y)
		}
	}
}

// TestSpreadersMayBeOff: where a spreader's beam stands beside its notch, and in the
// shape to hold, stands by how much it may be off.
func TestSpreadersMayBeOff(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		b, found := bent(t, f), 0
		for _, w := range Mortises(b, units).Texts {
			if !strings.HasPrefix(w.Words, "middle to middle ") {
				continue
			}
			if found++; !strings.HasSuffix(w.Words, " "+heldWords[units]) {
				t.Errorf("%q does not say by how much it may be off", w.Words)
			}
		}
		want := 0
		for _, s := range b.Spread.Spreaders {
			if !halved(f) || s.At >= 0 {
				want++
			}
		}
		if found != want {
			t.Errorf("%d beams stand on the strip, of %d spreaders", found, want)
		}
		if said := strings.Join(shape(b, units), " "); !strings.Contains(said, "within "+strings.TrimPrefix(heldWords[units], "\u00b1")) {
			t.Errorf("the shape to hold does not say by how much it may be off: %s", said)
		}
	})
}

// TestOddLanes: no lettering of keel and stringers lies on other lettering where ribs
// stand close or far, and where a boat has one stringer.
func TestOddLanes(t *testing.T) {
	apart := func(pitch measure.Length) func(*design.Design) {
		return func(d *design.Design) {
			d.Ribs.Pitch, d.Thwarts, d.Gunwale.Scarfs = pitch, nil, nil
			d.Seats, d.Crew = nil, nil // close ribs leave no room for hangers
			d.Bow.Landing = 60         // clear of the last rib wherever it comes
			if d.Stern != nil {
				d.Stern.Landing = 60
			}
		}
	}
	for _, change := range []func(*design.Design){
		apart(61), apart(68), apart(420),
		func(d *design.Design) { d.Stringers.At = []float64{0.5} },
	} {
		for _, name := range design.ShippedNames() {
			f := frametest.Shipped(t, name, change)
			for units := range joinedWords {
				for _, d := range []layout.Drawing{Battens(f, units), Stem(bent(t, f), 1, "stem", "Stem", "make 1", units)} {
					for i, a := range d.Texts {
						for _, b := range d.Texts[:i] {
							if overlap(a, b) {
								t.Errorf("%s, %v, pitch %.0f mm: %q lies on %q", name, units, float64(f.Design.Ribs.Pitch), a.Words, b.Words)
							}
						}
					}
				}
			}
		}
	}
}
