package job

import (
	"fmt"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/paper/proof"
	"ribwright/layout/report"
	"ribwright/layout/tile"
	"ribwright/render/json"
)

// Sheets asks for the patterns on sheets to be looked at before they are printed. Only a
// page asks for it.
type Sheets struct{ Loft }

// NewSheets returns the request with its defaults.
func NewSheets() *Sheets { return &Sheets{*NewLoft()} }

// Fields lists the choices.
func (s *Sheets) Fields() []Field {
	return append(append([]Field{units(&s.Units, "what lengths are lettered in")}, s.Printing.fields()...), ribsOn(&s.Ribs))
}

// Do lays the sheets.
func (s *Sheets) Do(w World) (*Result, error) {
	if err := s.Printing.check(); err != nil {
		return nil, err
	}
	k, err := w.factsOf(s.Design)
	if err != nil {
		return nil, err
	}
	bends, err := k.bending()
	if err != nil {
		return nil, err
	}
	told, err := k.told(w)
	if err != nil {
		return nil, err
	}
	first, err := k.first(bends, told, s.Units)
	if err != nil {
		return nil, err
	}
	made, err := s.Printing.lay(k.set(bends, first, s.Units, s.ribs()), nil, s.Units)
	if err != nil {
		return nil, of(k.name, err)
	}
	bars, err := s.bars()
	if err != nil {
		return nil, err
	}
	var small []layout.Drawing
	for _, sheet := range made.printed.Sheets {
		d := tile.Miniature(sheet)
		d.Title = fmt.Sprintf("%d. %s", sheet.Number, holds(sheet))
		small = append(small, d)
	}
	numbers, err := json.Sheets(k.design, made.printed.Paper, small, append(made.plainly(), made.told(&s.Printer)[1:]...), bars)
	return &Result{Report: k.report("sheets", nil), Numbers: numbers}, of(k.name, err)
}

// holds says what lies on a sheet, in the words that the patterns are headed by: "Yoke, piece 1;
// Stems, pieces B1 and B2".
func holds(s layout.Sheet) string {
	if len(s.Views) == 0 {
		return "Read first"
	}
	var titles []string
	pieces := map[string][]string{}
	for _, v := range s.Views {
		of := v.Drawing.Title
		if !slices.Contains(titles, of) {
			titles = append(titles, of)
		}
		if v.Tile != "" {
			pieces[of] = append(pieces[of], v.Tile)
		}
	}
	return wording.Joined(titles, "; ", func(of string) string {
		switch all := pieces[of]; len(all) {
		case 0:
			return of
		case 1:
			return of + ", piece " + all[0]
		default:
			return of + ", pieces " + wording.And(all)
		}
	})
}

// plainly says in a line, for whoever prints a boat the first time, how much paper it takes.
func (l *laid) plainly() []report.Block {
	way := "upright"
	if l.Paper.Lying {
		way = "on its side"
	}
	if c := l.Paper.Correction(); c != "" {
		way += ", " + c
	}
	more := ""
	if !l.Paper.Size.Roll { // it waits for the cutter's nest, which takes longer than all sheets
		more = " One more behind them shows the cutter's plates in small."
	}
	return []report.Block{report.Say("%s of %s, %s, with %s to tape. Sheet 1 is read first.%s", wording.Counted(len(l.printed.Sheets), "sheet"), wording.Capital(l.Paper.Size.Name), way, wording.Counted(l.Took.Joints, "joint"), more)}
}

// bars are those of a proof of the same paper, as it comes from the printer uncorrected.
func (s *Sheets) bars() (json.Bars, error) {
	setup := s.Setup
	setup.Across, setup.Down, setup.Offset = 0, 0, geometry.Point{}
	if setup.Size.Roll {
		setup.Size.Down = setup.Size.Across * measured
	}
	lying := s.Way == tile.Lying
	sheet, err := setup.Sheet(lying)
	level, upright := proof.Bars(sheet, s.Units)
	if lying {
		level, upright = upright, level
	}
	return json.Bars{Across: level, Down: upright}, wrong("margins", err)
}
