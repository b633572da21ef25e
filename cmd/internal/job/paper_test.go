package job

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/layout"
)

// TestEconomy holds the number of sheets, the one of words and the one with the plates in
// small among them, joints against what the same patterns took before pieces were
// laid again in turns, and both against a bound that
// no packing can beat: what the tiles of all patterns cover, each place once, and the laps
// that no cutting does without, over all that lies within the margins of a sheet, 195.9 x
// 256.7 mm of letter and 190 x 274.3 of a4, title blocks and scale bars counted as room. The
// sheets that patterns
// lie on are held against it; the sheet of words is not, since no packing saves it.
func TestEconomy(t *testing.T) {
	for _, most := range []struct {
		name, paper    string
		wide, high     float64
		sheets, joints int
		ratio          float64
	}{
		{"brook", "letter", 195.9, 256.7, 14, 26, 1.3}, {"lake", "letter", 195.9, 256.7, 18, 31, 1.3}, {"river", "letter", 195.9, 256.7, 39, 76, 1.3},
		{"brook", "a4", 190, 274.3, 13, 25, 1.3}, {"lake", "a4", 190, 274.3, 17, 30, 1.3}, // river on a4 takes long
	} {
		name := most.name + " on " + most.paper
		l := laidOut(t, most.name, most.paper)
		shown := map[string][]geometry.Box{}
		for _, s := range l.printed.Sheets {
			for _, v := range s.Views {
				shown[v.Drawing.Name] = append(shown[v.Drawing.Name], v.Frame)
			}
		}
		bound := 0.0
		for _, frames := range shown {
			bound += (covered(frames) + lapsOf(frames, most.high)) / (most.wide * most.high)
		}
		n := float64(l.Patterned())
		t.Logf("%s: %.0f sheets of patterns, %d joints, bound %.1f, ratio %.2f", name, n, l.Took.Joints, bound, n/bound)
		if len(l.printed.Sheets) > most.sheets || l.Took.Joints > most.joints || n > most.ratio*bound {
			t.Errorf("%s takes %.0f sheets of patterns and %d joints, %.2f times the bound of %.1f", name, n, l.Took.Joints, n/bound, bound)
		}
		if math.Abs(l.Least/bound-1) > 0.03 { // tiles that are drawn in to their ink show less than a lap of their neighbor
			t.Errorf("%s: the program says the patterns would fill %.2f sheets, want %.2f", name, l.Least, bound)
		}
	}
}

// lapsOf is what laps of 10 mm add at the least to what boxes cover, mm2, felt with lines 0.5 mm
// apart both ways: a line of a length takes so many sheets of paper, and a lap between two.
func lapsOf(boxes []geometry.Box, sheet float64) float64 {
	const lap, step = 10, 0.5
	sum := 0.0
	for _, turned := range []bool{false, true} {
		var all []geometry.Box
		for _, b := range boxes {
			if turned {
				b = geometry.Rect(b.Min.Y, b.Min.X, b.Max.Y, b.Max.X)
			}
			all = append(all, b)
		}
		around := geometry.EmptyBox()
		for _, b := range all {
			around = around.Union(b)
		}
		for y := around.Min.Y + step/2; y < around.Max.Y; y += step {
			var on []geometry.Box
			for _, b := range all {
				if b.Min.Y < y && y < b.Max.Y {
					on = append(on, b)
				}
			}
			slices.SortFunc(on, func(a, b geometry.Box) int { return cmp.Compare(a.Min.X, b.Min.X) })
			for i := 0; i < len(on); {
				from, to := on[i].Min.X, on[i].Max.X
				for i++; i < len(on) && on[i].Min.X < to; i++ {
					to = max(to, on[i].Max.X)
				}
				for left := to - from - sheet; left > 0.01; left -= sheet - lap {
					sum += lap * step
				}
			}
		}
	}
	return sum
}

