package job

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/learn/feedback"
	"ribwright/geometry/measure"
	survey "ribwright/geometry/survey/built"
	"ribwright/geometry/survey/weighing"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
	"ribwright/layout/report"
	"ribwright/layout/report/built"
	"ribwright/layout/typeset"
	"ribwright/render/json"
	"ribwright/render/pdf"
)

// AsBuilt asks what a frame on the trestles measures and what follows from it; without any
// measure it asks for the card to be filled.
type AsBuilt struct {
	Subject
	Measures   string // the card's file; "" for none
	Crew       People
	Water      water.Kind
	Scale      float64   // kg; 0 for a boat that was not weighed
	Freeboards []float64 // mm: aft, midship, forward; none when not measured
	Incline    *weighing.Incline
	Notes      string // of the builder: hours, weights, boiler; "" for none
	Feedback   bool   // what the build says of the formulas too, to be sent
	Printer           // of the card
}

// NewAsBuilt returns the request with its defaults.
func NewAsBuilt() *AsBuilt { return &AsBuilt{Subject: usual(), Printer: homePrinter()} }

// Fields lists the choices.
func (b *AsBuilt) Fields() []Field {
	onPaper := slices.DeleteFunc(b.Printer.fields(), func(f Field) bool { return f.Name != "paper" && f.Name != "margins" })
	return append([]Field{
		{Name: "weight", Takes: "mass", Says: "of the finished boat on a scale, dry and with nothing loose", Value: mass(&b.Scale)},
		{Name: "freeboards", Takes: "aft,midship,fore", Says: "from the water to the top of the gunwale at the last rib aft, at midship and at the last rib forward, with nothing in the boat, as 305mm,240mm,310mm", Value: bind(&b.Freeboards, parseFreeboards, showLengths)},
		{Name: "inclined", Takes: "test", Says: "a weight moved across the empty boat: its mass, how far from the middle line, and the angles read, to port + and to starboard -, as '10kg 200mm 7.5 -7.9 7.6 -7.8'", Value: bind(&b.Incline, weighing.ParseIncline, weighing.ShowIncline)},
		{Name: "notes", Takes: "FILE.csv", Says: "your notes of the build, for the feedback: the ribs' wood, boiler and board, what parts weigh, what each stage took", Value: words(&b.Notes)},
		{Name: "feedback", Says: "what the build says of the formulas as feedback.csv too, without a name or a place", Value: yes(&b.Feedback)},
		crew(&b.Crew),
		kindOfWater(&b.Water),
		units(&b.Units, "what lengths are lettered in"),
	}, onPaper...)
}

// Name takes the design and its measures.
func (b *AsBuilt) Name(names []string) {
	b.Design = names[0]
	if len(names) > 1 {
		b.Measures = names[1]
	}
}

func parseFreeboards(text string) ([]float64, error) {
	parts := strings.Split(text, ",")
	if len(parts) != 3 {
		return nil, fmt.Errorf("%d lengths are given; accepted: three, aft, midship and fore, as 305mm,240mm,310mm", len(parts))
	}
	var out []float64
	for _, p := range parts {
		v, err := measure.ParseLength(strings.TrimSpace(p))
		if err == nil && !(v > 0 && v < 1000) {
			err = fmt.Errorf("%s is no freeboard; accepted: 1 to 1000 mm", v)
		}
		if err != nil {
			return nil, err
		}
		out = append(out, float64(v))
	}
	return out, nil
}

func showLengths(all []float64) string {
	var out []string
	for _, v := range all {
		out = append(out, measure.Length(v).String())
	}
	return strings.Join(out, ",")
}

// Do reads the card, or makes one.
func (b *AsBuilt) Do(w World) (*Result, error) {
	if strings.EqualFold(filepath.Ext(b.Design), ".csv") {
		return nil, misuse("", "%q is a card and no design; the design comes first, then its card", b.Design)
	}
	k, err := w.factsOf(b.Design)
	if err != nil {
		return nil, err
	}
	bending, err := k.bending()
	if err != nil {
		return nil, err
	}
	f, err := survey.NewFrame(bending)
	if err != nil {
		return nil, of(k.name, err)
	}
	if b.Measures == "" && b.Notes == "" && b.Scale == 0 && b.Freeboards == nil && b.Incline == nil {
		return b.card(k, f, w)
	}
	facts := built.Facts{Units: b.Units}
	if b.Measures != "" {
		data, err := w.Files.read(b.Measures, "card of measures", "")
		if err != nil {
			return nil, err
		}
		rows, err := survey.Read(data, b.Measures, f)
		if err != nil {
			return nil, err
		}
		facts.Measured = f.Of(rows)
	}
	return b.answer(k, facts, w)
}

// answer judges the measures, and writes the feedback where it is wanted.
func (b *AsBuilt) answer(k *facts, f built.Facts, w World) (*Result, error) {
	if !b.Feedback && b.Notes != "" {
		return nil, misuse("notes", "notes go into the feedback alone; ask for that too")
	}
	notes, err := w.notes(b.Notes)
	if err != nil {
		return nil, err
	}
	out, err := b.judge(k, f)
	if err == nil && b.Feedback {
		out.Outputs = append(out.Outputs, feedbackFile(k.measuredBuild(f.Measured, notes)))
	}
	return out, err
}

