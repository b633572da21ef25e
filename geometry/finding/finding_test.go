package finding

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// all lists the verdicts from mild to grave, as the words are printed, with whether
// each passes and whether it is a danger. Typed here a second time on purpose.
var all = []struct {
	v              Verdict
	word           string
	passes, danger bool
}{
	{Noted, "noted", true, false}, {Holds, "holds", true, false}, {Dry, "bends dry", true, false},
	{Eases, "dry, eases", true, false}, {Steam, "steam", true, false}, {Pick, "steam, pick stock", true, false},
	{Strap, "needs a strap", true, false}, {Caution, "caution", true, true}, {NoStrap, "needs a strap", false, false},
	{Missed, "not as asked", false, false}, {TooTight, "too tight", false, false}, {Unfit, "does not fit", false, true},
	{Weak, "too weak", false, true}, {Unsafe, "unsafe", false, true},
}

// TestVerdicts: the set is closed and ordered, what passes lies before what does not,
// and a verdict that is none neither passes nor is taken lightly.
func TestVerdicts(t *testing.T) {
	for i, c := range all {
		if c.v != Verdict(i) {
			t.Errorf("%s has the place %d, want %d", c.word, c.v, i)
		}
		if c.v.String() != c.word || c.v.Passes() != c.passes || c.v.Danger() != c.danger {
			t.Errorf("%d: %q, passes %v, danger %v; want %+v", c.v, c.v, c.v.Passes(), c.v.Danger(), c)
		}
		if i > 0 && c.passes && !all[i-1].passes {
			t.Errorf("%s passes and is graver than %s, which does not", c.word, all[i-1].word)
		}
	}
	for _, v := range []Verdict{-1, Verdict(len(all))} {
		if v.String() != "unknown" || v.Passes() || !v.Danger() {
			t.Errorf("%d: %q, passes %v, danger %v", v, v, v.Passes(), v.Danger())
		}
	}
}

func abouts(l List) string {
	var out []string
	for _, f := range l {
		out = append(out, f.About)
	}
	return strings.Join(out, " ")
}

// TestDangersFirst: dangers come first, both kinds keep their order, and the list that
// was made stays as it was.
func TestDangersFirst(t *testing.T) {
	var l List
	l.Say("a", Practice, "it is %d mm", 3)
	l.Warn("b", Law, "ask")
	l.Judge(Missed, "c", Estimate, "too low")
	l.Judge(Weak, "d", Estimate, "breaks")
	l.Judge(Caution, "e", Estimate, "mind")
	if got := abouts(l.Dangers()) + "|" + abouts(l.Others()) + "|" + abouts(l.Sorted()) + "|" + abouts(l); got != "b d e|a c|b d e a c|a b c d e" {
		t.Error(got)
	}
	if f := l[0]; f.Text != "it is 3 mm" || f.Standing != Practice || f.Verdict != Noted {
		t.Errorf("%+v", f)
	}
	if f := l[1]; f.Verdict != Caution {
		t.Errorf("%+v", f)
	}
	if got := List(nil).Sorted(); len(got) != 0 {
		t.Errorf("nothing gives %v", got)
	}
}

// TestPasses: a list passes when all of it does; facts and cautions do, and no list.
func TestPasses(t *testing.T) {
	var l List
	if !l.Passes() {
		t.Error("nothing does not pass")
	}
	l.Say("a", Practice, "fact")
	l.Warn("b", Practice, "danger")
	if !l.Passes() {
		t.Error("a fact and a caution do not pass")
	}
	for _, c := range all {
		if got := append(slices.Clone(l), Finding{Verdict: c.v}).Passes(); got != c.passes {
			t.Errorf("with %s: %v", c.word, got)
		}
	}
}

// TestMargin by hand: 12 for at least 10 has a fifth to spare, a stress of 40 for at
// most 50 a quarter of itself; past the limit it is negative, whatever the sign of the
// figures.
func TestMargin(t *testing.T) {
	for _, c := range []struct {
		m    Measure
		want float64
	}{
		{Measure{}, 0}, {Measure{Value: 12, Limit: 10, Unit: "mm"}, 0.2}, {Measure{Value: 5, Limit: 10}, -0.5},
		{Measure{Value: 40, Limit: 50, AtMost: true}, 0.25}, {Measure{Value: 80, Limit: 40, AtMost: true}, -0.5},
		{Measure{Value: -5, Limit: -10}, 0.5}, {Measure{Value: -20, Limit: -10}, -1}, {Measure{Value: -5, Limit: -2, AtMost: true}, 0.6},
		{Measure{Value: math.Inf(1), Limit: 10}, math.Inf(1)}, {Measure{Value: 0, Limit: 10, AtMost: true}, math.Inf(1)},
	} {
		if got := c.m.Margin(); got != c.want && !(math.Abs(got-c.want) < 1e-12) {
			t.Errorf("%+v: %v, want %v", c.m, got, c.want)
		}
	}
	if (Measure{}).IsSet() || !(Measure{Unit: "mm"}).IsSet() {
		t.Error("a measure without anything is set, or one with a unit is not")
	}
}

// TestString: a text speaks for itself, else verdict and figures do, and no cure is lost.
func TestString(t *testing.T) {
	for _, c := range []struct {
		f    Finding
		want string
	}{
		{Finding{About: "trim", Text: "floats level"}, "trim: floats level"},
		{Finding{About: "trim", Text: "by the bow; packs moved aft would level it", Cure: "packs moved aft"}, "trim: by the bow; packs moved aft would level it"},
		{Finding{About: "trim", Text: "by the bow", Cure: "packs moved aft"}, "trim: by the bow; packs moved aft"},
		{Finding{About: "pegs", Verdict: Holds, Measure: Measure{Value: 653.4, Limit: 1304, Unit: "N", AtMost: true}}, "pegs: holds, 653 N, at most 1300 N"},
		{Finding{About: "rib F3", Verdict: NoStrap, Measure: Measure{Value: 4.5, Limit: 13, Unit: "radius/thickness"}, Cure: "a strap"}, "rib F3: needs a strap, radius over thickness 4.5, at least 13; a strap"},
		{Finding{About: "keel", Verdict: Holds}, "keel: holds"},
	} {
		if got := c.f.String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestStandings holds the words that are printed.
func TestStandings(t *testing.T) {
	got := fmt.Sprint([]Standing{Arithmetic, Practice, Forum, Borrowed, Estimate, Law, Compared, Designs, Handbook, Common, Memory, Measured})
	if want := "[arithmetic practice practice, forum grade borrowed yardstick, not a rule for canoes estimate law, as read; local law comes first comparison only comparison between designs only handbook common practice from memory measured]"; got != want {
		t.Error(got)
	}
}

// TestInside: a range takes half a unit at both ends.
func TestInside(t *testing.T) {
	r := Range{Low: 10, High: 20}
	for v, want := range map[float64]bool{9.4: false, 9.5: true, 15: true, 20.5: true, 20.6: false} {
		if r.Value = v; r.Inside() != want {
			t.Errorf("%v: %v", v, !want)
		}
	}
}
