package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/layout/outfits"
	"ribwright/render/json"
	outfitpage "ribwright/render/outfits"
)

func sailVerb() verb {
	v := verb{
		name:    "sail",
		line:    "a small sail: how much the boat stands, in what wind to reef and to stop",
		usage:   "ribwright sail [DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "] [flags]",
		example: "ribwright sail lake --rig lug --wind 5m/s --loft --paper roll36",
	}
	v.run = func(args []string, c console) error { return sailRun(v, args, c) }
	return v
}

// rigFlag is a kind of sail.
type rigFlag struct {
	given bool
	design.Rig
}

func (r *rigFlag) String() string { return "" }
func (r *rigFlag) Type() string   { return "spritsail|leg-of-mutton|lug|vee" }
func (r *rigFlag) Set(s string) error {
	r.given = true
	return r.UnmarshalText([]byte(strings.ToLower(strings.TrimSpace(s))))
}

// windFlag is a speed: metres per second, or knots when it says so.
type windFlag struct{ v float64 }

func (w *windFlag) String() string { return "" }
func (w *windFlag) Type() string   { return "speed" }
func (w *windFlag) Set(s string) error {
	text, per := strings.ToLower(strings.TrimSpace(s)), 1.0
	for _, u := range []struct {
		name string
		per  float64
	}{{"m/s", 1}, {"km/h", 1 / 3.6}, {"knots", 1.852 / 3.6}, {"kn", 1.852 / 3.6}, {"mph", 0.44704}} {
		if rest, ok := strings.CutSuffix(text, u.name); ok {
			text, per = strings.TrimSpace(rest), u.per
			v, err := strconv.ParseFloat(text, 64)
			if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
				break
			}
			w.v = v * per
			return nil
		}
	}
	return fmt.Errorf("%q is no wind; accepted: a number with its unit, as 5m/s, 10kn, 18km/h or 12mph", s)
}

// areaFlag is an area: square metres, or square feet when it says so.
type areaFlag struct{ m2 float64 }

func (a *areaFlag) String() string { return "" }
func (a *areaFlag) Type() string   { return "area" }
func (a *areaFlag) Set(s string) error {
	text := strings.ToLower(strings.TrimSpace(s))
	for _, u := range []struct {
		name string
		per  float64
	}{{"m2", 1}, {"sqft", 0.09290304}, {"ft2", 0.09290304}} {
		if rest, ok := strings.CutSuffix(text, u.name); ok {
			v, err := strconv.ParseFloat(strings.TrimSpace(rest), 64)
			if err == nil && v > 0 && !math.IsInf(v, 0) {
				a.m2 = v * u.per
				return nil
			}
		}
	}
	return fmt.Errorf("%q is no area; accepted: a number with its unit, as 3.5m2 or 38sqft", s)
}

// sailFlags are what the flags say of sail and crew.
type sailFlags struct {
	kind  rigFlag
	area  areaFlag
	wind  windFlag
	mast  placeFlag
	crew  crewFlag
	hike  bool
	reefs int
}

func (s *sailFlags) set(t *fitting) {
	t.flags.Var(&s.kind, "rig", "the kind of sail")
	t.flags.Var(&s.area, "area", "of the sail; the boat and the wind decide when left out")
	t.flags.Var(&s.wind, "wind", "the steady wind for full sail, 5 m/s when the design says nothing")
	t.flags.Var(&s.mast, "mast-at", "station of the mast")
	t.flags.Var(&s.crew, "crew", "who is aboard instead of the design's people, as 70,85")
	t.flags.BoolVar(&s.hike, "hike", false, "the crew leans out over the gunwale")
	t.flags.IntVar(&s.reefs, "reefs", 1, "how many times the sail can be made smaller, `0 to 3`")
}

// over puts what the flags say over what the design has.
func (s *sailFlags) over(t *fitting, d *design.Design) (err error) {
	to := d.Sail()
	if s.kind.given {
		to.Rig = s.kind.Rig
	}
	if s.area.m2 != 0 {
		to.Area = s.area.m2
	}
	if s.wind.v != 0 {
		to.Wind = s.wind.v
	}
	if s.mast.mm != nil {
		to.MastAt = measure.Length(*s.mast.mm)
	}
	if t.flags.Changed("hike") {
		to.Hike = s.hike
	}
	if t.flags.Changed("reefs") {
		to.Reefs = s.reefs
	}
	if s.crew.given {
		if d.Crew, err = s.crew.people(d); err != nil {
			return usageError{fmt.Errorf("%s: %w", t.verb.name, err)}
		}
	}
	o := d.Fitted()
	o.Sail = &to
	d.Outfit = &o
	return nil
}

func sailRun(v verb, args []string, c console) error {
	t := newFitting(v)
	var given sailFlags
	given.set(t)
	rest, err := t.read(args, 1, c)
	if err != nil {
		return err
	}
	d, name, err := usually(rest)
	if err != nil {
		return err
	}
	if err := given.over(t, d); err != nil {
		return err
	}
	if err := t.checked(d, map[string]string{"outfit.sail.area": "area", "outfit.sail.wind": "wind", "outfit.sail.mast_at": "mast-at", "outfit.sail.reefs": "reefs"}); err != nil {
		return err
	}
	fitted, err := t.fit(d, name, besideOf(d, name), outfit.Sail)
	if err != nil {
		return err
	}
	fitted.Sail.Findings = append(fitted.Sail.Findings, fitted.Findings...)
	return t.tell(c, sailTold(t, fitted.Sail, name))
}

// clothWide is how wide the plate for a cutter of cloth is, mm: the panels lie along
// it.
const clothWide = 3000

func sailTold(t *fitting, fit *sail.Fit, name string) told {
	units := t.units.System
	boards := outfits.SailBoards(fit, units)
	return told{
		design: fit.Boat.Frame.Design, name: name,
		page:   func(w io.Writer) error { return outfitpage.SailPage(w, fit, units) },
		json:   func(doc *layout.Document) (any, error) { return json.Sail(fit, doc) },
		figure: figure.Sail(fit),
		about: fmt.Sprintf("%s from the side under a %s of %.2f m2 with its reefs, and the righting moment with the crew in the middle, inside and out, to where the lee gunwale dips.",
			fit.Boat.Frame.Design.Title, fit.Sail.Rig, fit.Plan.Area()),
		purpose:  fmt.Sprintf("Sailing: %s of %.2f m2; step, partner, leeboard and sail panels", fit.Sail.Rig, fit.Plan.Area()),
		drawings: append(outfits.Drawings(boards, units), outfits.PanelDrawings(fit, units)...), parts: outfits.Parts(boards), notes: outfits.SailNotes(fit, units),
		more: []plateOf{{"cloth", outfits.PanelParts(fit), clothWide}},
	}
}
