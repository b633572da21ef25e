package pdf_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/render/rendertest"
)

func TestArcIsTrue(t *testing.T) {
	const radius, tol = 500, 0.02 // mm; the drawing library's own arcs are off by 0.5 to 7 mm here
	wide := geometry.Box{Min: pt(-600, -600), Max: pt(600, 600)}
	for _, row := range []struct{ from, sweep float64 }{
		{0, math.Pi / 2}, {0, 2 * math.Pi}, {0.3, 3.1}, {2, -1}, {-1, 0.01}, {4, -6}, {0.1, 179 * math.Pi / 180},
	} {
		arc := curve.Arc{Center: pt(40, -25), Radius: radius, From: row.from, Sweep: row.sweep}
		for name, doc := range map[string]layout.Document{
			"sheet": onSheet(alone(curve.Path{arc}), nil),
			"view":  shown(alone(curve.Path{arc}), nil, wide, geometry.Shift(33.3, 71.7)),
		} {
			t.Run(fmt.Sprintf("%s from %g by %g", name, row.from, row.sweep), func(t *testing.T) {
				move := pt(0, 0)
				if name == "view" {
					move = pt(33.3, 71.7)
				}
				center := arc.Center.Add(move)
				o := readPath(t, doc)
				turned := 0.0
				last := math.NaN()
				for _, q := range o.Points(64) {
					x, y := q.X-center.X, q.Y-center.Y
					if off := math.Hypot(x, y) - radius; math.Abs(off) > tol {
						t.Fatalf("radius off by %.4f mm at (%.2f, %.2f)", off, q.X, q.Y)
					}
					a := math.Atan2(y, x)
					if !math.IsNaN(last) {
						turned += math.Remainder(a-last, 2*math.Pi)
					}
					last = a
				}
				if off := (turned - row.sweep) * radius; math.Abs(off) > tol {
					t.Errorf("swept %.6f of %.6f rad, %.4f mm off at the end", turned, row.sweep, off)
				}
				pts := o.Points(1)
				at(t, "start", pts[0], arc.Start().Add(move), step)
				at(t, "end", pts[len(pts)-1], arc.End().Add(move), step)
			})
		}
	}
}

func TestSquareMeasures100(t *testing.T) {
	for _, corner := range []geometry.Point{pt(10, 10), pt(33.333, 47.777), pt(0.0013, 99.9987)} {
		b := geometry.Box{Min: corner, Max: corner.Add(pt(100, 100))}
		o := readPath(t, onSheet(alone(curve.Rectangle(b)), nil))
		got, ok := o.Rectangle(1e-9)
		if !ok || math.Abs(got.W()-100) > 0.005 || math.Abs(got.H()-100) > 0.005 {
			t.Errorf("square from %v measures %.4f x %.4f mm, want 100 within 0.005; upright and closed: %v", corner, got.W(), got.H(), ok)
		}
		at(t, "its corner", rendertest.Point{X: got.X0, Y: got.Y0}, corner, step)
	}
}

func TestEveryKindIsDrawn(t *testing.T) {
	for i, k := range rendertest.Segments() {
		t.Run(fmt.Sprintf("%d %T", i, k), func(t *testing.T) {
			o := readPath(t, onSheet(alone(curve.Path{k}), nil))
			pts := o.Points(1)
			if len(pts) == 0 { // a line of no length leaves a point
				if k.Length() > 0 {
					t.Fatal("nothing drawn")
				}
				return
			}
			at(t, "start", pts[0], k.Start(), step)
			at(t, "end", pts[len(pts)-1], k.End(), step)
			checkShape(t, k, o)
		})
	}
}

