package job

import (
	"encoding/json"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/outfit"
	"ribwright/layout"
	"ribwright/render/rendertest"
)

// cloth reads the cutter's files of the panels.
func (s truth) cloth(t *testing.T, design string) truth {
	t.Helper()
	var err error
	if s.plate, err = rendertest.ReadSVG(s.files[design+"-sail-cloth.svg"]); err != nil {
		t.Fatal(err)
	}
	if s.dxf, err = rendertest.ReadDXF(s.files[design+"-sail-cloth.dxf"]); err != nil {
		t.Fatal(err)
	}
	page, said, ok := strings.Cut(s.said, "-cloth.dxf\n")
	if !ok {
		t.Fatal("nothing is said of the file for the cutter of cloth")
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
	said := regexp.MustCompile(`cloth cut +([0-9.]+) m2 in (\d+) panels?`).FindStringSubmatch(s.said)
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
func (s truth) checkFigures(t *testing.T, row fitRow) {
	b := s.files[row.design+"-"+row.verb+"-numbers.json"]
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
		for board, play := range map[string]float64{"step": 1, "partner": 5} { // leather of 2 mm all round
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

// modelOf rebuilds what there is to make of an outfit, from the design alone.
func modelOf(t *testing.T, row fitRow) outfitting {
	t.Helper()
	fit := func(n outfit.Name, r fitter, f *Fitting) outfitting {
		f.Design = row.design
		k, err := f.changed(world(), r)
		if err != nil {
			t.Fatal(err)
		}
		s, err := k.ship(world(), k.design.Gear, "", f.Water)
		if err != nil {
			t.Fatal(err)
		}
		o, err := outfit.One(s, n)
		if err != nil {
			t.Fatal(err)
		}
		return r.outfitting(k, o)
	}
	switch row.verb {
	case "row":
		r := NewRow()
		return fit(outfit.Row, r, &r.Fitting)
	case "pair":
		r := asked(t, "pair", purpose("pair")...).(*Pair)
		return fit(outfit.Pair, r, &r.Fitting)
	}
	r := asked(t, "sail", "--rig", row.rig).(*Sail)
	return fit(outfit.Sail, r, &r.Fitting)
}

// checkOutfitModel compares every part as the outfit has it with what stands in both
// files for the cutter and on the sheets, as TestModelAndFiles does: area and box, to
// 0.02 mm and 0.01 %, turned but not turned over, whole on a board and clear of its
// edge, and nothing else to cut.
func checkOutfitModel(t *testing.T, row fitRow, plates map[string]truth) {
	model := modelOf(t, row)
	if len(model.plates) != len(plates) {
		t.Fatalf("%d plates, want %d", len(plates), len(model.plates))
	}
	for _, q := range model.plates {
		s := plates[q.name]
		p, err := q.lay(model.facts.design.Title + " " + model.name)
		if err != nil {
			t.Fatal(err)
		}
		count := 0
		for _, placed := range p.Parts {
			for _, c := range placed.Part.Cut {
				count++
				if want := modelled(c, placed); !s.cutAt(want) {
					t.Errorf("not both files have an outline of %s at %.3f with %.3f mm2", placed.Part.Name, want.Bounds(), want.Area(1))
				} else if !onBoard(p, want.Bounds()) {
					t.Errorf("%s at %.3f is not whole on a board", placed.Part.Name, want.Bounds())
				}
				if !s.onPaper(c, agree) {
					t.Errorf("no sheet shows an outline of %s as large as it is", placed.Part.Name)
				}
			}
		}
		if n := len(s.dxf.On("CUT")); n != count || count == 0 {
			t.Errorf("%d outlines to cut in %s, want %d", n, q.name, count)
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
