package altered

import (
	"fmt"
	"math"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
)

// Mend is the change of the measure by so much of its unit as what mends a finding, rounded away
// from what the measure is, to its step. The zero Change stands for none: by nothing, of
// a measure that the design has not, or beyond its band.
func (m Measure) Mend(d *design.Design, by float64) finding.Change {
	b, ok := m.Band(d)
	steps := math.Ceil(math.Abs(by)/b.Step - 1e-9)
	by = math.Copysign(steps*b.Step, by)
	to := math.Round((b.Now+by)/b.Step) * b.Step
	if !ok || !(steps > 0) || !(to >= b.Least && to <= b.Most) {
		return finding.Change{}
	}
	return finding.Change{Measure: m.String(), To: to, Says: m.words(by, b.Step)}
}

// words say what to do.
func (m Measure) words(by, step float64) string {
	does := [...][2]string{
		{"make it %s shorter", "make it %s longer"}, {"make it %s narrower", "make it %s wider"}, {"make it %s shallower", "make it %s deeper"},
		{"take %s of rocker off", "give it %s more rocker"}, {"lower the seats by %s", "raise the seats by %s"}, {"move the seats %s aft", "move the seats %s forward"},
		{"make the ribs %s thinner", "make the ribs %s thicker"}, {"move the thwart %s aft", "move the thwart %s forward"},
		{"flare the sides %s less", "flare the sides %s more"}, {"make the ends %s finer", "make the ends %s fuller"},
	}[m]
	how := does[0]
	if by > 0 {
		how = does[1]
	}
	decimals := 0
	if step < 1 {
		decimals = 1
	}
	return fmt.Sprintf(how, fmt.Sprintf("%.*f %s", decimals, math.Abs(by), m.Unit()))
}

// Within reports whether a change lies in what its measure may be in a design.
func Within(d *design.Design, c finding.Change) bool {
	for _, m := range All() {
		if m.String() == c.Measure {
			b, ok := m.Band(d)
			return ok && c.To >= b.Least && c.To <= b.Most
		}
	}
	return false
}
