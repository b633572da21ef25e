package eyes

import (
	"fmt"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/pair"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water"
	"ribwright/layout"
	"ribwright/layout/outfits"
	"ribwright/render/rendertest"
)

// drawn draws every pattern of a design's outfit in its own coordinates: all at full
// size, or straight pieces and panels as sketches.
func drawn(t *testing.T, verb, name string, full bool) []layout.Drawing {
	t.Helper()
	f := frametest.Shipped(t, name, nil)
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	crew := weight.People(f.Design)
	b, err := aboard.New(f, crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	switch verb {
	case "sail":
		fit, err := sail.New(b, f.Design.Sail(), w)
		if err != nil {
			t.Fatal(err)
		}
		return outfits.Sail(fit, measure.Metric, full)
	case "pair":
		p := f.Design.Pair()
		p.Purpose = design.OpenWater
		c, err := pair.New(b, b, p, w)
		if err != nil {
			t.Fatal(err)
		}
		return outfits.Pair(c, measure.Metric, full)
	}
	fit, err := rowing.New(b, f.Design.Row(), w)
	if err != nil {
		t.Fatal(err)
	}
	return outfits.Row(fit, measure.Metric, full)
}

// fitted lofts a design's outfit and reads the sheets.
func fitted(t *testing.T, verb, name, paper string, full bool, flags ...string) set {
	t.Helper()
	if verb == "pair" {
		flags = append(flags, "--purpose", "open")
	}
	if full {
		flags = append(flags, "--full-size")
	}
	read := ask(t, verb, name, append([]string{"--loft", "--paper", paper}, flags...)...)
	n, err := rendertest.ReadPages(read("-numbers.json"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := Read(eyesOf(t), read(".pdf"), n.Pages)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.File.Close() })
	return set{s, &Numbers{Numbers: n}}
}

// TestStitchedOutfits puts the tiles of every pattern of every outfit together, the
// panels of sails and the beams with them, and holds them against the pattern in
// one piece, as TestStitched does; and lays the rule across every line to cut. Where time is
// short a sail and a pair at full size are left to TestPrintedOutfits.
func TestStitchedOutfits(t *testing.T) {
	rows := []struct {
		verb, design, paper string
		full                bool
	}{
		{"row", "brook", "letter", true}, {"pair", "river", "letter", false}, {"sail", "lake", "a4", false},
		{"row", "lake", "a4", false}, {"pair", "lake", "a4", true}, {"sail", "brook", "letter", true},
		{"row", "lake", "a4", true}, {"pair", "river", "letter", true}, {"sail", "lake", "a4", true},
	}
	if !long {
		rows = rows[:3]
	}
	for _, row := range rows {
		t.Run(fmt.Sprintf("%s %s on %s, full size %v", row.verb, row.design, row.paper, row.full), func(t *testing.T) {
			s := fitted(t, row.verb, row.design, row.paper, row.full)
			eachPattern(t, s, drawn(t, row.verb, row.design, row.full), Undone, func(t *testing.T, c check, lines []Line) {
				c.nothingBeyond(t)
				c.linesInOnePiece(t)
				c.drawnOnce(t)
				c.lettersInOnePiece(t)
				c.covered(t)
				c.sameInk(t)
				if row.full && !told(c.pattern) || len(lines) > 0 { // a sketch has nothing to cut
					c.measured(t, lines, mayStitch)
				}
			})
		})
	}
}

// TestPrintedOutfits prints corrected sheets of outfits on the stretching printer and
// lays the tiles by their middles, as TestPrinted does.
func TestPrintedOutfits(t *testing.T) {
	for _, row := range []struct{ verb, design, paper string }{{"pair", "brook", "letter"}, {"sail", "lake", "a4"}} {
		t.Run(row.verb+" "+row.design+" on "+row.paper, func(t *testing.T) {
			s := fitted(t, row.verb, row.design, row.paper, true, correction(stretched)...)
			eachPattern(t, s, drawn(t, row.verb, row.design, true), stretched.Laid, func(t *testing.T, c check, lines []Line) {
				c.linesInOnePiece(t)
				if !told(c.pattern) {
					c.measured(t, lines, mayPrint)
				}
			})
		})
	}
}

// told reports whether a piece has only words, and nothing to cut.
func told(pattern string) bool { return pattern == "rigging" || pattern == "to-buy" }

// eachPattern looks at every pattern of an outfit; none may be missing from the
// sheets, and none may be there that the outfit does not have.
func eachPattern(t *testing.T, s set, all []layout.Drawing, lay func(rendertest.View) Motion, look func(*testing.T, check, []Line)) {
	t.Helper()
	known := map[string]bool{}
	for _, d := range all {
		known[d.Name] = true
		t.Run(d.Name, func(t *testing.T) {
			one, err := WholeOf(eyesOf(t), &d)
			if err != nil {
				t.Fatal(err)
			}
			t.Cleanup(func() { one.File.Close() })
			look(t, check{s, one, d.Name, lay}, cutLines(d))
		})
	}
	for _, v := range s.Views {
		if !known[v.Pattern] {
			t.Errorf("%v is of no pattern of the outfit", v)
		}
	}
}

// cutLines returns the lines to cut of a pattern as chords. Of a bend they are so
// short that they leave it by 0.001 mm at most: on a radius of 4.5 mm, the least
// there is, 0.01 / (8 * 4.5).
func cutLines(d layout.Drawing) []Line {
	const chord = 0.1 // mm
	var out []Line
	for _, k := range d.Strokes {
		if k.Pen != layout.Cut {
			continue
		}
		var l Line
		l.Name, l.Closed = d.Name, k.Path.Closed()
		for _, s := range k.Path {
			n := 1
			if _, straight := s.(curve.Line); !straight {
				n = max(1, int(s.Length()/chord))
			}
			for i := range n {
				p := s.At(float64(i) / float64(n))
				l.Points = append(l.Points, rendertest.Point{X: p.X, Y: p.Y})
			}
		}
		if !l.Closed {
			p := k.Path[len(k.Path)-1].At(1)
			l.Points = append(l.Points, rendertest.Point{X: p.X, Y: p.Y})
		}
		out = append(out, l)
	}
	return out
}
