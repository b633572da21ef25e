package job

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	svglib "github.com/ajstarks/svgo/float"
	"github.com/go-pdf/fpdf"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/plate/trace"
	"ribwright/render/pdf"
	"ribwright/render/rendertest"
)

// floor is what a lofting draws, worked out beforehand: the same strokes and letters on
// each page, the same path data, and the same numbers, left to the libraries alone. Writing
// these four files is the least that any program on top of them takes.
type floor struct {
	wide, high float64 // of a page, points
	pages      [][]floorClip
	plate      geometry.Box
	paths      []string           // d of each path
	chains     [][]geometry.Point // the same as chords
	numbers    any
}

// floorClip is what stands within one rectangle of a page; all of it when the
// rectangle is empty. Everything is in points, y down.
type floorClip struct {
	box     geometry.Box
	strokes []floorStroke
	texts   []floorText
}

type floorStroke struct {
	pen    layout.Pen
	path   []geometry.Point // start, then one point a line or three a cubic
	curves []bool
	closed bool
}

type floorText struct {
	at          geometry.Point
	size, angle float64 // points, degrees
	words       string
}

const pointsPerMM = 72 / 25.4

// benchAsked asks for what is measured: the parts are laid once, because a search for a
// close nest has its own benchmarks.
func benchAsked(b testing.TB, name string) *Loft {
	b.Helper()
	return asked(b, "loft", name, "--paper", "letter", "--nest", "quick").(*Loft)
}

// loftOnce does all that the job does.
func loftOnce(b testing.TB, name string) { do(b, benchAsked(b, name), world()) }

func newFloor(b testing.TB, name string) floor {
	b.Helper()
	l := benchAsked(b, name).shared(b)
	p := l.printed.Paper
	f := floor{wide: p.W * pointsPerMM, high: p.H * pointsPerMM, plate: geometry.Box{Max: geometry.Point{X: l.plate.W, Y: l.plate.H}}, numbers: l.Numbers}
	at := func(q geometry.Point) geometry.Point {
		return geometry.Point{X: q.X * pointsPerMM, Y: (p.H - q.Y) * pointsPerMM}
	}
	for _, s := range l.printed.Sheets {
		var page []floorClip
		for _, v := range s.Views {
			c := floorClip{box: geometry.Around(at(v.ToSheet.Apply(v.Frame.Min)), at(v.ToSheet.Apply(v.Frame.Max)))}
			for _, k := range v.Drawing.Strokes {
				if k.Path.Bounds().Grow(k.Pen.Width()).Overlaps(v.Frame) {
					c.strokes = append(c.strokes, newFloorStroke(k.Pen, k.Path.Map(v.ToSheet), at))
				}
			}
			for _, t := range v.Drawing.Texts {
				if t.Bounds().Overlaps(v.Frame) {
					c.texts = append(c.texts, newFloorText(v.Lettering(t), at))
				}
			}
			page = append(page, c)
		}
		own := floorClip{}
		for _, k := range s.Strokes {
			own.strokes = append(own.strokes, newFloorStroke(k.Pen, k.Path, at))
		}
		for _, t := range s.Texts {
			own.texts = append(own.texts, newFloorText(t, at))
		}
		f.pages = append(f.pages, append(page, own))
	}
	var cut bytes.Buffer
	if err := cutterFiles("", "", l.plate)[0].Write(&cut); err != nil {
		b.Fatal(err)
	}
	for _, m := range regexp.MustCompile(`<path d="([^"]*)"`).FindAllStringSubmatch(cut.String(), -1) {
		f.paths = append(f.paths, m[1])
	}
	layers, err := trace.Of(l.plate)
	if err != nil {
		b.Fatal(err)
	}
	for _, l := range layers {
		for _, path := range l.Paths {
			f.chains = append(f.chains, path.Flatten(0.005))
		}
	}
	return f
}

func newFloorStroke(pen layout.Pen, path curve.Path, at func(geometry.Point) geometry.Point) floorStroke {
	out := floorStroke{pen: pen, path: []geometry.Point{at(path[0].Start())}, closed: path.Closed()}
	cubic := func(c curve.Cubic) {
		out.path, out.curves = append(out.path, at(c.P1), at(c.P2), at(c.P3)), append(out.curves, true)
	}
	for i, s := range path {
		switch s := s.(type) {
		case curve.Line:
			if !out.closed || i < len(path)-1 {
				out.path, out.curves = append(out.path, at(s.B)), append(out.curves, false)
			}
		case curve.Cubic:
			cubic(s)
		case curve.Arc:
			for _, c := range s.Cubics() {
				cubic(c)
			}
		}
	}
	return out
}

