package skin

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// Cure is a change of the stringers that keeps every rib inside the cloth, tried on
// a frame that was built with it.
type Cure struct {
	At    []float64 // shares of the way from keel to gunwale
	Moved []int     // numbers of the stringers that stand elsewhere than now
	Depth float64   // of the stringers, mm
	By    float64   // the rib that comes out farthest then, mm; negative inside
}

// offCloth is how far inside the cloth a cure keeps every rib, mm: about what a
// planed stringer or a bent rib is off.
const offCloth = 0.5

// CureOf returns the cheapest change that keeps the ribs off the cloth: stringers
// moved, by as little as serves, which costs nothing; else deeper stringers, up
// to half as deep again; else one more on each side. False when none serves.
func CureOf(f *frame.Frame) (Cure, bool) {
	d := f.Design
	depth := float64(d.Stringers.Depth)
	if at, ok := rearranged(f, len(d.Stringers.At)); ok {
		c := Cure{At: at, Depth: depth}
		for i, share := range at {
			if share != d.Stringers.At[i] {
				c.Moved = append(c.Moved, i+1)
			}
		}
		if c.serves(d) {
			return c, true
		}
	}
	for more := 0.5; more <= depth/2; more += 0.5 {
		if c := (Cure{At: d.Stringers.At, Depth: depth + more}); c.serves(d) {
			return c, true
		}
	}
	if at, ok := rearranged(f, len(d.Stringers.At)+1); ok {
		c := Cure{At: at, Depth: depth}
		return c, c.serves(d)
	}
	return Cure{}, false
}

// serves builds the boat with the cure and measures its ribs.
func (c *Cure) serves(d *design.Design) bool {
	n := *d
	n.Stringers.At, n.Stringers.Depth = c.At, measure.Length(c.Depth)
	if n.Check() != nil {
		return false
	}
	f, err := frame.Build(&n)
	if err != nil {
		return false
	}
	_, worst := ProudRibs(f)
	c.By = worst.By
	return c.By <= -offCloth
}

// Words says in one clause what to do; mm writes a length.
func (c Cure) Words(d *design.Design, mm func(float64) string) string {
	switch {
	case c.Depth != float64(d.Stringers.Depth):
		return fmt.Sprintf("make the stringers %s deep instead of %s (stringers.depth)", mm(c.Depth), mm(float64(d.Stringers.Depth)))
	case len(c.At) > len(d.Stringers.At):
		return fmt.Sprintf("add one stringer on each side (stringers.at = %s)", shares(c.At))
	}
	if len(c.Moved) == 1 {
		i := c.Moved[0] - 1
		return fmt.Sprintf("move stringer %d from %.4g to %.4g of the way from keel to gunwale (stringers.at = %s)", i+1, d.Stringers.At[i], c.At[i], shares(c.At))
	}
	var moved []string
	for _, n := range c.Moved {
		moved = append(moved, strconv.Itoa(n))
	}
	return fmt.Sprintf("move stringers %s to other shares of the way from keel to gunwale (stringers.at = %s)", wording.And(moved), shares(c.At))
}

// shares writes a list as the design file has it.
func shares(at []float64) string {
	return "[" + wording.List(at, func(v float64) string { return fmt.Sprintf("%.4g", v) }) + "]"
}

// places is how many shares of the girth are tried, evenly: hundredths, some 5 mm
// apart in a canoe.
const places = 100

// rearranged places a number of stringers so that every rib stays off the cloth,
// moved as little as can be from where they are, or, when there is another
// number, from even shares. False when no places serve.
//
// How: a gap between two battens can be judged by itself, so the least sum of
// moves up to a stringer at a place follows from that of the stringer before it.
func rearranged(f *frame.Frame, n int) ([]float64, bool) {
	was := slices.Clone(f.Design.Stringers.At)
	if n != len(was) {
		was = was[:0]
		for i := range n {
			was = append(was, float64(i+1)/float64(n+1))
		}
	}
	g := gaps{f: f, known: map[[2]float64]bool{}}
	for _, r := range f.Ribs {
		g.skins = append(g.skins, f.Corners(r))
	}
	last := []step{{share: 0}}
	var ways [][]step
	for _, share := range was {
		last = g.next(last, spots(share), share)
		ways = append(ways, last)
	}
	end := g.next(last, []float64{1}, 1)[0]
	if math.IsInf(end.moves, 1) {
		return nil, false
	}
	out := make([]float64, n)
	for i, k := n-1, end.from; i >= 0; i-- {
		out[i], k = ways[i][k].share, ways[i][k].from
	}
	return out, true
}

// spots are the shares that are tried for a batten: where it is, and hundredths.
func spots(share float64) []float64 {
	out := []float64{share}
	for k := 1; k < places; k++ {
		out = append(out, float64(k)/places)
	}
	return out
}

// step is a batten at a share, with the least moves of the stringers up to it and
// which place of the batten before that takes.
type step struct {
	share, moves float64
	from         int
}

// next returns the best way to each place of the next batten, which now is at was.
func (g gaps) next(last []step, to []float64, was float64) []step {
	out := make([]step, len(to))
	for k, share := range to {
		out[k] = step{share, math.Inf(1), 0}
		for j, before := range last {
			if moves := before.moves + math.Abs(share-was); moves < out[k].moves && g.clear(before.share, share) {
				out[k].moves, out[k].from = moves, j
			}
		}
	}
	return out
}

// gaps judges gaps between two battens at any two shares of the girth, 0 the keel
// and 1 the gunwale; it remembers what it found.
type gaps struct {
	f     *frame.Frame
	skins [][]geometry.Point // by rib
	known map[[2]float64]bool
}

func (g gaps) clear(from, to float64) bool {
	if from >= to {
		return false
	}
	key := [2]float64{from, to}
	if _, found := g.known[key]; !found {
		ok := true
		for i := 0; ok && i < len(g.skins); i++ {
			ok = g.clearAt(i, from, to)
		}
		g.known[key] = ok
	}
	return g.known[key]
}

// clearAt reports whether battens at two shares leave room for a lashing on a rib
// and keep the cloth between them off it.
func (g gaps) clearAt(rib int, from, to float64) bool {
	d, r, skin := g.f.Design, g.f.Ribs[rib], g.skins[rib]
	girth := r.Section.Half.Length()
	a, b := skin[1], skin[len(skin)-2]
	inner, outer := float64(d.Keel.Width)/2, 0.0
	if from > 0 {
		_, a = r.Section.Stringer(d, from*girth)
		inner = float64(d.Stringers.Width) / 2
	}
	if to < 1 {
		b, _ = r.Section.Stringer(d, to*girth)
		outer = float64(d.Stringers.Width) / 2
	}
	return (to-from)*girth-inner-outer >= frame.LashingRoom && over(r, from*girth, to*girth, a, b) <= -offCloth
}
