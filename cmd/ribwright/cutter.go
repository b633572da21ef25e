package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/pattern"
	"ribwright/layout/plate/nest"
	"ribwright/layout/plate/relief"
	"ribwright/render/dxf"
	"ribwright/render/svg"
)

// cutterFlags are what the cutter's files are made for.
type cutterFlags struct {
	stock       stockFlag
	cutter      widthFlag
	spacing     widthFlag
	byThickness bool
	split       bool
	nest        nestFlag
	hairline    widthFlag
	colors      colorsFlag
	relief      reliefFlag
	guide       guideFlag
}

// clearOf is the room between parts besides the cutter's diameter, mm. Common
// practice, no source.
const clearOf = 6.0

// newCutterFlags returns what holds when nothing is said.
func newCutterFlags() *cutterFlags {
	return &cutterFlags{
		stock: stockFlag{nest.DefaultOptions().Stock}, cutter: widthFlag{6, true},
		hairline: widthFlag{layout.MostHairline, true},
	}
}

// addTo lists the flags in a set.
func (c *cutterFlags) addTo(f *pflag.FlagSet) {
	f.Var(&c.stock, "stock", "size of the sheets for the cutter, x by y; the grain runs along the longer side")
	f.Var(&c.cutter, "cutter", "diameter of the cutter")
	f.Var(&c.spacing, "spacing", "least distance between parts and to the edges (default the cutter's diameter and 6 mm)")
	f.BoolVar(&c.byThickness, "by-thickness", false, "lay every thickness on sheets of its own")
	f.Var(&c.nest, "nest", "search a second or two for a close nest, or lay the parts once")
	f.BoolVar(&c.split, "split", false, "make parts longer than the stock in pieces with a scarf of 1:8")
	f.Var(&c.hairline, "hairline", "width of the lines in the SVG, 0.025 mm to 0.1 mm")
	f.Var(&c.colors, "layer-colors", "colours of layers, as CUT=red,MARK=#0000ff; the others stay black")
	f.Var(&c.relief, "relief", "how square inside corners are opened for the cutter")
	f.Var(&c.guide, "router-guide", "add a guide for the mortises, for a bush and a bit of these `diameters`, as 16mm,6mm")
}

// check finds what no single flag can.
func (c *cutterFlags) check() error {
	if d := c.cutter.mm; !(d >= 0.1 && d <= 50) {
		return usageError{fmt.Errorf("loft: --cutter: a diameter of %.4g mm; accepted: 0.1 to 50 mm", d)}
	}
	if h := c.hairline.mm; h == 0 {
		return usageError{fmt.Errorf("loft: --hairline: a line of no width is not seen on a screen, and some programs leave it out; accepted: %g to %g mm", layout.LeastHairline, layout.MostHairline)}
	} else if !(h >= layout.LeastHairline && h <= layout.MostHairline) {
		return usageError{fmt.Errorf("loft: --hairline: %.4g mm; laser drivers cut along lines of %g to %g mm and engrave wider ones; accepted: that", h, layout.LeastHairline, layout.MostHairline)}
	}
	if err := c.options().Check(); err != nil {
		return usageError{fmt.Errorf("loft: --stock and --spacing: %w", err)}
	}
	return nil
}

func (c *cutterFlags) options() nest.Options {
	o := nest.Options{Stock: c.stock.Stock, Gap: c.cutter.mm + clearOf, ByThickness: c.byThickness, Split: c.split, Quick: c.nest.quick}
	if c.spacing.given {
		o.Gap = c.spacing.mm
	}
	return o
}

