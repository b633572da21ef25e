package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/outfit"
	"ribwright/geometry/survey/offsets"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water"
	"ribwright/layout/figure"
	afloatpage "ribwright/render/afloat"
	"ribwright/render/json"
	"ribwright/render/svg"
)

func floatVerb() verb {
	v := verb{
		name:    "float",
		line:    "whether it carries you, stays upright and moves easily",
		usage:   "ribwright float [DESIGN.toml|" + strings.Join(design.ShippedNames(), "|") + "|OFFSETS.csv] [flags]",
		example: "ribwright float river --load 230kg --water salt --svg",
	}
	v.run = func(args []string, c console) error { return floatRun(v, args, c) }
	return v
}

// afloatFlags are the flags of float as they were given.
type afloatFlags struct {
	crew                 crewFlag
	load                 massFlag
	kg, draft, freeboard lengthFlag
	water                waterFlag
	celsius              float64
	units                unitsFlag
	smooth, json, svg    bool
	out                  string
}

func (a *afloatFlags) set(v verb) *pflag.FlagSet {
	f := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	a.freeboard = lengthFlag{mm: 150}
	f.Var(&a.load, "load", "all that is aboard together: people and gear scaled to it; of a table of offsets the whole weight")
	f.Var(&a.crew, "crew", "who is aboard instead of the design's people, as 70,85 or 70:floor@-200mm; none for nobody")
	f.Var(&a.water, "water", "what it floats in")
	f.Float64Var(&a.celsius, "temperature", water.Usual, "of the water, degrees `Celsius`")
	f.Var(&a.freeboard, "freeboard", "the least that you want left")
	f.Var(&a.draft, "draft", "a fixed level waterline over the lowest point, instead of the weights")
	f.Var(&a.kg, "kg", "height of the whole weight over the baseline, for a table of offsets")
	f.BoolVar(&a.smooth, "smooth", false, "the figures on the ribs' smooth arcs beside those of the flat cloth")
	f.Var(&a.units, "units", "what lengths are lettered in")
	f.BoolVar(&a.json, "json", false, "every figure as JSON instead of the page")
	f.BoolVar(&a.svg, "svg", false, "the curves and the sheer plan as NAME-float.svg too")
	f.StringVar(&a.out, "out", "out", "`folder` for the picture; made when missing")
	return f
}

func floatRun(v verb, args []string, c console) error {
	var a afloatFlags
	rest, err := parse(v, a.set(v), args, 1, c.out)
	if err != nil {
		return err
	}
	name := design.ShippedNames()[0]
	if len(rest) == 1 {
		name = rest[0]
	}
	if err := a.check(v, isTable(name)); err != nil {
		return err
	}
	w, err := water.At(a.water.Kind, a.celsius)
	if err != nil {
		return usageError{fmt.Errorf("%s: --temperature: %w", v.name, err)}
	}
	b, outfits, slug, err := a.boat(name)
	if err != nil {
		return err
	}
	r, err := afloat.Run(b, afloat.Options{Water: w, Freeboard: a.freeboard.mm, Draft: a.draft.mm, Speeds: speeds(), Smooth: a.smooth, Outfits: outfits})
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return a.tell(c.out, r, slug)
}

// check refuses flags that contradict each other.
func (a *afloatFlags) check(v verb, table bool) error {
	why := ""
	switch {
	case a.out == "":
		why = "--out: no folder is given; accepted: a folder, as out or ../river"
	case table && a.crew.given:
		why = "--crew: a table of offsets has no floor to sit on; give the whole weight by --load and its height by --kg"
	case table && a.smooth:
		why = "--smooth: a table of offsets has no stringers; leave it out"
	case table && a.load.kg == 0 && a.draft.mm == 0:
		why = "a table of offsets has no weight; give --load, as 120kg, or --draft, as 100mm"
	case !table && a.kg.mm != 0:
		why = "--kg: a design knows where its weights lie; leave it out, or set crew.seat and gear.height in the design"
	case a.load.kg != 0 && a.draft.mm != 0:
		why = "--load and --draft: the one follows from the other; give one"
	default:
		return nil
	}
	return usageError{fmt.Errorf("%s: %s", v.name, why)}
}

