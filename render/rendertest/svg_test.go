package rendertest

import (
	"math"
	"strings"
	"testing"
)

const svgHead = `<?xml version="1.0"?><svg width="200mm" height="100mm" viewBox="10 20 400 200"><title>A &amp; B</title>`

func TestReadSVG(t *testing.T) {
	// Two units to the millimetre, from (10, 20) on: (30, 40) lies 10 mm from the
	// left and 10 mm under the upper edge.
	s, err := ReadSVG([]byte(svgHead + `<g id="CUT"><path class="x" d="M30,40L50 40 50,60Z"/><g><path d="M10 20C10,40 30,40 30,20"/></g></g>` +
		`<path d="M10,220L410,220"/></svg>`))
	if err != nil {
		t.Fatal(err)
	}
	if s.W != 200 || s.H != 100 || s.ViewBox != [4]float64{10, 20, 400, 200} || s.Elements[1].Text != "A & B" {
		t.Errorf("%g x %g mm, view box %v, title %q", s.W, s.H, s.ViewBox, s.Elements[1].Text)
	}
	cut := s.Paths("CUT")
	if len(cut) != 1 || len(s.Paths("")) != 2 {
		t.Fatalf("%d paths in CUT and %d in no named group, want 1 and 2", len(cut), len(s.Paths("")))
	}
	o := cut[0].Outlines[0]
	if b := o.Bounds(); !o.Closed || len(o.Pieces) != 3 || b.Off(Box{10, 80, 20, 90}) > readTol {
		t.Errorf("triangle in %v of %d sides, closed %v; want (10, 80) to (20, 90), 3, closed", b, len(o.Pieces), o.Closed)
	}
	// With y up the corners (10, 90), (20, 90), (20, 80) run clockwise.
	if a := o.Area(1); math.Abs(a+50) > readTol {
		t.Errorf("area %g mm2, want -50: clockwise", a)
	}
	if cut[0].Attr("class") != "x" || cut[0].Attr("style") != "" {
		t.Errorf("attributes %v", cut[0].Attrs)
	}
	if b := s.Paths("")[0].Outlines[0].Bounds(); b.Off(Box{0, 92.5, 10, 100}) > readTol {
		t.Errorf("cubic in %v, want 7.5 mm deep under the upper edge", b)
	}
}

func TestPieces(t *testing.T) {
	s, err := ReadSVG([]byte(svgHead + `<g id="CUT"><path d="M50 50L60 50L60 60Z"/><path d="M40 40L90 40L90 90L40 90Z"/><path d="M100 40L150 40L150 90Z"/></g></svg>`))
	if err != nil {
		t.Fatal(err)
	}
	if p := s.Pieces(); len(p) != 2 || len(p[0].Pieces) != 4 || len(p[1].Pieces) != 3 {
		t.Errorf("pieces %v, want the square and the triangle beside it", p)
	}
}

func TestReadSVGRefuses(t *testing.T) {
	for _, row := range []struct{ name, file, want string }{
		{"nothing", "", "no svg"},
		{"not closed", svgHead, "unexpected EOF"},
		{"bare ampersand", strings.Replace(svgHead, "&amp;", "&", 1) + "</svg>", "invalid character entity"},
		{"no unit", strings.Replace(svgHead, "200mm", "200", 1) + "</svg>", "no length in mm"},
		{"centimetres", strings.Replace(svgHead, "200mm", "20cm", 1) + "</svg>", "no length in mm"},
		{"no view box", strings.Replace(svgHead, "viewBox", "box", 1) + "</svg>", "viewBox"},
		{"relative command", svgHead + `<path d="M1,1l5,5"/></svg>`, "other than M"},
		{"elliptic arc", svgHead + `<path d="M1,1A5,5,0,0,1,9,9"/></svg>`, "other than M"},
		{"exponent", svgHead + `<path d="M1,1L5e1,5"/></svg>`, "no plain number"},
		{"NaN", svgHead + `<path d="M1,1LNaN,5"/></svg>`, "no plain number"},
		{"line from nowhere", svgHead + `<path d="L1,1"/></svg>`, "no place to draw from"},
		{"odd numbers", svgHead + `<path d="M1,1L5"/></svg>`, "1 numbers"},
		{"empty path", svgHead + `<path d=""/></svg>`, "empty path"},
		{"one point", svgHead + `<path d="M1,1Z"/></svg>`, "single point"},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := ReadSVG([]byte(row.file))
			if err == nil || !strings.Contains(err.Error(), row.want) {
				t.Errorf("error %v, want one with %q", err, row.want)
			}
		})
	}
}
