package book

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// step is one part of the order of work.
type step struct {
	name  string
	work  func(hours.Work) bool // the operations that are done in it
	wood  []cutlist.Family      // of the frame, that is fitted in it
	bare  bool                  // it fits what the fittings' gunwale blocks are made of
	kit   *kit.Kit              // of which it fits all pieces and uses all that is bought
	buys  []string              // keys of the bill that it opens, where the boat has them
	do    []string              // one act each, read aloud one by one
	tools string
	dry   string
	check string // how to see that it is right
	wrong string // what to do when it is not
	who   string // who says the caution
	care  string
}

// order is told last: its steps name the chapters that have drawings for them.
func (w *writer) order() {
	steps := w.steps()
	w.chapter(OrderOfWork)
	w.say("Read a step to its end before you begin it. Times are for this boat and %s: each is the sum of the step's operations in the chapter Hours. Drying times are common practice for a heated workshop; what the maker says comes first.", w.Skill.Who())
	for _, s := range steps {
		w.section(w.named(s))
		if s.care != "" {
			w.warn(s.care, s.who)
		}
		w.add(report.List{First: 1, Items: s.do})
		t := report.Titled("").Names("").Words("")
		for _, row := range [][2]string{{"Wood", w.marksOf(s)}, {"To hand", w.bought(s)}, {"Tools", s.tools}, {"Drying", s.dry}, {"Check", s.check}, {"If not", s.wrong}} {
			if row[1] != "" {
				t.Row(row[0], row[1])
			}
		}
		w.add(t)
	}
}

// steps are in the order in which they can be done.
func (w *writer) steps() []step {
	all := slices.Concat(w.woodSteps(), w.frameSteps(), w.coverSteps())
	for _, k := range w.Afloat.Fittings {
		all = append(all, w.fittingStep(k))
	}
	all = append(all, w.firstWater())
	for _, k := range w.Outfits.Kits() {
		all = append(all, w.outfitStep(k))
	}
	return slices.DeleteFunc(all, func(s step) bool { return len(s.do) == 0 })
}

// named heads a step with its time.
func (w *writer) named(s step) string {
	sum := hours.Hours(w.workOf(s), "", w.Skill)
	if sum < 0.05 {
		return wording.Capital(s.name)
	}
	return fmt.Sprintf("%s, %.1f h", wording.Capital(s.name), sum)
}

// workOf lists the operations of a step.
func (w *writer) workOf(s step) (out []hours.Work) {
	for _, k := range w.Work {
		if s.work != nil && s.work(k) {
			out = append(out, k)
		}
	}
	return out
}

// sticksOf lists the sticks that a step fits.
func (w *writer) sticksOf(s step) (out []cutlist.Stick) {
	for _, k := range w.Plan.Sticks {
		block := boredBare(k)
		if k.Kit == "" && slices.Contains(s.wood, k.Family) || s.kit != nil && k.Kit == s.kit.Name && !block || s.bare && block {
			out = append(out, k)
		}
	}
	return out
}

// itemsOf lists what is bought that a step uses.
func (w *writer) itemsOf(s step) (out []materials.Item) {
	for _, k := range w.Needs.Items {
		of := func(t kit.Thing) bool { return t.Key == k.Key }
		if slices.Contains(s.buys, k.Key) || s.kit != nil && slices.ContainsFunc(s.kit.Things, of) {
			out = append(out, k)
		}
	}
	return out
}

// stage takes the operations of a stage.
func stage(of hours.Stage) func(hours.Work) bool {
	return func(k hours.Work) bool { return k.Stage == of }
}

// marksOf letters the sticks of a step, the first and the last of those of a family that follow
// each other in the cut list.
func (w *writer) marksOf(s step) string {
	var runs [][]cutlist.Stick
	follows := 0
	for _, k := range w.sticksOf(s) {
		at := slices.IndexFunc(w.Plan.Sticks, func(o cutlist.Stick) bool { return o.Mark == k.Mark })
		n := len(runs)
		next := n > 0 && runs[n-1][0].Family == k.Family && at == follows
		if follows = at + 1; next {
			runs[n-1] = append(runs[n-1], k)
		} else {
			runs = append(runs, []cutlist.Stick{k})
		}
	}
	return wording.List(runs, func(r []cutlist.Stick) string {
		switch n := len(r); n {
		case 1:
			return r[0].Mark
		case 2:
			return r[0].Mark + " and " + r[1].Mark
		default:
			return fmt.Sprintf("%s to %s (%d)", r[0].Mark, r[n-1].Mark, n)
		}
	})
}

// bought letters what of the shopping list a step opens. A kit's things go by its own names:
// one line of the list may be bought for several.
func (w *writer) bought(s step) string {
	var names []string
	for _, i := range w.itemsOf(s) {
		if slices.Contains(s.buys, i.Key) {
			names = append(names, i.Name)
		}
	}
	if s.kit != nil {
		for _, t := range s.kit.Things {
			if !slices.Contains(names, t.Name) {
				names = append(names, t.Name)
			}
		}
	}
	return strings.Join(names, "; ")
}

// acts leaves out what a boat has no use for.
func acts(all ...string) []string {
	return slices.DeleteFunc(all, func(s string) bool { return s == "" })
}
