package job

import (
	"archive/zip"
	"bytes"
	"io"
	"math"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/render/rendertest"
)

// file is one that was made.
type file struct {
	name string
	data []byte
}

// drawings reads files back and asks plain geometry whether what they show can be. It shares no
// code with what draws them.
type drawings struct {
	about  string
	length float64 // of the boat, mm
}

var notANumber = regexp.MustCompile(`\b(NaN|[+-]Inf|Infinity)\b|%!`)

// mayHold reports whether it is worth looking at every word for one that is not a number.
func mayHold(data []byte) bool {
	return bytes.Contains(data, []byte("NaN")) || bytes.Contains(data, []byte("Inf")) || bytes.Contains(data, []byte("%!"))
}

// set reads the files of one answer: each by itself, and numbers beside the sheets and the cutter's
// files that they are of.
func (d drawings) set(t *testing.T, files []file) {
	t.Helper()
	of := map[string]*truth{}
	for _, f := range files {
		stem := stemOf.ReplaceAllString(f.name, "")
		if of[stem] == nil {
			of[stem] = &truth{}
		}
		d.check(t, f, of[stem])
	}
	for _, f := range files {
		if stem, is := strings.CutSuffix(f.name, "-numbers.json"); is {
			d.numbers(t, f, *of[stem])
		}
	}
}

// stemOf is what follows a boat's name in the names of the files of one lofting.
var stemOf = regexp.MustCompile(`-(patterns-.*|cut\..*|numbers\.json)$`)

// check reads one file by what its name says it is, and keeps what is of a lofting.
func (d drawings) check(t *testing.T, f file, keep *truth) {
	t.Helper()
	d.about += ", " + f.name
	kind := filepath.Ext(f.name)
	if kind != ".pdf" && kind != ".zip" && mayHold(f.data) {
		if m := notANumber.Find(f.data); m != nil {
			t.Errorf("%s: holds %q", d.about, m)
		}
	}
	var err error
	switch {
	case kind == ".zip":
		err = d.parcel(t, f.data)
	case strings.Contains(f.name, "-patterns-"):
		keep.pages, err = d.sheets(t, f)
	case kind == ".pdf":
		_, err = d.sheets(t, f)
	case kind == ".dxf":
		keep.dxf, err = d.cut(t, f.data)
	case strings.HasSuffix(f.name, "-cut.svg"), strings.HasSuffix(f.name, "-cloth.svg"):
		keep.plate, err = d.plates(t, f.data)
	case kind == ".svg", kind == ".json":
		err = rendertest.WellFormed(f.name, f.data)
	case kind == ".toml" && f.name != "prices.toml":
		_, err = design.Decode(bytes.NewReader(f.data), f.name)
	}
	if err != nil {
		t.Errorf("%s: %v", d.about, err)
	}
}

// parcel looks into a zip.
func (d drawings) parcel(t *testing.T, src []byte) error {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(src), int64(len(src)))
	if err != nil {
		return err
	}
	var files []file
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			return err
		}
		src, err := io.ReadAll(r)
		if err != nil {
			return err
		}
		files = append(files, file{f.Name, src})
	}
	d.set(t, files)
	return nil
}

// numbers asks whether each piece of a pattern shows a line, and whether a boat's numbers are
// a boat's.
func (d drawings) numbers(t *testing.T, f file, s truth) {
	t.Helper()
	n, err := rendertest.ReadPages(f.data)
	if err != nil {
		t.Errorf("%s, %s: %v", d.about, f.name, err)
		return
	}
	d.laid(t, n.Pages)
	for _, v := range n.Pages {
		if v.Page > len(s.pages) || !v.Inked(s.pages[v.Page-1]) {
			t.Errorf("%s: %v of %d shows no line", d.about, v, len(s.pages))
		}
	}
	if !bytes.Contains(f.data, []byte(`"gunwale"`)) {
		return // an outfit's
	}
	for _, ask := range []func([]byte) ([]string, error){rendertest.Absurd, rendertest.Misfits} {
		found, err := ask(f.data)
		if err != nil {
			t.Errorf("%s, %s: %v", d.about, f.name, err)
		}
		for _, f := range found {
			t.Errorf("%s: %s", d.about, f)
		}
	}
	if s.numbers, err = rendertest.ReadNumbers(f.data); err != nil {
		t.Errorf("%s: %v", d.about, err)
		return
	}
	t.Run("truth", func(t *testing.T) {
		s.checkBoat(t)
		if t.Failed() {
			t.Error(d.about)
		}
	})
}

