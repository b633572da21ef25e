package json

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/layout"
)

// TestFixed checks how single numbers are written.
func TestFixed(t *testing.T) {
	tests := []struct {
		in   float64
		want string
	}{
		{1.00004, "1"}, {1.00006, "1.0001"}, {-0.00001, "0"}, {math.Inf(1), "null"}, {-1250.5, "-1250.5"},
	}
	for _, tt := range tests {
		got, err := json.Marshal(fixed(tt.in))
		if err != nil || string(got) != tt.want {
			t.Errorf("%v is written %s (%v), want %s", tt.in, got, err, tt.want)
		}
	}
	if _, err := json.Marshal(fixed(math.NaN())); err == nil {
		t.Error("NaN is written")
	}
}

// TestFieldNames holds the promise of the field names that other programs read.
func TestFieldNames(t *testing.T) {
	d, err := design.Shipped("river")
	if err != nil {
		t.Fatal(err)
	}
	f, err := frame.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := Encode(&out, f, "river", "12345678", layout.Document{}); err != nil {
		t.Fatal(err)
	}
	var all map[string]any
	if err := json.Unmarshal(out.Bytes(), &all); err != nil {
		t.Fatal(err)
	}
	promised := map[string]string{
		"design":           "title slug fingerprint",
		"hull":             "length_mm beam_mm depth_mm",
		"gunwale":          "stock_length_mm tilt_deg line_mm mortises plies ply_mm glued form_radius_mm",
		"gunwale.mortises": "rib station_mm from_midship_mm length_mm width_mm depth_mm bevel_deg",
		"ribs":             "rib station_mm half_breadth_mm depth_mm length_mm blank_mm thickness_mm half_arcs bend_marks_mm stringer_marks_mm relax_to_mm form_radii_mm",
		"ribs.half_arcs":   "radius_mm sweep_deg length_mm",
		"stems":            "end outline_mm thickness_mm",
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
	for _, part := range []string{"stringers", "thwarts", "keel", "skin", "pages"} {
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
