package job

import (
	"errors"
	"fmt"
	"slices"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/edition"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
	"ribwright/layout/pattern"
	"ribwright/layout/report/compare"
	"ribwright/layout/reprint"
	"ribwright/layout/tile"
	"ribwright/render/json"
)

// Compare asks what moved between two editions of a design, and what of the paper and
// the wood still serves.
type Compare struct {
	Old, New string
	Units    measure.System
	Cut      string // parts that are cut to the older edition, in words; "" for none
	Prices   string
	Ribs     pattern.Ribs // on what they are drawn on the printed sheets
	Printer
}

// NewCompare returns the request with its defaults.
func NewCompare() *Compare { return &Compare{Prices: "mixed", Ribs: usualRibs, Printer: homePrinter()} }

// Fields lists the choices.
func (c *Compare) Fields() []Field {
	return append([]Field{
		{Name: "cut", Takes: "parts", Says: "what is cut already to the older edition, as stems,ribs:A1-A6,gunwales: says what fits, what to rework and what to make again, and writes an edition that keeps it", Value: words(&c.Cut)},
		units(&c.Units, "what lengths are lettered in"),
		prices(&c.Prices),
		ribsOn(&c.Ribs),
	}, c.Printer.fields()...)
}

// Name takes the two designs, the older one first.
func (c *Compare) Name(names []string) {
	c.Old = names[0]
	if len(names) > 1 {
		c.New = names[1]
	}
}

// compared are the facts of both editions.
type compared struct {
	old, new *facts
	was, is  *edition.Edition
	*edition.Comparison
	behave []edition.Figure
	fault  []string // why an edition does not float
	sheets *tile.Since
	cut    []edition.Judged
	kept   *edition.Kept
	prices *cost.Table
}

// Do compares them.
func (c *Compare) Do(w World) (*Result, error) {
	k, err := c.work(w)
	if err != nil {
		return nil, err
	}
	set := reprint.Of(k.sheets, k.Comparison)
	numbers, err := json.Compare(k.Comparison, k.behave, set, c.Setup.Size.Name, k.cut, k.kept)
	if err != nil {
		return nil, of(k.new.name, err)
	}
	told := compare.Of(compare.Facts{Comparison: k.Comparison, Behave: k.behave, Afloat: k.fault, Paper: c.Setup.Size.Name, Sheets: set,
		Cut: k.cut, Kept: k.kept, Prices: k.prices.Name, Units: c.Units})
	out := &Result{Report: k.new.report("compared with edition "+k.old.design.EditionName(), told), Numbers: numbers}
	if k.kept != nil {
		d := k.kept.Design
		out.Outputs = []Output{derived(d.Stem()+"-kept.toml", "the edition that keeps what is cut; see how it floats, then loft it", d,
			fmt.Sprintf("as near to %s as %s cut to %s lets it", k.new.origin(), c.Cut, k.old.origin()))}
	}
	return out, nil
}

// work works both editions out.
func (c *Compare) work(w World) (*compared, error) {
	if c.Old == "" || c.New == "" {
		return nil, misuse("", "two designs are compared, the older one first; accepted: two design files, or names of shipped designs")
	}
	if err := c.Printer.check(); err != nil {
		return nil, err
	}
	k := &compared{}
	var err error
	if k.prices, err = w.prices(c.Prices); err != nil {
		return nil, err
	}
	if k.old, err = w.factsOf(c.Old); err != nil {
		return nil, err
	}
	if k.new, err = w.factsOf(c.New); err != nil {
		return nil, err
	}
	if err = together(
		func() (err error) { k.was, err = k.old.edition(); return err },
		func() (err error) { k.is, err = k.new.edition(); return err },
	); err != nil {
		return nil, err
	}
	var was, is edition.Facts
	var faults [2]string
	if err = together(
		func() (err error) { k.sheets, err = c.sheets(k, w); return err },
		func() error { k.Comparison = edition.Compare(k.was, k.is); return nil },
		func() (err error) { was, faults[0], err = k.old.behavior(w, k.prices, hours.Average); return err },
		func() (err error) { is, faults[1], err = k.new.behavior(w, k.prices, hours.Average); return err },
	); err != nil {
		return nil, err
	}
	k.behave = edition.Behave(was, is)
	k.fault = slices.DeleteFunc(faults[:], func(s string) bool { return s == "" })
	return k, c.onWood(k)
}

