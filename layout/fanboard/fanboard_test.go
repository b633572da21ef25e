package fanboard

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/fan"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// board is one whose readings are known without it: a midship rib's half is half of what is read,
// its second mark a fifth; the pair next to it is 20 mm shorter in each half, and for wider boats
// 6 mm more of it; its mortise lies at a twentieth of half the boat and 50 mm. The scale goes on to whole
// steps beyond the readings.
func board() *fan.Board {
	single := func(k fan.Kind, rib, number int, low, high float64) fan.Ray {
		return fan.Ray{Mark: fan.Mark{Kind: k, Rib: rib, Number: number}, Ends: [2][2]float64{{low, high}, {low, high}}}
	}
	return &fan.Board{Rib: fan.Scale{From: 1003, To: 1097}, Half: fan.Scale{From: 1702, To: 1798}, Rays: []fan.Ray{
		single(fan.Length, 0, 0, 501.5, 548.5), single(fan.Stringer, 0, 0, 200.6, 219.4), single(fan.Bend, 0, 0, 203.6, 222.4),
		{Mark: fan.Mark{Kind: fan.Length, Rib: 1}, Net: true, Ends: [2][2]float64{{481.5, 528.5}, {487.5, 534.5}}},
		single(fan.Mortise, 1, 0, 135.1, 139.9),
	}}
}

// scaleOf finds where the figures at the left stand on a lane whose foot lies between two
// heights, and returns the height of any reading by the first and the last of them.
func scaleOf(t *testing.T, d layout.Drawing, low, high float64) func(float64) float64 {
	t.Helper()
	type mark struct{ reading, y float64 }
	var all []mark
	for _, x := range d.Texts {
		v, err := strconv.ParseFloat(x.Words, 64)
		if y := x.At.Y + x.Height/2; err == nil && x.Align == layout.Right && y > low && y < high {
			all = append(all, mark{v, y})
		}
	}
	if len(all) < 3 {
		t.Fatalf("%s letters %d readings", d.Name, len(all))
	}
	a, b := all[0], all[len(all)-1]
	for _, m := range all {
		if want := a.y + (b.y-a.y)*(m.reading-a.reading)/(b.reading-a.reading); math.Abs(m.y-want) > 1e-9 {
			t.Errorf("%s: %.0f stands at %.3f, want %.3f mm", d.Name, m.reading, m.y, want)
		}
	}
	return func(v float64) float64 { return a.y + (b.y-a.y)*(v-a.reading)/(b.reading-a.reading) }
}

// crossed returns where lines of a pen cross a level line, mm, from the zero outward.
func crossed(d layout.Drawing, pen layout.Pen, y float64) (out []float64) {
	for _, s := range d.Strokes {
		p := s.Path.Flatten(0.01)
		a, b := p[0], p[len(p)-1]
		if s.Pen == pen && min(a.Y, b.Y) <= y && max(a.Y, b.Y) >= y && a.Y != b.Y {
			out = append(out, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
		}
	}
	slices.Sort(out)
	return out
}

func near(got, want []float64) bool {
	return slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-6 })
}

// TestReadOffPaper reads each sheet as a builder does: a level line at the own reading, found by the
// figures of the scale, crosses the rays where the marks are.
func TestReadOffPaper(t *testing.T) {
	all := map[string]layout.Drawing{}
	for _, d := range Sheets(board(), "Pack", measure.Metric) {
		all[d.Name] = d
	}
	for _, c := range []struct {
		name        string
		reading     float64
		solid, wide []float64
	}{
		{"fan-0", 1000, []float64{200, 203, 500}, nil}, {"fan-0", 1060, []float64{212, 215, 530}, nil}, {"fan-0", 1100, []float64{220, 223, 550}, nil},
		{"fan-1", 1060, []float64{510}, []float64{516}}, {"fan-mortises", 1740, []float64{137}, nil},
	} {
		d, is := all[c.name]
		if !is || len(all) != 3 {
			t.Fatalf("no %s among %d sheets", c.name, len(all))
		}
		y := scaleOf(t, d, -1e9, 1e9)(c.reading)
		if got := crossed(d, layout.Mark, y); !near(got, c.solid) {
			t.Errorf("%s at %.0f mm: rays at %.3f, want %.3f", c.name, c.reading, got, c.solid)
		}
		if got := crossed(d, layout.Long, y); !near(got, c.wide) {
			t.Errorf("%s at %.0f mm: broken rays at %.3f, want %.3f", c.name, c.reading, got, c.wide)
		}
	}
	if says := all["fan-1"].Make; !strings.Contains(says, "solid one to the broken one") || strings.Contains(all["fan-0"].Make, "bracket") {
		t.Errorf("how a net is read stands at %q, and at %q", says, all["fan-0"].Make)
	}
}

