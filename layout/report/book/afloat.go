package book

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
	"ribwright/layout/figure"
	"ribwright/layout/report"
	"ribwright/layout/report/trial"
)

func (w *writer) afloat() {
	w.chapter("On the water")
	r := w.Trial
	if r == nil {
		w.warn("With the people and gear of the design the boat finds no rest: "+w.NoTrial, "arithmetic of this design")
		return
	}
	w.add(trial.Conditions(r), trial.Weights(r, w.Letters, w.Cell), w.guessed(), trial.AtRest(r, w.Letters), trial.Standing(r.Standing, len(r.Boat.Crew)))
	if r.Fault != nil {
		w.warn("With the people and gear of the design it does not stay upright: "+r.Fault.Text+". The figures are those of the boat held upright.", "arithmetic of this design")
	}
	w.section("What to make of it")
	w.add(report.Findings{List: slices.DeleteFunc(slices.Clone(r.Findings), w.cautioned)})
	w.section("Curves")
	for _, p := range figure.AfloatPlots(r, w.Letters.Units) {
		w.add(p.Block())
	}
	w.add(trial.Swamping())
}

// cautioned reports whether a chapter before has a finding as a caution: it is told once.
func (w *writer) cautioned(f finding.Finding) bool {
	return slices.ContainsFunc(w.book.Blocks, func(b report.Block) bool {
		c, ok := b.(report.Caution)
		return ok && strings.HasPrefix(c.Words, wording.Capital(f.About)+": "+f.Text)
	})
}

func (w *writer) balance() {
	w.chapter("Frame balance")
	held := trial.Balance{Report: w.Bend, Without: w.Without, Trials: w.Trials, Miss: w.Miss}
	w.add(held.Balanced()...)
	w.add(trial.AtRestGunwales(w.Bend, w.Letters))
	if len(w.Frame.Thwarts) > 0 {
		w.add(held.Forces(w.Letters))
	}
	w.section("Taking them out")
	for _, t := range w.Trials {
		d, factor := figure.BalanceTrial(w.Bend.Boat, w.Without, t, w.Miss, 165)
		d = d.Said(func(words string) string {
			if force, err := strconv.Atoi(words); err == nil {
				return w.Push(float64(force))
			}
			return words
		})
		w.add(report.Figure{Drawing: d, Caption: fmt.Sprintf("Gunwales from above, bow to the right: dashed with all members in, solid without %s. Changes of shape are exaggerated %.0f times; forces in %s, + a strut, - a tie; ticks outside the gunwales are the ribs' push.", w.Without, factor, report.Either(w.Letters.Units, "newtons", "pounds")),
			About: "Both gunwales from above before and after the cross pieces are taken out, with the force in each."})
	}
	w.add(held.Promised(w.Letters)...)
	w.add(trial.HowTrue(w.Hands, w.Bend, w.Letters)...)
	w.section("What the wood is asked for")
	w.add(report.Findings{List: w.Bend.Findings, Judged: true,
		Note: "Radius/thickness: more is easier. N/mm2 is a stress: less is easier. Limits of steamed bends are from memory: bend one rib first. \"Dry, eases\": it bends dry and gives up some of its spring. \"Pick stock\": straight grain and no knots. Names in brackets are lines of the design file."})
}
