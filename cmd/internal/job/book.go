package job

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/flaw"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wording"
	"ribwright/layout/paper"
	"ribwright/layout/pattern"
	"ribwright/layout/plate/nest"
	"ribwright/layout/report"
	"ribwright/layout/report/book"
	"ribwright/layout/typeset"
	"ribwright/render/pdf"
)

// Book asks for the build book of a design.
type Book struct {
	Subject
	Water  water.Kind
	Prices string       // a level, or the name of a table
	Table  string       // the level whose table is printed, "" for none
	Skill  *hours.Skill // nil for what the design says
	Labor  string       // a labor file, "" for none
	HTML   bool         // one HTML file too
	Printer
}

// NewBook returns the request with its defaults.
func NewBook() *Book {
	return &Book{Subject: usual(), Prices: usualPrices, Printer: homePrinter()}
}

// usualPrices is the level of prices where nobody chooses.
const usualPrices = "mixed"

// Fields lists the choices.
func (b *Book) Fields() []Field {
	onPaper := slices.DeleteFunc(b.Printer.fields(), func(f Field) bool { return f.Name != "paper" && f.Name != "margins" })
	return append([]Field{
		units(&b.Units, "what lengths are lettered in; marks on wood carry both"),
		kindOfWater(&b.Water),
		prices(&b.Prices),
		{Name: "price-table", Takes: strings.Join(cost.Levels(), "|"), Says: "print a level's price table, to begin one of your own", Value: words(&b.Table)},
		skillOrKept(&b.Skill),
		{Name: "labor", Takes: "FILE.csv", Says: "a labor file: how many times as long stages and skills take, as builds have shown", Value: words(&b.Labor)},
		{Name: "html", Says: "one HTML file too, to read on a screen or a phone", Value: yes(&b.HTML)},
	}, onPaper...)
}

// prices are a level or a table of prices.
func prices(to *string) Field {
	return Field{Name: "prices", Takes: "level|FILE.toml", Says: "level of the invented prices (" + strings.Join(cost.Levels(), ", ") + "), or a price table of your own", Value: words(to)}
}

// skill is how practiced the builder is.
func skill(to *hours.Skill) Field {
	return Field{Name: "skill", Takes: strings.Join(namesOf(hours.Skills()), "|"), Says: "how practiced the builder is; a sized design keeps it for its book", Value: bind(to, hours.ParseSkill, hours.Skill.String)}
}

// skillOrKept is the same, where a design may say it.
func skillOrKept(to **hours.Skill) Field {
	var any hours.Skill
	f := skill(&any)
	f.Value = bind(to, func(s string) (*hours.Skill, error) {
		v, err := hours.ParseSkill(s)
		return &v, err
	}, func(v *hours.Skill) string {
		if v == nil {
			return ""
		}
		return v.String()
	})
	return f
}

// practiced is the skill that was asked for, or the design's, or average.
func practiced(asked *hours.Skill, d *design.Design) (hours.Skill, error) {
	if asked != nil {
		return *asked, nil
	}
	if d.Skill == "" {
		return hours.Average, nil
	}
	return hours.ParseSkill(d.Skill)
}

// Do makes the book.
func (b *Book) Do(w World) (*Result, error) {
	if b.Table != "" {
		text, err := cost.Text(b.Table)
		return &Result{Text: string(text)}, wrong("price-table", err)
	}
	if _, err := b.sheet(); err != nil {
		return nil, err
	}
	prices, err := w.prices(b.Prices)
	if err != nil {
		return nil, err
	}
	k, err := w.factsOf(b.Design)
	if err != nil {
		return nil, err
	}
	t, err := b.told(k, w, prices)
	if err != nil {
		return nil, err
	}
	out := []Output{t.file}
	if b.HTML {
		screen, err := onScreen(k.design.Stem(), t.report)
		if err != nil {
			return nil, err
		}
		out = append(out, screen)
	}
	return &Result{
		Report:   k.report("", slices.Concat(report.Told(t.Told), summary(t.Facts), k.unlettered())).In(b.Units),
		Outputs:  out,
		Warnings: warnings(t.Told),
	}, nil
}

// toldBook is a book with what it tells, and as a file.
type toldBook struct {
	book.Facts
	report report.Report
	file   Output
}

