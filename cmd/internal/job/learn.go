package job

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"time"

	"ribwright/geometry/learn"
	"ribwright/geometry/learn/feedback"
	"ribwright/geometry/measure"
	"ribwright/geometry/sidebyside"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	survey "ribwright/geometry/survey/built"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
	told "ribwright/layout/report/learn"
	"ribwright/render/json"
)

// Learn asks what many builds say of the formulas.
type Learn struct {
	Builds []string // feedback files, tables of builds, and cards
	Of     string   // the design of the cards that no table lists; "" where there are none
	Use    string
	Family string // a file instead of Use, "" for none
	Check  int    // on how many bodies the family is tried as it is and as proposed; 0 for none
	Log    string // of the family, which is written on; "" to begin one
	Date   string // that stands in the log; "" for no log
	Units  measure.System
}

// NewLearn returns the request with its defaults.
func NewLearn() *Learn { return &Learn{Use: family.Names()[0]} }

// Fields lists the choices.
func (l *Learn) Fields() []Field {
	return []Field{
		{Name: "of", Takes: "DESIGN", Says: "the design of the cards that are given by themselves; those that a table of builds lists have theirs there", Value: words(&l.Of)},
		{Name: "use", Takes: strings.Join(family.Names(), "|"), Says: "family of boats", Value: words(&l.Use)},
		{Name: "family", Takes: "FILE.family", Says: "a family of your own instead", Value: words(&l.Family)},
		{Name: "check", Takes: "number", Says: "try the family on so many random bodies and loads, as it is and with the proposed lines", Value: whole(&l.Check, 1, 10000)},
		{Name: "date", Takes: "YYYY-MM-DD", Says: "write the proposed lines into the family's log too, under this day", Value: bind(&l.Date, parseDate, func(s string) string { return s })},
		{Name: "log", Takes: "FILE.csv", Says: "the family's log so far, to be written on", Value: words(&l.Log)},
		units(&l.Units, "what lengths are told in"),
	}
}

// Name takes the files of builds.
func (l *Learn) Name(names []string) { l.Builds = names }

func parseDate(text string) (string, error) {
	t, err := time.Parse(time.DateOnly, strings.TrimSpace(text))
	if err != nil {
		return "", fmt.Errorf("%q is no day; accepted: year, month and day, as 2026-11-26", wording.Clip(text, 20))
	}
	return t.Format(time.DateOnly), nil
}

// Do learns.
func (l *Learn) Do(w World) (*Result, error) {
	switch {
	case len(l.Builds) == 0:
		return nil, misuse("", "no builds are given; accepted: feedback files, or a table of builds with the columns %s", strings.Join(tableHeads, ","))
	case l.Log != "" && l.Date == "":
		return nil, misuse("log", "the log is written on under a day; give its date too")
	}
	src, fam, err := l.family(w)
	if err != nil {
		return nil, err
	}
	priors, err := priorBuilds(fam)
	if err != nil {
		return nil, err
	}
	builds, err := l.read(w)
	if err != nil {
		return nil, err
	}
	r := learn.Of(builds, priors)
	f := told.Facts{Report: r, Proposed: r.Propose(), Units: l.Units, Family: src.Name}
	text := learn.Rewrite(src, l.Family == "", f.Proposed)
	var before, after *sizing.Population
	if l.Check > 0 {
		if f.Tried, err = l.try(fam, text); err != nil {
			return nil, err
		}
		before, after = &f.Tried.Before, &f.Tried.After
	}
	out := &Result{Report: report.Report{Title: "What builds say", For: "the family " + fam.Slug(), Blocks: told.Of(f)}.In(l.Units),
		Numbers: json.Learn(r, f.Proposed, before, after)}
	out.Outputs, err = l.outputs(w, fam.Slug(), text, f.Proposed)
	return out, err
}

// family reads the family that the builds are held against, with its text.
func (l *Learn) family(w World) (formula.Source, *family.Family, error) {
	s := Sizing{Use: l.Use, Family: l.Family}
	f, err := s.family(w)
	if err != nil {
		return formula.Source{}, nil, err
	}
	if l.Family == "" {
		return formula.Source{Name: l.Use}, f, nil
	}
	text, err := w.Files.read(l.Family, "family file", "")
	return formula.Source{Name: l.Family, Text: string(text)}, f, err
}

