package tile

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/paper"
)

// cardOf finds the outline of the bank card on a sheet: the one bold closed line with
// round corners.
func cardOf(s layout.Sheet) (geometry.Box, bool) {
	for _, k := range s.Strokes {
		if k.Pen == layout.Cut && k.Path.Closed() && len(k.Path) == 8 {
			return k.Path.Bounds(), true
		}
	}
	return geometry.Box{}, false
}

// TestBankCard: the first sheet shows the outline of a bank card, 85.60 x 53.98 mm with
// corners of 2.88 to 3.48 mm (ISO/IEC 7810, ID-1). Unused cards measure 85.47 to 85.72 by
// 53.92 to 54.03 mm there (the tolerances are from memory). Laid in its middle, the largest card leaves a line to be seen
// all round at 100 %. A sheet that is printed at 97 % hides the whole line, its outer edge
// too, under the smallest card, by half a millimeter and more on every side; laid in a
// corner the card sticks out by more than one.
func TestBankCard(t *testing.T) {
	const largeLong, largeHigh, smallLong, smallHigh = 85.72, 54.03, 85.47, 53.92
	for _, lying := range []Way{Lying, Standing} {
		o := letter(measure.Metric)
		o.Way = lying
		doc, err := Lay(Set{Title: "Test", Drawings: []layout.Drawing{ring()}, First: &layout.First{}}, o)
		if err != nil {
			t.Fatal(err)
		}
		b, found := cardOf(doc.Sheets[0])
		if !found || math.Abs(b.W()-85.60) > 1e-9 || math.Abs(b.H()-53.98) > 1e-9 {
			t.Fatalf("the outline is %.2f x %.2f mm", b.W(), b.H())
		}
		line := layout.Cut.Width()
		if seen := min(b.W()+line-largeLong, b.H()+line-largeHigh) / 2; seen < 0.1 {
			t.Errorf("at 100 %% only %.2f mm of line show beside a card", seen)
		}
		if over := min(smallLong-0.97*(b.W()+line), smallHigh-0.97*(b.H()+line)); over < 1 {
			t.Errorf("at 97 %% the card hides the line by no more than %.2f mm", over/2)
		}
	}
}

// TestBoatMakesWay: however many words there are, and however high the boat's picture is,
// they take as many sheets as without it.
func TestBoatMakesWay(t *testing.T) {
	seen := map[int]bool{}
	for _, lying := range []bool{false, true} {
		sheet, err := letter(measure.Metric).Paper.Sheet(lying)
		if err != nil {
			t.Fatal(err)
		}
		for words := 0; words < 120; words += 3 {
			set, sheets := Set{Title: "Test", First: &layout.First{Found: slices.Repeat([]string{"It is told in a line."}, words)}}, map[int]bool{}
			p := plan{sheet: sheet, room: roomFor(set, sheet)}
			for _, high := range []float64{0, 1, 9, 40} {
				var boat layout.Drawing
				if high > 0 {
					boat.Line(layout.Mark, curve.Rectangle(geometry.Rect(0, 0, 10, high)))
				}
				set.First.Boat = func() layout.Drawing { return boat }
				n := len(p.cover(set))
				sheets[n], seen[n] = true, true
			}
			if len(sheets) != 1 {
				t.Errorf("%d lines of words take %v sheets", words, sheets)
			}
		}
	}
	if len(seen) < 2 {
		t.Errorf("they always take %v sheets: too few words to tell", seen)
	}
}

// TestFirstIsOneSheet: whatever the sheet says it says on one page, on letter and a4 alike
// either way up; cautions are whole in their box, a set without such words begins with its
// patterns.
func TestFirstIsOneSheet(t *testing.T) {
	a4, err := paper.ParseSize("a4")
	if err != nil {
		t.Fatal(err)
	}
	long := strings.Repeat("A caution of many words that wraps. ", 5)
	first := &layout.First{Found: []string{long, long}, Cautions: []string{long, long, long, long}, Checks: []layout.Check{{What: "Gunwale strip, end to end", Is: "3559.2 mm = 140 1/8 in"}}}
	for _, size := range []paper.Size{paper.Letter(), a4} {
		for _, way := range []Way{Lying, Standing} {
			o := letter(measure.Metric)
			o.Paper.Size, o.Way = size, way
			doc, err := Lay(Set{Title: "Test", Drawings: []layout.Drawing{ring()}, First: first}, o)
			if err != nil {
				t.Fatal(err)
			}
			if len(doc.Sheets[0].Views) > 0 || len(doc.Sheets[1].Views) == 0 {
				t.Errorf("%s %v: patterns do not begin on sheet 2", size.Name, way)
			}
			var box geometry.Box
			for _, k := range doc.Sheets[0].Strokes {
				if b := k.Path.Bounds(); k.Pen == layout.Cut && b.W() > 80 && b.H() > 50 && len(k.Path) < 8 {
					box = b
				}
			}
			for _, x := range doc.Sheets[0].Texts {
				if strings.Contains(x.Words, "caution of many") && x.Bounds().Overlaps(box) && (!box.Holds(x.Bounds().Min) || !box.Holds(x.Bounds().Max)) {
					t.Errorf("%s %v: %q leaves the box", size.Name, way, x.Words)
				}
			}
			bare, err := Lay(Set{Title: "Test", Drawings: []layout.Drawing{ring()}}, o)
			if err != nil {
				t.Fatal(err)
			}
			if len(bare.Sheets) != len(doc.Sheets)-1 || len(bare.Sheets[0].Views) == 0 {
				t.Errorf("%s %v: %d sheets without first words, %d with", size.Name, way, len(bare.Sheets), len(doc.Sheets))
			}
		}
	}
}

