package tile

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/label"
)

// ends returns where a line begins and ends.
func ends(k layout.Stroke) (a, b geometry.Point) {
	pts := k.Path.Flatten(0.1)
	return pts[0], pts[len(pts)-1]
}

// TestBarsOnEverySheet: every sheet has one scale bar each way that measures 4 in,
// 101.6 mm, with 100 mm lettered on the other side, and says to print at 100 %.
func TestBarsOnEverySheet(t *testing.T) {
	doc := lay(t, ring())
	for n, s := range doc.Sheets {
		level, upright := 0, 0
		for _, k := range s.Strokes {
			if k.Pen != layout.Mark {
				continue
			}
			switch a, b := ends(k); {
			case math.Abs(math.Abs(a.X-b.X)-4*25.4) < 1e-9 && a.Y == b.Y:
				level++
			case math.Abs(math.Abs(a.Y-b.Y)-4*25.4) < 1e-9 && a.X == b.X:
				upright++
			}
		}
		said := map[string]int{}
		full := false
		for _, x := range s.Texts {
			said[x.Words]++
			full = full || strings.Contains(x.Words, "100 %")
		}
		if level != 1 || upright != 1 || said["100 mm"] != 2 || said["4 in"] != 2 {
			t.Errorf("sheet %d: %d level and %d upright bars of 4 in, %d times 100 mm and %d times 4 in", n+1, level, upright, said["100 mm"], said["4 in"])
		}
		if !full {
			t.Errorf("sheet %d does not say to print at 100 %%", n+1)
		}
	}
}

// TestTitleBlock: whichever way a sheet lies and however long its name is, it says its name, its
// paper, which design it is and how to print, each word once and clear of the scale bars, of
// the key map and of other words, within the margins.
func TestTitleBlock(t *testing.T) {
	for _, name := range []string{"Brook", "A boat of a middling name", strings.Repeat("A long name ", 8)} {
		for _, way := range []Way{Lying, Standing} {
			o := letter(measure.Metric)
			o.Way = way
			doc, err := Lay(Set{Title: name, Fingerprint: "524ecbeb", Drawings: []layout.Drawing{ring()}}, o)
			if err != nil {
				t.Fatal(err)
			}
			room := doc.Paper.Area.Grow(1e-6)
			for _, s := range doc.Sheets {
				var said []string
				own := slices.DeleteFunc(slices.Clone(s.Texts), func(x layout.Text) bool {
					return slices.ContainsFunc(s.Views, func(v layout.View) bool { return v.OnSheet().Overlaps(x.Bounds()) })
				})
				for i, x := range own {
					said = append(said, x.Words)
					if b := x.Bounds(); !room.Holds(b.Min) || !room.Holds(b.Max) {
						t.Errorf("%q leaves the margins: %v", x.Words, b)
					}
					for _, y := range own[:i] {
						if label.BlockOf(x).Bounds().Overlaps(label.BlockOf(y).Bounds()) {
							t.Errorf("%s: %q stands on %q", name, x.Words, y.Words)
						}
					}
				}
				all := strings.Join(said, " ")
				for _, w := range []string{"design 524ecbeb", "letter " + doc.Paper.Way(), "one side", "both bars true", fmt.Sprintf("sheet %d of %d", s.Number, len(doc.Sheets))} {
					if strings.Count(all, w) != 1 {
						t.Errorf("%s: sheet %d says %q %d times", name, s.Number, w, strings.Count(all, w))
					}
				}
				if words := strings.Join(strings.Fields(all), " "); !strings.Contains(words, strings.TrimSpace(name)) {
					t.Errorf("%q is not said: %s", name, words)
				}
			}
		}
	}
}

