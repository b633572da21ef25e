package label

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// TestClear: a line through letters, a line on their feet and words on words are seen at
// any angle, and what lies beside them is not.
func TestClear(t *testing.T) {
	for _, angle := range []float64{0, math.Pi / 2, 0.7, -2} {
		turn := geometry.Turn(angle)
		at := func(x, y float64) geometry.Point { return turn.Apply(geometry.Pt(x, y)) }
		text := layout.Text{At: at(10, 0), Height: 2.5, Angle: angle, Words: "S1 119.5"}
		wide := BlockOf(text).Wide
		for _, c := range []struct {
			name  string
			a, b  geometry.Point
			clear bool
		}{
			{"through", at(0, 1), at(50, 1), false},
			{"across", at(12, -5), at(12, 5), false},
			{"within", at(12, 1), at(13, 1.2), false},
			{"under", at(0, -0.5), at(50, -0.5), true},
			{"under the feet", at(0, -0.2), at(50, -0.2), false},
			{"before", at(9, -5), at(9, 5), true},
			{"behind", at(10+wide+0.5, -5), at(10+wide+0.5, 5), true},
			{"past the corner", at(9, 3), at(11, 5), true},
		} {
			var g Ground
			g.Straight(c.a, c.b)
			if got := g.Clear(BlockOf(text), Off); got != c.clear {
				t.Errorf("angle %.1f, a line %s: clear %v, want %v", angle, c.name, got, c.clear)
			}
		}
		var g Ground
		g.Text(text)
		text.At = at(11, 1)
		if g.Clear(BlockOf(text), Off) {
			t.Error("words on words are clear")
		}
		text.At = at(10, 4)
		if !g.Clear(BlockOf(text), Off) {
			t.Error("words over words are not clear")
		}
	}
}

// TestNear: near an edge a label turns to the other side of its mark, a line that strikes
// it moves it, and it never leaves its room or passes another mark.
func TestNear(t *testing.T) {
	room := func() *Room { return &Room{Within: geometry.Rect(0, 0, 100, 20)} }
	mark := func(r *Room, x float64) layout.Text {
		r.Straight(geometry.Pt(x, 0), geometry.Pt(x, 20))
		return layout.Text{At: geometry.Pt(x+1.2, 5), Height: 2.5, Words: "S1 119.5 mm"}
	}
	r := room()
	out, _, ok := r.Near(mark(r, 95))
	if !ok || len(out) != 1 || out[0].Align != layout.Right || out[0].At.X > 95 || out[0].At.X < 90 {
		t.Errorf("at the edge: %+v, %v", out, ok)
	}
	r = room()
	text := mark(r, 20)
	r.Straight(geometry.Pt(0, 6), geometry.Pt(100, 6))
	out, _, ok = r.Near(text)
	if !ok || !r.Holds(BlockOf(out[0])) || out[0].At.Sub(text.At).Norm() > 6 {
		t.Errorf("struck: %+v, %v", out, ok)
	}
	r = room()
	text = mark(r, 40)
	r.Straight(geometry.Pt(44, 0), geometry.Pt(44, 20)) // another mark, where the words would stand
	if out, _, ok = r.Near(text); !ok || out[0].Align != layout.Right {
		t.Errorf("beside another mark: %+v, %v", out, ok)
	}
	r = &Room{Within: geometry.Rect(0, 0, 12, 20)}
	if out, _, ok = r.Near(layout.Text{At: geometry.Pt(1, 5), Height: 2.5, Words: "S1 119.5 mm"}); ok || len(out) < 2 {
		t.Errorf("a room too narrow: %+v, %v", out, ok)
	}
}

// TestTied: words that find their place a row or two off their tick have a line that begins at
// it and strikes nothing; words in its own row stand beside it and need none.
func TestTied(t *testing.T) {
	for _, rows := range []int{0, 1, 2} {
		r := &Room{Within: geometry.Rect(0, 0, 100, 40)}
		tick := 30.0
		r.Straight(geometry.Pt(tick, 34), geometry.Pt(tick, 38)) // it hangs from 38
		text := layout.Text{At: geometry.Pt(tick-1.2, 34.2), Height: 2.5, Align: layout.Right, Words: "F12 A12 shoulder 455.8"}
		if rows > 0 { // strikes what stands before
			r.Straight(geometry.Pt(0, 34.2-4.2*float64(rows-1)+0.1), geometry.Pt(28, 34.2-4.2*float64(rows-1)+0.1))
		}
		for row := range rows {
			y := 35.0 - 4.2*float64(row)
			r.Straight(geometry.Pt(34, y), geometry.Pt(99, y))
			r.Straight(geometry.Pt(0, y), geometry.Pt(28, y))
		}
		out, leader, ok := r.Near(text)
		if !ok || (leader != nil) != (rows > 0) {
			t.Fatalf("%d rows off: %+v, a line %v, %v", rows, out, leader != nil, ok)
		}
		if leader == nil {
			continue
		}
		pts := leader.Flatten(0.1)
		if p := pts[0]; math.Abs(p.X-tick) > 0.2 || p.Y < 34 || p.Y > 38 {
			t.Errorf("the line begins at %.1f, off its tick", p)
		}
		if end := pts[len(pts)-1]; BlockOf(out[0]).nearest(end).Sub(end).Norm() > 1.2 {
			t.Errorf("the line ends at %.1f, off the words at %.1f", end, out[0].At)
		}
	}
}

