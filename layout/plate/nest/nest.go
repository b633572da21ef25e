// Package nest lays parts by their true shapes on sheets of stock for the
// cutter, with the grain where it must run and room for the cutter between them.
package nest

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"

	"ribwright/geometry"
	"ribwright/geometry/sidebyside"
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
	Others      []Other // stock of single thicknesses, instead of Stock
	Gap         float64 // least distance between parts and to the edges, mm
	ByThickness bool    // sheets of their own for every material and thickness
	Split       bool    // parts that are too long are made in pieces with a scarf
	Quick       bool    // lay the parts once, looser, instead of searching for a close nest
}

// Other is the stock of one thickness, mm.
type Other struct {
	Thickness float64
	Stock     Stock
}

// DefaultOptions is a common size of sheet and the room that a 6 mm cutter needs, what is
// of one material and thickness on sheets of its own.
func DefaultOptions() Options {
	return Options{Stock: Stock{1220, 2440}, Gap: 12, ByThickness: true}
}

// The bounds of what is accepted, mm. A gap below a millimeter leaves slivers
// that burn or break.
const (
	LeastGap, MostGap     = 1, 200
	LeastStock, MostStock = 100, 20000
)

// on returns the options for a part, whose thickness may have stock of its own.
func (o Options) on(p layout.Part) Options {
	if q := o.own(p); q != nil {
		o.Stock = q.Stock
	}
	o.Others = nil
	return o
}

// own returns the stock that is named for a part's thickness, nil for none.
func (o Options) own(p layout.Part) *Other {
	for i, q := range o.Others {
		if math.Abs(q.Thickness-p.Thickness) < 0.05 && p.Thickness > 0 { // nearer than stock is planed
			return &o.Others[i]
		}
	}
	return nil
}

// freed leaves out the blanks of parts that are laid on whole stock all the same: where all
// lie together, or where stock is named for their thickness.
func (o Options) freed(parts []layout.Part) []layout.Part {
	out := slices.Clone(parts)
	for i := range out {
		if !o.ByThickness || o.own(out[i]) != nil {
			out[i].Blank = nil
		}
	}
	return out
}

// Check returns an error when an option is out of its bounds.
func (o Options) Check() error {
	for _, q := range o.Others {
		one := o
		one.Stock, one.Others = q.Stock, nil
		if err := one.Check(); err != nil {
			return err
		}
	}
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

// Lay places the parts on as many sheets as they need, side by side on one plate, each
// sheet trimmed to what is used of it. The same parts and options give the same plate.
//
// Errors: options out of their bounds, or a *TooLarge for a part that no sheet
// has room for.
func Lay(title string, parts []layout.Part, o Options) (layout.Plate, error) {
	if err := o.Check(); err != nil {
		return layout.Plate{}, err
	}
	if err := whole(parts); err != nil {
		return layout.Plate{}, err
	}
	parts, err := o.fitting(o.freed(parts))
	if err != nil {
		return layout.Plate{}, err
	}
	sets := o.sets(parts)
	all := make([][]sheet, len(sets))
	lay := func(i int) { all[i] = o.sheets(sets[i]) }
	if o.Quick { // which is not worth what two at a time take in memory
		for i := range sets {
			lay(i)
		}
	} else {
		sidebyside.Each(len(sets), lay)
	}
	return o.arranged(title, slices.Concat(all...)), nil
}

// sheets lays a set of parts on as many sheets as it takes.
func (o Options) sheets(set []layout.Part) (out []sheet) {
	if o.ByThickness {
		o = o.on(set[0])
	}
	for len(set) > 0 {
		laid, rest := o.board(set)
		out = append(out, o.trimmed(laid))
		set = rest
	}
	return out
}

// whole refuses a part that cannot be cut in one piece, because an edge of it crosses itself.
func whole(parts []layout.Part) error {
	const tol = 0.05 // mm: less than a cutter follows a line
	for _, p := range parts {
		for _, edge := range p.Cut {
			if at, crosses := edge.Crossing(tol); crosses {
				b := p.Bounds()
				return fmt.Errorf("the part %s cannot be cut: its outline crosses itself %.0f mm from its left end and %.0f mm from its lower edge; change the measures of it in the design", p.Name, at.X-b.Min.X, at.Y-b.Min.Y)
			}
		}
	}
	return nil
}

// sets parts the parts by thickness, the thickest first, and by material, when that is
// asked for.
func (o Options) sets(parts []layout.Part) [][]layout.Part {
	if !o.ByThickness {
		return [][]layout.Part{parts}
	}
	sorted := slices.Clone(parts)
	order := func(a, b *layout.Part) int {
		return cmp.Or(cmp.Compare(b.Thickness, a.Thickness), cmp.Compare(a.Material, b.Material))
	}
	sort.SliceStable(sorted, func(i, j int) bool { return order(&sorted[i], &sorted[j]) < 0 })
	var out [][]layout.Part
	for i, p := range sorted {
		if i == 0 || p.Thickness != sorted[i-1].Thickness || p.Material != sorted[i-1].Material {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], p)
	}
	return out
}
