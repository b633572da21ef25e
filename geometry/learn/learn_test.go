package learn

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/learn/feedback"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
)

// ribs is a build whose ribs spring back so, in percent.
func ribs(name string, percent ...float64) *feedback.Build {
	b := &feedback.Build{Name: name, Wood: "white ash", Stock: "green"}
	for i, v := range percent {
		b.Lines = append(b.Lines, feedback.Line{What: feedback.Springback, Of: fmt.Sprintf("F%d", i+1), Drawn: 0.08, Found: v / 100, At: i + 2})
	}
	return b
}

// TestWorth: what was counted on is worth five builds, or as many as is said: with it 8 %
// and three boards at 12, 13 and 14, both together are (3 x 13 + 5 x 8)/8. Boards count, and
// not their ribs.
func TestWorth(t *testing.T) {
	for _, n := range []int{2, 9} {
		var all []*feedback.Build
		for i, v := range []float64{12, 13, 14} {
			var percent []float64
			for k := range n {
				percent = append(percent, v+0.1*float64(k%2*2-1)*float64(k/2*2/max(n-1, 1)+1)/2)
			}
			all = append(all, ribs(fmt.Sprint(i), percent...))
		}
		for worth, share := range map[float64]float64{5: 3.0 / 8, 0: 1, 3: 0.5} {
			p := Priors{feedback.Springback: worth}
			if worth == UsualBuilds {
				p = nil
			}
			k := Of(all, p).Quantities[0].Kinds[0]
			if k.Units != 3 || k.Readings != 3*n {
				t.Errorf("%d boards of %d ribs", k.Units, k.Readings)
			}
			if want := k.Before + share*(k.Says.Is-k.Before); math.Abs(k.Now-want) > 1e-12 || math.Abs(k.Says.Is-0.13) > 2e-3 || k.Doubt {
				t.Errorf("%d ribs a board, worth %g: %.4f says, %.4f together, want %.4f", n, worth, k.Says.Is, k.Now, want)
			}
		}
	}
}

// TestDoubt: builds that flatly contradict what was counted on are believed sooner, and it
// is said.
func TestDoubt(t *testing.T) {
	var all []*feedback.Build
	for i := range 12 {
		all = append(all, ribs(fmt.Sprint(i), 24+float64(i%3), 25+float64(i%3)))
	}
	k := Of(all, nil).Quantities[0].Kinds[0]
	if !k.Doubt || !(k.Worth < 5) || !(k.Now > 0.21) {
		t.Errorf("doubt %v, worth %.2f, together %.3f", k.Doubt, k.Worth, k.Now)
	}
}

// TestSharedBoard: ribs of one board that two builders share are one board.
func TestSharedBoard(t *testing.T) {
	a, b, c := ribs("a", 10, 11), ribs("b", 10, 11.5), ribs("c", 13, 12)
	a.Board, b.Board = "1", "1"
	if q := Of([]*feedback.Build{a, b, c}, nil).Quantities[0]; q.Kinds[0].Units != 2 {
		t.Errorf("%d boards, want 2", q.Kinds[0].Units)
	}
	b.Wood = "red oak" // another wood is another board
	if q := Of([]*feedback.Build{a, b, c}, nil).Quantities[0]; q.Units != 3 {
		t.Errorf("%d boards, want 3", q.Units)
	}
}

// TestOdd: one rib in a hundred written wrong is named with its line and hardly moves the
// mean; a board unlike all others is named as one.
func TestOdd(t *testing.T) {
	build := func(odd, unlike float64) *Report {
		var all []*feedback.Build
		for i := range 12 {
			v := 9 + 0.5*float64(i%4)
			if i == 7 {
				v += unlike
			}
			all = append(all, ribs(fmt.Sprintf("b%d", i), v-1, v+0.4, v+1, v-0.6, v+0.2))
		}
		all[3].Lines[2].Found += odd / 100
		return Of(all, nil)
	}
	clean := build(0, 0).Quantities[0]
	if len(clean.Odd)+len(clean.Unlike) != 0 {
		t.Errorf("a clean course has odd ones: %v %v", clean.Odd, clean.Unlike)
	}
	q := build(20, 0).Quantities[0]
	if len(q.Odd) != 1 || q.Odd[0].Build.Name != "b3" || q.Odd[0].Line.At != 4 {
		t.Fatalf("odd: %+v", q.Odd)
	}
	if moved := q.Kinds[0].Says.Is - clean.Kinds[0].Says.Is; math.Abs(moved) > 0.0015 || moved == 0 {
		t.Errorf("the mean moves by %.4f; a rib that counts in full moves it by 0.0033", moved)
	}
	q = build(0, 15).Quantities[0]
	if len(q.Unlike) != 1 || q.Unlike[0].Build.Name != "b7" || len(q.Odd) != 0 {
		t.Errorf("unlike: %+v, odd %+v", q.Unlike, q.Odd)
	}
}

