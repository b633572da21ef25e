// Package book tells everything that a builder needs on the bench besides the
// patterns: drawings, tables to check against while bending by eye, the cut list,
// what to buy, how long it takes and in what order. It makes blocks; others set
// them.
package book

import (
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/flaw"
	"ribwright/geometry/trial/handwork"
	"ribwright/geometry/water"
	"ribwright/layout"
	"ribwright/layout/report"
)

// Facts is what the book is made of.
type Facts struct {
	Frame       *frame.Frame
	Fingerprint string
	Units       measure.System

	Plan   *cutlist.Plan
	Needs  *materials.Needs
	Cost   cost.Estimate
	Prices *cost.Table
	Rings  finding.List // where rings do not lie as wood that is bent wants them
	Work   []hours.Work
	Saved  float64 // hours that mortises by gap spare an experienced woodworker
	Skill  hours.Skill

	Water    water.Water
	Afloat   aboard.Boat
	Trial    *afloat.Report // nil when the boat finds no rest
	NoTrial  string         // why not
	Bend     *bend.Report
	Told     finding.List     // whether it stands and its wood bends, in a line each
	Without  *balance.Without // what the trials of the frame balance take out
	Trials   []balance.Trial
	Hands    *handwork.Report
	Eye      *flaw.Report // the frame fair and with faults
	Miss     float64      // by how much the last trial's ribs miss the neutral set, mm
	Outfits  *outfit.Outfits
	Plates   layout.Plate   // of the cutter's parts, laid once
	Portrait layout.Drawing // of the boat, over the bow

	Loose             *afloat.Loose      // with ribs that are only pushed in
	Corrections       []frame.Correction // of the ribs, from aft forward
	Clearance         *skin.Clearance    // how the cloth clears the ribs
	Outfitted         []afloat.Outfitted // with the outfits
	InBoat, InOutfits cutlist.Finished   // wood that stays
}

// The chapters that are looked up by their names.
const (
	RibChapter   = "Ribs"
	CutList      = "Cut list"
	RippingPlan  = "Ripping plan"
	Shopping     = "Shopping list and cost"
	HoursChapter = "Hours"
	OrderOfWork  = "Order of work"
)

// Of makes the book.
func Of(f Facts) report.Report {
	w := &writer{Facts: f, Letters: report.Letters{Units: f.Units}}
	w.book = report.Report{Title: f.Frame.Design.Title, Kind: "build book", For: f.Frame.Design.For, Edition: f.Frame.Design.Edition, Fingerprint: f.Fingerprint}
	for _, chapter := range []func(){
		w.cover, w.reading, w.dimensions, w.lines, w.offsets, w.mortises, w.ribs, w.depths, w.crossPieces, w.seats,
		w.ends, w.battens, w.eye, w.joints, w.skin, w.inside, w.afloat, w.balance, w.outfits,
		w.cutList, w.boards, w.shopping, w.hours, w.order,
	} {
		chapter()
	}
	return w.book
}

type writer struct {
	Facts
	report.Letters
	book report.Report
}

func (w *writer) add(b ...report.Block) { w.book.Blocks = append(w.book.Blocks, b...) }

func (w *writer) chapter(words string)   { w.add(report.Chapter(words)) }
func (w *writer) section(words string)   { w.add(report.Section(words)) }
func (w *writer) warn(words, who string) { w.add(report.Caution{Words: words, Says: who}) }

func (w *writer) say(format string, args ...any) { w.add(report.Say(format, args...)) }
