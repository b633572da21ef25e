package job

import (
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

// Sail asks for a small sail. What is left out is as the design has it.
type Sail struct {
	Fitting
	Crew People
	said changes[design.Sail]
}

// NewSail returns the request with its defaults.
func NewSail() *Sail { return &Sail{Fitting: newFitting(), said: changes[design.Sail]{}} }

// Fields lists the choices.
func (s *Sail) Fields() []Field {
	const most = 3
	reefs := func(text string) (int, error) {
		n, err := strconv.Atoi(text)
		if err != nil || n < 0 || n > most {
			err = fmt.Errorf("%q is not understood; accepted: 0 to %d", text, most)
		}
		return n, err
	}
	area := func(text string) (float64, error) {
		v, err := parseQuantity(text, formula.Area, 1e4, 1e8, "3.5m2 or 38sqft")
		return v / 1e6, err
	}
	wind := func(text string) (float64, error) {
		v, err := parseQuantity(text, formula.Speed, 100, 5e4, "5m/s, 10kn, 18km/h or 12mph")
		return v / 1e3, err
	}
	return s.Fitting.fields(
		crew(&s.Crew),
		instead(s.said, "rig", "spritsail|leg-of-mutton|lug|vee", "the kind of sail", among(namesOf(design.Rigs()), design.Rigs()), func(d *design.Sail) *design.Rig { return &d.Rig }),
		instead(s.said, "area", "area", "of the sail, as 3.5m2 or 38sqft; the boat and the wind decide when left out", area, func(d *design.Sail) *float64 { return &d.Area }),
		instead(s.said, "wind", "speed", "the steady wind for full sail, as 5m/s or 10kn; 5 m/s when the design says nothing", wind, func(d *design.Sail) *float64 { return &d.Wind }),
		insteadLength(s.said, "mast-at", "station of the mast", func(d *design.Sail) *measure.Length { return &d.MastAt }),
		instead(s.said, "hike", "", "the crew leans out over the gunwale", strconv.ParseBool, func(d *design.Sail) *bool { return &d.Hike }),
		instead(s.said, "reefs", "number", "how many times the sail can be made smaller, 0 to 3", reefs, func(d *design.Sail) *int { return &d.Reefs }),
	)
}

func (s *Sail) over(d *design.Design) (err error) {
	all := d.Fitted()
	all.Sail, d.Outfit = s.said.over(d.Sail()), &all
	d.Crew, err = s.Crew.seated(d)
	return err
}

// Do sizes the sail.
func (s *Sail) Do(w World) (*Result, error) { return s.make(w, outfit.Sail, s, (*facts).beside) }

func (s *Sail) outfitting(k *facts, all *outfit.Outfits) outfitting {
	fit, units := all.Sail, s.Units
	fit.Findings = append(fit.Findings, all.Findings...)
	made := outfits.SailBoards(fit, units)
	return outfitting{
		facts: k, name: "sail", kind: "under sail", blocks: fitted.Sail(fit, units), figure: figure.Sail(fit),
		about: fmt.Sprintf("%s from the side under a %s of %s with its reefs, and the righting moment with the crew in the middle, inside and out, to where the lee gunwale dips.",
			k.design.Title, fit.Sail.Rig, m2(fit.Plan.Area())),
		purpose:  fmt.Sprintf("Sailing: %s of %s; step, partner, leeboard and sail panels", fit.Sail.Rig, m2(fit.Plan.Area())),
		drawings: append(outfits.Drawings(made, units), outfits.PanelDrawings(fit, units)...), notes: outfits.SailNotes(fit, units),
		plates:  []plateOf{boards(outfits.Parts(made)), {"cloth", outfits.PanelParts(fit), clothWide}},
		numbers: func(doc *layout.Document) (any, error) { return json.Sail(fit, doc) },
	}
}