// isTable reports whether a name is a table of offsets rather than a design.
func isTable(name string) bool { return strings.EqualFold(filepath.Ext(name), ".csv") }

// speeds are the speeds of the effort, m/s: 2.5 to 12 km/h.
func speeds() []float64 {
	out := make([]float64, 20)
	for i := range out {
		out[i] = (2.5 + 0.5*float64(i)) / 3.6
	}
	return out
}

// boat makes what is to be floated, with the outfits in it, and its short name for files.
func (a *afloatFlags) boat(name string) (b aboard.Boat, outfits *outfit.Outfits, slug string, err error) {
	if isTable(name) {
		t, err := openTable(name)
		if err != nil {
			return b, nil, "", err
		}
		title := strings.TrimSuffix(filepath.Base(name), filepath.Ext(name))
		if b, err = aboard.OfOffsets(title, t, a.load.kg, a.kg.mm); err != nil {
			return b, nil, "", fmt.Errorf("%s: %w", name, err)
		}
		return b, nil, (&design.Design{Title: title}).Slug(), nil
	}
	d, err := open(name)
	if err != nil {
		return b, nil, "", err
	}
	f, err := frame.Build(d)
	if err != nil {
		return b, nil, "", fmt.Errorf("%s: %w", name, err)
	}
	crew, gear, err := a.aboard(d)
	if err != nil {
		return b, nil, "", usageError{fmt.Errorf("float: %w", err)}
	}
	if b, err = aboard.New(f, crew, gear); err != nil {
		return b, nil, "", fmt.Errorf("%s: %w", name, err)
	}
	if outfits, err = outfitsOf(d, gear, name); err == nil {
		b, err = outfits.PutAboard(b)
	}
	return b, outfits, d.Slug(), err
}

// aboard is the crew and gear of the design, with what the flags say instead.
func (a *afloatFlags) aboard(d *design.Design) ([]design.Person, []design.Gear, error) {
	crew, gear := d.Crew, d.Gear
	if a.crew.given {
		var err error
		if crew, err = a.crew.people(d); err != nil {
			return nil, nil, err
		}
	}
	if a.load.kg == 0 {
		return crew, gear, nil
	}
	sum := 0.0
	for _, p := range crew {
		sum += p.Mass
	}
	for _, g := range gear {
		sum += g.Mass
	}
	if sum == 0 {
		return crew, []design.Gear{{Name: "Load", Mass: a.load.kg}}, nil
	}
	crew, gear = append([]design.Person(nil), crew...), append([]design.Gear(nil), gear...)
	for i := range crew {
		crew[i].Mass *= a.load.kg / sum
	}
	for i := range gear {
		gear[i].Mass *= a.load.kg / sum
	}
	return crew, gear, nil
}

// tell writes what was found.
func (a *afloatFlags) tell(w io.Writer, r *afloat.Report, slug string) error {
	picture := slug + "-float.svg"
	if a.svg {
		draw := func(w io.Writer) error { return svg.EncodeFigure(w, figure.Afloat(r), figure.AfloatAbout(r)) }
		if err := save(a.out, []output{{picture, draw}}, nil); err != nil {
			return err
		}
	}
	if a.json {
		report, err := json.Afloat(r)
		if err != nil {
			return err
		}
		return json.Encode(w, report)
	}
	if err := afloatpage.Page(w, r, a.units.System); err != nil {
		return err
	}
	if !a.svg {
		return nil
	}
	_, err := fmt.Fprintf(w, "\n%s\n  the sheer plan and the curves\n", filepath.Join(a.out, picture))
	return err
}

// openTable reads a table of offsets.
func openTable(name string) (*offsets.Table, error) {
	file, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("no table of offsets %q", name)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot open the table %q: %w", name, cause(err))
	}
	defer file.Close()
	t, err := offsets.Read(file, name)
	var fault *offsets.Fault
	if err != nil && !errors.As(err, &fault) {
		return nil, fmt.Errorf("cannot read the table %q: %w", name, cause(err))
	}
	return t, err
}
