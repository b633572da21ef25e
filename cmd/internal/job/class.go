package job

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"

	"ribwright/geometry/design"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/course"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
	"ribwright/layout/report/reasons"
	"ribwright/render/json"
	"ribwright/render/text"
)

// Class asks for the boats of a course: one for each row of a table of builders. What a
// row does not say holds for all.
type Class struct {
	Table  string // of builders, by its name
	Books  bool   // the build book of every boat too
	Prices string // of the books: a level, or the name of a table
	Terms  course.Terms
	Fan    bool // boats that share boards, and the boards
	Sizing
}

// NewClass returns the request with its defaults.
func NewClass() *Class {
	c := &Class{Sizing: newSizing(), Books: true, Prices: usualPrices, Terms: usualTerms}
	c.quick, c.Loft = true, true
	return c
}

// Fields lists the choices.
func (c *Class) Fields() []Field {
	printing := c.Sizing.printing()
	fans := Field{Name: "fan-board", Says: "one board of rays for builders of one family, water and skill, to mark ribs and mortises from; their boats are held to three steps of section so that they share it", Value: yes(&c.Fan)}
	books := Field{Name: "book", Says: "the build book of each boat too", Value: yes(&c.Books)}
	return slices.Concat(c.Sizing.fields(), []Field{printing[0], books, fans, prices(&c.Prices)}, terms(&c.Terms), printing[1:])
}

// Name takes the table.
func (c *Class) Name(names []string) { c.Table = names[0] }

// Do makes the whole class: the summary, and the files of each row in a folder.
func (c *Class) Do(w World) (*Result, error) {
	course, err := c.Read(w)
	if err != nil {
		return nil, err
	}
	var outs []Output
	all := make([]sizing.Outcome, course.Len())
	for i := range all {
		all[i] = course.Make(i, func(b Built) (sizing.Status, error) {
			files, err := b.Files()
			for _, f := range files {
				f.Name = b.Folder + "/" + f.Name
				outs = append(outs, f)
			}
			return sizing.Made, err
		})
	}
	r := course.Result(all)
	_, book := course.Book(all)
	whole, err := book()
	r.Outputs = slices.Concat(r.Outputs, whole, outs)
	return r, err
}

// Course is a class whose table is read. Its rows may be made by several goroutines.
type Course struct {
	class    *Class
	world    World
	prices   *cost.Table // of the books, nil where none are asked for
	builders []sizing.Builder
	families map[string]*family.Family // by use, nil where there is none
	keys     []string                  // of the rows that are made
	shares   []*share                  // in the course's wood, of the rows whose books are made
	marked   []*marked                 // for fan boards, of the rows that are made; nil where none are asked for
}

// Read reads the table and the families. A row that cannot be used is told when it is
// made.
func (c *Class) Read(w World) (*Course, error) {
	if c.Table == "" {
		return nil, misuse("", "no table of builders is given; accepted: a CSV file")
	}
	if err := c.Printer.check(); err != nil {
		return nil, err
	}
	data, err := w.Files.read(c.Table, "table of builders", "")
	if err != nil {
		return nil, err
	}
	out := &Course{class: c, world: w, families: map[string]*family.Family{}}
	if out.builders, err = sizing.ReadClass(bytes.NewReader(data), c.brief(), c.Use); err != nil {
		return nil, of(c.Table, err)
	}
	if err := out.readPrices(); err != nil {
		return nil, err
	}
	out.keys, out.shares, out.marked = make([]string, len(out.builders)), make([]*share, len(out.builders)), make([]*marked, len(out.builders))
	oneFolderEach(out.builders)
	return out, out.readFamilies()
}

// readPrices readies what the books need besides the boats, and finds out early whether
// they can be printed.
func (c *Course) readPrices() (err error) {
	if !c.class.Books {
		return nil
	}
	if _, err := c.class.bookOf(hours.Average).sheet(); err != nil {
		return fmt.Errorf("%w; or ask for no books", err)
	}
	c.prices, err = c.world.prices(c.class.Prices)
	return err
}

// bookOf asks for the book of a boat whose builder has a skill.
func (c *Class) bookOf(skill hours.Skill) *Book {
	b := NewBook()
	b.Units, b.Water, b.Prices, b.Skill, b.Printer = c.Units, c.Water, c.Prices, &skill, c.Printer
	return b
}

