package job

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/shop/fan"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/fanboard"
	"ribwright/layout/plate/nest"
	"ribwright/layout/report"
	"ribwright/layout/report/sharing"
	"ribwright/layout/tile"
	"ribwright/render/json"
	"ribwright/render/pdf"
	"ribwright/render/text"
)

// marked is what a boat puts on a fan board, and what it would cost to change it.
type marked struct {
	fan.Boat
	step    int    // of its section
	refused string // why it can be on no board, "" where it can
	failed  []string

	beam, length, depth, weight float64 // mm and kg
}

// alike sizes a boat that shares boards.
func alike(f *family.Family, b sizing.Builder, s sizing.Sharing) (*marked, *sizing.Boat, error) {
	a, err := sizing.SizeAlike(f, b.Brief, s)
	if err != nil {
		return nil, nil, err
	}
	hull := a.Design.Hull
	m := &marked{step: a.Step, beam: float64(hull.Beam), length: float64(hull.Length), depth: float64(hull.Depth), weight: a.Found["boat_weight"]}
	for _, v := range a.Failures() {
		m.failed = append(m.failed, v.About)
	}
	if m.Boat, err = fan.Of(b.Brief.Title, a.Frame); err != nil {
		m.refused = err.Error()
	}
	return m, a.Boat, nil
}

// sharedBoards are the fan boards of a course: their files, and what is told of them.
type sharedBoards struct {
	files []Output
	told  []report.Block
}

// oneBoard is a board of the course before it is drawn.
type oneBoard struct {
	group string // family, water and skill
	step  int
	*fan.Board
}

// of says which boats a board serves.
func (b oneBoard) of() string {
	return fmt.Sprintf("%s, section %d of %d", b.group, b.step+1, sizing.SectionSteps)
}

// fingerprint tells two editions of a board apart.
func (b oneBoard) fingerprint() string {
	sum := sha256.Sum256([]byte(fmt.Sprint(b.Rays)))
	return hex.EncodeToString(sum[:4])
}

// groupOf is what the builders of one board have in common besides the section.
func (c *Course) groupOf(i int) string {
	b := c.builders[i]
	return fmt.Sprintf("%s, %s water, %s skill", cmp.Or(c.class.Family, b.Use), b.Brief.Waters, b.Brief.Skill)
}

// fanBoards makes the boards of the rows that are made.
func (c *Course) fanBoards(rows []int) (sharedBoards, error) {
	var boards []oneBoard
	var out sharedBoards
	off := map[int]string{} // rows without a board, with why
	for _, group := range c.grouped(rows) {
		board, err := fan.Make(c.boatsOf(group))
		for _, i := range group {
			switch {
			case err != nil:
				off[i] = "nobody else has a boat of its family, water, skill and section"
			case board.Refuses(c.marked[i].Boat) != "":
				off[i] = board.Refuses(c.marked[i].Boat)
			}
		}
		if err == nil {
			boards = append(boards, oneBoard{c.groupOf(group[0]), c.marked[group[0]].step, board})
		}
	}
	var drawn []sharing.Board
	for n, b := range boards {
		files, err := c.drawn(n+1, b)
		if err != nil {
			return out, err
		}
		out.files = append(out.files, files...)
		drawn = append(drawn, sharing.Board{Board: b.Board, Of: b.of(), File: files[0].Name})
	}
	out.told = sharing.Blocks(drawn, c.offBoards(rows, boards, off), c.class.Units)
	page := report.Report{Title: titleOf(c.class.Table), Kind: "fan boards", Blocks: append(slices.Clone(out.told), report.Paragraph{Words: report.Promise})}.In(c.class.Units)
	out.files = append(out.files, Output{boardsTold, "who shares a fan board, where each reads, and what would bring the others onto one", func(to io.Writer) error { return text.Encode(to, page) }})
	return out, nil
}

// grouped parts rows by what one board serves, in the order of the table and of the steps.
func (c *Course) grouped(rows []int) (out [][]int) {
	at := map[string]int{}
	for step := range sizing.SectionSteps {
		for _, i := range rows {
			m := c.marked[i]
			if m == nil || m.refused != "" || m.step != step {
				continue
			}
			key := fmt.Sprint(c.groupOf(i), step)
			if _, seen := at[key]; !seen {
				at[key] = len(out)
				out = append(out, nil)
			}
			out[at[key]] = append(out[at[key]], i)
		}
	}
	return out
}

func (c *Course) boatsOf(group []int) (out []fan.Boat) {
	for _, i := range group {
		out = append(out, c.marked[i].Boat)
	}
	return out
}

// boardsTold is the file that tells of all boards.
const boardsTold = courseStem + "fan-boards.txt"

func boardStem(n int) string { return fmt.Sprintf("%sfan-board-%d", courseStem, n) }

