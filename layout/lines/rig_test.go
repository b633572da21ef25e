package lines

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water/float"
	"ribwright/layout"
)

// under returns lake with a sail of 3 m2, floating so deep.
func under(t *testing.T, rig design.Rig, deep float64) Boat {
	t.Helper()
	f := frametest.Shipped(t, "lake", func(*design.Design) {})
	b, err := aboard.New(f, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	s := f.Design.Sail()
	s.Rig, s.Area = rig, 3
	fit, err := sail.Rigged(b, s, float.Hydrostatics{Plane: float.Plane{Rise: deep}, LWL: f.Hull.Length})
	if err != nil {
		t.Fatal(err)
	}
	return Boat{Boat: b, Sail: fit}
}

// inside is the area within the longest closed line among strokes that the boat alone does
// not have, mm2 of the boat.
func inside(with, without layout.Drawing) (area float64, box geometry.Box) {
	had := map[geometry.Point]bool{}
	for _, s := range without.Strokes {
		had[s.Path[0].At(0)] = true
	}
	box = geometry.EmptyBox()
	for _, s := range with.Strokes {
		pts := s.Path.Flatten(0.01)
		if had[s.Path[0].At(0)] || len(pts) < 4 {
			continue
		}
		sum := 0.0
		for i, p := range pts {
			q := pts[(i+1)%len(pts)]
			sum += p.X*q.Y - q.X*p.Y
		}
		if a := math.Abs(sum) / 2 / (Scale * Scale); a > area {
			area, box = a, s.Path.Bounds()
		}
	}
	return area, box
}

// TestSailSeen: seen square on, a sail shows the area that it has, which is plane geometry;
// seen along its cloth it shows none. It stands over the gunwales at its mast.
func TestSailSeen(t *testing.T) {
	for _, rig := range design.Rigs() {
		b := under(t, rig, 100)
		bare := b
		bare.Sail = nil
		turns := map[float64]float64{math.Pi / 2: 3e6, 0: 0}
		if rig == design.Vee { // stands across the boat
			turns = map[float64]float64{0: 3e6, math.Pi / 2: 0}
		}
		for turn, want := range turns {
			e := Eye{Turn: turn}
			got, box := inside(b.Draw(e)[0], bare.Draw(e)[0])
			if want == 0 {
				if got > 0.05*3e6 { // the leeboard stands so, too
					t.Errorf("%v, turned %.1f: the sail shows %.0f mm2 along its cloth", rig, turn, got)
				}
				continue
			}
			if math.Abs(got-want) > 0.002*want {
				t.Errorf("%v, turned %.1f: the sail shows %.0f mm2, want %.0f", rig, turn, got, want)
			}
			if low := box.Min.Y / Scale; low < b.Frame.Hull.Depth {
				t.Errorf("%v: the sail hangs to %.0f mm over the baseline, under the gunwales", rig, low)
			}
		}
		if drawn, alone := len(b.Draw(Eye{})[1].Strokes), len(bare.Draw(Eye{})[1].Strokes); drawn != alone {
			t.Errorf("%v: the sheer plan has %d lines under sail, %d without", rig, drawn, alone)
		}
	}
}

// TestSailHides: the boat's far side does not show through the cloth.
func TestSailHides(t *testing.T) {
	b := under(t, design.Lug, 100)
	length := func(b Boat) (sum float64) {
		for _, s := range b.Draw(Eye{Turn: math.Pi / 2, Rise: 1.2, Hidden: true})[0].Strokes {
			if s.Pen == layout.Tick {
				sum += s.Path.Length()
			}
		}
		return sum
	}
	bare := b
	bare.Sail = nil
	if with, without := length(b), length(bare); with > 0.95*without {
		t.Errorf("%.0f mm of thin lines show under sail, %.0f without", with, without)
	}
}
