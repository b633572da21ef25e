package figure

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water"
	"ribwright/layout"
)

// struck returns the words that a line of the drawing runs through.
func struck(d layout.Drawing) []string {
	var out []string
	for _, t := range d.Texts {
		b := t.Bounds()
		in := geometry.Around(b.Min.Add(geometry.Pt(0.1, 0.1)), b.Max.Sub(geometry.Pt(0.1, 0.1)))
		for _, s := range d.Strokes {
			if t.Words != "" && runsThrough(s.Path.Flatten(0.05), in) {
				out = append(out, t.Words)
				break
			}
		}
	}
	return out
}

// runsThrough reports whether a line has a place in a box, looked for every tenth of
// a mm.
func runsThrough(pts []geometry.Point, b geometry.Box) bool {
	for i := 1; i < len(pts); i++ {
		n := int(math.Ceil(pts[i].Sub(pts[i-1]).Norm()/0.1)) + 1
		for k := range n + 1 {
			if b.Holds(pts[i-1].Lerp(pts[i], float64(k)/float64(n))) {
				return true
			}
		}
	}
	return false
}

// sailed is a shipped boat under a sail of so many m2 with three reefs.
func sailed(t *testing.T, boat string, r design.Rig, area float64) *sail.Fit {
	t.Helper()
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	b := ladenBoat(t, boat)
	s := b.Frame.Design.Sail()
	s.Rig, s.Area, s.Reefs = r, area, 3
	f, err := sail.New(b, s, w)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestSailClear: no line of boat, sail, reefs, leeboard or axes runs through
// words, whatever the boat, the rig and the length of the leeboard.
func TestSailClear(t *testing.T) {
	for _, boat := range design.ShippedNames() {
		for _, r := range design.Rigs() {
			for _, area := range []float64{0.5, 2.5, 4.5} {
				for _, words := range struck(Sail(sailed(t, boat, r, area))) {
					t.Errorf("%s, %v of %g m2: %q is struck through", boat, r, area, words)
				}
			}
		}
	}
}

// TestPairSketch: the saddles fill the height from the gunwales' upper faces to the
// beam, four of them, and no words are struck through.
func TestPairSketch(t *testing.T) {
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	brook := ladenBoat(t, "brook")
	two, err := pair.New(brook, brook, brook.Frame.Design.Pair(), w)
	if err != nil {
		t.Fatal(err)
	}
	close := brook.Frame.Design.Pair()
	close.Spacing = brook.Frame.Design.Hull.Beam + 120
	near, err := pair.New(brook, brook, close, w)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []*pair.Craft{two, unlike(t), near} {
		d := PairSketch(c, 240)
		k := 240 / c.Beams.Long
		var under []float64
		for _, s := range d.Strokes {
			// Closed outlines narrower than a hull that end at the beam's lower face.
			b := s.Path.Bounds()
			if s.Pen == layout.Cut && b.W() < 150*k && math.Abs(b.Max.Y-c.BeamsLie()*k) < 1e-6 {
				under = append(under, (b.Min.X+b.Max.X)/2)
			}
		}
		if len(under) != 4 {
			t.Fatalf("%d saddles under the beam", len(under))
		}
		for i, side := range []float64{-1, -1, 1, 1} {
			x := (under[i] - 120) / k
			if x*side <= 0 {
				t.Errorf("saddle %d stands at %.0f mm from the middle", i, x)
			}
		}
		if words := struck(d); len(words) > 0 {
			t.Errorf("%s: struck through: %s", d.Title, strings.Join(words, "; "))
		}
	}
}
