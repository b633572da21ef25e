package fitted

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/layout/report"
)

// Pair tells all of two hulls side by side.
func Pair(c *pair.Craft, units measure.System) []report.Block {
	t := in(units)
	one := t.asOne(c).Filled("over the gunwales, over the beams", t.Length(c.Over)+", "+t.Length(c.Beams.Long), "list at rest", deg(math.Abs(c.Rest.Heel)), "BM", fmt.Sprintf("%.0f mm", c.BM))
	return page(c.Findings, append([]report.Block{one, t.levers(c.Lesser()), t.beams(c), t.cases(c), t.waves(c), Pieces(c.Kit(), units)}, t.ranges(c.Practices)...)...)
}

// PairInBook tells a builder of two hulls side by side.
func PairInBook(c *pair.Craft, units measure.System) []report.Block {
	t := in(units)
	out := []report.Block{report.Section("Pair"),
		report.Figure{Drawing: roomy(func(wide float64) layout.Drawing { return figure.PairSketch(c, wide) }),
			Caption: fmt.Sprintf("%s and %s side by side, from astern, not to scale.", c.Boats[0].Frame.Design.Title, c.Boats[1].Frame.Design.Title),
			About:   "Two hulls from astern with a beam across both."},
		t.asOne(c), figure.PairLevers(c).Block(), t.cases(c), report.Findings{List: c.Findings}}
	return append(out, t.ranges(c.Practices)...)
}

func (t teller) asOne(c *pair.Craft) report.Table {
	_, lash := c.Worst()
	return report.Titled("As one craft").Words("Figure", "").Filled(
		"two whole boats", c.Boats[0].Frame.Design.Title+", "+c.Boats[1].Frame.Design.Title, "middle lines apart", t.Length(c.Spacing), "beams at", wording.List(c.Beams.At, t.Station), "turns of cord in each lashing", fmt.Sprint(pair.Turns(lash)),
		"all up", t.Mass(c.Load.Mass), "least freeboard", t.Length(c.Rest.Freeboard), "beams over the water", t.Length(c.Beneath),
		"GM, and of one hull alone", fmt.Sprintf("%.0f mm, %.0f mm; it ends where a hull lifts", c.GM, c.Single))
}

// levers are the lesser righting levers of both sides, every other degree, up to where they end.
func (t teller) levers(c pair.Curve) report.Table {
	out := report.Titled("Righting lever GZ, at each heel the lesser of both sides").Numbers("Heel, deg", "GZ, mm", "On the windward hull").Noted("The last column is the share of the weight that the windward hull still carries.")
	for i, v := range c.Levers {
		if i%2 == 0 || i == len(c.Levers)-1 {
			out.Row(fmt.Sprintf("%.0f", v.Heel*180/math.Pi), fmt.Sprintf("%.0f", math.Round(v.GZ)+0), fmt.Sprintf("%.0f %%", v.Share*100))
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

func (t teller) beams(c *pair.Craft) report.Table {
	return report.Facts(fmt.Sprintf("Beams: %d of %s", len(c.Beams.At), c.Beams.Wood.Name), "wide", t.Length(c.Beams.Width), "deep", t.Length(c.Beams.Depth),
		"long", t.Length(c.Beams.Long), "each", t.Mass(c.BeamMass()),
		"asked of the wood", fmt.Sprintf("%.1f N/mm2", beam.Working(c.Beams.Wood)), "sag asked under a person", t.Length(c.Spacing/60))
}

func (t teller) cases(c *pair.Craft) report.Table {
	out := report.Titled("What a beam bears").Words("Case").Numbers("N m", "N/mm2", "Sag, "+t.Unit(), "Lashing, N").Words("Taken as")
	for _, k := range c.Cases {
		sag := "-"
		if k.Sag > 0 {
			sag = t.Cell(k.Sag)
		}
		out.Row(k.Name, fmt.Sprintf("%.0f", k.Moment), fmt.Sprintf("%.1f", k.Stress), sag, fmt.Sprintf("%.0f", k.Lash), k.Why)
	}
	return out
}

// waves compare the drag of both hulls' waves with that of hulls far apart.
func (t teller) waves(c *pair.Craft) report.Table {
	out := report.Titled("Waves of both hulls, N, on deep water: for comparing spacings").Numbers("Speed", "Far apart", "Together", "Change")
	for _, v := range c.Waves {
		out.Row(t.Speed(v.Speed), fmt.Sprintf("%.1f", v.Apart), fmt.Sprintf("%.1f", v.Together), fmt.Sprintf("%+.0f %%", v.Change()*100))
	}
	return out
}
