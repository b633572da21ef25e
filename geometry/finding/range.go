package finding

// Range is a figure beside what practice gives for it. It is a habit of the trade,
// never a limit.
type Range struct {
	Name      string
	Value     float64
	Low, High float64
	Unit      string // "mm", "%"
	Source    string
}

// Inside reports whether the figure lies in the range, to half a unit.
func (r Range) Inside() bool { return r.Value >= r.Low-0.5 && r.Value <= r.High+0.5 }
