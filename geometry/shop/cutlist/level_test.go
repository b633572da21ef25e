package cutlist

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
)

// TestLevelByHand: a rip with nothing to spare changes its longest piece for a shorter one of
// another, hands one over where there is room, and leaves those of other sections alone.
func TestLevelByHand(t *testing.T) {
	long := []float64{1500, 1494, 1400, 1000, 1000, 1000, 991, 500, 900}
	s := sawing{kerf: 3}
	var pieces []Piece
	for i, l := range long {
		s.sticks = append(s.sticks, Stick{Width: 20, Thickness: 6})
		pieces = append(pieces, Piece{Stick: i, Length: l})
	}
	s.sticks[8].Thickness = 7
	for _, c := range []struct{ layers, want [][]int }{
		{[][]int{{0, 1}, {2, 3}}, [][]int{{1, 2}, {0, 3}}}, // 100 and 494 to spare
		{[][]int{{3, 4, 6}, {7}}, [][]int{{4, 6}, {3, 7}}},
		{[][]int{{3, 4, 6}, {8}}, [][]int{{3, 4, 6}, {8}}},
		{[][]int{{0, 2}, {1, 3}}, [][]int{{1, 2}, {0, 3}}},
		{[][]int{{1, 2}, {7}}, [][]int{{1, 2}, {7}}}, // ample
	} {
		b := Sawn{Board: Board{Length: 3000 + 2*Checked, Width: 100, Thickness: 25}}
		for _, l := range c.layers {
			var layer []Piece
			for _, i := range l {
				layer = append(layer, pieces[i])
			}
			b.Rips = append(b.Rips, RipCut{Across: 20, Layers: [][]Piece{layer}})
		}
		s.level([]Sawn{b})
		var got [][]int
		for _, r := range b.Rips {
			var l []int
			for _, p := range r.Layers[0] {
				l = append(l, p.Stick)
			}
			got = append(got, l)
		}
		if fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%v becomes %v, want %v", c.layers, got, c.want)
		}
	}
}

// TestLevel: plans of boats and of a course have every piece as often as before, on the boards of
// before, and what the rip with the least has to spare is never less, and more in some.
func TestLevel(t *testing.T) {
	more := 0
	for _, name := range design.ShippedNames() {
		for _, scale := range []float64{2500, 3700, 4300} {
			f := frametest.Shipped(t, name, func(d *design.Design) { d.Stock.Boards, d.Stock.Longest = nil, 0 })
			p := Heat(nil).Make(f)
			for _, w := range p.Woods {
				s := sawing{sticks: p.Sticks, kerf: p.Kerf, pack: Pack}
				var pieces []Piece
				for _, b := range w.Boards {
					pieces = append(pieces, b.Pieces()...)
				}
				pieces = slices.DeleteFunc(pieces, func(c Piece) bool { return c.Length > scale-2*Checked })
				boards, _ := s.cut(Board{Species: w.Species, Length: scale, Width: 200, Thickness: 32}, pieces)
				before, had := leastSpare(s, boards)
				s.level(boards)
				after, has := leastSpare(s, boards)
				if has < had-1e-9 || !slices.Equal(before, after) {
					t.Errorf("%s, %s: %.0f to spare becomes %.0f", name, w.Species, had, has)
				}
				if has > had+1 {
					more++
				}
			}
		}
	}
	if more == 0 {
		t.Error("no plan has more to spare than before")
	}
}

// TestPlansAreLevel: nothing is left to share out in a boat's plan nor in a course's.
func TestPlansAreLevel(t *testing.T) {
	plans := course(t, 4)
	pool := Pool(plans)
	for _, p := range append(plans, &pool.Plan) {
		for _, w := range p.Woods {
			s := sawing{sticks: p.Sticks, kerf: p.Kerf}
			before := fmt.Sprint(w.Boards)
			if s.level(w.Boards); fmt.Sprint(w.Boards) != before {
				t.Errorf("%s is shared out once more", w.Species)
			}
		}
	}
}

// leastSpare is the least that a strip of boards has to spare, and all pieces in order.
func leastSpare(s sawing, boards []Sawn) (all []string, spare float64) {
	var strips []strip
	spare = math.Inf(1)
	for _, b := range boards {
		s.strips(b.Board, b.Rips, b.Board.Clear(), &strips)
		for _, p := range b.Pieces() {
			all = append(all, fmt.Sprint(p))
		}
	}
	for _, l := range strips {
		spare = min(spare, s.spare(l))
	}
	slices.Sort(all)
	return all, spare
}

// TestScarfsLeaveEnds: of stock of 3950 mm a stick of 5000 mm takes no piece without ends to
// spare; where that would take a scarf more it does.
func TestScarfsLeaveEnds(t *testing.T) {
	for _, c := range []struct{ stock, want float64 }{{3950, 3850}, {2585, 2535}, {2535, 2535}} {
		m := maker{[]Stick{{Length: 5000, Run: &Run{Aft: -2500, Fore: 2500, Scarf: 70, Rooms: []frame.Zone{{From: -2400, To: 2400}}}}}, map[string][]Joint{}, true}
		cut, err := m.split(0, c.stock)
		if err != nil || len(cut.Joints) != 1 || math.Abs(cut.Pieces[0].Length-c.want) > 5 {
			t.Errorf("%g mm: %+v, %v, want a first piece of %g", c.stock, cut, err, c.want)
		}
	}
}

// TestOwnBoardsLeaveEnds: gunwales scarfed from boards of 4 m leave some of both ends, on no more
// boards than filled to the end.
func TestOwnBoardsLeaveEnds(t *testing.T) {
	own := brook(t, func(d *design.Design) {
		d.Stock.Boards = []design.Board{{Species: d.Gunwale.Species, Length: 2600, Width: 150, Thickness: 32}}
	})
	scarfed := 0
	for _, c := range own.Cuttings {
		for _, p := range c.Pieces {
			if p.Of > 1 {
				if scarfed++; p.Length > 2550-Checked+1e-9 {
					t.Errorf("a piece of %.0f mm of %.0f", p.Length, 2550.0)
				}
			}
		}
	}
	if scarfed == 0 {
		t.Error("nothing is scarfed")
	}
}