// TestSlip: half of a pair of gunwales on the scale is named for what it is.
func TestSlip(t *testing.T) {
	var all []*feedback.Build
	for i := range 8 {
		b := &feedback.Build{Name: fmt.Sprint(i), Wood: "white ash", Stock: "green"}
		for k, part := range feedback.Parts() {
			b.Lines = append(b.Lines, feedback.Line{What: feedback.Weight, Of: part, Drawn: 2, Found: 2 * (1 + 0.01*float64((3*i+5*k)%7-3)), At: k + 2})
		}
		all = append(all, b)
	}
	all[2].Lines[0].Found = 1.02
	q := Of(all, nil).Find(feedback.Weight)
	if len(q.Odd) != 1 || q.Odd[0].Slip != "one side alone" || q.Odd[0].Line.Of != "gunwales" {
		t.Errorf("%+v", q.Odd)
	}
}

// TestLittle: one build, builds that are all the same, and none at all are no fault, and
// claim no interval.
func TestLittle(t *testing.T) {
	for name, all := range map[string][]*feedback.Build{
		"one": {ribs("a", 10, 11, 12)}, "one rib": {ribs("a", 10)}, "the same": {ribs("a", 10), ribs("b", 10), ribs("c", 10)}, "none": nil, "nothing": {ribs("a")},
	} {
		r := Of(all, nil)
		for _, q := range r.Quantities {
			for _, k := range q.Kinds {
				if !math.IsInf(k.Says.Low, -1) || math.IsNaN(k.Now) || math.IsNaN(k.Says.Is) {
					t.Errorf("%s: %+v", name, k)
				}
			}
		}
		r.Propose()
	}
}

// TestPropose: the lines are read by the family that they are proposed for, and stand in
// place of its own; figures that stay within what they are told to propose nothing.
func TestPropose(t *testing.T) {
	var same, more []*feedback.Build
	for i := range 12 {
		for _, v := range []float64{8, 14} {
			b := ribs(fmt.Sprint(i, v), v-0.5+0.1*float64(i%4), v+0.2+0.1*float64(i%3))
			b.Skill = hours.Average
			for k, s := range hours.Stages()[:4] {
				slow := hours.Average.Factor()
				if v > 8 {
					slow *= 1 + 0.3*float64(k)
				}
				b.Lines = append(b.Lines, feedback.Line{What: feedback.Hours, Of: string(s), Drawn: 5, Found: 5 * slow * (1 + 0.02*float64((i+k)%3-1))})
			}
			broken := 0.0
			for k := range 10 {
				if broken = 0; v > 8 && k < 4 {
					broken = 1
				}
				b.Lines = append(b.Lines, feedback.Line{What: feedback.Rib, Of: fmt.Sprint(k), Drawn: 14 + float64(k), Found: broken})
			}
			if v > 8 {
				more = append(more, b)
			} else {
				same = append(same, b)
			}
		}
	}
	for _, p := range Of(same, nil).Propose() {
		if p.Name != "ribs_bend" { // nothing broke, which is news
			t.Errorf("proposed where nothing is new: %s", p.Line)
		}
	}
	all := Of(more, nil).Propose()
	seen := map[string]bool{}
	for _, p := range all {
		seen[p.Name] = true
		if p.Why == "" || !strings.Contains(p.Evidence, "build") && !strings.Contains(p.Evidence, "board") {
			t.Errorf("no evidence: %+v", p)
		}
	}
	for _, name := range []string{"bending.springback", "ribs_bend", "skill average"} {
		if !seen[name] {
			t.Errorf("nothing is proposed for %s: %v", name, seen)
		}
	}
	own := formula.Source{Name: "own.family", Text: "use \"pack\"\nbending.springback = 9 %   # mine\n   # and more of it\ncheck ribs_bend = tightest_rib >= 12\n"}
	for _, c := range []struct {
		src     formula.Source
		shipped bool
	}{{formula.Source{Name: "solo"}, true}, {own, false}} {
		text := Rewrite(c.src, c.shipped, all)
		f, err := family.Read(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text.Text)
		}
		if strings.Contains(text.Text, "9 %") || strings.Contains(text.Text, ">= 12\n") || strings.Count(text.Text, "check ribs_bend") != 1 || !f.Program.HasFormula("bending.springback") {
			t.Errorf("lines of the family stand beside those proposed:\n%s", text.Text)
		}
	}
}

// TestLog: a log is written on, and what is no log is refused.
func TestLog(t *testing.T) {
	all := []Proposal{{Family, "a", "a = 1", "because", `12 boards say "so", and more`}}
	var first, second strings.Builder
	if err := WriteLog(&first, nil, "2026-11-26", all); err != nil {
		t.Fatal(err)
	}
	if err := CheckLog([]byte(first.String()), "x"); err != nil {
		t.Error(err)
	}
	if err := WriteLog(&second, []byte(strings.TrimSuffix(first.String(), "\n")), "2026-12-01", all); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(second.String(), first.String()) || strings.Count(second.String(), "\n") != 3 {
		t.Errorf("the log is\n%s", second.String())
	}
	for _, text := range []string{"", "rib,beam\n", "date,line\n"} {
		if CheckLog([]byte(text), "x") == nil {
			t.Errorf("%q is a log", text)
		}
	}
}
