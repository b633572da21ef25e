package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/survey/fair"
)

func fairVerb() verb {
	v := verb{
		name:    "fair",
		line:    "a design taken off a boat that exists, from its table of offsets",
		usage:   "ribwright fair OFFSETS.csv [flags]",
		example: "ribwright fair old-canoe.csv -o old-canoe.toml",
	}
	v.run = func(args []string, c console) error { return fairRun(v, args, c) }
	return v
}

func fairRun(v verb, args []string, c console) error {
	f := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	out := f.StringP("out", "o", "", "`file` for the design; out/NAME.toml when left out")
	units := unitsFlag{}
	f.Var(&units, "units", "what lengths are lettered in")
	rest, err := parse(v, f, args, 1, c.out)
	if err != nil {
		return err
	}
	if len(rest) == 0 {
		return usageError{fmt.Errorf("%s: no table of offsets is given; usage: %s", v.name, v.usage)}
	}
	if *out != "" && !strings.EqualFold(filepath.Ext(*out), ".toml") {
		return usageError{fmt.Errorf("%s: --out: %q is no design file; accepted: a name that ends in .toml", v.name, *out)}
	}
	name := rest[0]
	t, err := openTable(name)
	if err != nil {
		return err
	}
	title := strings.TrimSuffix(filepath.Base(name), filepath.Ext(name))
	r, err := fair.Of(t, title)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	path := *out
	if path == "" {
		path = filepath.Join("out", r.Design.Slug()+".toml")
	}
	write := output{filepath.Base(path), func(w io.Writer) error { return design.Encode(w, r.Design) }}
	if err := save(filepath.Dir(path), []output{write}, nil); err != nil {
		return err
	}
	_, err = io.WriteString(c.out, residuals(r, t.Notes, path, units.System))
	return err
}

// residuals is the table of what the faired design leaves of the offsets.
func residuals(r *fair.Result, notes []string, path string, units measure.System) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s faired: %.1f mm off in the mean (rms), %.1f mm at worst\n", r.Design.Title, r.RMS, r.Worst.Off)
	for _, n := range notes {
		fmt.Fprintf(&b, "  note: %s\n", n)
	}
	fmt.Fprintf(&b, "\n%14s %7s %9s %9s   %s\n", "station", "points", "rms, mm", "worst, mm", "at half-breadth, height")
	for _, s := range r.Stations {
		fmt.Fprintf(&b, "%14s %7d %9.1f %9.1f   %s, %s\n", shortLength(s.Station, units), s.Points, s.RMS, s.Worst.Off,
			shortLength(s.Worst.Point.X, units), shortLength(s.Worst.Point.Y, units))
	}
	w := r.Worst
	fmt.Fprintf(&b, "\nworst point: station %s, half-breadth %s, height %s: %.1f mm off the faired skin\n",
		shortLength(w.Station, units), shortLength(w.Point.X, units), shortLength(w.Point.Y, units), w.Off)
	b.WriteString("The skin is taken a stringer's depth outside the ribs' arcs; between stringers cloth\n" +
		"lies inside it. Sticks and joints are ordinary ones and not the old boat's: change\n" +
		"them, then see what 'ribwright loft' and 'ribwright float' say of it.\n\n")
	fmt.Fprintf(&b, "%s\n  the design; loft it with: ribwright loft %s\n", path, path)
	return b.String()
}

// shortLength letters a length to the millimetre or the sixteenth.
func shortLength(mm float64, units measure.System) string {
	if units == measure.Imperial {
		return measure.FeetInches(mm)
	}
	return measure.MM(mm, 0) + " mm"
}
