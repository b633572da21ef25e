package edition

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/marks"
)

// Verdict is what becomes of a cut piece, from best to worst.
type Verdict int

// The verdicts.
const (
	Fits    Verdict = iota // as it is
	Placed                 // as it is, but it is set up otherwise in the boat
	Measure                // where it was cut well; a tape must say
	Rework                 // when something is done to it
	Again                  // no more: it is made again
	Spare                  // the new edition has no such piece
)

// String is the verdict as it is told.
func (v Verdict) String() string {
	return [...]string{"fits", "fits, set up otherwise", "measure it", "rework", "make again", "not needed"}[v]
}

// CutOff is what share of its tolerance a cut piece may be off its own pattern in nine of
// ten: our own choice, until boats are measured. So what moved by up to the rest of the
// tolerance fits, and what moved by more and up to the whole must be measured.
const CutOff = 0.5

// Reason is one thing that keeps a piece from fitting as it is.
type Reason struct {
	Change
	Verdict
	Off float64 // how far the wood is off, in the change's unit, signed: on the piece, not in the boat
	Do  string  // what to do about it
}

// Judged is what becomes of one cut piece.
type Judged struct {
	Cut
	Verdict
	Reasons []Reason // the worst first
	Instead string   // another place where a piece to make again would fit, as "rib F2"; "" for none
}

// Judge says of each cut piece whether it still serves.
func (c *Comparison) Judge(cut []Cut) []Judged {
	out := make([]Judged, len(cut))
	for i, piece := range cut {
		out[i] = c.judge(piece)
	}
	for i := range out {
		if j := &out[i]; (j.Verdict == Again || j.Verdict == Spare) && len(j.parts) == 1 && strings.HasPrefix(j.parts[0], "rib ") {
			j.Instead = c.elsewhere(j.parts[0])
		}
	}
	return out
}

func (c *Comparison) judge(piece Cut) Judged {
	out := Judged{Cut: piece}
	if len(c.New.parts(piece.parts[:1])) == 0 {
		out.Verdict = Spare
		return out
	}
	for _, d := range c.Changes {
		if !piece.of(d.Name) {
			continue
		}
		r := c.reason(d)
		if r.Verdict > Fits {
			out.Reasons = append(out.Reasons, r)
		}
		out.Verdict = max(out.Verdict, r.Verdict)
	}
	slices.SortStableFunc(out.Reasons, func(a, b Reason) int {
		return cmp.Or(cmp.Compare(b.Verdict, a.Verdict), cmp.Compare(math.Abs(b.Off)/b.Tolerance, math.Abs(a.Off)/a.Tolerance))
	})
	return out
}

// reason judges one mark of a piece.
func (c *Comparison) reason(d Change) Reason {
	r := Reason{Change: d, Off: d.By()}
	kind := ruleOf(d.Name)
	switch {
	case kind == outline:
		return c.outlined(r)
	case kind == scarf:
		return c.scarfed(r)
	}
	if !d.Moved() {
		return oneAlone(r, kind)
	}
	if off, ok := c.onStem(d); ok {
		r.Off = off
	} else if longer, ok := c.onFloor(d); ok {
		r.Off, kind = longer, long
	} else if kind != setUp {
		r.Off = d.New - c.cutTo(c.was[d.Name])
	}
	switch {
	case kind == setUp && math.Abs(d.By()) > d.Tolerance:
		r.Verdict = Placed
	case kind == setUp || math.Abs(r.Off) <= (1-CutOff)*d.Tolerance:
	case math.Abs(r.Off) <= d.Tolerance:
		r.Verdict = Measure
		r.Do = "serves if yours is within " + inUnit(d.Tolerance-math.Abs(r.Off), d.Unit) + " of its pattern"
		if kind == bent || kind == curved {
			r.Do = "serves if yours is bent true"
		}
	default:
		r.Verdict, r.Do = mend(kind, d, r.Off)
	}
	if r.Verdict == Fits && math.Abs(d.By()) > d.Tolerance {
		r.Verdict = Placed // it lies elsewhere in the boat, and the wood goes with it
	}
	return r
}

// cutTo is what a piece was cut to by the old edition's sheets: ribs that differ by little
// share the marks of the first of them.
func (c *Comparison) cutTo(m marks.Mark) float64 {
	rib, is := strings.CutPrefix(m.Part, "rib ")
	if !is {
		return m.Value
	}
	for _, g := range c.Old.Bend.Frame.RibGroups {
		if !slices.Contains(g.Names, rib) {
			continue
		}
		if first, has := c.was[marks.Name{Part: "rib " + g.Names[0], Quantity: m.Quantity, Number: m.Number}]; has {
			return first.Value
		}
	}
	return m.Value
}

