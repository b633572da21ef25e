package eyes

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/render/rendertest"
)

// margin is what no sheet prints on at any edge, mm: printers guarantee 4 to
// 6.4 mm on most edges and leave up to 12.7 mm blank at one.
const margin = 10.0

// sizes are the papers, short edge first, mm; a roll has one edge. Sources:
// ANSI/ASME Y14.1, sizes A and B; ISO 216; legal 8.5 by 14 inches; a roll of 24
// inches. Both is what fits on letter and on a4.
var sizes = map[string][2]float64{
	"letter": {215.9, 279.4}, "a4": {210, 297}, "legal": {215.9, 355.6}, "tabloid": {279.4, 431.8}, "a3": {297, 420},
	"both": {210, 279.4}, "12x18in": {304.8, 457.2}, "roll24": {609.6, 0},
}

// TestFile reads finished files as a print shop's software does.
func TestFile(t *testing.T) {
	for _, paper := range slices.Sorted(maps.Keys(sizes)) {
		designs := []string{"brook"}
		if paper == "letter" || paper == "a4" {
			designs = []string{"brook", "river"}
		}
		for _, design := range designs {
			t.Run(design+" on "+paper, func(t *testing.T) {
				s := loft(t, design, paper)
				t.Run("hints", s.checkHints)
				t.Run("sizes", func(t *testing.T) { s.checkSizes(t, sizes[paper]) })
				t.Run("frames", s.checkFrames)
				t.Run("drawn once", s.checkDrawnOnce)
				t.Run("margins", s.checkMargins)
				t.Run("bars", func(t *testing.T) { s.checkBars(t, Printer{1, 1}) })
				t.Run("words", func(t *testing.T) { s.checkWords(t, paper) })
				t.Run("outline", s.checkOutline)
			})
		}
	}
}

// TestFileCorrected: on sheets that make up for a printer, margins hold, frames
// lie where the table says, and the bars are true once printed.
func TestFileCorrected(t *testing.T) {
	s := loft(t, "brook", "letter", correction(stretched)...)
	t.Run("sizes", func(t *testing.T) { s.checkSizes(t, sizes["letter"]) })
	t.Run("frames", s.checkFrames)
	t.Run("margins", s.checkMargins)
	t.Run("bars", func(t *testing.T) { s.checkBars(t, stretched) })
	s.each(t, func(number int, p *Page) {
		text, err := p.Text()
		if words := fmt.Sprintf("corrected across %.4f, down %.4f", stretched.Across, stretched.Down); err != nil || !strings.Contains(text, words) {
			t.Errorf("page %d does not say %q (%v)", number, words, err)
		}
	})
}

// TestFileMoved: a printer that sets its ink off is worked against by moving all
// ink; frames still lie where the table says, and nothing gets onto a margin.
func TestFileMoved(t *testing.T) {
	s := loft(t, "brook", "letter", "--way", "lying", "--offset", "right 3 mm, down 2 mm")
	t.Run("frames", s.checkFrames)
	t.Run("margins", s.checkMargins)
	t.Run("bars", func(t *testing.T) { s.checkBars(t, Printer{1, 1}) })
	t.Run("stems", func(t *testing.T) {
		c := check{s, whole(t, "brook", "stems"), "stems", Printer{1, 1}.Laid}
		c.linesInOnePiece(t)
		c.againstNumbers(t, mayStitch)
	})
}

// checkHints: a dialogue that heeds the file does not scale and prints on one
// side, and the file's version is one that knows these hints (ISO 32000-1,
// table 150: PDF 1.6 and 1.7).
func (s set) checkHints(t *testing.T) {
	h, err := s.File.Hints()
	if err != nil {
		t.Fatal(err)
	}
	if h.FitsToPage || !h.SimplexOnly || h.Version < 17 {
		t.Errorf("a viewer reads %+v", h)
	}
}

