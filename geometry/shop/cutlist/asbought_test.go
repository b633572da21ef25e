package cutlist

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

func brook(t *testing.T, change func(d *design.Design)) *Plan {
	t.Helper()
	return Heat(nil).Make(frametest.Shipped(t, "brook", func(d *design.Design) {
		fromPlank(d)
		if change != nil {
			change(d)
		}
	}))
}

// TestBlocksFillTheGaps: a middle ply in blocks takes as much wood as plies with cut
// mortises leave in the boat, every block is as long as the stretch between two slots
// and 2 mm to trim, and the end ones reach as far as the plies.
func TestBlocksFillTheGaps(t *testing.T) {
	f := frametest.Shipped(t, "brook", func(d *design.Design) { d.Gunwale.Mortises = design.ByGap })
	g := &f.Gunwale
	net, blocks, strips, marks := 0.0, 0, 0, map[string]bool{}
	for _, s := range Heat(nil).Sticks(f) {
		if marks[s.Mark] {
			t.Errorf("two sticks are marked %s", s.Mark)
		}
		marks[s.Mark] = true
		if s.Family == Gunwale || s.Family == Block {
			net += s.Net
		}
		if strings.Contains(s.Part, "strip over the blocks") {
			if strips++; s.Width != 36-20 || s.Run == nil || len(s.Run.Rooms) == 0 {
				t.Errorf("%+v", s)
			}
		}
		if s.Family != Block {
			continue
		}
		z, more := g.Blocks[blocks%len(g.Blocks)], 2.0
		if blocks%len(g.Blocks) == 0 || blocks%len(g.Blocks) == len(g.Blocks)-1 {
			more += 25
		}
		if math.Abs(s.Length-(z.To-z.From)-more) > 1e-9 || s.Width != 20 || s.Thickness != g.Width/3 || s.Run != nil {
			t.Errorf("block %d: %+v for %+v", blocks, s, z)
		}
		blocks++
	}
	want := 2 * (g.Fore - g.Aft) * 19 * 36
	for _, m := range g.Mortises {
		want -= 2 * m.Length * m.Width * m.Depth
	}
	if strips != 2 || blocks != 2*(len(f.Ribs)+1) || math.Abs(net-want) > 1e-3 {
		t.Errorf("%d strips and %d blocks of %.0f mm3, want 2, %d, %.0f", strips, blocks, net, 2*(len(f.Ribs)+1), want)
	}
	for _, m := range Heat(nil).Make(f).Missing() {
		t.Errorf("no wood: %+v", m)
	}
}

// TestNarrowBoards: parts that no board is wide enough for are glued from staves that
// are, with 3 mm on each to plane; wide boards leave them whole.
func TestNarrowBoards(t *testing.T) {
	with := func(widths ...float64) *Plan {
		return brook(t, func(d *design.Design) {
			for _, w := range widths {
				b := design.Board{Species: "white ash", Length: 2500, Width: measure.Length(w), Thickness: 25}
				d.Stock.Boards = append(d.Stock.Boards, b)
			}
		})
	}
	whole, narrow, both := with(200), with(80), with(80, 200)
	if whole.GlueLines() != 0 || both.GlueLines() != 0 {
		t.Errorf("%d and %d glue lines where a board is wide enough", whole.GlueLines(), both.GlueLines())
	}
	lines := 0
	for _, s := range whole.Sticks {
		if s.Species != "white ash" || s.Width <= 80 {
			continue
		}
		n := int(math.Ceil(s.Width / (80 - 3)))
		lines += n - 1
		found, wide, net := 0, 0.0, 0.0
		for i, v := range narrow.Sticks {
			if v.Member == s.Part {
				found, wide, net = found+1, wide+v.Width-3, net+v.Net
				if !v.Edge || v.Width > 80 || v.Length != s.Length || v.Thickness != s.Thickness || len(narrow.Cuttings[i].Pieces) != 1 {
					t.Errorf("%+v for %+v", v, s)
				}
			}
		}
		if found != n || math.Abs(wide-s.Width) > 1e-9 || math.Abs(net-s.Net) > 1e-6 {
			t.Errorf("%s of %.0f mm: %d staves of %.1f mm together and %.0f mm3, want %d, %.1f, %.0f", s.Part, s.Width, found, wide, net, n, s.Width, s.Net)
		}
	}
	if lines < 4 || narrow.GlueLines() != lines || len(narrow.Missing()) > 0 {
		t.Errorf("%d glue lines, want %d; missing %v", narrow.GlueLines(), lines, narrow.Missing())
	}
}

