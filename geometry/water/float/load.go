package float

import "ribwright/geometry"

// Load is a mass with its center.
type Load struct {
	Mass float64         // kg
	At   geometry.Point3 // mm
}

// Total returns the sum of loads; without any mass it lies at the origin.
func Total(loads ...Load) Load {
	var t Load
	for _, l := range loads {
		t.Mass += l.Mass
		t.At = t.At.Add(geometry.Point3{X: l.Mass * l.At.X, Y: l.Mass * l.At.Y, Z: l.Mass * l.At.Z})
	}
	if t.Mass > 0 {
		t.At = geometry.Point3{X: t.At.X / t.Mass, Y: t.At.Y / t.Mass, Z: t.At.Z / t.Mass}
	}
	return t
}

// Shifted returns the load after a part of it, mass kg, has moved by the step.
func (l Load) Shifted(mass float64, step geometry.Point3) Load {
	k := mass / l.Mass
	l.At = l.At.Add(geometry.Point3{X: k * step.X, Y: k * step.Y, Z: k * step.Z})
	return l
}

// Outcome is why a boat does not float as it should.
type Outcome int

// The outcomes of a failed equilibrium.
const (
	Sinks    Outcome = iota // more weight than the hull can hold above water
	Swamps                  // it floats, but the gunwale is under somewhere
	Outside                 // no trim brings buoyancy under the load
	Capsizes                // it will not stay upright
)

// String names the outcome in a word.
func (o Outcome) String() string {
	return [...]string{"sinks", "swamps", "load outside the hull", "capsizes"}[o]
}

// Fault says why there is no safe equilibrium.
type Fault struct {
	Outcome Outcome
	Text    string // one line, with figures and units
}

// Error returns the outcome and the reason.
func (f *Fault) Error() string { return f.Outcome.String() + ": " + f.Text }
