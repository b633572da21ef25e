package rendertest

import (
	"math"
	"strings"
	"testing"
)

// raft is no boat but has all that one has, in round figures: two ribs, each a half circle of
// 300 mm, on straight sticks.
const raft = `{"hull": {"length_mm": 2000, "beam_mm": 600},
"gunwale": {"width_mm": 20, "height_mm": 40, "ends_mm": [-1000, 1000], "line_mm": [[-1000, 300, 300], [1000, 300, 300]], "mortises": [
 {"rib": "A", "station_mm": -100, "from_midship_mm": -100, "length_mm": 20, "width_mm": 6, "depth_mm": 22, "wall_at_bottom_mm": 6},
 {"rib": "F", "station_mm": 100, "from_midship_mm": 100, "length_mm": 20, "width_mm": 6, "depth_mm": 22, "wall_at_bottom_mm": 6}]},
"ribs": [
 {"rib": "A", "station_mm": -100, "half_breadth_mm": 300, "depth_mm": 300, "length_mm": 942.4778, "tenon_mm": 20, "blank_mm": 1000, "half_arcs": [{"radius_mm": 300, "sweep_deg": 90, "length_mm": 471.2389}], "bend_marks_mm": [100, 200], "stringer_marks_mm": [150]},
 {"rib": "F", "station_mm": 100, "half_breadth_mm": 300, "depth_mm": 300, "length_mm": 942.4778, "tenon_mm": 20, "blank_mm": 1000, "half_arcs": [{"radius_mm": 300, "sweep_deg": 90, "length_mm": 471.2389}], "bend_marks_mm": [100, 200], "stringer_marks_mm": [150]}],
"stems": [{"end": "bow", "outline_mm": [[0, 0], [300, 0], [300, 60], [0, 60]], "stringer_landings_mm": [[10, 30]], "gunwale_hole_mm": [250, 30], "gunwale_hole_diameter_mm": 6, "stringer_holes_mm": [[200, 30]], "stringer_hole_diameter_mm": 5}],
"breasthooks": [{"end": "bow", "outline_mm": [[0, -5], [0, 5], [-100, 50], [-100, -50]], "painters_hole_from_end_mm": 70}],
"thwarts": [{"name": "Yoke", "station_mm": 0, "between_gunwales_mm": 580, "bolts_from_midship_mm": [-20, 20], "outline_mm": [[-300, -30], [300, -30], [300, 30], [-300, 30]], "holes_mm": [[290, 0], [-290, 0]], "hole_diameter_mm": 6}],
"seats": [{"name": "Seat", "station_mm": 300, "top_z_mm": 200, "length_mm": 300, "hung": {
 "front": {"station_mm": 420, "top_z_mm": 195, "rail_length_mm": 550, "hanger_length_mm": 200, "hanger_to_rail_top_mm": 145, "bolts_from_midship_mm": [400, 440], "bolts_under_gunwale_top_mm": 20},
 "after": {"station_mm": 180, "top_z_mm": 195, "rail_length_mm": 550, "hanger_length_mm": 200, "hanger_to_rail_top_mm": 145, "bolts_from_midship_mm": [160, 200], "bolts_under_gunwale_top_mm": 20}}}],
"outside": {"outwales": {"screws_from_midship_mm": [-500, 0, 500]}},
"inside": {"floors": [{"width_mm": 40, "from_middle_line_mm": [-100, 0, 100], "ribs": ["F"]}]},
"keel": {"ends_mm": [-900, 900], "rib_marks_mm": [-100, 100]},
"stringers": [{"number": 1, "ends_mm": [-950, 950], "rib_marks_mm": [-100, 100], "line_mm": [[-950, 148.622, 27.949], [950, 148.622, 27.949]]}]}`

