package svg

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// TestFigure checks that a figure holds the drawing's lines and words at their
// places, y down, with the weight and dash of each pen, and stays well formed
// whatever the words are.
func TestFigure(t *testing.T) {
	d := layout.Drawing{Title: `A <b> & "c"`}
	d.Straight(layout.Cut, -20, 0, 40, 0)
	d.Line(layout.Guide, curve.Circle(geometry.Point{X: 20, Y: 10}, 10))
	d.Write(0, 5, 3, layout.Middle, `5 < 6 & "rib"`)
	d.WriteAt(geometry.Point{X: 5, Y: 5}, 3, math.Pi/2, layout.Left, "up")
	var b bytes.Buffer
	if err := EncodeFigure(&b, d, "a line & a circle"); err != nil {
		t.Fatal(err)
	}
	out := b.String()
	for dec := xml.NewDecoder(strings.NewReader(out)); ; {
		if _, err := dec.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	// The box is (-20, 0) to (40, 20) with 3 mm of air: the line lies 23 mm down.
	for _, want := range []string{`width="66.0000mm"`, `d="M3,23L63,23"`, `stroke-width="0.5"`, `stroke-dasharray="4 2"`,
		"A &lt;b&gt; &amp;", "5 &lt; 6 &amp;", `rotate(-90 28 18)`, `text-anchor="middle"`, "a line &amp; a circle"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %s in\n%s", want, out)
		}
	}
}

// TestFigureRefused: nothing to draw, or a place that is none.
func TestFigureRefused(t *testing.T) {
	var nowhere layout.Drawing
	nowhere.Straight(layout.Cut, 0, 0, math.NaN(), 1)
	for name, d := range map[string]layout.Drawing{"empty": {}, "nowhere": nowhere} {
		var b bytes.Buffer
		if err := EncodeFigure(&b, d, ""); err == nil || b.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes", name, err, b.Len())
		}
	}
}

// TestInline writes the figure of a page: one element with the role of a picture, a
// name and a description, and nothing before or after it. Source: SVG 2, 5.8 and
// WAI-ARIA 1.2, role img.
func TestInline(t *testing.T) {
	d := layout.Drawing{Title: `Stem <b> & "x"`}
	d.Straight(layout.Cut, 0, 0, 100, 0)
	d.Write(0, 5, 3, layout.Left, "<i>toe</i>")
	var out, whole bytes.Buffer
	if err := EncodeInline(&out, d, "the stem"); err != nil {
		t.Fatal(err)
	}
	if err := EncodeFigure(&whole, d, "the stem"); err != nil {
		t.Fatal(err)
	}
	got := out.String()
	if !strings.HasPrefix(got, `<svg role="img"`) || !strings.HasSuffix(got, "</svg>") || strings.Count(got, "<svg") != 1 {
		t.Errorf("not one element: %.60q ... %q", got, got[len(got)-10:])
	}
	_, want, _ := strings.Cut(strings.TrimSpace(whole.String()), "<svg")
	if strings.Replace(got, `<svg role="img"`, "", 1) != want {
		t.Error("the element differs from the figure of a file")
	}
	for _, w := range []string{"<title>Stem &lt;b&gt; &amp; ", "<desc>the stem</desc>", "&lt;i&gt;toe"} {
		if !strings.Contains(got, w) {
			t.Errorf("no %q in %s", w, got)
		}
	}
	if err := EncodeInline(&out, layout.Drawing{}, ""); err == nil {
		t.Error("a figure with nothing in it is accepted")
	}
}
