// Package nest lays parts by their true shapes on sheets of stock for the
// cutter, with the grain where it must run and room for the cutter between them.
package nest

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/layout"
)

// Stock is the size of a sheet as it lies, mm: x by y.
type Stock struct{ W, H float64 }

func (s Stock) String() string { return fmt.Sprintf("%.6g x %.6g mm", s.W, s.H) }

// Grain returns which way the grain runs: along the longer side, upright when
// both are equal.
func (s Stock) Grain() float64 {
	if s.W > s.H {
		return 0
	}
	return math.Pi / 2
}

// Options say what the parts are laid on.
type Options struct {
	Stock       Stock
	Gap         float64 // least distance between parts and to the edges, mm
	ByThickness bool    // sheets of their own for every thickness
	Split       bool    // parts that are too long are made in pieces with a scarf
	Quick       bool    // lay the parts once, looser, instead of searching for a close nest
}

// DefaultOptions is a common size of sheet and the room that a 6 mm cutter needs.
func DefaultOptions() Options { return Options{Stock: Stock{1220, 2440}, Gap: 12} }

// The bounds of what is accepted, mm. A gap below a millimeter leaves slivers
// that burn or break.
const (
	LeastGap, MostGap     = 1, 200
	LeastStock, MostStock = 100, 20000
)

// Check returns an error when an option is out of its bounds.
func (o Options) Check() error {
	for _, side := range []float64{o.Stock.W, o.Stock.H} {
		if !(side >= LeastStock && side <= MostStock) {
			return fmt.Errorf("stock of %v: each side must be %d to %d mm, as 1220x2440 or 4ft x 8ft", o.Stock, LeastStock, MostStock)
		}
	}
	if !(o.Gap >= LeastGap && o.Gap <= MostGap) {
		return fmt.Errorf("a spacing of %.4g mm: accepted are %d to %d mm; the cutter's diameter and 6 mm are common", o.Gap, LeastGap, MostGap)
	}
	if room := o.room(); room.X < LeastStock/2 || room.Y < LeastStock/2 {
		return fmt.Errorf("a spacing of %.4g mm leaves %.6g x %.6g mm of stock of %v; give a smaller one or larger stock", o.Gap, room.X, room.Y, o.Stock)
	}
	return nil
}

// room is what the parts may fill of a board, mm.
func (o Options) room() geometry.Point {
	return geometry.Point{X: o.Stock.W - 2*o.Gap, Y: o.Stock.H - 2*o.Gap}
}

// Lay places the parts on as many sheets as they need, side by side on one
// plate. The same parts and options give the same plate.
//
// Errors: options out of their bounds, or a *TooLarge for a part that no sheet
// has room for.
func Lay(title string, parts []layout.Part, o Options) (layout.Plate, error) {
	if err := o.Check(); err != nil {
		return layout.Plate{}, err
	}
	parts, err := o.fitting(parts)
	if err != nil {
		return layout.Plate{}, err
	}
	out := layout.Plate{Title: title, H: o.Stock.H}
	for _, set := range o.sets(parts) {
		for len(set) > 0 {
			laid, rest := o.board(set)
			o.add(&out, laid)
			set = rest
		}
	}
	o.name(&out)
	o.addCheck(&out)
	return out, nil
}

// sets parts the parts by thickness, the thickest first, when that is asked for.
func (o Options) sets(parts []layout.Part) [][]layout.Part {
	if !o.ByThickness {
		return [][]layout.Part{parts}
	}
	sorted := slices.Clone(parts)
	slices.SortStableFunc(sorted, func(a, b layout.Part) int { return cmp.Compare(b.Thickness, a.Thickness) })
	var out [][]layout.Part
	for i, p := range sorted {
		if i == 0 || p.Thickness != sorted[i-1].Thickness {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], p)
	}
	return out
}

// between is how far boards lie apart on a plate, mm.
const between = 50.0

// add puts a laid board on the plate, right of those there.
func (o Options) add(p *layout.Plate, laid []layout.Placed) {
	x := 0.0
	if n := len(p.Boards); n > 0 {
		x = p.Boards[n-1].Box.Max.X + between
	}
	b := layout.Board{Rim: o.Gap, Parts: len(laid), Used: geometry.EmptyBox(),
		Box: geometry.Box{Min: geometry.Point{X: x}, Max: geometry.Point{X: x + o.Stock.W, Y: o.Stock.H}}}
	for _, q := range laid {
		q.Move = q.Move.Then(geometry.Shift(x, 0))
		b.Used, b.Wood = b.Used.Union(q.Part.Outline().Map(q.Move).Bounds()), b.Wood+q.Part.Area()
		p.Parts = append(p.Parts, q)
	}
	p.Boards, p.W = append(p.Boards, b), b.Box.Max.X
}

// name says on every board which it is, of what stock, and how the grain runs.
func (o Options) name(p *layout.Plate) {
	grain := "grain upright"
	if o.Stock.Grain() == 0 {
		grain = "grain level"
	}
	first := 0
	for i := range p.Boards {
		thick := ""
		if t := p.Parts[first].Part.Thickness; o.ByThickness && t > 0 {
			thick = fmt.Sprintf("%.4g mm thick, ", t)
		}
		p.Boards[i].Title = fmt.Sprintf("sheet %d of %d, %s%v, %s", i+1, len(p.Boards), thick, o.Stock, grain)
		first += p.Boards[i].Parts
	}
}

// checkSide is the side of the square that shows whether a file has come through
// at its true size, mm.
const checkSide = 100.0

// addCheck lays the square where the last board is empty, or beside it.
func (o Options) addCheck(p *layout.Plate) {
	b := p.Boards[len(p.Boards)-1]
	room := b.Box.Grow(-o.Gap)
	at := geometry.Point{X: b.Used.Max.X + o.Gap, Y: room.Min.Y}
	if at.X+checkSide > room.Max.X {
		at = geometry.Point{X: room.Min.X, Y: b.Used.Max.Y + o.Gap}
	}
	if at.Y+checkSide > room.Max.Y {
		at = geometry.Point{X: b.Box.Max.X + between}
		p.W = at.X + checkSide + o.Gap
	}
	p.Check = geometry.Box{Min: at, Max: at.Add(geometry.Point{X: checkSide, Y: checkSide})}
}
