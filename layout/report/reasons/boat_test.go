package reasons

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry/body"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/layout/report"
)

// TestBoat checks what the page of a boat tells: every value that the family puts on
// it, each with a reason, the checks and what is only estimated; and that it tells the
// same the second time.
func TestBoat(t *testing.T) {
	for _, name := range family.Names() {
		f, err := family.Shipped(name)
		if err != nil {
			t.Fatal(err)
		}
		var pages [2][]report.Block
		for i := range pages {
			boat, err := sizing.Size(f, brief(f))
			if err != nil {
				t.Fatal(err)
			}
			pages[i] = Boat(boat)
		}
		if !reflect.DeepEqual(pages[0], pages[1]) {
			t.Errorf("%s: the second time other words", name)
		}
		decided := table(t, pages[0], "What the family "+name+".family decides")
		if got, want := len(decided.Rows), len(f.Program.OnPage()); got != want {
			t.Errorf("%s: %d values on the page, want %d", name, got, want)
		}
		for _, row := range append(decided.Rows, table(t, pages[0], "Afloat with this load").Rows...) {
			if row[1] == "" || row[2] == "" {
				t.Errorf("%s: a value or a reason is missing: %q", name, row)
			}
		}
		words := fmt.Sprint(pages[0])
		for _, s := range []string{"Sized for 60 kg, 165 cm tall, woman", "reach", "checks of the family hold", "give or take 48 mm", body.Source} {
			if !strings.Contains(words, s) {
				t.Errorf("%s: %q is nowhere", name, s)
			}
		}
	}
}

// TestBoatFails tells of each check that does not hold.
func TestBoatFails(t *testing.T) {
	f, err := family.Shipped("pack")
	if err != nil {
		t.Fatal(err)
	}
	c, err := sizing.NewCase(f, brief(f))
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Set("beam", 815); err != nil { // more than arms of this stature reach over
		t.Fatal(err)
	}
	if err := c.Settle(); err != nil {
		t.Fatal(err)
	}
	boat, err := c.Finish()
	if err != nil {
		t.Fatal(err)
	}
	words := fmt.Sprint(Boat(boat))
	for _, s := range []string{"not hold:", "reach_at_seat: ", "set by hand or found by the search"} {
		if !strings.Contains(words, s) {
			t.Errorf("%q is nowhere in %s", s, words)
		}
	}
}

func table(t *testing.T, page []report.Block, title string) report.Table {
	t.Helper()
	for _, b := range page {
		if tab, ok := b.(report.Table); ok && tab.Title == title {
			return tab
		}
	}
	t.Fatalf("no table %q in %v", title, page)
	return report.Table{}
}

// brief is a woman of 60 kg and 1650 mm in every seat, without gear.
func brief(f *family.Family) sizing.Brief {
	b := sizing.DefaultBrief()
	b.Title, b.Gear = "Trial", 0
	for range f.Seats {
		b.Crew = append(b.Crew, sizing.Paddler{Person: body.Person{Sex: body.Woman, Weight: 60, Stature: 1650}, Posture: family.Either})
	}
	return b
}