func newFloorText(t layout.Text, at func(geometry.Point) geometry.Point) floorText {
	return floorText{at(t.Start()), t.Height / lettering.CapHeight * pointsPerMM, t.Angle * 180 / math.Pi, t.Words}
}

// write gives everything to the libraries.
func (f floor) write(w, cut, chords, numbers io.Writer) error {
	p := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "pt", Size: fpdf.SizeType{Wd: f.wide, Ht: f.high}})
	p.SetMargins(0, 0, 0)
	p.SetAutoPageBreak(false, 0)
	p.AddUTF8FontFromBytes("sans", "", slices.Clone(lettering.Font()))
	for _, page := range f.pages {
		p.AddPage()
		for _, c := range page {
			if clip := c.box != (geometry.Box{}); clip {
				p.ClipRect(c.box.Min.X, c.box.Min.Y, c.box.W(), c.box.H(), false)
				c.write(p)
				p.ClipEnd()
				continue
			}
			c.write(p)
		}
	}
	if err := p.Output(w); err != nil {
		return err
	}
	s := svglib.New(cut)
	s.StartviewUnit(f.plate.Max.X, f.plate.Max.Y, "mm", 0, 0, f.plate.Max.X, f.plate.Max.Y)
	for _, d := range f.paths {
		s.Path(d, `fill="none" stroke="#000000" stroke-width="0.1"`)
	}
	s.End()
	for _, c := range f.chains {
		fmt.Fprintf(chords, "  0\r\nPOLYLINE\r\n")
		for _, p := range c {
			fmt.Fprintf(chords, "  0\r\nVERTEX\r\n 10\r\n%.4f\r\n 20\r\n%.4f\r\n 30\r\n0\r\n", p.X, p.Y)
		}
	}
	e := json.NewEncoder(numbers)
	e.SetIndent("", "  ")
	return e.Encode(f.numbers)
}

func (c floorClip) write(p *fpdf.Fpdf) {
	last := layout.Pen(-1)
	for _, s := range c.strokes {
		if s.pen != last {
			last = s.pen
			p.SetLineWidth(s.pen.Width() * pointsPerMM)
			p.SetDashPattern(s.pen.Dash(), 0)
		}
		p.MoveTo(s.path[0].X, s.path[0].Y)
		q := s.path[1:]
		for _, curved := range s.curves {
			if !curved {
				p.LineTo(q[0].X, q[0].Y)
				q = q[1:]
				continue
			}
			p.CurveBezierCubicTo(q[0].X, q[0].Y, q[1].X, q[1].Y, q[2].X, q[2].Y)
			q = q[3:]
		}
		if s.closed {
			p.ClosePath()
		}
		p.DrawPath("D")
	}
	for _, t := range c.texts {
		p.SetFont("sans", "", t.size)
		if t.angle == 0 {
			p.Text(t.at.X, t.at.Y, t.words)
			continue
		}
		p.TransformBegin()
		p.TransformRotate(t.angle, t.at.X, t.at.Y)
		p.Text(t.at.X, t.at.Y, t.words)
		p.TransformEnd()
	}
}

// TestFloorDrawsTheSame holds the floor to the same number of lines and letters
// on each page, so that the benchmarks compare like with like.
func TestFloorDrawsTheSame(t *testing.T) {
	l := benchAsked(t, "brook").shared(t)
	read := func(src []byte) []rendertest.Page {
		file, err := rendertest.ReadPDF(src)
		if err != nil {
			t.Fatal(err)
		}
		pages, err := file.Pages()
		if err != nil {
			t.Fatal(err)
		}
		return pages
	}
	var ours, least, cut bytes.Buffer
	if err := errors.Join(pdf.Encode(&ours, l.printed, world().Made), newFloor(t, "brook").write(&least, &cut, io.Discard, io.Discard)); err != nil {
		t.Fatal(err)
	}
	// The library does not say that its font is a subset; the reader asks for that.
	a, b := read(ours.Bytes()), read(bytes.ReplaceAll(least.Bytes(), []byte("utf8sans"), []byte("AAAAAA+s")))
	if len(a) != len(b) {
		t.Fatalf("%d pages, the floor has %d", len(a), len(b))
	}
	for i := range a {
		if len(a[i].Strokes) != len(b[i].Strokes) || len(a[i].Texts) != len(b[i].Texts) {
			t.Errorf("page %d: %d lines and %d texts, the floor has %d and %d", i+1,
				len(a[i].Strokes), len(a[i].Texts), len(b[i].Strokes), len(b[i].Texts))
		}
	}
	var whole bytes.Buffer
	if err := cutterFiles("", "", l.plate)[0].Write(&whole); err != nil {
		t.Fatal(err)
	}
	if n, want := strings.Count(cut.String(), "<path"), strings.Count(whole.String(), "<path"); n != want {
		t.Errorf("%d paths for the cutter, the floor has %d", want, n)
	}
}