// TestRings: a stick ripped flat from a board has the board's faces, one sliced off its
// edge the other kind. Where the boards tell, ribs are laid so that their rings come out
// flat if the wood allows it, and what does not is found.
func TestRings(t *testing.T) {
	oak := func(sawn string, thick float64) *Plan {
		return brook(t, func(d *design.Design) {
			b := design.Board{Species: "white ash", Length: 2500, Width: 200, Thickness: measure.Length(thick), Sawn: sawn}
			d.Stock.Boards = []design.Board{b}
		})
	}
	for _, c := range []struct {
		sawn   string
		thick  float64
		onEdge bool
		faces  Faces
		found  int
		says   string
	}{
		{"quarter", 25, true, FlatFaces, 0, "along, straightest; rings flat"},
		{"flat", 25, false, FlatFaces, 0, "along, straightest; rings flat"},
		{"", 25, true, "", 1, "along, straightest; rings flat if the board is quarter-sawn"},
		// Too thin to stand a rib of 20 mm on its edge, quarter-sawn stock of 18 mm gives upright rings.
		{"quarter", 18, false, QuarterFaces, 1, "along, straightest; rings come out upright, wanted flat"},
	} {
		p := oak(c.sawn, c.thick)
		for i, s := range p.Sticks {
			if l := p.Lies[i]; s.Family == Rib && (!l.Found || l.OnEdge != c.onEdge || l.Faces != c.faces || p.Grain(i) != c.says) {
				t.Errorf("%s-sawn, %.0f mm: %s lies %+v, %q", c.sawn, c.thick, s.Mark, l, p.Grain(i))
				break
			}
		}
		if found := p.Rings(); len(found) != c.found {
			t.Errorf("%s-sawn, %.0f mm: %v", c.sawn, c.thick, found)
		}
	}
	p := brook(t, nil) // a board asked of the yard is asked as the ribs want it
	for i, s := range p.Sticks {
		if s.Family == Rib && p.Lies[i].Faces != FlatFaces {
			t.Errorf("%s: %+v from the yard", s.Mark, p.Lies[i])
		}
	}
	for _, w := range p.Woods {
		if b := w.Boards[0].Board; w.Species == "white ash" && b.Sawn != QuarterFaces || w.Species != "white ash" && b.Sawn != "" {
			t.Errorf("the yard is asked for %+v", b)
		}
	}
}

// TestShort: when a wood is short the boat's parts come before spares, nothing is taken
// of another wood, and with the boards to buy nothing is missing any more.
func TestShort(t *testing.T) {
	cedar := design.Board{Species: "western redcedar", Length: 3700, Width: 300, Thickness: 50, Count: 9}
	ash := design.Board{Species: "white ash", Length: 1300, Width: 200, Thickness: 25, Count: 1}
	short := brook(t, func(d *design.Design) { d.Stock.Boards = []design.Board{cedar, ash} })
	spares := 0
	for _, m := range short.Missing() {
		if s := short.Sticks[m.Stick]; s.Spare {
			spares++
		} else if s.Species != "white ash" {
			t.Errorf("%s of %s is missing", s.Part, s.Species)
		}
	}
	if len(short.Missing()) == 0 || spares != 6 && len(short.Missing()) != spares {
		t.Errorf("%d of %d missing sticks are spares: parts of the boat are without wood before all spares are", spares, len(short.Missing()))
	}
	for _, w := range short.Woods {
		for _, b := range w.Boards {
			for _, p := range b.Pieces() {
				if s := short.Sticks[p.Stick]; s.Species != w.Species || b.Board.Species != w.Species {
					t.Errorf("%s of %s is sawn from a board of %s", s.Part, s.Species, b.Board.Species)
				}
			}
		}
	}
	i := slices.IndexFunc(short.Woods, func(w Wood) bool { return w.Species == "white ash" })
	if len(short.Woods[i].Buy) != 1 || short.Woods[i].Buy[0].Board.Width != 200 {
		t.Fatalf("to buy: %+v", short.Woods[i].Buy)
	}
	more := ash
	more.Count += short.Woods[i].Buy[0].Count
	if p := brook(t, func(d *design.Design) { d.Stock.Boards = []design.Board{cedar, more} }); len(p.Missing()) > 0 {
		t.Errorf("with %d boards more there is no wood for %+v", more.Count-1, p.Missing())
	}
}

// TestSparesStandBack: with boards for the ribs but not for their spares, every rib has
// wood, however much longer a spare is than a short rib.
func TestSparesStandBack(t *testing.T) {
	for count := 1; count <= 12; count++ {
		p := brook(t, func(d *design.Design) {
			d.Stock.Boards = []design.Board{{Species: "white ash", Length: 1300, Width: 60, Thickness: 25, Count: count}}
		})
		spared, lost := false, 0
		for i, s := range p.Sticks {
			spared = spared || s.Spare && len(p.Cuttings[i].Pieces) > 0
			if s.Species == "white ash" && !s.Spare && len(p.Cuttings[i].Pieces) == 0 {
				lost++
			}
		}
		without := brook(t, func(d *design.Design) {
			d.Ribs.Spare = 0
			d.Stock.Boards = []design.Board{{Species: "white ash", Length: 1300, Width: 60, Thickness: 25, Count: count}}
		})
		if least := len(without.Missing()); lost > least {
			t.Errorf("%d boards: %d parts are without wood, only %d if there were no spares (a spare is sawn: %v)", count, lost, least, spared)
		}
	}
}

// TestOwnBoardsFirst: what is owned is used before what must be bought.
func TestOwnBoardsFirst(t *testing.T) {
	b := design.Board{Species: "western redcedar", Length: 3700, Width: 120, Thickness: 40, Count: 1}
	own := b
	own.Price = new(0.0)
	b.Count = 0
	for _, boards := range [][]design.Board{{own, b}, {b, own}} {
		p := brook(t, func(d *design.Design) { d.Stock.Boards = boards })
		i := slices.IndexFunc(p.Woods, func(w Wood) bool { return w.Species == "western redcedar" })
		n := 0
		for _, s := range p.Woods[i].Boards {
			if s.Board.Owned() {
				n++
			}
		}
		if n != 1 {
			t.Errorf("%d owned boards are used of 1", n)
		}
	}
}
