package stow

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Boat is one boat of a fleet, made ready to go into another and to take one.
type Boat struct {
	Title   string
	Frame   *frame.Frame
	Cloth   skin.Pressed
	Outside *Outside
	Inside  *Inside // with its thwarts, yoke and seats
	Mass    float64 // empty, kg, everything aboard that the design names as a part

	bare *Inside
	like string // designs with the same text are the same boat
}

// NewBoat makes a boat ready.
//
// Errors: a wood that is not known.
func NewBoat(f *frame.Frame) (*Boat, error) {
	a, err := aboard.New(f, nil, nil)
	if err != nil {
		return nil, err
	}
	b := &Boat{Title: a.Title, Frame: f, Cloth: a.Cloth.Press(f), Mass: a.Own().Mass}
	if b.like, err = f.Design.Fingerprint(); err != nil {
		return nil, err
	}
	if b.Outside, err = OutsideOf(f, b.Cloth); err != nil {
		return nil, fmt.Errorf("%s: %w", b.Title, err)
	}
	if b.Inside, err = InsideOf(f, b.Cloth.Cloth); err != nil {
		return nil, fmt.Errorf("%s: %w", b.Title, err)
	}
	b.bare = b.Inside.Bare()
	return b, nil
}

// open returns the inside that another boat is lowered into.
func (b *Boat) open(o Options) *Inside {
	switch {
	case !o.LeftIn:
		return b.bare
	case len(o.Out) == 0:
		return b.Inside
	}
	out := taken(b.Frame, o.Out)
	return b.Inside.only(func(_ Edge, p Part) bool { return p.Kind != CrossPiece || !slices.Contains(out, p.Name) })
}

// loose is a part that can be taken out.
type loose struct {
	name  string
	words []string // that it may be called by besides its name
}

// looseOf lists thwarts and yoke, then the seats, in the order of the design.
func looseOf(f *frame.Frame) []loose {
	var out []loose
	for i, t := range f.Thwarts {
		out = append(out, loose{strings.TrimSpace(t.Name), []string{fmt.Sprintf("thwart-%d", i+1), t.Kind.String()}})
	}
	for i, s := range f.Seats {
		out = append(out, loose{strings.TrimSpace(s.Name), []string{design.SeatCode(i), "seat"}})
	}
	return out
}

// taken names the parts that words mean: kinds (seat, thwart, yoke), codes or names.
func taken(f *frame.Frame, words []string) []string {
	var out []string
	for _, l := range looseOf(f) {
		if slices.ContainsFunc(words, l.called) {
			out = append(out, l.name)
		}
	}
	return out
}

func (l loose) called(word string) bool {
	word = strings.TrimSpace(word)
	return strings.EqualFold(word, l.name) || slices.ContainsFunc(l.words, func(w string) bool { return strings.EqualFold(w, word) })
}

// Takes reports whether a word means a part of the boat that can be taken out.
func (b *Boat) Takes(word string) bool { return len(taken(b.Frame, []string{word})) > 0 }

// Length returns the boat's length overall with its cloth, mm.
func (b *Boat) Length() float64 { return b.Outside.Fore - b.Outside.Aft }

// OutsideOf returns the outside of a boat's cloth with its outwales, out over the ribs
// where they stand proud of it between two stringers.
//
// Errors: sections that do not match, which those of a frame do.
func OutsideOf(f *frame.Frame, cloth skin.Pressed) (*Outside, error) {
	var sections []Section
	for _, x := range rowsOf(f, cloth) {
		half := cloth.At(x)
		if f.Design.Outside.Outwale > 0 {
			half = outwaled(f, x, half)
		}
		sections = append(sections, Section{x, half})
	}
	return NewOutside(sections, underCloth(f))
}

// outwaled puts the outwale on a section: from the gunwale's face out under it, and up its
// own. Past the gunwales' ends there is none.
func outwaled(f *frame.Frame, x float64, half []geometry.Point) []geometry.Point {
	n := len(half) - 1
	low, top, o := half[n-1], half[n], f.Design.Outside
	if x < -f.Hull.Stern.GunwaleX || x > f.Hull.Bow.GunwaleX || low == top {
		return append(half, top, top)
	}
	up := top.Sub(low).Unit()
	off, under := up.Left().Scale(-float64(o.Outwale)), top.Sub(up.Scale(float64(o.OutwaleHeight)))
	return append(half[:n], under, under.Add(off), top.Add(off))
}

func underCloth(f *frame.Frame) []Part {
	out := []Part{{Keel, "keel"}}
	for i := range len(f.Stringers) + 1 {
		out = append(out, slices.Repeat([]Part{{Cloth, "cloth"}}, skin.Between+1)...)
		if i < len(f.Stringers) {
			out = append(out, Part{Stringer, fmt.Sprintf("stringer %d", i+1)})
		}
	}
	out = append(out, Part{Gunwale, "gunwale"})
	if f.Design.Outside.Outwale > 0 {
		out = append(out, Part{Gunwale, "outwale"}, Part{Gunwale, "outwale"})
	}
	return out
}

// How far apart sections are drawn along the boat and up the stems, and how far apart
// the two stand where the cloth has a step, at the gunwales' ends and the tips, mm.
const (
	skinStep = 15.0
	stemStep = 4.0
	step     = 0.01
)

// rowsOf lists where sections are drawn: wherever the boat is cut to be floated, and, not
// on top of those, evenly between, close together up the stems, and twice where there is
// a step.
func rowsOf(f *frame.Frame, cloth skin.Pressed) []float64 {
	cuts := cloth.Stations()
	out, aft, fore := slices.Clone(cuts), cuts[0], cuts[len(cuts)-1]
	add := func(x float64) {
		i := sort.SearchFloat64s(cuts, x)
		if before, after := cuts[max(0, i-1)], cuts[min(i, len(cuts)-1)]; math.Min(math.Abs(x-before), math.Abs(x-after)) > step/2 {
			out = append(out, x)
		}
	}
	for x := aft + skinStep; x < fore; x += skinStep {
		add(x)
	}
	stern, bow := cloth.Ends()
	for _, e := range []struct {
		skin.End
		outer hull.End
		side  float64
	}{{bow, f.Hull.Bow, 1}, {stern, f.Hull.Stern, -1}} {
		for s := 0.0; s < e.outer.Outer.Length(); s += stemStep {
			if p, _ := e.outer.Point(s); p.X < e.Tip {
				add(e.side * p.X)
			}
		}
		add(e.side * e.Gunwale)
		add(e.side * (e.Gunwale + step))
		add(e.side * (e.Tip - step))
	}
	sort.Float64s(out)
	return slices.CompactFunc(out, func(a, b float64) bool { return math.Abs(a-b) <= step/2 })
}

// outline flattens a closed outline to points no farther apart than most, mm.
func outline(p curve.Path, most float64) []geometry.Point {
	pts := p.Flatten(0.1)
	out := pts[:1:1]
	for i := 1; i < len(pts); i++ {
		n := int(pts[i].Sub(pts[i-1]).Norm()/most) + 1
		for k := 1; k <= n; k++ {
			out = append(out, pts[i-1].Lerp(pts[i], float64(k)/float64(n)))
		}
	}
	return out
}