// BenchmarkLoft is a whole lofting of each shipped boat, from the design file to the bytes
// of all four files.
func BenchmarkLoft(b *testing.B) {
	for _, name := range design.ShippedNames() {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				loftOnce(b, name)
			}
		})
	}
}

// BenchmarkTile is the part of a lofting that cuts patterns to sheets and lays them there.
func BenchmarkTile(b *testing.B) {
	for _, name := range design.ShippedNames() {
		for _, paper := range []string{"letter", "a4"} {
			b.Run(name+"/"+paper, func(b *testing.B) {
				l := asked(b, "loft", name, "--paper", paper).(*Loft)
				k := known(b, name)
				bends, err := k.bending()
				if err != nil {
					b.Fatal(err)
				}
				first, err := k.first(bends, nil, l.Units)
				if err != nil {
					b.Fatal(err)
				}
				set := k.set(bends, first, l.Units, l.ribs())
				b.ReportAllocs()
				for b.Loop() {
					if _, err := l.Printing.lay(set, nil, l.Units); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// BenchmarkFloor is the drawing libraries' share of it.
func BenchmarkFloor(b *testing.B) {
	for _, name := range design.ShippedNames() {
		b.Run(name, func(b *testing.B) {
			f := newFloor(b, name)
			b.ReportAllocs()
			for b.Loop() {
				if err := f.write(io.Discard, io.Discard, io.Discard, io.Discard); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkRatio runs both in turn and reports how many times the floor a
// lofting takes: the middle one of all pairs, so that a burst of other work on
// the machine does not count.
func BenchmarkRatio(b *testing.B) {
	for _, name := range design.ShippedNames() {
		b.Run(name, func(b *testing.B) {
			f := newFloor(b, name)
			var ratios []float64
			for b.Loop() {
				start := time.Now()
				loftOnce(b, name)
				middle := time.Now()
				if err := f.write(io.Discard, io.Discard, io.Discard, io.Discard); err != nil {
					b.Fatal(err)
				}
				ratios = append(ratios, middle.Sub(start).Seconds()/time.Since(middle).Seconds())
			}
			slices.Sort(ratios)
			b.ReportMetric(ratios[len(ratios)/2], "loft/floor")
		})
	}
}

// BenchmarkBend is the whole of bends and balance of each shipped boat, without bytes. The
// engine's part reads the design, builds the frame and works out every fact: bends, balance
// with all its trials, hand work, and the boat afloat with loose ribs. It should take less
// than 8 ms on two idle cores. The page's part makes blocks and numbers of the facts.
func BenchmarkBend(b *testing.B) {
	for _, name := range design.ShippedNames() {
		request := NewBend()
		request.Design = name
		b.Run("engine/"+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := request.work(World{}); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run("page/"+name, func(b *testing.B) {
			k, err := request.work(World{})
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := request.tell(k); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkLook is lake as the page asks for it: redrawn while a slider moves, which
// should take less than 16 ms, and whole once it rests, with every finding, the effort and
// hidden lines left out. Findings and effort should take less than 30 ms of that, on two
// idle cores.
func BenchmarkLook(b *testing.B) {
	request := NewLook()
	request.Design = "lake"
	for _, whole := range []bool{false, true} {
		request.Whole = whole
		b.Run(map[bool]string{false: "redraw", true: "whole"}[whole], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := request.Do(World{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("findings", func(b *testing.B) {
		k, err := World{}.factsOf("lake")
		if err != nil {
			b.Fatal(err)
		}
		if _, err := k.afloat(World{}, water.Fresh, afloat.Run); err != nil { // the boat itself is a fact of its own
			b.Fatal(err)
		}
		b.ReportAllocs()
		for b.Loop() {
			if _, err := k.afloat(World{}, water.Fresh, afloat.Run); err != nil {
				b.Fatal(err)
			}
		}
	})
}
