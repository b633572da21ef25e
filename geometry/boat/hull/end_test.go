package hull

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// ended is brook with other ends.
func ended(t *testing.T, rake, forefoot, turn, radius float64) (*design.Design, *Hull, error) {
	t.Helper()
	d := shipped(t, "brook")
	d.Bow.Rake, d.Bow.HeadTurn = measure.Angle(rake*math.Pi/180), measure.Angle(turn*math.Pi/180)
	d.Bow.ForefootRadius, d.Bow.HeadRadius = measure.Length(forefoot), measure.Length(radius)
	h, err := New(d)
	return d, h, err
}

// TestProfiles walks up plumb, raked, round and recurved ends in small steps: the edge
// leaves along the keel, turns without a knuckle and nowhere more than its radii allow,
// always the same way, and stands at its top as the keys say. A smooth edge turns by its
// length over its least radius at the most; all of it is read off places, not off arcs.
func TestProfiles(t *testing.T) {
	for _, c := range []struct {
		name                         string
		rake, forefoot, turn, radius float64
	}{
		{"plumb", 0, 200, 0, 0}, {"raked", 15, 190, 0, 0}, {"round", 25, 280, 25, 0}, {"recurved", 24, 280, 40, 0},
		{"rolled back", 15, 220, 50, 90}, {"tumbling home", -5, 230, 15, 0}, {"curled", 40, 250, 90, 0},
	} {
		d, h, err := ended(t, c.rake, c.forefoot, c.turn, c.radius)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		e := h.Bow
		const step = 0.5
		most := step / math.Min(c.forefoot, e.Tightest())
		far, was := 0.0, e.Heading
		for s := 0.0; s+step <= e.Outer.Length(); s += step {
			a, _ := e.Point(s)
			b, _ := e.Point(s + step)
			run := b.Sub(a)
			now := math.Atan2(run.Y, run.X)
			if now < was-1e-9 || now-was > most+1e-9 {
				t.Fatalf("%s: after %.1f mm it turns by %.5f, accepted 0 to %.5f", c.name, s, now-was, most)
			}
			was, far = now, math.Max(far, math.Max(a.X, b.X))
		}
		if want := float64(d.Hull.Length) / 2; math.Abs(far-want) > 0.01 {
			t.Errorf("%s: it reaches %.3f mm, want %.1f", c.name, far, want)
		}
		top, _ := e.Point(e.Outer.Length())
		under, _ := e.Point(e.Outer.Length() - step)
		lean, want := math.Atan2(under.X-top.X, top.Y-under.Y), (c.turn-c.rake)*math.Pi/180
		if math.Abs(lean-want) > most/2+1e-9 {
			t.Errorf("%s: the head leans %.5f inboard, want %.5f", c.name, lean, want)
		}
		if math.Abs(top.Y-e.TopZ) > 1e-6 {
			t.Errorf("%s: the head ends %.6f mm up, want %.6f", c.name, top.Y, e.TopZ)
		}
	}
}

// TestHeadRadius: one even curve from the forefoot up rises by its radius times the
// difference of the cosines of its headings; a given radius leaves the rest straight.
func TestHeadRadius(t *testing.T) {
	const deg = math.Pi / 180
	_, h, err := ended(t, 20, 260, 35, 0)
	if err != nil {
		t.Fatal(err)
	}
	over := func(e End) float64 { // the forefoot's upper end to the top
		return e.TopZ - e.Toe.Y - 260*(math.Cos(e.Heading)-math.Cos(70*deg))
	}
	want := over(h.Bow) / (math.Cos(70*deg) - math.Cos(105*deg))
	if got := h.Bow.Outer[1].Radius; math.Abs(got-want) > 1e-6 {
		t.Errorf("an even head has a radius of %.6f mm, want %.6f", got, want)
	}
	_, h, err = ended(t, 20, 260, 35, 100)
	if err != nil {
		t.Fatal(err)
	}
	straight := (over(h.Bow) - 100*(math.Cos(70*deg)-math.Cos(105*deg))) / math.Sin(70*deg)
	if got := h.Bow.Outer[1]; got.Radius != 0 || math.Abs(got.Length-straight) > 1e-6 {
		t.Errorf("under a head that rolls back runs %+v, want %.3f mm straight", got, straight)
	}
	if got := h.Bow.Tightest(); got != 100 {
		t.Errorf("the tightest bend is %.3f mm, want the head's 100", got)
	}
	// A hair less than one even curve serves too, though not on a toe that lies farther
	// out, where the forefoot leaves less height.
	_, h, err = ended(t, 20, 260, 35, want-0.01)
	if err != nil {
		t.Fatal(err)
	}
	straight = (over(h.Bow) - (want-0.01)*(math.Cos(70*deg)-math.Cos(105*deg))) / math.Sin(70*deg)
	if got := h.Bow.Outer[1]; got.Radius != 0 || got.Length <= 0 || math.Abs(got.Length-straight) > 1e-6 {
		t.Errorf("under a head that is nearly one curve runs %+v, want %.4f mm straight", got, straight)
	}
}

// TestHeadRefusals: keys that contradict each other are refused in one line with a cure,
// and the cure is one.
func TestHeadRefusals(t *testing.T) {
	_, _, err := ended(t, 20, 260, 35, 700)
	if err == nil || !strings.Contains(err.Error(), "bow: a head that turns by 35 deg on a radius of 700 mm needs ") {
		t.Fatalf("got %v, want the height that the turn needs", err)
	}
	if _, _, err := ended(t, 20, 260, 35, 300); err != nil {
		t.Errorf("a radius under the one accepted: %v", err)
	}
	d, h, err := ended(t, 20, 260, 70, 0)
	if err != nil {
		t.Fatal(err)
	}
	d.Bow.Moulded = measure.Length(h.Bow.Tightest()) - d.Skin.Thickness() + 0.01
	_, err = New(d)
	if err == nil || !strings.Contains(err.Error(), "no inner edge") || strings.Contains(err.Error(), "\n") {
		t.Errorf("got %v, want a head too tight for its wood", err)
	}
}
