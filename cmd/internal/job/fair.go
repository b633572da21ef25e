//go:build !js

package job

import (
	"fmt"
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/survey/fair"
	"ribwright/layout"
	"ribwright/layout/report"
)

// Fair asks for a design taken off a boat that exists.
type Fair struct {
	Table string // of offsets, by its name
	Units measure.System
}

// NewFair returns the request with its defaults.
func NewFair() *Fair { return &Fair{} }

// Fields lists the choices.
func (f *Fair) Fields() []Field {
	return []Field{units(&f.Units, "what lengths are lettered in")}
}

// Name takes the table.
func (f *Fair) Name(names []string) { f.Table = names[0] }

// Do fits a design to the table.
func (f *Fair) Do(w World) (*Result, error) {
	if f.Table == "" {
		return nil, misuse("", "no table of offsets is given; accepted: a CSV file")
	}
	t, err := w.table(f.Table)
	if err != nil {
		return nil, err
	}
	r, err := fair.Of(t, titleOf(f.Table))
	if err != nil {
		return nil, of(f.Table, err)
	}
	name := r.Design.Slug() + ".toml"
	k, err := newFacts(r.Design, name)
	if err != nil {
		return nil, err
	}
	return &Result{
		Report:  report.Report{Title: r.Design.Title + ", faired", Edition: r.Design.Edition, Fingerprint: k.fingerprint, Blocks: f.told(r, t.Notes)},
		Outputs: []Output{derived(name, "the design, to be lofted", r.Design, fmt.Sprintf("taken off the offsets %s, %.0f mm off them in the mean (rms) and %.0f mm at worst", fileOf(f.Table), r.RMS, r.Worst.Off))},
	}, nil
}

// told is what the faired design leaves of the offsets.
func (f *Fair) told(r *fair.Result, notes []string) []report.Block {
	short := report.Letters{Units: f.Units}.Length
	worst := r.Worst
	out := []report.Block{report.Paragraph{Words: fmt.Sprintf("It is %.1f mm off the offsets in the mean (rms) and %.1f mm at worst: at station %s, half-breadth %s, height %s.",
		r.RMS, worst.Off, short(worst.Station), short(worst.Point.X), short(worst.Point.Y))}}
	out = append(out, f.displaced(r.Displaced))
	if len(r.Design.Hull.Sections) == fair.MostSections {
		out = append(out, report.Paragraph{Words: fmt.Sprintf("%d of the stations, spread evenly, give the sections their shape; all are compared here.", fair.MostSections)})
	}
	if len(notes) > 0 {
		out = append(out, report.List{Items: notes})
	}
	right := layout.Right
	t := report.Table{Title: "What is left over", Columns: []report.Column{{Head: "Station", Align: right}, {Head: "Points", Align: right},
		{Head: "rms, mm", Align: right}, {Head: "Worst, mm", Align: right}, {Head: "at half-breadth", Align: right}, {Head: "height", Align: right}}}
	for _, s := range r.Stations {
		t.Rows = append(t.Rows, []string{short(s.Station), fmt.Sprint(s.Points), fmt.Sprintf("%.1f", s.RMS), fmt.Sprintf("%.1f", s.Worst.Off),
			short(s.Worst.Point.X), short(s.Worst.Point.Y)})
	}
	return append(out, t, report.Paragraph{Words: "The skin is taken a stringer's depth outside the ribs' arcs; between stringers cloth lies inside it. Sticks and joints are ordinary ones and not the old boat's: change them, then loft the design and see how it floats."})
}

// displaced says by how much the faired boat displaces differently.
func (f *Fair) displaced(d fair.Displaced) report.Block {
	l := report.Letters{Units: f.Units}
	mass := func(volume float64) string { return l.Mass(volume * 1e-6) } // of fresh water, a kilogram a liter
	return report.Paragraph{Words: fmt.Sprintf("Level at the designed waterline of %s it displaces %s of fresh water where the measured boat displaces %s: %s. If the cloth lay on the ribs' curves and not flat between stringers, it would be %s. The measured boat is taken with straight lines from point to point, which leaves out some of a round bilge where the table has few points.",
		l.Length(d.Waterline), mass(d.Faired), mass(d.Measured), moreOrLess(d.More(d.Faired)), moreOrLess(d.More(d.Smooth)))}
}

// moreOrLess letters a share that is more or less than a whole, to the percent.
func moreOrLess(share float64) string {
	switch percent := math.Round(100 * share); {
	case percent > 0:
		return fmt.Sprintf("%.0f %% more", percent)
	case percent < 0:
		return fmt.Sprintf("%.0f %% less", -percent)
	}
	return "as much, within half a percent"
}
