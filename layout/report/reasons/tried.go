package reasons

import (
	"ribwright/geometry/finding"
	"ribwright/layout/report"
)

// Tried tells in a line each whether the boat stands and its wood bends, and then all
// that was found of it that does not pass or is a danger, the dangers first.
func Tried(told, matters finding.List) []report.Block {
	out := append([]report.Block{report.Section("Does it stand, does it bend")}, report.Told(told)...)
	return append(out, report.Findings{List: matters}.Blocks()...)
}
