package balance

import (
	"fmt"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/wording"
)

// Without is a choice of members to take out.
type Without struct {
	Names  []string // of what is out, in the order of the boat
	bear   []string // those of them that bear on the frame's shape
	ribs   map[int]bool
	struts map[int]bool
	seats  map[int]bool // which carry nothing of the balance
	all    int          // cross pieces of the boat
}

// Code returns what the cross piece with the number i, from 0, is called in a
// choice: thwart-1 is the first that the design names, whatever its kind.
func Code(i int) string { return fmt.Sprintf("thwart-%d", i+1) }

// Choose reads a choice of members.
//
// How: each word is a code (thwart-2, seat-1), the name of a cross piece or a seat, the
// name of a rib (F3), or a kind: seat, yoke, thwart, all. Capitals and the spaces, commas
// and hyphens within names do not matter.
// Errors: a word that fits nothing in this boat, with what would.
func (b *Boat) Choose(words []string) (*Without, error) {
	out := &Without{ribs: map[int]bool{}, struts: map[int]bool{}, seats: map[int]bool{}, all: len(b.Frame.Thwarts)}
	for _, w := range words {
		if !b.pick(out, plain(w)) {
			return nil, fmt.Errorf("nothing in this boat is called %q; accepted: %s", wording.Clip(w, 40), b.accepted())
		}
	}
	for i, t := range b.Frame.Thwarts {
		if out.struts[i] {
			out.Names = append(out.Names, t.Name)
			out.bear = append(out.bear, t.Name)
		}
	}
	for i, t := range b.Frame.Seats {
		if out.seats[i] {
			out.Names = append(out.Names, t.Name)
		}
	}
	for i, r := range b.Frame.Ribs {
		if out.ribs[i] {
			out.Names = append(out.Names, "rib "+r.Name)
			out.bear = append(out.bear, "rib "+r.Name)
		}
	}
	return out, nil
}

func (b *Boat) pick(out *Without, word string) bool {
	found := false
	for i, t := range b.Frame.Thwarts {
		if word == plain(Code(i)) || word == plain(t.Name) || word == "all" || word == t.Kind.String() {
			out.struts[i], found = true, true
		}
	}
	for i, t := range b.Frame.Seats {
		if word == plain(design.SeatCode(i)) || word == plain(t.Name) || word == "all" || word == "seat" {
			out.seats[i], found = true, true
		}
	}
	for i, r := range b.Frame.Ribs {
		if word == plain(r.Name) || word == plain("rib "+r.Name) {
			out.ribs[i], found = true, true
		}
	}
	return found
}

func (b *Boat) accepted() string {
	var words []string
	seen := map[string]bool{}
	for i, t := range b.Frame.Thwarts {
		if k := t.Kind.String(); !seen[k] {
			seen[k] = true
			words = append(words, k)
		}
		words = append(words, Code(i))
	}
	if len(b.Frame.Seats) > 0 {
		words = append(words, "seat")
	}
	for i := range b.Frame.Seats {
		words = append(words, design.SeatCode(i))
	}
	return strings.Join(append(words, "all, or a rib as "+b.Frame.Ribs[0].Name), ", ")
}

// plain drops everything but letters and digits, in small letters.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'A' && r <= 'Z':
			return r - 'A' + 'a'
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r > 127:
			return r
		}
		return -1
	}, s)
}

// Struts reports whether the cross piece with the number i is out.
func (w *Without) Struts(i int) bool { return w.struts[i] }

// OnlySeats reports whether nothing comes out that bears on the frame's shape.
func (w *Without) OnlySeats() bool { return len(w.seats) > 0 && len(w.ribs)+len(w.struts) == 0 }

// String names what is out and bears on the frame's shape, for a pad on the floor does not:
// all the cross pieces by one word, when it is just them; seats where nothing else comes out.
func (w *Without) String() string {
	switch {
	case len(w.Names) == 0:
		return "nothing"
	case len(w.ribs) == 0 && len(w.struts) == w.all && w.all > 1:
		return "any cross piece"
	case len(w.bear) > 0:
		return strings.Join(w.bear, "; ")
	}
	return strings.Join(w.Names, "; ")
}
