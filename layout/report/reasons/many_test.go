package reasons

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/layout/report"
)

// TestSweep tells of each step, of a step without a boat why, and draws what there is.
func TestSweep(t *testing.T) {
	f, err := family.Shipped("solo")
	if err != nil {
		t.Fatal(err)
	}
	s, err := sizing.ParseSweep("beam=700mm..720mm/20mm", f.Program)
	if err != nil {
		t.Fatal(err)
	}
	values := map[string]float64{"length": 4300, "depth": 300, "draft": 95.26, "freeboard": 205, "gm": 80, "boat_weight": 15.25, "effort": 9500}
	rows := []sizing.Row{{At: 700, Values: values, Failed: []string{"stable", "room"}}, {At: 720, Fault: "it sinks"}}
	blocks := Sweep(f, s, rows)
	tab := blocks[0].(report.Table)
	if got, want := strings.Join(tab.Rows[0], "|"), "700|4300|300|95.3|205|80|15.2|9.5|stable, room"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if got := tab.Rows[1]; got[0] != "720" || tab.Columns[0].Head != "beam mm" || got[3] != "-" || got[len(got)-1] != "no boat: it sinks" {
		t.Errorf("%q", got)
	}
	if f, ok := blocks[1].(report.Figure); !ok || len(f.Drawing.Strokes) == 0 {
		t.Errorf("no figure: %+v", blocks[1])
	}
	if blocks := Sweep(f, s, rows[1:]); len(blocks) != 1 {
		t.Errorf("no boat at all, and yet a figure: %v", blocks)
	}
}

func TestDerivation(t *testing.T) {
	tab := Derivation([]formula.Step{
		{Name: "beam", Value: "712 mm", Formula: "0.9 * reach", Reason: "narrow", Where: "own.family:2"},
		{Depth: 1, Name: "reach", Value: "791 mm", Formula: "arms", Where: "own.family:3"},
		{Depth: 2, Name: "reach", Value: "791 mm", Formula: "arms", Again: true},
	})[0].(report.Table)
	want := [][]string{{"beam", "712 mm = 0.9 * reach [own.family:2] narrow"}, {"·reach", "791 mm = arms [own.family:3]"}, {"··reach", "791 mm, as above"}}
	if fmt.Sprint(tab.Rows) != fmt.Sprint(want) {
		t.Errorf("got  %q\nwant %q", tab.Rows, want)
	}
}

func TestSearch(t *testing.T) {
	a := &sizing.Answer{Tried: 40, AtEdge: []string{"length is at its least, 2900 mm"}, Obstacles: []sizing.Obstacle{{Limit: "draft<=95 mm", Step: "10 mm more", Gain: "30 mm shorter"}}}
	words := fmt.Sprint(Search(a, sizing.Easiest, []string{"draft<=95mm", "gm>=90mm"}))
	for _, s := range []string{"the easiest boat that meets draft<=95mm, gm>=90mm; 40 boats were tried", "length is at its least", "draft<=95 mm stands in the way: 10 mm more would make it 30 mm shorter"} {
		if !strings.Contains(words, s) {
			t.Errorf("%q is nowhere in %s", s, words)
		}
	}
	if words := fmt.Sprint(Search(&sizing.Answer{}, sizing.Smallest, nil)); !strings.Contains(words, "No target stands in the way") {
		t.Error(words)
	}
}

// TestClass counts the rows of a class and names those that ask for attention, but no
// more of them than a screen holds.
func TestClass(t *testing.T) {
	all := []sizing.Outcome{{Line: 2, Name: "Ann", Status: sizing.Made, Folder: "ann"}, {Line: 3, Name: "Bob", Status: sizing.Kept, Folder: "bob", ChecksFailed: []string{"stable", "room"}},
		{Line: 4, Name: "Cid", Status: sizing.Failed, Why: "has no weight"}, {Line: 5, Name: "Dan", Status: sizing.NotDone, Why: "interrupted"}}
	blocks := Class(all)
	if got, want := blocks[0].(report.Paragraph).Words, "4 builders: 1 made, 1 kept from before, 1 failed, 1 not done."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := fmt.Sprint(blocks[1].(report.Table).Rows, blocks[2].(report.Table).Rows), "[[3 Bob stable, room]] [[4 Cid has no weight] [5 Dan interrupted]]"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	many := make([]sizing.Outcome, 30)
	for i := range many {
		many[i] = sizing.Outcome{Status: sizing.Failed, Why: "nothing is known"}
	}
	if tab := Class(many)[1].(report.Table); len(tab.Rows) != 20 || tab.Note != "and 10 more; the summary has all" {
		t.Errorf("%d rows and %q", len(tab.Rows), tab.Note)
	}
}