// told works the book out and lays it on sheets.
func (b *Book) told(k *facts, w World, prices *cost.Table) (out toldBook, err error) {
	sheet, err := b.sheet()
	if err != nil {
		return out, err
	}
	if out.Facts, err = b.gather(k, w, prices); err != nil {
		return out, err
	}
	out.report = book.Of(out.Facts).In(b.Units)
	doc, err := typeset.Lay(out.report, sheet)
	if err != nil {
		return out, of(k.name, err)
	}
	out.file = Output{k.design.Stem() + "-book-" + doc.Paper.Name + ".pdf", fmt.Sprintf("the build book, %s of %s", wording.Counted(len(doc.Sheets), "sheet"), doc.Paper.Name),
		func(to io.Writer) error { return pdf.Encode(to, doc, w.Made) }}
	return out, nil
}

// sheet stands the paper upright, as a book is read.
func (b *Book) sheet() (paper.Sheet, error) {
	if b.Setup.Size.Roll {
		return paper.Sheet{}, misuse("paper", "a book wants sheets, and %s is a roll; accepted: letter, a4, legal, tabloid, a3, both or WxH", b.Setup.Size.Name)
	}
	sheet, err := b.Setup.Sheet(false)
	if err == nil && sheet.Area.W() < report.Wide {
		err = fmt.Errorf("margins (%s) leave %.0f mm of paper %s; accepted: %.0f mm or more between left and right", b.Setup.Margins, sheet.Area.W(), b.Setup.Size.Name, report.Wide)
	}
	return sheet, wrong("margins", err)
}

// prices are a level that comes with the program or a table of somebody's own.
func (w World) prices(name string) (*cost.Table, error) {
	levels := cost.Levels()
	if slices.Contains(levels, name) {
		return cost.Level(name)
	}
	if !strings.EqualFold(filepath.Ext(name), ".toml") {
		return nil, misuse("prices", "no price level %q; accepted: %s, or a file whose name ends in .toml", name, strings.Join(levels, ", "))
	}
	data, err := w.Files.read(name, "price table", "give a file, or one of "+strings.Join(levels, ", "))
	if err != nil {
		return nil, err
	}
	return cost.Read(bytes.NewReader(data), filepath.Base(name))
}

// wantFreeboard is the least freeboard that findings ask for where nobody says
// another, mm; usualMiss is by how much ribs miss the neutral set, mm.
const (
	wantFreeboard = 150.0
	usualMiss     = 10.0
)

// gather works out everything that the book tells. A boat that finds no rest on the
// water, and sticks for which there is no wood, are told of and are no errors.
func (b *Book) gather(k *facts, w World, prices *cost.Table) (book.Facts, error) {
	p, err := b.sawn(k, w, prices)
	if err != nil {
		return p, err
	}
	if p.Hands, err = k.hands(); err != nil {
		return p, err
	}
	if p.Portrait, err = k.portrait(); err != nil {
		return p, err
	}
	for _, step := range []func(*facts, *book.Facts) error{inShop, b.onWater, onTrestles, byEye} {
		if err := step(k, &p); err != nil {
			return p, of(k.name, err)
		}
	}
	return p, nil
}

// sawn works out the boat, its wood, what is bought for it and the hours it takes.
func (b *Book) sawn(k *facts, w World, prices *cost.Table) (book.Facts, error) {
	skill, err := practiced(b.Skill, k.design)
	if err != nil {
		return book.Facts{}, err
	}
	p := book.Facts{Fingerprint: k.fingerprint, Units: b.Units, Prices: prices, Skill: skill, Miss: usualMiss}
	if p.Frame, err = k.frame(); err != nil {
		return p, err
	}
	if p.Bend, err = k.bending(); err != nil {
		return p, err
	}
	if p.Outfits, err = k.outfits(w, k.design.Gear); err != nil {
		return p, err
	}
	if p.Afloat, err = k.carried(); err != nil {
		return p, err
	}
	kits := slices.Concat(p.Afloat.Fittings, p.Outfits.Kits())
	p.Plan = cutlist.Heat(p.Bend.Heat()).Make(p.Frame, kits...)
	p.Needs = materials.Count(p.Bend.Joints, p.Afloat.Cloth, p.Plan, kits...)
	p.Needs.AddForms(p.Bend.Forms)
	p.Cost = cost.Of(p.Needs, p.Plan, p.Prices)
	p.Work = hours.Count(p.Frame, p.Plan, p.Needs, kits...)
	l, err := w.labor(b.Labor)
	p.Work = l.Of(p.Work, p.Skill)
	return p, err
}

