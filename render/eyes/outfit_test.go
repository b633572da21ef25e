package eyes

import (
	"os"
	"path/filepath"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/frame"
	"ribwright/geometry/laden"
	"ribwright/geometry/measure"
	"ribwright/geometry/pair"
	"ribwright/geometry/rig"
	"ribwright/geometry/rowing"
	"ribwright/geometry/water"
	"ribwright/layout"
	"ribwright/layout/outfit"
	"ribwright/render/rendertest"
)

// outfits draws every pattern of an outfit of the lake design in its own coordinates.
func outfits(t *testing.T, verb string) []layout.Drawing {
	t.Helper()
	d, err := design.Shipped("lake")
	if err != nil {
		t.Fatal(err)
	}
	f, err := frame.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	crew := d.Crew
	if verb == "row" {
		crew = nil
	}
	b, err := laden.New(f, crew, d.Gear)
	if err != nil {
		t.Fatal(err)
	}
	o := outfit.Options{Units: measure.Metric}
	switch verb {
	case "sail":
		fit, err := rig.New(b, d.Sail(), w)
		if err != nil {
			t.Fatal(err)
		}
		return append(outfit.Drawings(outfit.SailBoards(fit, o), o), outfit.PanelDrawings(fit, o)...)
	case "pair":
		c, err := pair.New(b, b, d.Pair(), w)
		if err != nil {
			t.Fatal(err)
		}
		return append(outfit.BeamDrawings(c, o), outfit.Drawings(outfit.PairBoards(c, o), o)...)
	}
	fit, err := rowing.New(b, d.Row(), w)
	if err != nil {
		t.Fatal(err)
	}
	return outfit.Drawings(outfit.RowingBoards(fit, o), o)
}

// fitted lofts an outfit of the lake design and reads the sheets.
func fitted(t *testing.T, verb, paper string) set {
	t.Helper()
	dir := t.TempDir()
	ribwright(t, verb, "lake", "--loft", "--paper", paper, "--out", dir)
	read := func(name string) []byte {
		src, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		return src
	}
	n, err := rendertest.ReadPages(read("lake-" + verb + "-numbers.json"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := Read(eyesOf(t), read("lake-"+verb+"-patterns-"+paper+".pdf"), n.Pages)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.File.Close() })
	return set{s, &Numbers{Numbers: n}}
}

// TestStitchedOutfits puts the tiles of every outfit's patterns together and holds
// them against the pattern in one piece, as TestStitched does.
func TestStitchedOutfits(t *testing.T) {
	for _, verb := range []string{"row", "pair", "sail"} {
		s := fitted(t, verb, "a4")
		for _, d := range outfits(t, verb) {
			if d.Name == "panel-1" || d.Name == "beam-1" {
				continue // as the second one, and far larger
			}
			t.Run(verb+" "+d.Name, func(t *testing.T) {
				one, err := WholeOf(eyesOf(t), &d)
				if err != nil {
					t.Fatal(err)
				}
				t.Cleanup(func() { one.File.Close() })
				c := check{s, one, d.Name, Undone}
				c.linesInOnePiece(t)
				c.drawnOnce(t)
				c.lettersInOnePiece(t)
				c.covered(t)
				c.sameInk(t)
			})
		}
	}
}