// TestCrossesWhole: at every joint both pieces show each whole cross, 10 mm wide each
// way with its circle inside, or they could not be laid on each other.
func TestCrossesWhole(t *testing.T) {
	d := ring()
	for _, p := range cut(&d, 247, 173, cutting{}) {
		for _, j := range p.sides() {
			for _, at := range j.crossPlaces() {
				cross, box := crossAt(at), geometry.EmptyBox()
				for _, k := range cross {
					box = box.Union(k.Path.Bounds())
				}
				if !p.frame.Grow(1e-6).Holds(box.Min) || !p.frame.Grow(1e-6).Holds(box.Max) {
					t.Errorf("tile %s: the cross at %.1f leaves the paper %v", p.name(), at, p.frame)
				}
				if math.Abs(box.W()-10) > 1e-9 || math.Abs(box.H()-10) > 1e-9 || box.Min.Lerp(box.Max, 0.5).Sub(at).Norm() > 1e-9 {
					t.Errorf("tile %s: a cross of %.1f x %.1f mm", p.name(), box.W(), box.H())
				}
				if r := cross[2].Path.Bounds().W() / 2; r >= box.W()/2-2 || r < 1 {
					t.Errorf("tile %s: a circle of %.1f mm in a cross of %.1f", p.name(), 2*r, box.W())
				}
			}
		}
	}
}

// TestLongJointsStayStraight: two crosses at its ends let a long joint bow, so it has
// one at its middle too; no crosses stand farther apart than a hand spans, 200 mm.
func TestLongJointsStayStraight(t *testing.T) {
	d := ring()
	for _, p := range cut(&d, 247, 173, cutting{}) {
		for _, j := range p.sides() {
			places := j.crossPlaces()
			long := j.to.Sub(j.from).Norm()
			if long >= 100 && len(places) < 3 {
				t.Errorf("tile %s: a joint of %.0f mm has %d crosses", p.name(), long, len(places))
			}
			if len(places) == 3 && places[0].Lerp(places[1], 0.5).Sub(places[2]).Norm() > 1e-9 {
				t.Errorf("tile %s: no cross at the middle: %v", p.name(), places)
			}
		}
	}
}

// TestEdgeDistances: the figures along a tile's edges are how far their ticks lie from
// the pattern's zero, in mm or in inches of 25.4.
func TestEdgeDistances(t *testing.T) {
	for u, unit := range map[measure.System]float64{measure.Metric: 1, measure.Imperial: 25.4} {
		d := ring()
		figures := 0
		for _, p := range cut(&d, 247, 173, cutting{}) {
			var s layout.Sheet
			p.drawScales(&s, u)
			for _, x := range s.Texts {
				var figure float64
				if _, err := fmt.Sscanf(x.Words, "%f", &figure); err != nil {
					t.Fatalf("%q is no figure", x.Words)
				}
				// A millimeter beside its tick on the lower or the left edge.
				low := math.Abs(math.Abs(x.At.X-figure*unit)-1) < 1e-9
				left := math.Abs(x.At.Y-figure*unit-1) < 1e-9 || math.Abs(x.At.Y-figure*unit+1+small) < 1e-9
				if !low && !left {
					t.Errorf("%v, tile %s: %q stands at %.2f", u, p.name(), x.Words, x.At)
				}
				if upLeft := math.Abs(x.At.X-1-p.cell.Min.X) < 1e-9 && left; strings.HasSuffix(x.Words, " out") == upLeft {
					t.Errorf("%v, tile %s: %q at %.2f does not say which way it counts", u, p.name(), x.Words, x.At)
				}
				figures++
			}
			for _, k := range s.Strokes {
				a, _ := ends(k)
				step := 50.0
				if u == measure.Imperial {
					step = 2 * 25.4
				}
				onX, onY := math.Abs(math.Remainder(a.X, step)) < 1e-6, math.Abs(math.Remainder(a.Y, step)) < 1e-6
				if !onX && !onY {
					t.Errorf("%v, tile %s: a tick at %.2f", u, p.name(), a)
				}
			}
		}
		if figures < 10 {
			t.Errorf("%v: only %d figures", u, figures)
		}
	}
}

