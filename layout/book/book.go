// Package book tells everything that a builder needs on the bench besides the
// patterns: drawings, tables to check against while bending by eye, the cut list,
// what to buy, how long it takes and in what order. It makes blocks; others set
// them.
package book

import (
	"ribwright/geometry/balance"
	"ribwright/geometry/bend"
	"ribwright/geometry/bill"
	"ribwright/geometry/cost"
	"ribwright/geometry/fitout"
	"ribwright/geometry/frame"
	"ribwright/geometry/labour"
	"ribwright/geometry/measure"
	"ribwright/geometry/stock"
	"ribwright/geometry/trial"
	"ribwright/geometry/water"
	"ribwright/layout/page"
)

// Facts is what the book is made of.
type Facts struct {
	Frame       *frame.Frame
	Fingerprint string
	Units       measure.System

	Plan   *stock.Plan
	Needs  *bill.Needs
	Cost   cost.Estimate
	Prices *cost.Table
	Work   []labour.Work
	Skill  labour.Skill

	Water   water.Water
	Afloat  trial.Boat
	Trial   *trial.Report // nil when the boat finds no rest
	NoTrial string        // why not
	Bend    *bend.Report
	Without *balance.Without // what the trials of the frame balance take out
	Trials  []balance.Trial
	Miss    float64 // by how much the last trial's ribs miss the neutral set, mm
	Outfits *fitout.Outfits
	Boards  int // sheets of 1220 x 2440 mm that hold the cutter's parts
}

// Of makes the book.
//
// Errors: a rib whose length cannot be adjusted, which a frame that was built has
// not.
func Of(f Facts) (page.Book, error) {
	w := &writer{Facts: f}
	w.book = page.Book{Title: f.Frame.Design.Title, For: f.Frame.Design.For, Fingerprint: f.Fingerprint}
	for _, chapter := range []func(){
		w.cover, w.dimensions, w.lines, w.offsets, w.mortises, w.ribs, w.corrections, w.crossPieces,
		w.ends, w.battens, w.lashings, w.skin, w.afloat, w.balance, w.outfits,
		w.cutList, w.boards, w.shopping, w.hours, w.order,
	} {
		chapter()
	}
	return w.book, w.err
}

// writer gathers blocks and keeps the first error.
type writer struct {
	Facts
	book page.Book
	err  error
}

func (w *writer) add(b ...page.Block) { w.book.Blocks = append(w.book.Blocks, b...) }

func (w *writer) chapter(words string)   { w.add(page.Heading{Level: 1, Words: words}) }
func (w *writer) section(words string)   { w.add(page.Heading{Level: 2, Words: words}) }
func (w *writer) say(words string)       { w.add(page.Paragraph{Words: words}) }
func (w *writer) warn(words, who string) { w.add(page.Caution{Words: words, Says: who}) }
func (w *writer) imperial() bool         { return w.Units == measure.Imperial }
