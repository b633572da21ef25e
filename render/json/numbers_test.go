package json

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
)

// bent returns how the wood of a frame is bent.
func bent(t testing.TB, f *frame.Frame) *bend.Report {
	t.Helper()
	b, err := bend.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// listed returns the marks of a frame, forms and relaxed widths among them.
func listed(t testing.TB, f *frame.Frame) []marks.Mark {
	t.Helper()
	list, err := marks.Of(f, bent(t, f))
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// TestNumbersAreTheMarks writes a list whose every value stands once, and finds each
// of them once: no number of wood comes from elsewhere and none is left out. Lines,
// outlines, forces, ratios and counts are no marks.
func TestNumbersAreTheMarks(t *testing.T) {
	noMarks := []string{"line_mm", "along_line_mm", "outline_mm", "skin_half_section_mm", "pages", "plies", "number", "edgewise_n_mm2", "force_n", "before_gluing_n", "after_gluing_n", "beam_with_sticks_alone_mm", "girth_share", "tightest_radius_over_thickness", "strain_percent", "block", "cloth_g_m2", "coats", "mass_g_m2", "screws", "joints", "glued_ribs_at_each_end", "slats", "leg_mm", "adjusts_mm", "step_mm"}
	for _, name := range append(design.ShippedNames(), "brook by gap", "river made") {
		boat, gap := strings.CutSuffix(name, " by gap")
		boat, made := strings.CutSuffix(boat, " made")
		f := frametest.Shipped(t, boat, func(d *design.Design) {
			if gap {
				d.Gunwale.Mortises = design.ByGap
			}
			if made {
				d.Gunwale.EdgeSetMade = 45
			}
		})
		list := listed(t, f)
		var want, got []float64
		for i := range list {
			list[i].Value = float64(1000 + i)
			v := list[i].Value
			if list[i].Unit == marks.Radian {
				v = math.Round(v*180/math.Pi*1e4) / 1e4
			}
			want = append(want, v)
		}
		var walk func(v any)
		walk = func(v any) {
			switch v := v.(type) {
			case map[string]any:
				for key, in := range v {
					if !slices.Contains(noMarks, key) {
						walk(in)
					}
				}
			case []any:
				for _, in := range v {
					walk(in)
				}
			case float64:
				got = append(got, v)
			}
		}
		walk(parsed(t)(Numbers(bent(t, f), list, layout.Document{})))
		slices.Sort(want)
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("%s: %d numbers of wood, want the %d marks", name, len(got), len(want))
		}
	}
}

// TestNumbersLackAMark: a list of another boat is refused, by the first mark missing.
func TestNumbersLackAMark(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	_, err := Numbers(bent(t, f), listed(t, frametest.Shipped(t, "brook", nil)), layout.Document{})
	if err == nil || !strings.Contains(err.Error(), "the list of marks has no ") {
		t.Errorf("got %v", err)
	}
}

// TestNumbersWithoutBending: what nothing is known of is null, not zero.
func TestNumbersWithoutBending(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	list, err := marks.Of(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	all := parsed(t)(Numbers(bent(t, f), list, layout.Document{}))
	rib := first(all["ribs"]).(map[string]any)
	if v, there := rib["relax_to_mm"]; !there || v != nil {
		t.Errorf("relaxed to %v", v)
	}
	for _, v := range rib["form_radii_mm"].([]any) {
		if v != nil {
			t.Errorf("form %v", v)
		}
	}
	if v, there := all["gunwale"].(map[string]any)["form_radius_mm"]; !there || v != nil {
		t.Errorf("form of the gunwale %v", v)
	}
}

// TestFieldNames holds the promise of the field names that other programs read.
func TestFieldNames(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	all := parsed(t)(Numbers(bent(t, f), listed(t, f), layout.Document{}))
	promised := map[string]string{
		"design":                 "title slug edition fingerprint",
		"hull":                   "length_mm beam_mm depth_mm spreaders",
		"hull.spreaders":         "station_mm beam_mm holds force_n before_gluing_n after_gluing_n",
		"gunwale":                "stock_length_mm tilt_deg line_mm mortises plies ply_mm glued form_radius_mm",
		"gunwale.mortises":       "rib station_mm from_midship_mm along_line_mm length_mm width_mm depth_mm bevel_deg",
		"ribs":                   "rib station_mm half_breadth_mm depth_mm length_mm blank_mm thickness_mm half_arcs bend_marks_mm stringer_marks_mm relax_to_mm form_radii_mm pushed_in",
		"ribs.half_arcs":         "radius_mm sweep_deg length_mm",
		"ribs.pushed_in.hinged":  "flare_deg off_mm least_radius_mm",
		"ribs.pushed_in.clamped": "flare_deg off_mm least_radius_mm",
		"stems":                  "end outline_mm thickness_mm stringer_landings_mm",
		"stringers":              "number girth_share ends_mm rib_marks_mm line_mm edgewise_n_mm2",
	}
	for path, names := range promised {
		var at any = all
		for _, step := range strings.Split(path, ".") {
			at = first(at).(map[string]any)[step]
		}
		part, ok := first(at).(map[string]any)
		if !ok {
			t.Errorf("%s is missing", path)
			continue
		}
		for _, n := range strings.Fields(names) {
			if _, ok := part[n]; !ok {
				t.Errorf("%s has no field %s", path, n)
			}
		}
	}
	for _, part := range []string{"stringers", "thwarts", "keel", "skin", "outside", "pages"} {
		if _, ok := all[part]; !ok {
			t.Errorf("%s is missing", part)
		}
	}
}

// first goes into a list by its first item.
func first(v any) any {
	if list, ok := v.([]any); ok && len(list) > 0 {
		return list[0]
	}
	return v
}
