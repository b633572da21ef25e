package job

import (
	"fmt"
	"strconv"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/sizing/formula"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/layout/outfits"
	"ribwright/layout/report/fitted"
	"ribwright/render/json"
)

// Pair asks for two hulls side by side. What is left out is as the design has it.
type Pair struct {
	Fitting
	Beside  string // the second boat; "" for the design's, or one like the first
	Spacing *measure.Length
	Apart   *measure.Length
	Width   *measure.Length
	Depth   *measure.Length
	Person  *float64 // kg
	Beams   *int
}

// NewPair returns the request with its defaults.
func NewPair() *Pair { return &Pair{Fitting: newFitting()} }

// Fields lists the choices.
func (p *Pair) Fields() []Field {
	size := func(name, says string, to **measure.Length) Field {
		return Field{Name: name, Takes: "length", Says: says, Value: placed(to)}
	}
	person := func(s string) (float64, error) {
		return parseQuantity(s, formula.Mass, lightest, heaviest, "100kg or 220lb")
	}
	return p.Fitting.fields(
		size("spacing", "between the middle lines of the hulls; half the length when left out", &p.Spacing),
		size("apart", "between the first beam and the last", &p.Apart),
		size("width", "of a beam; the loads decide when left out", &p.Width),
		size("depth", "of a beam; the loads decide when left out", &p.Depth),
		Field{Name: "person", Takes: "mass", Says: "who may step on the middle of one beam", Value: perhaps(&p.Person, person, showAs(formula.Mass))},
		Field{Name: "beams", Takes: "number", Says: "how many beams, 2 to 4", Value: perhaps(&p.Beams, strconv.Atoi, strconv.Itoa)},
	)
}

// Name takes the design and perhaps the second boat.
func (p *Pair) Name(names []string) {
	p.Design = names[0]
	if len(names) > 1 {
		p.Beside = names[1]
	}
}

// over puts what the request says into the design.
func (p *Pair) over(d *design.Design) error {
	to := d.Pair()
	put(&to.Spacing, p.Spacing)
	put(&to.Apart, p.Apart)
	put(&to.Width, p.Width)
	put(&to.Depth, p.Depth)
	put(&to.Person, p.Person)
	put(&to.Beams, p.Beams)
	if p.Beside != "" {
		to.With = p.Beside
	}
	all := d.Fitted()
	all.Pair, d.Outfit = &to, &all
	return nil
}

// Do sizes the pair.
func (p *Pair) Do(w World) (*Result, error) {
	k, err := p.changed(w, p.over, map[string]string{"outfit.pair.spacing": "spacing", "outfit.pair.apart": "apart", "outfit.pair.width": "width", "outfit.pair.depth": "depth", "outfit.pair.person": "person", "outfit.pair.beams": "beams"})
	if err != nil {
		return nil, err
	}
	beside := p.Beside // as it was given, not looked for beside the first design
	if beside == "" {
		beside = k.beside()
	}
	all, err := p.fit(k, w, beside, outfit.Pair)
	if err != nil {
		return nil, err
	}
	craft := all.Pair
	craft.Findings = append(craft.Findings, all.Findings...)
	return p.result(pairOf(k, craft, p.Units), w)
}

func pairOf(k *facts, craft *pair.Craft, units measure.System) outfitting {
	made := outfits.PairBoards(craft, units)
	return outfitting{
		facts: k, name: "pair", kind: "two hulls side by side", blocks: fitted.Pair(craft, units), figure: figure.Pair(craft),
		about: fmt.Sprintf("Two hulls %.0f mm apart from astern with a beam across both, the curve of their righting lever up to where it ends, and bars for the stress in a beam.",
			craft.Spacing),
		purpose:  "Two hulls side by side: beams with the places of both boats' gunwales, and saddles under them",
		drawings: append(outfits.BeamDrawings(craft, units), outfits.Drawings(made, units)...), notes: outfits.PairNotes(craft, units),
		plates:  []plateOf{boards(outfits.Parts(made))},
		numbers: func(doc *layout.Document) (any, error) { return json.Pair(craft, doc) },
	}
}
