// Package tile cuts patterns to sheet size and arranges them on sheets, with
// everything a builder needs to put them together again: registration crosses,
// absolute distances, trim lines, neighbors and scale bars. It works in true
// millimeters throughout; the last step brings every sheet to the millimeters of
// the file, which differ where a printer's stretch is worked against.
package tile

import (
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/paper"
)

// Set is everything that goes on one set of sheets.
type Set struct {
	Title       string // of the boat
	For         string // one line about it
	Edition     string // of the design; "" for none
	Fingerprint string // tells sheets of two versions of a design apart
	Drawings    []layout.Drawing
	First       *layout.First // what is read before the patterns; nil for a set without that sheet

	// Last draws a sheet behind the patterns within a room; false for none. nil for a set
	// without one, and never asked for on a roll. The first sheet has its title.
	Last      func(room geometry.Box) (layout.Sheet, bool)
	LastTitle string
}

// Way says how sheets lie.
type Way int

// The ways; Best is the one that costs less in sheets and joints.
const (
	Best Way = iota
	Lying
	Standing
)

// Options say what is printed on.
type Options struct {
	Paper paper.Setup
	Way   Way
	Units measure.System
	Busy  bool // every core has work without these sheets
}

// Laid is a set of sheets and what it cost in paper.
type Laid struct {
	layout.Document
	Paper paper.Sheet // as it lies; a roll cut to the length in use
	// Least is the number of sheets that the patterns would fill as they are drawn, with
	// nothing lost but the margins and the laps that no cutting does without.
	Least float64
	Took  Count
	Other Count // of the same on paper that lies the other way; zero where that cannot be
}

// Patterned counts the sheets that patterns lie on: those of words alone are no paper that
// a packing could save.
func (l Laid) Patterned() int {
	n := 0
	for _, s := range l.Sheets {
		if len(s.Views) > 0 {
			n++
		}
	}
	return n
}

// Count is what a way of laying paper takes.
type Count struct {
	Way    string
	Sheets int // the first ones and the last included
	Pieces int // to cut out
	Joints int // to tape
}

// Lay cuts the drawings to sheet size, packs the pieces on sheets and dresses
// them. Small pieces share sheets; tiles without ink are left out; the first
// sheet says what is here and how to use it. Of several ways to lay the paper,
// to cut and to pack, the one that costs least is taken, a joint counted as JointPrice
// of a sheet; on a roll the one with the fewest joints.
//
// Returns: a document in which every view shows its frame at full size, times
// the document's stretch.
// Errors: a drawing with nothing in it; margins that leave too little room.
func Lay(set Set, o Options) (Laid, error) {
	if err := set.check(); err != nil {
		return Laid{}, err
	}
	p, err := bestPlan(set, o)
	if err != nil {
		return Laid{}, err
	}
	if o.Paper.Size.Roll {
		p = p.trimmed(set)
	}
	return p.madeRoom(set).finish(set), nil
}

// check refuses a drawing with nothing in it.
func (s Set) check() error {
	for _, d := range s.Drawings {
		if d.Bounds().Empty() {
			return fmt.Errorf("pattern %q has nothing in it", d.Title)
		}
	}
	return nil
}

func (p plan) finish(set Set) Laid {
	last, behind := p.last(set)
	if !behind {
		set.Last = nil // nor does the first sheet name it
	}
	sheets := make([]layout.Sheet, p.count)
	copy(sheets, p.cover(set))
	p.each(len(sheets), func(n int) { p.draw(&sheets[n], set, n) })
	took, other := p.counted(), p.other
	if behind {
		sheets = append(sheets, last)
		took.Sheets++
		if other.Sheets > 0 {
			other.Sheets++
		}
	}
	out := Laid{Paper: p.sheet, Took: took, Other: other, Document: layout.Document{
		Title: set.Title, Paper: layout.Paper{Name: p.sheet.Size.Name, W: p.sheet.W, H: p.sheet.H}, Sheets: sheets}}
	if p.sheet.Corrected() {
		out.Stretch = geometry.Point{X: p.sheet.ToFile.A, Y: p.sheet.ToFile.D}
	}
	p.each(len(sheets), func(i int) {
		furnish(&sheets[i], set, p.sheet, i+1, len(sheets))
		sheets[i].Number, sheets[i].Label = i+1, named(sheets[i], i+1)
		sheets[i].Onto(p.sheet.ToFile)
	})
	out.Least = p.least()
	return out
}

// draw puts on a sheet what the plan lays there.
func (p plan) draw(s *layout.Sheet, set Set, sheet int) {
	for i, k := range p.pieces {
		if p.spots[i].sheet == sheet {
			place(s, p, k, p.spots[i])
		}
	}
	p.keyMaps(set, s, sheet)
}

// last draws the sheet behind the patterns, where the set has one.
func (p plan) last(set Set) (layout.Sheet, bool) {
	if set.Last == nil || p.sheet.Size.Roll {
		return layout.Sheet{}, false
	}
	return set.Last(p.room)
}

// place shows a piece on its sheet, dressed in its own coordinates and then brought there.
func place(s *layout.Sheet, p plan, k piece, at spot) {
	m := k.toSheet(at)
	at.look.turned = at.turned
	dressed, shown := k.dress(p.units, at.look, p.known), *k.drawing
	shown.Texts = k.letter(&dressed, at.look)
	s.Views = append(s.Views, layout.View{Drawing: &shown, Tile: k.name(), Frame: k.frame, ToSheet: m})
	put(s, dressed, m)
}

// put lays on a sheet what a piece is dressed with, moved as the piece is.
func put(s *layout.Sheet, dressed layout.Sheet, m geometry.Affine) {
	for _, k := range dressed.Strokes {
		s.Strokes = append(s.Strokes, layout.Stroke{Pen: k.Pen, Path: k.Path.Map(m)})
	}
	for _, t := range dressed.Texts {
		t.At, t.Angle = m.Apply(t.At), t.Angle+layout.TurnOf(m)
		s.Texts = append(s.Texts, t)
	}
}

func named(s layout.Sheet, number int) string {
	const most = 60
	out := fmt.Sprint(number)
	last := ""
	for _, v := range s.Views {
		add := strings.TrimRight(" "+v.Tile, " ")
		if v.Drawing.Name != last {
			add = ": " + v.Drawing.Name + add
			if last != "" {
				add = "," + add[1:]
			}
		}
		if last = v.Drawing.Name; len(out)+len(add) > most {
			return out + " ..."
		}
		out += add
	}
	if len(s.Views) == 0 {
		out += ": read first"
	}
	return out
}
