package job

import (
	"errors"
	"fmt"
	"io"
	"path"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
	"ribwright/layout/report/reasons"
	"ribwright/render/json"
	"ribwright/render/svg"
)

// Size asks for a design to the measure of people: one boat, or a search, a sweep, or a
// family tried on many.
type Size struct {
	Sizing
	Set        []string // values in the place of formulas
	Targets    []string // what the boat must meet
	Free       string   // values that a search for targets may move
	Aim        sizing.Aim
	Sweep      string  // "" for none
	Car        float64 // mm, the longest load that the car carries, 0 where nothing is said
	Advise     bool    // which of the families to build, instead of one boat
	Explain    string  // the value whose derivation is told, "" for none
	Population int     // on how many a family is tried, 0 for none
	Formulas   string  // the family that is printed, "" for none
	Picture    bool
	nesting    // the boat it shall go into or around
}

// NewSize returns the request with its defaults.
func NewSize() *Size {
	return &Size{Sizing: newSizing(), Free: "length,beam,depth", nesting: nesting{Room: usualRoom}}
}

// Fields lists the choices.
func (s *Size) Fields() []Field {
	const (
		who      = `who paddles, as "62 kg, 168 cm", perhaps with woman or man, span 171 cm, kneeling or sitting; twice for a tandem, the stern paddler first`
		searched = "Searches and trials"
		many     = 100000
	)
	texts := func(to *[]string) Value { return list(to, asIs, func(t string) string { return t }) }
	aims := namesOf(sizing.Aims())
	out := []Field{
		{Name: "paddler", Takes: "who", Says: who, Value: list(&s.Crew, sizing.ParsePaddler, sizing.Paddler.String), Many: true},
		{Name: "passenger", Takes: "who", Says: `who rides along and does not paddle, a child too, as "25 kg, 120 cm", perhaps with kneeling or sitting, or at 200 mm from midship; may be given several times, from aft forward. In a tandem with one paddler the first sits in the bow`,
			Value: list(&s.Passengers, sizing.ParsePassenger, sizing.Rider.String), Many: true},
		{Name: "dog", Takes: "weight", Says: `a dog aboard, as "30 kg"; may be given several times`, Value: list(&s.Dogs, sizing.ParseDog, sizing.Rider.String), Many: true},
		{Name: "title", Takes: "name", Says: "what the boat is called", Value: words(&s.Title)},
		{Name: "edition", Takes: "name", Says: "which edition of the boat this is, as 2, where it is not the first", Value: words(&s.Edition)},
		{Name: "advise", Says: "which boat to build first: those that would do, ranked with reasons, instead of one design", Value: yes(&s.Advise)},
		{Name: "car", Takes: "length", Says: "the longest load that the car carries, for the advice", Value: length(&s.Car, 1000, 12000)},
		{Name: "explain", Takes: "value", Says: "the whole derivation of one value instead of the page", Value: words(&s.Explain)},
		{Name: "formulas", Takes: strings.Join(family.Files(), "|"), Says: "print a family's file, to begin one of your own", Value: words(&s.Formulas)},
	}
	out = append(append(out, s.nesting.fields()...), s.Sizing.fields()...)
	out = append(out, grouped(searched, []Field{
		{Name: "set", Takes: "value=number", Says: "a value in the place of its formula, as length=3400mm; may be given several times", Value: texts(&s.Set), Many: true},
		{Name: "target", Takes: "value<=number", Says: `what the boat must meet, as "draft<=110mm"; may be given several times`, Value: texts(&s.Targets), Many: true},
		{Name: "free", Takes: "values", Says: "values that a search for targets may move", Value: words(&s.Free)},
		{Name: "aim", Takes: strings.Join(aims, "|"), Says: "what a search makes least: the size, or the effort at the speed", Value: oneOf(&s.Aim, aims, sizing.Aims())},
		{Name: "sweep", Takes: "value=from..to/step", Says: "boats for steps of one value, as beam=680mm..780mm/20mm", Value: words(&s.Sweep)},
		picture(&s.Picture, "the figure of a sweep as NAME-sweep.svg too"),
		{Name: "population", Takes: "number", Says: "try the family on so many random bodies, loads and skills, and count what fails", Value: whole(&s.Population, 1, many)},
	})...)
	return append(out, s.Sizing.printing()...)
}

