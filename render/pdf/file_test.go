package pdf_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/render/pdf"
	"ribwright/render/rendertest"
)

// manySheets is a document with something of everything on n sheets.
func manySheets(n int) layout.Document {
	doc := shown(alone(curve.Circle(pt(50, 50), 30)), []layout.Text{{At: pt(50, 50), Height: 3, Angle: 1, Words: "caf\u00e9"}},
		geometry.Box{Max: pt(90, 90)}, geometry.Shift(20, 30))
	for len(doc.Sheets) < n {
		doc.Sheets = append(doc.Sheets, doc.Sheets[0])
	}
	return doc
}

func TestHintsInTheCatalogue(t *testing.T) {
	for _, sheets := range []int{1, 2, 120} {
		f := readFile(t, manySheets(sheets)) // follows the tables, checks every entry and /Size
		if f.Version != "1.7" || f.Sections != 2 {
			t.Errorf("%d sheets: version %s in %d sections, want 1.7 in 2", sheets, f.Version, f.Sections)
		}
		root, err := f.Catalogue()
		if err != nil {
			t.Fatal(err)
		}
		hints, _ := root["ViewerPreferences"].(rendertest.Dict)
		want := rendertest.Dict{"PrintScaling": rendertest.Name("None"), "Duplex": rendertest.Name("Simplex"),
			"PickTrayByPDFSize": true, "DisplayDocTitle": true}
		for k, v := range want {
			if hints[k] != v {
				t.Errorf("%d sheets: /%s is %v, want %v", sheets, k, hints[k], v)
			}
		}
		text, err := f.CatalogueText()
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range []string{"/Type", "/Pages", "/ViewerPreferences", "/PrintScaling"} {
			if n := strings.Count(text, key); n != 1 {
				t.Errorf("%d sheets: %s stands %d times in the catalogue, want once", sheets, key, n)
			}
		}
	}
}

func TestPagesAreThePaper(t *testing.T) {
	for _, paper := range []layout.Paper{a4(), {Name: "letter", W: 279.4, H: 215.9}, {Name: "tall", W: 100, H: 300}, {Name: "longest", W: 5080, H: 900}} {
		doc := manySheets(3)
		doc.Paper = paper
		for i, p := range readPages(t, doc) {
			if math.Abs(p.W-paper.W) > step || math.Abs(p.H-paper.H) > step {
				t.Errorf("%s: page %d is %.4f x %.4f mm, want %g x %g", paper.Name, i+1, p.W, p.H, paper.W, paper.H)
			}
		}
	}
}

// TestTitle: a title is in the file as it was given, in any script, on one line and
// without control characters; both descriptions say it.
func TestTitle(t *testing.T) {
	for title, want := range map[string]string{
		"Brook": "Brook", "": "", " \x00caf\u00e9\r\n(port) \\": "caf\u00e9 (port) \\", "caf\xe9": "caf\ufffd",
		"\u5c0f\u821f \U0001F6F6 & <Чайка>": "\u5c0f\u821f \U0001F6F6 & <Чайка>", "\u202eright to left": "right to left",
		") Tj ET %%EOF\nstartxref\n0": ") Tj ET %%EOF startxref 0",
	} {
		doc := manySheets(1)
		doc.Title = title
		f := readFile(t, doc)
		info, err := f.Info()
		if err != nil {
			t.Fatalf("%.40q: %v", title, err)
		}
		if got := rendertest.PlainText(info["Title"]); got != want {
			t.Errorf("title %.40q reads back as %.40q, want %.40q", title, got, want)
		}
		root, err := f.Catalogue()
		if err != nil || root["ViewerPreferences"] == nil || root["Lang"] != "en" {
			t.Errorf("title %.40q: no hints or no language in the catalogue (%v)", title, err)
		}
		var xmp struct {
			Title string `xml:"RDF>Description>title>Alt>li"`
			Made  string `xml:"RDF>Description>CreateDate"`
		}
		about, err := f.Metadata()
		if err == nil {
			err = xml.Unmarshal(about, &xmp)
		}
		if err != nil || xmp.Title != want || xmp.Made != "2000-01-01T00:00:00Z" {
			t.Errorf("title %.40q: described as %+v (%v)", title, xmp, err)
		}
	}
}