// priorBuilds is how many builds the family's figures are worth: prior_builds for all, and
// with the name of a kind of figure behind it for that one.
func priorBuilds(f *family.Family) (learn.Priors, error) {
	out := learn.Priors{}
	for w := feedback.Springback; w <= feedback.Hours; w++ {
		for _, name := range []string{"prior_builds", "prior_builds_" + w.String()} {
			if !f.Program.HasFormula(name) {
				continue
			}
			v, ok := f.Program.Constant(name)
			if k, _ := f.Program.Kind(name); !ok || k != formula.Of(formula.Plain) || !(v.Num >= 0 && v.Num <= 1000) {
				return nil, f.Program.Where(name).Fault(name, "is how many builds the family's figures count as; accepted: a plain number, 0 to 1000")
			}
			out[w] = v.Num
		}
	}
	return out, nil
}

// try tries the family on many as it is and as proposed, on the same bodies.
func (l *Learn) try(fam *family.Family, text formula.Source) (*told.Tried, error) {
	next, err := family.Read(text)
	if err != nil {
		return nil, fmt.Errorf("the family with the proposed lines: %w", err)
	}
	return &told.Tried{Before: sizing.Trying{Family: fam, Judge: bends}.Try(l.Check), After: sizing.Trying{Family: next, Judge: bends}.Try(l.Check)}, nil
}

// outputs are the proposed lines as files, each where it has any.
func (l *Learn) outputs(w World, slug string, text formula.Source, all []learn.Proposal) ([]Output, error) {
	var out []Output
	has := func(h learn.Home) bool {
		return slices.ContainsFunc(all, func(p learn.Proposal) bool { return p.Home == h })
	}
	if has(learn.Family) {
		out = append(out, Output{slug + "-proposed.family", "the family with the proposed lines, each under its evidence: yours to take", func(to io.Writer) error {
			_, err := io.WriteString(to, text.Text)
			return err
		}})
	}
	if has(learn.Labor) {
		out = append(out, Output{"labor-proposed.csv", "how much longer skills and stages take, for the build book", func(to io.Writer) error { return learn.WriteLabor(to, all) }})
	}
	if l.Date == "" || len(all) == 0 {
		return out, nil
	}
	var old []byte
	if l.Log != "" {
		var err error
		if old, err = w.Files.read(l.Log, "log", ""); err != nil {
			return nil, err
		}
		if err := learn.CheckLog(old, l.Log); err != nil {
			return nil, err
		}
	}
	return append(out, Output{slug + "-log.csv", "the family's log: date, line, why and evidence", func(to io.Writer) error { return learn.WriteLog(to, old, l.Date, all) }}), nil
}

// tableHeads are the columns of a table of builds; the first may be left out, and one of the
// last two.
var tableHeads = []string{"builder", "design", "measures", "notes"}