// Name takes nothing: a boat is sized from its people.
func (s *Size) Name([]string) {}

// Do sizes the boat.
func (s *Size) Do(w World) (*Result, error) {
	if s.Formulas != "" {
		file, err := family.Source(s.Formulas)
		return &Result{Text: file.Text}, wrong("formulas", err)
	}
	if err := s.check(); err != nil {
		return nil, err
	}
	if s.Advise {
		return s.advise(w)
	}
	fam, err := s.family(w)
	if err != nil {
		return nil, err
	}
	if s.Population > 0 {
		return s.tryMany(fam), nil
	}
	if err := s.nesting.open(w); err != nil {
		return nil, err
	}
	c, err := s.newCase(fam)
	switch {
	case err != nil:
		return nil, err
	case s.Sweep != "":
		return s.sweep(c)
	}
	return s.one(c, w)
}

// check refuses choices that contradict each other.
func (s *Size) check() error {
	switch {
	case s.Population == 0 && len(s.Crew) == 0:
		return misuse("paddler", `nobody is given; accepted: one as "62 kg, 168 cm"`)
	case s.Car > 0 && !s.Advise:
		return misuse("car", "a car is weighed only where the boat to build first is asked for; leave it out, or ask for advice")
	case s.Picture && s.Sweep == "":
		return misuse("svg", "only a sweep has a figure; leave it out")
	}
	if err := s.nesting.check(s.Advise || s.Population > 0 || s.Sweep != ""); err != nil {
		return err
	}
	return s.Printer.check()
}

