// Package outfit sizes all outfits that a design has aboard, each with the weight of
// the others in the boat, and says where they are in each other's way, so that
// nothing is typed twice.
package outfit

import (
	"slices"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water"
	"ribwright/geometry/wording"
)

// Ship is the boat to fit out, and the one beside it in a pair.
type Ship struct {
	Boat   aboard.Boat  // with its people and gear, without outfits
	Beside *aboard.Boat // nil for one like this, without its other outfits
	Water  water.Water
}

// NewShip makes a ship of a frame, with the people of its design or a usual one.
//
// Errors: an outside that cannot be drawn, or a wood that is not known.
func NewShip(f *frame.Frame, gear []design.Gear, w water.Water) (Ship, error) {
	b, err := aboard.New(f, weight.People(f.Design), gear)
	return Ship{Boat: b, Water: w}, err
}

// Name is what an outfit is called in the design, as a verb and as a kit.
type Name string

// The outfits.
const (
	Sail Name = "sail"
	Pair Name = "pair"
	Row  Name = "row"
)

func names() []Name { return []Name{Sail, Pair, Row} }

// Words are what the outfit is called in sentences.
func (n Name) Words() string {
	return map[Name]string{Sail: "the sail", Pair: "the pair", Row: "the rowing outfit"}[n]
}

// Outfits are what is aboard; nil for what is not.
type Outfits struct {
	Sail     *sail.Fit
	Pair     *pair.Craft
	Row      *rowing.Fit
	Findings finding.List // what is left out and why, and what is in another's way
}

// Of sizes the outfits of the ship's design: each alone, then each with the others'
// weight as it was found alone. One that its own verb would refuse, or under which
// the boat does not stay upright, is left out and named in the notes; one that the
// boat stands only alone keeps its size and is named too.
func Of(s Ship) *Outfits {
	out := &Outfits{}
	alone := s.alone(out, "")
	if len(alone) < 2 {
		return out
	}
	for _, n := range names() {
		if _, aboard := alone[n]; !aboard {
			continue
		}
		if err := s.size(out, n, alone.but(n)); err != nil {
			out.Findings.Judge(finding.Unsafe, "outfit", finding.Arithmetic, "%s is counted, but the boat does not stand it with the other outfits aboard: %v", n.Words(), err)
		}
	}
	out.clash()
	return out
}

// One sizes one outfit for its own verb, with the weight of the design's others. The
// notes name those that cannot be counted.
//
// Errors: what the outfit's package refuses.
func One(s Ship, n Name) (*Outfits, error) {
	others := &Outfits{}
	weights := s.alone(others, n)
	out := &Outfits{Findings: others.Findings}
	return out, s.size(out, n, weights.but(n))
}

type weights map[Name][]weight.Item

func (w weights) but(n Name) []weight.Item {
	var out []weight.Item
	for _, other := range names() {
		if other != n {
			out = append(out, w[other]...)
		}
	}
	return out
}

// alone sizes and weighs each outfit of the design but one as if it were the only one.
func (s Ship) alone(out *Outfits, but Name) weights {
	o, all := s.Boat.Frame.Design.Fitted(), weights{}
	for _, n := range names() {
		if n == but || n == Sail && o.Sail == nil || n == Pair && o.Pair == nil || n == Row && o.Row == nil {
			continue
		}
		err := s.size(out, n, nil)
		if err == nil {
			all[n], err = out.of(n).Items()
		}
		if err != nil {
			out.Findings.Judge(finding.Unfit, "outfit", finding.Arithmetic, "%s is not counted: %v", n.Words(), err)
		}
	}
	return all
}

// size works out one outfit, with what the others weigh.
func (s Ship) size(out *Outfits, n Name, others []weight.Item) error {
	b := s.Boat
	b.Outfits = others
	d := b.Frame.Design
	switch n {
	case Sail:
		fit, err := sail.New(b, d.Sail(), s.Water)
		return keep(&out.Sail, fit, err)
	case Row:
		fit, err := rowing.New(b, d.Row(), s.Water)
		return keep(&out.Row, fit, err)
	}
	beside := s.Boat
	if s.Beside != nil {
		beside = *s.Beside
	}
	craft, err := pair.New(b, beside, d.Pair(), s.Water)
	if o := beside.Frame.Design.Fitted(); err == nil && s.Beside != nil && (o.Sail != nil || o.Row != nil) {
		craft.Findings.Warn("second boat", finding.Arithmetic, "the outfits that %s has itself are not counted in the pair", wording.OneLine(beside.Frame.Design.Title))
	}
	return keep(&out.Pair, craft, err)
}

// keep keeps what was sized; after an error what was there before stays.
func keep[T any](to **T, fit *T, err error) error {
	if err == nil {
		*to = fit
	}
	return err
}

type fitted interface {
	Kit() kit.Kit
	Items() ([]weight.Item, error)
}

// of returns an outfit that was sized, or nil.
func (o *Outfits) of(n Name) fitted {
	switch {
	case n == Sail && o.Sail != nil:
		return o.Sail
	case n == Pair && o.Pair != nil:
		return o.Pair
	case n == Row && o.Row != nil:
		return o.Row
	}
	return nil
}

// Weight is what one outfit weighs in the boat.
type Weight struct {
	Name  Name
	Items []weight.Item
}

// Weights lists what each outfit weighs.
//
// Errors: a wood that is not known.
func (o *Outfits) Weights() ([]Weight, error) {
	var out []Weight
	for _, n := range names() {
		f := o.of(n)
		if f == nil {
			continue
		}
		items, err := f.Items()
		if err != nil {
			return nil, err
		}
		out = append(out, Weight{n, items})
	}
	return out, nil
}

// PutAboard puts the outfits into a boat by weight; what is to be said of them together
// becomes the boat's notes.
//
// Errors: a wood that is not known.
func (o *Outfits) PutAboard(b aboard.Boat) (aboard.Boat, error) {
	weights, err := o.Weights()
	for _, w := range weights {
		b.Outfits = append(b.Outfits, w.Items...)
	}
	b.Notes = slices.Clone(b.Notes)
	for _, n := range o.Findings {
		b.Notes = append(b.Notes, n.Text)
	}
	return b, err
}

// Kits lists what all outfits are made of, named as the outfits are.
func (o *Outfits) Kits() []kit.Kit {
	var out []kit.Kit
	for _, n := range names() {
		if f := o.of(n); f != nil {
			out = append(out, f.Kit())
		}
	}
	return out
}