// TestJointCodes: both pieces of a joint carry the names of the two at the same places, each
// on its own side of the joint, and read as the heading is.
func TestJointCodes(t *testing.T) {
	d := ring()
	codes := map[string]int{}
	for _, p := range cut(&d, 247, 173, cutting{}) {
		var s layout.Sheet
		for _, j := range p.sides() {
			p.drawJoint(&s, j)
			n := len(s.Texts) - 2
			one, two := s.Texts[n], s.Texts[n+1]
			if j.trim {
				one, two = two, one
			}
			if one.Words != p.name() || two.Words != j.other || one.Angle != 0 || two.Angle != 0 {
				t.Errorf("the joint of %s and %s is coded %+v, %+v", p.name(), j.other, one, two)
			}
			if b := one.Bounds().Grow(label.Off - 0.1); !p.cell.Holds(b.Min) || !p.cell.Holds(b.Max) || p.cell.Overlaps(two.Bounds()) {
				t.Errorf("the joint of %s and %s: a name stands on the other's side: %v, %v", p.name(), j.other, one.At, two.At)
			}
			codes[fmt.Sprint(s.Texts[n:])]++
		}
	}
	for code, n := range codes {
		if n != 2 {
			t.Errorf("%q stands on %d pieces, want 2", code, n)
		}
	}
}

// TestCodeAloof: words that stand across a joint are moved off it, and the joint's code stands
// so far from where they were that the two are not read as one.
func TestCodeAloof(t *testing.T) {
	d := layout.Drawing{Name: "plan", Title: "Plan"}
	d.Line(layout.Cut, curve.Rectangle(geometry.Rect(0, 0, 400, 150)))
	j := cut(&d, 247, 173, cutting{})[0].sides()[0]
	for _, share := range []float64{0.4, codeWish, 0.8} {
		name := layout.Text{At: j.from.Lerp(j.to, share).Add(geometry.Pt(1, 0)), Height: small, Angle: math.Pi / 2, Align: layout.Left, Words: "F4 A4"}
		d.Texts = []layout.Text{name}
		code, clear := cut(&d, 247, 173, cutting{})[0].codeAt(j, "1", "2")
		for _, x := range code {
			if gap := x.Bounds(); !clear || gap.Overlaps(name.Bounds().Grow(2.9)) {
				t.Errorf("%s stands at %.1f, %s at %.1f", name.Words, name.Bounds(), x.Words, gap)
			}
		}
	}
}

// TestUpsideDown: a name that is another one upside down has a line under it, as figures on
// loose parts have (common practice, no source), and no other has.
func TestUpsideDown(t *testing.T) {
	for name, want := range map[string]bool{"6": true, "9": true, "8": false, "1": false, "11": false, "16": true, "19": true, "18": true, "69": false, "10": false, "12": false, "A6": false} {
		var s layout.Sheet
		setName(&s, layout.Text{At: geometry.Pt(7, 3), Height: small, Words: name})
		if got := len(s.Strokes) == 1; got != want {
			t.Errorf("%s: a line under it: %v, want %v", name, got, want)
		}
		for _, k := range s.Strokes {
			if a, b := ends(k); a.Y != b.Y || a.Y > 2.9 || a.Y < 2 || a.X > 7 || b.X < 8 {
				t.Errorf("%s: the line runs from %v to %v", name, a, b)
			}
		}
	}
}

// TestWordsOffCrosses: words that end close before a registration cross of a tile are moved, so
// that half a millimeter of paper stays between them and its arms.
func TestWordsOffCrosses(t *testing.T) {
	d := layout.Drawing{Name: "plan", Title: "Plan"}
	d.Line(layout.Cut, curve.Rectangle(geometry.Rect(0, 0, 400, 300)))
	first := cut(&d, 247, 173, cutting{})[0]
	at := first.sides()[0].crossPlaces()[2] // at the middle of the joint on its right
	d.Texts = []layout.Text{{At: at.Add(geometry.Pt(-crossArm-0.3, -1.2)), Height: small, Align: layout.Right, Words: "pushed in"}}
	words := cut(&d, 247, 173, cutting{})[0].letter(&layout.Sheet{}, look{})
	if len(words) != 1 {
		t.Fatalf("%d words", len(words))
	}
	arm := geometry.Rect(at.X-crossArm, at.Y-0.01, at.X+crossArm, at.Y+0.01)
	if b := words[0].Bounds(); b.Grow(0.5).Overlaps(arm) {
		t.Errorf("words at %v touch the cross at %v", b, at)
	}
}