// plate lays the parts of a boat for the cutter.
func (c *cutterFlags) plate(title string, f *frame.Frame) (layout.Plate, error) {
	if err := c.check(); err != nil {
		return layout.Plate{}, err
	}
	parts := pattern.Parts(f)
	if c.guide.bush != 0 {
		guide, err := pattern.Guide(f, c.guide.bush, c.guide.bit)
		if err != nil {
			return layout.Plate{}, usageError{fmt.Errorf("loft: --router-guide: %w", err)}
		}
		parts = append(parts, guide...)
	}
	for i := range parts {
		parts[i] = relief.Part(parts[i], c.relief.Kind, c.cutter.mm)
	}
	p, err := nest.Lay(title, parts, c.options())
	var large *nest.TooLarge
	if errors.As(err, &large) {
		if large.Pieces > 0 {
			err = fmt.Errorf("%w, or --split, which makes it in %d pieces with a scarf of 1:8", err, large.Pieces)
		}
		return p, usageError{fmt.Errorf("loft: --stock: %w", err)}
	}
	p.Machine = layout.Machine{Hairline: c.hairline.mm, Colors: c.colors.set}
	p.Notes = c.notes(p)
	return p, err
}

// notes say in the files what was done for the machine.
func (c *cutterFlags) notes(p layout.Plate) []string {
	out := []string{fmt.Sprintf("parts lie at least %.4g mm apart", c.options().Gap)}
	if c.relief.Kind != relief.None {
		out = append(out, fmt.Sprintf("square inside corners are opened (%v) for a cutter of %.4g mm", c.relief.Kind, c.cutter.mm))
	}
	for _, b := range p.Boards {
		out = append(out, b.Title)
	}
	return out
}

// cutterOutputs lists the cutter's two files.
func cutterOutputs(name string, p layout.Plate) []output {
	return []output{
		{name + ".svg", func(w io.Writer) error { return svg.Encode(w, p) }},
		{name + ".dxf", func(w io.Writer) error { return dxf.Encode(w, p) }},
	}
}

// cutterReport says what lies in the cutter's files.
func cutterReport(dir, slug string, p layout.Plate, byThickness bool) string {
	how := "all thicknesses together"
	if byThickness {
		how = "every thickness on sheets of its own"
	}
	return fmt.Sprintf("%s\n%s\n  %d parts on %s for the cutter, %s; the rectangle round them is %.2f times their area\n",
		filepath.Join(dir, slug+"-cut.svg"), filepath.Join(dir, slug+"-cut.dxf"), len(p.Parts), boardsOf(p), how, p.Spread())
}

// boardsOf says how many sheets of which size a plate is.
func boardsOf(p layout.Plate) string {
	if n := len(p.Boards); n > 1 {
		return fmt.Sprintf("%d sheets of %v", n, boardSize(p))
	}
	return fmt.Sprintf("a sheet of %v", boardSize(p))
}

func boardSize(p layout.Plate) nest.Stock {
	b := p.Boards[0].Box
	return nest.Stock{W: b.W(), H: b.H()}
}

// stockFlag is a size of sheet as a flag.
type stockFlag struct{ nest.Stock }

func (s *stockFlag) String() string { return fmt.Sprintf("%.6gx%.6g", s.W, s.H) }
func (s *stockFlag) Type() string   { return "WxH" }

// Set reads two lengths.
func (s *stockFlag) Set(words string) error {
	w, h, err := measure.ParsePair(words)
	if err != nil {
		return fmt.Errorf("%w; accepted: width x height, as 1220x2440 (mm) or 4ft x 8ft", err)
	}
	s.W, s.H = float64(w), float64(h)
	return (nest.Options{Stock: s.Stock, Gap: nest.LeastGap}).Check()
}

// nestFlag says how long a nest is searched for.
type nestFlag struct{ quick bool }

func (n *nestFlag) Type() string { return "close|quick" }
func (n *nestFlag) String() string {
	if n.quick {
		return "quick"
	}
	return "close"
}

func (n *nestFlag) Set(words string) error {
	if words != "close" && words != "quick" {
		return fmt.Errorf("no way to nest %q; accepted: close, quick", words)
	}
	n.quick = words == "quick"
	return nil
}

