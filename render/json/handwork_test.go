package json

import (
	"encoding/json"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/handwork"
)

// TestHowTrueRanks: all errors stand in the order of their ranks, those that matter
// first, each with what its usual size moves of every measure that the outcomes name.
func TestHowTrueRanks(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	b, err := bend.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	carried, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	r, err := handwork.Of(b.Boat, &carried)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(HowTrue(r, b))
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Handwork struct {
			Spread []struct{ Measure string }
			Errors []struct {
				Rank    int
				Matters bool
				Usual   map[string]float64                   `json:"usual_moves_mm"`
				Moves   []struct{ First, Practiced float64 } `json:"moves_mm"`
			}
		}
	}
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	h := got.Handwork
	if len(h.Errors) != len(r.Errors) || len(h.Errors) < 10 {
		t.Fatalf("%d errors are written of %d", len(h.Errors), len(r.Errors))
	}
	for i, e := range h.Errors {
		if e.Rank != i+1 || i > 0 && e.Matters && !h.Errors[i-1].Matters {
			t.Errorf("place %d: rank %d, matters %v", i+1, e.Rank, e.Matters)
		}
		if len(e.Usual) != 6 {
			t.Errorf("rank %d moves %v, want six measures", e.Rank, e.Usual)
		}
		for k, o := range h.Spread {
			// Nine in ten lie within 1.645 standard deviations; both are rounded.
			if usual, there := e.Usual[o.Measure]; !there || usual < e.Moves[k].First/1.645-0.001 {
				t.Errorf("rank %d: %s %v (written %v), one outcome moves %v", e.Rank, o.Measure, usual, there, e.Moves[k].First/1.645)
			}
		}
	}
}