// TestOnePiece: for a cutter the lanes of all ribs lie under one another, apart, each with its
// own scale, on which the same is read as on paper.
func TestOnePiece(t *testing.T) {
	d := Ribs(board(), measure.Metric)
	var names []layout.Text
	for _, x := range d.Texts {
		if x.Height == name {
			names = append(names, x)
		}
	}
	if len(names) != 2 || names[0].Words != "M" || names[1].Words != "F1 A1" {
		t.Fatalf("the lanes are called %v", names)
	}
	between := names[1].At.Y + 10
	if got := crossed(d, layout.Mark, scaleOf(t, d, between, 1e9)(1060)); !near(got, []float64{212, 215, 530}) {
		t.Errorf("midship rays at %.3f", got)
	}
	if got := crossed(d, layout.Mark, scaleOf(t, d, -1e9, between)(1060)); !near(got, []float64{510}) {
		t.Errorf("rays of the next pair at %.3f", got)
	}
}

// TestLabelsClear: words stand beside their own ray and over no other's, though two rays lie 3 mm apart.
func TestLabelsClear(t *testing.T) {
	d := Sheets(board(), "Pack", measure.Metric)[0]
	at := map[string]geometry.Point{}
	for _, x := range d.Texts {
		at[x.Words] = x.At
	}
	for words, top := range map[string]float64{"M S1": 220, "M B1": 223, "M L": 550} {
		if p, is := at[words]; !is || p.X < top || p.X > top+3 {
			t.Errorf("%q stands at %.1f mm, its ray ends at %.0f", words, p.X, top)
		}
	}
	if dy := at["M S1"].Y - at["M B1"].Y; math.Abs(dy) < lettering.MinHeight {
		t.Errorf("two labels side by side stand %.1f mm over one another", dy)
	}
}

// TestInches: in feet and inches the scale goes by whole parts of an inch.
func TestInches(t *testing.T) {
	s := newScale(fan.Scale{From: 1000, To: 1100}, ribHigh, measure.Imperial)
	if n := s.step / (25.4 / 16); n != math.Round(n) || math.Abs(math.Remainder(s.on.From, s.step)) > 1e-6 || s.on.From > 1000 || s.on.To < 1100 {
		t.Errorf("steps of %.4f mm from %.3f to %.3f", s.step, s.on.From, s.on.To)
	}
}

// TestOneReading: builders whose boats are alike have a scale that is a single reading; it is
// drawn high enough to be read.
func TestOneReading(t *testing.T) {
	b := board()
	b.Rib = fan.Scale{From: 1000, To: 1000}
	b.Rays = b.Rays[:1]
	b.Rays[0].Ends = [2][2]float64{{500, 500}, {500, 500}}
	d := Ribs(b, measure.Metric)
	at := slices.IndexFunc(d.Texts, func(x layout.Text) bool { return x.Words == "1000" })
	if at < 0 {
		t.Fatal("the reading is not lettered")
	}
	if got := crossed(d, layout.Mark, d.Texts[at].At.Y+d.Texts[at].Height/2); !near(got, []float64{500}) {
		t.Errorf("the ray lies at %.3f", got)
	}
	for _, s := range d.Strokes {
		if b := s.Path.Bounds(); s.Pen == layout.Mark && b.H() < 24 {
			t.Errorf("the lane is %.1f mm high", b.H())
		}
	}
}

// TestPart: the cutter's part has room round all that is drawn, whole lines stay whole, and a broken
// one of 100 mm is six dashes of 15 and 3 mm and what is left.
func TestPart(t *testing.T) {
	d := layout.Drawing{Title: "Board"}
	d.Straight(layout.Mark, 0, 0, 0, 50)
	d.Straight(layout.Long, 0, 10, 100, 10)
	p := Part(d)
	if b := p.Cut[0].Bounds(); len(p.Cut) != 1 || b != geometry.Rect(-margin, -margin, 100+margin, 50+margin) {
		t.Errorf("%d edges, the first within %v", len(p.Cut), b)
	}
	var dashes [][2]float64
	for _, m := range p.Marks[1:] {
		dashes = append(dashes, [2]float64{m.Bounds().Min.X, m.Bounds().Max.X})
	}
	want := [][2]float64{{0, 15}, {18, 33}, {36, 51}, {54, 69}, {72, 87}, {90, 100}}
	if !slices.EqualFunc(dashes, want, func(a, b [2]float64) bool { return near(a[:], b[:]) }) {
		t.Errorf("dashes %v, want %v", dashes, want)
	}
	if whole := p.Marks[0].Bounds(); whole.H() != 50 {
		t.Errorf("the solid line is %.1f mm long", whole.H())
	}
}
