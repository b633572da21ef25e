package dxf_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/render"
	"ribwright/render/dxf"
	"ribwright/render/rendertest"
)

// step is half of the last of the writer's four decimals, mm.
const step = 0.00005 + 1e-9

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

func box(x0, y0, x1, y1 float64) geometry.Box { return geometry.Box{Min: pt(x0, y0), Max: pt(x1, y1)} }

func plate(move geometry.Affine, parts ...layout.Part) layout.Plate {
	p := layout.Plate{Title: "Brook", W: 1220, H: 800.25, Check: box(12, 12, 112, 112)}
	for _, q := range parts {
		p.Parts = append(p.Parts, layout.Placed{Part: q, Move: move})
	}
	return p
}

func still() geometry.Affine { return geometry.Shift(0, 0) }

func cut(paths ...curve.Path) layout.Part   { return layout.Part{Name: "bow stem", Cut: paths} }
func marks(paths ...curve.Path) layout.Part { return layout.Part{Name: "bow stem", Marks: paths} }

// write traces a plate and writes it, as a job does.
func write(w io.Writer, p layout.Plate) error {
	t, err := render.Trace(p)
	if err != nil {
		return err
	}
	return dxf.Encode(w, t)
}

func encode(t *testing.T, p layout.Plate) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func read(t *testing.T, p layout.Plate) *rendertest.DXF {
	t.Helper()
	d, err := rendertest.ReadDXF(encode(t, p))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// everything is a plate with every kind of path, a hole, letters and a board.
func everything() layout.Plate {
	var ps []curve.Path
	for _, k := range rendertest.Segments() {
		if k.Length() > 0 {
			ps = append(ps, curve.Path{k})
		}
	}
	a := layout.Part{Name: "yoke", Cut: []curve.Path{curve.Circle(pt(50, 30), 4), curve.Rectangle(box(0, 0, 300, 60))},
		Marks: ps, Letters: []layout.Text{{At: pt(20, 10), Height: 5, Words: "Yoke (A&B) <3>"}}}
	p := plate(geometry.Turn(2.5).Then(geometry.Shift(800, 500)), a)
	p.Boards = []layout.Board{{Box: box(0, 0, 1220, 800.25), Title: "sheet 1 of 1"}}
	return p
}

// TestHeader checks what a shop's program looks for: the release, millimetres
// (4 in the published table of units, 1 for metric) and what the drawing fills.
func TestHeader(t *testing.T) {
	d := read(t, everything())
	for name, want := range map[string][]string{
		"$ACADVER": {"AC1009"}, "$INSUNITS": {"4"}, "$MEASUREMENT": {"1"}, "$LIMMIN": {"0", "0"}, "$LIMMAX": {"1220", "800.25"},
	} {
		if !slices.Equal(d.Header[name], want) {
			t.Errorf("%s is %q, want %q", name, d.Header[name], want)
		}
	}
	all := rendertest.Nowhere()
	for _, e := range d.Entities {
		b := e.Outline.Bounds()
		all = rendertest.Around(rendertest.Point{X: math.Min(all.X0, b.X0), Y: math.Min(all.Y0, b.Y0)}, rendertest.Point{X: math.Max(all.X1, b.X1), Y: math.Max(all.Y1, b.Y1)})
	}
	said := rendertest.Box{X0: number(t, d, "$EXTMIN", 0), Y0: number(t, d, "$EXTMIN", 1), X1: number(t, d, "$EXTMAX", 0), Y1: number(t, d, "$EXTMAX", 1)}
	if all.Off(said) > 0.02 {
		t.Errorf("the header says %.4f, the drawing fills %.4f", said, all)
	}
	if want := append([]string{"0"}, layout.Layers()...); !slices.Equal(d.Layers, want) {
		t.Errorf("layers %v, want %v", d.Layers, want)
	}
	for _, l := range d.Layers {
		if strings.Trim(l, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789$-_") != "" || len(l) > 31 {
			t.Errorf("layer %q cannot be in release 12", l)
		}
		if d.Colors[l] != 7 {
			t.Errorf("layer %s has colour %d, want 7, black on white", l, d.Colors[l])
		}
	}
	said2 := strings.Join(d.Comments, "")
	for _, w := range []string{"no cutter offset applied", "one unit is one millimeter", "Brook"} {
		if !strings.Contains(said2, w) {
			t.Errorf("the comments %q do not say %q", said2, w)
		}
	}
}

func number(t *testing.T, d *rendertest.DXF, name string, i int) float64 {
	t.Helper()
	var v float64
	if len(d.Header[name]) <= i {
		t.Fatalf("%s is %q", name, d.Header[name])
	}
	if _, err := fmt.Sscan(d.Header[name][i], &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// TestKinds checks that arcs stay arcs, alone and among lines, and that nothing
// but the simplest kind is used.
func TestKinds(t *testing.T) {
	arc := curve.Arc{Center: pt(100, 300), Radius: 50, From: 1, Sweep: -2.5}
	slot := curve.Path{
		curve.Line{A: pt(200, 300), B: pt(260, 300)}, curve.Arc{Center: pt(260, 310), Radius: 10, From: -math.Pi / 2, Sweep: math.Pi},
		curve.Line{A: pt(260, 320), B: pt(200, 320)}, curve.Arc{Center: pt(200, 310), Radius: 10, From: math.Pi / 2, Sweep: math.Pi}}
	for _, row := range []struct {
		name   string
		path   curve.Path
		kind   string
		bulges int
		pieces int // chords and arcs
	}{
		{"line", curve.Polyline(pt(1, 2), pt(3, 4)), "LINE", 0, 1},
		{"arc", curve.Path{arc}, "ARC", 0, 0},
		{"more than half a turn", curve.Path{curve.Arc{Center: pt(0, 0), Radius: 50, From: 1, Sweep: 5}}, "ARC", 0, 0},
		{"circle", curve.Circle(pt(5, 5), 3), "CIRCLE", 0, 0},
		{"slot", slot, "POLYLINE", 2, 0},
		{"line and most of a circle", curve.Path{curve.Line{A: pt(0, 0), B: pt(50, 0)}, curve.Arc{Center: pt(50, 20), Radius: 20, From: -math.Pi / 2, Sweep: 5}}, "POLYLINE", 2, 0},
		{"two lines", curve.Polyline(pt(1, 2), pt(30, 4), pt(30, 40)), "POLYLINE", 0, 2},
	} {
		got := read(t, plate(still(), marks(row.path))).On("MARK")
		if len(got) != 1 || got[0].Kind != row.kind || got[0].Bulges != row.bulges {
			t.Errorf("%s: %d entities, the first a %s with %d bulges; want one %s with %d", row.name, len(got), got[0].Kind, got[0].Bulges, row.kind, row.bulges)
			continue
		}
		if row.pieces > 0 && len(got[0].Outline.Pieces) != row.pieces {
			t.Errorf("%s: %d pieces, want %d", row.name, len(got[0].Outline.Pieces), row.pieces)
		}
	}
}

// TestArcIsTrue measures a radius of 500 mm back out of the file, as an arc of its
// own and as a bulge, at every size and sense of sweep.
func TestArcIsTrue(t *testing.T) {
	const radius, tol = 500, 0.001
	for _, sweep := range []float64{math.Pi / 2, 3.1, -1, 0.01, -6, 6.2, 179 * math.Pi / 180} {
		for _, alone := range []bool{true, false} {
			arc := curve.Arc{Center: pt(40, -25), Radius: radius, From: 0.3, Sweep: sweep}
			path := curve.Path{arc}
			if !alone {
				path = curve.Path{curve.Line{A: arc.Start().Add(pt(70, 80)), B: arc.Start()}, arc}
			}
			move := geometry.Turn(2.2).Then(geometry.Shift(600, 410))
			pieces := read(t, plate(move, marks(path))).On("MARK")[0].Outline.Pieces
			if !alone {
				pieces = pieces[1:]
			}
			center := move.Apply(arc.Center)
			length, last := 0.0, pieces[0].From
			for _, p := range pieces {
				for k := 1; k <= 32; k++ {
					q := p.At(float64(k) / 32)
					if off := math.Hypot(q.X-center.X, q.Y-center.Y) - radius; math.Abs(off) > tol {
						t.Fatalf("sweep %g, alone %v: radius off by %.4f mm", sweep, alone, off)
					}
					length, last = length+last.To(q), q
				}
			}
			if off := length - radius*math.Abs(sweep); math.Abs(off) > 0.01 {
				t.Errorf("sweep %g, alone %v: %.4f mm too long", sweep, alone, off)
			}
			from, to := move.Apply(arc.Start()), move.Apply(arc.End())
			if alone && sweep < 0 {
				from, to = to, from // the format knows only one way round
			}
			if a, b := pieces[0].From, last; math.Hypot(a.X-from.X, a.Y-from.Y) > 2*step || math.Hypot(b.X-to.X, b.Y-to.Y) > 2*step {
				t.Errorf("sweep %g, alone %v: runs from %v to %v, want %v to %v", sweep, alone, a, b, from, to)
			}
		}
	}
}

// TestCubicIsClose checks the chords of a cubic against the cubic itself.
func TestCubicIsClose(t *testing.T) {
	c := curve.Cubic{P0: pt(0, 0), P1: pt(300, 0), P2: pt(300, 100), P3: pt(600, 100)}
	o := read(t, plate(still(), marks(curve.Path{c}))).On("MARK")[0].Outline
	const fine = 400000 // places along the cubic, 0.0015 mm apart
	wide := fine / len(o.Pieces)
	for k, p := range o.Pieces {
		mid := p.At(0.5)
		least := math.Inf(1)
		for i := (k - 1) * wide; i <= (k+2)*wide; i += 1 + wide/2000 {
			q := c.At(float64(i) / fine)
			least = math.Min(least, math.Hypot(q.X-mid.X, q.Y-mid.Y))
		}
		if least > 0.0025 {
			t.Errorf("a chord lies %.4f mm off, want 0.002", least)
		}
		if l := p.From.To(p.To); l < 0.5 {
			t.Errorf("a chord is %.3f mm long; controllers stutter below 0.5", l)
		}
	}
}

func TestFIsNotMirrored(t *testing.T) {
	f := []geometry.Point{pt(0, 0), pt(10, 0), pt(10, 30), pt(30, 30), pt(30, 40), pt(10, 40), pt(10, 60), pt(40, 60), pt(40, 70), pt(0, 70)}
	for _, turn := range []float64{0, math.Pi / 2, 3.7} {
		move := geometry.Turn(turn).Then(geometry.Shift(300, 250))
		got := read(t, plate(move, cut(curve.Polygon(f...)))).On("CUT")[0].Outline
		for i, q := range got.Corners() {
			if want := move.Apply(f[i]); math.Abs(q.X-want.X) > step || math.Abs(q.Y-want.Y) > step {
				t.Errorf("turned %g: corner %d at %v, want %v, y up", turn, i, q, want)
			}
		}
		// By hand: 10 x 70 + 20 x 10 + 30 x 10, counter-clockwise.
		if a := got.Area(1); math.Abs(a-1200) > 0.02 {
			t.Errorf("turned %g: area %.3f mm2, want +1200", turn, a)
		}
	}
}

func TestCutIsClosedAndSquareIs100(t *testing.T) {
	d := read(t, everything())
	for _, e := range d.On("CUT") {
		if !e.Outline.Closed {
			t.Errorf("a %s to cut is open", e.Kind)
		}
	}
	squares := 0
	for _, e := range d.On("SCALE") {
		if b, ok := e.Outline.Rectangle(0); ok && b.W() == 100 && b.H() == 100 {
			squares++
		}
	}
	if squares != 1 {
		t.Errorf("%d squares of 100 mm, want one", squares)
	}
	for _, e := range d.On("CUT")[:1] {
		if e.Kind != "CIRCLE" || e.Radius != 4 {
			t.Errorf("the first to cut is a %s of radius %g, want the hole", e.Kind, e.Radius)
		}
	}
}

func TestColors(t *testing.T) {
	p := everything()
	p.Colors = map[string]layout.Color{"CUT": {R: 250, G: 3}, "MARK": {B: 255}, "LETTERING": {R: 10, G: 10, B: 10}}
	d := read(t, p)
	// Red is 1, blue 5, black 7 in the published palette.
	for l, want := range map[string]int{"CUT": 1, "MARK": 5, "LETTERING": 7, "SCALE": 7} {
		if d.Colors[l] != want {
			t.Errorf("%s has colour %d, want %d", l, d.Colors[l], want)
		}
	}
}

func TestHostileTitles(t *testing.T) {
	for _, title := range []string{"", "Rib <3>\r\n  0\r\nEOF", "caf\xe9 \u00e9\u2033", "\U0001F6F6", strings.Repeat("long ", 300), "\x00"} {
		p := everything()
		p.Title, p.Notes = title, []string{title}
		p.Parts[0].Part.Name = title
		src := encode(t, p)
		if _, err := rendertest.ReadDXF(src); err != nil {
			t.Errorf("%.20q: %v", title, err)
		}
		if i := bytes.IndexFunc(src, func(r rune) bool { return r > '~' || r < ' ' && r != '\r' && r != '\n' }); i >= 0 {
			t.Errorf("%.20q: byte %d is not plain", title, i)
		}
	}
}

func TestSameBytesTwiceAndAllOrNothing(t *testing.T) {
	first := encode(t, everything())
	for range 5 {
		if !bytes.Equal(first, encode(t, everything())) {
			t.Fatal("the same plate gave other bytes")
		}
	}
	for _, room := range []int{0, 1, 1000} {
		if err := write(&rendertest.Full{Room: room}, everything()); !errors.Is(err, rendertest.ErrFull) {
			t.Errorf("room for %d bytes: error %v, want the writer's own", room, err)
		}
	}
	for name, p := range map[string]layout.Plate{
		"open outline": plate(still(), cut(curve.Rectangle(box(10, 10, 90, 90))[:3])),
		"NaN":          plate(still(), cut(curve.Polygon(pt(0, 0), pt(math.NaN(), 5), pt(9, 9)))),
		"mirrored":     plate(geometry.Stretch(1, -1), cut(curve.Rectangle(box(10, 10, 90, 90)))),
	} {
		var b bytes.Buffer
		if err := write(&b, p); err == nil || b.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes written", name, err, b.Len())
		}
	}
}
