package main

import (
	"fmt"
	"io"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/pair"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/layout/outfits"
	"ribwright/render/json"
	outfitpage "ribwright/render/outfits"
)

func pairVerb() verb {
	v := verb{
		name:    "pair",
		line:    "two hulls side by side: how stiff, when the windward one lifts, and beams that hold",
		usage:   "ribwright pair [DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "] [DESIGN2] [flags]",
		example: "ribwright pair river --spacing 2400mm --svg",
	}
	v.run = func(args []string, c console) error { return pairRun(v, args, c) }
	return v
}

func pairRun(v verb, args []string, c console) error {
	t := newFitting(v)
	var spacing, apart, width, depth lengthFlag
	var person massFlag
	t.flags.Var(&spacing, "spacing", "between the middle lines of the hulls; half the length when left out")
	t.flags.Var(&apart, "apart", "between the first beam and the last")
	t.flags.Var(&width, "width", "of a beam; the loads decide when left out")
	t.flags.Var(&depth, "depth", "of a beam; the loads decide when left out")
	t.flags.Var(&person, "person", "who may step on the middle of one beam")
	beams := t.flags.Int("beams", 0, "how many `beams`, 2 to 4")
	rest, err := t.read(args, 2, c)
	if err != nil {
		return err
	}
	d, name, err := usually(rest)
	if err != nil {
		return err
	}
	p := d.Pair()
	overLengths([]overLength{{&p.Spacing, spacing}, {&p.Apart, apart}, {&p.Width, width}, {&p.Depth, depth}})
	if person.kg != 0 {
		p.Person = person.kg
	}
	if t.flags.Changed("beams") {
		p.Beams = *beams
	}
	if len(rest) == 2 {
		p.With = rest[1]
	}
	o := d.Fitted()
	o.Pair = &p
	d.Outfit = &o
	if err := t.checked(d, map[string]string{"outfit.pair.spacing": "spacing", "outfit.pair.apart": "apart", "outfit.pair.width": "width",
		"outfit.pair.depth": "depth", "outfit.pair.person": "person", "outfit.pair.beams": "beams"}); err != nil {
		return err
	}
	beside := besideOf(d, name)
	if len(rest) == 2 { // typed, not looked for beside the first design
		beside = rest[1]
	}
	fitted, err := t.fit(d, name, beside, outfit.Pair)
	if err != nil {
		return err
	}
	fitted.Pair.Findings = append(fitted.Pair.Findings, fitted.Findings...)
	return t.tell(c, pairTold(t, fitted.Pair, name))
}

func pairTold(t *fitting, craft *pair.Craft, name string) told {
	units := t.units.System
	boards := outfits.PairBoards(craft, units)
	return told{
		design: craft.Boats[0].Frame.Design, name: name,
		page:   func(w io.Writer) error { return outfitpage.PairPage(w, craft, units) },
		json:   func(doc *layout.Document) (any, error) { return json.Pair(craft, doc) },
		figure: figure.Pair(craft),
		about: fmt.Sprintf("Two hulls %.0f mm apart from astern with a beam across both, the curve of their righting lever up to where it ends, and bars for the stress in a beam.",
			craft.Spacing),
		purpose:  "Two hulls side by side: beams with the places of both boats' gunwales, and saddles under them",
		drawings: append(outfits.BeamDrawings(craft, units), outfits.Drawings(boards, units)...), parts: outfits.Parts(boards), notes: outfits.PairNotes(craft, units),
	}
}
