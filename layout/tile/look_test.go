package tile

import (
	"math"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/sidebyside"
	"ribwright/layout"
	"ribwright/layout/label"
	"ribwright/layout/lettering"
)

// board is a pattern of one large piece, blank but for what is drawn on it.
func board(draw func(d *layout.Drawing)) layout.Drawing {
	d := layout.Drawing{Name: "board", Title: "Board", Make: "make 2"}
	d.Line(layout.Cut, curve.Rectangle(geometry.Rect(0, 0, 200, 100)))
	if draw != nil {
		draw(&d)
	}
	return d
}

// TestHeadingWithin: a heading stands on its own piece where there is a blank for it, clear
// of each line and all words by 2 mm, and takes no paper; a piece full of lines has it over
// it. Each piece has it once.
func TestHeadingWithin(t *testing.T) {
	for name, c := range map[string]struct {
		draw   func(d *layout.Drawing)
		within bool
	}{
		"blank": {nil, true},
		"full of lines": {func(d *layout.Drawing) {
			for y := 5.0; y < 100; y += 5 {
				d.Straight(layout.Mark, 0, y, 200, y)
			}
		}, false},
		"full of words": {func(d *layout.Drawing) {
			for y := 1.0; y < 100; y += 5 {
				d.Write(2, y, 3, layout.Left, "words that leave no room for others, from one edge")
				d.Write(198, y, 3, layout.Right, "of the board to the other edge of it, for this test")
			}
		}, false},
		"lower half blank": {func(d *layout.Drawing) {
			for y := 50.0; y < 100; y += 5 {
				d.Straight(layout.Mark, 0, y, 200, y)
			}
		}, true},
	} {
		doc := lay(t, board(c.draw))
		s := doc.Sheets[0]
		v, said := s.Views[0], 0
		for _, x := range s.Texts {
			if x.Words != "Board" && x.Words != "make 2" {
				continue
			}
			said++
			if got := v.OnSheet().Holds(x.At); got != c.within {
				t.Errorf("%s: %q stands within its piece: %v", name, x.Words, got)
			}
			var g label.Ground
			g.Drawing(&layout.Drawing{Strokes: onSheet(v)})
			if c.within && !g.Clear(label.BlockOf(x), 1.5) {
				t.Errorf("%s: %q stands at a line", name, x.Words)
			}
		}
		if said != 2 {
			t.Errorf("%s: its heading is said %d times", name, said)
		}
	}
}

// onSheet are the lines of a view on its sheet.
func onSheet(v layout.View) []layout.Stroke {
	var out []layout.Stroke
	for _, k := range v.Drawing.Strokes {
		out = append(out, layout.Stroke{Pen: k.Pen, Path: k.Path.Map(v.ToSheet)})
	}
	return out
}

// TestLooks: each look of a piece is lower or narrower than all others, and holds its heading.
func TestLooks(t *testing.T) {
	d := layout.Drawing{Name: "strip", Title: "A strip of a long name", Make: "make 4, and turn each of them end for end at midship before it is marked"}
	for y := 0.0; y <= 30; y += 5 {
		d.Straight(layout.Cut, 0, y, 60, y)
	}
	p := plan{room: geometry.Rect(0, 0, 250, 180), units: measure.Metric}
	k := p.fitted(cut(&d, 250, 180, cutting{}))[0]
	if len(k.looks) < 2 {
		t.Fatalf("%d looks", len(k.looks))
	}
	for i, a := range k.looks {
		texts, high := k.says(measure.Metric).heading(a.lines)
		long, w, h := longest(texts), k.frame.W(), k.frame.H()
		holds := map[heads]bool{
			over:   a.wide > long-closeEnough && a.high > h+high-closeEnough,
			along:  a.wide > w+high-closeEnough && a.high > long-closeEnough,
			behind: a.wide > w+long-closeEnough && a.high > high-closeEnough,
		}
		if !holds[a.heads] || a.wide > 250 {
			t.Errorf("a look of %.1f x %.1f mm, its heading %.1f x %.1f", a.wide, a.high, long, high)
		}
		for _, b := range k.looks[:i] {
			if b.wide <= a.wide && b.high <= a.high {
				t.Errorf("a look of %.1f x %.1f mm after one of %.1f x %.1f", a.wide, a.high, b.wide, b.high)
			}
		}
	}
}

