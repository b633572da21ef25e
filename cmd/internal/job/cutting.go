package job

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/pattern"
	"ribwright/layout/plate/nest"
	"ribwright/layout/plate/relief"
	"ribwright/layout/plate/trace"
	"ribwright/render"
	"ribwright/render/dxf"
	"ribwright/render/svg"
)

// Cutting is what the cutter's files are made for.
type Cutting struct {
	Stock       Stocks
	Diameter    float64 // of the cutter, mm
	Gap         float64 // between parts, mm; 0 for the cutter's diameter and clearOf
	ByThickness bool
	Each        bool // a file for every plate too
	Split       bool
	Quick       bool    // lay the parts once, search no close nest
	Hairline    float64 // mm; 0 for lines that a screen shows
	Colors      map[string]layout.Color
	Relief      relief.Kind
	Guide       Guide
}

// Guide is the bush and the bit of a router, mm; no guide where they are 0.
type Guide struct{ Bush, Bit float64 }

// clearOf is the room between parts besides the cutter's diameter, mm. Common
// practice, no source.
const clearOf = 6.0

func newCutting() Cutting {
	return Cutting{Stock: Stocks{Usual: nest.DefaultOptions().Stock}, Diameter: 6, ByThickness: true}
}

func (c *Cutting) fields() []Field {
	hairlines := fmt.Sprintf("width of the lines in the SVG for a laser that cuts along thin ones, %g mm to %g mm; wide enough for a screen when left out", layout.LeastHairline, layout.MostHairline)
	return grouped(cutterGroup, []Field{
		{Name: "stock", Takes: "WxH,...", Says: "size of the sheets for the cutter, x by y, as 1220x2440 or 4ft x 8ft, and of single thicknesses, as 1220x2440,20mm=250x2400; the grain runs along the longer side", Value: bind(&c.Stock, parseStocks, Stocks.String)},
		{Name: "cutter", Takes: "length", Says: "diameter of the cutter", Value: length(&c.Diameter, 0.1, 50)},
		{Name: "gap", Takes: "length", Says: fmt.Sprintf("least distance between parts and to the edges; the cutter's diameter and %g mm when left out", clearOf), Value: length(&c.Gap, nest.LeastGap, nest.MostGap)},
		{Name: "by-thickness", Says: "lay what is of one material and thickness on sheets of its own; false lays all together", Value: yes(&c.ByThickness)},
		{Name: "each", Says: "write a file for every plate, besides the one with all of them", Value: yes(&c.Each)},
		{Name: "nest", Takes: "close|quick", Says: "search for a close nest, which takes up to two seconds, or lay the parts once, which takes none", Value: oneOf(&c.Quick, []string{"close", "quick"}, []bool{false, true})},
		{Name: "split", Says: "make parts longer than the stock in pieces with a scarf of 1:8", Value: yes(&c.Split)},
		{Name: "hairline", Takes: "length", Says: hairlines, Value: length(&c.Hairline, layout.LeastHairline, layout.MostHairline)},
		{Name: "layer-colors", Takes: "LAYER=color,...", Says: "colors of layers, as CUT=red,MARK=#0000ff; the others stay black", Value: bind(&c.Colors, parseColors, showColors)},
		{Name: "relief", Takes: "none|round|dogbone", Says: "how square inside corners are opened for the cutter", Value: bind(&c.Relief, relief.Parse, relief.Kind.String)},
		{Name: "router-guide", Takes: "bush,bit", Says: "add a guide for the mortises, for a bush and a bit of these diameters, as 16mm,6mm", Value: bind(&c.Guide, parseGuide, orNothing(showGuide))},
	})
}

func (c *Cutting) options() nest.Options {
	return nest.Options{Stock: c.Stock.Usual, Others: c.Stock.Others, Gap: cmp.Or(c.Gap, c.Diameter+clearOf), ByThickness: c.ByThickness, Split: c.Split, Quick: c.Quick}
}

// check finds what no single field can.
func (c *Cutting) check() error {
	return wrong("stock,gap", c.options().Check())
}

// plate lays the parts of a boat for the cutter; title tells of which design they are.
func (c *Cutting) plate(title string, b *bend.Report) (layout.Plate, error) {
	parts := pattern.Parts(b)
	if c.Guide != (Guide{}) {
		guide, err := pattern.Guide(b.Frame, c.Guide.Bush, c.Guide.Bit)
		if err != nil {
			return layout.Plate{}, wrong("router-guide", err)
		}
		parts = append(parts, guide...)
	}
	for i := range parts {
		parts[i] = relief.Part(parts[i], c.Relief, c.Diameter)
	}
	p, err := nest.Lay(title, parts, c.options())
	var large *nest.TooLarge
	if errors.As(err, &large) {
		if large.Pieces > 0 {
			err = fmt.Errorf("%w, or split parts, which makes it in %d pieces with a scarf of 1:8", err, large.Pieces)
		}
		return p, wrong("stock", err)
	}
	p.Machine = layout.Machine{Hairline: c.Hairline, Colors: c.Colors}
	p.Notes = c.notes(p)
	return p, err
}

