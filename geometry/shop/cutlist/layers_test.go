package cutlist

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/kit"
)

// TestLayersMakeThePiece: the layers and staves of a piece hold its whole wood: no
// less across or in thickness than the finished piece, joints to plane besides, and
// together as much as stays in it.
func TestLayersMakeThePiece(t *testing.T) {
	for _, p := range []kit.Piece{
		{Name: "thick board", Form: kit.Board, Count: 1, Wood: "white ash", Long: 400, Wide: 130, Thick: 38, Fill: 0.9},
		{Name: "wide board", Form: kit.Board, Count: 1, Wood: "white ash", Long: 700, Wide: 600, Thick: 18, Fill: 0.8},
		{Name: "plain board", Form: kit.Board, Count: 1, Wood: "white ash", Long: 700, Wide: 100, Thick: 18, Fill: 1},
		{Name: "mast", Form: kit.Spar, Count: 1, Wood: "white ash", Long: 3000, Wide: 62, Thick: 62, Fill: 0.6},
		{Name: "beam", Form: kit.Beam, Count: 1, Wood: "white ash", Long: 2500, Wide: 110, Thick: 70, Fill: 1},
	} {
		all := layers(p, "X1", p.Name)
		net, wide, thick := 0.0, 0.0, 0.0
		for _, s := range all {
			net += s.Net
			wide += s.Width
			thick += s.Thickness
			if s.Length <= p.Long {
				t.Errorf("%s: %.0f mm long, the piece is %.0f", p.Name, s.Length, p.Long)
			}
		}
		if math.Abs(net-p.Volume()) > 1e-6 {
			t.Errorf("%s: %.0f mm3 in its layers, the piece has %.0f", p.Name, net, p.Volume())
		}
		switch n := float64(len(all)); {
		case all[0].Edge: // staves side by side: every joint is planed
			if wide <= p.Wide || thick != n*p.Thick {
				t.Errorf("%s: staves of %.1f mm together for %.1f, nothing is left to plane", p.Name, wide, p.Wide)
			}
		default:
			if math.Abs(thick-p.Thick) > 1e-9 || wide != n*p.Wide {
				t.Errorf("%s: layers of %.1f mm together for %.1f", p.Name, thick, p.Thick)
			}
		}
	}
}

// TestRoomForTheSaw: a part that is sawn to an outline has wood all round it, the
// same at both ends, so that a saw can follow the line.
func TestRoomForTheSaw(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	const kerf = 3.0 // mm: a common saw cuts as wide
	sticks := map[string]Stick{}
	for _, s := range Heat(nil).Sticks(f) {
		sticks[s.Part] = s
	}
	for _, b := range []frame.Breasthook{f.BowHook, f.SternHook} {
		box, s := b.Outline.Bounds(), sticks[b.End+" breasthook"]
		long, wide := math.Max(box.W(), box.H()), math.Min(box.W(), box.H())
		if s.Length < long+2*kerf || s.Width < wide+2*kerf {
			t.Errorf("%s: %.1f x %.1f mm for an outline of %.1f x %.1f", s.Part, s.Length, s.Width, long, wide)
		}
	}
	for _, c := range f.Thwarts {
		if s := sticks[c.Name]; s.Length < c.Outline.Bounds().W()+2*kerf {
			t.Errorf("%s: %.1f mm long for an outline of %.1f", s.Part, s.Length, c.Outline.Bounds().W())
		}
	}
}

// TestSplicesApart: a stick of 2 m with a splice of the design at its middle, out of
// pieces of 900 mm: three lengths of scarf lie between each two splices of one stick
// (FAA AC 43.13-1B, ch. 1, of wooden spars), and one between those of sticks that lie
// side by side.
func TestSplicesApart(t *testing.T) {
	const scarf = 100.0
	run := &Run{Aft: 0, Fore: 2000, Scarf: scarf, Rooms: []frame.Zone{{From: 0, To: 2000}}, Fixed: []float64{1000}, Beside: "side"}
	m := maker{[]Stick{{Length: 2000, Run: run}, {Length: 2000, Run: &Run{Fore: 2000, Scarf: scarf, Rooms: run.Rooms, Beside: "side"}}}, map[string][]Joint{}, false}
	var beside []Joint
	for i := range m.sticks {
		c, err := m.split(i, 900)
		if err != nil {
			t.Fatal(err)
		}
		if len(c.Joints) < 2 {
			t.Fatalf("%d splices: this shows nothing", len(c.Joints))
		}
		room := func(a, b Joint) float64 { return math.Abs(a.Middle-b.Middle) - scarf }
		for k, a := range c.Joints {
			for _, b := range c.Joints[:k] {
				if room(a, b) < 3*scarf-1e-6 {
					t.Errorf("%.0f mm between splices at %.0f and %.0f mm", room(a, b), a.Middle, b.Middle)
				}
			}
			for _, b := range beside {
				if room(a, b) < scarf-1e-6 {
					t.Errorf("%.0f mm from the splice of the stick beside", room(a, b))
				}
			}
		}
		for _, p := range c.Pieces {
			if p.Length > 900+1e-6 {
				t.Errorf("a piece of %.0f mm out of 900", p.Length)
			}
		}
		beside = append(beside, c.Joints...)
	}
}

// TestPlaneTakesWood: two rips of 20 mm do not come out of a board of 42 mm with a
// saw cut of 2 mm, for both faces of the cut are planed; at 44 mm they do.
func TestPlaneTakesWood(t *testing.T) {
	sticks := []Stick{{Length: 1000, Width: 20, Thickness: 20}, {Length: 1000, Width: 20, Thickness: 20}}
	boards := func(wide float64) int {
		tr := sawing{sticks: sticks, mine: []int{0, 1}, kerf: 2, pack: Pack}
		r := tr.saw([]Board{{Length: 1200, Width: wide, Thickness: 20}}, 1200)
		return len(r.Boards)
	}
	if got := boards(42); got != 2 {
		t.Errorf("42 mm: %d boards, want 2", got)
	}
	if got := boards(44); got != 1 {
		t.Errorf("44 mm: %d boards, want 1", got)
	}
}
