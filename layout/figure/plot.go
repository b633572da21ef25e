package figure

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/formula"
	"ribwright/layout"
	"ribwright/layout/report"
)

// Curve is one line of values, in the order they are joined. Points that are not
// numbers are passed over.
type Curve struct {
	Name   string
	Points []geometry.Point // X and Y in the units of the axes
	Pen    layout.Pen
}

func curveOf[T any](name string, pen layout.Pen, all []T, at func(v T) (x, y float64)) Curve {
	c := Curve{Name: name, Pen: pen}
	for _, v := range all {
		c.Points = append(c.Points, geometry.Pt(at(v)))
	}
	return c
}

// Mark is a place on the x axis with a name: a limit, a speed.
type Mark struct {
	X    float64
	Name string
}

// Plot is one set of curves against axes: round tick values, a few pens instead of
// colors, names written at the curves' ends.
type Plot struct {
	Title  string
	XLabel string // what the x axis shows, with its unit
	YLabel string
	Curves []Curve
	Marks  []Mark
	W, H   float64 // of the box between the axes, mm on paper
}

// The heights of a plot's lettering, mm, and the reach of a tick.
const (
	plotTitle = 3.6
	plotSmall = 2.6
	reach     = 1.5
	markRow   = plotSmall + 1.4 // a row of names of marks, over the axes
)

// Draw adds the plot to a drawing with the lower left corner of its axes at the
// place given, mm. Lettering stands outside the axes: some 16 mm to the left, 14
// mm below, 7 mm and a row for each mark above and, for the curves' names, to the right.
//
// A plot without a single number draws its axes from 0 to 1.
func (p Plot) Draw(d *layout.Drawing, at geometry.Point) {
	x, y := p.axes()
	place := func(q geometry.Point) geometry.Point {
		return geometry.Pt(at.X+p.W*x.share(q.X), at.Y+p.H*y.share(q.Y))
	}
	d.Write(at.X, at.Y+p.H+3+markRow*float64(len(p.Marks)), plotTitle, layout.Left, p.Title)
	for _, v := range x.ticks() {
		px := place(geometry.Pt(v, y.lo)).X
		d.Straight(layout.Tick, px, at.Y, px, at.Y+p.H)
		d.Straight(layout.Tick, px, at.Y, px, at.Y-reach)
		d.Write(px, at.Y-reach-1-plotSmall, plotSmall, layout.Middle, x.letter(v))
	}
	for _, v := range y.ticks() {
		py := place(geometry.Pt(x.lo, v)).Y
		d.Straight(layout.Tick, at.X, py, at.X+p.W, py)
		d.Straight(layout.Tick, at.X-reach, py, at.X, py)
		d.Write(at.X-reach-1, py-plotSmall/2, plotSmall, layout.Right, y.letter(v))
	}
	d.Write(at.X+p.W/2, at.Y-reach-2-3.4*plotSmall, plotSmall, layout.Middle, p.XLabel)
	d.WriteAt(geometry.Pt(at.X-13, at.Y+p.H/2), plotSmall, math.Pi/2, layout.Middle, p.YLabel)
	d.Line(layout.Mark, curve.Rectangle(geometry.Around(at, at.Add(geometry.Pt(p.W, p.H)))))
	for i, m := range p.Marks {
		px := place(geometry.Point{X: m.X}).X
		d.Straight(layout.Center, px, at.Y, px, at.Y+p.H)
		d.Write(px, at.Y+p.H+1+markRow*float64(i), plotSmall, layout.Middle, m.Name)
	}
	p.drawCurves(d, place, at.Add(geometry.Pt(p.W, p.H)))
}

// drawCurves draws each curve and writes its name beside its last point, outside
// the axes when it ends near them, under the names of the marks.
func (p Plot) drawCurves(d *layout.Drawing, place func(geometry.Point) geometry.Point, corner geometry.Point) {
	var names []layout.Text
	for _, c := range p.Curves {
		var pts []geometry.Point
		for _, q := range c.Points {
			if q.Finite() {
				pts = append(pts, place(q))
			}
		}
		if len(pts) == 0 {
			continue
		}
		d.Line(c.Pen, curve.Polyline(pts...))
		end := pts[len(pts)-1]
		if end.X > corner.X-0.2*p.W {
			end.X = corner.X
		}
		if c.Name != "" {
			names = append(names, layout.Text{At: geometry.Pt(end.X+1.5, end.Y-plotSmall/2), Words: c.Name})
		}
	}
	for _, n := range inOrder(names, corner.Y-plotSmall) {
		d.Write(n.At.X, n.At.Y, plotSmall, layout.Left, n.Words)
	}
}

// inOrder pushes names that would lie on each other apart, upward as far as there is room
// under a height and then downward. They stay in the order of their curves' ends.
func inOrder(names []layout.Text, top float64) []layout.Text {
	const row = plotSmall + 1
	slices.SortStableFunc(names, func(a, b layout.Text) int { return cmp.Compare(b.At.Y, a.At.Y) }) // from the top
	for i := len(names) - 2; i >= 0; i-- {
		names[i].At.Y = math.Max(names[i].At.Y, names[i+1].At.Y+row)
	}
	for i := range names {
		names[i].At.Y = math.Min(names[i].At.Y, top)
		top = names[i].At.Y - row
	}
	return names
}

