package sizing

import "ribwright/geometry/sizing/formula"

// Explain returns the whole derivation of one value.
// Errors: a name that is not known, with the nearest.
func (b *Boat) Explain(name string) ([]formula.Step, error) { return b.Case.run.Explain(name) }

// Why is a value's reason, and what won where it is the least or greatest of several.
func (b *Boat) Why(name string) string {
	run := b.Case.run
	reason := run.Reason(name)
	if run.IsFixed(name) {
		return "set by hand or found by the search; the formula's reason was: " + reason
	}
	if held := run.HeldBy(name); held != "" {
		return "held by " + held + "; " + reason
	}
	return reason
}
