package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"github.com/spf13/pflag"

	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/water"
	"ribwright/render/reasons"
)

func sizeVerb() verb {
	v := verb{
		name:    "size",
		line:    "from the people and the water to a design, by formulas you can change",
		takes:   "ribwright size --paddler \"62 kg, 168 cm\" [flags]",
		example: "ribwright size --paddler \"62 kg, 168 cm\" --gear \"12 kg\" --use pack -o mine.toml",
	}
	v.run = func(args []string, c console) error { return sizeRun(v, args, c) }
	return v
}

// sizer is what the flags of size say.
type sizer struct {
	verb                            verb
	paddlers                        []string
	gear, stock, speed, sea         string
	use, file, title, output, out   string
	set, targets                    []string
	free, aim, sweep, explain, list string
	class                           string
	population                      int
	loft                            bool
	brief                           sizing.Brief
	printer                         *printer
	units                           unitsFlag
}

func (s *sizer) flags() *pflag.FlagSet {
	f := pflag.NewFlagSet(s.verb.name, pflag.ContinueOnError)
	f.SortFlags = false
	s.brief = sizing.Usual()
	f.StringArrayVar(&s.paddlers, "paddler", nil, "`who`, as \"62 kg, 168 cm\", perhaps with woman or man, span 171 cm, kneeling or sitting; twice for a tandem, the stern paddler first")
	f.StringVar(&s.gear, "gear", "10 kg", "`weight` of all that is carried besides the people")
	f.StringVar(&s.use, "use", "pack", "`family` of boats: pack, solo or tandem")
	f.StringVar(&s.brief.Water, "water", s.brief.Water, "sheltered, open or moving `water`")
	f.StringVar(&s.sea, "sea", "fresh", "fresh or salt `water`")
	f.StringVar(&s.brief.Skill, "skill", s.brief.Skill, "of the `builder`: first, some or practised")
	f.StringVar(&s.stock, "stock", "6 m", "`length` of the longest sticks at hand")
	f.StringVar(&s.brief.Wood, "wood", s.brief.Wood, "`wood` of gunwales, keel and stringers")
	f.StringVar(&s.brief.RibWood, "rib-wood", s.brief.RibWood, "`wood` of the ribs")
	f.StringVar(&s.title, "title", "", "`name` of the boat")
	f.StringVarP(&s.output, "output", "o", "", "design `file` to write; NAME.toml in the folder of --out when left out")
	f.StringVar(&s.out, "out", "out", "`folder` for everything else; made when missing")
	f.StringVar(&s.explain, "explain", "", "the whole derivation of one `value` instead of the page")
	f.StringArrayVar(&s.set, "set", nil, "a `value` to put in the place of a formula, as length=3400mm; may be given several times")
	f.StringArrayVar(&s.targets, "target", nil, "what the boat must `meet`, as \"draft<=110mm\"; may be given several times")
	f.StringVar(&s.free, "free", "length,beam,depth", "`values` that a search for targets may move")
	f.StringVar(&s.aim, "aim", "smallest", "what a search makes least: smallest `boat`, or easiest to move at --speed")
	f.StringVar(&s.speed, "speed", "5 km/h", "`speed` at which the effort is compared")
	f.StringVar(&s.sweep, "sweep", "", "boats for steps of one `value`, as beam=680mm..780mm/20mm: a table and a picture")
	f.StringVar(&s.file, "family", "", "family `file` of your own instead of --use")
	f.StringVar(&s.list, "formulas", "", "print a `family`, to start one of your own: pack, solo, tandem, people or making")
	f.IntVar(&s.population, "population", 0, "try the family on this `many` random bodies, loads and skills, and count what fails")
	f.StringVar(&s.class, "class", "", "`table` of builders, one row each: name, weight, stature and more")
	f.BoolVar(&s.loft, "loft", false, "patterns too")
	f.Var(&s.units, "units", "what lengths are lettered in on patterns")
	s.printer = newPrinter(f)
	return f
}

