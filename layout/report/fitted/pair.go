package fitted

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/wood/beam"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/layout/report"
)

// Pair tells all of two hulls side by side.
func Pair(c *pair.Craft, units measure.System) []report.Block {
	t := in(units)
	one := t.asOne(c)
	one.Rows = append(one.Rows, []string{"width over all", t.Length(c.Over)}, []string{"list at rest", deg(math.Abs(c.Rest.Heel))}, []string{"BM", fmt.Sprintf("%.0f mm", c.BM)})
	return page(c.Findings, append([]report.Block{one, t.levers(c.Lesser()), t.beams(c), t.cases(c), t.waves(c)}, t.ranges(c.Practices)...)...)
}

// PairInBook tells a builder of two hulls side by side.
func PairInBook(c *pair.Craft, units measure.System) []report.Block {
	t := in(units)
	out := []report.Block{report.Heading{Level: 2, Words: "Pair"},
		report.Figure{Drawing: roomy(func(wide float64) layout.Drawing { return figure.PairSketch(c, wide) }),
			Caption: fmt.Sprintf("%s and %s side by side, from astern, not to scale.", c.Boats[0].Frame.Design.Title, c.Boats[1].Frame.Design.Title),
			About:   "Two hulls from astern with a beam across both."},
		t.asOne(c), figure.PairLevers(c).Block(), t.cases(c), report.Findings{List: c.Findings}}
	return append(out, t.ranges(c.Practices)...)
}

// asOne is the pair as one craft.
func (t teller) asOne(c *pair.Craft) report.Table {
	_, lash := c.Worst()
	var at []string
	for _, x := range c.Beams.At {
		at = append(at, t.Station(x))
	}
	return report.Table{Title: "As one craft", Columns: []report.Column{report.Words("Figure"), report.Words("")}, Rows: [][]string{
		{"middle lines apart", t.Length(c.Spacing)}, {"beams at", strings.Join(at, ", ")}, {"turns of cord in each lashing", fmt.Sprint(pair.Turns(lash))},
		{"all up", t.Mass(c.Load.Mass)}, {"least freeboard", t.Length(c.Rest.Freeboard)}, {"beams over the water", t.Length(c.Beneath)},
		{"GM, and of one hull alone", fmt.Sprintf("%.0f mm, %.0f mm; it ends where a hull lifts", c.GM, c.Single)}}}
}

// levers are the lesser righting levers of both sides, every other degree, up to where
// they end.
func (t teller) levers(c pair.Curve) report.Table {
	out := report.Table{Title: "Righting lever GZ, at each heel the lesser of both sides", Columns: []report.Column{report.Numbers("Heel, deg"), report.Numbers("GZ, mm"), report.Numbers("On the windward hull")},
		Note: "The last column is the share of the weight that the windward hull still carries."}
	for i, v := range c.Levers {
		if i%2 == 0 || i == len(c.Levers)-1 {
			out.Rows = append(out.Rows, []string{fmt.Sprintf("%.0f", v.Heel*180/math.Pi), fmt.Sprintf("%.0f", math.Round(v.GZ)+0), fmt.Sprintf("%.0f %%", v.Share*100)})
		}
	}
	for _, end := range []struct {
		what string
		heel float64
	}{{"the windward hull lifts", c.Lift}, {"water comes in", c.Flooded}} {
		if !math.IsNaN(end.heel) {
			out.Note += fmt.Sprintf(" At %s %s.", deg(end.heel), end.what)
		}
	}
	return out
}

// beams are the beams by their sizes.
func (t teller) beams(c *pair.Craft) report.Table {
	return facts(fmt.Sprintf("Beams: %d of %s", len(c.Beams.At), c.Beams.Wood.Name), []string{"wide", t.Length(c.Beams.Width)}, []string{"deep", t.Length(c.Beams.Depth)},
		[]string{"long", t.Length(c.Beams.Long)}, []string{"each", t.Mass(c.BeamMass())},
		[]string{"asked of the wood", fmt.Sprintf("%.1f N/mm2", beam.Working(c.Beams.Wood))}, []string{"sag asked under a person", t.Length(c.Spacing / 60)})
}

// cases are what a beam bears.
func (t teller) cases(c *pair.Craft) report.Table {
	out := report.Table{Title: "What a beam bears", Columns: []report.Column{report.Words("Case"), report.Numbers("N m"), report.Numbers("N/mm2"), report.Numbers("Sag, " + t.Unit()), report.Numbers("Lashing, N"), report.Words("Taken as")}}
	for _, k := range c.Cases {
		sag := "-"
		if k.Sag > 0 {
			sag = t.Cell(k.Sag)
		}
		out.Rows = append(out.Rows, []string{k.Name, fmt.Sprintf("%.0f", k.Moment), fmt.Sprintf("%.1f", k.Stress), sag, fmt.Sprintf("%.0f", k.Lash), k.Why})
	}
	return out
}

// waves compare the drag of both hulls' waves with that of hulls far apart.
func (t teller) waves(c *pair.Craft) report.Table {
	out := report.Table{Title: "Waves of both hulls, N, on deep water: for comparing spacings", Columns: []report.Column{report.Numbers("Speed"), report.Numbers("Far apart"), report.Numbers("Together"), report.Numbers("Change")}}
	for _, v := range c.Waves {
		out.Rows = append(out.Rows, []string{t.Speed(v.Speed), fmt.Sprintf("%.1f", v.Apart), fmt.Sprintf("%.1f", v.Together), fmt.Sprintf("%+.0f %%", v.Change()*100)})
	}
	return out
}
