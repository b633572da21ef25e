package svg_test

import (
	"bytes"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/render/rendertest"
)

func TestSizeAndLayers(t *testing.T) {
	for _, size := range []struct{ w, h float64 }{{1220, 800.25}, {1000.1, 333.3333}, {50, 4460.4594}} {
		p := everything()
		p.W, p.H = size.w, size.h
		s := read(t, p)
		// Importers take one unit for one millimetre only when both sizes agree.
		if s.ViewBox != [4]float64{0, 0, s.W, s.H} {
			t.Errorf("%g x %g mm, view box %v: not the same numbers", s.W, s.H, s.ViewBox)
		}
		if math.Abs(s.W-size.w) > step || math.Abs(s.H-size.h) > step {
			t.Errorf("%g x %g mm, want %g x %g", s.W, s.H, size.w, size.h)
		}
		var layers []string
		for _, e := range s.Elements {
			if e.Name == "g" {
				layers = append(layers, e.Attr("id"))
			}
		}
		if want := []string{"MARK", "LETTERING", "CUT", "SHEET", "SCALE"}; !slices.Equal(layers, want) {
			t.Errorf("layers %v, want %v", layers, want)
		}
		for layer, n := range map[string]int{"CUT": 4, "MARK": 8} {
			if got := len(s.Paths(layer)); got != n {
				t.Errorf("%d paths in %s, want %d", got, layer, n)
			}
		}
	}
}

// TestOnlyWhatImportersRead holds the file to what every cutter's importer
// reads the same way: plain paths with their own attributes.
func TestOnlyWhatImportersRead(t *testing.T) {
	elements := []string{"svg", "title", "desc", "g", "path"}
	allowed := map[string][]string{"svg": {"width", "height", "viewBox", "xmlns", "xlink"}, "g": {"id"},
		"path": {"d", "fill", "stroke", "stroke-width"}}
	for _, e := range read(t, everything()).Elements {
		if !slices.Contains(elements, e.Name) {
			t.Errorf("a <%s> element", e.Name)
		}
		for _, a := range e.Attrs {
			if !slices.Contains(allowed[e.Name], a.Name.Local) {
				t.Errorf("<%s> has %s", e.Name, a.Name.Local)
			}
		}
		if e.Name != "path" {
			continue
		}
		if e.Attr("fill") != "none" || e.Attr("stroke") == "" || e.Attr("stroke-width") != "0.5" {
			t.Errorf("a path filled %q, stroke %q, %q wide; want a line of 0.5 mm and no filling", e.Attr("fill"), e.Attr("stroke"), e.Attr("stroke-width"))
		}
		if e.Group == "" {
			t.Errorf("a path outside the layers")
		}
	}
}

func TestCutPathsAreClosed(t *testing.T) {
	for _, e := range read(t, everything()).Paths("CUT") {
		if d := e.Attr("d"); !strings.HasSuffix(d, "Z") || strings.Count(d, "Z") != 1 || strings.Count(d, "M") != 1 {
			t.Errorf("%.60s... is not one outline closed with Z", d)
		}
	}
	// A hole comes before the outline round it, so that the piece still holds.
	first := read(t, everything()).Paths("CUT")
	if hole, outline := first[0].Outlines[0].Bounds(), first[1].Outlines[0].Bounds(); !outline.HoldsBox(hole) {
		t.Errorf("first %v, then %v; want the hole first", hole, outline)
	}
}

func TestPlainNumbers(t *testing.T) {
	tiny := curve.Polyline(pt(-1e-9, 800.25), pt(1e-7, 800.25+1e-9), pt(0.00004, 0), pt(1220, -1e-12))
	p := everything()
	p.Parts = append(p.Parts, layout.Placed{Part: marks(tiny), Move: geometry.Shift(0, 0)})
	for _, e := range read(t, p).Elements {
		for _, number := range strings.FieldsFunc(e.Attr("d"), func(r rune) bool { return strings.ContainsRune("MLCZ, ", r) }) {
			whole, part, hasPart := strings.Cut(strings.TrimPrefix(number, "-"), ".")
			if number == "-0" || strings.Trim(whole+part, "0123456789") != "" || whole == "" || len(part) > 4 ||
				hasPart && (part == "" || strings.HasSuffix(part, "0")) {
				t.Errorf("the number %q", number)
			}
		}
	}
}

