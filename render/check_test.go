package render

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/render/rendertest"
)

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

// square is a drawing's worth of good ink.
func square() curve.Path {
	return curve.Rectangle(geometry.Box{Min: pt(0, 0), Max: pt(100, 100)})
}

// sheet returns a document that shows one drawing on one sheet.
func sheet(strokes []layout.Stroke, texts []layout.Text) layout.Document {
	d := &layout.Drawing{Name: "test", Title: "Bow stem", Strokes: strokes, Texts: texts}
	return layout.Document{Paper: layout.Paper{Name: "a4", W: 297, H: 210}, Sheets: []layout.Sheet{{Views: []layout.View{{
		Drawing: d, Frame: geometry.Box{Max: pt(150, 150)}, ToSheet: geometry.Shift(20, 30)}}}}}
}

func plate(part layout.Part, m geometry.Affine) layout.Plate {
	return layout.Plate{W: 500, H: 400, Parts: []layout.Placed{{Part: part, Move: m}}}
}

// strange are numbers that are no places.
func strange() []float64 {
	return []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 1.1e5}
}

// brokenPaths puts v in every number a path may hold.
func brokenPaths(v float64) map[string]curve.Path {
	return map[string]curve.Path{
		"line start x":  {curve.Line{A: pt(v, 0), B: pt(5, 5)}},
		"line end y":    {curve.Line{A: pt(0, 0), B: pt(5, v)}},
		"cubic start":   {curve.Cubic{P0: pt(v, 0), P3: pt(5, 5)}},
		"cubic handle":  {curve.Cubic{P1: pt(0, v), P3: pt(5, 5)}},
		"cubic handle2": {curve.Cubic{P2: pt(v, 0), P3: pt(5, 5)}},
		"arc centre":    {curve.Arc{Center: pt(v, 0), Radius: 5, Sweep: 1}},
		"arc radius":    {curve.Arc{Radius: v, Sweep: 1}},
		"arc sweep":     {curve.Arc{Radius: 5, Sweep: v}},
	}
}

func refused(t *testing.T, what string, err error, words ...string) {
	t.Helper()
	if err == nil {
		t.Errorf("%s: accepted, want an error", what)
		return
	}
	for _, w := range words {
		if !strings.Contains(err.Error(), w) {
			t.Errorf("%s: error %q does not say %q", what, err, w)
		}
	}
}

func TestCheckAcceptsGoodInk(t *testing.T) {
	good := []layout.Stroke{{Pen: layout.Cut, Path: square()}, {Pen: layout.Mark}}
	for _, k := range rendertest.Segments() {
		good = append(good, layout.Stroke{Pen: layout.Mark, Path: curve.Path{k}})
	}
	words := []layout.Text{{At: pt(5, 5), Height: 2.5, Words: "stem"}}
	if err := CheckDocument(sheet(good, words)); err != nil {
		t.Errorf("document: %v", err)
	}
	part := layout.Part{Name: "stem", Cut: []curve.Path{square()}, Letters: words}
	for _, m := range []geometry.Affine{geometry.Shift(9, 9), geometry.Turn(0.7), geometry.Turn(-3).Then(geometry.Shift(200, 200))} {
		if err := CheckPlate(plate(part, m)); err != nil {
			t.Errorf("plate: %v", err)
		}
	}
}

func TestCheckRefusesStrangePaths(t *testing.T) {
	for _, v := range strange() {
		for name, path := range brokenPaths(v) {
			what := fmt.Sprintf("%s %g", name, v)
			refused(t, what, CheckDocument(sheet([]layout.Stroke{{Path: square()}, {Path: path}}, nil)), "Bow stem", "no place")
			refused(t, what+" cut", CheckPlate(plate(layout.Part{Name: "yoke", Cut: []curve.Path{path}}, geometry.Shift(0, 0))), "yoke", "no place")
			refused(t, what+" mark", CheckPlate(plate(layout.Part{Name: "yoke", Marks: []curve.Path{path}}, geometry.Shift(0, 0))), "yoke", "no place")
			own := sheet(nil, nil)
			own.Sheets[0].Strokes = []layout.Stroke{{Path: path}}
			refused(t, what+" on the sheet itself", CheckDocument(own), "sheet 1", "no place")
		}
	}
}

