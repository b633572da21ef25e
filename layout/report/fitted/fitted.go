// Package fitted tells of what is fitted to a boat for a while: a sail, a second hull,
// oars.
package fitted

import (
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/outfit/sail"
	"ribwright/layout/report"
)

// Sail tells of a sail.
func Sail(f *sail.Fit, units measure.System) []report.Block { return nil }

// Pair tells of two hulls side by side.
func Pair(c *pair.Craft, units measure.System) []report.Block { return nil }

// Rowing tells of a frame, oars and a seat.
func Rowing(f *rowing.Fit, units measure.System) []report.Block { return nil }