// onWood judges what is cut, and looks for an edition that keeps it.
func (c *Compare) onWood(k *compared) error {
	if c.Cut == "" {
		return nil
	}
	cut, err := edition.ParseCut(c.Cut, k.was)
	if err != nil {
		return wrong("cut", err)
	}
	k.cut = k.Judge(cut)
	k.kept, err = k.Keep(cut, func(d *design.Design) (*edition.Edition, error) {
		f, err := newFacts(d, k.new.name)
		if err != nil {
			return nil, err
		}
		return f.edition()
	})
	return err
}

// edition is the design worked out, to be compared.
func (k *facts) edition() (*edition.Edition, error) {
	b, err := k.bending()
	if err != nil {
		return nil, err
	}
	list, err := k.marks()
	return &edition.Edition{Design: k.design, Bend: b, Marks: list}, err
}

// sheets lays the patterns of the newer edition over those of the older one.
func (c *Compare) sheets(k *compared, w World) (*tile.Since, error) {
	told, err := k.new.told(w)
	if err != nil {
		return nil, err
	}
	// Always printed anew, so that one serves for both; without the boat, whose picture makes
	// way for words and moves no pattern.
	first := pattern.First(k.is.Bend, told, c.Units)
	s, err := tile.LaySince(k.old.set(k.was.Bend, first, c.Units, c.Ribs), k.new.set(k.is.Bend, first, c.Units, c.Ribs), tile.Options{Paper: c.Setup, Way: c.Way, Units: c.Units})
	return s, of(k.new.name, err)
}

// behavior is how the boat behaves, and in words why it does not float where it does not.
func (k *facts) behavior(w World, prices *cost.Table, skill hours.Skill) (f edition.Facts, fault string, err error) {
	if f.Bend, err = k.bending(); err != nil {
		return f, "", err
	}
	b, err := k.carried()
	if err != nil {
		return f, "", err
	}
	fitted, err := k.outfits(w, k.design.Gear)
	if err != nil {
		return f, "", err
	}
	f.Mass = weight.Sum(b.Parts).Mass
	kits := slices.Concat(b.Fittings, fitted.Kits())
	plan := cutlist.Heat(f.Bend.Heat()).Quick(f.Bend.Frame, kits...)
	needs := materials.Count(f.Bend.Joints, b.Cloth, plan, kits...)
	needs.AddForms(f.Bend.Forms)
	f.Cost = cost.Of(needs, plan, prices).Likely
	f.Hours = hours.Hours(hours.Count(f.Bend.Frame, plan, needs, kits...), "", skill)
	if b, err = fitted.PutAboard(b); err != nil {
		return f, "", of(k.name, err)
	}
	if f.Trial, fault, err = tried(b); err != nil {
		return f, "", of(k.name, err)
	}
	if fault != "" {
		fault = "edition " + k.design.EditionName() + ": " + fault
	}
	if out := allOut(f.Bend.Frame); out != nil {
		without, err := f.Bend.Boat.Choose(out)
		if err != nil {
			return f, "", of(k.name, err)
		}
		trials, err := f.Bend.Boat.Trials(without, 0)
		if err != nil {
			return f, "", of(k.name, err)
		}
		f.Out = &trials[min(1, len(trials)-1)]
	}
	return f, fault, nil
}

// tried floats a boat in fresh water. Why it finds no rest is in words, and no error.
func tried(b aboard.Boat) (*afloat.Report, string, error) {
	on, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		return nil, "", err
	}
	r, err := afloat.Goes(b, afloat.Options{Water: on, Freeboard: wantFreeboard})
	var rest *float.Fault
	switch {
	case errors.As(err, &rest):
		return nil, rest.Error(), nil
	case err != nil:
		return nil, "", err
	case r.Fault != nil:
		return r, r.Fault.Error(), nil
	}
	return r, "", nil
}
