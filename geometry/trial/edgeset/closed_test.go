package edgeset

import (
	"math"
	"testing"
)

// twoChords are straight, level chords of 4 m, 300 mm apart, on stiff ribs every 100 mm
// from end to end, with a set from 900 mm on at both ends.
func twoChords(bend, keel float64) Model {
	const curve = 5e-5
	m := Model{
		Gunwales: Chord{-2000, 2000, func(float64) float64 { return 300 }, bend, 1e12},
		Keel:     Chord{-2000, 2000, func(float64) float64 { return 0 }, keel, 1e12},
		Sets:     [2]Set{{900, curve}, {900, curve}}, Level: 1000,
	}
	for x := -1990.0; x < 2000; x += 20 {
		m.Posts = append(m.Posts, Post{x, 1e9, 1e9})
	}
	return m
}

func rest(t *testing.T, m Model, h Held) *Rest {
	t.Helper()
	r, err := m.Settle(h)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.6f, want %.6f within %g", what, got, want, within)
	}
}

// TestLooseFeet: without thrust the chords only bend, and together they carry no moment:
// E I (w” + k) + E Ik w” = 0, so that w” is the share E I/(E I + E Ik) of -k over the
// set. Beam theory: a beam bent evenly over a tip of length a sags k a²/2.
func TestLooseFeet(t *testing.T) {
	for _, keel := range []float64{1e8, 2.4e9} {
		r := rest(t, twoChords(2.4e9, keel), Held{Ends: true})
		share := 2.4e9 / (2.4e9 + keel)
		want := -share * 5e-5 * 1100 * 1100 / 2
		near(t, "sheer", r.Sheer[1], want, 0.02)
		near(t, "rocker", r.Rocker[1], want, 0.02)
		near(t, "thrust", r.Thrust, 0, 1e-3)
		near(t, "depth", r.Depth, 0, 1e-3)
		// Where the set begins the keel is bent by up to a fifth more than over it.
		if m := keel * share * 5e-5; r.Keel < m || r.Keel > 1.2*m {
			t.Errorf("the keel bears %.0f N mm, want %.0f to a fifth more", r.Keel, m)
		}
	}
}

// TestJoinedFeet: chords that do not stretch keep the slope between their ends, so w”
// sums to nought over the boat: w” = share (k a/l - k over the set). The thrust times the
// depth balances the moments: N d = E I (w” + k) + E Ik w” = E I k a/l.
func TestJoinedFeet(t *testing.T) {
	const l, a, k = 2000.0, 1100.0, 5e-5
	for _, keel := range []float64{1e8, 2.4e9} {
		r := rest(t, twoChords(2.4e9, keel), Held{Feet: true, Ends: true})
		share := 2.4e9 / (2.4e9 + keel)
		want := share * k * (a/l*l*l/2 - a*a/2)
		near(t, "sheer", r.Sheer[1], want, 0.02)
		near(t, "rocker", r.Rocker[0], want, 0.02)
		near(t, "thrust", r.Thrust, 2.4e9*k*a/l/300, 0.01)
	}
}

// TestSetAllAlong: a set of one curvature from midship to both ends that stiff joined
// stems hold cannot relax at all: nothing moves and the ring carries E I k.
func TestSetAllAlong(t *testing.T) {
	m := twoChords(2.4e9, 1e8)
	m.Sets = [2]Set{{0, 5e-5}, {0, 5e-5}}
	r := rest(t, m, Held{Feet: true, Ends: true})
	near(t, "change", r.Worst(), 0, 1e-3)
	near(t, "thrust", r.Thrust, 2.4e9*5e-5/300, 0.01)
}

// TestGiveOfChords: a chord of stretch S gives N l/S over the half length l, so that the
// joined stems turn by 2 N l/(S d), d their height: d times the sum of w” is -2 N l/S.
// With (E I + E Ik) w” = N d - E I k over the set follows N.
func TestGiveOfChords(t *testing.T) {
	const l, a, k, d, ei, eik, s = 2000.0, 1100.0, 5e-5, 300.0, 2.4e9, 1e8, 1e5
	m := twoChords(ei, eik)
	m.Gunwales.Stretch, m.Keel.Stretch = s, s
	n := ei / (ei + eik) * k * a / (d*l/(ei+eik) + 2*l/(s*d))
	near(t, "thrust", rest(t, m, Held{Feet: true, Ends: true}).Thrust, n, 0.01)
}

