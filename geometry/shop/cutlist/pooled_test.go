package cutlist

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// course plans n boats by themselves, each a little longer than the one before.
func course(t *testing.T, n int) []*Plan {
	t.Helper()
	var out []*Plan
	for i := range n {
		name := []string{"brook", "brook", "river", "lake"}[i%4]
		out = append(out, Heat(nil).Make(frametest.Shipped(t, name, func(d *design.Design) {
			fromPlank(d)
			d.Stock.Boards = nil
			d.Hull.Length += measure.Length(20 * (i / 4))
		})))
	}
	return out
}

// onBoards counts how often each piece is sawn, checks each board's room by adding up, and
// names a piece by its stick's mark.
func onBoards(t *testing.T, p *Plan) map[string]int {
	t.Helper()
	seen := map[string]int{}
	var walk func(s Sawn, r RipCut, room float64)
	walk = func(s Sawn, r RipCut, room float64) {
		high := 0.0
		for _, l := range r.Layers {
			long := -p.Kerf
			thick := 0.0
			for _, c := range l {
				k := p.Sticks[c.Stick]
				seen[fmt.Sprintf("%s/%d", k.Mark, c.Number)]++
				long += c.Length + p.Kerf
				side := k.Thickness
				if math.Abs(r.Across-k.Thickness) < 1e-9 && k.Width > k.Thickness {
					side = k.Width
				}
				if r.Across < k.Thickness-1e-9 || k.Species != s.Board.Species {
					t.Errorf("%s in a rip of %g mm of %s", k.Mark, r.Across, s.Board.Species)
				}
				thick = math.Max(thick, side)
			}
			high += thick + p.Kerf + Dressing
			if long > room+1e-6 {
				t.Errorf("%.1f mm of pieces in a rip of %.1f mm", long, room)
			}
		}
		if high-p.Kerf-Dressing > s.Board.Thickness+1e-6 {
			t.Errorf("layers of %.1f mm in a board of %.1f mm", high, s.Board.Thickness)
		}
		for _, rest := range r.Rest {
			walk(s, rest, room)
		}
	}
	for _, w := range p.Woods {
		for _, s := range w.Boards {
			wide := -p.Kerf - Dressing
			for _, r := range s.Rips {
				walk(s, r, s.Board.Clear())
				wide += r.Across + p.Kerf + Dressing
			}
			if wide > s.Board.Width+1e-6 {
				t.Errorf("rips of %.1f mm in a board of %.1f mm", wide, s.Board.Width)
			}
		}
	}
	return seen
}

// TestPool: every stick of every boat once, in the pieces of its own plan; never more boards
// nor more wood than by themselves, less where there are many; and never under the bound.
func TestPool(t *testing.T) {
	for _, n := range []int{1, 2, 7} {
		plans := course(t, n)
		pool := Pool(plans)
		seen, want := onBoards(t, &pool.Plan), map[string]int{}
		for b, p := range plans {
			for i, s := range p.Sticks {
				for _, c := range p.Cuttings[i].Pieces {
					want[fmt.Sprintf("%d:%s/%d", b+1, s.Mark, c.Number)]++
				}
			}
		}
		for mark, k := range want {
			if seen[mark] != 1 || k != 1 {
				t.Errorf("%d boats: %s is sawn %d times", n, mark, seen[mark])
			}
		}
		if len(seen) != len(want) || len(pool.Owners) != len(pool.Sticks) {
			t.Errorf("%d boats: %d pieces are sawn of %d", n, len(seen), len(want))
		}
		for i, s := range pool.Sticks {
			if !strings.HasPrefix(s.Mark, fmt.Sprintf("%d:", pool.Owners[i]+1)) || !pool.Lies[i].Found {
				t.Errorf("%s is of boat %d, lies %+v", s.Mark, pool.Owners[i]+1, pool.Lies[i])
			}
		}
		pooled, apart := 0.0, 0.0
		for i, w := range pool.Woods {
			boards, bought := 0, 0.0
			for _, p := range plans {
				for _, v := range p.Woods {
					if v.Species == w.Species {
						boards, bought = boards+len(v.Boards), bought+v.Bought
					}
				}
			}
			a := pool.Apart[i]
			t.Logf("%d boats, %s: %d boards, %.0f %% waste, bound %.0f %%, optimal %v; apart %d, %.0f %%", n, w.Species, len(w.Boards), 100*w.Waste(), 100*w.LeastWaste(), w.Optimal(), a.Boards, 100*a.Waste())
			if a.Boards != boards || math.Abs(a.Bought-bought) > 1 || len(w.Boards) > boards || w.Bought > bought+1 || w.Bought < w.Least-1 || w.Sawn > w.Least+1 || w.Optimal() != (math.Abs(w.Bought-w.Least) < 1) {
				t.Errorf("%d boats, %s: %d boards of %.0f, apart %d of %.0f (%+v), bound %.0f", n, w.Species, len(w.Boards), w.Bought, boards, bought, a, w.Least)
			}
			pooled, apart = pooled+w.Bought, apart+bought
		}
		if n == 7 && pooled > 0.97*apart {
			t.Errorf("pooled %.0f mm3, apart %.0f", pooled, apart)
		}
	}
}