func sizeRun(v verb, args []string, c console) error {
	s := &sizer{verb: v}
	f := s.flags()
	if _, err := parseOld(v, f, args, 0, c.out); err != nil {
		return err
	}
	if s.list != "" {
		return s.formulas(c.out)
	}
	if err := s.check(); err != nil {
		return err
	}
	if s.class != "" {
		return s.classRun(c)
	}
	fam, err := s.family()
	if err != nil {
		return err
	}
	if s.population > 0 {
		return s.populationRun(fam, c.out)
	}
	if err := s.crew(fam); err != nil {
		return err
	}
	if s.sweep != "" {
		return s.sweepRun(fam, c.out)
	}
	return s.one(fam, c.out)
}

// wrong is a flag that cannot be used.
func (s *sizer) wrong(flag string, err error) error {
	return usageError{fmt.Errorf("%s: --%s: %w", s.verb.name, flag, err)}
}

// formulas prints a shipped family.
func (s *sizer) formulas(w io.Writer) error {
	text, err := family.Text(s.list)
	if err != nil {
		return s.wrong("formulas", err)
	}
	_, err = io.WriteString(w, text)
	return err
}

// check reads the flags that are numbers and refuses those that contradict each
// other.
func (s *sizer) check() error {
	for _, q := range []struct {
		flag, text string
		dim        formula.Dim
		into       *float64
	}{
		{"gear", s.gear, formula.Mass, &s.brief.Gear}, {"stock", s.stock, formula.Length, &s.brief.Stock}, {"speed", s.speed, formula.Speed, &s.brief.Speed},
	} {
		v, d, err := formula.Quantity(q.text)
		if err == nil && d != q.dim {
			err = fmt.Errorf("%q is %s; accepted: %s", q.text, d, q.dim)
		}
		if err != nil {
			return s.wrong(q.flag, err)
		}
		*q.into = v
	}
	kind, err := water.Parse(s.sea)
	if err != nil {
		return s.wrong("sea", err)
	}
	s.brief.Density = water.Density(kind, water.Usual)
	switch {
	case s.out == "":
		return s.wrong("out", errors.New("no folder is given; accepted: a folder, as out or ../river"))
	case s.aim != "smallest" && s.aim != "easiest":
		return s.wrong("aim", fmt.Errorf("%q; accepted: smallest, easiest", s.aim))
	case s.population < 0 || s.population > 100000:
		return s.wrong("population", fmt.Errorf("%d; accepted: 1 to 100000", s.population))
	case s.class == "" && s.population == 0 && len(s.paddlers) == 0:
		return s.wrong("paddler", errors.New("nobody is given; accepted: one as \"62 kg, 168 cm\""))
	case s.class != "" && len(s.paddlers) > 0:
		return s.wrong("class", errors.New("the paddlers come from the table; leave --paddler out"))
	}
	return s.printer.check(s.verb)
}

// family reads the family that the flags name.
func (s *sizer) family() (*family.Family, error) {
	if s.file == "" {
		f, err := family.Shipped(s.use)
		if err != nil {
			return nil, s.wrong("use", err)
		}
		return f, nil
	}
	const most = 1 << 20
	file, err := os.Open(s.file)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("no family file %q; --formulas pack prints one to start from", s.file)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot open the family file %q: %w", s.file, cause(err))
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, most))
	if err != nil {
		return nil, fmt.Errorf("cannot read the family file %q: %w", s.file, cause(err))
	}
	return family.Read(formula.Source{Name: s.file, Text: string(text)})
}

// crew reads the paddlers and gives the boat a name.
func (s *sizer) crew(fam *family.Family) error {
	for _, text := range s.paddlers {
		p, err := sizing.ParsePaddler(text)
		if err != nil {
			return s.wrong("paddler", err)
		}
		s.brief.Crew = append(s.brief.Crew, p)
	}
	s.brief.Title = s.title
	if s.title == "" {
		name := strings.TrimSuffix(filepath.Base(fam.Name), ".family")
		if first, n := utf8.DecodeRuneInString(name); n > 0 {
			name = strings.ToUpper(string(first)) + name[n:]
		}
		for _, p := range s.brief.Crew {
			name += " " + formula.ShowNumber(p.Weight, formula.Mass)
		}
		s.brief.Title = name
	}
	if err := s.brief.Check(fam.Seats); err != nil {
		return usageError{fmt.Errorf("%s: %w", s.verb.name, err)}
	}
	return nil
}

