package job

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/wording"
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
	wind := func(text string) (float64, error) {
		v, err := parseQuantity(text, formula.Speed, 100, 5e4, "5m/s, 10kn, 18km/h or 12mph")
		return v / 1e3, err
	}
	return s.Fitting.fields(
		crew(&s.Crew),
		rigField(s.said), areaField(s.said),
		instead(s.said, "wind", "speed", "the steady wind for full sail, as 5m/s or 10kn; 5 m/s when the design says nothing", wind, func(d *design.Sail) *float64 { return &d.Wind }),
		insteadLength(s.said, "mast-at", "station of the mast", func(d *design.Sail) *measure.Length { return &d.MastAt }),
		insteadLength(s.said, "pack", "of a vee, how long its pieces may be when it is packed; 1.2 m when left out", func(d *design.Sail) *measure.Length { return &d.Pack }),
		instead(s.said, "hike", "", "the crew leans out over the gunwale", yesOrNo, func(d *design.Sail) *bool { return &d.Hike }),
		instead(s.said, "reefs", "number", "how many times the sail can be made smaller, 0 to 3", reefs, func(d *design.Sail) *int { return &d.Reefs }),
	)
}

func rigField(said changes[design.Sail]) Field {
	return instead(said, "rig", "spritsail|leg-of-mutton|lug|vee", "the kind of sail", among(namesOf(design.Rigs()), design.Rigs()), func(d *design.Sail) *design.Rig { return &d.Rig })
}

func areaField(said changes[design.Sail]) Field {
	area := func(text string) (float64, error) {
		v, err := parseQuantity(text, formula.Area, 1e4, 1e8, "3.5m2 or 38sqft")
		return v / 1e6, err
	}
	return instead(said, "area", "area", "of the sail, as 3.5m2 or 38sqft; the boat and the wind decide when left out", area, func(d *design.Sail) *float64 { return &d.Area })
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
		drawings: outfits.Sail(fit, units, s.FullSize), first: outfits.SailFirst(fit, units),
		plates:  []plateOf{boards(outfits.Parts(made)), {"cloth", outfits.PanelParts(fit), clothWide}},
		numbers: func(doc *layout.Document) (any, error) { return json.Sail(fit, doc) },
	}
}

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
		instead(p.said, "purpose", "moving|open|sail", "what the two hulls are tied together for: moving is narrow; it or the spacing must be said", among(namesOf(design.Purposes()), design.Purposes()), func(d *design.Pair) *design.Purpose { return &d.Purpose }),
		insteadLength(p.said, "spacing", "between the middle lines of the hulls; what the purpose asks when left out", func(d *design.Pair) *measure.Length { return &d.Spacing }),
		insteadLength(p.said, "apart", "between the first beam and the last", func(d *design.Pair) *measure.Length { return &d.Apart }),
		insteadLength(p.said, "width", "of a beam; the loads decide when left out", func(d *design.Pair) *measure.Length { return &d.Width }),
		insteadLength(p.said, "depth", "of a beam; the loads decide when left out", func(d *design.Pair) *measure.Length { return &d.Depth }),
		instead(p.said, "person", "mass", "who may step on the middle of one beam", person, func(d *design.Pair) *float64 { return &d.Person }),
		instead(p.said, "beams", "number", "how many beams, 2 to 4", howMany, func(d *design.Pair) *int { return &d.Beams }),
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
		drawings: outfits.Pair(craft, units, p.FullSize), first: outfits.PairFirst(craft, units),
		plates:  []plateOf{boards(outfits.Parts(made))},
		numbers: func(doc *layout.Document) (any, error) { return json.Pair(craft, doc) },
	}
}

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
		Field{Name: "paddler", Takes: "who", Says: `who rows, as "man, 175 cm, 78 kg"; the median of what is left out; the heaviest of the design's people when nobody is said`, Value: changing[design.Row]{r.said, "paddler", parseRower}},
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
			return nil, fmt.Errorf(`%q is not understood; accepted: woman or man, a stature and a weight, as "man, 175 cm, 78 kg"%s`, part, wording.Decimals(text))
		}
	}
	b := rowing.BodyOf(r.Body, float64(r.Stature), r.Mass) // said in full, lest the boat's own rower be taken
	r.Stature, r.Mass = measure.Length(b.Stature), b.Mass
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
		drawings: outfits.Row(fit, units, r.FullSize), first: outfits.RowingFirst(fit, units), plates: []plateOf{boards(outfits.Parts(made))},
		numbers: func(doc *layout.Document) (any, error) { return json.Row(fit, doc) },
	}
}

// howMany reads a number of beams; the design says how many there may be.
func howMany(text string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil {
		return 0, fmt.Errorf("%q is not understood; accepted: a whole number, 2 to 4", text)
	}
	return n, nil
}
