package job

import (
	"fmt"
	"strings"

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

// Row asks for a frame, oars and a seat to row the boat. What is left out is as the
// design has it.
type Row struct {
	Fitting
	said changes[design.Row]
}

// NewRow returns the request with its defaults.
func NewRow() *Row { return &Row{Fitting: newFitting(), said: changes[design.Row]{}} }

// Fields lists the choices.
func (r *Row) Fields() []Field {
	pull := func(s string) (float64, error) {
		v, err := parseQuantity(s, formula.Force, 1e3, 1e7, "250N")
		return v / 1e3, err
	}
	return r.Fitting.fields(
		Field{Name: "paddler", Takes: "who", Says: `who rows, as "man, 175 cm, 78 kg"; the median of what is left out`, Value: changing[design.Row]{r.said, "paddler", parseRower}},
		insteadLength(r.said, "span", "between the rowlocks", func(d *design.Row) *measure.Length { return &d.Span }),
		insteadLength(r.said, "oar", "length of the oars you have", func(d *design.Row) *measure.Length { return &d.Oar }),
		insteadLength(r.said, "seat", "height of the seat over the floor", func(d *design.Row) *measure.Length { return &d.Seat }),
		insteadLength(r.said, "seat-at", "station of the middle of the seat", func(d *design.Row) *measure.Length { return &d.SeatAt }),
		instead(r.said, "pull", "force", "on each handle that the frame must take, as 250N", pull, func(d *design.Row) *float64 { return &d.Pull }),
	)
}

// parseRower reads what is known of a rower, in any order; the rest is the median's.
func parseRower(text string) (func(*design.Row), error) {
	var r design.Row
	for _, part := range strings.Split(text, ",") {
		part = strings.ToLower(strings.TrimSpace(part))
		if r.Body.UnmarshalText([]byte(part)) == nil {
			continue
		}
		v, d, err := formula.Quantity(part)
		switch {
		case err == nil && d == formula.Length:
			r.Stature = measure.Length(v)
		case err == nil && d == formula.Mass:
			r.Mass = v
		default:
			return nil, fmt.Errorf(`%q is not understood; accepted: woman or man, a stature and a weight, as "man, 175 cm, 78 kg"`, part)
		}
	}
	return func(to *design.Row) { to.Body, to.Stature, to.Mass = r.Body, r.Stature, r.Mass }, nil
}

func (r *Row) over(d *design.Design) error {
	all := d.Fitted()
	all.Row, d.Outfit = r.said.over(d.Row()), &all
	return nil
}

// Do sizes the frame and the oars.
func (r *Row) Do(w World) (*Result, error) { return r.make(w, outfit.Row, r, (*facts).beside) }

func (r *Row) outfitting(k *facts, all *outfit.Outfits) outfitting {
	fit, units := all.Row, r.Units
	fit.Findings = append(fit.Findings, all.Findings...)
	made := outfits.RowingBoards(fit, units)
	return outfitting{
		facts: k, name: "row", kind: "rowed", blocks: fitted.Rowing(fit, units), figure: figure.Rowing(fit),
		about: fmt.Sprintf("%s from the side with a rower on the seat and heels on the footrest, and where it floats upright from astern with one oar in the water and one carried clear. Oars %.0f mm, span %.0f mm.",
			k.design.Title, fit.Oar.Length, fit.Span),
		purpose:  "Rowing: clip-on frame, seat and footrest for a rower; oars are bought or made to the figures",
		drawings: outfits.Drawings(made, units), notes: outfits.RowingNotes(fit, units), plates: []plateOf{boards(outfits.Parts(made))},
		numbers: func(doc *layout.Document) (any, error) { return json.Row(fit, doc) },
	}
}
