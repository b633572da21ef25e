package job

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/render/rendertest"
)

// agree is how far two files may differ in a size, mm, and in an area, as a share.
const agree, agreeArea = 0.02, 1e-4

// checkCutter holds the SVG and the DXF to each other: the same outlines in the
// same order, closed, at the same places; what lies inside before what is round
// it; no two lines to cut or draw on top of each other.
func (s truth) checkCutter(t *testing.T) {
	var fromSVG []rendertest.Outline
	for _, e := range s.plate.Paths("CUT") {
		if d := e.Attr("d"); !strings.HasSuffix(d, "Z") {
			t.Errorf("%.30s... does not end with Z", d)
		}
		fromSVG = append(fromSVG, e.Outlines...)
	}
	fromDXF := s.dxf.On("CUT")
	if len(fromSVG) != len(fromDXF) || len(fromSVG) == 0 {
		t.Fatalf("%d outlines in the SVG, %d in the DXF", len(fromSVG), len(fromDXF))
	}
	for i, a := range fromSVG {
		b := fromDXF[i].Outline
		if !a.Closed || !b.Closed {
			t.Errorf("outline %d is open: closed in the SVG %v, in the DXF %v", i, a.Closed, b.Closed)
		}
		if off := a.Bounds().Off(b.Bounds()); off > agree {
			t.Errorf("outline %d fills %.4f in the SVG, %.4f in the DXF, %.4f mm off", i, a.Bounds(), b.Bounds(), off)
		}
		// Signed, so that an outline turned over would show.
		if x, y := a.Area(64), b.Area(64); math.Abs(math.Abs(x)-math.Abs(y)) > agreeArea*math.Abs(x) {
			t.Errorf("outline %d is of %.3f mm2 in the SVG, %.3f in the DXF", i, x, y)
		}
	}
	for i, a := range fromSVG {
		for _, b := range fromSVG[i+1:] {
			if a.Bounds().HoldsBox(b.Bounds()) && a.Polygon().Holds(b.Polygon()[0]) {
				t.Errorf("the outline at %.1f comes before the one inside it at %.1f", a.Bounds(), b.Bounds())
			}
		}
	}
	for _, layer := range []string{"CUT", "MARK"} {
		var sides []rendertest.Piece
		for _, e := range s.dxf.On(layer) {
			sides = append(sides, e.Outline.Pieces...)
		}
		if n := doubled(sides); n > 0 {
			t.Errorf("%d lines of %s lie on others", n, layer)
		}
	}
	for _, layer := range []string{"MARK", "LETTERING", "SHEET", "SCALE"} {
		// A saddle is all outline: of the outfits' parts not all have lines to draw.
		if n, m := len(s.plate.Paths(layer)), len(s.dxf.On(layer)); n != m || n == 0 && layer != "MARK" {
			t.Errorf("%d lines of %s in the SVG, %d in the DXF", n, layer, m)
		}
	}
	s.checkMillimetres(t)
	s.checkOnParts(t)
}

// checkMillimetres: both files say that a unit is a millimetre, and as much for both
// edges, and their check squares are 100 mm wide and high. A DXF says so by 4 in
// $INSUNITS and 1 in $MEASUREMENT, as its published reference has it; an SVG by a
// view box as large as its size.
func (s truth) checkMillimetres(t *testing.T) {
	if want := [4]float64{0, 0, s.plate.W, s.plate.H}; s.plate.ViewBox != want {
		t.Errorf("the SVG has the view box %v, want %v", s.plate.ViewBox, want)
	}
	for name, want := range map[string]string{"$INSUNITS": "4", "$MEASUREMENT": "1"} {
		if got := s.dxf.Header[name]; !slices.Equal(got, []string{want}) {
			t.Errorf("the DXF has %s %q, want %s", name, got, want)
		}
	}
	var svg, dxf []rendertest.Outline
	for _, e := range s.plate.Paths("SCALE") {
		svg = append(svg, e.Outlines...)
	}
	for _, e := range s.dxf.On("SCALE") {
		dxf = append(dxf, e.Outline)
	}
	for what, all := range map[string][]rendertest.Outline{"SVG": svg, "DXF": dxf} {
		if !slices.ContainsFunc(all, func(o rendertest.Outline) bool {
			b, ok := o.Rectangle(agree)
			return ok && math.Abs(b.W()-100) <= agree && math.Abs(b.H()-100) <= agree
		}) {
			t.Errorf("the %s has no square of 100 mm", what)
		}
	}
}