// TestInside: words are moved into a box by what is missing, and stay where that is more than
// a little or where something lies.
func TestInside(t *testing.T) {
	text := layout.Text{At: geometry.Pt(11, 5), Height: 2.5, Words: "A12"}
	for _, c := range []struct {
		from, line, want float64
	}{{10, 90, 11}, {14, 90, 14}, {18, 90, 11}, {14, 15, 11}} {
		r := &Room{Within: geometry.Rect(0, 0, 100, 20)}
		r.Straight(geometry.Pt(c.line, 0), geometry.Pt(c.line, 20))
		if got, _ := r.Inside(text, geometry.Rect(c.from, 0, 100, 20)); math.Abs(got.At.X-c.want) > 1e-9 || got.At.Y != text.At.Y {
			t.Errorf("a box from %.0f mm, a line at %.0f: words at %.1f, want %.0f", c.from, c.line, got.At, c.want)
		}
	}
}

// TestInsideTied: words at the end of a line from their mark that are moved off an edge, across
// their row, have the line led on to them; moved along their row they have none.
func TestInsideTied(t *testing.T) {
	text := layout.Text{At: geometry.Pt(50, 5), Height: 2.5, Words: "F3 A3"}
	for _, c := range []struct {
		box geometry.Box
		led bool
	}{{geometry.Rect(0, 8, 100, 20), true}, {geometry.Rect(53, 0, 100, 20), false}} {
		r := &Room{Within: geometry.Rect(0, 0, 100, 20)}
		r.Straight(geometry.Pt(40, 6.25), geometry.Pt(49, 6.25))
		got, leader := r.Inside(text, c.box)
		if got.At == text.At || (leader != nil) != c.led {
			t.Fatalf("%v: words at %.1f, a line %v", c.box, got.At, leader != nil)
		}
		if pts := leader.Flatten(0.1); c.led && (pts[0].Sub(geometry.Pt(49, 6.25)).Norm() > 0.3 || BlockOf(got).nearest(pts[1]).Sub(pts[1]).Norm() > 1) {
			t.Errorf("a line from %.1f to %.1f leads to words at %.1f", pts[0], pts[1], got.At)
		}
	}
}

// TestClearAmongMany: of many lines, taken one after another, the one that strikes words is
// found wherever it stands among them.
func TestClearAmongMany(t *testing.T) {
	const many = 100
	for struck := range many {
		var g Ground
		for i := range many {
			y := 1000 + 10*float64(i)
			if i == struck {
				y = 1
			}
			g.Straight(geometry.Pt(0, y), geometry.Pt(50, y))
		}
		text := layout.Text{At: geometry.Pt(10, 0), Height: 2.5, Words: "S1 119.5"}
		if g.Clear(BlockOf(text), Off) {
			t.Errorf("line %d of %d strikes words, and they are clear", struck+1, many)
		}
		if g.Reaches(geometry.Pt(20, -5), geometry.Pt(20, 5), own) {
			t.Errorf("line %d of %d is passed over", struck+1, many)
		}
	}
}

// TestPlace: a block finds the one gap in a board that is wide enough, and none in a board
// that is too narrow for it.
func TestPlace(t *testing.T) {
	r := On(curve.Rectangle(geometry.Rect(0, 0, 100, 12)))
	for _, x := range []float64{10, 30, 80} { // gaps of 20 and 50 mm between holes
		r.Line(curve.Circle(geometry.Point{X: x, Y: 6}, 3))
	}
	b, found := r.Place(Block{Wide: 40, High: 4}, geometry.Point{X: 5, Y: 5})
	if !found || b.At.X < 33 || b.At.X+40 > 77 {
		t.Errorf("found %v at %+v", found, b)
	}
	if b, found := r.Place(Block{Wide: 60, High: 8}, geometry.Point{}); found {
		t.Errorf("a block of 60 x 8 mm found room at %+v", b)
	}
}

