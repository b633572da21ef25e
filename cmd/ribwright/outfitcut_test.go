package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/outfit"
	"ribwright/layout"
	report "ribwright/render/json"
	"ribwright/render/rendertest"
)

// cloth reads the cutter's files of the panels.
func (s truth) cloth(t *testing.T, dir, design string) truth {
	t.Helper()
	read := func(end string) []byte {
		b, err := os.ReadFile(filepath.Join(dir, design+"-sail-cloth"+end))
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	var err error
	if s.plate, err = rendertest.ReadSVG(read(".svg")); err != nil {
		t.Fatal(err)
	}
	if s.dxf, err = rendertest.ReadDXF(read(".dxf")); err != nil {
		t.Fatal(err)
	}
	page, said, ok := strings.Cut(s.said, "-cloth.dxf\n")
	if !ok {
		t.Fatal("the page does not name the file for the cutter of cloth")
	}
	s.said = said + page
	return s
}

// checkCloth: the panels are as many, and together the area of cloth, as the page
// tells.
func (s truth) checkCloth(t *testing.T) {
	area := 0.0
	pieces := s.plate.Pieces()
	for _, o := range pieces {
		area += math.Abs(o.Area(1)) / 1e6
	}
	said := regexp.MustCompile(`cloth +([0-9.]+) m2 cut +panels +(\d+)`).FindStringSubmatch(s.said)
	if said == nil {
		t.Fatal("the page does not tell the cloth")
	}
	want, err := strconv.ParseFloat(said[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	closeTo(t, "cloth", area, want, 0.006)
	if said[2] != strconv.Itoa(len(pieces)) {
		t.Errorf("%d panels, said %s", len(pieces), said[2])
	}
}

// figures are the sizes among an outfit's numbers that its files must show.
type figures struct {
	Sail struct {
		Cloth float64 `json:"cloth_m2"`
		Mast  struct {
			Diameter float64 `json:"diameter_mm"`
		} `json:"mast"`
		Leeboard struct {
			Chord  float64 `json:"chord_mm"`
			Length float64 `json:"length_mm"`
		} `json:"leeboard"`
	} `json:"sail"`
	Pair struct {
		Spacing float64   `json:"spacing_mm"`
		Beams   []float64 `json:"beam_stations_mm"`
		Width   float64   `json:"beam_width_mm"`
		Length  float64   `json:"beam_length_mm"`
	} `json:"pair"`
	Row struct {
		Width float64 `json:"bar_width_mm"`
	} `json:"row"`
}

// checkFigures measures what the numbers tell in the bytes of the sheets and of the
// cutter's files.
func (s truth) checkFigures(t *testing.T, dir string, row fitRow) {
	b, err := os.ReadFile(filepath.Join(dir, row.design+"-"+row.verb+"-numbers.json"))
	if err != nil {
		t.Fatal(err)
	}
	var f figures
	if err := json.Unmarshal(b, &f); err != nil {
		t.Fatal(err)
	}
	switch row.verb {
	case "row":
		for _, bar := range []string{"bar-fore", "bar-aft"} {
			if !s.drawn(bar, func(b rendertest.Box) bool { return math.Abs(b.H()-f.Row.Width) <= agree }) {
				t.Errorf("%s is nowhere %.2f mm wide", bar, f.Row.Width)
			}
		}
	case "pair":
		for i := range f.Pair.Beams {
			beam := "beam-" + strconv.Itoa(i+1)
			if !s.drawn(beam, sized(f.Pair.Length, f.Pair.Width)) {
				t.Errorf("%s is nowhere %.2f by %.2f mm", beam, f.Pair.Length, f.Pair.Width)
			}
			for _, x := range []float64{-f.Pair.Spacing / 2, f.Pair.Spacing / 2} {
				if !slices.ContainsFunc(s.numbers.Views()[beam], func(v rendertest.View) bool { return s.showsUpright(v, x, 0.05) }) {
					t.Errorf("%s has no middle of a boat at %.2f mm", beam, x)
				}
			}
		}
		if len(f.Pair.Beams) < 2 {
			t.Error("the numbers hold no beams")
		}
	case "sail":
		if b := f.Sail.Leeboard; row.rig != "vee" && !s.drawn("leeboard", sized(b.Length, b.Chord)) {
			t.Errorf("the leeboard is nowhere %.2f by %.2f mm", b.Length, b.Chord)
		}
		for board, play := range map[string]float64{"step": 1, "partner": 2} {
			if d := f.Sail.Mast.Diameter + play; f.Sail.Mast.Diameter <= play || !s.drawn(board, sized(d, d)) || !s.cuts(d) {
				t.Errorf("no hole of %.2f mm for the mast in the %s", d, board)
			}
		}
	}
}

// sized reports whether a box is so wide and high.
func sized(w, h float64) func(rendertest.Box) bool {
	return func(b rendertest.Box) bool { return math.Abs(b.W()-w) <= agree && math.Abs(b.H()-h) <= agree }
}

// drawn reports whether the sheets of a pattern hold a closed outline whose box is so.
func (s truth) drawn(pattern string, is func(rendertest.Box) bool) bool {
	for _, v := range s.numbers.Views()[pattern] {
		for _, k := range v.Strokes(s.pages[v.Page-1]) {
			if o := k.Outlines[0]; o.Closed && is(o.Bounds()) {
				return true
			}
		}
	}
	return false
}

// cuts reports whether both files for the cutter have a round hole of a diameter.
func (s truth) cuts(d float64) bool {
	hole := func(o rendertest.Outline) bool {
		return sized(d, d)(o.Bounds()) && math.Abs(math.Abs(o.Area(64))-math.Pi*d*d/4) <= 0.002*d*d
	}
	return slices.ContainsFunc(s.plate.Paths("CUT"), func(e rendertest.Element) bool { return slices.ContainsFunc(e.Outlines, hole) }) &&
		slices.ContainsFunc(s.dxf.On("CUT"), func(e rendertest.Entity) bool { return hole(e.Outline) })
}

// modelOf rebuilds what a verb has to tell, from the design alone.
func modelOf(t *testing.T, row fitRow) (*fitting, told) {
	t.Helper()
	d, err := design.Shipped(row.design)
	if err != nil {
		t.Fatal(err)
	}
	fail := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	fit := func(v verb, n outfit.Name) (*fitting, *outfit.Outfits) {
		f := newFitting(v)
		if n == outfit.Sail {
			var given sailFlags
			fail(given.kind.Set(row.rig))
			fail(given.over(f, d))
		}
		o, err := f.fit(d, row.design, "", n)
		fail(err)
		return f, o
	}
	switch row.verb {
	case "row":
		f, o := fit(rowVerb(), outfit.Row)
		return f, rowTold(f, o.Row, row.design)
	case "pair":
		f, o := fit(pairVerb(), outfit.Pair)
		return f, pairTold(f, o.Pair, row.design)
	}
	f, o := fit(sailVerb(), outfit.Sail)
	return f, sailTold(f, o.Sail, row.design)
}

// checkOutfitModel compares every part as the outfit has it with what stands in both
// files for the cutter and on the sheets, as TestModelAndFiles does: area and box, to
// 0.02 mm and 0.01 %, turned but not turned over, whole on a board and clear of its
// edge, and nothing else to cut.
func checkOutfitModel(t *testing.T, row fitRow, plates map[string]truth) {
	f, model := modelOf(t, row)
	laid, err := f.plates(model, report.Header{Title: model.design.Title})
	if err != nil {
		t.Fatal(err)
	}
	if len(laid) != len(plates) {
		t.Fatalf("%d plates, want %d", len(plates), len(laid))
	}
	for _, p := range laid {
		s := plates[p.name]
		count := 0
		for _, q := range p.Parts {
			for _, c := range q.Part.Cut {
				count++
				if want := modelled(c, q); !s.cutAt(want) {
					t.Errorf("not both files have an outline of %s at %.3f with %.3f mm2", q.Part.Name, want.Bounds(), want.Area(1))
				} else if !onBoard(p.Plate, want.Bounds()) {
					t.Errorf("%s at %.3f is not whole on a board", q.Part.Name, want.Bounds())
				}
				if !s.onPaper(c, agree) {
					t.Errorf("no sheet shows an outline of %s as large as it is", q.Part.Name)
				}
			}
		}
		if n := len(s.dxf.On("CUT")); n != count || count == 0 {
			t.Errorf("%d outlines to cut in %s, want %d", n, p.name, count)
		}
	}
}

// cutAt reports whether both files cut an outline at its place.
func (s truth) cutAt(want rendertest.Outline) bool {
	match := func(o rendertest.Outline) bool {
		return o.Closed && o.Bounds().Off(want.Bounds()) <= agree && math.Abs(math.Abs(o.Area(64))-math.Abs(want.Area(1))) <= agreeArea*math.Abs(want.Area(1))
	}
	return slices.ContainsFunc(s.plate.Paths("CUT"), func(e rendertest.Element) bool { return slices.ContainsFunc(e.Outlines, match) }) &&
		slices.ContainsFunc(s.dxf.On("CUT"), func(e rendertest.Entity) bool { return match(e.Outline) })
}

// onBoard reports whether a box lies on one board, the cutter's spacing from its edge.
func onBoard(p layout.Plate, b rendertest.Box) bool {
	return slices.ContainsFunc(p.Boards, func(o layout.Board) bool {
		return rendertest.Box{X0: o.Box.Min.X, Y0: o.Box.Min.Y, X1: o.Box.Max.X, Y1: o.Box.Max.Y}.Grow(-spacing + 0.001).HoldsBox(b)
	})
}

// TestOutfitTitles fits boats out whose titles could break out of the folder or of a
// file's format, as TestLoftTitle lofts them.
func TestOutfitTitles(t *testing.T) {
	shipped, err := os.ReadFile(filepath.Join("..", "..", "geometry", "design", "shipped", "brook.toml"))
	if err != nil {
		t.Fatal(err)
	}
	for verb, sets := range map[string]int{"row": 4, "pair": 4, "sail": 6} {
		for title, slug := range map[string]string{
			`]]> <!-- --> <?x?> </svg> &amp; &#0;`: "x-svg-amp-0", `) Tj ET (\\( \ %%EOF endstream`: "tj-et-eof-endstream",
			`/../../etc\..\passwd:C:\con`: "etc-passwd-c-con", "Каноэ 船 قارب": "boat",
		} {
			t.Run(verb+" "+slug, func(t *testing.T) {
				t.Parallel()
				quoted, err := json.Marshal(title) // a JSON text is a TOML text too
				if err != nil {
					t.Fatal(err)
				}
				file := filepath.Join(t.TempDir(), "x.toml")
				if err := os.WriteFile(file, bytes.ReplaceAll(shipped, []byte(`"Brook"`), quoted), 0o666); err != nil {
					t.Fatal(err)
				}
				dir := t.TempDir()
				var out, errs bytes.Buffer
				if code := run([]string{verb, file, "--loft", "--out", dir}, &out, &errs); code != done || errs.Len() > 0 {
					t.Fatalf("exit %d: %s", code, errs.String())
				}
				got := files(t, dir)
				if len(got) != sets {
					t.Errorf("%d files, want %d", len(got), sets)
				}
				for name, data := range got {
					if !strings.HasPrefix(name, slug+"-"+verb+"-") {
						t.Errorf("a file is called %q, want %s-%s-...", name, slug, verb)
					}
					if err := check(name, []byte(data)); err != nil {
						t.Errorf("%s: %v", name, err)
					}
				}
			})
		}
	}
}