// axes finds the ranges of both axes: round values round all points and marks, zero included.
func (p Plot) axes() (x, y axis) {
	b := geometry.Box{}
	for _, c := range p.Curves {
		for _, q := range c.Points {
			if q.Finite() {
				b = b.Union(geometry.Around(q))
			}
		}
	}
	for _, m := range p.Marks {
		if geometry.Finite(m.X) {
			b = b.Union(geometry.Around(geometry.Pt(m.X, 0)))
		}
	}
	return newAxis(b.Min.X, b.Max.X, p.W), newAxis(b.Min.Y, b.Max.Y, p.H)
}

// axis runs from lo to hi in steps that people count in.
type axis struct{ lo, hi, step float64 }

// newAxis rounds a range out to whole steps of 1, 2 or 5 times a power of ten, so
// many that ticks stand some 12 mm apart.
func newAxis(lo, hi, mm float64) axis {
	if hi <= lo {
		hi = lo + 1
	}
	const apart = 12.0
	least := (hi - lo) * apart / math.Max(mm, apart)
	ten := math.Pow(10, math.Floor(math.Log10(least)))
	step := 10 * ten
	for _, k := range []float64{1, 2, 5} {
		if k*ten >= least*(1-1e-9) {
			step = k * ten
			break
		}
	}
	return axis{math.Floor(lo/step+1e-9) * step, math.Ceil(hi/step-1e-9) * step, step}
}

func (a axis) share(v float64) float64 { return (v - a.lo) / (a.hi - a.lo) }

func (a axis) ticks() []float64 {
	var out []float64
	for i := 0; a.lo+float64(i)*a.step <= a.hi+a.step/2; i++ {
		out = append(out, a.lo+float64(i)*a.step)
	}
	return out
}

// letter writes a tick's value with the decimals that its step has.
func (a axis) letter(v float64) string {
	if math.Abs(v) < a.step/1e6 {
		v = 0
	}
	decimals := max(0, -int(math.Floor(math.Log10(a.step)+1e-9)))
	return strconv.FormatFloat(v, 'f', decimals, 64)
}

// axisUnit is the unit at the end of an axis' name.
var axisUnit = regexp.MustCompile(`(N/mm2|N m|km/h|mm|kg|N)$`)

// In is the plot in this system: its axes with their units, curves and marks.
func (p Plot) In(units measure.System) Plot {
	x, y := axisUnit.FindString(p.XLabel), axisUnit.FindString(p.YLabel)
	p.XLabel, p.YLabel = strings.TrimSuffix(p.XLabel, x)+units.UnitOf(x), strings.TrimSuffix(p.YLabel, y)+units.UnitOf(y)
	p.Curves, p.Marks = slices.Clone(p.Curves), slices.Clone(p.Marks)
	for i, c := range p.Curves {
		p.Curves[i].Points = nil
		for _, q := range c.Points {
			p.Curves[i].Points = append(p.Curves[i].Points, geometry.Pt(units.Value(q.X, x), units.Value(q.Y, y)))
		}
	}
	for i, m := range p.Marks {
		p.Marks[i] = Mark{units.Value(m.X, x), units.Words(m.Name)}
	}
	return p
}

// Block is the plot as a figure of a report, its title as the caption.
func (p Plot) Block() report.Figure {
	p.W, p.H = 105, 60
	d := layout.Drawing{Name: "plot", Title: p.Title}
	p.Title = ""
	p.Draw(&d, geometry.Point{})
	return report.Figure{Drawing: d, Caption: d.Title + ".", About: "Curve: " + d.Title + ", " + p.YLabel + " against " + p.XLabel + "."}
}

// Sweep draws draft, freeboard and GM of the boats of a sweep; false when no step makes a boat.
func Sweep(s sizing.Sweep, rows []sizing.Row) (layout.Drawing, bool) {
	d := layout.Drawing{Name: "sweep", Title: "Boats for steps of " + s.Name}
	p := Plot{Title: d.Title, YLabel: "mm", Curves: sweepCurves(s, rows), W: 150, H: 90}
	if len(p.Curves) == 0 {
		return d, false
	}
	unit, _ := s.Dim.Unit()
	p.XLabel = fmt.Sprintf("%s beyond %s (%s)", s.Name, formula.ShowNumber(rows[0].At, s.Dim), unit)
	p.Draw(&d, geometry.Point{})
	return d, true
}

// sweepCurves are what changes against how far the value swept is beyond its first
// step: an axis from zero would leave them a corner.
func sweepCurves(s sizing.Sweep, rows []sizing.Row) []Curve {
	_, worth := s.Dim.Unit()
	var out []Curve
	for i, n := range []string{"draft", "freeboard", "gm"} {
		c := Curve{Name: n, Pen: []layout.Pen{layout.Cut, layout.Mark, layout.Center}[i]}
		for _, r := range rows {
			if r.Fault == "" {
				c.Points = append(c.Points, geometry.Point{X: (r.At - rows[0].At) / worth, Y: r.Values[n]})
			}
		}
		if len(c.Points) > 0 {
			out = append(out, c)
		}
	}
	return out
}