// read reads all files, in the order given.
func (l *Learn) read(w World) ([]*feedback.Build, error) {
	b := builds{w: w, alone: l.Of, frames: map[string]func() (framed, error){}, listed: map[string]bool{}}
	var all []build
	for _, name := range l.Builds {
		data, err := w.Files.read(name, "file of builds", "")
		if err != nil {
			return nil, err
		}
		some, err := b.of(name, data)
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	all = slices.DeleteFunc(all, func(one build) bool { return one.file != "" && b.listed[one.file] })
	out, faults := make([]*feedback.Build, len(all)), make([]error, len(all))
	sidebyside.Each(len(all), func(i int) { out[i], faults[i] = all[i].read() })
	if err := errors.Join(faults...); err != nil { // the first alone: one line
		return nil, faults[slices.IndexFunc(faults, func(err error) bool { return err != nil })]
	}
	return out, twice(out)
}

// twice refuses a build that is there a second time: no two frames measure the same at
// every rib.
func twice(all []*feedback.Build) error {
	const few = 3 // ribs that two frames may share by chance
	seen := map[string]string{}
	for _, b := range all {
		same := feedback.Build{Lines: append(b.All(feedback.Springback), b.All(feedback.Deeper)...)}
		if len(same.Lines) < few {
			same = *b
		}
		var text bytes.Buffer
		if err := feedback.Write(&text, &same); err != nil {
			return err
		}
		if first, met := seen[text.String()]; met && len(same.Lines) > 0 {
			return fmt.Errorf("%s says the same as %s, line by line: one build counts once; leave one of them out", b.Name, first)
		}
		seen[text.String()] = b.Name
	}
	return nil
}

// framed is a design readied for cards.
type framed struct {
	k *facts
	f *survey.Frame
}

// build is one that is to be read, and the file that it has for itself, "" where it stands
// in a table.
type build struct {
	file string
	read func() (*feedback.Build, error)
}

// builds reads builds; a design is worked out once, however many built it.
type builds struct {
	w      World
	alone  string // the design of cards that no table lists, "" for none
	frames map[string]func() (framed, error)
	listed map[string]bool // cards and notes that stand in a table: given by themselves too, they count there
}

// of tells a feedback file, a card and a table of builds by its first line.
func (b *builds) of(name string, data []byte) ([]build, error) {
	c := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\uFEFF"))))
	c.Comment, c.FieldsPerRecord, c.TrimLeadingSpace = '#', -1, true
	head, err := c.Read()
	if err != nil {
		return nil, &wording.Fault{File: name, Text: "is no file of builds; accepted: a feedback file, or a table with the columns " + strings.Join(tableHeads, ",")}
	}
	if feedback.IsHead(head) {
		return []build{{name, func() (*feedback.Build, error) { return feedback.Read(data, name) }}}, nil
	}
	at := map[string]int{}
	for i, h := range head {
		h = strings.ToLower(strings.TrimSpace(h))
		if h == "rib" && b.alone != "" {
			frame := b.frame(b.alone)
			return []build{{name, func() (*feedback.Build, error) { return b.one(name, frame, name, "") }}}, nil
		}
		if h == "rib" {
			return nil, &wording.Fault{File: name, Line: 1, Text: "is the card of one frame, which does not say its design; say of which design such cards are, or list it in a table with the columns " + strings.Join(tableHeads, ",")}
		}
		if !slices.Contains(tableHeads, h) {
			return nil, &wording.Fault{File: name, Line: 1, Text: fmt.Sprintf("column %q is not known; accepted: %s", wording.Clip(h, 30), strings.Join(tableHeads, ", "))}
		}
		at[h] = i
	}
	if _, ok := at["design"]; !ok {
		return nil, &wording.Fault{File: name, Line: 1, Text: "no column is called design; accepted: " + strings.Join(tableHeads, ", ")}
	}
	return b.rows(name, c, at)
}

// rows reads a table of builds.
func (b *builds) rows(name string, c *csv.Reader, at map[string]int) ([]build, error) {
	var out []build
	lines := map[string]int{}
	for {
		row, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, &wording.Fault{File: name, Text: fmt.Sprintf("is no CSV text: %v", err)}
		}
		line, _ := c.FieldPos(0)
		cell := func(head string) string {
			if i, ok := at[head]; ok && i < len(row) {
				return strings.TrimSpace(row[i])
			}
			return ""
		}
		fault := func(format string, args ...any) error {
			return &wording.Fault{File: name, Line: line, Text: fmt.Sprintf(format, args...)}
		}
		design, card, notes := cell("design"), cell("measures"), cell("notes")
		switch first, met := lines[card]; {
		case design == "" && card == "" && notes == "":
			continue
		case design == "":
			return nil, fault("no design is named")
		case card == "" && notes == "":
			return nil, fault("neither measures nor notes are named; give one of them")
		case met && card != "":
			return nil, fault("%s stands on line %d already; a card counts once", card, first)
		}
		lines[card] = line
		first, met := lines[notes]
		if !met {
			lines[notes] = line
		}
		b.listed[card], b.listed[notes] = true, true
		who := cell("builder")
		if who == "" {
			who = fmt.Sprintf("%s:%d", name, line)
		}
		frame := b.frame(design)
		out = append(out, build{"", func() (*feedback.Build, error) {
			one, err := b.one(who, frame, card, notes)
			if err == nil && notes != "" && met && len(one.All(feedback.Weight))+len(one.All(feedback.Hours)) > 0 {
				return nil, fault("%s stands on line %d already; what one builder weighed and the hours it took count once", notes, first)
			}
			return one, err
		}})
	}
	if len(out) == 0 {
		return nil, &wording.Fault{File: name, Text: "has no build; give a line for each"}
	}
	return out, nil
}

// frame readies a design, once.
func (b *builds) frame(design string) func() (framed, error) {
	if f, ok := b.frames[design]; ok {
		return f
	}
	f := sync.OnceValues(func() (out framed, err error) {
		if out.k, err = b.w.factsOf(design); err != nil {
			return out, err
		}
		bending, err := out.k.bending()
		if err != nil {
			return out, err
		}
		out.f, err = survey.NewFrame(bending)
		return out, of(design, err)
	})
	b.frames[design] = f
	return f
}

// one reads a row: a card, notes or both.
func (b *builds) one(who string, frame func() (framed, error), card, notes string) (*feedback.Build, error) {
	said, err := b.w.notes(notes)
	if err != nil {
		return nil, err
	}
	f, err := frame()
	if err != nil {
		return nil, err
	}
	var m *survey.Report
	if card != "" {
		data, err := b.w.Files.read(card, "card of measures", "")
		if err != nil {
			return nil, err
		}
		rows, err := survey.Read(data, card, f.f)
		if err != nil {
			return nil, err
		}
		m = f.f.Of(rows)
	}
	out := f.k.measuredBuild(m, said)
	out.Name = who
	return out, nil
}