func TestHostileTitles(t *testing.T) {
	for _, title := range []string{"", "Rib <3> & \"knee\"", "]]>", "<!--", "--><script>", "</title></svg>", "\x00\x01", "caf\xe9", "caf\u00e9",
		"\U0001F6F6", "&amp;", "%s%d", "'\"", strings.Repeat("long ", 300), "\u202e", "a\nb", "{nb}"} {
		p := everything()
		p.Title = title
		p.Parts[0].Part.Name = title
		p.Parts[0].Part.Letters[0].Words = title
		s := read(t, p)
		var got string
		for _, e := range s.Elements {
			if e.Name == "title" {
				got = e.Text
			}
		}
		if want := lettering.Safe(title); got != want {
			t.Errorf("title %.40q reads back as %.40q, want %.40q", title, got, want)
		}
	}
}

func TestSameBytesTwice(t *testing.T) {
	first := encode(t, everything())
	for range 5 {
		if !bytes.Equal(first, encode(t, everything())) {
			t.Fatal("the same plate gave other bytes")
		}
	}
}

func TestRefusals(t *testing.T) {
	square := curve.Rectangle(box(10, 10, 90, 90))
	sized := everything()
	sized.W = 0
	for _, row := range []struct {
		name  string
		plate layout.Plate
		want  []string
	}{
		{"open outline", plate(still(), cut(square[:3])), []string{"bow stem", "not closed"}},
		{"open by a hair", plate(still(), cut(curve.Polyline(pt(10, 10), pt(90, 10), pt(50, 90), pt(10, 10.001)))), []string{"bow stem", "not closed"}},
		{"outline in pieces", plate(still(), cut(curve.Path{square[0], square[2], square[3]})), []string{"bow stem"}},
		{"no outline", plate(still(), cut(nil)), []string{"bow stem", "not closed"}},
		{"a point", plate(still(), cut(curve.Path{curve.Line{A: pt(5, 5), B: pt(5, 5)}})), []string{"bow stem", "single point"}},
		{"NaN", plate(still(), cut(curve.Polygon(pt(0, 0), pt(math.NaN(), 5), pt(9, 9)))), []string{"bow stem"}},
		{"infinite", plate(still(), marks(curve.Polyline(pt(0, 0), pt(math.Inf(1), 5)))), []string{"bow stem"}},
		{"1e300", plate(still(), marks(curve.Polyline(pt(0, 0), pt(1e300, 5)))), []string{"bow stem"}},
		{"mirrored", plate([]geometry.Affine{geometry.Stretch(1, -1)}, cut(square)), []string{"bow stem", "mirrored"}},
		{"at another size", plate([]geometry.Affine{geometry.Stretch(1.001, 1.001)}, cut(square)), []string{"bow stem", "full size"}},
		{"no width", sized, []string{"plate"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			var b bytes.Buffer
			err := write(&b, row.plate)
			if err == nil {
				t.Fatal("accepted, want an error")
			}
			for _, w := range row.want {
				if !strings.Contains(err.Error(), w) {
					t.Errorf("error %q does not say %q", err, w)
				}
			}
			if b.Len() > 0 {
				t.Errorf("%d bytes written all the same", b.Len())
			}
		})
	}
}

func TestFailingWriter(t *testing.T) {
	for _, room := range []int{0, 1, 1000} {
		if err := write(&rendertest.Full{Room: room}, everything()); !errors.Is(err, rendertest.ErrFull) {
			t.Errorf("room for %d bytes: error %v, want the writer's own", room, err)
		}
	}
}

// TestMachine checks the width and the colours a machine asks for, and that black
// holds when it asks for nothing.
func TestMachine(t *testing.T) {
	p := everything()
	p.Hairline = 0.025
	p.Colors = map[string]layout.Color{"CUT": {R: 255}, "MARK": {G: 16, B: 255}}
	p.Notes = []string{"sheet 1 of 2, <ash> & \"oak\""}
	s := read(t, p)
	want := map[string]string{"CUT": "#ff0000", "MARK": "#0010ff", "LETTERING": "#000000", "SCALE": "#000000"}
	for _, e := range s.Elements {
		if e.Name == "path" && (e.Attr("stroke") != want[e.Group] || e.Attr("stroke-width") != "0.025") {
			t.Errorf("a path in %s is %s, %s mm wide", e.Group, e.Attr("stroke"), e.Attr("stroke-width"))
		}
		if e.Name == "desc" && (!strings.Contains(e.Text, "no cutter offset applied") || !strings.Contains(e.Text, p.Notes[0])) {
			t.Errorf("the description is %q", e.Text)
		}
	}
	for _, h := range []float64{0.02, 0.11, -0.1, math.NaN()} {
		p.Hairline = h
		if err := write(&bytes.Buffer{}, p); err == nil || !strings.Contains(err.Error(), "0.025 to 0.1 mm") {
			t.Errorf("a hairline of %g mm: error %v", h, err)
		}
	}
}
