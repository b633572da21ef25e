package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"ribwright/geometry"
	"ribwright/geometry/finding"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/figure"
	"ribwright/render/svg"
)

// search looks for the boat that meets the targets.
func (s *sizer) search(c *sizing.Case) (*sizing.Answer, error) {
	if err := c.Settle(); err != nil {
		return nil, err
	}
	w := sizing.Wish{}
	if s.aim == "easiest" {
		w.Aim = sizing.Easiest
	}
	for _, text := range s.targets {
		t, err := sizing.ParseTarget(text, c.Family.Program)
		if err != nil {
			return nil, s.wrong("target", err)
		}
		w.Targets = append(w.Targets, t)
	}
	var err error
	if w.Free, err = c.Free(s.free); err != nil {
		return nil, s.wrong("free", err)
	}
	return c.Solve(w)
}

// tellSearch says which limits stand in the way and what moving them would buy.
func (s *sizer) tellSearch(w io.Writer, a *sizing.Answer) {
	fmt.Fprintf(w, "\nThe %s boat that meets %s; %d boats looked at.\n", s.aim, strings.Join(s.targets, ", "), a.Looks)
	for _, b := range a.Binds {
		fmt.Fprintf(w, "  %s stands in the way: %s would make it %s\n", b.Limit, b.Step, b.Text)
	}
	for _, e := range a.AtEdge {
		fmt.Fprintf(w, "  %s\n", e)
	}
	if len(a.Binds)+len(a.AtEdge) == 0 {
		fmt.Fprintln(w, "  no target stands in the way of a better one")
	}
}

// sweepRun prints a table of boats and draws it.
func (s *sizer) sweepRun(fam *family.Family, w io.Writer) error {
	c, err := s.newCase(fam)
	if err != nil {
		return err
	}
	sweep, err := sizing.ParseSweep(s.sweep, fam.Program)
	if err != nil {
		return s.wrong("sweep", err)
	}
	rows, err := c.Sweep(sweep)
	if err != nil {
		return err
	}
	drawing, err := sweepDrawing(s.brief.Title, sweep, rows)
	if err != nil {
		return err
	}
	name := fam.Slug() + "-sweep.svg"
	about := "Draft, freeboard and GM of the boats of a sweep of " + sweep.Name
	if err := saveIn(s.out, []output{{name, func(w io.Writer) error { return svg.EncodeFigure(w, drawing, about) }}}, nil); err != nil {
		return err
	}
	columns := slices.DeleteFunc(sizing.Columns(), func(n string) bool { return n == sweep.Name })
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintf(t, "%s\t%s\tchecks that fail\n", sweep.Name, strings.Join(columns, "\t"))
	for _, r := range rows {
		fmt.Fprintf(t, "%s\t", formula.ShowNumber(r.At, sweep.Dim))
		for _, n := range columns {
			k, _ := fam.Program.Kind(n)
			fmt.Fprintf(t, "%s\t", shownIn(r, n, k.Dim))
		}
		fmt.Fprintf(t, "%s\n", rowTrouble(r))
	}
	if err := t.Flush(); err != nil {
		return err
	}
	_, err = fmt.Fprintf(w, "\n%s/%s\n", s.out, name)
	return err
}

// rowTrouble says what is wrong with a boat of a sweep.
func rowTrouble(r sizing.Row) string {
	if r.Fault != "" {
		return "no boat: " + r.Fault
	}
	return strings.Join(r.Failed, ", ")
}

func shownIn(r sizing.Row, name string, d formula.Dim) string {
	if r.Fault != "" {
		return "-"
	}
	return formula.ShowNumber(r.Values[name], d)
}

// sweepDrawing draws what changes against what is swept.
func sweepDrawing(title string, s sizing.Sweep, rows []sizing.Row) (layout.Drawing, error) {
	d := layout.Drawing{Name: "sweep", Title: title}
	per := 1.0
	unit := "mm"
	switch s.Dim {
	case formula.Length:
	case formula.Angle:
		per, unit = 3.141592653589793/180, "deg"
	case formula.Mass:
		unit = "kg"
	default:
		unit = ""
	}
	var curves []figure.Curve
	for i, n := range []string{"draft", "freeboard", "gm"} {
		c := figure.Curve{Name: n, Pen: []layout.Pen{layout.Cut, layout.Mark, layout.Center}[i]}
		for _, r := range rows {
			if r.Fault == "" {
				c.Points = append(c.Points, geometry.Point{X: r.At / per, Y: r.Values[n]})
			}
		}
		if len(c.Points) > 0 {
			curves = append(curves, c)
		}
	}
	if len(curves) == 0 {
		return d, errors.New("no step of the sweep makes a boat: " + rows[0].Fault)
	}
	// The axis begins near the sweep, which is far from zero.
	from := rows[0].At / per
	for i := range curves {
		for j := range curves[i].Points {
			curves[i].Points[j].X -= from
		}
	}
	p := figure.Plot{Title: title, XLabel: fmt.Sprintf("%s beyond %s (%s)", s.Name, formula.ShowNumber(rows[0].At, s.Dim), unit), YLabel: "mm", Curves: curves, W: 150, H: 90}
	p.Draw(&d, geometry.Point{})
	return d, nil
}

// populationRun tries a family on many.
func (s *sizer) populationRun(fam *family.Family, w io.Writer) error {
	p := sizing.Trying{Family: fam, Judge: bends}.Try(s.population)
	var b strings.Builder
	fmt.Fprintf(&b, "%s tried on %d: %d pass every check, loft, float and bend; %d do not.\n", fam.Name, p.Tried, p.Passed, p.Tried-p.Passed)
	for _, c := range p.Counts() {
		fmt.Fprintf(&b, "\n%d x %s (%.1f %%)\n  worst, trial %d: %s\n  %s\n", c.Times, c.Name, 100*float64(c.Times)/float64(p.Tried), c.Worst.Number, c.Worst.Brief.Who(), c.Text)
	}
	b.WriteString("\nBodies as common as the survey has them, inside its 5th to 95th percentile; 0 to 40 kg of gear,\nall waters, skills and postures, sticks of 2.4 to 6 m.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// bends judges whether a boat's wood takes its bends.
func bends(b *sizing.Boat) finding.List {
	r, err := bend.Of(b.Frame)
	if err != nil {
		return finding.List{{About: "bend", Text: err.Error(), Verdict: finding.Unfit}}
	}
	var out finding.List
	for _, f := range r.Findings {
		if !f.Verdict.Passes() {
			f.Text = f.String()
			f.About = "bend of " + strings.Fields(f.About)[0] // one name for all parts of a kind
			out = append(out, f)
		}
	}
	return out
}