// oneFolderEach numbers builders whose names would share a folder: the boat's title gets
// the number, so that the sheets of two of one name can be told apart. A name that nobody
// else has keeps its folder, whatever number another gets.
func oneFolderEach(builders []sizing.Builder) {
	taken := map[string]bool{}
	var again []*sizing.Builder
	for i := range builders {
		b := &builders[i]
		if b.Fault != "" {
			continue
		}
		if place := asOnDisk(slugOf(b.Name)); taken[place] {
			again = append(again, b)
		} else {
			taken[place] = true
		}
	}
	for _, b := range again {
		for n := 2; b.Brief.Title == b.Name; n++ {
			if title := numbered(b.Name, n); !taken[asOnDisk(slugOf(title))] {
				taken[asOnDisk(slugOf(title))] = true
				b.Brief.Title = title
			}
		}
	}
}

func slugOf(title string) string { return (&design.Design{Title: title}).Slug() }

// numbered puts a number behind a name so that it ends the name of the folder too. Where
// nothing of the name stands in that of its folder, or it is too long, the folder's is taken.
func numbered(name string, n int) string {
	end := fmt.Sprintf("-%d", n)
	if title := fmt.Sprintf("%s (%d)", name, n); slugOf(title) == slugOf(name)+end {
		return title
	}
	short := []rune(slugOf(name))
	return fmt.Sprintf("%s (%d)", string(short[:min(len(short), design.SlugLong-len(end))]), n)
}

// asOnDisk brings names together that a disk which tells no capitals may take for one.
func asOnDisk(folder string) string {
	return strings.Map(func(r rune) rune {
		least := r
		for o := unicode.SimpleFold(r); o != r; o = unicode.SimpleFold(o) {
			least = min(least, o)
		}
		return least
	}, folder)
}

// readFamilies reads each family once.
func (c *Course) readFamilies() error {
	for _, b := range c.builders {
		if _, seen := c.families[b.Use]; seen || b.Fault != "" {
			continue
		}
		s := c.class.Sizing
		s.Use = b.Use
		f, err := s.family(c.world)
		if err != nil && s.Family != "" {
			return err
		}
		c.families[b.Use] = f // nil is told with the row
	}
	return nil
}

// Len is how many rows there are.
func (c *Course) Len() int { return len(c.builders) }

// Busy tells that boats are made on every core, so that nothing of one is done side by side.
func (c *Course) Busy() { c.class.busy = true }

// Undone is how a row came out that is not made.
func (c *Course) Undone(i int) sizing.Outcome {
	b := c.builders[i]
	return sizing.Outcome{Line: b.Line, Name: b.Name, Use: b.Use, Status: sizing.NotDone, Why: "the run was interrupted; run it again to go on"}
}

// Built is the boat of a row.
type Built struct {
	Folder string                   // for its files, which no other row has
	Key    string                   // files that were made with this key before are the same now
	Files  func() ([]Output, error) // works the files out, which takes longer than the boat
}

// Make sizes the boat of row i and hands it to deliver, which says whether its files
// were made or kept. A fault of the program itself fails this row alone.
func (c *Course) Make(i int, deliver func(Built) (sizing.Status, error)) (out sizing.Outcome) {
	out = c.Undone(i)
	fail := func(err error) { out.Status, out.Why = sizing.Failed, err.Error() }
	defer func() {
		if r := recover(); r != nil {
			fail(fmt.Errorf("a fault in the program itself (%v)", r))
		}
	}()
	boat, err := c.size(i)
	if err == nil {
		err = out.Take(boat)
	}
	if err != nil {
		fail(err)
		return out
	}
	built, err := c.built(i, boat)
	if err == nil {
		out.Why = ""
		out.Status, err = deliver(built)
	}
	if err != nil {
		fail(err)
	}
	return out
}

func (c *Course) size(i int) (*sizing.Boat, error) {
	b := c.builders[i]
	if b.Fault != "" {
		return nil, errors.New(b.Fault)
	}
	f := c.families[b.Use]
	if f == nil {
		_, err := family.Shipped(b.Use)
		return nil, err
	}
	if c.class.Fan {
		m, boat, err := alike(f, b, sizing.Sharing{})
		c.marked[i] = m
		return boat, err
	}
	return sizing.Size(f, b.Brief)
}