// TestHeadingPastTheCut: a heading over a piece of a strip loses no letter when the piece is
// cut along the joint on its left, and the look is as wide as the heading then reaches.
func TestHeadingPastTheCut(t *testing.T) {
	d := layout.Drawing{Name: "strip", Title: "A strip of a long name", Make: "make 4, turn each end for end"}
	for y := 0.0; y <= 30; y += 2 {
		d.Straight(layout.Cut, 0, y, 600, y)
	}
	p := plan{room: geometry.Rect(0, 0, 250, 180), units: measure.Metric}
	looked := 0
	for _, k := range p.fitted(cut(&d, 250, 180, cutting{})) {
		joint := k.frame.Min.X
		for _, side := range k.sides() {
			if side.from.X == side.to.X && side.trim {
				joint = side.from.X
				looked++
			}
		}
		for _, l := range k.looks {
			if l.heads != over {
				continue
			}
			var s layout.Sheet
			k.headed(&s, measure.Metric, l)
			for _, x := range s.Texts {
				if b := x.Bounds(); b.Min.X < joint-closeEnough || b.Max.X > k.frame.Min.X+l.wide+closeEnough {
					t.Errorf("piece %s: %q stands from %.1f to %.1f mm, cut at %.1f, on a look to %.1f", k.name(), x.Words, b.Min.X, b.Max.X, joint, k.frame.Min.X+l.wide)
				}
			}
		}
	}
	if looked < 2 {
		t.Errorf("%d joints on the left of a piece", looked)
	}
}

// TestSearched: squares and strips that go on four sheets and no fewer, by their area, are
// found to, from a plan that takes more; and twice the same.
func TestSearched(t *testing.T) {
	var all []layout.Drawing
	add := func(w, h float64) {
		d := layout.Drawing{Name: string(rune('a' + len(all))), Title: "P"}
		for y := 0.0; y <= h; y += h / 40 { // no blank for a heading
			d.Straight(layout.Cut, 0, y, w, y)
		}
		all = append(all, d)
	}
	for range 4 { // each four go on one sheet of 252 x 184 mm
		add(153, 122)
		add(88, 122)
		add(153, 42)
		add(88, 42)
	}
	first, again := lay(t, all...), lay(t, all...)
	if len(first.Sheets) != 4 {
		t.Errorf("%d sheets, want 4", len(first.Sheets))
	}
	for i := range first.Sheets {
		for j, v := range first.Sheets[i].Views {
			if w := again.Sheets[i].Views[j]; w.ToSheet != v.ToSheet || w.Drawing.Name != v.Drawing.Name {
				t.Errorf("sheet %d: %s lies elsewhere the second time", i+1, v.Drawing.Name)
			}
		}
	}
}

// TestBlanks: what is remembered of a pattern and of its tiles is what is found on them anew,
// a pattern without a blank included.
func TestBlanks(t *testing.T) {
	all := []layout.Drawing{
		board(func(*layout.Drawing) {}),
		board(func(d *layout.Drawing) {
			for y := 0.0; y < 400; y += 3 {
				d.Straight(layout.Cut, -400, y, 400, y)
			}
		}),
		board(func(d *layout.Drawing) { d.Straight(layout.Cut, -400, 60, 400, 60) }),
	}
	known := &known{}
	for range 2 {
		for i := range all {
			k := cut(&all[i], 2000, 2000, cutting{})[0]
			want, ok := k.within(measure.Metric, nil)
			if got, found := known.within(k, measure.Metric); got != want || found != ok || found == (i == 1) {
				t.Errorf("board %d: %v %v, want %v %v", i, got, found, want, ok)
			}
			for _, how := range []cutting{{}, {first, even, false}, {first, last, false}} {
				for _, k := range cut(&all[i], 130, 70, how) {
					want, ok := k.within(measure.Metric, nil)
					if got, found := known.within(k, measure.Metric); got != want || found != ok {
						t.Errorf("board %d, tile %s: %v %v, want %v %v", i, k.name(), got, found, want, ok)
					}
				}
			}
		}
	}
}

