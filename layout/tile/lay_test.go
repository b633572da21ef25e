package tile

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/paper"
)

// letter is what home printers hold, its sheets lying.
func letter(u measure.System) Options {
	return Options{Paper: paper.Setup{Size: paper.Letter(), Margins: paper.HomeMargins()}, Way: Lying, Units: u}
}

// ring is a pattern of one large circle: its middle tiles are empty.
func ring() layout.Drawing {
	d := layout.Drawing{Name: "ring", Title: "Ring"}
	d.Line(layout.Cut, curve.Circle(geometry.Point{X: 20, Y: -30}, 420))
	return d
}

func lay(t *testing.T, drawings ...layout.Drawing) Laid {
	t.Helper()
	doc, err := Lay(Set{Title: "Test", Drawings: drawings}, letter(measure.Metric))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// TestNothingIsLost checks that every point of a pattern shows on some sheet at
// full size, and that what two sheets show agrees.
func TestNothingIsLost(t *testing.T) {
	doc := lay(t, ring())
	room := roomOf(doc.Paper)
	for i := range 3600 {
		p := geometry.Point{X: 20, Y: -30}.Add(geometry.Polar(420, float64(i)*math.Pi/1800))
		shown := 0
		for _, s := range doc.Sheets {
			for _, v := range s.Views {
				if !v.Frame.Holds(p) {
					continue
				}
				shown++
				at := v.ToSheet.Apply(p)
				if !room.Grow(1e-6).Holds(at) {
					t.Fatalf("%v lies at %v on a sheet, outside %v", p, at, room)
				}
				if m := v.ToSheet; m.A*m.A+m.B*m.B != 1 || m.A*m.B != 0 || m.Det() != 1 {
					t.Fatalf("a view is not at full size, or askew: %+v", m)
				}
			}
		}
		if shown == 0 {
			t.Fatalf("%v is on no sheet", p)
		}
	}
}

// TestEmptyTiles checks that tiles inside the ring are left out, and only those
// without ink.
func TestEmptyTiles(t *testing.T) {
	d := ring()
	ps := cut(&d, 247, 173, cutting{})
	g := ps[0].grid
	full := g.cols() * g.rows()
	if len(ps) >= full {
		t.Fatalf("all %d tiles are printed although the middle is empty", full)
	}
	for row := range g.rows() {
		for col := range g.cols() {
			c := g.full(col, row)
			touched := false
			for i := range 36000 {
				p := geometry.Point{X: 20, Y: -30}.Add(geometry.Polar(420, float64(i)*math.Pi/18000))
				touched = touched || c.Holds(p)
			}
			if touched && !g.has(col, row) {
				t.Errorf("tile %s holds part of the ring and is left out", g.tileName(col, row))
			}
		}
	}
}

// TestLaps checks that neighbors show the same 10 mm and that frames fit.
func TestLaps(t *testing.T) {
	d := ring()
	for _, p := range cut(&d, 247, 173, cutting{}) {
		if p.frame.W() > 247+closeEnough || p.frame.H() > 173+closeEnough {
			t.Errorf("tile %s is %.2f x %.2f mm, too large", p.name(), p.frame.W(), p.frame.H())
		}
		if p.grid.has(p.col-1, p.row) {
			left := p.grid.frame(p.col-1, p.row)
			if lap := left.Max.X - p.frame.Min.X; math.Abs(lap-10) > 1e-9 {
				t.Errorf("tile %s overlaps its left neighbor by %.3f mm, want 10", p.name(), lap)
			}
		}
	}
}

// TestPiecesDoNotOverlap stacks pieces of many sizes and checks sheets for
// overlaps, captions included.
func TestPiecesDoNotOverlap(t *testing.T) {
	var drawings []layout.Drawing
	for i := range 40 {
		d := layout.Drawing{Name: string(rune('a' + i)), Title: "Part"}
		w, h := 30+float64(i*37%500), 12+float64(i*13%90)
		d.Line(layout.Cut, curve.Rectangle(geometry.Box{Max: geometry.Point{X: w, Y: h}}))
		drawings = append(drawings, d)
	}
	doc := lay(t, drawings...)
	room := roomOf(doc.Paper)
	views := 0
	for n, s := range doc.Sheets {
		var taken []geometry.Box
		headings := slices.DeleteFunc(slices.Clone(s.Texts), func(x layout.Text) bool { return x.Words != "Part" }) // one a view, in their order
		for i, v := range s.Views {
			views++
			b := v.OnSheet()
			b = b.Union(headings[i].Bounds())
			if !room.Grow(0.02).Holds(b.Min) || !room.Grow(0.02).Holds(b.Max) {
				t.Errorf("sheet %d: a piece at %v leaves %v", n+1, b, room)
			}
			for _, o := range taken {
				if b.Grow(-0.01).Overlaps(o) {
					t.Errorf("sheet %d: pieces %v and %v overlap", n+1, b, o)
				}
			}
			taken = append(taken, b)
		}
	}
	if views < 40 {
		t.Errorf("%d views of 40 drawings", views)
	}
}

// TestCrossesAgree checks that both pieces of a joint work out the same crosses.
func TestCrossesAgree(t *testing.T) {
	d := ring()
	at := map[string][]geometry.Point{}
	for _, p := range cut(&d, 247, 173, cutting{}) {
		for _, s := range p.sides() {
			a, b := p.name(), s.other
			if a > b {
				a, b = b, a
			}
			places := s.crossPlaces()
			if len(places) < 2 {
				t.Errorf("joint %s-%s has %d crosses", a, b, len(places))
			}
			key := a + "-" + b
			if first, ok := at[key]; ok {
				for i := range places {
					if first[i] != places[i] {
						t.Errorf("joint %s: crosses at %v and %v", key, first, places)
					}
				}
				delete(at, key)
				continue
			}
			at[key] = places
		}
	}
	if len(at) > 0 {
		t.Errorf("joints seen from one side only: %v", at)
	}
}

// TestSheetsAreReadable checks the size of all lettering and that the first
// sheet tells how to print, what the scale bars are for and what can hurt.
func TestSheetsAreReadable(t *testing.T) {
	named := ring()
	named.Title = "Ring " + strings.Repeat("of a long name ", 20)
	set := Set{Title: strings.Repeat("A long title ", 30), For: "someone", Drawings: []layout.Drawing{named},
		First: &layout.First{Notes: []layout.Note{{Heading: "Codes", Lines: []string{"X is a code"}}}, Cautions: []string{"mind the steam"}}}
	doc, err := Lay(set, letter(measure.Imperial))
	if err != nil {
		t.Fatal(err)
	}
	var words []string
	for n, s := range doc.Sheets {
		for _, x := range s.Texts {
			if x.Height < lettering.MinHeight {
				t.Errorf("sheet %d: %q is %.2f mm high", n+1, x.Words, x.Height)
			}
			if b := x.Bounds(); b.Min.X < 9.99 || b.Max.X > doc.Paper.W-9.99 || b.Min.Y < 12.69 || b.Max.Y > doc.Paper.H-9.99 {
				t.Errorf("sheet %d: %q leaves the printable area: %v", n+1, x.Words, b)
			}
			if n == 0 {
				words = append(words, x.Words)
			}
		}
	}
	first := strings.Join(words, " ")
	for _, w := range []string{"100 %", "one side", "X is a code", "mind the steam", "Ring of a long name"} {
		if !strings.Contains(first, w) {
			t.Errorf("the first sheet does not say %q", w)
		}
	}
}

// TestNamedAgain: a line that many tiles cross has its name once on each, whole between the
// joints and clear of all that is drawn; a tile without the line has none.
func TestNamedAgain(t *testing.T) {
	d := ring()
	d.Straight(layout.Mark, -300, 60, 300, 60)
	for x := -300.0; x < 300; x += 5 {
		d.Again = append(d.Again, layout.Text{At: geometry.Pt(x, 61), Height: 2.5, Words: "water"}, layout.Text{At: geometry.Pt(x, 56), Height: 2.5, Words: "water"})
	}
	named := 0
	for _, s := range lay(t, d).Sheets {
		for _, v := range s.Views {
			n := 0
			for _, x := range s.Texts {
				b := x.Bounds()
				if x.Words != "water" || !v.OnSheet().Holds(b.Center()) {
					continue
				}
				n++
				if calm := v.OnSheet().Grow(-lap); !calm.Holds(b.Min) || !calm.Holds(b.Max) {
					t.Errorf("tile %s, %.1f on its sheet: the name stands at %.1f in a lap", v.Tile, v.OnSheet(), b)
				}
			}
			crossed := v.Frame.Min.Y+lap < 54 && v.Frame.Max.Y-lap > 66 && v.Frame.W() > 60
			if crossed && n != 1 || n > 1 {
				t.Errorf("tile %s, %.0f: the line is named %d times", v.Tile, v.Frame, n)
			}
			named += n
		}
	}
	if named < 2 {
		t.Errorf("named %d times", named)
	}
}

// TestNoInk checks that a pattern with nothing in it is refused by name.
func TestNoInk(t *testing.T) {
	_, err := Lay(Set{Drawings: []layout.Drawing{{Name: "x", Title: "Empty one"}}}, letter(measure.Metric))
	if err == nil || !strings.Contains(err.Error(), "Empty one") {
		t.Errorf("got %v", err)
	}
}
