package design

import (
	"fmt"

	"ribwright/geometry/wording"
)

// Rig is a kind of sail.
type Rig int

// The rigs. Spritsail is the zero Rig.
const (
	Spritsail   Rig = iota // four-sided, its peak held up by a sprit
	LegOfMutton            // three-sided, laced to the mast
	Lug                    // four-sided under a yard, on a boom
	Vee                    // a triangle between two spars, for running
)

// Rigs returns every rig.
func Rigs() []Rig { return []Rig{Spritsail, LegOfMutton, Lug, Vee} }

// String returns the name of the rig as the file has it.
func (r Rig) String() string { return [...]string{"spritsail", "leg-of-mutton", "lug", "vee"}[r] }

// MarshalText writes the rig as its name.
func (r Rig) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads the name of a rig.
func (r *Rig) UnmarshalText(text []byte) error {
	for _, c := range Rigs() {
		if string(text) == c.String() {
			*r = c
			return nil
		}
	}
	return fmt.Errorf("%q is no rig; accepted: spritsail, leg-of-mutton, lug, vee", wording.Clip(string(text), 40))
}

// Body is whose proportions a person has where they are not measured.
type Body int

// The bodies. Woman is the zero Body.
const (
	Woman Body = iota
	Man
)

// String returns "woman" or "man".
func (b Body) String() string { return [...]string{"woman", "man"}[b] }

// MarshalText writes the body as its name.
func (b Body) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// UnmarshalText reads "woman" or "man".
func (b *Body) UnmarshalText(text []byte) error {
	for _, c := range []Body{Woman, Man} {
		if string(text) == c.String() {
			*b = c
			return nil
		}
	}
	return fmt.Errorf("%q is no body that is known; accepted: woman, man", wording.Clip(string(text), 40))
}