// TestRemembered: what several ask for at the same time is worked out once, and all have it.
func TestRemembered(t *testing.T) {
	var r remembered[int, int]
	var worked atomic.Int32
	sidebyside.Each(100, func(i int) {
		if got := r.of(i%10, func() int { worked.Add(1); return 7 * (i % 10) }); got != 7*(i%10) {
			t.Errorf("%d is remembered as %d", i%10, got)
		}
	})
	if n := worked.Load(); n != 10 {
		t.Errorf("worked out %d times, want 10", n)
	}
}

// TestScattered counts by hand: a family on two sheets and a pattern of its own on one.
func TestScattered(t *testing.T) {
	p := plan{count: 3, drawings: []layout.Drawing{{Name: "a", Family: "f"}, {Name: "b", Family: "f"}, {Name: "c"}}}
	for _, on := range []struct{ drawing, sheet int }{{0, 0}, {1, 0}, {1, 2}, {0, 2}, {2, 2}, {2, 2}} {
		p.pieces = append(p.pieces, piece{pattern: p.pattern(&p.drawings[on.drawing])})
		p.spots = append(p.spots, spot{sheet: on.sheet})
	}
	if n := p.scattered(); n != 3 {
		t.Errorf("patterns lie on %d sheets, each for itself; want 3", n)
	}
}

// TestHeadingInItsRoom: in every look, lying as it is read or turned, a piece and its heading
// stand in the room that is taken for them, also where the heading is longer than the piece.
func TestHeadingInItsRoom(t *testing.T) {
	for _, size := range []geometry.Point{{X: 18, Y: 6}, {X: 8, Y: 120}, {X: 160, Y: 9}} {
		d := layout.Drawing{Name: "part", Title: "Gunwale mortises", Make: "one half, turn over at midship, end for end; places within 2 mm"}
		d.Line(layout.Cut, curve.Rectangle(geometry.Rect(0, 0, size.X, size.Y)))
		k := cut(&d, 247, 173, cutting{})[0]
		for _, l := range k.around(measure.Metric, 247) {
			for _, turned := range []bool{false, true} {
				l.turned = turned
				at := spot{at: geometry.Pt(50, 60), turned: turned, look: l}
				var s layout.Sheet
				k.headed(&s, measure.Metric, l)
				m, room := k.toSheet(at), at.box().Grow(0.6) // letters such as g reach a little under their line
				for _, x := range s.Texts {
					x.At, x.Angle = m.Apply(x.At), x.Angle+layout.TurnOf(m)
					if b := x.Bounds(); !room.Holds(b.Min) || !room.Holds(b.Max) {
						t.Errorf("%v, %+v: %q at %v leaves %v", size, l, x.Words, b, room)
					}
				}
				if a, b := m.Apply(k.frame.Min), m.Apply(k.frame.Max); !room.Holds(a) || !room.Holds(b) {
					t.Errorf("%v, %+v: the piece from %v to %v leaves %v", size, l, a, b, room)
				}
			}
		}
	}
}

