package kit

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %g, want %g", what, got, want)
	}
}

// TestVolume: plane geometry of a triangle, and of a round stick: pi r2 long.
func TestVolume(t *testing.T) {
	p := Piece{Thick: 20}
	p.Block([]geometry.Point{{}, {X: 300}, {Y: 100}})
	near(t, "along the grain", p.Long, 300, 1e-9)
	near(t, "across it", p.Wide, 100, 1e-9)
	near(t, "triangle, mm3", p.Volume(), 300*100/2*20, 1e-6)
	stick := Piece{Long: 1000, Wide: 50, Thick: 50, Fill: Round}
	near(t, "round stick, mm3", stick.Volume(), math.Pi*25*25*1000, 1e-6)
}

// TestItems weighs two groups by hand: white ash has 672 kg/m3 (FPL-GTR-282 table
// 5-3b, gravity 0.60), so three boards of a litre weigh 2.016 kg.
func TestItems(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	k := Kit{
		Pieces: []Piece{
			{Group: "boards", Count: 3, Wood: "white ash", Long: 500, Wide: 100, Thick: 20, Fill: 1, At: geometry.Point3{X: 100}},
			{Group: "sticks", Count: 1, Wood: "white ash", Long: 500, Wide: 100, Thick: 20, Fill: 0.5},
		},
		Things: []Thing{{Group: "boards", Key: "bolt", Mass: 2.016, At: geometry.Point3{X: 300}}, {Key: "line", Amount: 9}},
	}
	items, err := k.Items(d)
	if err != nil || len(items) != 2 || items[0].Name != "boards" || items[1].Name != "sticks" {
		t.Fatalf("%+v %v", items, err)
	}
	near(t, "boards and bolts, kg", items[0].Load().Mass, 2*2.016, 1e-9)
	near(t, "their middle, mm", items[0].Load().At.X, 200, 1e-9)
	near(t, "half a litre, kg", items[1].Load().Mass, 0.336, 1e-9)
	k.Pieces[0].Wood = "tin"
	if _, err := k.Items(d); err == nil {
		t.Error("a wood that nobody knows is weighed")
	}
}

// TestClipHooks: whatever the lean of the gunwale, the clip lies along its inner face
// and under its lower one, never in its wood, and its hook reaches under it, but not
// through to the skin outside.
func TestClipHooks(t *testing.T) {
	for _, tilt := range []float64{0, 5, 8, 15, 25} {
		g := frame.Gunwale{Width: 19, Height: 36, Tilt: tilt * math.Pi / 180}
		sin, cos := math.Sincos(g.Tilt)
		// wood is a place in the gunwale: in from its upper inner edge and down.
		wood := func(in, down float64) geometry.Point {
			return geometry.Point{X: in*cos - down*sin, Y: -in*sin - down*cos}
		}
		clip := ClipOutline(g)
		if curve.Area(clip) == 0 {
			t.Fatalf("%g deg: the clip has no area", tilt)
		}
		for in := 0.5; in < g.Width; in++ {
			for down := 0.5; down < g.Height; down++ {
				if curve.Holds(clip, wood(in, down)) {
					t.Fatalf("%g deg: the clip and the gunwale both fill the place %.1f mm in and %.1f mm down", tilt, in, down)
				}
			}
		}
		if !curve.Holds(clip, wood(5, g.Height+1)) {
			t.Errorf("%g deg: nothing hooks under the gunwale", tilt)
		}
		if curve.Holds(clip, wood(g.Width, g.Height+1)) {
			t.Errorf("%g deg: the hook reaches the skin", tilt)
		}
		if !curve.Holds(clip, wood(-5, 5)) {
			t.Errorf("%g deg: no wood stands beside the gunwale", tilt)
		}
		// The bar lies on the clip: it ends at its own face.
		for _, p := range clip {
			if p.Y > 1e-9 {
				t.Errorf("%g deg: the clip rises %.1f mm into the bar", tilt, p.Y)
			}
		}
	}
}

// TestClip makes so many of one clip, and its bolts are so many of one bolt: twice
// as many weigh twice as much. A bolt of 8 mm 100 mm long with its nuts and washers
// holds 5 to 10 cm3 of steel, 7850 kg/m3.
func TestClip(t *testing.T) {
	g := frame.Gunwale{Width: 19, Height: 36, Tilt: 0.14}
	at := geometry.Point3{X: 40, Z: 300}
	c := Clip(g, "frame", "white ash", 4, at)
	if c.Count != 4 || c.Form != Board || c.At != at || c.Fill <= 0 || c.Fill > 1 {
		t.Errorf("%+v", c)
	}
	near(t, "one clip, mm3", c.Volume(), math.Abs(curve.Area(ClipOutline(g)))*ClipThick, 1e-6)
	one, eight := Bolts("frame", 1, "", at), Bolts("frame", 8, "", at)
	near(t, "eight bolts", eight.Mass, 8*one.Mass, 1e-12)
	near(t, "to buy", eight.Amount, 8, 0)
	if one.Mass < 5*7.85e-3 || one.Mass > 10*7.85e-3 {
		t.Errorf("a bolt weighs %.3f kg", one.Mass)
	}
}
