package cutlist

import (
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/design"
)

// Plan is everything that is sawn for one boat.
type Plan struct {
	Sticks   []Stick
	Cuttings []Cutting                      // of each stick; no pieces when there is no wood for it
	Woods    []Wood                         // in the order in which they are first used
	Kerf     float64                        // mm
	Lies     []Lie                          // how each stick lies in its board; the zero Lie without wood
	alone    map[kit.Scope]map[string]alone // what scopes would have taken of each wood that wider ones take too
}

// Wood is the sawing of one wood.
type Wood struct {
	Species string
	Boards  []Sawn
	Missing []Missing
	Buy     []Lot   // of boards that would give the missing sticks that any board can
	Sawn    float64 // of the pieces as they are cut, mm3
	Bought  float64 // of the boards, mm3
	Least   float64 // no plan buys less whole boards of these sizes, mm3
}

// Waste is the share of the boards that becomes sawdust and offcuts.
func (w Wood) Waste() float64 { return share(w.Bought-w.Sawn, w.Bought) }

// LeastWaste is the waste of a plan at the bound.
func (w Wood) LeastWaste() float64 { return share(w.Least-w.Sawn, w.Least) }

func share(part, whole float64) float64 {
	if whole == 0 {
		return 0
	}
	return part / whole
}

// alone is what a part of the build would take of a wood, sawn by itself.
type alone struct {
	buy    float64 // of the boards that the builder does not own, mm3
	ripped float64 // length of all rips and their layers, mm
}

func (w Wood) alone() (a alone) {
	for _, b := range w.Boards {
		if !b.Board.Owned() {
			a.buy += b.Board.Volume()
		}
		for _, r := range b.Rips {
			a.ripped += b.Board.Length * float64(len(r.Layers))
		}
	}
	return a
}

// shared says what kits take: what is taken beyond the frame sawn alone is the boat's own kits',
// and beyond these the outfits', less than nothing where all of it takes less. So the frame's
// part is the same whatever is made with it.
func (p *Plan) shared(w Wood, of func(alone) float64) kit.Share {
	all := of(w.alone())
	part := func(by kit.Scope, whole float64) float64 {
		if a, there := p.alone[by][w.Species]; there {
			return of(a)
		}
		return whole
	}
	ready := part(kit.ReadyForWater, all)
	return kit.Share{Own: ready - part(kit.FrameAndSkin, ready), Outfits: all - ready}
}

// Ripped is the length of all rips and layers of one wood, mm, and what kits take of it.
func (p *Plan) Ripped(w Wood) (float64, kit.Share) {
	ripped := func(a alone) float64 { return a.ripped }
	return ripped(w.alone()), p.shared(w, ripped)
}

// Bill says what kits take of an amount that stands for the boards to buy of one wood.
func (p *Plan) Bill(w Wood, amount float64) kit.Share {
	buy := func(a alone) float64 { return a.buy }
	return p.shared(w, buy).Scaled(buy(w.alone()), amount)
}

// Missing is a stick that no board gives, with the cause.
type Missing struct {
	Stick int
	Why   string
}

// Sawn is one board with its rips, from one edge to the other.
type Sawn struct {
	Board Board
	Rips  []RipCut
}

// RipCut is one rip along a board, resawn into layers of the same section.
type RipCut struct {
	Across float64   // of the board's width, mm
	Layers [][]Piece // strips, each crosscut into pieces
	Rest   []RipCut  // rips along the end that is left of it, where that is wide
}

// Pieces returns every piece of a rip, its end included.
func (r RipCut) Pieces() []Piece {
	out := slices.Concat(r.Layers...)
	for _, more := range r.Rest {
		out = append(out, more.Pieces()...)
	}
	return out
}

// Pieces returns every piece of a board.
func (s Sawn) Pieces() []Piece {
	var out []Piece
	for _, r := range s.Rips {
		out = append(out, r.Pieces()...)
	}
	return out
}

type packer func(lengths []float64, capacity, gap float64) Packing