// judge works out what follows from the measures.
func (b *AsBuilt) judge(k *facts, f built.Facts) (*Result, error) {
	if err := together(
		func() (err error) { f.Hands, err = k.hands(); return err },
		func() error {
			if f.Measured == nil {
				return nil
			}
			var err error
			if f.Design, err = f.Measured.Design(); err != nil {
				f.NoDesign = err.Error() // told, for the ribs are judged all the same
			}
			return nil
		},
		func() error { return b.float(k, &f) },
	); err != nil {
		return nil, err
	}
	numbers, err := json.Built(k.design, f.Measured, built.Do(f), f.Weighed, f.Ship(), f.Trial)
	if err != nil {
		return nil, of(k.name, err)
	}
	out := &Result{Report: k.report("as it is built", built.Of(f)).In(b.Units), Numbers: numbers, Warnings: warnings(finding.List{f.Afloat})}
	if f.Design != nil {
		d := f.Design.Design
		out.Outputs = []Output{derived(k.design.Stem()+"-as-built.toml", "the boat as built, a design like any other", d, "the boat as built, from "+k.origin()+", and the card "+fileOf(b.Measures))}
	}
	return out, nil
}

// float weighs the boat as it is and floats it with its crew.
func (b *AsBuilt) float(k *facts, f *built.Facts) error {
	people, err := b.Crew.seated(k.design)
	if err != nil {
		return err
	}
	boat, err := b.asItIs(k, f.Measured, people)
	if err != nil {
		return err
	}
	on, err := water.At(b.Water, water.Usual)
	if err != nil {
		return err
	}
	if b.Scale > 0 || b.Freeboards != nil || b.Incline != nil {
		if f.Weighed, err = b.weigh(boat, on); err != nil {
			return of(k.name, err)
		}
		own := boat.Own()
		boat.Parts = append(slices.Clip(boat.Parts), weight.Item{Name: "found more by the tests",
			Loads: []float.Load{{Mass: -own.Mass, At: own.At}, f.Weighed.Load()}})
	}
	f.Trial, err = afloat.Stands(boat, afloat.Options{Water: on, Freeboard: wantFreeboard})
	var rest *float.Fault
	switch {
	case errors.As(err, &rest):
		f.Trial, f.Afloat = nil, afloat.NoRest(err)
		return nil
	case err != nil:
		return of(k.name, err)
	}
	f.Afloat = f.Trial.InALine()
	return nil
}

// asItIs is the boat with the frame as it was measured, or as drawn where it was not.
func (b *AsBuilt) asItIs(k *facts, m *survey.Report, people []design.Person) (aboard.Boat, error) {
	if m == nil {
		return k.aboard(people, k.design.Gear)
	}
	made, err := m.AsItIs()
	if err != nil {
		return aboard.Boat{}, of(k.name, err)
	}
	c, err := aboard.Cover(made)
	if err != nil {
		return aboard.Boat{}, of(k.name, err)
	}
	p, err := fittings.Placed(made)
	if err != nil {
		return aboard.Boat{}, of(k.name, err)
	}
	boat, err := aboard.Fitted(c, p, people, k.design.Gear)
	return boat, of(k.name, err)
}

// weigh takes the tests together.
func (b *AsBuilt) weigh(boat aboard.Boat, on water.Water) (*weighing.Found, error) {
	t := weighing.Tests{Scale: b.Scale, Incline: b.Incline}
	if b.Freeboards != nil {
		t.Freeboards = (*[3]float64)(b.Freeboards)
	}
	ribs := boat.Frame.Ribs
	return weighing.Of(weighing.Boat{Hull: boat.Hull, Own: boat.Own(), Density: on.Density,
		Weight: geometry.Point3{Z: boat.Floor(0) + weighing.CanMiddle}, At: [3]float64{ribs[0].Station, 0, ribs[len(ribs)-1].Station}}, t)
}

// card makes the card and the table that goes with it.
func (b *AsBuilt) card(k *facts, f *survey.Frame, w World) (*Result, error) {
	book := Book{Printer: b.Printer}
	sheet, err := book.sheet()
	if err != nil {
		return nil, err
	}
	doc, err := typeset.Lay(k.report("card of measures", built.Card(f, b.Units)).In(b.Units), sheet)
	if err != nil {
		return nil, of(k.name, err)
	}
	notes, says, err := k.drawnBuild()
	if err != nil {
		return nil, err
	}
	numbers, err := json.Card(k.design, f, survey.Heads(b.Units == measure.Imperial))
	if err != nil {
		return nil, of(k.name, err)
	}
	slug := k.design.Stem()
	return &Result{
		Numbers: numbers,
		Report: k.report("card of measures", append([]report.Block{report.Say("Fill the card at the trestles, any ribs and any cells, and type it into the table beside it. Then ask again with the table: what is off, which rib wants something done, and how the ribs that remain are cut and bent.")},
			built.How(f, b.Units)...)).In(b.Units),
		Outputs: []Output{
			{slug + "-card-" + doc.Paper.Name + ".pdf", "the card, to be filled at the trestles, and how the boat is weighed and inclined", func(to io.Writer) error { return pdf.Encode(to, doc, w.Made) }},
			{slug + "-measures.csv", "the table for what the card says, a line for each rib", func(to io.Writer) error { return emptyTable(to, f, b.Units) }},
			{slug + "-notes.csv", "notes to be filled if you like: what parts weigh and stages take, for the feedback", func(to io.Writer) error { return feedback.Blank(to, notes, says) }},
		},
	}, nil
}

// emptyTable writes the heading and a line for each rib.
func emptyTable(to io.Writer, f *survey.Frame, units measure.System) error {
	c := csv.NewWriter(to)
	heads := survey.Heads(units == measure.Imperial)
	if err := c.Write(heads); err != nil {
		return err
	}
	for _, r := range f.Frame.Ribs {
		row := make([]string, len(heads))
		row[0] = r.Name
		if err := c.Write(row); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}
