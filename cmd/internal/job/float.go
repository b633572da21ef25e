package job

import (
	"io"
	"path"
	"path/filepath"
	"strings"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/outfit"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water"
	"ribwright/geometry/wording"
	"ribwright/layout/figure"
	"ribwright/layout/report/trial"
	"ribwright/render/json"
	"ribwright/render/svg"
)

// Float asks how a boat lies on the water with its people and gear: a design's, or one
// that a table of offsets gives.
type Float struct {
	Subject     // a table of offsets too
	Crew        People
	Without     []string // seats that are taken out
	Load        float64  // kg, of all aboard together; 0 for what it is
	Height      float64  // mm, of a table's whole weight over the baseline; 0 when not known
	Draft       float64  // mm, a fixed waterline instead of the weights; 0 for the weights
	Freeboard   float64  // mm, the least wanted
	Water       water.Kind
	Temperature float64 // degrees Celsius
	Smooth      bool
	Picture     bool
}

// NewFloat returns the request with its defaults.
func NewFloat() *Float {
	return &Float{Subject: usual(), Freeboard: wantFreeboard, Temperature: water.Usual}
}

// Fields lists the choices.
func (f *Float) Fields() []Field {
	const most = 3000
	return []Field{
		crew(&f.Crew),
		without(&f.Without),
		{Name: "load", Takes: "mass", Says: "all that is aboard together: people and gear scaled to it; of a table of offsets the whole weight", Value: mass(&f.Load)},
		kindOfWater(&f.Water),
		{Name: "temperature", Takes: "degrees", Says: "of the water, as 15C or 59F", Value: bind(&f.Temperature, parseTemperature, showTemperature)},
		{Name: "freeboard", Takes: "length", Says: "the least that you want left", Value: length(&f.Freeboard, 1, most)},
		{Name: "draft", Takes: "length", Says: "a fixed level waterline over the lowest point, instead of the weights", Value: length(&f.Draft, 1, most)},
		{Name: "kg", Takes: "length", Says: "height of the whole weight over the baseline, for a table of offsets", Value: length(&f.Height, 1, most)},
		{Name: "smooth", Says: "the figures on the ribs' smooth arcs beside those of the flat cloth", Value: yes(&f.Smooth)},
		units(&f.Units, "what lengths are lettered in"),
		picture(&f.Picture, "the curves and the sheer plan as NAME-float.svg too"),
	}
}

// Do tries the boat on paper.
func (f *Float) Do(w World) (*Result, error) {
	table := isTable(f.Design)
	if err := f.check(table); err != nil {
		return nil, err
	}
	on, err := water.At(f.Water, f.Temperature)
	if err != nil {
		return nil, wrong("temperature", err)
	}
	o := afloat.Options{Water: on, Freeboard: f.Freeboard, Draft: f.Draft, Speeds: speeds(), Smooth: f.Smooth}
	var b aboard.Boat
	var k *facts
	if table {
		b, k, err = f.ofTable(w)
	} else {
		b, k, o.Outfits, err = f.ofDesign(w)
	}
	if err != nil {
		return nil, err
	}
	r, err := afloat.Run(b, o)
	if err != nil {
		return nil, of(f.Design, err)
	}
	numbers, err := json.Afloat(r)
	if err != nil {
		return nil, of(f.Design, err)
	}
	out := &Result{Report: k.report("afloat", trial.Afloat(r, f.Units)).In(f.Units), Numbers: numbers, Warnings: warnings(finding.List{r.InALine()})}
	if f.Picture {
		out.Outputs = []Output{{k.design.Stem() + "-float.svg", "the sheer plan and the curves",
			func(to io.Writer) error {
				return svg.EncodeFigure(to, figure.Afloat(r, f.Units), f.Units.Words(figure.AfloatAbout(r))+" "+k.titled()+".")
			}}}
	}
	return out, nil
}

// isTable reports whether a name is a table of offsets rather than a design.
func isTable(name string) bool { return strings.EqualFold(filepath.Ext(name), ".csv") }

// check refuses choices that contradict each other.
func (f *Float) check(table bool) error {
	switch {
	case table && f.Crew.text != "":
		return misuse("crew", "a table of offsets has no floor to sit on; give the whole weight and its height")
	case table && len(f.Without) > 0:
		return misuse("without", "a table of offsets has no seats; leave it out")
	case table && f.Smooth:
		return misuse("smooth", "a table of offsets has no stringers; leave it out")
	case table && f.Load == 0 && f.Draft == 0:
		return misuse("load,draft", "a table of offsets has no weight; give the one, as 120kg, or the other, as 100mm")
	case !table && f.Height != 0:
		return misuse("kg", "a design knows where its weights lie; leave it out, or set seat.height and gear.height in the design")
	case f.Load != 0 && f.Draft != 0:
		return misuse("load,draft", "the one follows from the other; give one")
	}
	return nil
}

// ofTable is the boat of a table of offsets, whose facts are no more than its title.
func (f *Float) ofTable(w World) (aboard.Boat, *facts, error) {
	t, err := w.table(f.Design)
	if err != nil {
		return aboard.Boat{}, nil, err
	}
	title := titleOf(f.Design)
	h, err := t.Hull()
	if err != nil {
		return aboard.Boat{}, nil, of(f.Design, err)
	}
	return aboard.OfHull(title, h, t.Notes, f.Load, f.Height), &facts{design: &design.Design{Title: title}}, nil
}

// ofDesign is the boat of a design with the people, the gear and the outfits aboard.
func (f *Float) ofDesign(w World) (b aboard.Boat, k *facts, fitted *outfit.Outfits, err error) {
	if k, err = w.factsOf(f.Design); err != nil {
		return b, k, nil, err
	}
	people, err := f.Crew.seated(k.design)
	if err != nil {
		return b, k, nil, err
	}
	people, gear := scaled(people, k.design.Gear, f.Load)
	if b, err = k.aboard(people, gear); err != nil {
		return b, k, nil, err
	}
	if b, err = f.unseated(b); err != nil {
		return b, k, nil, err
	}
	if fitted, err = k.outfits(w, gear); err != nil {
		return b, k, nil, err
	}
	b, err = fitted.PutAboard(b)
	return b, k, fitted, of(k.name, err)
}

// unseated takes the seats out that are not wanted.
func (f *Float) unseated(b aboard.Boat) (aboard.Boat, error) {
	if len(f.Without) == 0 {
		return b, nil
	}
	d := b.Frame.Design
	var out []int
	for _, word := range f.Without {
		word = strings.TrimSpace(word)
		i := d.FindSeat(word)
		switch {
		case len(d.Seats) > 0 && (strings.EqualFold(word, "seat") || strings.EqualFold(word, "all")):
			for j := range d.Seats {
				out = append(out, j)
			}
		case i >= 0:
			out = append(out, i)
		default:
			return b, misuse("without", "%q is no seat of this boat; accepted: seat%s", wording.Clip(word, 40), seatsOf(d))
		}
	}
	b, err := b.WithoutSeats(out)
	return b, of(f.Design, err)
}

// titleOf is what a boat is called that has a table and no design.
func titleOf(table string) string {
	base := path.Base(strings.ReplaceAll(table, `\`, "/"))
	return strings.TrimSuffix(base, path.Ext(base))
}