// newCase makes a case of the brief with the values set by hand.
func (s *sizer) newCase(fam *family.Family) (*sizing.Case, error) {
	c, err := sizing.NewCase(fam, s.brief)
	if err != nil {
		return nil, err
	}
	for _, text := range s.set {
		name, value, ok := strings.Cut(text, "=")
		if !ok {
			return nil, s.wrong("set", fmt.Errorf("%q; accepted: a name, = and a number with its unit, as length=3400mm", text))
		}
		v, d, err := formula.Quantity(value)
		if err == nil {
			err = c.Put(strings.TrimSpace(name), v, d)
		}
		if err != nil {
			return nil, s.wrong("set", err)
		}
	}
	return c, nil
}

// one sizes one boat, by the formulas or by a search.
func (s *sizer) one(fam *family.Family, w io.Writer) error {
	c, err := s.newCase(fam)
	if err != nil {
		return err
	}
	var answer *sizing.Answer
	var boat *sizing.Boat
	if len(s.targets) > 0 {
		if answer, err = s.search(c); err != nil {
			return err
		}
		boat = answer.Boat
	} else {
		if err = c.Settle(); err != nil {
			return err
		}
		if boat, err = c.Finish(); err != nil {
			return err
		}
	}
	if s.explain != "" {
		if err := boat.Explain(w, s.explain); err != nil {
			return s.wrong("explain", err)
		}
		return nil
	}
	dir, outs, err := s.outputs(boat)
	if err != nil {
		return err
	}
	if err := saveIn(dir, outs, nil); err != nil {
		return err
	}
	return s.tell(w, boat, answer, dir, outs)
}

// outputs lists the files of one boat: its design and, when asked, its patterns.
func (s *sizer) outputs(boat *sizing.Boat) (dir string, outs []output, err error) {
	dir, name := s.out, boat.Design.Slug()+".toml"
	if s.output != "" {
		dir, name = filepath.Split(s.output)
		if dir = cmp.Or(dir, "."); name == "" {
			return "", nil, s.wrong("output", fmt.Errorf("%q is a folder; accepted: a file, as mine.toml", s.output))
		}
	}
	outs = []output{{name, boat.Write}}
	if !s.loft {
		return dir, outs, nil
	}
	more, err := s.patterns(boat)
	return dir, append(outs, more...), err
}

// patterns lofts a boat.
func (s *sizer) patterns(boat *sizing.Boat) ([]output, error) {
	made, err := dateOfFiles(os.Getenv("SOURCE_DATE_EPOCH"))
	if err != nil {
		return nil, err
	}
	l, err := newLofting(boat.Design, boat.Design.Title, s.printer, &choice{most: 200}, s.units)
	if err != nil {
		return nil, err
	}
	l.made = made
	cutter := newCutterFlags()
	// A class is made in one go; a close nest is worth waiting for with one boat.
	cutter.nest.quick = s.class != ""
	if err := l.lay(cutter); err != nil {
		return nil, err
	}
	return l.outputs(), nil
}

// tell prints the page, what a search found, and what was written.
func (s *sizer) tell(w io.Writer, boat *sizing.Boat, a *sizing.Answer, dir string, outs []output) error {
	var b bytes.Buffer
	if err := reasons.Page(&b, boat); err != nil {
		return err
	}
	if a != nil {
		s.tellSearch(&b, a)
	}
	b.WriteString("\n")
	for _, o := range outs {
		b.WriteString(filepath.Join(dir, o.name) + "\n")
	}
	b.WriteString("\n" + caution())
	_, err := w.Write(b.Bytes())
	return err
}