func (h Heat) plan(f *frame.Frame, kits []kit.Kit, pack packer, sizes int) *Plan {
	p := &Plan{Sticks: edgeGlued(f.Design, h.Sticks(f, kits...)), Kerf: float64(f.Design.Stock.Kerf), alone: map[kit.Scope]map[string]alone{}}
	p.Cuttings = make([]Cutting, len(p.Sticks))
	var woods []string
	for _, s := range p.Sticks {
		if !slices.Contains(woods, s.Species) {
			woods = append(woods, s.Species)
		}
	}
	for _, species := range woods {
		t := sawing{sticks: p.Sticks, kerf: p.Kerf, pack: pack, sizes: sizes, species: species, longest: float64(f.Design.Stock.Longest)}
		for i, s := range p.Sticks {
			if s.Species == species {
				t.mine = append(t.mine, i)
			}
		}
		boards := named(f.Design, species)
		w := t.from(boards)
		t.level(w.Boards)
		for i, c := range w.cuttings {
			p.Cuttings[i] = c
		}
		p.Woods = append(p.Woods, w.Wood)
		p.apart(t, boards)
	}
	p.lies()
	return p
}

// apart saws a wood for each scope that takes some of its sticks and not all.
func (p *Plan) apart(t sawing, boards []Board) {
	all := t.mine
	for _, by := range []kit.Scope{kit.FrameAndSkin, kit.ReadyForWater} {
		t.mine = nil
		for _, i := range all {
			if p.Sticks[i].Scope() <= by {
				t.mine = append(t.mine, i)
			}
		}
		if p.alone[by] == nil {
			p.alone[by] = map[string]alone{}
		}
		switch len(t.mine) {
		case len(all):
		case 0:
			p.alone[by][t.species] = alone{}
		default:
			p.alone[by][t.species] = t.from(boards).alone()
		}
	}
}

// from saws a wood from the boards that are named of it, or from the yard's.
func (t sawing) from(boards []Board) result {
	if len(boards) > 0 {
		return t.fromNamed(boards)
	}
	return t.fromYard()
}

// Missing lists all sticks without wood.
func (p *Plan) Missing() []Missing {
	var out []Missing
	for _, w := range p.Woods {
		out = append(out, w.Missing...)
	}
	return out
}

// Board is one size of board, mm.
type Board struct {
	Species                  string
	Length, Width, Thickness float64
	Count                    int     // 0 for as many as needed
	Price                    float64 // of one, where it is Priced
	Priced                   bool    // else it is priced by volume
	Asked                    bool    // not named by the builder: a size to ask the yard for
	Sawn                     Faces   // how its rings lie; "" when that is not known or does not matter
	asWanted                 bool    // sticks lie in it only so that their faces come out as they should
}

// Owned reports whether the builder has the board already and pays nothing for it.
func (b Board) Owned() bool { return b.Priced && b.Price == 0 }

// Volume returns the wood of one board, mm3.
func (b Board) Volume() float64 { return b.Length * b.Width * b.Thickness }

// Checked is what is cut off each end of a board before anything is sawn from it, mm: ends of
// boards have checks and are seldom square. Common practice, no source.
const Checked = 25.0

// Clear is the length of a board between the checks of its ends, mm, 0 for one that has none.
func (b Board) Clear() float64 { return math.Max(0, b.Length-2*Checked) }

// Dressing is what is planed off the two sawn faces of a rip together, mm. Common
// practice, no source.
const Dressing = 1.0

// lie says how sticks of a section lie in a board: across of its width for a rip
// that is layers sticks high.
func (b Board) lie(s Stick, kerf float64) (across float64, layers int, ok bool) {
	best := math.Inf(1)
	for _, way := range [][2]float64{{s.Width, s.Thickness}, {s.Thickness, s.Width}} {
		n := 0
		if way[1] <= b.Thickness {
			n = max(1, int((b.Thickness+kerf+Dressing)/(way[1]+kerf+Dressing)))
		}
		if way[0] > b.Width || n == 0 || b.asWanted && s.Wants != "" && b.faces(s, way[0]) != s.Wants {
			continue
		}
		if cost := (way[0] + kerf + Dressing) / float64(n); cost < best-1e-9 {
			best, across, layers, ok = cost, way[0], n, true
		}
	}
	return across, layers, ok
}

func named(d *design.Design, species string) []Board {
	var out []Board
	for _, b := range d.Stock.Boards {
		if same(d, b.Species, species) {
			own := Board{Species: species, Length: float64(b.Length), Width: float64(b.Width), Thickness: float64(b.Thickness), Count: b.Count, Sawn: Faces(b.Sawn)}
			if b.Price != nil {
				own.Price, own.Priced = *b.Price, true
			}
			out = append(out, own)
		}
	}
	return out
}

func same(d *design.Design, a, b string) bool {
	x, errX := d.Wood(a)
	y, errY := d.Wood(b)
	return a == b || errX == nil && errY == nil && x.Name == y.Name
}