// TestTurningEnds: with ends that turn and no ribs at all the gunwales are a beam held at
// its two ends only: it straightens, so that its middle rises over the keel by what its
// ends had risen, and nothing else moves.
func TestTurningEnds(t *testing.T) {
	m := twoChords(2.4e9, 1e8)
	m.Posts = nil
	r := rest(t, m, Held{Feet: true})
	near(t, "sheer", r.Sheer[0], -5e-5*1100*1100/2, 1e-3)
	near(t, "rocker", r.Rocker[0], 0, 1e-3)
	near(t, "depth", r.Depth, 5e-5*1100*1100/2, 1e-3)
	near(t, "thrust", r.Thrust, 0, 1e-6)
}

// TestLinear: changes add up over the sets of both ends, double with them, and stay when
// all wood is twice as stiff, forces doubling; no set moves nothing.
func TestLinear(t *testing.T) {
	base := twoChords(2.4e9, 1e8)
	base.Gunwales.Height = func(x float64) float64 { return 300 + x*x/5e4 + x/200 }
	base.Keel.Height = func(x float64) float64 { return math.Max(0, math.Abs(x)-900) * 0.03 }
	for i := range base.Posts {
		base.Posts[i].Free = 3
	}
	with := func(stern, bow, stiff float64) *Rest {
		m := base
		m.Sets[0].Curve, m.Sets[1].Curve = stern, bow
		m.Gunwales.Bend, m.Gunwales.Stretch, m.Keel.Bend, m.Keel.Stretch = stiff*2.4e9, stiff*1e7, stiff*1e8, stiff*1e7
		m.Posts = nil
		for _, p := range base.Posts {
			m.Posts = append(m.Posts, Post{p.At, stiff * p.Free, 0})
		}
		return rest(t, m, Held{Feet: true})
	}
	one, other, both, twice, stiff := with(4e-5, 0, 1), with(0, 6e-5, 1), with(4e-5, 6e-5, 1), with(8e-5, 12e-5, 1), with(4e-5, 6e-5, 2)
	for i := range both.Sheer {
		near(t, "sheer of both ends", both.Sheer[i], one.Sheer[i]+other.Sheer[i], 1e-6)
		near(t, "rocker of both ends", both.Rocker[i], one.Rocker[i]+other.Rocker[i], 1e-6)
		near(t, "sheer of twice the set", twice.Sheer[i], 2*both.Sheer[i], 1e-6)
		near(t, "sheer of stiffer wood", stiff.Sheer[i], both.Sheer[i], 1e-6)
		near(t, "rocker of stiffer wood", stiff.Rocker[i], both.Rocker[i], 1e-6)
	}
	near(t, "thrust of stiffer wood", stiff.Thrust, 2*both.Thrust, 1e-6)
	near(t, "pull of stiffer wood", stiff.Pull, 2*both.Pull, 1e-6)
	if r := with(0, 0, 1); r.Worst() != 0 || r.Thrust != 0 || r.Pull != 0 || r.Keel != 0 {
		t.Errorf("no set moves something: %+v", r)
	}
}

// TestRefuses frames that are none.
func TestRefuses(t *testing.T) {
	for name, spoil := range map[string]func(*Model){
		"no stiffness":  func(m *Model) { m.Keel.Bend = 0 },
		"no number":     func(m *Model) { m.Gunwales.Stretch = math.NaN() },
		"one side only": func(m *Model) { m.Keel.From = 10 },
		"post outside":  func(m *Model) { m.Posts[0].At = -2100 },
		"bad post":      func(m *Model) { m.Posts[0].Held = math.Inf(1) },
	} {
		m := twoChords(2.4e9, 1e8)
		spoil(&m)
		if _, err := m.Settle(Likely); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
