package job

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
)

// TestBendJSON reads the JSON as a stranger would: of every member that comes out, and of
// all of them together, the least, the likely and the most, in order and about nothing in
// the neutral set; forms as much tighter than the free rib as it springs back.
func TestBendJSON(t *testing.T) {
	type span struct{ Least, Likely, Most float64 }
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
				Range span    `json:"force_range_n"`
				Out   bool
			} `json:"cross_pieces"`
			Ribs []struct {
				Push  float64 `json:"push_n"`
				Off   float64 `json:"beam_off_design_mm"`
				Moved float64 `json:"beam_moved_mm"`
				Range span    `json:"beam_moved_range_mm"`
			}
		}
		Without []struct {
			Member string
			Change span `json:"beam_change_mm"`
		}
	}
	if err := json.Unmarshal(ask(t, "bend", "river", "--without", "seat,thwart").numbers(t), &got); err != nil {
		t.Fatal(err)
	}
	if !got.Pass || len(got.Trials) != 3 {
		t.Fatalf("passes %v, %d trials", got.Pass, len(got.Trials))
	}
	neutral := got.Trials[1]
	for i, r := range got.Ribs {
		if math.Abs(neutral.Ribs[i].Push-r.Push) > 1e-4 || *r.Relax != math.Round(*r.Relax) || math.Abs(*r.Relax-r.Width) > 25 {
			t.Errorf("rib %s is relaxed to %g mm for %g and pushes with %.4f N, or %.4f", r.Rib, *r.Relax, r.Width, r.Push, neutral.Ribs[i].Push)
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
	if len(got.Without) != 5 || got.Without[4].Member != "all of them together" {
		t.Fatalf("without: %+v", got.Without)
	}
	wide := got.Without[4].Change
	for _, w := range got.Without {
		if strings.HasSuffix(w.Member, " seat") { // seats carry nothing
			if w.Change != (span{}) {
				t.Errorf("without %s: %+v", w.Member, w.Change)
			}
			continue
		}
		if c := w.Change; !(c.Least < 0 && c.Likely == 0 && c.Most > 0) {
			t.Errorf("without %s: %+v", w.Member, c)
		}
	}
	// Taut cloth and forced ends are there, so that the beam may move by a millimeter.
	if wide.Most-wide.Least <= 1 {
		t.Errorf("without all of them: %+v", wide)
	}
	for i, r := range neutral.Ribs {
		if c := r.Range; !(c.Least <= c.Likely && c.Likely <= c.Most && c.Least >= wide.Least-0.1 && c.Most <= wide.Most+0.1) {
			t.Errorf("rib %s: %+v, all along %+v", got.Ribs[i].Rib, c, wide)
		}
	}
	for _, p := range neutral.Pieces {
		if c := p.Range; !(c.Least < -1 && c.Likely == 0 && c.Most > 1) {
			t.Errorf("a cross piece may bear %+v N", c)
		}
	}
	if out != 2 {
		t.Errorf("%d cross pieces are out, want river's 2 thwarts beside the yoke", out)
	}
}