// widthFlag is a length as a flag.
type widthFlag struct {
	mm    float64
	given bool
}

func (l *widthFlag) Type() string { return "length" }
func (l *widthFlag) String() string {
	if !l.given {
		return ""
	}
	return measure.Length(l.mm).String()
}

func (l *widthFlag) Set(words string) error {
	v, err := measure.ParseLength(words)
	l.mm, l.given = float64(v), true
	return err
}

// reliefFlag is a kind of relief as a flag.
type reliefFlag struct{ relief.Kind }

func (r *reliefFlag) Type() string { return "none|round|dogbone" }
func (r *reliefFlag) Set(words string) error {
	var err error
	r.Kind, err = relief.Parse(words)
	return err
}

// guideFlag is the bush and the bit of a router.
type guideFlag struct{ bush, bit float64 }

func (g *guideFlag) Type() string { return "bush,bit" }
func (g *guideFlag) String() string {
	if g.bush == 0 {
		return ""
	}
	return fmt.Sprintf("%v,%v", measure.Length(g.bush), measure.Length(g.bit))
}

func (g *guideFlag) Set(words string) error {
	both := strings.Split(words, ",")
	if len(both) != 2 {
		return fmt.Errorf("no two diameters in %q; accepted: bush and bit, as 16mm,6mm", words)
	}
	for i, to := range []*float64{&g.bush, &g.bit} {
		v, err := measure.ParseLength(both[i])
		if err != nil {
			return fmt.Errorf("%w; accepted: bush and bit, as 16mm,6mm", err)
		}
		*to = float64(v)
	}
	if g.bush <= 0 || g.bit <= 0 {
		return fmt.Errorf("diameters of %q must be above 0; accepted: bush and bit, as 16mm,6mm", words)
	}
	return nil
}

// colorsFlag is the colours of layers.
type colorsFlag struct{ set map[string]layout.Color }

// colorNames are what a colour may be called; the files hold the values.
var colorNames = map[string]layout.Color{
	"black": {}, "red": {R: 255}, "yellow": {R: 255, G: 255}, "green": {G: 255},
	"cyan": {G: 255, B: 255}, "blue": {B: 255}, "magenta": {R: 255, B: 255},
}

func (c *colorsFlag) Type() string { return "LAYER=colour,..." }
func (c *colorsFlag) String() string {
	var out []string
	for _, l := range layout.Layers() {
		if v, ok := c.set[l]; ok {
			out = append(out, fmt.Sprintf("%s=#%02x%02x%02x", l, v.R, v.G, v.B))
		}
	}
	return strings.Join(out, ",")
}

func (c *colorsFlag) Set(words string) error {
	set := map[string]layout.Color{}
	for _, pair := range strings.Split(words, ",") {
		name, value, ok := strings.Cut(pair, "=")
		name = strings.ToUpper(strings.TrimSpace(name))
		if !ok || !slices.Contains(layout.Layers(), name) {
			return fmt.Errorf("no layer in %q; accepted: %s, as CUT=red,MARK=#0000ff", pair, strings.Join(layout.Layers(), ", "))
		}
		color, err := parseColor(strings.ToLower(strings.TrimSpace(value)))
		if err != nil {
			return err
		}
		if _, twice := set[name]; twice {
			return fmt.Errorf("%s has two colours", name)
		}
		set[name] = color
	}
	c.set = set
	return nil
}

func parseColor(s string) (layout.Color, error) {
	if c, ok := colorNames[s]; ok {
		return c, nil
	}
	if digits, ok := strings.CutPrefix(s, "#"); ok && len(digits) == 6 {
		if v, err := strconv.ParseUint(digits, 16, 32); err == nil {
			return layout.Color{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}, nil
		}
	}
	return layout.Color{}, fmt.Errorf("no colour %q; accepted: black, red, yellow, green, cyan, blue, magenta, or red, green and blue as #ff0000", s)
}
