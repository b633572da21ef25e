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
	Cuttings []Cutting          // of each stick; no pieces when there is no wood for it
	Woods    []Wood             // in the order in which they are first used
	Kerf     float64            // mm
	Lies     []Lie              // how each stick lies in its board; the zero Lie without wood
	alone    map[string]float64 // what the frame alone would have bought of each wood that kits take too, mm3
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

// Share says what kits take of an amount that the boards of one wood make up, in mm3, as the
// volume of their wood or the length that is ripped. A board serves whoever has room in it, so
// all share all boards of a wood by the volume of their sticks, as these are sawn.
func (p *Plan) Share(w Wood, amount float64) kit.Share {
	var s kit.Share
	whole := 0.0
	for _, b := range w.Boards {
		for _, c := range b.Pieces() {
			stick := p.Sticks[c.Stick]
			v := c.Length * stick.Width * stick.Thickness
			whole += v
			s.Take(stick.Scope(), v)
		}
	}
	return s.Scaled(whole, amount)
}

// Bill says what kits take of an amount that stands for the boards to buy of one wood, in
// mm3: what is bought beyond the boards of a frame sawn alone, shared by the volume of the
// kits' sticks. Nothing where these come out of what the frame leaves.
func (p *Plan) Bill(w Wood, amount float64) kit.Share {
	s := p.Share(w, 1)
	kits, all := s.Own+s.Outfits, w.toBuy()
	if kits == 0 || all == 0 {
		return kit.Share{}
	}
	more := math.Max(0, all-p.alone[w.Species])
	return s.Scaled(kits, amount*more/all)
}

// toBuy is the volume of the boards that the builder does not own, mm3.
func (w Wood) toBuy() float64 {
	sum := 0.0
	for _, b := range w.Boards {
		if !b.Board.Owned() {
			sum += b.Board.Volume()
		}
	}
	return sum
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
	p := &Plan{Sticks: edgeGlued(f.Design, h.Sticks(f, kits...)), Kerf: float64(f.Design.Stock.Kerf), alone: map[string]float64{}}
	p.Cuttings = make([]Cutting, len(p.Sticks))
	var woods []string
	for _, s := range p.Sticks {
		if !slices.Contains(woods, s.Species) {
			woods = append(woods, s.Species)
		}
	}
	for _, species := range woods {
		t := sawing{sticks: p.Sticks, kerf: p.Kerf, pack: pack, sizes: sizes, species: species, longest: float64(f.Design.Stock.Longest)}
		alone := t
		for i, s := range p.Sticks {
			if s.Species == species {
				t.mine = append(t.mine, i)
				if s.Kit == "" {
					alone.mine = append(alone.mine, i)
				}
			}
		}
		boards := named(f.Design, species)
		w := t.from(boards)
		t.level(w.Boards)
		for i, c := range w.cuttings {
			p.Cuttings[i] = c
		}
		p.Woods = append(p.Woods, w.Wood)
		if n := len(alone.mine); n > 0 && n < len(t.mine) { // else nothing of the wood is shared
			p.alone[species] = alone.from(boards).toBuy()
		}
	}
	p.lies()
	return p
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
