package main

import (
	"fmt"
	"io"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/rowing"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/layout/outfits"
	"ribwright/render/json"
	outfitpage "ribwright/render/outfits"
)

func rowVerb() verb {
	v := verb{
		name:    "row",
		line:    "a clip-on frame, oars and a seat to row the boat, fitted to the rower",
		usage:   "ribwright row [DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "] [flags]",
		example: "ribwright row lake --rower man --stature 1755mm --loft --paper a4",
	}
	v.run = func(args []string, c console) error { return rowRun(v, args, c) }
	return v
}

// bodyFlag is whose proportions the rower has.
type bodyFlag struct {
	given bool
	design.Body
}

func (b *bodyFlag) Type() string { return "woman|man" }
func (b *bodyFlag) Set(s string) error {
	b.given = true
	return b.UnmarshalText([]byte(strings.ToLower(strings.TrimSpace(s))))
}

// placeFlag is a station: a length either way.
type placeFlag struct{ mm *float64 }

func (p *placeFlag) String() string { return "" }
func (p *placeFlag) Type() string   { return "length" }
func (p *placeFlag) Set(s string) error {
	v, err := measure.ParseLength(s)
	if err == nil {
		mm := float64(v)
		p.mm = &mm
	}
	return err
}

// rowFlags are what the flags say of the rower and the frame.
type rowFlags struct {
	body                     bodyFlag
	mass                     massFlag
	stature, span, oar, seat lengthFlag
	seatAt                   placeFlag
	pull                     float64
}

func (r *rowFlags) set(t *fitting) {
	t.flags.Var(&r.body, "rower", "whose proportions the rower has where they are not measured")
	t.flags.Var(&r.stature, "stature", "height of the rower standing; the median when left out")
	t.flags.Var(&r.mass, "mass", "of the rower; the median when left out")
	t.flags.Var(&r.span, "span", "between the rowlocks")
	t.flags.Var(&r.oar, "oar", "length of the oars you have")
	t.flags.Var(&r.seat, "seat", "height of the seat over the floor")
	t.flags.Var(&r.seatAt, "seat-at", "station of the middle of the seat")
	t.flags.Float64Var(&r.pull, "pull", 0, "on each handle that the frame must take, `newtons`")
}

// over puts what the flags say over what the design has.
func (r *rowFlags) over(t *fitting, d *design.Design) {
	to := d.Row()
	if r.body.given {
		to.Body, to.Stature, to.Mass = r.body.Body, 0, 0
	}
	overLengths([]overLength{{&to.Stature, r.stature}, {&to.Span, r.span}, {&to.Oar, r.oar}, {&to.Seat, r.seat}})
	if r.seatAt.mm != nil {
		to.SeatAt = measure.Length(*r.seatAt.mm)
	}
	if r.mass.kg != 0 {
		to.Mass = r.mass.kg
	}
	if t.flags.Changed("pull") {
		to.Pull = r.pull
	}
	o := d.Fitted()
	o.Row = &to
	d.Outfit = &o
}

func rowRun(v verb, args []string, c console) error {
	t := newFitting(v)
	var given rowFlags
	given.set(t)
	rest, err := t.read(args, 1, c)
	if err != nil {
		return err
	}
	d, name, err := usually(rest)
	if err != nil {
		return err
	}
	given.over(t, d)
	if err := t.checked(d, map[string]string{"outfit.row.stature": "stature", "outfit.row.mass": "mass", "outfit.row.span": "span", "outfit.row.oar": "oar",
		"outfit.row.seat": "seat", "outfit.row.seat_at": "seat-at", "outfit.row.pull": "pull"}); err != nil {
		return err
	}
	fitted, err := t.fit(d, name, besideOf(d, name), outfit.Row)
	if err != nil {
		return err
	}
	fitted.Row.Findings = append(fitted.Row.Findings, fitted.Findings...)
	return t.tell(c, rowTold(t, fitted.Row, name))
}

func rowTold(t *fitting, fit *rowing.Fit, name string) told {
	units := t.units.System
	boards := outfits.RowingBoards(fit, units)
	title := fit.Boat.Frame.Design.Title
	return told{
		design: fit.Boat.Frame.Design, name: name,
		page:   func(w io.Writer) error { return outfitpage.RowPage(w, fit, units) },
		json:   func(doc *layout.Document) (any, error) { return json.Row(fit, doc) },
		figure: figure.Rowing(fit),
		about: fmt.Sprintf("%s from the side with a rower on the seat and heels on the footrest, and where it floats upright from astern with one oar in the water and one carried clear. Oars %.0f mm, span %.0f mm.",
			title, fit.Oar.Length, fit.Span),
		purpose:  "Rowing: clip-on frame, seat and footrest for a rower; oars are bought or made to the figures",
		drawings: outfits.Drawings(boards, units), parts: outfits.Parts(boards), notes: outfits.RowingNotes(fit, units),
	}
}