// TestHeadingNotCut: the left and the upper joint of a piece are cut, with scissors that may run
// on past it. No heading outside a piece stands where it falls off with them, whether the piece
// lies as it is read or turned, on a strip as on a tile.
func TestHeadingNotCut(t *testing.T) {
	strip := layout.Drawing{Name: "strip", Title: "Gunwale mortises", Make: "one half, turn over at midship, end for end"}
	strip.Line(layout.Cut, curve.Rectangle(geometry.Rect(0, 0, 700, 40)))
	tall := layout.Drawing{Name: "tall", Title: "Body plan", Make: "one half of every rib, turn over at midship and on the middle line"}
	tall.Line(layout.Cut, curve.Rectangle(geometry.Rect(0, 0, 700, 400)))
	seen := 0
	for _, d := range []layout.Drawing{strip, tall} {
		for _, k := range cut(&d, 247, 173, cutting{}) {
			for _, l := range k.around(measure.Metric, 252) {
				for _, turned := range []bool{false, true} {
					l.turned = turned
					var s layout.Sheet
					k.headed(&s, measure.Metric, l)
					for _, x := range s.Texts {
						seen++
						b := label.BlockOf(x).Bounds()
						if left := k.grid.has(k.col-1, k.row); left && b.Min.X < k.cell.Min.X-1e-6 {
							t.Errorf("%s %s, %+v: %q at %v falls off at x %.1f", d.Name, k.name(), l, x.Words, b, k.cell.Min.X)
						}
						if above := k.grid.has(k.col, k.row-1); above && b.Max.Y > k.cell.Max.Y+1e-6 {
							t.Errorf("%s %s, %+v: %q at %v falls off at y %.1f", d.Name, k.name(), l, x.Words, b, k.cell.Max.Y)
						}
					}
				}
			}
		}
	}
	if seen < 40 {
		t.Errorf("%d words looked at", seen)
	}
}

// TestMadeRoom: words that take more sheets than were kept for them get these before all
// pieces, which move on together.
func TestMadeRoom(t *testing.T) {
	set := Set{Title: "Test", First: &layout.First{Codes: strings.Repeat("A code and what it means. ", 600)}, Drawings: []layout.Drawing{ring()}}
	p, err := bestPlan(Set{Title: "Test", First: &layout.First{}, Drawings: set.Drawings}, letter(measure.Metric))
	if err != nil {
		t.Fatal(err)
	}
	was, count := slices.Clone(p.spots), p.count
	q := p.madeRoom(set)
	more := q.fronts - 1
	if more < 1 || len(q.cover(set)) != q.fronts || q.count != count+more {
		t.Fatalf("%d sheets of words, %d kept, %d in all after %d", len(q.cover(set)), q.fronts, q.count, count)
	}
	for i := range was {
		if q.spots[i].sheet != was[i].sheet+more {
			t.Errorf("piece %d lies on sheet %d, was on %d", i, q.spots[i].sheet, was[i].sheet)
		}
	}
}

// TestNameOffSlot: the names of a joint stand on no slot, whose inside is bare, wherever the
// joint falls on one.
func TestNameOffSlot(t *testing.T) {
	for from := 100.0; from < 113; from++ {
		d := layout.Drawing{Name: "strip", Title: "Strip"}
		d.Line(layout.Cut, curve.Rectangle(geometry.Rect(0, 0, 440, 60)))
		for x := from; x < 340; x += 13 { // side by side, with room for names over them
			d.Line(layout.Mark, curve.Rectangle(geometry.Rect(x, 30, x+8, 57)))
		}
		for _, p := range cut(&d, 247, 173, cutting{}) {
			for _, j := range p.sides() {
				code, clear := p.codeAt(j, "1", "2")
				if !clear {
					t.Fatalf("slots from %.0f mm: no place on a joint with much room", from)
				}
				for _, name := range code {
					for _, s := range d.Strokes[1:] {
						if box := s.Path.Bounds(); box.Overlaps(name.Bounds()) {
							t.Errorf("%q at %v stands on the slot at %v", name.Words, name.At, box)
						}
					}
				}
			}
		}
	}
}

// longest is how far texts reach from x = 0.
func longest(texts []layout.Text) float64 {
	out := 0.0
	for _, t := range texts {
		out = math.Max(out, t.At.X+lettering.Width(t.Words, t.Height))
	}
	return out
}
