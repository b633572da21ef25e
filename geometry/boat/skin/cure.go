package skin

import (
	"fmt"
	"strconv"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// Cure is a change of the stringers that keeps every rib inside the cloth, tried on
// a frame that was built with it.
type Cure struct {
	At    []float64 // shares of the way from keel to gunwale
	Moved []int     // numbers of the stringers that stand elsewhere than now
	Depth float64   // of the stringers, mm
	By    float64   // the rib that comes out farthest then, mm; negative inside
	kind  kind
}

type kind int

const (
	moved kind = iota
	deeper
	added
)

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
		c := Cure{At: at, Depth: depth, kind: moved}
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
		if c := (Cure{At: d.Stringers.At, Depth: depth + more, kind: deeper}); c.serves(d) {
			return c, true
		}
	}
	if at, ok := rearranged(f, len(d.Stringers.At)+1); ok {
		c := Cure{At: at, Depth: depth, kind: added}
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
	switch c.kind {
	case deeper:
		return fmt.Sprintf("make the stringers %s deep instead of %s (stringers.depth)", mm(c.Depth), mm(float64(d.Stringers.Depth)))
	case added:
		return fmt.Sprintf("add one stringer on each side (stringers.at = %s)", shares(c.At))
	}
	if len(c.Moved) == 1 {
		i := c.Moved[0] - 1
		return fmt.Sprintf("move stringer %d from %.4g to %.4g of the way from keel to gunwale (stringers.at = %s)", i+1, d.Stringers.At[i], c.At[i], shares(c.At))
	}
	var numbers []string
	for _, n := range c.Moved {
		numbers = append(numbers, strconv.Itoa(n))
	}
	last := len(numbers) - 1
	return fmt.Sprintf("move stringers %s and %s to other shares of the way from keel to gunwale (stringers.at = %s)", strings.Join(numbers[:last], ", "), numbers[last], shares(c.At))
}

// shares writes a list as the design file has it.
func shares(at []float64) string {
	var out []string
	for _, v := range at {
		out = append(out, fmt.Sprintf("%.4g", v))
	}
	return "[" + strings.Join(out, ", ") + "]"
}