func TestCheckRefusesBadShapes(t *testing.T) {
	for name, row := range map[string]struct {
		path curve.Path
		want string
	}{
		"arc of no radius":       {curve.Path{curve.Arc{Sweep: 1}}, "no place"},
		"arc of negative radius": {curve.Path{curve.Arc{Radius: -5, Sweep: 1}}, "no place"},
		"arc from nowhere":       {curve.Path{curve.Arc{Radius: 5, From: math.NaN(), Sweep: 1}}, "no place"},
		"line in two pieces":     {curve.Path{curve.Line{B: pt(5, 5)}, curve.Line{A: pt(5, 5.1), B: pt(9, 9)}}, "pieces"},
	} {
		refused(t, name, CheckDocument(sheet([]layout.Stroke{{Path: row.path}}, nil)), "Bow stem", row.want)
		refused(t, name, CheckPlate(plate(layout.Part{Name: "yoke", Marks: []curve.Path{row.path}}, geometry.Shift(0, 0))), "yoke", row.want)
	}
}

func TestCheckRefusesStrangeTexts(t *testing.T) {
	bad := []layout.Text{{Height: -2.5, Words: "low"}, {Height: 0, Words: "flat"}}
	for _, v := range strange() {
		bad = append(bad, layout.Text{At: pt(v, 0), Height: 3, Words: "x"}, layout.Text{At: pt(0, v), Height: 3, Words: "y"},
			layout.Text{Height: v, Words: "height"}, layout.Text{Height: 3, Angle: v, Words: "angle"})
	}
	for _, b := range bad {
		what := fmt.Sprintf("%+v", b)
		refused(t, what, CheckDocument(sheet(nil, []layout.Text{b})), "Bow stem", b.Words)
		refused(t, what, CheckPlate(plate(layout.Part{Name: "yoke", Letters: []layout.Text{b}}, geometry.Shift(0, 0))), "yoke", b.Words)
		own := sheet(nil, nil)
		own.Sheets[0].Texts = []layout.Text{b}
		refused(t, what, CheckDocument(own), "sheet 1", b.Words)
	}
}

func TestCheckRefusesPlacements(t *testing.T) {
	for name, m := range map[string]geometry.Affine{
		"turned":        geometry.Turn(0.1),
		"1 % too large": geometry.Stretch(1.01, 1.01),
		"mirrored":      geometry.Stretch(-1, 1),
		"sheared":       {A: 1, C: 0.01, D: 1},
		"nothing":       {},
		"NaN":           {A: math.NaN(), D: 1},
		"far away":      geometry.Shift(1e6, 0),
	} {
		doc := sheet([]layout.Stroke{{Path: square()}}, nil)
		doc.Sheets[0].Views[0].ToSheet = m
		refused(t, name+" view", CheckDocument(doc), "Bow stem")
		if name != "turned" {
			refused(t, name+" part", CheckPlate(plate(layout.Part{Name: "yoke", Cut: []curve.Path{square()}}, m)), "yoke")
		}
	}
	doc := sheet(nil, nil)
	doc.Sheets[0].Views[0].Frame = geometry.Box{Min: pt(10, 10), Max: pt(5, 20)}
	refused(t, "frame inside out", CheckDocument(doc), "Bow stem")
}

func TestCheckRefusesSizes(t *testing.T) {
	refused(t, "no sheets", CheckDocument(layout.Document{Paper: layout.Paper{W: 297, H: 210}}), "nothing to print")
	for _, v := range append(strange(), 0, -297) {
		doc := sheet(nil, nil)
		doc.Paper.W = v
		refused(t, fmt.Sprintf("paper %g wide", v), CheckDocument(doc), "paper a4")
		doc.Paper.W, doc.Paper.H = 297, v
		refused(t, fmt.Sprintf("paper %g high", v), CheckDocument(doc), "paper a4")
		refused(t, fmt.Sprintf("plate %g wide", v), CheckPlate(layout.Plate{W: v, H: 5}), "plate")
		refused(t, fmt.Sprintf("plate %g high", v), CheckPlate(layout.Plate{W: 5, H: v}), "plate")
	}
}

func TestNumber(t *testing.T) {
	for _, row := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{0, 4, "0"}, {math.Copysign(0, -1), 4, "0"}, {-0.00001, 4, "0"}, {0.00001, 4, "0"},
		{-0.00005001, 4, "-0.0001"}, {1.5, 4, "1.5"}, {-1.25, 1, "-1.2"}, {100, 4, "100"}, {100, 0, "100"},
		{1e5, 4, "100000"}, {99999.99999, 4, "100000"}, {123456.7891, 3, "123456.789"}, {1e-7, 8, "0.0000001"}, {-10, 2, "-10"},
	} {
		if got := Number(row.v, row.decimals); got != row.want {
			t.Errorf("Number(%g, %d) = %q, want %q", row.v, row.decimals, got, row.want)
		}
	}
}
