package compare

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/edition"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// mostDo is how many things to do are told of one piece; more of them say that it is
// made again sooner.
const mostDo = 6

// cut tells what becomes of the pieces that are cut.
func (p page) cut() []report.Block {
	if len(p.Cut) == 0 {
		return nil
	}
	t := report.Titled("").Words("Piece").Names("Verdict").Words("What to do").Noted(fmt.Sprintf(
		"A piece fits where nothing on it moved by more than %s of what it may be off; the rest is for your own cut.", report.Percent(1-edition.CutOff)))
	var fit []string
	for _, j := range p.Cut {
		if j.Verdict == edition.Fits {
			fit = append(fit, j.Name)
			continue
		}
		verdict, do := j.Verdict.String(), p.todo(j)
		if i := slices.IndexFunc(t.Rows, func(row []string) bool { return row[1] == verdict && row[2] == do }); i >= 0 {
			t.Rows[i][0] += ", " + j.Name
			continue
		}
		t.Row(j.Name, verdict, do)
	}
	out := append([]report.Block{report.Section("The parts that are cut")}, t.IfAny()...)
	if len(fit) > 0 {
		out = append(out, report.Say("These fit as they are: %s.", strings.Join(fit, ", ")))
	}
	return out
}

// doing is one thing to do, and on which marks.
type doing struct{ marks, do string }

// todo says what to do with a piece, what is to be done at several marks once.
func (p page) todo(j edition.Judged) string {
	var all []doing
	for _, r := range j.Reasons {
		if r.Verdict == edition.Placed || j.Verdict == edition.Again && r.Verdict != edition.Again {
			continue // nobody mends what is made again
		}
		words := r.Label()
		if r.Part != j.Name {
			words = r.Part + ", " + words
		}
		if i := slices.IndexFunc(all, func(d doing) bool { return d.do == r.Do }); i >= 0 {
			all[i].marks += ", " + words
			continue
		}
		all = append(all, doing{words, r.Do})
	}
	var do []string
	for i, d := range all {
		if i == mostDo {
			do = append(do, fmt.Sprintf("and %s more to do", wording.Counted(len(all)-i, "thing")))
			break
		}
		do = append(do, wording.Clip(d.marks, mostNamed)+": "+d.do)
	}
	if j.Instead != "" {
		do = append(do, "as it is it would do for "+j.Instead)
	}
	if len(do) == 0 && j.Verdict == edition.Placed {
		return p.placed(j)
	}
	return strings.Join(do, "; ")
}

// mostNamed is how many letters of the marks that one thing is done at are told.
const mostNamed = 120

// placed says where a piece that fits is set up now, by what moved most.
func (p page) placed(j edition.Judged) string {
	for _, r := range j.Reasons {
		if r.Moved() {
			return fmt.Sprintf("%s is %s, was %s", r.Label(), p.value(r.Change, r.New), p.value(r.Change, r.Old))
		}
	}
	return "its fittings lie elsewhere"
}

// kept tells of the edition that keeps the pieces.
func (p page) kept() []report.Block {
	k := p.Kept
	if k == nil {
		return nil
	}
	out := []report.Block{report.Section("An edition that keeps them"), report.Say(
		"Edition %s is as near to edition %s as the parts that are cut let it be; all of them fit it as they are. It is written as a design of its own.", k.Design.EditionName(), p.New.Design.EditionName())}
	t := report.Titled("").Words("Key", "Cut from", "New", "Comes to", "Held by")
	for _, d := range k.Takes {
		t.Row(d.Key, wording.Clip(d.Old, 40), wording.Clip(d.New, 40), wording.Clip(d.Value, 40), d.Held)
	}
	for _, d := range k.Leaves {
		t.Row(d.Key, wording.Clip(d.Old, 40), wording.Clip(d.New, 40), wording.Clip(d.Old, 40), d.Held)
	}
	return append(out, t)
}
