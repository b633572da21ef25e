package json

import (
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/trial/stow"
)

// TestFleetDesigns: each boat has its header, in the order of the stack.
func TestFleetDesigns(t *testing.T) {
	var boats []*stow.Boat
	for _, name := range []string{"brook", "river"} {
		b, err := stow.NewBoat(frametest.Shipped(t, name, nil))
		if err != nil {
			t.Fatal(err)
		}
		boats = append(boats, b)
	}
	r, err := stow.Plan(boats, stow.Options{Pad: 5}, stow.Limits{}, false)
	if err != nil {
		t.Fatal(err)
	}
	got := parsed(t)(Fleet(r))
	designs, order := got["designs"].([]any), got["order"].([]any)
	if len(designs) != 2 || len(order) != 2 {
		t.Fatalf("%d designs, %d boats", len(designs), len(order))
	}
	for i := range order {
		head := designs[i].(map[string]any)
		if head["title"] != order[i].(map[string]any)["title"] || len(head["fingerprint"].(string)) != 8 {
			t.Errorf("boat %d: %v of %v", i+1, head, order[i])
		}
	}
}
