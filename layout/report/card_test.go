package report

import (
	"slices"
	"testing"
)

// TestCards: every rib has a card of its own with all that tables say of it, in the order
// in which they name it, also where two share a row; other tables make none.
func TestCards(t *testing.T) {
	a := Titled("Lengths").Names("Rib").Numbers("Blank", "Shoulder")
	a.Row("M", "100", "90")
	a.Row("A1, F1", "80", "70")
	b := Titled("Bends").Names("Rib").Words("Where")
	b.Row("F1", "fore")
	b.Row("A1", "aft")
	other := Titled("Woods").Names("Wood").Words("Where")
	other.Row("ash", "here")
	got := Cards([]Block{Say("words"), a, other, b, Titled("none")}, "Rib")
	var names []string
	for _, c := range got {
		names = append(names, c.Name)
	}
	if !slices.Equal(names, []string{"M", "A1", "F1"}) {
		t.Fatalf("cards of %v", names)
	}
	want := []Fact{{"Lengths", "Blank", "80"}, {"Lengths", "Shoulder", "70"}, {"Bends", "Where", "aft"}}
	if !slices.Equal(got[1].Facts, want) {
		t.Errorf("A1: %v, want %v", got[1].Facts, want)
	}
}

// TestChapter: a chapter ends where the next one begins, and one that is not there has
// nothing in it.
func TestChapter(t *testing.T) {
	r := Report{Blocks: []Block{Say("before"), Chapter("One"), Say("a"), Section("b"), Chapter("Two"), Say("c")}}
	if got := r.Chapter("One"); !slices.Equal(got, []Block{Say("a"), Section("b")}) {
		t.Errorf("chapter One: %v", got)
	}
	if got := r.Chapter("Two"); len(got) != 1 || r.Chapter("Three") != nil {
		t.Errorf("chapter Two: %v", got)
	}
}
