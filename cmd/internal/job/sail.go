package job

import (
	"fmt"
	"strconv"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/sail"
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
	Crew   People
	Rig    *design.Rig
	Area   *float64 // mm2
	Wind   *float64 // mm/s
	MastAt *measure.Length
	Hike   *bool
	Reefs  *int
}

// NewSail returns the request with its defaults.
func NewSail() *Sail { return &Sail{Fitting: newFitting()} }

// Fields lists the choices.
func (s *Sail) Fields() []Field {
	most := 3
	reefs := func(text string) (int, error) {
		n, err := strconv.Atoi(text)
		if err != nil || n < 0 || n > most {
			err = fmt.Errorf("%q is not understood; accepted: 0 to %d", text, most)
		}
		return n, err
	}
	return s.Fitting.fields(
		crew(&s.Crew),
		Field{Name: "rig", Takes: "spritsail|leg-of-mutton|lug|vee", Says: "the kind of sail", Value: named(&s.Rig, design.Rigs())},
		Field{Name: "area", Takes: "area", Says: "of the sail, as 3.5m2 or 38sqft; the boat and the wind decide when left out", Value: perhaps(&s.Area, parseArea, showAs(formula.Area))},
		Field{Name: "wind", Takes: "speed", Says: "the steady wind for full sail, as 5m/s or 10kn; 5 m/s when the design says nothing", Value: perhaps(&s.Wind, parseWind, showAs(formula.Speed))},
		Field{Name: "mast-at", Takes: "length", Says: "station of the mast", Value: placed(&s.MastAt)},
		Field{Name: "hike", Says: "the crew leans out over the gunwale", Value: perhaps(&s.Hike, strconv.ParseBool, strconv.FormatBool)},
		Field{Name: "reefs", Takes: "number", Says: "how many times the sail can be made smaller, 0 to 3", Value: perhaps(&s.Reefs, reefs, strconv.Itoa)},
	)
}

func parseArea(s string) (float64, error) {
	return parseQuantity(s, formula.Area, 1e4, 1e8, "3.5m2 or 38sqft")
}

func parseWind(s string) (float64, error) {
	return parseQuantity(s, formula.Speed, 100, 5e4, "5m/s, 10kn, 18km/h or 12mph")
}

func showAs(d formula.Dim) func(float64) string {
	return func(v float64) string { return formula.ShowNumber(v, d) }
}

// over puts what the request says into the design.
func (s *Sail) over(d *design.Design) (err error) {
	to := d.Sail()
	put(&to.Rig, s.Rig)
	if s.Area != nil {
		to.Area = *s.Area / 1e6
	}
	if s.Wind != nil {
		to.Wind = *s.Wind / 1e3
	}
	put(&to.MastAt, s.MastAt)
	put(&to.Reefs, s.Reefs)
	put(&to.Hike, s.Hike)
	all := d.Fitted()
	all.Sail, d.Outfit = &to, &all
	d.Crew, err = s.Crew.seated(d)
	return err
}

// Do sizes the sail.
func (s *Sail) Do(w World) (*Result, error) {
	k, err := s.changed(w, s.over, map[string]string{"outfit.sail.area": "area", "outfit.sail.wind": "wind", "outfit.sail.mast_at": "mast-at", "outfit.sail.reefs": "reefs"})
	if err != nil {
		return nil, err
	}
	all, err := s.fit(k, w, k.beside(), outfit.Sail)
	if err != nil {
		return nil, err
	}
	fit := all.Sail
	fit.Findings = append(fit.Findings, all.Findings...)
	return s.result(sailOf(k, fit, s.Units), w)
}

func sailOf(k *facts, fit *sail.Fit, units measure.System) outfitting {
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
