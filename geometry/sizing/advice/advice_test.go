package advice

import (
	"strings"
	"testing"

	"ribwright/geometry/finding"
)

// TestRank: what cannot be built comes last, the smaller boat first for a beginner alone,
// and each is praised for what it alone has least of.
func TestRank(t *testing.T) {
	all := []Boat{
		{Family: "none", NoBoat: "arms are too short"},
		{Family: "tender", Hours: 1, Cost: 9, Mass: 9, Length: 9, Hard: []string{"a", "b"}, Missed: finding.List{{About: "afloat", Text: "it rolls"}}},
		{Family: "tandem", Hours: 50, Cost: 9, Mass: 30, Length: 4800, Scarfs: 2, Stick: 4900, AtHand: 3000, Hard: []string{"ribs A1-F1"}, Dangers: []string{"seat, feet"}},
		{Family: "pack", Hours: 60, Cost: 5, Mass: 12, Length: 3500, First: true},
	}
	for beginner, want := range map[bool]string{false: "tandem pack tender none", true: "pack tandem tender none"} {
		var names []string
		ranked := Rank(all, beginner)
		for _, b := range ranked {
			names = append(names, b.Family)
		}
		if got := strings.Join(names, " "); got != want {
			t.Errorf("beginner %v: %s, want %s", beginner, got, want)
		}
		for _, b := range ranked {
			says := map[string]string{"none": "no boat: arms are too short", "tender": "the fewest hours, the least weight to carry, the least length on a car|hard bends, spare ribs first: a, b",
				"tandem": "wood: the longest stick is 4900 mm, and with sticks of 3000 mm each gunwale wants 2 scarfs|hard bends, spare ribs first: ribs A1-F1|what can go wrong: seat, feet", "pack": "the least cost, the fewest hard bends"}[b.Family]
			if why := strings.Join(b.Why, "|"); !strings.Contains(why, says) || strings.Contains(why, "to begin with") != (beginner && b.First) {
				t.Errorf("%s: %q", b.Family, b.Why)
			}
		}
	}
	if !strings.Contains(strings.Join(Rank(all, false)[2].Why, "|"), "it rolls") {
		t.Error("a boat that rolls is advised in silence")
	}
	if one := strings.Join(Rank(all[3:], true)[0].Why, "|"); strings.Contains(one, "least cost") {
		t.Errorf("one boat alone is %q", one)
	}
}

// TestTake sorts bends by how hard they are, and keeps what is a danger and yet passes.
func TestTake(t *testing.T) {
	b := Boat{}
	b.Take(finding.List{{About: "keel", Verdict: finding.Dry}, {About: "ribs", Verdict: finding.Pick}, {About: "stem", Verdict: finding.TooTight}},
		finding.List{{About: "swamped", Verdict: finding.Caution}, {About: "swamped", Verdict: finding.Caution}, {About: "stability", Verdict: finding.Unsafe}})
	if strings.Join(b.Hard, " ") != "ribs stem" || strings.Join(b.Dangers, " ") != "swamped" {
		t.Errorf("%+v", b)
	}
}

// TestGrades: what cannot be built comes after what the car cannot carry, that after what does
// not suit, and that after what costs more hours.
func TestGrades(t *testing.T) {
	all := []Boat{
		{Family: "missed", Hours: 1, Length: 3000, Car: 4000, Missed: finding.List{{About: "afloat"}}},
		{Family: "long", Hours: 2, Length: 4001, Car: 4000},
		{Family: "unsuited", Hours: 3, Length: 4000, Car: 4000, Unsuited: Suits("pack", "sheltered", LightGear+1)},
		{Family: "fits", Hours: 4, Length: 4000, Car: 4000},
		{Family: "unasked", Hours: 5, Length: 9000},
	}
	var names []string
	for _, b := range Rank(all, false) {
		names = append(names, b.Family)
	}
	if got := strings.Join(names, " "); got != "fits unasked unsuited long missed" {
		t.Error(got)
	}
	for _, ok := range []string{Suits("pack", "sheltered", LightGear), Suits("solo", "open", 40), Suits("tandem", "moving", 40)} {
		if ok != "" {
			t.Error(ok)
		}
	}
}