// TestPlaceCheapest: on wood of the dice a block lies where it costs least, of all places and
// turns that are free, looked at one by one.
func TestPlaceCheapest(t *testing.T) {
	dice := rand.New(rand.NewPCG(7, 3))
	found := 0
	for range 60 {
		r := On(curve.Rectangle(geometry.Rect(-7, 3, 70, 40)))
		for range 12 {
			r.Line(curve.Circle(geometry.Pt(75*dice.Float64()-7, 3+37*dice.Float64()), 3))
		}
		b := Block{Angle: [...]float64{0, 1.2, -0.4}[dice.IntN(3)], Wide: 25 * dice.Float64(), Low: -1, High: 3}
		near := geometry.Pt(120*dice.Float64()-30, 60*dice.Float64()-10)
		var want Block
		least, ok := math.Inf(1), false
		for x := r.Within.Min.X; x < r.Within.Max.X; x += placeStep {
			for y := r.Within.Min.Y; y < r.Within.Max.Y; y += placeStep {
				for k := -mostTurns; k <= mostTurns; k++ {
					c, mid := b, geometry.Pt(x, y)
					c.Angle += placeTurn * float64(k)
					c.At = mid.Sub(geometry.Polar(b.Wide/2, c.Angle)).Sub(geometry.Polar((b.Low+b.High)/2, c.Angle+math.Pi/2))
					if cost := mid.Sub(near).Norm() + perTurn*math.Abs(float64(k)); cost < least && math.Abs(c.Angle) <= math.Pi/2+1e-9 && r.Free(c) {
						want, least, ok = c, cost, true
					}
				}
			}
		}
		got, free := r.Place(b, near)
		if free != ok || ok && got != want {
			t.Errorf("near %v: %+v, %v, want %+v, %v", near, got, free, want, ok)
		}
		if free {
			found++
		}
	}
	if found < 20 {
		t.Errorf("%d blocks found room: too few to tell", found)
	}
}

// TestLed: words whose surroundings are full stand off, with a line to their mark that
// strikes no words; beside the room where the room itself is full.
func TestLed(t *testing.T) {
	r := &Room{Within: geometry.Rect(0, 0, 100, 60)}
	mark := layout.Text{At: geometry.Pt(50, 10), Height: 2.5, Words: "S1 119.5 mm"}
	for y := 0.5; y < 40; y += 0.5 { // lines all over but for the upper third
		r.Straight(geometry.Pt(0, y), geometry.Pt(100, y))
	}
	words := layout.Text{At: geometry.Pt(46, 30), Height: 2.5, Words: "a word in the straight way"}
	r.Text(words)
	out, leader, ok := r.Near(mark)
	if !ok || leader == nil || out[0].At.Y < 40 {
		t.Fatalf("%+v, %v, %v", out, leader, ok)
	}
	if from := leader.Bounds().Min.Y; from < 10 || from > 14 {
		t.Errorf("the line begins at %.1f mm, want it at its mark", from)
	}
	pts := leader.Flatten(0.1)
	for i := 1; i < len(pts); i++ {
		if BlockOf(words).crossed(pts[i-1], pts[i]) {
			t.Error("the line strikes words")
		}
	}
	for y := 40.0; y < 60; y += 0.5 {
		r.Straight(geometry.Pt(0, y), geometry.Pt(100, y))
	}
	if _, _, ok := r.Near(mark); ok {
		t.Error("words found a place in a full room")
	}
	r.Beside = []geometry.Box{geometry.Rect(0, 61, 120, 66)}
	if out, leader, ok := r.Near(mark); !ok || leader == nil || out[0].At.Y < 61 || out[0].At.Y > 64 {
		t.Errorf("beside: %+v, %v", out, ok)
	}
}

// TestShared: what one of several adds to a ground that they share the others do not see.
func TestShared(t *testing.T) {
	var all Ground
	all.Straight(geometry.Pt(0, 0), geometry.Pt(10, 0))
	first, second := all.Shared(), all.Shared()
	first.Straight(geometry.Pt(0, 5), geometry.Pt(10, 5))
	second.Straight(geometry.Pt(0, 9), geometry.Pt(10, 9))
	at := func(y float64) Block { return Block{At: geometry.Pt(4, y-1), Wide: 2, High: 2} }
	for _, c := range []struct {
		name            string
		g               *Ground
		under, one, two bool
	}{{"first", &first, false, false, true}, {"second", &second, false, true, false}, {"shared", &all, false, true, true}} {
		if a, b, d := c.g.Clear(at(0), 0), c.g.Clear(at(5), 0), c.g.Clear(at(9), 0); a != c.under || b != c.one || d != c.two {
			t.Errorf("%s: clear %v, %v, %v at the three lines, want %v, %v, %v", c.name, a, b, d, c.under, c.one, c.two)
		}
	}
}

// TestBrokenBetweenWords: words set in several lines are whole words.
func TestBrokenBetweenWords(t *testing.T) {
	for _, words := range []string{"waterline, 3 1/2 in (89.0 mm) up", "bend begins 18 1/16 in (458.8 mm), radius 5 7/16 in (138.1 mm)"} {
		for n := 1; n < 9; n++ {
			if got := broken(layout.Text{Words: words, Height: 2.5}, n); strings.Join(got, " ") != words || len(got) > n && n > 3 {
				t.Errorf("%d lines: %q", n, got)
			}
		}
	}
}