// TestIdentifier: files that differ have other identifiers and other names for their
// subsets of letters. Source: ISO 32000-1, 14.4 and 9.6.4.
func TestIdentifier(t *testing.T) {
	seen := map[string]bool{}
	for _, words := range []string{"Brook", "Lake", "Чайка"} {
		f := readFile(t, onSheet(nil, []layout.Text{{At: pt(20, 20), Height: 3, Words: words}}))
		id, _ := f.Trailer["ID"].([]any)
		if len(id) != 2 || id[0] != id[1] || len(id[0].(string)) != 16 || seen[id[0].(string)] {
			t.Fatalf("%s: identifier %q", words, id)
		}
		seen[id[0].(string)] = true
	}
}

// TestSubset: the file holds the letters that are used, a small part of the font.
func TestSubset(t *testing.T) {
	few := encode(t, onSheet(nil, []layout.Text{{At: pt(20, 20), Height: 3, Words: "ab"}}))
	many := encode(t, onSheet(nil, []layout.Text{{At: pt(20, 20), Height: 3, Words: "абвгдежзклмнопрстуфхцчшщэюя"}}))
	if len(few) > 12000 || len(many) < len(few)+1000 || len(lettering.Font()) < 4*len(few) {
		t.Errorf("%d bytes with two letters, %d with thirty more, of a font of %d", len(few), len(many), len(lettering.Font()))
	}
}

func TestSameBytesTwice(t *testing.T) {
	info, err := readFile(t, manySheets(1)).Info()
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []rendertest.Name{"CreationDate", "ModDate"} {
		if info[key] != "D:20000101000000" { // the clock must not come in
			t.Errorf("/%s is %v", key, info[key])
		}
	}
	first := encode(t, manySheets(7))
	for range 5 {
		if !bytes.Equal(first, encode(t, manySheets(7))) {
			t.Fatal("the same document gave other bytes")
		}
	}
}

func TestRefusals(t *testing.T) {
	path := func(x, y float64) layout.Document {
		return shown(alone(curve.Polyline(pt(0, 0), pt(x, y))), nil, geometry.Box{Max: pt(90, 90)}, geometry.Shift(20, 30))
	}
	text := func(words layout.Text) layout.Document {
		return shown(nil, []layout.Text{words}, geometry.Box{Max: pt(90, 90)}, geometry.Shift(20, 30))
	}
	sized := func(w, h float64) layout.Document {
		doc := manySheets(1)
		doc.Paper = layout.Paper{Name: "odd", W: w, H: h}
		return doc
	}
	placed := manySheets(2)
	placed.Sheets[0].Views[0].ToSheet = geometry.Stretch(2, 2)
	stretched, otherwise := manySheets(1), manySheets(1)
	stretched.Stretch = pt(1/25.4, 1)
	otherwise.Stretch = pt(1.004, 1)
	for _, row := range []struct {
		name string
		doc  layout.Document
		want string
	}{
		{"NaN", path(math.NaN(), 5), "Bow stem"},
		{"infinite", path(5, math.Inf(1)), "Bow stem"},
		{"1e300", path(1e300, 5), "Bow stem"},
		{"text nowhere", text(layout.Text{At: pt(math.NaN(), 0), Height: 3, Words: "x"}), "Bow stem"},
		{"text of negative height", text(layout.Text{Height: -3, Words: "x"}), "Bow stem"},
		{"text of no height", text(layout.Text{Words: "x"}), "Bow stem"},
		{"at another size", placed, "Bow stem"},
		{"stretched out of reason", stretched, "no correction for a printer"},
		{"stretched otherwise than it says", otherwise, "Bow stem"},
		{"paper of no width", sized(0, 200), "odd"},
		{"paper of NaN", sized(200, math.NaN()), "odd"},
		{"page too long", sized(5080.1, 200), "5080 mm"},
		{"page too high", sized(200, 6000), "5080 mm"},
		{"no sheets", layout.Document{Paper: a4()}, "nothing to print"},
	} {
		t.Run(row.name, func(t *testing.T) {
			var b bytes.Buffer
			err := pdf.Encode(&b, row.doc, made())
			if err == nil || !strings.Contains(err.Error(), row.want) {
				t.Errorf("error %v, want one with %q", err, row.want)
			}
			if b.Len() > 0 {
				t.Errorf("%d bytes written all the same", b.Len())
			}
		})
	}
}

func TestFailingWriter(t *testing.T) {
	for _, room := range []int{0, 1, 1000} {
		if err := pdf.Encode(&rendertest.Full{Room: room}, manySheets(3), made()); !errors.Is(err, rendertest.ErrFull) {
			t.Errorf("room for %d bytes: error %v, want the writer's own", room, err)
		}
	}
}
