// Package kit lists what an outfit is made of: pieces of wood with their size and
// place, things to buy, and sewing. One list serves its weight, the boards, the
// shopping and the hours. Units: mm, kg.
package kit

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// Form is how a piece is worked.
type Form int

// The forms.
const (
	Board Form = iota // sawn to an outline
	Spar              // planed round along its length
	Beam              // planed square
)

// Piece is a kind of piece of wood.
type Piece struct {
	Group             string // the entry of the list of weights that it is counted in
	Name              string // as its pattern has it
	Count             int
	Form              Form
	Wood              string
	Long, Wide, Thick float64         // of the block that it fills, grain along Long
	Grain             string          // "" for along Long
	Fill              float64         // share of the block that is left in the end
	At                geometry.Point3 // the middle of all of them
}

// Volume returns the wood of one finished piece, mm3.
func (p Piece) Volume() float64 { return p.Long * p.Wide * p.Thick * p.Fill }

// Block takes the block from the outline that is sawn, its X along the grain.
func (p *Piece) Block(outline []geometry.Point) {
	b := geometry.Around(outline...)
	p.Long, p.Wide = b.W(), b.H()
	p.Fill = math.Abs(curve.Area(outline)) / (p.Long * p.Wide)
}

// Thing is bought.
type Thing struct {
	Group  string
	Key    string // as price tables name it
	Name   string
	Amount float64
	Unit   string // "m", "m2", "each"
	How    string // how the amount is worked out
	Mass   float64
	At     geometry.Point3
}

// Kit is all of an outfit.
type Kit struct {
	Name    string // of the outfit, "sail"
	Pieces  []Piece
	Things  []Thing
	Sewing  float64 // seams and hems, m
	Corners int     // of a sail, to be patched
}

// Items lists what the kit weighs, one item a group, in the order of the pieces.
//
// Errors: a wood that is not known.
func (k Kit) Items(d *design.Design) ([]weight.Item, error) {
	var out []weight.Item
	add := func(group string, l float.Load) {
		for i := range out {
			if out[i].Name == group {
				out[i].Loads = append(out[i].Loads, l)
				return
			}
		}
		out = append(out, weight.Item{Name: group, Loads: []float.Load{l}})
	}
	for _, p := range k.Pieces {
		s, err := d.Wood(p.Wood)
		if err != nil {
			return nil, err
		}
		add(p.Group, float.Load{Mass: float64(p.Count) * p.Volume() * s.Density * 1e-9, At: p.At})
	}
	for _, t := range k.Things {
		if t.Mass > 0 {
			add(t.Group, float.Load{Mass: t.Mass, At: t.At})
		}
	}
	return out, nil
}

// Round is the share of a square block that a parallel round stick is.
const Round = math.Pi / 4
