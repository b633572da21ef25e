package afloat

import (
	"fmt"
	"io"
	"math"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial"
)

// wide is the width of the page in letters: a terminal's.
const wide = 80

// Page writes a report to be read on a terminal, lengths in the units asked for.
//
// Errors: the writer's own.
func Page(w io.Writer, r *trial.Report, units measure.System) error {
	p := &page{r: r, units: units}
	p.heading()
	p.weights()
	p.rest()
	p.righting()
	p.effort()
	p.findings()
	p.caution()
	_, err := io.WriteString(w, p.b.String())
	return err
}

type page struct {
	b     strings.Builder
	r     *trial.Report
	units measure.System
}

func (p *page) line(format string, args ...any) {
	fmt.Fprintln(&p.b, strings.TrimRight(fmt.Sprintf(format, args...), " "))
}

// length letters mm, to the millimetre or the sixteenth.
func (p *page) length(mm float64) string {
	if p.units == measure.Imperial {
		return measure.FeetInches(mm)
	}
	return measure.MM(mm, 0) + " mm"
}

// kilos letters a mass.
func (p *page) kilos(kg float64) string {
	if p.units == measure.Imperial {
		return fmt.Sprintf("%.1f lb", kg/0.45359237)
	}
	return fmt.Sprintf("%.1f kg", kg)
}

func (p *page) heading() {
	w := p.r.Options.Water
	p.line("%s afloat on %s water of %.0f C (%.1f kg/m3)", p.r.Boat.Title, w.Kind, w.Temperature, w.Density)
	p.wrap("", p.r.Boat.For)
	for _, n := range p.r.Boat.Notes {
		p.wrap("  note: ", n)
	}
	p.line("")
}

func (p *page) weights() {
	p.line("%-34s %10s %14s %15s", "WEIGHTS", "mass", "from midship", "over baseline")
	for _, i := range p.r.Entries() {
		l := i.Load()
		p.line("  %-32s %10s %14s %15s", cutTo(i.Name, 32), p.kilos(l.Mass), p.length(l.At.X), p.length(l.At.Z))
	}
	p.line("")
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
	p.line("AT REST")
	p.two("draft", p.length(o.Draft), "waterline", p.length(o.LWL)+" long")
	p.two("least freeboard", p.length(o.Freeboard.Least), "", p.length(o.BWL)+" wide")
	rise := math.Tan(o.Trim) * o.LWL
	trim := "level"
	if math.Abs(rise) >= 0.5 {
		trim = fmt.Sprintf("%s by the %s", p.length(math.Abs(rise)), map[bool]string{true: "stern", false: "bow"}[rise > 0])
	}
	p.two("trim", trim, "waterplane", fmt.Sprintf("%.2f m2", o.Waterplane/1e6))
	p.two("displacement", p.kilos(o.Displacement), "wetted surface", fmt.Sprintf("%.2f m2", o.Wetted/1e6))
	p.two("volume", fmt.Sprintf("%.1f l", o.Volume/1e6), "trim moment", fmt.Sprintf("%.1f N m for 1 mm", o.MomentToTrim/1000))
	p.two("buoyancy LCB", p.length(o.LCB), "KB, BM", fmt.Sprintf("%.0f mm, %.0f mm", o.KB, o.BM))
	p.two("flotation LCF", p.length(o.LCF), "KM, KG", fmt.Sprintf("%.0f mm, %.0f mm", o.KM, o.KG))
	p.two("block CB", fmt.Sprintf("%.3f", o.CB), "GM", fmt.Sprintf("%.0f mm", o.GM))
	p.two("prismatic CP", fmt.Sprintf("%.3f", o.CP), "midship CM", fmt.Sprintf("%.3f", o.CM))
	p.two("waterplane CWP", fmt.Sprintf("%.3f", o.CWP), "", "")
	if s := p.r.Smooth; s != nil {
		p.line("  on smooth arcs: draft %s, GM %.0f mm, waterplane %.2f m2, wetted %.2f m2",
			p.length(s.Draft), s.GM, s.Waterplane/1e6, s.Wetted/1e6)
	}
	p.line("")
}

func (p *page) two(a, av, b, bv string) { p.line("  %-16s %-20s  %-15s %s", a, av, b, bv) }

func (p *page) righting() {
	if p.r.Fault != nil {
		return
	}
	const columns = 8
	p.line("RIGHTING LEVER GZ, to where water comes in")
	levers := p.r.Curve.Levers
	for from := 0; from < len(levers); from += columns {
		heel, gz := "  heel, deg", "  GZ, mm   "
		for _, v := range levers[from:min(len(levers), from+columns)] {
			heel += fmt.Sprintf(" %7.1f", deg(v.Heel))
			gz += fmt.Sprintf(" %7.0f", math.Round(v.GZ)+0)
		}
		p.line("%s", heel)
		p.line("%s", gz)
	}
	p.line("")
}

// every is how many of the speeds the page passes over for each that it shows.
const every = 2

func (p *page) effort() {
	p.line("EFFORT on flat, deep water: for comparing designs")
	p.line("  %6s %6s %7s %7s %9s %7s %7s %7s %8s", "km/h", "knots", "min/km", "Froude", "friction", "form", "waves", "total", "paddle")
	for i, v := range p.r.Effort {
		if i%every != 1 {
			continue
		}
		p.line("  %6.1f %6.1f %7.1f %7.2f %7.1f N %5.1f N %5.1f N %5.1f N %6.0f W", v.Speed*3.6, v.Speed*3.6/1.852,
			1000/60/v.Speed, v.Froude, v.Friction, v.Form, v.Wave, v.Total, v.Power)
	}
	p.line("")
}

func (p *page) findings() {
	p.line("WHAT TO MAKE OF IT")
	for _, f := range p.r.Findings {
		p.wrap("  "+f.About+": ", fmt.Sprintf("%s [%s]", f.Text, f.Standing))
	}
	p.line("")
}

func (p *page) caution() {
	p.wrap("", "These are estimates of an ideal shape, and nothing here certifies a boat. National and local law and the authority of the water come first. Wear a life jacket; weigh the finished boat, measure its freeboard, and swamp it near the shore with flotation fitted before you rely on it.")
}

// wrap writes text under a first line's head, broken between words at the page's
// width and indented below it.
func (p *page) wrap(head, text string) {
	if text == "" {
		return
	}
	indent := strings.Repeat(" ", min(len(head), 4))
	now := head
	for _, word := range strings.Fields(text) {
		if len([]rune(now))+len([]rune(word)) > wide && strings.TrimSpace(now) != "" {
			p.line("%s", now)
			now = indent
		}
		now += word + " "
	}
	p.line("%s", now)
}