// TestTurned: a strip longer than a standing sheet is wide lies along it, whole, at full
// size and read from the right, with its heading beside it.
func TestTurned(t *testing.T) {
	d := layout.Drawing{Name: "strip", Title: "Strip"}
	for y := 5.0; y <= 35; y += 5 { // lines leave no blank for the heading
		d.Straight(layout.Cut, -30, y, 200, y)
	}
	o := letter(measure.Metric)
	o.Way = Standing
	doc, err := Lay(Set{Title: "Test", Drawings: []layout.Drawing{d}}, o)
	if err != nil {
		t.Fatal(err)
	}
	if doc.Took.Joints != 0 || doc.Took.Pieces != 1 || len(doc.Sheets) != 1 {
		t.Fatalf("%+v", doc.Took)
	}
	v := doc.Sheets[0].Views[0]
	if on := v.OnSheet(); math.Abs(on.H()-v.Frame.W()) > 1e-9 || !roomOf(doc.Paper).Grow(1e-6).Holds(on.Min) || !roomOf(doc.Paper).Grow(1e-6).Holds(on.Max) {
		t.Errorf("it lies at %v", on)
	}
	for _, x := range doc.Sheets[0].Texts {
		if b := x.Bounds(); x.Words == "Strip" && (!roomOf(doc.Paper).Holds(b.Min) || !roomOf(doc.Paper).Holds(b.Max)) {
			t.Errorf("its heading leaves the sheet's room: %v", b)
		}
		if x.Words == "Strip" && (math.Abs(x.Angle-math.Pi/2) > 1e-9 || x.At.X > v.OnSheet().Min.X || x.At.X < v.OnSheet().Min.X-8) {
			t.Errorf("its heading stands at %v, turned by %.2f", x.At, x.Angle)
		}
	}
}

// TestJointPrice: a strip of 400 mm takes one joint where it lies along the paper and two
// across it; the plan with the fewer joints wins although both fill one sheet.
func TestJointPrice(t *testing.T) {
	d := layout.Drawing{Name: "strip", Title: "Strip"}
	d.Line(layout.Cut, curve.Rectangle(geometry.Rect(0, 0, 440, 30)))
	o := letter(measure.Metric)
	o.Way = Best
	doc, err := Lay(Set{Title: "Test", Drawings: []layout.Drawing{d}}, o)
	if err != nil {
		t.Fatal(err)
	}
	if doc.Took.Joints != 1 || doc.Took.Sheets != 1 {
		t.Errorf("%+v", doc.Took)
	}
}

// TestFirstNamesTheLast: what lies behind the patterns is named on the first sheet, with the
// number of its sheet, and is not where there is none or paper is a roll.
func TestFirstNamesTheLast(t *testing.T) {
	for _, there := range []bool{true, false} {
		set := Set{Title: "Test", Drawings: []layout.Drawing{ring()}, First: &layout.First{Codes: "M: midship."}, LastTitle: "Plates",
			Last: func(geometry.Box) (layout.Sheet, bool) { return layout.Sheet{}, there }}
		doc, err := Lay(set, letter(measure.Metric))
		if err != nil {
			t.Fatal(err)
		}
		said := ""
		for _, w := range doc.Sheets[0].Texts {
			said += w.Words + " "
		}
		last := doc.Sheets[len(doc.Sheets)-1]
		if want := fmt.Sprintf("Sheet %d: Plates.", last.Number); strings.Contains(said, want) != there {
			t.Errorf("a sheet behind is there: %v; the first sheet says %q", there, said)
		}
		if !there && strings.Contains(said, "Plates") {
			t.Errorf("the first sheet names a sheet that is not there: %q", said)
		}
	}
}
