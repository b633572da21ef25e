// Package afloat writes what a trial on paper found as a page for a terminal.
package afloat

import (
	"fmt"
	"io"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial/afloat"
	"ribwright/layout/terminal"
)

// Page writes a report to be read on a terminal, lengths in the units asked for.
//
// Errors: the writer's own.
func Page(w io.Writer, r *afloat.Report, units measure.System) error {
	p := &page{Page: terminal.Page{Units: units}, r: r}
	p.heading()
	p.weights()
	p.rest()
	p.righting()
	p.effort()
	p.findings()
	p.caution()
	_, err := p.WriteTo(w)
	return err
}

type page struct {
	terminal.Page
	r *afloat.Report
}

func (p *page) heading() {
	w := p.r.Options.Water
	p.Line("%s afloat on %s water of %.0f C (%.1f kg/m3)", p.r.Boat.Title, w.Kind, w.Temperature, w.Density)
	p.Wrap("", p.r.Boat.For)
	for _, n := range p.r.Boat.Notes {
		p.Wrap("  note: ", n)
	}
	p.Line("")
}

func (p *page) weights() {
	p.Line("%-34s %10s %14s %15s", "WEIGHTS", "mass", "from midship", "over baseline")
	for _, i := range p.r.Entries() {
		l := i.Load()
		p.Line("  %-32s %10s %14s %15s", cutTo(i.Name, 32), p.Kilos(l.Mass), p.Length(l.At.X), p.Length(l.At.Z))
	}
	p.Line("")
}

// cutTo shortens a name to the width of its column.
func cutTo(s string, n int) string {
	r := []rune(s)
	if len(r) > n {
		return string(r[:n-1]) + "."
	}
	return s
}

func (p *page) rest() {
	o := p.r.Rest
	p.Line("AT REST")
	p.two("draft", p.Length(o.Draft), "waterline", p.Length(o.LWL)+" long")
	p.two("least freeboard", p.Length(o.Freeboard.Least), "", p.Length(o.BWL)+" wide")
	rise := math.Tan(o.Trim) * o.LWL
	trim := "level"
	if math.Abs(rise) >= 0.5 {
		trim = fmt.Sprintf("%s by the %s", p.Length(math.Abs(rise)), map[bool]string{true: "stern", false: "bow"}[rise > 0])
	}
	p.two("trim", trim, "waterplane", fmt.Sprintf("%.2f m2", o.Waterplane/1e6))
	p.two("displacement", p.Kilos(o.Displacement), "wetted surface", fmt.Sprintf("%.2f m2", o.Wetted/1e6))
	p.two("volume", fmt.Sprintf("%.1f l", o.Volume/1e6), "trim moment", fmt.Sprintf("%.1f N m for 1 mm", o.MomentToTrim/1000))
	p.two("buoyancy LCB", p.Length(o.LCB), "KB, BM", fmt.Sprintf("%.0f mm, %.0f mm", o.KB, o.BM))
	p.two("flotation LCF", p.Length(o.LCF), "KM, KG", fmt.Sprintf("%.0f mm, %.0f mm", o.KM, o.KG))
	p.two("block CB", fmt.Sprintf("%.3f", o.CB), "GM", fmt.Sprintf("%.0f mm", o.GM))
	p.two("prismatic CP", fmt.Sprintf("%.3f", o.CP), "midship CM", fmt.Sprintf("%.3f", o.CM))
	p.two("waterplane CWP", fmt.Sprintf("%.3f", o.CWP), "", "")
	if s := p.r.Smooth; s != nil {
		p.Line("  on smooth arcs: draft %s, GM %.0f mm, waterplane %.2f m2, wetted %.2f m2",
			p.Length(s.Draft), s.GM, s.Waterplane/1e6, s.Wetted/1e6)
	}
	p.Line("")
}

func (p *page) two(a, av, b, bv string) { p.Line("  %-16s %-20s  %-15s %s", a, av, b, bv) }

func (p *page) righting() {
	if p.r.Fault != nil {
		return
	}
	const columns = 8
	p.Line("RIGHTING LEVER GZ, to where water comes in")
	levers := p.r.Curve.Levers
	for from := 0; from < len(levers); from += columns {
		heel, gz := "  heel, deg", "  GZ, mm   "
		for _, v := range levers[from:min(len(levers), from+columns)] {
			heel += fmt.Sprintf(" %7.1f", deg(v.Heel))
			gz += fmt.Sprintf(" %7.0f", math.Round(v.GZ)+0)
		}
		p.Line("%s", heel)
		p.Line("%s", gz)
	}
	p.Line("")
}

// every is how many of the speeds the page passes over for each that it shows.
const every = 2

func (p *page) effort() {
	p.Line("EFFORT on flat, deep water: for comparing designs")
	p.Line("  %6s %6s %7s %7s %9s %7s %7s %7s %8s", "km/h", "knots", "min/km", "Froude", "friction", "form", "waves", "total", "paddle")
	for i, v := range p.r.Effort {
		if i%every != 1 {
			continue
		}
		p.Line("  %6.1f %6.1f %7.1f %7.2f %7.1f N %5.1f N %5.1f N %5.1f N %6.0f W", v.Speed*3.6, v.Speed/measure.Knot,
			1000/60/v.Speed, v.Froude, v.Friction, v.Form, v.Wave, v.Total, v.Power)
	}
	p.Line("")
}

func (p *page) findings() {
	p.Line("WHAT TO MAKE OF IT")
	for _, f := range p.r.Findings.Sorted() {
		p.Wrap("  "+f.About+": ", fmt.Sprintf("%s [%s]", f.Text, f.Standing))
	}
	p.Line("")
}

func (p *page) caution() {
	p.Wrap("", "These are estimates of an ideal shape, and nothing here certifies a boat. National and local law and the authority of the water come first. Wear a life jacket; weigh the finished boat, measure its freeboard, and swamp it near the shore with flotation fitted before you rely on it.")
}

func deg(a float64) float64 { return a * 180 / math.Pi }