// boardNames are those that files of boards may get: each of a group's steps has one at most.
func (c *Course) boardNames() []string {
	groups := map[string]bool{}
	for i, b := range c.builders {
		if b.Fault == "" {
			groups[c.groupOf(i)] = true
		}
	}
	out := []string{boardsTold}
	for n := 1; n <= len(groups)*sizing.SectionSteps; n++ {
		out = append(out, boardStem(n)+"-"+c.class.Setup.Size.Name+".pdf", boardStem(n)+"-numbers.json", boardStem(n)+"-cut.svg", boardStem(n)+"-cut.dxf")
	}
	return out
}

// drawn are the files of a board: on sheets, and for a cutter.
func (c *Course) drawn(n int, b oneBoard) ([]Output, error) {
	title := fmt.Sprintf("%s, fan board %d", titleOf(c.class.Table), n)
	p := newPrinting()
	p.Printer = c.class.Printer
	var who []string
	for _, boat := range b.On {
		who = append(who, boat.Builder)
	}
	laid, err := p.lay(tile.Set{Title: title, For: wording.Joined(who, ", ", strings.Clone), Fingerprint: b.fingerprint(), Drawings: fanboard.Sheets(b.Board, b.of(), c.class.Units)}, nil, c.class.Units)
	if err != nil {
		return nil, err
	}
	cutting := newCutting()
	cutting.Quick = true
	plate, err := nest.Lay(title, []layout.Part{fanboard.Part(fanboard.Ribs(b.Board, c.class.Units)), fanboard.Part(fanboard.Mortises(b.Board, b.of(), c.class.Units))}, cutting.options())
	if err != nil && !errors.As(err, new(*nest.TooLarge)) {
		return nil, err
	}
	sheets := laid.printed
	out := []Output{{boardStem(n) + "-" + sheets.Paper.Name + ".pdf", fmt.Sprintf("%s, on %s: one board for %s", b.of(), wording.Counted(len(sheets.Sheets), "sheet"), wording.Counted(len(b.On), "builder")),
		func(to io.Writer) error { return pdf.Encode(to, sheets, c.world.Made) }}}
	numbers := json.FanBoard(b.of(), b.Board, sheets)
	out = append(out, Output{boardStem(n) + "-numbers.json", "its rays, its readings, and where its pieces lie", func(to io.Writer) error { return json.Encode(to, numbers) }})
	if err == nil { // a board larger than any sheet for a cutter is on paper alone
		out = append(out, cutterFiles(boardStem(n)+"-cut", "the same board for a cutter that draws", plate)...)
	}
	return out, nil
}

// offBoards tells of the rows on no board what would bring them onto one.
func (c *Course) offBoards(rows []int, boards []oneBoard, off map[int]string) (out []sharing.Off) {
	for _, i := range rows {
		why, is := off[i]
		if m := c.marked[i]; m != nil && m.refused != "" {
			why, is = m.refused, true
		} else if is {
			out = append(out, sharing.Off{Builder: m.Builder, Why: why, Cost: c.brought(i, boards)})
			continue
		}
		if is {
			out = append(out, sharing.Off{Builder: c.builders[i].Brief.Title, Why: why})
		}
	}
	return out
}

// wider are the changes of beam that are tried to bring a boat onto a board, mm.
var wider = []float64{0, 3, -3, 6, -6, 10, -10, 15, 20, 30, 40}

// brought is what it costs to bring a boat onto a board of its group: the least change of
// beam with which it fits there, all others staying, and fails no check that it did not fail
// before; "" where none of those tried does.
func (c *Course) brought(i int, boards []oneBoard) string {
	own := c.marked[i]
	for _, by := range wider {
		for _, b := range boards {
			if b.group != c.groupOf(i) || by == 0 && b.step <= own.step {
				continue
			}
			m, _, err := alike(c.families[c.builders[i].Use], c.builders[i], sizing.Sharing{Least: b.step, Wider: by})
			if err != nil || m.refused != "" || m.step != b.step || slices.ContainsFunc(m.failed, func(f string) bool { return !slices.Contains(own.failed, f) }) {
				continue
			}
			if with, err := fan.Make(append(slices.Clone(b.On), m.Boat)); err == nil && len(with.Refused) == 0 {
				return fmt.Sprintf("%s: %s", b.of(), m.beside(own))
			}
		}
	}
	return ""
}

// beside says by how much a boat differs from another.
func (m *marked) beside(own *marked) string {
	var out []string
	for _, v := range []struct {
		what, unit string
		now, was   float64
		format     string
	}{{"beam", "mm", m.beam, own.beam, "%.0f"}, {"length", "mm", m.length, own.length, "%.0f"}, {"depth", "mm", m.depth, own.depth, "%.0f"}, {"weight", "kg", m.weight, own.weight, "%.1f"}} {
		by, way := v.now-v.was, "more"
		if by < 0 {
			way = "less"
		}
		if words := fmt.Sprintf(v.format, math.Abs(by)); strings.Trim(words, "0.") != "" {
			out = append(out, fmt.Sprintf("%s %s %s %s", words, v.unit, way, v.what))
		}
	}
	return cmp.Or(strings.Join(out, ", "), "a fuller section, all else the same")
}