// each opens every page in turn.
func (s set) each(t *testing.T, look func(number int, p *Page)) {
	t.Helper()
	count, err := s.File.Count()
	if err != nil || count == 0 {
		t.Fatalf("%d pages: %v", count, err)
	}
	for number := 1; number <= count; number++ {
		p, err := s.File.Page(number)
		if err != nil {
			t.Fatal(err)
		}
		look(number, p)
		if err := p.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// longestPage is the longest page that viewers show, mm: 14 400 units of 1/72
// inch. Source: PDF Reference 1.7, appendix C.
const longestPage = 5080.0

// checkSizes: every page is the paper to a hundredth of a point, all lie the
// same way, none is turned, and the table of tiles says the same.
func (s set) checkSizes(t *testing.T, size [2]float64) {
	const may = 0.01 * mmPerPoint
	s.each(t, func(number int, p *Page) {
		w, h := p.Size()
		turned, err := p.Turned()
		if size[1] == 0 { // a roll
			short, long := size[0], math.Max(w, h)
			if w != long && math.Abs(w-short) > may || h != long && math.Abs(h-short) > may || long > longestPage {
				t.Errorf("page %d is %.3f by %.3f mm; the roll %.3f wide", number, w, h, short)
			}
		} else if short, long := math.Min(w, h), math.Max(w, h); err != nil || turned || math.Abs(short-size[0]) > may || math.Abs(long-size[1]) > may {
			t.Errorf("page %d is %.3f by %.3f mm, turned: %v (%v); the paper %v", number, w, h, turned, err, size)
		}
		for _, v := range s.Views {
			if math.Abs(v.Sheet[0]-w) > may || math.Abs(v.Sheet[1]-h) > may {
				t.Fatalf("page %d is %.3f by %.3f mm, the table of tiles says %v", number, w, h, v.Sheet)
			}
		}
	})
}

// checkFrames: tiles lie apart from each other and inside the margins.
func (s set) checkFrames(t *testing.T) {
	for i, v := range s.Views {
		if v.Turned {
			continue // it lies where its other half does
		}
		on := v.OnSheet()
		room := rendertest.Box{X0: margin, Y0: margin, X1: v.Sheet[0] - margin, Y1: v.Sheet[1] - margin}.Grow(0.01)
		if !room.HoldsBox(on) {
			t.Errorf("%v: its frame %.2f leaves the printable area", v, on)
		}
		for _, w := range s.Views[:i] {
			if both := on.Meet(w.OnSheet()); w.Page == v.Page && !w.Turned && !both.Empty() {
				t.Errorf("%v and %v lie over each other in %.2f", v, w, both)
			}
		}
	}
}

// checkDrawnOnce: no line stands twice in what a tile shows. The weight of the
// ink tells that of long lines, this of any.
func (s set) checkDrawnOnce(t *testing.T) {
	for _, v := range s.Views {
		seen := map[string]bool{}
		for _, k := range v.Strokes(s.Drawn[v.Page-1]) {
			key := ""
			for _, o := range k.Outlines {
				key += fmt.Sprintf("%.2f", o.Points(4))
			}
			if seen[key] {
				t.Errorf("%v: the line %s is drawn twice", v, key)
			}
			seen[key] = true
		}
		if len(seen) == 0 {
			t.Errorf("%v shows no line", v)
		}
	}
}

// checkMargins draws the edges of every sheet: not a dot of ink on them, and
// some within.
func (s set) checkMargins(t *testing.T) {
	s.each(t, func(number int, p *Page) {
		w, h := p.Size()
		const in = margin - 0.02 // of dots that lie wholly on it
		for _, edge := range []rendertest.Box{{X1: w, Y1: in}, {X1: in, Y1: h}, {X0: w - in, X1: w, Y1: h}, {X1: w, Y0: h - in, Y1: h}} {
			if ink := s.shown(t, p, edge).Inked(); !ink.Empty() {
				t.Errorf("page %d: ink on the margin, at %.1f", number, ink)
			}
		}
		// Every sheet has its foot, so what shows of it must not be bare.
		if foot := s.shown(t, p, rendertest.Box{X0: in, Y0: in, X1: w / 2, Y1: 40}); foot.Inked().Empty() {
			t.Errorf("page %d: nothing at its foot", number)
		}
	})
}

// shown draws a part of a page as it is, in mm from its lower left corner.
func (s set) shown(t *testing.T, p *Page, part rendertest.Box) *Raster {
	t.Helper()
	r := NewRaster(part)
	if err := p.Draw(Shift(0, 0), r); err != nil {
		t.Fatal(err)
	}
	return r
}

const (
	barLong  = 101.6 // the scale bars: 4 inches,
	barMark  = 100.0 // with a tick at 100 mm,
	tickLong = 2.6   // as long as that, to the left of the bar,
	tickBold = 0.10  // and as heavy, all in mm
)

// checkBars measures both scale bars of some sheets as they come out of a
// printer: 100 mm from tick to tick.
func (s set) checkBars(t *testing.T, printer Printer) {
	last := len(s.Drawn)
	for _, number := range slices.Compact([]int{1, (last + 1) / 2, last}) {
		p, err := s.File.Page(number)
		if err != nil {
			t.Fatal(err)
		}
		s.measureBars(t, number, p, printer.stretch(s.Views[0].Sheet))
		if err := p.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

func (s set) measureBars(t *testing.T, number int, p *Page, printed Motion) {
	const may = 0.03 // mm over 100
	level, _ := s.Drawn[number-1].Bars(barLong/printed[0], 0.01)
	_, upright := s.Drawn[number-1].Bars(barLong/printed[3], 0.01)
	if len(level) != 1 || len(upright) != 1 {
		t.Errorf("page %d: %d level and %d upright bars of %.1f mm once printed, want one each", number, len(level), len(upright), barLong)
		return
	}
	for _, bar := range append(level, upright...) {
		from, to := printed.Apply(bar.From), printed.Apply(bar.To)
		long := from.To(to)
		along := rendertest.Point{X: (to.X - from.X) / long, Y: (to.Y - from.Y) / long}
		for _, d := range []float64{0, barMark} {
			// Up the tick, clear of the bar itself.
			at := rendertest.Point{X: from.X + along.X*d - along.Y*tickLong*0.7, Y: from.Y + along.Y*d + along.X*tickLong*0.7}
			r := NewRaster(rendertest.Around(at).Grow(2))
			if err := p.Draw(printed, r); err != nil {
				t.Fatal(err)
			}
			got := r.reading(fmt.Sprintf("tick at %.0f", d), at, along, tickBold)
			if got.Unclear > 0 || got.Worst > may/2 {
				t.Errorf("page %d: bar from %.1f: %v; %s", number, from, got, got.Unclearly)
			}
		}
	}
}

// checkWords copies the lettering out: what every sheet says of itself, what the
// first says of printing, and the name and place of every mortise on its sheet.
func (s set) checkWords(t *testing.T, paper string) {
	texts := make([]string, len(s.Drawn)+1)
	s.each(t, func(number int, p *Page) {
		text, err := p.Text()
		if err != nil {
			t.Fatal(err)
		}
		texts[number] = text
		if name := paperName(paper); !strings.Contains(text, name+" standing") && !strings.Contains(text, name+" lying") {
			t.Errorf("page %d does not name its paper, %s", number, name)
		}
		for _, words := range []string{fmt.Sprintf("sheet %d of %d", number, len(s.Drawn)), "100 %", "one side"} {
			if !strings.Contains(text, words) {
				t.Errorf("page %d does not say %q", number, words)
			}
		}
	})
	for _, words := range []string{"actual size", "on one side", "steel rule"} {
		if !strings.Contains(strings.Join(strings.Fields(texts[1]), " "), words) {
			t.Errorf("the first sheet does not say %q", words)
		}
	}
	for _, v := range s.Of("mortises") {
		for _, m := range s.numbers.Numbers.Gunwale.Mortises {
			if !v.Frame().Grow(-1).HoldsBox(m.Slot()) {
				continue
			}
			if place := fmt.Sprintf("%.1f mm", m.FromMidship); !strings.Contains(texts[v.Page], m.Rib) || !strings.Contains(texts[v.Page], place) {
				t.Errorf("%v does not say %q and %q", v, m.Rib, place)
			}
		}
	}
}

// paperName is what the sheets call a paper: one of no name by its edges in mm.
func paperName(paper string) string {
	if paper == "12x18in" {
		return "304.8x457.2mm"
	}
	return paper
}

// checkOutline: where there are bookmarks, every pattern has one, on the page where its
// first piece lies and its title is lettered, and under it one for each of several pieces,
// on the page where the table has that piece; what they stand under leads to the first
// page of it. Where pages have labels no two are alike.
func (s set) checkOutline(t *testing.T) {
	marks, err := s.File.Bookmarks()
	if err != nil {
		t.Fatal(err)
	}
	left := s.places()
	for _, m := range marks {
		switch {
		case len(m.Under) == 0 && m.Page == 1 && m.Title == "Read first":
		case len(m.Under) == 0 && m.Page == len(s.Drawn) && m.Title == "Plates for the cutter":
		case len(m.Under) > 0 && !m.Under[0].isPiece(): // a family
			first := len(s.Drawn)
			for _, u := range m.Under {
				s.checkPattern(t, u, left)
				for _, p := range append(u.Under, u) {
					first = min(first, p.Page)
				}
			}
			if m.Page != first {
				t.Errorf("the bookmark %q leads to page %d, its patterns begin on page %d", m.Title, m.Page, first)
			}
		default:
			s.checkPattern(t, m, left)
		}
	}
	for pattern := range left {
		if len(marks) > 0 {
			t.Errorf("no bookmarks lead to all pieces of %s: %v", pattern, left[pattern])
		}
	}
	labels := map[string]int{}
	for number := range len(s.Drawn) {
		l := s.File.Label(number + 1)
		if l != "" && labels[l] > 0 {
			t.Errorf("pages %d and %d are both labelled %q", labels[l], number+1, l)
		}
		labels[l] = number + 1
	}
	t.Logf("%d bookmarks at the top, %d labels", len(marks), len(labels))
}

// places lists for every pattern on which page the table has each piece.
func (s set) places() map[string]map[string]int {
	out := map[string]map[string]int{}
	for _, v := range s.Views {
		if v.Turned {
			continue // it lies where its other half does
		}
		if out[v.Pattern] == nil {
			out[v.Pattern] = map[string]int{}
		}
		out[v.Pattern][v.Tile] = v.Page
	}
	return out
}

// checkPattern finds the one pattern whose pieces lie where a bookmark and those under it
// lead, and takes it out of those that are left.
func (s set) checkPattern(t *testing.T, m Bookmark, left map[string]map[string]int) {
	t.Helper()
	leads := map[string]int{}
	for _, p := range m.Under {
		leads[strings.TrimPrefix(p.Title, piece)] = p.Page
	}
	if len(m.Under) == 0 {
		leads[""] = m.Page
	} else if m.Page != m.Under[0].Page {
		t.Errorf("the bookmark %q leads to page %d, its first piece to page %d", m.Title, m.Page, m.Under[0].Page)
	}
	for _, pattern := range slices.Sorted(maps.Keys(left)) {
		if maps.Equal(left[pattern], leads) && s.letters(m.Page, m.Title) {
			delete(left, pattern)
			return
		}
	}
	t.Errorf("the bookmark %q leads to page %d, with pieces on %v, where no such pattern lies", m.Title, m.Page, leads)
}

// letters reports whether a page letters some words, on one line or on several that follow
// one another.
func (s set) letters(page int, words string) bool {
	var all []string
	for _, x := range s.Drawn[page-1].Texts {
		all = append(all, x.Words)
	}
	return words != "" && strings.Contains(strings.Join(all, " "), words)
}