// covered is the area that boxes cover together, mm2.
func covered(boxes []geometry.Box) float64 {
	var xs []float64
	for _, b := range boxes {
		xs = append(xs, b.Min.X, b.Max.X)
	}
	slices.Sort(xs)
	sum := 0.0
	for i := 1; i < len(xs); i++ {
		var spans []layout.Span
		for _, b := range boxes {
			if b.Min.X <= xs[i-1] && b.Max.X >= xs[i] {
				spans = append(spans, layout.Span{From: b.Min.Y, To: b.Max.Y})
			}
		}
		slices.SortFunc(spans, func(a, b layout.Span) int { return cmp.Compare(a.From, b.From) })
		to := math.Inf(-1)
		for _, s := range spans {
			sum += (xs[i] - xs[i-1]) * max(0, s.To-max(to, s.From))
			to = max(to, s.To)
		}
	}
	return sum
}

// TestOffset checks that an offset moves all ink of every sheet alike: a set with
// an offset is the set with as much wider margins, moved.
func TestOffset(t *testing.T) {
	moved, err := lay(t, "brook", "--nest", "quick", "--margins", "10 mm", "--way", "lying", "--offset", "right 1.5 mm, down 0.5 mm")
	if err != nil {
		t.Fatal(err)
	}
	still, err := lay(t, "brook", "--nest", "quick", "--margins", "left 10 mm, top 10 mm, right 11.5 mm, bottom 10.5 mm", "--way", "lying")
	if err != nil {
		t.Fatal(err)
	}
	if len(moved.printed.Sheets) != len(still.printed.Sheets) {
		t.Fatalf("%d sheets moved, %d not", len(moved.printed.Sheets), len(still.printed.Sheets))
	}
	by := geometry.Point{X: 1.5, Y: -0.5}
	for i, s := range moved.printed.Sheets {
		o := still.printed.Sheets[i]
		for j, v := range s.Views {
			if got := v.ToSheet.Apply(v.Frame.Min).Sub(o.Views[j].ToSheet.Apply(o.Views[j].Frame.Min)); got.Sub(by).Norm() > 1e-9 {
				t.Errorf("sheet %d: piece %d is moved by %v, want %v", i+1, j, got, by)
			}
		}
		for j, k := range s.Strokes {
			if got := k.Path.Bounds().Min.Sub(o.Strokes[j].Path.Bounds().Min); got.Sub(by).Norm() > 1e-9 {
				t.Errorf("sheet %d: line %d is moved by %v, want %v", i+1, j, got, by)
			}
		}
		for j, x := range s.Texts {
			if got := x.At.Sub(o.Texts[j].At); got.Sub(by).Norm() > 1e-9 {
				t.Errorf("sheet %d: %q is moved by %v, want %v", i+1, x.Words, got, by)
			}
		}
	}
}

// TestFirstSheet: sheet 1 is one page that says how to print and put together, what can
// hurt and what was found, whole, and has a bank card's outline; few words stand on it. A
// set of some patterns has no such page.
func TestFirstSheet(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, flags := range [][]string{{"--paper", "letter", "--way", "standing"}, {"--paper", "letter", "--way", "lying", "--units", "imperial"}, {"--paper", "a4", "--way", "standing", "--units", "imperial"}, {"--paper", "a4", "--way", "lying"}, {"--paper", "roll24"}} {
			l, err := lay(t, name, append(flags, "--nest", "quick")...)
			if err != nil {
				t.Fatal(err)
			}
			said := strings.Join(strings.Fields(wordsOf(l.printed.Sheets[0].Texts)), " ")
			for _, w := range []string{"4 on 3", "A2 on A1", "100 %", "steel rule", "bank card", "measured", "Afloat: ", "Wood: ", "life jacket", "Nothing here certifies a boat", "Gunwale mortises"} {
				if !strings.Contains(said, w) {
					t.Errorf("%s %v: sheet 1 does not say %q", name, flags, w)
				}
			}
			if n := len(strings.Fields(said)); n > 575 && flags[1] != "roll24" {
				t.Errorf("%s %v: %d words on sheet 1", name, flags, n)
			}
			if flags[1] != "roll24" && len(l.printed.Sheets[1].Views) == 0 {
				t.Errorf("%s %v: sheet 2 has no pattern on it", name, flags)
			}
		}
		few, err := lay(t, name, "--only", "stems,breasthooks", "--nest", "quick")
		if err != nil {
			continue // its ends differ, and the patterns have other names
		}
		if len(few.printed.Sheets[0].Views) == 0 {
			t.Errorf("%s: some patterns alone begin with a page of words", name)
		}
	}
}
