package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout/figure"
	"ribwright/render/bending"
	"ribwright/render/json"
	"ribwright/render/svg"
)

func bendVerb() verb {
	v := verb{
		name:    "bend",
		line:    "whether the wood takes each bend, and what holds the frame's shape",
		usage:   "ribwright bend [DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "] [flags]",
		example: "ribwright bend river --without seat,thwart-2 --svg",
	}
	v.run = func(args []string, c console) error { return bendRun(v, args, c) }
	return v
}

func bendRun(v verb, args []string, c console) error {
	f := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	without := f.StringSlice("without", []string{"all"}, "`members` to take out: seat, yoke, thwart, thwart-2, a name, a rib as F3")
	miss, units := missFlag{10}, unitsFlag{}
	f.Var(&miss, "miss", "by how much every rib misses the neutral set, wider positive")
	f.Var(&units, "units", "what the rib table is lettered in")
	asJSON := f.Bool("json", false, "every figure as JSON instead of the page")
	picture := f.Bool("svg", false, "the plan shape before and after as NAME-bend.svg too")
	out := f.String("out", "out", "`folder` for the picture; made when missing")
	rest, err := parse(v, f, args, 1, c.out)
	if err != nil {
		return err
	}
	if err := outGiven(v, *out); err != nil {
		return err
	}
	name := design.ShippedNames()[0]
	if len(rest) == 1 {
		name = rest[0]
	}
	b, err := newBending(name, *without, float64(miss.Length))
	if err != nil {
		return err
	}
	if *picture {
		if err := save(*out, []output{{b.slug + "-bend.svg", b.picture}}, nil); err != nil {
			return err
		}
	}
	if *asJSON {
		report, err := json.Bend(b.Report, b.Without, b.Trials, b.Miss)
		if err != nil {
			return err
		}
		return json.Encode(c.out, report)
	}
	if err := bending.Page(c.out, b.Told, units.System); err != nil || !*picture {
		return err
	}
	_, err = fmt.Fprintf(c.out, "\n%s\n  the plan shape before and after, and the forces\n", filepath.Join(*out, b.slug+"-bend.svg"))
	return err
}

// missFlag is a length that may go either way, as a flag.
type missFlag struct{ measure.Length }

func (m *missFlag) String() string { return measure.MM(float64(m.Length), 1) + " mm" }
func (m *missFlag) Type() string   { return "length" }
func (m *missFlag) Set(s string) error {
	v, err := measure.ParseLength(s)
	if err == nil && !(v >= -mostMiss && v <= mostMiss) {
		err = fmt.Errorf("%s mm is out of range; accepted: -%d to %d mm", measure.MM(float64(v), 1), mostMiss, mostMiss)
	}
	m.Length = v
	return err
}

// mostMiss is the largest miss asked about, mm: beyond it the frame no longer
// moves in proportion.
const mostMiss = 100

// judged is everything the verb says of one design.
type judged struct {
	bending.Told
	slug string
}

func newBending(name string, without []string, miss float64) (*judged, error) {
	d, err := open(name)
	if err != nil {
		return nil, err
	}
	f, err := frame.Build(d)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	b := &judged{Told: bending.Told{Miss: miss, Caution: caution}, slug: d.Slug()}
	if b.Report, err = bend.Of(f); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(f.Thwarts) == 0 && len(without) == 1 && without[0] == "all" {
		without = nil // nothing was asked for, and there is nothing to take out
	}
	if b.Without, err = b.Report.Boat.Choose(without); err != nil {
		return nil, usageError{fmt.Errorf("bend: --without: %w", err)}
	}
	if b.Trials, err = b.Report.Boat.Trials(b.Without, miss); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return b, nil
}

// picture writes the plan shape before and after.
func (b *judged) picture(w io.Writer) error {
	title := b.Report.Frame.Design.Title
	return svg.EncodeFigure(w, figure.Balance(title, b.Report.Boat, b.Without, b.Trials, b.Miss),
		"The gunwales of "+title+" from above, dashed with every cross piece in and solid with some taken out, changes exaggerated, with the force in each cross piece.")
}
