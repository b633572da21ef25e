package job

import (
	"cmp"
	"fmt"
	"strconv"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
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
	Beside string // the second boat; "" for the design's, or one like the first
	said   changes[design.Pair]
}

// NewPair returns the request with its defaults.
func NewPair() *Pair { return &Pair{Fitting: newFitting(), said: changes[design.Pair]{}} }

// Fields lists the choices.
func (p *Pair) Fields() []Field {
	person := func(s string) (float64, error) {
		return parseQuantity(s, formula.Mass, lightest, heaviest, "100kg or 220lb")
	}
	return p.Fitting.fields(
		insteadLength(p.said, "spacing", "between the middle lines of the hulls; half the length when left out", func(d *design.Pair) *measure.Length { return &d.Spacing }),
		insteadLength(p.said, "apart", "between the first beam and the last", func(d *design.Pair) *measure.Length { return &d.Apart }),
		insteadLength(p.said, "width", "of a beam; the loads decide when left out", func(d *design.Pair) *measure.Length { return &d.Width }),
		insteadLength(p.said, "depth", "of a beam; the loads decide when left out", func(d *design.Pair) *measure.Length { return &d.Depth }),
		instead(p.said, "person", "mass", "who may step on the middle of one beam", person, func(d *design.Pair) *float64 { return &d.Person }),
		instead(p.said, "beams", "number", "how many beams, 2 to 4", strconv.Atoi, func(d *design.Pair) *int { return &d.Beams }),
	)
}

// Name takes the design and perhaps the second boat.
func (p *Pair) Name(names []string) {
	p.Design = names[0]
	if len(names) > 1 {
		p.Beside = names[1]
	}
}

func (p *Pair) over(d *design.Design) error {
	to := p.said.over(d.Pair())
	if p.Beside != "" {
		to.With = p.Beside
	}
	all := d.Fitted()
	all.Pair, d.Outfit = to, &all
	return nil
}

// Do sizes the pair.
func (p *Pair) Do(w World) (*Result, error) {
	return p.make(w, outfit.Pair, p, func(k *facts) string {
		return cmp.Or(p.Beside, k.beside()) // as it was given, not looked for beside the first design
	})
}

func (p *Pair) outfitting(k *facts, all *outfit.Outfits) outfitting {
	craft, units := all.Pair, p.Units
	craft.Findings = append(craft.Findings, all.Findings...)
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