// checkOnParts: what is drawn or lettered lies on the parts, clear of the outlines to
// cut: a cutter loose in a letter spoils it, and its stroke would be lost.
func (s truth) checkOnParts(t *testing.T) {
	pieces := s.plate.Pieces()
	var polygons []rendertest.Polygon
	var boxes []rendertest.Box
	for _, o := range pieces {
		polygons, boxes = append(polygons, o.Polygon()), append(boxes, o.Bounds().Grow(agree))
	}
	on := func(o rendertest.Outline) bool {
		middle, box := o.Pieces[len(o.Pieces)/2].At(0.5), o.Bounds()
		for i, p := range polygons {
			if boxes[i].HoldsBox(box) && p.Holds(middle) {
				return true
			}
		}
		return false
	}
	for _, layer := range []string{"MARK", "LETTERING"} {
		for _, e := range s.plate.Paths(layer) {
			for _, o := range e.Outlines {
				if !on(o) {
					t.Errorf("a line of %s at %.2f lies on no part", layer, o.Bounds())
				}
			}
		}
	}
}

// doubled counts straight pieces of which more than a thousandth of a millimetre
// lies on another.
func doubled(sides []rendertest.Piece) int {
	n := 0
	for i, a := range sides {
		long := a.From.To(a.To)
		if a.Curved || long < 0.001 {
			continue
		}
		ux, uy := (a.To.X-a.From.X)/long, (a.To.Y-a.From.Y)/long
		along := func(p rendertest.Point) (float64, float64) {
			x, y := p.X-a.From.X, p.Y-a.From.Y
			return x*ux + y*uy, math.Abs(x*uy - y*ux)
		}
		for _, b := range sides[i+1:] {
			if b.Curved {
				continue
			}
			s, off := along(b.From)
			e, off2 := along(b.To)
			if off < 0.001 && off2 < 0.001 && math.Min(math.Max(s, e), long)-math.Max(math.Min(s, e), 0) > 0.001 {
				n++
			}
		}
	}
	return n
}

// TestModelAndFiles compares every part as the boat has it with what stands in
// both files: area and the size of its box, to 0.02 mm and 0.01 %, and that it is
// turned but not turned over.
func TestModelAndFiles(t *testing.T) {
	for name, way := range map[string]string{"brook": "close", "lake": "quick", "river": "quick"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := loftAndRead(t, name, "letter", "--nest", way)
			s.checkCutter(t)
			l := laidOut(t, name, "letter", "--nest", way)
			inDXF := s.dxf.On("CUT")
			var inSVG []rendertest.Outline
			for _, e := range s.plate.Paths("CUT") {
				inSVG = append(inSVG, e.Outlines...)
			}
			for _, q := range l.plate.Parts {
				for _, c := range q.Part.Cut {
					want := modelled(c, q)
					match := func(o rendertest.Outline) bool {
						return o.Bounds().Off(want.Bounds()) <= agree && math.Abs(math.Abs(o.Area(64))-math.Abs(want.Area(1))) <= agreeArea*math.Abs(want.Area(1))
					}
					if !slices.ContainsFunc(inSVG, match) {
						t.Errorf("the SVG has no outline of %s at %.3f with %.3f mm2", q.Part.Name, want.Bounds(), want.Area(1))
					}
					if onPaper := strings.HasSuffix(q.Part.Name, "stem") || strings.HasSuffix(q.Part.Name, "breasthook"); onPaper && !s.onPaper(c, agree) {
						t.Errorf("no sheet shows the outline of %s as large as it is", q.Part.Name)
					}
					if !slices.ContainsFunc(inDXF, func(e rendertest.Entity) bool { return match(e.Outline) }) {
						t.Errorf("the DXF has no outline of %s at %.3f with %.3f mm2", q.Part.Name, want.Bounds(), want.Area(1))
					}
				}
			}
		})
	}
}