// oneAlone judges a mark that one edition alone has.
func oneAlone(r Reason, kind rule) Reason {
	gone := math.IsNaN(r.New)
	r.Off = 0
	switch {
	case kind == setUp, gone && (kind == pencil || kind == bent):
		r.Verdict = Placed
	case kind == pencil:
		r.Verdict, r.Do = Rework, "mark it"
	case kind == bent:
		r.Verdict, r.Do = Rework, "steam it again and bend it to the new marks"
	case gone && (kind == holeAt || kind == holeSize):
		r.Verdict, r.Do = Rework, "plug the hole"
	case gone && (kind == slotAt || kind == slotSize || kind == slotLean):
		r.Verdict, r.Do = Rework, "glue a block into the slot"
	case kind == holeAt || kind == holeSize:
		r.Verdict, r.Do = Rework, "bore it"
	case !gone && (kind == slotAt || kind == slotSize || kind == slotLean):
		r.Verdict, r.Do = Rework, "cut the slot"
	default:
		r.Verdict, r.Do = Again, "make it again"
	}
	return r
}

// scarfed judges a scarf that was drawn elsewhere: it may stay where scarfs may lie.
func (c *Comparison) scarfed(r Reason) Reason {
	r.Verdict, r.Off = Placed, 0
	from, cut := c.was[marks.Name{Part: r.Part, Quantity: "scarf from", Number: r.Number}]
	to := c.was[marks.Name{Part: r.Part, Quantity: "scarf to", Number: r.Number}]
	for _, z := range c.New.Bend.Frame.Gunwale.NoScarf {
		if cut && from.Value < z.To && to.Value > z.From {
			r.Verdict, r.Do = Again, "its scarf would lie where the gunwale is weakened"
		}
	}
	return r
}

// outlined judges a sawn outline: what the new one has more cannot be put on.
func (c *Comparison) outlined(r Reason) Reason {
	f := c.fitOf(r.Part, r.Quantity)
	r.Off = f.apart
	switch {
	case f.apart <= (1-CutOff)*sawnTo:
		r.Verdict = Fits
	case f.apart <= sawnTo:
		r.Verdict, r.Do = Measure, "serves if yours is sawn to the line"
	case f.outside <= (1-CutOff)*sawnTo:
		r.Verdict, r.Do = Rework, "saw to the new outline, up to "+inUnit(f.spare, marks.Millimeter)+" off"
	default:
		r.Verdict, r.Do = Again, "the new outline reaches "+inUnit(f.outside, marks.Millimeter)+" past the wood"
	}
	return r
}

// onStem is how far a place on a stem is off once the whole stem has gone to where it
// lies now: along for a place by its distance from midship, up for one by its height.
func (c *Comparison) onStem(d Change) (float64, bool) {
	if !strings.HasSuffix(d.Part, " stem") {
		return 0, false
	}
	along, isAlong := strings.CutSuffix(d.Quantity, " from midship")
	up, isUp := strings.CutSuffix(d.Quantity, " height")
	if !isAlong && !isUp {
		return 0, false
	}
	if isUp {
		along = up
	}
	place := func(all map[marks.Name]marks.Mark) geometry.Point {
		return geometry.Point{X: all[marks.Name{Part: d.Part, Quantity: along + " from midship", Number: d.Number}].Value, Y: all[marks.Name{Part: d.Part, Quantity: along + " height", Number: d.Number}].Value}
	}
	f := c.fitOf(d.Part, Outline)
	off := place(c.is).Sub(f.move.Apply(place(c.was)))
	if isUp {
		return off.Y, true
	}
	return off.X, true
}

// onFloor is how much longer a floor became, told at its fore end, or at the after one where
// that alone moved: it is lashed wherever it lies.
func (c *Comparison) onFloor(d Change) (longer float64, ok bool) {
	if !strings.HasPrefix(d.Part, "floor ") || ruleOf(d.Name) != endPlace {
		return 0, false
	}
	fore := marks.Name{Part: d.Part, Quantity: "fore end"}
	if d.Name != fore && slices.ContainsFunc(c.Changes, func(o Change) bool { return o.Name == fore }) {
		return 0, true
	}
	long := func(all map[marks.Name]marks.Mark) float64 {
		return all[fore].Value - all[marks.Name{Part: d.Part, Quantity: "aft end"}].Value
	}
	return long(c.is) - long(c.was), true
}

// elsewhere is the rib of the new edition that a cut rib would do for as it is.
func (c *Comparison) elsewhere(part string) string {
	var off []string // ribs that it does not do for
	var ribs []string
	for _, m := range c.New.Marks {
		if !strings.HasPrefix(m.Part, "rib ") || m.Part == "rib peg" {
			continue
		}
		if !slices.Contains(ribs, m.Part) {
			ribs = append(ribs, m.Part)
		}
		if ruleOf(m.Name) == setUp {
			continue
		}
		before, there := c.was[marks.Name{Part: part, Quantity: m.Quantity, Number: m.Number}]
		if !there || math.Abs(m.Value-c.cutTo(before)) > (1-CutOff)*min(m.Tolerance, before.Tolerance) {
			off = append(off, m.Part)
		}
	}
	for _, r := range ribs {
		if r != part && !slices.Contains(off, r) {
			return r
		}
	}
	return ""
}

func inUnit(v float64, u marks.Unit) string {
	if u == marks.Radian {
		return fmt.Sprintf("%.1f deg", v*180/math.Pi)
	}
	return fmt.Sprintf("%.1f mm", v)
}