// built readies what is handed over of a boat: its reasons beside what one alone has.
func (c *Course) built(i int, b *sizing.Boat) (Built, error) {
	print, err := b.Design.Fingerprint()
	if err != nil {
		return Built{}, err
	}
	page := report.Report{Title: b.Design.Title, For: b.Design.For, Edition: b.Design.Edition, Fingerprint: print, Blocks: append(reasons.Boat(b), report.Paragraph{Words: report.Promise})}.In(c.class.Units)
	key := sha256.New()
	design, err := once(designOf(b), key)
	why, fault := once(Output{b.Design.Slug() + "-reasons.txt", "why it is so", func(to io.Writer) error { return text.Encode(to, page) }}, key)
	if err := errors.Join(err, fault); err != nil {
		return Built{}, err
	}
	fmt.Fprintf(key, "%v %v %+v %v %q", c.class.Loft, c.class.Units, c.class.Printer, c.world.Made, c.world.Program)
	if c.class.Books {
		fmt.Fprintf(key, " %v %v %+v", c.class.Water, b.Case.Brief.Skill, *c.prices)
	}
	c.keys[i] = hex.EncodeToString(key.Sum(nil))
	return Built{b.Design.Slug(), c.keys[i], func() ([]Output, error) {
		k, err := c.class.factsOf(b)
		if err != nil {
			return nil, err
		}
		out, err := c.class.files(design, k, c.world)
		if err == nil && c.class.Books {
			out, err = c.withBook(i, out, b, k)
		}
		return append(out, why), err
	}}, nil
}

// once is an output that is worked out here and now, of which key is too.
func once(o Output, key io.Writer) (Output, error) {
	var all bytes.Buffer
	err := o.Write(io.MultiWriter(&all, key))
	o.Write = func(to io.Writer) error { _, err := to.Write(all.Bytes()); return err }
	return o, err
}

// SummaryName is the file that tells of all rows.
const SummaryName = "summary.csv"

// OfCourse reports whether a file of that name tells of a whole course.
func OfCourse(name string) bool { return name == SummaryName || strings.HasPrefix(name, courseStem) }

// courseStem begins the names of files that tell of a whole course besides its summary.
const courseStem = "course-"

// Result is what came of the rows: a summary, in the order of the table.
func (c *Course) Result(all []sizing.Outcome) *Result {
	return &Result{
		Report:  report.Report{Title: titleOf(c.class.Table) + ", a class", Blocks: append(append(reasons.Class(all), c.untold()...), report.Paragraph{Words: report.Promise})}.In(c.class.Units),
		Numbers: json.Class(all),
		Outputs: []Output{{SummaryName, "every row: how it came out, its boat, and which checks fail", func(w io.Writer) error { return summarize(w, all) }}},
	}
}

// untold says what gear is reckoned with where rows do not say; nothing where all do.
func (c *Course) untold() []report.Block {
	n := 0
	for _, b := range c.builders {
		if b.Fault == "" && !b.Gear {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return []report.Block{report.Say("%s of gear is reckoned with in each boat of %s whose row says none. A column gear_kg says how much each carries.", report.Letters{Units: c.class.Units}.Mass(c.class.Gear), wording.Counted(n, "builder"))}
}

// summarize writes the outcomes as a table for a spreadsheet.
func summarize(w io.Writer, all []sizing.Outcome) error {
	rows := [][]string{{"line", "name", "family", "status", "folder", "length_mm", "beam_mm", "depth_mm", "all_up_kg", "boat_kg", "draft_mm", "freeboard_mm", "gm_mm", "checks_failed", "why"}}
	for _, o := range all {
		row := []string{fmt.Sprint(o.Line), harmless(o.Name), harmless(o.Use), string(o.Status), o.Folder}
		figures := ",,,,,,,"
		if o.Folder != "" {
			figures = fmt.Sprintf("%.0f,%.0f,%.0f,%.1f,%.1f,%.0f,%.0f,%.0f", o.Length, o.Beam, o.Depth, o.AllUp, o.BoatWeight, o.Draft, o.Freeboard, o.GM)
		}
		row = append(row, strings.Split(figures, ",")...)
		rows = append(rows, append(row, strings.Join(o.ChecksFailed, " "), harmless(o.Why)))
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// harmless is a cell of one line that no spreadsheet takes for a formula.
func harmless(s string) string {
	s = strings.Join(strings.Fields(wording.OneLine(s)), " ")
	if s != "" && strings.ContainsRune("=+-@", rune(s[0])) {
		return "'" + s
	}
	return s
}
