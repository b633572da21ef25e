package job

import (
	"encoding/json"
	"math"
	"testing"
)

// TestBendJSON reads the JSON as a stranger would: one rib relaxed so much wider
// pushes with its stiffness times that, and the gunwales stand still: the pushes of
// the ribs and the cross pieces and the stems' own balance the model's, so here
// only what each number says of another is checked.
func TestBendJSON(t *testing.T) {
	var got struct {
		Pass bool
		Ribs []struct {
			Rib       string
			Width     float64  `json:"width_mm"`
			Relax     *float64 `json:"relax_to_mm"`
			Stiffness float64  `json:"stiffness_n_per_mm"`
			Push      float64  `json:"push_n"`
			Arcs      []struct {
				Relaxed float64 `json:"relaxed_radius_mm"`
				Form    float64 `json:"form_radius_mm"`
			}
		}
		Trials []struct {
			Set    string `json:"ribs_set"`
			Pieces []struct {
				Force float64 `json:"force_n"`
				Out   bool
			} `json:"cross_pieces"`
			Ribs []struct {
				Push  float64 `json:"push_n"`
				Off   float64 `json:"beam_off_design_mm"`
				Moved float64 `json:"beam_moved_mm"`
			}
		}
	}
	if err := json.Unmarshal(ask(t, "bend", "river", "--without", "seat").numbers(t), &got); err != nil {
		t.Fatal(err)
	}
	if !got.Pass || len(got.Trials) != 3 {
		t.Fatalf("passes %v, %d trials", got.Pass, len(got.Trials))
	}
	neutral := got.Trials[1]
	for i, r := range got.Ribs {
		// Hooke: stiffness times how far the rib is kept from its free width.
		want := r.Stiffness * (*r.Relax - r.Width - neutral.Ribs[i].Off)
		if math.Abs(r.Push-want) > 0.01 || math.Abs(neutral.Ribs[i].Push-r.Push) > 1e-4 {
			t.Errorf("rib %s pushes with %.4f N, its spring with %.4f", r.Rib, r.Push, want)
		}
		if math.Abs(neutral.Ribs[i].Moved) > 1e-3 {
			t.Errorf("rib %s: the neutral set moves by %g mm", r.Rib, neutral.Ribs[i].Moved)
		}
		for _, a := range r.Arcs {
			if math.Abs(a.Form-0.92*a.Relaxed) > 1e-3 {
				t.Errorf("rib %s: form %.3f mm for %.3f, want 8 %% tighter", r.Rib, a.Form, a.Relaxed)
			}
		}
	}
	out := 0
	for _, p := range neutral.Pieces {
		if p.Out {
			out++
		}
		if math.Abs(p.Force) > 1e-3 {
			t.Errorf("a cross piece bears %g N in the neutral set", p.Force)
		}
	}
	if out != 4 {
		t.Errorf("%d cross pieces are out, want river's 4 seat bars", out)
	}
}
