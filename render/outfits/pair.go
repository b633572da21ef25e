package outfits

import (
	"fmt"
	"io"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/wood/beam"
)

// PairPage writes a pair of hulls to be read.
func PairPage(w io.Writer, c *pair.Craft, units measure.System) error {
	p := newPage(units)
	p.Line("%s and %s side by side, %s apart", c.Boats[0].Frame.Design.Title, c.Boats[1].Frame.Design.Title, p.Length(c.Spacing))
	p.Line("")
	p.cautions(c.Findings)
	p.Line("AS ONE CRAFT, %.0f kg in all", c.Load.Mass)
	p.two("width over all", p.Length(c.Over), "beams over water", p.Length(c.Beneath))
	p.two("least freeboard", p.Length(c.Rest.Freeboard), "list at rest", fmt.Sprintf("%.1f deg", math.Abs(deg(c.Rest.Heel))))
	p.two("BM", fmt.Sprintf("%.0f mm", c.BM), "GM", fmt.Sprintf("%.0f mm", c.GM))
	p.two("GM of one hull", fmt.Sprintf("%.0f mm", c.Single), "", "")
	p.Line("")
	p.Line("RIGHTING LEVER GZ, at each heel the lesser of both sides, to where it ends")
	lesser := c.Lesser()
	p.levers(lesser)
	for _, end := range []struct {
		what string
		heel float64
	}{{"the windward hull lifts", lesser.Lift}, {"water comes in", lesser.Flooded}} {
		if !math.IsNaN(end.heel) {
			p.Line("  at %.1f deg %s", deg(end.heel), end.what)
		}
	}
	p.Line("")
	p.Line("BEAMS: %d of %s, %.1f kg each", len(c.Beams.At), c.Beams.Wood.Name, c.BeamMass())
	p.Line("  %s wide, %s deep, %s long", p.Length(c.Beams.Width), p.Length(c.Beams.Depth), p.Length(c.Beams.Long))
	at := ""
	for _, x := range c.Beams.At {
		at += "  " + p.Length(x)
	}
	p.Line("  at stations%s", at)
	p.Line("  %-39s %9s %9s %8s %8s", "", "moment", "stress", "sag", "lashing")
	for _, k := range c.Cases {
		sag := "       -"
		if k.Sag > 0 {
			sag = fmt.Sprintf("%5.0f mm", k.Sag)
		}
		p.Line("  %-39s %5.0f N m %4.1f N/mm2 %s %6.0f N", k.Name, k.Moment, k.Stress, sag, k.Lash)
		p.Wrap("      ", k.Why)
	}
	p.Line("  asked of the wood: %.1f N/mm2 and a sag of %.0f mm under a person", beam.Working(c.Beams.Wood), c.Spacing/60)
	p.Line("")
	p.Line("WAVES of both hulls, N, on deep water: for comparing spacings")
	p.Line("  %6s %12s %12s %9s", "km/h", "far apart", "together", "change")
	for _, v := range c.Waves {
		p.Line("  %6.1f %12.1f %12.1f %+8.0f %%", v.Speed*3.6, v.Apart, v.Together, v.Change()*100)
	}
	p.Line("")
	p.ranges(c.Practices)
	p.notes(c.Findings)
	_, err := p.WriteTo(w)
	return err
}

// levers writes GZ in rows of eight, every other degree.
func (p *page) levers(c pair.Curve) {
	const columns = 9
	var shown []pair.Lever
	for i, v := range c.Levers {
		if i%2 == 0 || i == len(c.Levers)-1 {
			shown = append(shown, v)
		}
	}
	for from := 0; from < len(shown); from += columns {
		heel, gz, up := "  heel, deg", "  GZ, mm   ", "  windward "
		for _, v := range shown[from:min(len(shown), from+columns)] {
			heel += fmt.Sprintf(" %6.0f", deg(v.Heel))
			gz += fmt.Sprintf(" %6.0f", math.Round(v.GZ)+0)
			up += fmt.Sprintf(" %4.0f %%", v.Share*100)
		}
		p.Line("%s", heel)
		p.Line("%s", gz)
		p.Line("%s", up)
	}
	p.Line("  windward: the share of the weight that the windward hull still carries")
}