// onPaper reports whether some sheet of the patterns holds an outline of the same
// upright box and area; the file holds lines whole, whatever of them is shown. The
// area of a thin strip may differ by more than its share: by what rounding to the
// file's hundredths of a point gives along its edge.
func (s truth) onPaper(c curve.Path, tol float64) bool {
	want := modelled(c, layout.Placed{Move: geometry.Shift(0, 0)})
	b, area, edge := want.Bounds(), want.Area(1), 0.0
	for _, s := range want.Pieces {
		edge += s.From.To(s.To)
	}
	mayArea := math.Max(agreeArea*math.Abs(area), rounding*edge)
	for _, p := range s.pages {
		for _, k := range p.Strokes {
			for _, o := range k.Outlines {
				box := o.Bounds()
				same := math.Abs(box.W()-b.W()) <= tol && math.Abs(box.H()-b.H()) <= tol
				turned := math.Abs(box.W()-b.H()) <= tol && math.Abs(box.H()-b.W()) <= tol // a piece may lie turned by a quarter
				if o.Closed && (same || turned) && math.Abs(o.Area(64)-area) <= mayArea {
					return true
				}
			}
		}
	}
	return false
}

// modelled samples an outline of the model where the part lies, turned by its own
// sine and cosine and never mirrored.
func modelled(c curve.Path, q layout.Placed) rendertest.Outline {
	var o rendertest.Outline
	m := q.Move
	at := func(s curve.Segment, t float64) rendertest.Point {
		p := s.At(t)
		return rendertest.Point{X: m.A*p.X - m.B*p.Y + m.E, Y: m.B*p.X + m.A*p.Y + m.F}
	}
	for _, s := range c {
		n := 1
		if _, straight := s.(curve.Line); !straight {
			n = 400
		}
		for i := range n {
			o.Pieces = append(o.Pieces, rendertest.Piece{From: at(s, float64(i)/float64(n)), To: at(s, float64(i+1)/float64(n))})
		}
	}
	o.Closed = true
	return o
}

// TestStock reads sizes of stock as people write them. An inch is 25.4 mm
// (international agreement of 1959).
func TestStock(t *testing.T) {
	for words, want := range map[string][2]float64{
		"1220x2440": {1220, 2440}, "1220 x 2440": {1220, 2440}, "1220X2440.5": {1220, 2440.5}, "4ft x 8ft": {1219.2, 2438.4},
		"48in×96in": {1219.2, 2438.4}, "1220 mm x 2440 mm": {1220, 2440}, `4' x 8'`: {1219.2, 2438.4}, "1.22m x 2.44m": {1220, 2440}, "4x8ft": {1219.2, 2438.4}, "4x8": {1219.2, 2438.4}, "0.5 x 8": {152.4, 2438.4},
	} {
		f, err := parseStock(words)
		if err != nil || math.Abs(f.W-want[0]) > 1e-9 || math.Abs(f.H-want[1]) > 1e-9 {
			t.Errorf("%q reads as %v, %v, want %v", words, f, err, want)
		}
	}
	for _, words := range []string{"", "1220", "1220x", "x2440", "1220x2440x18", "48in x 2440", "-1220x2440", "1e3x2440", "50x2440", "1220x99999", "0x0", "NaNxNaN", "InfxInf"} {
		if _, err := parseStock(words); err == nil || !strings.Contains(err.Error(), "1220x2440") {
			t.Errorf("%q: error %v, want one that shows what is accepted", words, err)
		}
	}
}

func TestColors(t *testing.T) {
	set, err := parseColors("cut=RED, Mark=#0010fF")
	if err != nil {
		t.Fatal(err)
	}
	if got := showColors(set); got != "MARK=#0010ff,CUT=#ff0000" {
		t.Errorf("reads back as %q", got)
	}
	for _, words := range []string{"", "cut", "hull=red", "cut=rouge", "cut=#ff00", "cut=#gg0000", "cut=red,cut=blue", "cut=#ff0000;x=\"1\""} {
		if _, err := parseColors(words); err == nil {
			t.Errorf("%q: accepted", words)
		}
	}
}
