package trial

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/pushed"
	"ribwright/layout/report"
)

// PushedIn tells what the ribs do that are only pushed into their mortises, what comes of
// it on the water, and what hands must add.
func PushedIn(b *bend.Report, loose *afloat.Loose, l report.Letters) []report.Block {
	out := []report.Block{report.Section("If nobody works the bilges")}
	worst := worstLoose(b)
	if worst < 0 {
		return append(out, report.Say("No rib of this boat finds its place by itself: bend every one by hand to its marks while it is hot, or on a form."))
	}
	out = append(out, report.Say("A rib that is only pushed into its mortises and down on the keel does not keep to its marks. It springs into one even curve. Of two figures the first is with heads that turn freely in loose mortises, the second with heads held square in tight ones; a flare under 0 leans inward."))
	near := slices.IndexFunc(b.Frame.Ribs, func(r frame.Rib) bool { return r.Name == b.Frame.Nearest(0).Name })
	ribs := []int{near, worst}
	if near == worst || b.Ribs[near].Pushed.Why != nil {
		ribs = ribs[1:]
	}
	items := make([]string, len(ribs))
	for k, i := range ribs {
		items[k] = strays(b, i, l)
	}
	return append(out, report.List{Items: items}, onWater(loose, l),
		report.Say("Tight mortises alone do not cure it. Bend both bilges by hand while the rib is hot, a little past their marks, before it goes in; then press it to its line and let it set under a batten tied along the bilges. A bilge that will not stay wants a form."))
}

// onWater says how the boat with such ribs lies.
func onWater(o *afloat.Loose, l report.Letters) report.Paragraph {
	for _, v := range []afloat.Lying{o.Drawn, o.Hinged, o.Clamped} {
		if v.Fault != nil {
			return report.Say("What comes of it on the water is not known: %v.", v.Fault)
		}
	}
	d, h, c := o.Drawn.Rest, o.Hinged.Rest, o.Clamped.Rest
	figure := func(drawn, hinged, clamped float64) string {
		return fmt.Sprintf("%s %s where %s is drawn", span(l.Whole(hinged), l.Whole(clamped)), l.Unit(), l.Whole(drawn))
	}
	words := fmt.Sprintf("With all ribs so and the people and gear of the design aboard, GM is %s, the waterline's breadth %s, the draft %s.",
		figure(d.GM, h.GM, c.GM), figure(d.BWL, h.BWL, c.BWL), figure(d.Draft, h.Draft, c.Draft))
	switch {
	case math.Min(h.GM, c.GM) <= 0:
		words += " The boat would not stay upright."
	case math.Max(h.GM, c.GM) < d.GM:
		words += " With less GM the boat is less steady."
	}
	return report.Paragraph{Words: words}
}

// strays says how far off a rib stands on either side, and how its heads lean.
func strays(b *bend.Report, i int, l report.Letters) string {
	r, wanted := b.Ribs[i], b.Frame.Ribs[i].Section.Shape.Flare
	h, c := r.Pushed.Hinged, r.Pushed.Clamped
	off := func(a, b pushed.Apart) string {
		return fmt.Sprintf("%s %s", span(l.Whole(a.By), l.Whole(b.By)), l.Unit())
	}
	return fmt.Sprintf("Rib %s: %s outside its line (%s), %s inside it (%s), flare %s deg where %s is wanted.", r.Name,
		off(h.Out, c.Out), where(r, h.Out, c.Out), off(h.In, c.In), where(r, h.In, c.In),
		span(wholeDegrees(h.Flare), wholeDegrees(c.Flare)), wholeDegrees(wanted))
}

func wholeDegrees(a float64) string { return measure.MM(a*180/math.Pi, 0) }

// span letters what lies between two figures, one where they are alike.
func span(a, b string) string {
	if a == b {
		return a
	}
	return a + " to " + b
}

// worstLoose is the rib that stands farthest off when it is only pushed in, the first of
// equals; -1 where none finds a rest.
func worstLoose(b *bend.Report) int {
	worst, most := -1, -1.0
	for i, r := range b.Ribs {
		if off := math.Max(r.Pushed.Hinged.Off().By, r.Pushed.Clamped.Off().By); r.Pushed.Why == nil && off > most+0.05 {
			worst, most = i, off
		}
	}
	return worst
}

// LooseRibs lists what each rib does that is only pushed in.
func LooseRibs(b *bend.Report, l report.Letters) report.Table {
	t := report.Titled("Ribs only pushed in, heads loose to heads tight; lengths in "+l.Unit()).Names("Rib").
		Numbers("Flare wanted, deg", "Flare, deg", "Outside by").Words("Where").Numbers("Inside by").Words("Where").Numbers("Least radius", "Stringers move up to")
	for i, r := range b.Ribs {
		wanted := wholeDegrees(b.Frame.Ribs[i].Section.Shape.Flare)
		if r.Pushed.Why != nil {
			t.Row(r.Name, wanted, "-", "-", "no even curve", "-", "-", "-", "-")
			continue
		}
		h, c := r.Pushed.Hinged, r.Pushed.Clamped
		both := func(of func(pushed.Head) float64) string { return span(l.Whole(of(h)), l.Whole(of(c))) }
		t.Row(r.Name, wanted, span(wholeDegrees(h.Flare), wholeDegrees(c.Flare)),
			both(func(h pushed.Head) float64 { return h.Out.By }), where(r, h.Out, c.Out),
			both(func(h pushed.Head) float64 { return h.In.By }), where(r, h.In, c.In),
			both(func(h pushed.Head) float64 { return h.Least }), both(farthest))
	}
	return t.Outward(b.Frame.Stations()).Noted("Loose heads turn in their mortises, tight ones stand as the section wants within 2 deg. Outside and inside are measured square to the rib's line at mid-thickness. For wood that springs evenly; ribs bent very hot give a little more where they turn most.")
}

// where names one or two parts of a rib.
func where(r bend.Rib, a, b pushed.Apart) string {
	all := []string{r.Where(a), r.Where(b)}
	return strings.Join(slices.Compact(all), ", ")
}

func farthest(h pushed.Head) float64 { return slices.Max(append([]float64{0}, h.Moved...)) }
