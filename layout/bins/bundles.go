// Package bins lays out the labels of a course: one for each builder's bin, and one for
// each bundle of sticks that goes into it. They are printed on sheets of labels that stick,
// or on plain paper and cut out.
package bins

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Label is what one label says.
type Label struct {
	Head  string   // whose it is
	Lines []string // what it is on
}

// Of makes the labels of the builders of a pooled plan, in their order: the bin's first, then
// those of its bundles, in the order of the plan. A builder without sticks has
// a bin all the same.
func Of(builders []string, p *cutlist.Pooled, l report.Letters) []Label {
	var out []Label
	for i, name := range builders {
		head := fmt.Sprintf("%d: %s", i+1, name)
		all := bundles(p, i)
		pieces := 0
		for _, b := range all {
			pieces += b.pieces
		}
		out = append(out, Label{head, []string{"Bin", wording.Counted(pieces, "piece") + " in " + wording.Counted(len(all), "bundle"), "Ticked off by: ____________"}})
		for _, b := range all {
			out = append(out, Label{head, b.lines(l)})
		}
	}
	return out
}

// bundle is one builder's sticks of one kind.
type bundle struct {
	kind   string
	sticks []cutlist.Stick
	pieces int
}

// bundles are those of one builder.
func bundles(p *cutlist.Pooled, owner int) []*bundle {
	var out []*bundle
	of := map[string]*bundle{}
	for i, s := range p.Sticks {
		if p.Owners[i] != owner {
			continue
		}
		kind := kindOf(s)
		b := of[kind]
		if b == nil {
			b = &bundle{kind: kind}
			of[kind], out = b, append(out, b)
		}
		b.sticks, b.pieces = append(b.sticks, s), b.pieces+len(p.Cuttings[i].Pieces)
	}
	return out
}

// kindOf is what a stick is bundled as: a part of the frame by its family, others by what
// they are fitted with.
func kindOf(s cutlist.Stick) string {
	switch {
	case s.Own:
		return "fittings"
	case s.Kit != "":
		return s.Kit
	}
	return string(s.Family)
}

// lines say what is in the bundle: how many pieces, their marks, and their wood and section.
func (b *bundle) lines(l report.Letters) []string {
	return []string{
		b.kind + ", " + wording.Counted(b.pieces, "piece"),
		b.marks(),
		b.alike("several woods", func(s cutlist.Stick) string { return s.Species }) + ", " +
			b.alike("several sections", func(s cutlist.Stick) string { return l.Gauge(s.Width) + " x " + l.Gauge(s.Thickness) + " " + l.Unit() }),
	}
}

// marks are those of the bundle's sticks. What is sawn in case another breaks is told apart,
// and a row of three and more by its first and its last.
func (b *bundle) marks() string {
	var out []string
	for rest := b.sticks; len(rest) > 0; {
		n := slices.IndexFunc(rest, func(s cutlist.Stick) bool { return s.Spare != rest[0].Spare })
		if n < 0 {
			n = len(rest)
		}
		if n >= 3 {
			out = append(out, rest[0].Mark+" to "+rest[n-1].Mark)
		} else {
			for _, s := range rest[:n] {
				out = append(out, s.Mark)
			}
		}
		rest = rest[n:]
	}
	return strings.Join(out, ", ")
}

// alike is what all sticks say of themselves, or, where they differ, that they do.
func (b *bundle) alike(differ string, say func(cutlist.Stick) string) string {
	first := say(b.sticks[0])
	if slices.ContainsFunc(b.sticks, func(s cutlist.Stick) bool { return say(s) != first }) {
		return differ
	}
	return first
}