// labor reads a labor file; nil where none is named.
func (w World) labor(name string) (*hours.Labor, error) {
	if name == "" {
		return nil, nil
	}
	data, err := w.Files.read(name, "labor file", "")
	if err != nil {
		return nil, err
	}
	return hours.ReadLabor(data, name)
}

// inShop counts the wood that stays in the boat, and lays the sheets.
func inShop(k *facts, p *book.Facts) (err error) {
	p.Rings, p.Saved = p.Plan.Rings(), hours.Saved(p.Frame)
	if p.InBoat, p.InOutfits, err = p.Plan.Finished(k.design); err != nil {
		return err
	}
	if p.Corrections, err = frame.Corrections(p.Frame); err != nil {
		return err
	}
	lay := nest.DefaultOptions()
	lay.Quick, lay.Split = true, true // a sketch of the plates
	p.Plates, err = nest.Lay(k.design.Title, pattern.Parts(p.Bend), lay)
	return err
}

// onWater tries the boat with the people, gear and outfits of its design.
func (b *Book) onWater(k *facts, p *book.Facts) (err error) {
	if p.Water, err = water.At(b.Water, water.Usual); err != nil {
		return err
	}
	if p.Afloat, err = p.Outfits.PutAboard(p.Afloat); err != nil {
		return err
	}
	if p.Trial, err = afloat.Run(p.Afloat, afloat.Options{Water: p.Water, Freeboard: wantFreeboard, Speeds: speeds(), Outfits: p.Outfits}); err != nil {
		p.Trial, p.NoTrial = nil, err.Error()
		p.Clearance, p.Told = skin.ClearanceOf(p.Frame), finding.List{afloat.NoRest(err), p.Bend.InALine()}
	} else {
		p.Clearance, p.Told = p.Trial.Clearance, finding.List{p.Trial.InALine(), p.Bend.InALine()}
	}
	p.Outfitted, err = afloat.WithOutfits(p.Afloat, p.Outfits, p.Water)
	return err
}

// speeds are the speeds of the effort, m/s: 2.5 to 12 km/h.
func speeds() []float64 {
	out := make([]float64, 20)
	for i := range out {
		out[i] = (2.5 + 0.5*float64(i)) / 3.6
	}
	return out
}

// onTrestles leaves the bilges as they fall, and takes all cross pieces out.
func onTrestles(_ *facts, p *book.Facts) (err error) {
	p.Loose = afloat.LooseRibs(p.Afloat, p.Bend.Loose(), p.Water)
	if p.Without, err = p.Bend.Boat.Choose(allOut(p.Frame)); err != nil {
		return err
	}
	p.Trials, err = p.Bend.Boat.Trials(p.Without, p.Miss)
	return err
}

// summary says what the book comes to, and for which sticks there is no wood, once
// where several alike are the layers of a part.
func summary(p book.Facts) []report.Block {
	out := []report.Block{report.Paragraph{Words: fmt.Sprintf("Materials about %.0f at prices %s, give or take %.0f%s; %.0f hours, %s builder.",
		p.Cost.Likely, p.Prices.Name, p.Cost.Off, p.Cost.Without(), hours.Hours(p.Work, "", p.Skill), p.Skill)},
		report.Say("Materials: %s. Hours: %s.", p.Money(), p.Time())}
	missing := p.Plan.Missing()
	if len(missing) == 0 {
		return out
	}
	var each []string
	for _, m := range missing {
		s := p.Plan.Sticks[m.Stick]
		if line := fmt.Sprintf("no wood for %s: it %s", cmp.Or(s.Member, s.Part), m.Why); !slices.Contains(each, line) {
			each = append(each, line)
		}
	}
	if slices.ContainsFunc(p.Plan.Woods, func(w cutlist.Wood) bool { return len(w.Buy) > 0 }) {
		each = append(each, "the ripping plan of the book says which boards to buy for them")
	}
	return append(out, report.Paragraph{Words: fmt.Sprintf("The materials are without %s for which there is no wood:", wording.Counted(len(missing), "stick"))},
		report.List{Items: each})
}

// byEye looks at the frame fair and with each fault.
func byEye(_ *facts, p *book.Facts) (err error) {
	var rest *float.Hydrostatics
	if p.Trial != nil && p.Trial.Fault == nil {
		rest = &p.Trial.Rest
	}
	p.Eye, err = flaw.Of(p.Frame, rest)
	return err
}