// TestAbsurd: nothing is said of what can be, and each thing that cannot be is named.
func TestAbsurd(t *testing.T) {
	if found, err := Absurd([]byte(raft)); err != nil || len(found) > 0 {
		t.Fatal(found, err)
	}
	for _, c := range []struct{ old, new, want string }{
		{`"width_mm": 6, "depth_mm": 22`, `"width_mm": 19.5, "depth_mm": 22`, "leaves no walls"},
		{`"wall_at_bottom_mm": 6`, `"wall_at_bottom_mm": 0.1`, "beside its bottom"},
		{`"depth_mm": 22`, `"depth_mm": 40`, "goes through"},
		{`"from_midship_mm": 100`, `"from_midship_mm": 995`, "off the stock"},
		{`"from_midship_mm": 100`, `"from_midship_mm": -80`, "between them"},
		{`"sweep_deg": 90`, `"sweep_deg": 89.9`, "ends at"},
		{`"half_arcs": [{"radius_mm": 300, "sweep_deg": 90`, `"half_arcs": [{"radius_mm": 20, "sweep_deg": 360, "length_mm": 125.6637}, {"radius_mm": 300, "sweep_deg": 90`, "over the keel"},
		{`"length_mm": 942.4778`, `"length_mm": 840`, "shorter than straight"},
		{`"blank_mm": 1000`, `"blank_mm": 940`, "is cut from"},
		{`"bend_marks_mm": [100, 200]`, `"bend_marks_mm": [100, 480]`, "bend marks"},
		{`"stringer_marks_mm": [150]`, `"stringer_marks_mm": [150, 140]`, "stringer marks"},
		{`[300, 0], [300, 60]`, `[300, 60], [300, 0]`, "crosses itself"},
		{`[[0, 0], [300, 0], [300, 60], [0, 60]]`, `[[0, 0], [9000, 0], [9000, 60], [0, 60]]`, "in a boat of"},
		{`[[200, 30]]`, `[[200, 2.8]]`, "a hole of"}, {`[[200, 30]]`, `[[200, 90]]`, "a hole of"}, {`[290, 0]`, `[299, 0]`, "a hole of"},
		{`"ends_mm": [-900, 900], "rib_marks_mm": [-100, 100]`, `"ends_mm": [-900, 90], "rib_marks_mm": [-100, 100]`, "the keel from"},
		{`"rib_marks_mm": [-100, 100], "line_mm"`, `"rib_marks_mm": [100, -100], "line_mm"`, "stringer 1 has marks"},
		{`"line_mm": [[-950, 148.622, 27.949],`, `"line_mm": [[-950, 148.622, 27.949], [0, 300, 0],`, "on the stick"},
	} {
		spoiled := strings.Replace(raft, c.old, c.new, 1)
		found, err := Absurd([]byte(spoiled))
		if err != nil || spoiled == raft || !strings.Contains(strings.Join(found, "\n"), c.want) {
			t.Errorf("%s: %q, %v, want %q", c.new, found, err, c.want)
		}
	}
	if _, err := Absurd([]byte(`{}`)); err == nil {
		t.Error("a boat without ribs passes")
	}
}

// TestCrossing: two squares that overlap cross, one in the other and one beside it do not.
func TestCrossing(t *testing.T) {
	square := func(x, side float64) Outline {
		return Flat{Corners: [][2]float64{{x, -side}, {x + 2*side, -side}, {x + 2*side, side}, {x, side}}}.Outline()
	}
	for _, c := range []struct {
		x, side float64
		want    int
	}{{30, 10, 0}, {5, 4, 0}, {15, 12, 1}, {-3, 4, 1}} {
		if got := Crossing([]Outline{square(0, 10), square(c.x, c.side)}); len(got) != c.want {
			t.Errorf("a square of %.0f mm at %.0f: %v", 2*c.side, c.x, got)
		}
	}
}

// TestInked: a line in the frame shows, one beside it or round it does not.
func TestInked(t *testing.T) {
	frame := Box{0, 0, 100, 100}
	v := View{Page: 1, Edges: [4]float64{0, 0, 100, 100}, ToSheet: [6]float64{1, 0, 0, 1, 0, 0}}
	for _, c := range []struct {
		from, to Point
		want     bool
	}{{Point{-50, 50}, Point{150, 50}, true}, {Point{-90, 20}, Point{20, 120}, false}, {Point{120, 0}, Point{120, 100}, false}} {
		page := Page{W: 200, H: 200, Strokes: []Stroke{{Outlines: []Outline{{Pieces: []Piece{{From: c.from, To: c.to}}}}, Clip: frame}}}
		if got := v.Inked(page); got != c.want {
			t.Errorf("a line from %v to %v: %v", c.from, c.to, got)
		}
	}
}