// newCase makes a case of the people with the values set by hand.
func (s *Size) newCase(fam *family.Family) (*sizing.Case, error) {
	b := s.brief()
	if b.Title == "" {
		b.Title = wording.Capital(strings.TrimSuffix(path.Base(strings.ReplaceAll(fam.Name, `\`, "/")), ".family"))
		for _, p := range s.Crew {
			b.Title += " " + b.Mass(p.Weight)
		}
	}
	c, err := sizing.NewCase(fam, b)
	if err != nil {
		return nil, misuse("", "%w", err)
	}
	for _, text := range s.Set {
		name, value, ok := strings.Cut(text, "=")
		if !ok {
			return nil, misuse("set", "%q is not understood; accepted: a name, = and a number with its unit, as length=3400mm", text)
		}
		v, d, err := formula.Quantity(value)
		if err == nil {
			err = c.Put(strings.TrimSpace(name), v, d)
		}
		if err != nil {
			return nil, wrong("set", err)
		}
	}
	return c, nil
}

// one sizes one boat, by the formulas or by a search.
func (s *Size) one(c *sizing.Case, w World) (*Result, error) {
	boat, answer, err := s.found(c)
	if hand := (*sizing.SetByHand)(nil); errors.As(err, &hand) {
		return nil, wrong("set", hand)
	}
	if err != nil {
		return nil, err
	}
	k, err := s.factsOf(boat)
	if err != nil {
		return nil, err
	}
	out := &Result{Report: k.report("", nil)}
	if s.Explain != "" {
		steps, err := boat.Case.Run().Explain(s.Explain)
		if err != nil {
			return nil, wrong("explain", err)
		}
		out.Report.Blocks = reasons.Derivation(steps)
		out.Numbers, err = json.Derivation(boat.Design, steps)
		return out, err
	}
	out.Report.Blocks = reasons.Boat(boat)
	if answer != nil {
		out.Report.Blocks = append(out.Report.Blocks, reasons.Search(answer, s.Aim, s.Targets)...)
	}
	out.Report.Blocks = append(out.Report.Blocks, s.nesting.told()...)
	if answer == nil {
		changes, err := besideSheltered(c)
		if err != nil {
			return nil, err
		}
		out.Report.Blocks = append(out.Report.Blocks, reasons.Waters(c.Brief.Waters, changes)...)
	}
	found, err := k.judge(w, s.Water)
	if err != nil {
		return nil, err
	}
	out.Warnings = append(boat.Failures(), warnings(found.told)...)
	out.Report.Blocks = append(append(out.Report.Blocks, reasons.Tried(found.told, found.matters)...), report.Paragraph{Words: report.Promise})
	out.Report = out.Report.In(s.Units)
	if out.Numbers, err = json.Sizing(boat); err != nil {
		return nil, err
	}
	out.Outputs, err = s.files(designOf(boat), k, w)
	return out, err
}

// found is the boat that is asked for, which goes into or around another where that is
// asked too.
func (s *Size) found(c *sizing.Case) (*sizing.Boat, *sizing.Answer, error) {
	if len(s.trials) == 0 {
		return s.boat(c)
	}
	if len(s.Targets) > 0 {
		c.Trials = s.trials
		b, a, err := s.boat(c)
		return b, a, s.nesting.kept(b, err)
	}
	b, err := s.nesting.size(func() (*sizing.Case, error) { return s.newCase(c.Family) })
	return b, nil, err
}

// besideSheltered is what the water changes, and nothing for sheltered water.
func besideSheltered(c *sizing.Case) ([]sizing.Change, error) {
	if c.Brief.Waters == family.Sheltered {
		return nil, nil
	}
	s, err := c.Sheltered()
	if err != nil {
		return nil, c.Refused(err)
	}
	return c.Beside(s), nil
}

func (s *Size) boat(c *sizing.Case) (*sizing.Boat, *sizing.Answer, error) {
	if err := c.Settle(); err != nil {
		return nil, nil, c.Refused(err)
	}
	if len(s.Targets) == 0 {
		b, err := c.Finish()
		return b, nil, c.Refused(err)
	}
	g := sizing.Goal{Aim: s.Aim}
	for _, text := range s.Targets {
		t, err := sizing.ParseTarget(text, c.Family.Program)
		if err != nil {
			return nil, nil, wrong("target", err)
		}
		g.Targets = append(g.Targets, t)
	}
	var err error
	if g.Free, err = c.Free(s.Free); err != nil {
		return nil, nil, wrong("free", err)
	}
	a, err := c.Solve(g)
	if err != nil {
		return nil, nil, err
	}
	return a.Boat, a, nil
}

// sweep sizes a boat for each step of a value.
func (s *Size) sweep(c *sizing.Case) (*Result, error) {
	sweep, err := sizing.ParseSweep(s.Sweep, c.Family.Program)
	if err != nil {
		return nil, wrong("sweep", err)
	}
	rows, err := c.Sweep(sweep)
	if err != nil {
		return nil, err
	}
	out := &Result{
		Report:  report.Report{Title: c.Brief.Title + ", a sweep", For: c.Brief.Who(), Blocks: reasons.Sweep(c.Family, sweep, rows)},
		Numbers: json.Sweep(c.Family, sweep, rows),
	}
	figure, drawn := out.Report.Blocks[len(out.Report.Blocks)-1].(report.Figure)
	switch {
	case !drawn:
		return nil, fmt.Errorf("no step of the sweep makes a boat: %s", rows[0].Fault)
	case s.Picture:
		out.Outputs = []Output{{c.Family.Slug() + "-sweep.svg", "draft, freeboard and GM over " + sweep.Name,
			func(to io.Writer) error { return svg.EncodeFigure(to, figure.Drawing, figure.About) }}}
	}
	return out, nil
}

// tryMany tries a family on random bodies and loads.
func (s *Size) tryMany(fam *family.Family) *Result {
	p := sizing.Trying{Family: fam, Judge: bends}.Try(s.Population)
	return &Result{
		Report:  report.Report{Title: "The family " + fam.Name + " tried on many", Blocks: reasons.Population(fam.Name, p)},
		Numbers: json.Population(fam.Name, p),
	}
}

// bends judges whether a boat's wood takes its bends.
func bends(b *sizing.Boat) finding.List {
	r, err := bend.Of(b.Frame)
	if err != nil {
		return finding.List{{About: "bend", Text: err.Error(), Verdict: finding.Unfit}}
	}
	var out finding.List
	for _, f := range r.Findings {
		if !f.Verdict.Passes() {
			f.Text = f.String()
			f.About = "bend of " + strings.Fields(f.About)[0] // one name for all parts of a kind
			out = append(out, f)
		}
	}
	return out
}