// checkShape compares what was drawn with what was meant between the ends.
func checkShape(t *testing.T, k curve.Segment, o rendertest.Outline) {
	t.Helper()
	switch k := k.(type) {
	case curve.Line:
		if len(o.Pieces) != 1 || o.Pieces[0].Curved {
			t.Errorf("a line became %d pieces", len(o.Pieces))
		}
	case curve.Cubic:
		if len(o.Pieces) != 1 || !o.Pieces[0].Curved {
			t.Fatalf("a cubic became %d pieces", len(o.Pieces))
		}
		for n := range 21 {
			s := float64(n) / 20
			at(t, fmt.Sprintf("t = %.2f", s), o.Pieces[0].At(s), k.At(s), step)
		}
	case curve.Arc:
		n := float64(len(o.Pieces))
		for i, p := range o.Pieces {
			at(t, fmt.Sprintf("middle of piece %d", i), p.At(0.5), k.At((float64(i)+0.5)/n), step)
		}
	default:
		t.Fatalf("no check for %T: the kinds have grown", k)
	}
}

func TestPathOfEveryKindStaysJoined(t *testing.T) {
	p := curve.Path{
		curve.Line{A: pt(20, 20), B: pt(80, 20)},
		curve.Arc{Center: pt(80, 50), Radius: 30, From: -math.Pi / 2, Sweep: math.Pi / 2},
		curve.Cubic{P0: pt(110, 50), P1: pt(110, 90), P2: pt(60, 70), P3: pt(20, 90)},
		curve.Line{A: pt(20, 90), B: pt(20, 20)},
	}
	for name, row := range map[string]struct {
		path   curve.Path
		closed bool
		ends   []geometry.Point
	}{
		"open":                 {p[:3], false, []geometry.Point{pt(20, 20), pt(80, 20), pt(95, 50-15*math.Sqrt(3)), pt(95, 0), pt(110, 50), pt(20, 90)}},
		"closed by a line":     {p, true, nil},
		"closed by a cubic":    {append(curve.Path{p[3]}, p[:3]...), true, nil},
		"reversed, closed too": {p.Reverse(), true, nil},
	} {
		o := readPath(t, onSheet(alone(row.path), nil))
		if o.Closed != row.closed {
			t.Errorf("%s: closed %v, want %v", name, o.Closed, row.closed)
		}
		for _, q := range row.path {
			if !slices.ContainsFunc(o.Points(1), func(g rendertest.Point) bool {
				return math.Abs(g.X-q.Start().X) <= step && math.Abs(g.Y-q.Start().Y) <= step
			}) {
				t.Errorf("%s: no piece starts at %v", name, q.Start())
			}
		}
		// A side left out or run the wrong way would change the area. The step of
		// the ends round 300 mm of outline is worth 0.5 mm2.
		want := curve.Area(row.path.Flatten(0.001))
		if got := o.Area(64); math.Abs(got-want) > 0.5 {
			t.Errorf("%s: area %.2f mm2, want %.2f", name, got, want)
		}
	}
}

// TestClosedByACurveHasNoSliver: the end of a curve and the beginning of an
// outline are rounded differently in the file. When the closing stroke has to make
// up for that it is a sliver of a line, and a renderer's corner there points
// anywhere.
func TestClosedByACurveHasNoSliver(t *testing.T) {
	for i := range 40 {
		at := pt(20+float64(i)*1.2345678, 30+float64(i)*0.7654321)
		for name, path := range map[string]curve.Path{
			"arc":   curve.Circle(at.Add(pt(30, 30)), 20.123456),
			"cubic": {curve.Line{A: at, B: at.Add(pt(50, 3))}, curve.Cubic{P0: at.Add(pt(50, 3)), P1: at.Add(pt(60, 40)), P2: at.Add(pt(30, 50)), P3: at}},
		} {
			o := readPath(t, onSheet(alone(path), nil))
			if !o.Closed {
				t.Fatalf("%s %d: not closed", name, i)
			}
			for _, p := range o.Pieces {
				if long := p.From.To(p.To); !p.Curved && long < 1 {
					t.Errorf("%s %d: closed by a line of %.5f mm", name, i, long)
				}
			}
		}
	}
}