// TestTrimOne: at each joint one piece is cut and the other is not.
func TestTrimOne(t *testing.T) {
	d := ring()
	cuts := map[string]int{}
	for _, p := range cut(&d, 247, 173, cutting{}) {
		for _, j := range p.sides() {
			a, b := p.name(), j.other
			if a > b {
				a, b = b, a
			}
			if j.trim {
				cuts[a+"-"+b]++
			} else {
				cuts[a+"-"+b] += 0
			}
		}
	}
	for joint, n := range cuts {
		if n != 1 {
			t.Errorf("%d pieces are cut at the joint %s, want 1", n, joint)
		}
	}
}

// TestKeyNamesTiles: beside a sheet stands each pattern that it has tiles of, with every one of
// these tiles, and each is marked in the pattern's map.
func TestKeyNamesTiles(t *testing.T) {
	tall := layout.Drawing{Name: "tall", Title: "Tall"} // two tiles of it go on a sheet
	for x := 0.0; x <= 100; x += 5 {
		tall.Straight(layout.Mark, x, 0, x, 600)
	}
	other := ring()
	other.Name, other.Title = "other", "Other"
	shared := 0
	for _, s := range lay(t, tall, other).Sheets {
		tiles := map[string][]string{}
		n := 0
		for _, v := range s.Views {
			if v.Tile != "" && v.Tile[0] >= 'A' {
				tiles[v.Drawing.Title] = append(tiles[v.Drawing.Title], v.Tile)
				n++
			}
		}
		if n > 1 {
			shared++
		}
		says := func(words string) bool {
			return slices.ContainsFunc(s.Texts, func(x layout.Text) bool { return math.Abs(x.Angle-math.Pi/2) < 1e-9 && x.Words == words })
		}
		for title, names := range tiles {
			if !says(title) || !says(strings.Join(names, " ")) {
				t.Errorf("sheet %d: the key does not say %v of %s", s.Number, names, title)
			}
		}
		marked := 0
		for _, k := range s.Strokes {
			if b := k.Path.Bounds(); k.Pen == layout.Cut && b.W() < 5 && math.Abs(b.W()-b.H()) < 1e-6 {
				marked++
			}
		}
		if marked != n {
			t.Errorf("sheet %d: %d of %d tiles are marked in a map", s.Number, marked, n)
		}
	}
	if shared == 0 {
		t.Error("no sheet has two tiles")
	}
}

// TestStackedHasNoHeights: sticks over one another have distances along them, and none up
// their stack, where they would measure nothing, nor under the lowest, where their own tape is.
func TestStackedHasNoHeights(t *testing.T) {
	for _, stacked := range []bool{false, true} {
		d := ring()
		d.Stacked = stacked
		along, up, taped := 0, 0, 0
		for _, p := range cut(&d, 247, 173, cutting{}) {
			var s layout.Sheet
			p.drawScales(&s, measure.Metric)
			for _, k := range s.Strokes {
				if a, b := ends(k); a.X != b.X {
					up++
				} else if along++; p.row == p.grid.rows()-1 {
					taped++
				}
			}
		}
		if along == 0 || up > 0 == stacked || taped > 0 == stacked {
			t.Errorf("stacked %v: %d ticks along, %d of them along the lowest, and %d up", stacked, along, taped, up)
		}
	}
}

// TestScaleOffLines: distances along the edges of tiles keep off a line that runs close along
// such an edge, as a baseline does.
func TestScaleOffLines(t *testing.T) {
	d := layout.Drawing{Name: "plan", Title: "Plan"}
	d.Straight(layout.Guide, 0, 0, 700, 0)
	d.Straight(layout.Cut, 0, 0, 700, 450)
	seen := 0
	for _, s := range lay(t, d).Sheets {
		var g label.Ground
		for _, v := range s.Views {
			g.Drawing(&layout.Drawing{Strokes: onSheet(v)})
		}
		for _, x := range s.Texts {
			if _, err := strconv.Atoi(strings.TrimSuffix(x.Words, outWord)); err != nil || x.Height != small {
				continue
			}
			if seen++; !g.Clear(label.BlockOf(x), label.Off-1e-9) {
				t.Errorf("%s stands at a line", x.Words)
			}
		}
	}
	if seen < 8 {
		t.Errorf("%d distances are lettered", seen)
	}
}