// TestPoints: a quarter circle reaches as far out as its radius.
func TestPoints(t *testing.T) {
	radius := 300.0
	r := Rib{HalfArcs: []Bend{{&radius, 90, radius * math.Pi / 2}}}
	if b := Around(r.Points(24)...); b.Off(Box{0, 0, radius, radius}) > 0.01 {
		t.Errorf("the rib fills %+v", b)
	}
}

// TestMisfits: nothing is said of parts that meet, and each that does not is named.
func TestMisfits(t *testing.T) {
	if found, err := Misfits([]byte(raft)); err != nil || len(found) > 0 {
		t.Fatal(found, err)
	}
	for _, c := range []struct{ old, new, want string }{
		{`[1000, 300, 300]]`, `[1000, 300.5, 300]]`, "has its head at"},
		{`"rib": "F", "station_mm": 100, "from`, `"rib": "F", "station_mm": 90, "from`, "no mortise there"},
		{`"stringer_marks_mm": [150]`, `"stringer_marks_mm": [152]`, "from its mark"},
		{`27.949], [950`, `47.949], [950`, "passes rib"},
		{`"rib_marks_mm": [-100, 100], "line_mm"`, `"rib_marks_mm": [-100, 101], "line_mm"`, "and marked"},
		{`[[10, 30]]`, `[[-10, 30]]`, "beside the bow stem"}, {`[250, 30]`, `[250, 57]`, "gunwales' hole"},
		{`"painters_hole_from_end_mm": 70`, `"painters_hole_from_end_mm": -70`, "painter's hole"},
		{`"between_gunwales_mm": 580`, `"between_gunwales_mm": 610`, "between gunwales"},
		{`"bolts_from_midship_mm": [-20, 20]`, `"bolts_from_midship_mm": [87.5, 20]`, "from the bolt of Yoke"},
		{`"bolts_from_midship_mm": [160, 200], "bolts_under_gunwale_top_mm": 20`, `"bolts_from_midship_mm": [110, 150], "bolts_under_gunwale_top_mm": 20`, "Seat's hanger at 110.0"},
		{`[-500, 0, 500]`, `[-500, 0, 401]`, "outwale's screw at 401.0"},
		{`"top_z_mm": 200`, `"top_z_mm": 345`, "the gunwale its own"}, {`"top_z_mm": 195`, `"top_z_mm": 305`, "its underside"},
		{`"rail_length_mm": 550`, `"rail_length_mm": 650`, "mm wide there"}, {`"hanger_length_mm": 200`, `"hanger_length_mm": 140`, "its rail"},
		{`[-100, 0, 100], "ribs"`, `[-100, 70, 100], "ribs"`, "floor slats"}, {`[-100, 0, 100], "ribs"`, `[-100, 0, 290], "ribs"`, "reaches"},
	} {
		spoiled := strings.Replace(raft, c.old, c.new, 1)
		found, err := Misfits([]byte(spoiled))
		if err != nil || spoiled == raft || !strings.Contains(strings.Join(found, "\n"), c.want) {
			t.Errorf("%s: %q, %v, want %q", c.new, found, err, c.want)
		}
	}
}

// TestOnEachOther: words that lie on each other are found, words one over the other and beside
// each other are not, nor what a clip hides.
func TestOnEachOther(t *testing.T) {
	page := Box{0, 0, 200, 200}
	word := func(x, y, angle float64, clip Box) Text {
		return Text{Words: "words", At: Point{x, y}, Size: 4, Angle: angle, Clip: clip, advance: 20}
	}
	for _, c := range []struct {
		other Text
		want  int
	}{
		{word(60, 51, 0, page), 1}, {word(71, 50, 0, page), 0}, {word(50, 54, 0, page), 0},
		{word(60, 40, math.Pi/2, page), 1}, {word(60, 52.8, math.Pi/2, page), 0}, {word(60, 51, 0, Box{0, 0, 60, 200}), 0},
	} {
		if got := OnEachOther([]Text{word(50, 50, 0, page), c.other}); len(got) != c.want {
			t.Errorf("%+v: %v", c.other, got)
		}
	}
}
