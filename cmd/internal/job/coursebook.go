package job

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"runtime"
	"slices"

	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/course"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/sizing"
	"ribwright/geometry/trial/stow"
	"ribwright/geometry/wording"
	"ribwright/layout/bins"
	"ribwright/layout/paper"
	"ribwright/layout/report"
	"ribwright/layout/report/book"
	"ribwright/layout/typeset"
	"ribwright/render/pdf"
)

// share is what a boat puts into the wood, the shopping and the days of its course, and no more,
// so that all of a course can be held at once.
type share struct {
	plan  *cutlist.Plan
	items []materials.Item
	cost  float64
	hours float64
	work  []course.Operation
	boat  *stow.Boat // to be nested; nil in a large course
}

func (c *Course) shareOf(p book.Facts) (*share, error) {
	out := &share{p.Plan, p.Needs.Items, p.Cost.Likely, hours.Hours(p.Work, "", p.Skill), course.Of(p.Bend, p.Needs, p.Work, p.Skill), nil}
	if c.Len() > book.MostHome {
		return out, nil
	}
	var err error
	out.boat, err = stow.NewBoat(p.Bend.Frame)
	return out, err
}

// withBook adds the boat's book for its own builder, and notes its share in the course.
func (c *Course) withBook(i int, out []Output, b *sizing.Boat, k *facts) ([]Output, error) {
	asked, err := c.bookOf(b)
	if err != nil {
		return nil, err
	}
	told, err := asked.told(k, c.world, c.prices)
	if err != nil {
		return nil, err
	}
	c.shares[i], err = c.shareOf(told.Facts)
	return append(out, told.file), err
}

// bookOf asks for the book of a boat, for its own builder.
func (c *Course) bookOf(b *sizing.Boat) (*Book, error) {
	skill, err := hours.ParseSkill(b.Case.Brief.Skill)
	return c.class.bookOf(skill), err
}

// share works out the share of a row whose files were kept.
func (c *Course) share(i int) error {
	if c.shares[i] != nil {
		return nil
	}
	boat, err := c.size(i)
	if err != nil {
		return err
	}
	k, err := c.class.factsOf(boat)
	if err != nil {
		return err
	}
	asked, err := c.bookOf(boat)
	if err != nil {
		return err
	}
	p, err := asked.sawn(k, c.world, c.prices)
	if err == nil {
		c.shares[i], err = c.shareOf(p)
	}
	return err
}

// Book is the one book of the course, by how its rows came out: a key, and its files, which
// are the same for the same key. There is none where no books are asked for, no boat is made,
// or the run was interrupted.
func (c *Course) Book(all []sizing.Outcome) (key string, files func() ([]Output, error)) {
	sum := sha256.New()
	fmt.Fprintf(sum, "%v %+v %+v %v %q", c.class.Units, c.class.Printer, c.class.Terms, c.world.Made, titleOf(c.class.Table))
	if c.class.Fan { // which alone changes nothing of a course without boards
		fmt.Fprintf(sum, " fan %v", c.class.Books)
	}
	var rows []int
	for i, o := range all {
		if o.Status == sizing.NotDone {
			rows = nil
			break
		}
		fmt.Fprintf(sum, " %q", o.Name)
		if o.Status == sizing.Made || o.Status == sizing.Kept {
			fmt.Fprint(sum, " "+c.keys[i])
			rows = append(rows, i)
		}
	}
	if !c.class.Books && !c.class.Fan || len(rows) == 0 {
		return "", func() ([]Output, error) { return nil, nil }
	}
	return hex.EncodeToString(sum.Sum(nil)), func() ([]Output, error) { return c.whole(all, rows) }
}

// whole are all files of the whole course but its summary.
func (c *Course) whole(all []sizing.Outcome, rows []int) ([]Output, error) {
	var shared sharedBoards
	if c.class.Fan {
		var err error
		if shared, err = c.fanBoards(rows); err != nil || !c.class.Books {
			return shared.files, err
		}
	}
	out, err := c.book(all, rows, shared.told)
	return append(out, shared.files...), err
}

// Names are those of the files that tell of the whole course.
func (c *Course) Names() []string {
	out := []string{SummaryName}
	if sheet, err := c.class.bookOf(hours.Average).sheet(); err == nil && c.class.Books {
		out = append(out, bookName(sheet), PlanName)
		if bins.Fits(sheet.Size) {
			out = append(out, labelsName(sheet))
		}
	}
	if c.class.Fan {
		out = append(out, c.boardNames()...)
	}
	return out
}

func labelsName(s paper.Sheet) string { return courseStem + "labels-" + s.Size.Name + ".pdf" }

func bookName(s paper.Sheet) string { return courseStem + "book-" + s.Size.Name + ".pdf" }

// book lays the book over the rows that are made; boards tell of the fan boards.
func (c *Course) book(all []sizing.Outcome, rows []int, boards []report.Block) ([]Output, error) {
	for some := range slices.Chunk(rows, runtime.GOMAXPROCS(0)) {
		var work []func() error
		for _, i := range some {
			work = append(work, func() error { return of(c.builders[i].Name, c.share(i)) })
		}
		if err := together(work...); err != nil {
			return nil, err
		}
	}
	told := book.Course{Title: titleOf(c.class.Table), Units: c.class.Units, Prices: c.prices, Room: usualRoom, Boards: boards}
	var plans []*cutlist.Plan
	var items [][]materials.Item
	var work []course.Builder
	var boats []*stow.Boat
	for i, o := range all {
		if !slices.Contains(rows, i) {
			told.LeftOut = append(told.LeftOut, o.Name)
			continue
		}
		s := c.shares[i]
		plans, items, work = append(plans, s.plan), append(items, s.items), append(work, course.Builder{Name: o.Name, Work: s.work})
		if s.boat != nil {
			boats = append(boats, s.boat)
		}
		told.Boats = append(told.Boats, book.CourseBoat{Builder: o.Name, Folder: o.Folder, Length: o.Length, Beam: o.Beam, Depth: o.Depth, Hours: s.hours, Cost: s.cost})
	}
	told.Home = stow.Piles(boats, stow.Options{Pad: usualRoom})
	told.Pool = cutlist.Pool(plans)
	told.Rings = told.Pool.Rings()
	told.Cost = cost.Of(materials.Together(items, &told.Pool.Plan), &told.Pool.Plan, c.prices)
	days, err := course.Make(work, c.class.Terms)
	if err != nil {
		return nil, err
	}
	told.Days = days
	sheet, err := c.class.bookOf(hours.Average).sheet()
	if err != nil {
		return nil, err
	}
	doc, err := typeset.Lay(book.OfCourse(told).In(c.class.Units), sheet)
	if err != nil {
		return nil, err
	}
	out := []Output{{bookName(sheet), fmt.Sprintf("the book of the whole course, %s of %s: days, boards, ripping plan, shopping, bins, which boats nest", wording.Counted(len(doc.Sheets), "sheet"), doc.Paper.Name),
		func(to io.Writer) error { return pdf.Encode(to, doc, c.world.Made) }}, planned(days)}
	if !bins.Fits(sheet.Size) {
		return out, nil
	}
	labels, err := bins.Lay(told.Title+", labels", bins.Of(told.Names(), told.Pool, report.Letters{Units: c.class.Units}), sheet)
	return append(out, Output{labelsName(sheet), fmt.Sprintf("a label for each bin and bundle, %s of %s", wording.Counted(len(labels.Sheets), "sheet"), labels.Paper.Name),
		func(to io.Writer) error { return pdf.Encode(to, labels, c.world.Made) }}), err
}
