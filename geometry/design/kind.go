package design

import (
	"fmt"

	"ribwright/geometry/wording"
)

// Kind is what a cross piece is for.
type Kind int

// The kinds of cross piece.
const (
	PlainThwart Kind = iota // holds the gunwales apart
	Yoke                    // a thwart with a hollow for the neck, to carry by
	SeatBar                 // one of a pair that carries a seat
)

// String returns the name of the kind as the file has it.
func (k Kind) String() string {
	switch k {
	case Yoke:
		return "yoke"
	case SeatBar:
		return "seat bar"
	}
	return "thwart"
}

// MarshalText writes the kind as its name.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads "thwart", "yoke" or "seat bar".
func (k *Kind) UnmarshalText(text []byte) error {
	for _, c := range []Kind{PlainThwart, Yoke, SeatBar} {
		if string(text) == c.String() {
			*k = c
			return nil
		}
	}
	return fmt.Errorf("%q is no kind of cross piece; accepted: thwart, yoke, seat bar", wording.Clip(string(text), 40))
}
