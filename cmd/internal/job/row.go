package job

import (
	"fmt"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/rowing"
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
	Rower  *Rower
	Span   *measure.Length
	Oar    *measure.Length
	Seat   *measure.Length
	SeatAt *measure.Length
	Pull   *float64 // N on each handle
}

// Rower is the body that rows: what is 0 is the median's.
type Rower struct {
	Body    design.Body
	Stature float64 // mm
	Mass    float64 // kg
}

// NewRow returns the request with its defaults.
func NewRow() *Row { return &Row{Fitting: newFitting()} }

// Fields lists the choices.
func (r *Row) Fields() []Field {
	pull := func(s string) (float64, error) {
		v, err := parseQuantity(s, formula.Force, 1e3, 1e7, "250N")
		return v / 1e3, err
	}
	size := func(name, says string, to **measure.Length) Field {
		return Field{Name: name, Takes: "length", Says: says, Value: placed(to)}
	}
	return r.Fitting.fields(
		Field{Name: "paddler", Takes: "who", Says: `who rows, as "man, 175 cm, 78 kg"; the median of what is left out`, Value: perhaps(&r.Rower, parseRower, Rower.String)},
		size("span", "between the rowlocks", &r.Span),
		size("oar", "length of the oars you have", &r.Oar),
		size("seat", "height of the seat over the floor", &r.Seat),
		size("seat-at", "station of the middle of the seat", &r.SeatAt),
		Field{Name: "pull", Takes: "force", Says: "on each handle that the frame must take, as 250N", Value: perhaps(&r.Pull, pull, func(v float64) string { return fmt.Sprintf("%gN", v) })},
	)
}

// String writes the rower as parseRower reads one.
func (r Rower) String() string {
	out := r.Body.String()
	if r.Stature > 0 {
		out += fmt.Sprintf(", %g mm", r.Stature)
	}
	if r.Mass > 0 {
		out += fmt.Sprintf(", %g kg", r.Mass)
	}
	return out
}

// parseRower reads what is known of a rower, in any order.
func parseRower(text string) (Rower, error) {
	var r Rower
	for _, part := range strings.Split(text, ",") {
		part = strings.ToLower(strings.TrimSpace(part))
		if r.Body.UnmarshalText([]byte(part)) == nil {
			continue
		}
		v, d, err := formula.Quantity(part)
		switch {
		case err == nil && d == formula.Length:
			r.Stature = v
		case err == nil && d == formula.Mass:
			r.Mass = v
		default:
			return r, fmt.Errorf(`%q is not understood; accepted: woman or man, a stature and a weight, as "man, 175 cm, 78 kg"`, part)
		}
	}
	return r, nil
}

// over puts what the request says into the design.
func (r *Row) over(d *design.Design) error {
	to := d.Row()
	if r.Rower != nil {
		to.Body, to.Stature, to.Mass = r.Rower.Body, measure.Length(r.Rower.Stature), r.Rower.Mass
	}
	put(&to.Span, r.Span)
	put(&to.Oar, r.Oar)
	put(&to.Seat, r.Seat)
	put(&to.SeatAt, r.SeatAt)
	put(&to.Pull, r.Pull)
	all := d.Fitted()
	all.Row, d.Outfit = &to, &all
	return nil
}

// Do sizes the frame and the oars.
func (r *Row) Do(w World) (*Result, error) {
	k, err := r.changed(w, r.over, map[string]string{"outfit.row.stature": "paddler", "outfit.row.mass": "paddler", "outfit.row.span": "span", "outfit.row.oar": "oar", "outfit.row.seat": "seat", "outfit.row.seat_at": "seat-at", "outfit.row.pull": "pull"})
	if err != nil {
		return nil, err
	}
	all, err := r.fit(k, w, k.beside(), outfit.Row)
	if err != nil {
		return nil, err
	}
	fit := all.Row
	fit.Findings = append(fit.Findings, all.Findings...)
	return r.result(rowOf(k, fit, r.Units), w)
}

func rowOf(k *facts, fit *rowing.Fit, units measure.System) outfitting {
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
