package reasons

import (
	"ribwright/geometry/sizing"
	"ribwright/layout/report"
)

// Waters tells what open or moving water changes in a boat, and why; nothing where nothing
// changes.
func Waters(kind string, changes []sizing.Change) []report.Block {
	if len(changes) == 0 {
		return nil
	}
	t := report.Titled("What "+kind+" water changes, beside the same people's boat for sheltered water").Words("What").Numbers("Sheltered", "Here").Words("Why")
	for _, c := range changes {
		t.Row(c.What, c.Sheltered, c.Here, c.Why)
	}
	return []report.Block{t.Noted("By how much is common practice, no source; each is a line of the family that you can change.")}
}