// laid holds the pieces of patterns on their sheets at full size, to what a printer's stretch takes,
// each beside the others.
func (d drawings) laid(t *testing.T, views []rendertest.View) {
	t.Helper()
	const stretch = 0.02
	for i, v := range views {
		m, on := v.ToSheet, v.OnSheet()
		wide, high := math.Hypot(m[0], m[1]), math.Hypot(m[2], m[3])
		if square := m[0]*m[2] + m[1]*m[3]; math.Abs(wide-1) > stretch || math.Abs(high-1) > stretch || math.Abs(square) > 1e-6 || m[0]*m[3] < m[1]*m[2] {
			t.Errorf("%s: %v is laid by %v", d.about, v, m)
		}
		if sheet := (rendertest.Box{X1: v.Sheet[0], Y1: v.Sheet[1]}); !sheet.HoldsBox(on) {
			t.Errorf("%s: %v fills %.1f of %.1f", d.about, v, on, sheet)
		}
		for _, w := range views[:i] {
			both := on.Grow(-rounding).Meet(w.OnSheet())
			if v.Page == w.Page && !both.Empty() && v.Turned == w.Turned {
				t.Errorf("%s: %v lies on %v", d.about, v, w)
			}
		}
	}
}

// dot is the largest outline that is only a dot of its pen, mm: its points are rounded by as much.
const dot = 4 * rounding

// sheets reads a PDF: each sheet has words and lines, all words stand on it, no line runs
// farther than twice the boat, and nothing closed crosses itself.
func (d drawings) sheets(t *testing.T, f file) ([]rendertest.Page, error) {
	t.Helper()
	pdf, err := rendertest.ReadPDF(f.data)
	if err != nil {
		return nil, err
	}
	pages, err := pdf.Pages()
	far := 2*d.length + 3000
	for i, p := range pages {
		sheet := rendertest.Box{X1: p.W, Y1: p.H}
		if len(p.Texts) == 0 {
			t.Errorf("%s: page %d is blank", d.about, i+1)
		}
		for _, s := range p.Strokes {
			for _, o := range s.Outlines {
				if b := rendertest.Around(o.Points(4)...); !b.Empty() && !sheet.Grow(far).HoldsBox(b) {
					t.Errorf("%s: page %d: a line runs to %+v on a sheet of %.0f x %.0f mm", d.about, i+1, b, p.W, p.H)
				}
				if b := o.Bounds(); o.Closed && math.Max(b.W(), b.H()) > dot && rendertest.CrossesItself(o.Points(6)) {
					t.Errorf("%s: page %d: an outline within %+v crosses itself", d.about, i+1, b)
				}
			}
		}
		for _, lie := range rendertest.OnEachOther(p.Texts) {
			t.Errorf("%s: page %d: %q lies on %q", d.about, i+1, lie[0], lie[1])
		}
		for _, w := range p.Texts {
			if seen := w.Bounds().Meet(w.Clip); !seen.Empty() && !sheet.HoldsBox(seen) {
				t.Errorf("%s: page %d: %q fills %.1f on a sheet of %.0f x %.0f mm", d.about, i+1, w.Words, seen, p.W, p.H)
			}
		}
	}
	return pages, err
}

// cut reads a cutter's file: every edge closed and crossing neither itself nor another, none longer
// than the boat with its cloth, and every mark on a part.
func (d drawings) cut(t *testing.T, file []byte) (*rendertest.DXF, error) {
	t.Helper()
	dxf, err := rendertest.ReadDXF(file)
	if err != nil {
		return nil, err
	}
	var edges []rendertest.Outline
	for i, e := range dxf.On("CUT") {
		b := e.Outline.Bounds()
		if !e.Outline.Closed || rendertest.CrossesItself(e.Outline.Points(12)) {
			t.Errorf("%s: edge %d, within %+v, crosses itself or is open", d.about, i+1, b)
		}
		if math.Hypot(b.W(), b.H()) > d.length+500 {
			t.Errorf("%s: edge %d runs over %.0f x %.0f mm", d.about, i+1, b.W(), b.H())
		}
		edges = append(edges, e.Outline)
	}
	if len(edges) == 0 {
		t.Errorf("%s: nothing is cut", d.about)
	}
	for i, j := range rendertest.Crossing(edges) {
		t.Errorf("%s: edges within %+v and %+v cross", d.about, edges[i].Bounds(), edges[j].Bounds())
	}
	return dxf, nil
}

// plates reads the SVG of a cutter's files: what is drawn on a part lies on one.
func (d drawings) plates(t *testing.T, file []byte) (*rendertest.SVG, error) {
	t.Helper()
	svg, err := rendertest.ReadSVG(file)
	if err != nil {
		return nil, err
	}
	t.Run("marks", func(t *testing.T) {
		truth{plate: svg}.checkOnParts(t)
		if t.Failed() {
			t.Error(d.about)
		}
	})
	return svg, nil
}