// TestPileSaves: a pile is better only where nothing is the worse for it.
func TestPileSaves(t *testing.T) {
	was := pile{boards: make([]Sawn, 4), bought: 100, astray: 3}
	for _, c := range []struct {
		boards int
		bought float64
		astray int
		want   bool
	}{{4, 99, 3, true}, {3, 100, 3, true}, {3, 90, 0, true}, {4, 100, 3, false}, {5, 90, 3, false}, {3, 101, 3, false}, {3, 90, 4, false}, {0, 0, 0, false}} {
		if got := (pile{boards: make([]Sawn, c.boards), bought: c.bought, astray: c.astray}).saves(was); got != c.want {
			t.Errorf("%+v saves %v", c, got)
		}
	}
}

// TestPoolOwnBoards: who names boards saws them, and what others ask for is left to them.
func TestPoolOwnBoards(t *testing.T) {
	own := brook(t, func(d *design.Design) {
		d.Stock.Boards = []design.Board{{Species: "white ash", Length: 2500, Width: 200, Thickness: 25}}
	})
	asks := brook(t, func(d *design.Design) { d.Stock.Boards = nil })
	pool := Pool([]*Plan{own, asks})
	i := slices.IndexFunc(pool.Woods, func(w Wood) bool { return w.Species == "white ash" })
	if len(pool.Woods[i].Boards) != pool.Apart[i].Boards {
		t.Errorf("%d boards, apart %d", len(pool.Woods[i].Boards), pool.Apart[i].Boards)
	}
}

// TestPoolTakesNoLargerBoards: none of a course's boards could be a smaller one of the yard's; and
// boats whose ribs lie both ways, whose boards could not be laid together as they are, are laid for
// one way to be sawn where that takes fewer: every rib's rings as its own cut list has them.
func TestPoolTakesNoLargerBoards(t *testing.T) {
	var plans []*Plan
	for _, thick := range []measure.Length{5.4, 5.8, 5.4, 5.8, 5.8} {
		plans = append(plans, Heat(nil).Make(frametest.Shipped(t, "brook", func(d *design.Design) {
			fromPlank(d)
			d.Stock.Boards, d.Ribs.Thickness, d.Ribs.Width = nil, thick, 21
		})))
	}
	ways := map[Faces]bool{}
	for _, p := range plans {
		for _, w := range p.Woods {
			for _, s := range w.Boards {
				ways[s.Board.Sawn] = true
			}
		}
	}
	if !ways[FlatFaces] || !ways[QuarterFaces] {
		t.Errorf("all boats alike: %v", ways)
	}
	pool := Pool(plans)
	for i, w := range pool.Woods {
		s := sawing{species: w.Species, sticks: pool.Sticks, kerf: pool.Kerf, pack: firstFitOnly}
		for _, b := range w.Boards {
			for _, size := range yard(w.Species, 0) {
				if size.Sawn = b.Board.Sawn; size.Volume() >= b.Board.Volume() {
					continue
				}
				if boards, left := s.cut(size, b.Pieces()); len(left) == 0 && len(boards) == 1 && s.astray(boards) == 0 {
					t.Errorf("%s: %+v would do for %+v", w.Species, size, b.Board)
				}
			}
		}
		t.Logf("%s: %d boards, %.0f %% waste; apart %d, %.0f %%", w.Species, len(w.Boards), 100*w.Waste(), pool.Apart[i].Boards, 100*pool.Apart[i].Waste())
		if byWay := len(ofWood(Pool([]*Plan{plans[0], plans[2]}), w.Species)) + len(ofWood(Pool([]*Plan{plans[1], plans[3], plans[4]}), w.Species)); w.Species == "white ash" && len(w.Boards) >= byWay {
			t.Errorf("%d boards of ash, %d for each way by itself", len(w.Boards), byWay)
		}
	}
	for i, s := range pool.Sticks {
		if s.Family == Rib && pool.Lies[i].Faces != FlatFaces {
			t.Errorf("%s lies %+v", s.Mark, pool.Lies[i])
		}
	}
}

func ofWood(p *Pooled, species string) []Sawn {
	return p.Woods[slices.IndexFunc(p.Woods, func(w Wood) bool { return w.Species == species })].Boards
}
