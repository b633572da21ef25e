package job

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
	"ribwright/layout/report/book"
	"ribwright/render/json"
	"ribwright/render/svg"
)

// Workshop asks for what a builder has beside them while they work: the order of work,
// the figures of each rib, and which boards become what, what is bought, what it costs and
// how long it takes. Only a page asks for it; a book has all of it on paper.
type Workshop struct {
	Book
	Boards []design.Board // instead of the design's; none for those
}

// NewWorkshop returns the request with its defaults.
func NewWorkshop() *Workshop { return &Workshop{Book: *NewBook()} }

// Fields lists the choices.
func (s *Workshop) Fields() []Field {
	own := slices.DeleteFunc(s.Book.Fields(), func(f Field) bool { return f.Name == "html" || f.Group == paperGroup })
	return append(own, Field{Name: "board", Takes: "boards", Many: true, Value: list(&s.Boards, parseBoard, showBoard),
		Says: `boards at hand instead of the design's, as "3 of white cedar, 2400 mm x 140 mm x 26 mm"; all of a wood that none is given of are as in the design`})
}

// Do works it out.
func (s *Workshop) Do(w World) (*Result, error) {
	prices, err := w.prices(s.Prices)
	if err != nil {
		return nil, err
	}
	d, err := w.open(s.Design)
	if err != nil {
		return nil, err
	}
	if d, err = s.supplied(d); err != nil {
		return nil, err
	}
	k, err := newFacts(d, s.Design)
	if err != nil {
		return nil, err
	}
	facts, err := s.gather(k, w, prices)
	if err != nil {
		return nil, err
	}
	told := book.Of(facts).In(s.Units)
	numbers, err := json.Workshop(d, report.Report{Blocks: summary(facts)}.In(s.Units).Blocks, told, []string{book.OrderOfWork, book.RippingPlan, book.CutList, book.Shopping, book.HoursChapter},
		report.Cards(told.Chapter(book.RibChapter), "Rib"), svg.EncodeInline)
	if err != nil {
		return nil, of(k.name, err)
	}
	return &Result{Report: k.report("workshop", nil), Numbers: numbers, Outputs: s.toFillIn()}, nil
}

// toFillIn is a level's table of prices as a file, for the builder to put in what they are
// asked for; nothing where they have one of their own.
func (s *Workshop) toFillIn() []Output {
	text, err := cost.Text(s.Prices)
	if err != nil {
		return nil
	}
	return []Output{{"prices.toml", "prices to fill in", func(to io.Writer) error { _, err := to.Write(text); return err }}}
}

// supplied is the design with the boards at hand.
func (s *Workshop) supplied(d *design.Design) (*design.Design, error) {
	if len(s.Boards) == 0 {
		return d, nil
	}
	out := d.Copy()
	out.Stock.Boards = slices.DeleteFunc(slices.Clone(d.Stock.Boards), func(b design.Board) bool {
		return slices.ContainsFunc(s.Boards, func(o design.Board) bool { return o.Species == b.Species })
	})
	out.Stock.Boards = append(out.Stock.Boards, s.Boards...)
	if p := out.Check(); p != nil {
		return nil, misuse("board", "%s %s", p.Key, p.Text)
	}
	return out, nil
}

const boardForm = "accepted: how many of which wood, and length x width x thickness, as 3 of white cedar, 2400 mm x 140 mm x 26 mm"

// parseBoard reads boards of one size.
func parseBoard(text string) (b design.Board, err error) {
	refuse := func() (design.Board, error) {
		return b, fmt.Errorf("%q is not understood; %s", wording.Clip(text, 60), boardForm)
	}
	count, rest, ok := strings.Cut(text, " of ")
	wood, size, sized := strings.Cut(rest, ",")
	sides := strings.Split(size, " x ")
	if b.Count, err = strconv.Atoi(strings.TrimSpace(count)); err != nil || !ok || !sized || len(sides) != 3 || b.Count < 1 {
		return refuse()
	}
	b.Species = strings.TrimSpace(wood)
	for i, to := range []*measure.Length{&b.Length, &b.Width, &b.Thickness} {
		if *to, err = measure.ParseLength(strings.TrimSpace(sides[i])); err != nil {
			return refuse()
		}
	}
	return b, nil
}

func showBoard(b design.Board) string {
	return fmt.Sprintf("%d of %s, %s x %s x %s", b.Count, b.Species, b.Length, b.Width, b.Thickness)
}
