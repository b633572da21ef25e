package trace

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

func rect(x0, y0, x1, y1 float64) curve.Path {
	return curve.Rectangle(geometry.Box{Min: pt(x0, y0), Max: pt(x1, y1)})
}

func plate(parts ...layout.Part) layout.Plate {
	p := layout.Plate{W: 500, H: 500}
	for _, q := range parts {
		p.Parts = append(p.Parts, layout.Placed{Part: q, Move: geometry.Shift(0, 0)})
	}
	return p
}

func of(t *testing.T, p layout.Plate) map[string][]curve.Path {
	t.Helper()
	layers, err := Of(p)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string][]curve.Path{}
	for i, l := range layers {
		if l.Name != layout.Layers()[i] {
			t.Errorf("layer %d is %s, want %s", i, l.Name, layout.Layers()[i])
		}
		out[l.Name] = l.Paths
	}
	return out
}

// TestMarksOnce draws marks over each other and over outlines: what is left is as
// long as what is seen, worked out by hand.
func TestMarksOnce(t *testing.T) {
	half := curve.Arc{Center: pt(300, 300), Radius: 50, From: 0, Sweep: math.Pi}
	most := curve.Arc{Center: pt(300, 300), Radius: 50, From: 1.9 * math.Pi, Sweep: -1.8 * math.Pi}
	for _, row := range []struct {
		name  string
		marks []curve.Path
		want  float64 // mm in all
		paths int
	}{
		{"one line", []curve.Path{curve.Polyline(pt(0, 0), pt(30, 0))}, 30, 1},
		{"twice", []curve.Path{curve.Polyline(pt(0, 0), pt(30, 0)), curve.Polyline(pt(0, 0), pt(30, 0))}, 30, 1},
		{"back again", []curve.Path{curve.Polyline(pt(0, 0), pt(30, 0), pt(10, 0))}, 30, 1},
		{"overlapping", []curve.Path{curve.Polyline(pt(0, 0), pt(30, 40)), curve.Polyline(pt(45, 60), pt(15, 20))}, 75, 2},
		{"in the middle", []curve.Path{curve.Polyline(pt(10, 0), pt(20, 0)), curve.Polyline(pt(0, 0), pt(30, 0))}, 30, 3},
		{"end to end", []curve.Path{curve.Polyline(pt(0, 0), pt(30, 0)), curve.Polyline(pt(30, 0), pt(50, 0))}, 50, 2},
		{"crossing", []curve.Path{curve.Polyline(pt(0, 0), pt(30, 0)), curve.Polyline(pt(15, -9), pt(15, 9))}, 48, 2},
		{"beside", []curve.Path{curve.Polyline(pt(0, 0), pt(30, 0)), curve.Polyline(pt(0, 0.01), pt(30, 0.01))}, 60, 2},
		{"on the outline", []curve.Path{curve.Polyline(pt(100, 90), pt(100, 150))}, 10, 1},
		{"half a circle twice", []curve.Path{{half}, {half.Reverse()}}, 50 * math.Pi, 1},
		{"circle over most of one", []curve.Path{{most}, curve.Circle(pt(300, 300), 50)}, 100 * math.Pi, 3},
		{"two ends of arcs that overlap", []curve.Path{{most}, {curve.Arc{Center: pt(300, 300), Radius: 50, From: math.Pi, Sweep: 1.9 * math.Pi}}}, 100 * math.Pi, 2},
		{"cubic twice", []curve.Path{{curve.Cubic{P0: pt(0, 0), P1: pt(10, 10), P2: pt(20, 10), P3: pt(30, 0)}},
			{curve.Cubic{P0: pt(30, 0), P1: pt(20, 10), P2: pt(10, 10), P3: pt(0, 0)}}}, curve.Cubic{P0: pt(0, 0), P1: pt(10, 10), P2: pt(20, 10), P3: pt(30, 0)}.Length(), 1},
	} {
		got := of(t, plate(layout.Part{Name: "a", Cut: []curve.Path{rect(100, 100, 200, 200)}, Marks: row.marks}))[layout.LayerMark]
		sum := 0.0
		for _, p := range got {
			sum += p.Length()
			if !p.Joined() {
				t.Errorf("%s: a path in pieces", row.name)
			}
		}
		if math.Abs(sum-row.want) > 0.01 || len(got) != row.paths {
			t.Errorf("%s: %.3f mm in %d paths, want %.3f in %d", row.name, sum, len(got), row.want, row.paths)
		}
	}
}

// TestOutlinesOnce has the same hole twice, the other way round and begun
// elsewhere; and a part within another's hole, whose edges come first.
func TestOutlinesOnce(t *testing.T) {
	hole := rect(20, 20, 80, 80)
	again := curve.Polygon(pt(80, 80), pt(80, 20), pt(20, 20), pt(20, 80))
	big := layout.Part{Name: "big", Cut: []curve.Path{hole, again, rect(0, 0, 100, 100)}}
	small := layout.Part{Name: "small", Cut: []curve.Path{curve.Circle(pt(50, 50), 3), rect(40, 40, 60, 60)}}
	got := of(t, plate(big, small))[layout.LayerCut]
	var widths []float64
	for _, p := range got {
		if !p.Closed() {
			t.Error("an outline is open")
		}
		widths = append(widths, math.Round(p.Bounds().W()))
	}
	want := []float64{6, 20, 60, 100}
	if len(widths) != len(want) {
		t.Fatalf("outlines %v mm wide, want %v", widths, want)
	}
	for i := range want {
		if widths[i] != want[i] {
			t.Errorf("outlines %v mm wide, want %v: what lies inside first", widths, want)
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, row := range []struct {
		name  string
		parts []layout.Part
		want  string
	}{
		{"open", []layout.Part{{Name: "yoke", Cut: []curve.Path{rect(0, 0, 9, 9)[:3]}}}, "the outline of yoke is not closed"},
		{"point", []layout.Part{{Name: "yoke", Cut: []curve.Path{{curve.Line{A: pt(1, 1), B: pt(1, 1)}}}}}, "single point"},
		{"shared edge", []layout.Part{{Name: "yoke", Cut: []curve.Path{rect(0, 0, 9, 9)}}, {Name: "stem", Cut: []curve.Path{rect(9, 3, 20, 20)}}}, "stem shares an edge"},
	} {
		if _, err := Of(plate(row.parts...)); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: error %v, want %q", row.name, err, row.want)
		}
	}
}