func TestPens(t *testing.T) {
	var strokes []layout.Stroke
	pens := layout.Pens()
	for i := range 3 * len(pens) { // each after each other, and after itself
		p := pens[(i*i+i/2)%len(pens)]
		strokes = append(strokes, layout.Stroke{Pen: p, Path: curve.Polyline(pt(10, float64(20+i)), pt(90, float64(20+i)))})
	}
	// Begin and end with the same dashed pen: what the clip's end takes back must
	// be set anew.
	dashed := layout.Stroke{Pen: layout.Guide, Path: curve.Polyline(pt(10, 100), pt(90, 100))}
	strokes = append(append([]layout.Stroke{dashed}, strokes...), dashed)
	frame := geometry.Box{Max: pt(200, 150)}
	doc := shown(strokes, nil, frame, geometry.Shift(5, 5))
	doc.Sheets[0].Strokes = strokes
	doc.Sheets = append(doc.Sheets, doc.Sheets[0])
	for n, page := range readPages(t, doc) {
		if len(page.Strokes) != 2*len(strokes) {
			t.Fatalf("page %d: %d strokes, want %d", n+1, len(page.Strokes), 2*len(strokes))
		}
		for i, s := range page.Strokes {
			pen := strokes[i%len(strokes)].Pen
			if math.Abs(s.Width-pen.Width()) > step || s.Gray != 0 {
				t.Errorf("page %d stroke %d: %.4f mm wide, gray %g; want %.4f, black", n+1, i, s.Width, s.Gray, pen.Width())
			}
			if !slices.EqualFunc(s.Dash, pen.Dash(), func(a, b float64) bool { return math.Abs(a-b) <= step }) {
				t.Errorf("page %d stroke %d: dash %v, want %v", n+1, i, s.Dash, pen.Dash())
			}
		}
	}
}

func TestClipIsTheFrame(t *testing.T) {
	long := alone(curve.Polyline(pt(-3000, 40), pt(3000, 40)))
	frame := geometry.Box{Min: pt(-700, 10), Max: pt(-520.5, 90.25)}
	move := geometry.Shift(712, 31)
	doc := shown(long, nil, frame, move)
	doc.Sheets[0].Strokes = alone(curve.Polyline(pt(5, 5), pt(290, 5)))
	page := readPages(t, doc)[0]
	if len(page.Strokes) != 2 {
		t.Fatalf("%d strokes, want 2", len(page.Strokes))
	}
	want := rendertest.Box{X0: 12, Y0: 41, X1: 191.5, Y1: 121.25}
	if off := page.Strokes[0].Clip.Off(want); off > 2*step {
		t.Errorf("clip %v, want %v", page.Strokes[0].Clip, want)
	}
	seen := page.Strokes[0].Seen()
	if off := seen.Off(rendertest.Box{X0: 12, Y0: 71, X1: 191.5, Y1: 71}); off > 2*step {
		t.Errorf("of the line %v shows", seen)
	}
	// The dashes meet across a joint only when the line starts where it did.
	at(t, "the line's own start, out of sight", page.Strokes[0].Outlines[0].Pieces[0].From, pt(-2288, 71), step)
	if c := page.Strokes[1].Clip; c.Off(rendertest.Box{X1: page.W, Y1: page.H}) > step {
		t.Errorf("the sheet's own line is clipped to %v", c)
	}
}

func TestOutOfFrameIsLeftOut(t *testing.T) {
	strokes := append(alone(curve.Polyline(pt(0, 0), pt(50, 0))), alone(curve.Polyline(pt(0, 200), pt(50, 200)))...)
	texts := []layout.Text{{At: pt(0, 10), Height: 3, Words: "in"}, {At: pt(0, 210), Height: 3, Words: "out"}}
	page := readPages(t, shown(strokes, texts, geometry.Box{Min: pt(-5, -5), Max: pt(60, 60)}, geometry.Shift(20, 20)))[0]
	if len(page.Strokes) != 1 || len(page.Texts) != 1 || page.Texts[0].Words != "in" {
		t.Errorf("%d strokes and texts %v; want the one stroke and text within the frame", len(page.Strokes), page.Texts)
	}
}