// notes say in the files what was done for the machine.
func (c *Cutting) notes(p layout.Plate) []string {
	out := []string{fmt.Sprintf("parts lie at least %.4g mm apart", c.options().Gap)}
	if c.Relief != relief.None {
		out = append(out, fmt.Sprintf("square inside corners are opened (%v) for a cutter of %.4g mm", c.Relief, c.Diameter))
	}
	for _, b := range p.Boards {
		out = append(out, b.Title+", "+nest.From(b))
	}
	return out
}

// cutterFiles are a plate's two files, of lines that are traced once.
func cutterFiles(name, says string, p layout.Plate) []Output {
	traced := sync.OnceValues(func() (trace.Plate, error) { return render.Trace(p) })
	file := func(encode func(io.Writer, trace.Plate) error) func(io.Writer) error {
		return func(w io.Writer) error {
			t, err := traced()
			if err != nil {
				return err
			}
			return encode(w, t)
		}
	}
	return []Output{
		{Name: name + ".svg", Write: file(svg.Encode)},
		{Name: name + ".dxf", Says: says, Write: file(dxf.Encode)},
	}
}

// eachPlate is a file of every plate by itself, named by what it is of.
func eachPlate(name string, p layout.Plate) []Output {
	var out []Output
	seen := map[string]int{}
	for i, one := range nest.Each(p) {
		b := p.Boards[i]
		of := (&design.Design{Title: fmt.Sprintf("%s %.4gmm", b.Material, b.Thickness)}).Slug()
		if seen[of]++; seen[of] > 1 {
			of += fmt.Sprintf("-%d", seen[of])
		}
		out = append(out, cutterFiles(name+"-"+of, b.Title+", "+nest.From(b), one)...)
	}
	return out
}

// onBoards says how many parts lie on how many sheets of which size. A plate of blanks is no
// sheet of the stock.
func onBoards(p layout.Plate) string {
	sheets := "a sheet"
	if n := len(p.Boards); n > 1 {
		sheets = fmt.Sprintf("%d sheets", n)
	}
	var sizes, blanks []string
	for _, b := range p.Boards {
		size := (nest.Stock{W: b.Stock.X, H: b.Stock.Y}).String()
		switch {
		case b.Blanks != nil:
			blanks = []string{"blanks as drawn"}
		case !slices.Contains(sizes, size):
			sizes = append(sizes, size)
		}
	}
	sizes = append(sizes, blanks...)
	return fmt.Sprintf("%s on %s of %s for the cutter", wording.Counted(len(p.Parts), "part"), sheets, strings.Join(sizes, " and "))
}

func parseGuide(text string) (Guide, error) {
	const accepted = "accepted: bush and bit, as 16mm,6mm"
	both := strings.Split(text, ",")
	if len(both) != 2 {
		return Guide{}, fmt.Errorf("no two diameters in %q; %s", text, accepted)
	}
	var of [2]float64
	for i, one := range both {
		v, err := measure.ParseLength(one)
		if err != nil {
			return Guide{}, fmt.Errorf("%w; %s", err, accepted)
		}
		if of[i] = float64(v); of[i] <= 0 {
			return Guide{}, fmt.Errorf("diameters of %q must be above 0; %s", text, accepted)
		}
	}
	return Guide{of[0], of[1]}, nil
}

func showGuide(g Guide) string {
	return fmt.Sprintf("%v,%v", measure.Length(g.Bush), measure.Length(g.Bit))
}

func parseColors(text string) (map[string]layout.Color, error) {
	set := map[string]layout.Color{}
	for _, pair := range strings.Split(text, ",") {
		name, value, ok := strings.Cut(pair, "=")
		name = strings.ToUpper(strings.TrimSpace(name))
		if !ok || !slices.Contains(layout.Layers(), name) {
			return nil, fmt.Errorf("no layer in %q; accepted: %s, as CUT=red,MARK=#0000ff", pair, strings.Join(layout.Layers(), ", "))
		}
		color, err := parseColor(strings.ToLower(strings.TrimSpace(value)))
		if err != nil {
			return nil, err
		}
		if _, twice := set[name]; twice {
			return nil, fmt.Errorf("%s has two colors", name)
		}
		set[name] = color
	}
	return set, nil
}

func showColors(set map[string]layout.Color) string {
	var out []string
	for _, l := range layout.Layers() {
		if v, ok := set[l]; ok {
			out = append(out, fmt.Sprintf("%s=#%02x%02x%02x", l, v.R, v.G, v.B))
		}
	}
	return strings.Join(out, ",")
}

func parseColor(s string) (layout.Color, error) {
	if c, ok := map[string]layout.Color{
		"black": {}, "red": {R: 255}, "yellow": {R: 255, G: 255}, "green": {G: 255},
		"cyan": {G: 255, B: 255}, "blue": {B: 255}, "magenta": {R: 255, B: 255},
	}[s]; ok {
		return c, nil
	}
	if digits, ok := strings.CutPrefix(s, "#"); ok && len(digits) == 6 {
		if v, err := strconv.ParseUint(digits, 16, 32); err == nil {
			return layout.Color{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}, nil
		}
	}
	return layout.Color{}, fmt.Errorf("no color %q; accepted: black, red, yellow, green, cyan, blue, magenta, or red, green and blue as #ff0000", s)
}
