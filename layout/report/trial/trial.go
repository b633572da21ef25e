// Package trial tells what the trials of a boat found: afloat, of its bends and
// balance, nested with others.
package trial

import (
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/stow"
	"ribwright/layout/report"
)

// Afloat tells how a boat lies on the water.
func Afloat(r *afloat.Report, units measure.System) []report.Block { return nil }

// Balance is what holds the shape of a frame, and what comes of taking members out.
type Balance struct {
	Report  *bend.Report
	Without *balance.Without // what comes out in the trials
	Trials  []balance.Trial
	Miss    float64 // mm, by how much the ribs of the last trial miss the neutral set
}

// Bending tells whether the wood takes each bend and what holds the shape.
func Bending(b Balance, units measure.System) []report.Block { return nil }

// Fleet tells which boats nest in one another.
func Fleet(r *stow.Report, units measure.System) []report.Block { return nil }
