package design

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/fabric"
	"ribwright/geometry/wording"
)

// choice is a value that the file holds as one of a few words: String and MarshalText
// give the word, UnmarshalText takes it.
type choice interface{ words() []string }

func choose[T interface {
	~int
	choice
}](to *T, what string, text []byte) error {
	words := (*to).words()
	i := slices.Index(words, string(text))
	if i < 0 {
		return fmt.Errorf("%q is no %s; accepted: %s", wording.Clip(string(text), 40), what, strings.TrimPrefix(strings.Join(words, ", "), ", "))
	}
	*to = T(i)
	return nil
}

// Kind is what a cross piece is for.
type Kind int

// The kinds of cross piece.
const (
	PlainThwart Kind = iota // holds the gunwales apart
	Yoke                    // a thwart with a hollow for the neck, to carry by
)

func (Kind) words() []string { return []string{"thwart", "yoke"} }

func (k Kind) String() string               { return k.words()[k] }
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }
func (k *Kind) UnmarshalText(text []byte) error {
	if string(text) == "seat bar" { // of files before seats were parts
		return errors.New(`"seat bar" is no cross piece any more; write one [[seat]] in place of each pair of bars, with name, kind = "hung", at and height, and name it in [[crew]]`)
	}
	return choose(k, "kind of cross piece", text)
}

// Flotation is where a boat has it.
type Flotation int

// The places of flotation. SidesAndEnds is the zero Flotation.
const (
	SidesAndEnds Flotation = iota
	AtSides                // under the gunwales amidships: keeps people sitting upright
	AtEnds                 // keeps the trim and eases emptying
	NoFlotation
)

func (Flotation) words() []string { return []string{"sides and ends", "sides", "ends", "none"} }

func (f Flotation) String() string                   { return f.words()[f] }
func (f Flotation) MarshalText() ([]byte, error)     { return []byte(f.String()), nil }
func (f *Flotation) UnmarshalText(text []byte) error { return choose(f, "place for flotation", text) }

// Sides and Ends report whether there is flotation there.
func (f Flotation) Sides() bool { return f == SidesAndEnds || f == AtSides }
func (f Flotation) Ends() bool  { return f == SidesAndEnds || f == AtEnds }

// Posture is how a person sits, which sets how high their weight is.
type Posture int

// The postures. Kneeling is the zero Posture.
const (
	Kneeling Posture = iota // hips against a seat edge or thwart
	Floor                   // on the floor, legs out
	Bench                   // on a seat, legs down
)

func (Posture) words() []string { return []string{"kneeling", "floor", "bench"} }

func (p Posture) String() string                   { return p.words()[p] }
func (p Posture) MarshalText() ([]byte, error)     { return []byte(p.String()), nil }
func (p *Posture) UnmarshalText(text []byte) error { return choose(p, "posture", text) }

// Role is what one aboard does.
type Role int

// The roles. Paddler is the zero Role; the others are live cargo.
const (
	Paddler   Role = iota
	Passenger      // of any age
	Dog
)

func (Role) words() []string { return []string{"paddler", "passenger", "dog"} }

func (r Role) String() string                   { return r.words()[r] }
func (r Role) MarshalText() ([]byte, error)     { return []byte(r.String()), nil }
func (r *Role) UnmarshalText(text []byte) error { return choose(r, "role aboard", text) }

// Live reports whether one aboard is live cargo: carried, and free to move.
func (r Role) Live() bool { return r != Paddler }

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

func (Rig) words() []string { return []string{"spritsail", "leg-of-mutton", "lug", "vee"} }

func (r Rig) String() string                   { return r.words()[r] }
func (r Rig) MarshalText() ([]byte, error)     { return []byte(r.String()), nil }
func (r *Rig) UnmarshalText(text []byte) error { return choose(r, "rig", text) }

// Purpose is what two hulls are tied together for.
type Purpose int

// The purposes. Unsaid is the zero Purpose: nobody can choose it for the builder.
const (
	Unsaid Purpose = iota
	MovingWater
	OpenWater
	Sailing
)

// Purposes returns every purpose that can be said.
func Purposes() []Purpose { return []Purpose{MovingWater, OpenWater, Sailing} }

func (Purpose) words() []string { return []string{"", "moving", "open", "sail"} }

func (p Purpose) String() string                   { return p.words()[p] }
func (p Purpose) MarshalText() ([]byte, error)     { return []byte(p.String()), nil }
func (p *Purpose) UnmarshalText(text []byte) error { return choose(p, "purpose", text) }

// Body is whose proportions a person has where they are not measured.
type Body int

// The bodies. Woman is the zero Body.
const (
	Woman Body = iota
	Man
)

func (Body) words() []string { return []string{"woman", "man"} }

func (b Body) String() string                   { return b.words()[b] }
func (b Body) MarshalText() ([]byte, error)     { return []byte(b.String()), nil }
func (b *Body) UnmarshalText(text []byte) error { return choose(b, "body that is known", text) }

// MortiseWay is how the gunwales' mortises are made.
type MortiseWay int

// The ways. CutMortises is the zero MortiseWay.
const (
	CutMortises MortiseWay = iota // routed or chopped into the finished gunwale
	ByGap                         // left open between blocks of the middle ply
)

func (MortiseWay) words() []string { return []string{"cut", "by gap"} }

func (m MortiseWay) String() string                   { return m.words()[m] }
func (m MortiseWay) MarshalText() ([]byte, error)     { return []byte(m.String()), nil }
func (m *MortiseWay) UnmarshalText(text []byte) error { return choose(m, "way to make mortises", text) }

// Seasoning is how the wood that is steamed was dried before it came.
type Seasoning int

// The seasonings. AirDried is the zero Seasoning.
const (
	AirDried  Seasoning = iota // in the open, under cover
	Green                      // fresh from the tree, or kept wet
	KilnDried                  // in a kiln, as most yards sell it
)

func (Seasoning) words() []string { return []string{"air-dried", "green", "kiln-dried"} }

func (s Seasoning) String() string               { return s.words()[s] }
func (s Seasoning) MarshalText() ([]byte, error) { return []byte(s.String()), nil }
func (s *Seasoning) UnmarshalText(text []byte) error {
	return choose(s, "way that wood is dried", text)
}

// Method is how the ribs are bent.
type Method int

// The methods. InPlace is the zero Method.
const (
	InPlace Method = iota // hot, by hand and eye, and set in the boat
	OnForms               // round flat forms, and dried on them
)

func (Method) words() []string { return []string{"in place", "on forms"} }

func (m Method) String() string                   { return m.words()[m] }
func (m Method) MarshalText() ([]byte, error)     { return []byte(m.String()), nil }
func (m *Method) UnmarshalText(text []byte) error { return choose(m, "method of bending", text) }

// Fiber is what the skin is woven of; what it does is for package fabric to know.
type Fiber fabric.Fiber

func (Fiber) words() (out []string) {
	for _, f := range fabric.Fibers() {
		out = append(out, f.String())
	}
	return out
}

func (f Fiber) String() string                   { return f.words()[f] }
func (f Fiber) MarshalText() ([]byte, error)     { return []byte(f.String()), nil }
func (f *Fiber) UnmarshalText(text []byte) error { return choose(f, "fiber that is known", text) }
