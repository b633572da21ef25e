package job

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/render/rendertest"
)

// truth is one lofting, read back from its files; nothing asks the program.
type truth struct {
	pages   []rendertest.Page // but for the one that shows the plates in small
	small   int               // 1 where there is such a page behind them
	plate   *rendertest.SVG
	dxf     *rendertest.DXF
	numbers *rendertest.Numbers
	said    string // to people
	files   map[string][]byte
}

func TestTruth(t *testing.T) {
	papers := map[string][2]float64{"letter": {215.9, 279.4}, "a4": {210, 297}} // ANSI/ASME Y14.1 size A; ISO 216
	for _, design := range []string{"brook", "lake", "river"} {
		for paper, size := range papers {
			if !long && (paper == "a4") != (design == "lake") {
				continue // one paper a boat
			}
			t.Run(design+" on "+paper, func(t *testing.T) {
				t.Parallel()
				s := loftAndRead(t, design, paper)
				if strings.Contains(s.said, paper+", lying") {
					size[0], size[1] = size[1], size[0]
				}
				t.Run("sheets", func(t *testing.T) { s.checkSheets(t, size) })
				t.Run("scale bars", s.checkBars)
				t.Run("margins", s.checkMargins)
				t.Run("mortises", s.checkMortises)
				t.Run("ribs to mark", s.checkRibStick)
				t.Run("crosses", s.checkCrosses)
				t.Run("cover", s.checkCover)
				t.Run("gunwale strip", s.checkGunwaleStrip)
				t.Run("gunwale line", s.checkGunwaleLine)
				t.Run("ribs", s.checkRibs)
				t.Run("outlines", s.checkOutlines)
				t.Run("areas", s.checkAreas)
				t.Run("cutter's files", s.checkCutter)
				if design != "river" {
					t.Run("symmetry", s.checkSymmetry)
				}
			})
		}
	}
}

func loftAndRead(t *testing.T, design, paper string, flags ...string) truth {
	t.Helper()
	m := ask(t, "loft", append([]string{design, "--paper", paper, "--nest", "quick"}, flags...)...)
	return m.read(t, design)
}

// read reads the sheets, the cutter's files and the numbers back.
func (m made) read(t *testing.T, stem string) truth {
	t.Helper()
	s := truth{said: m.said, files: m.files}
	file, err := rendertest.ReadPDF(m.only(t, ".pdf"))
	if err == nil {
		s.pages, err = file.Pages()
		if n := len(s.pages); n > 0 && slices.ContainsFunc(s.pages[n-1].Texts, func(x rendertest.Text) bool { return x.Words == "Plates for the cutter" }) {
			s.pages, s.small = s.pages[:n-1], 1
		}
	}
	if err == nil {
		s.plate, err = rendertest.ReadSVG(m.only(t, stem+"-cut.svg"))
	}
	if err == nil {
		s.dxf, err = rendertest.ReadDXF(m.only(t, stem+"-cut.dxf"))
	}
	if err == nil {
		s.numbers, err = rendertest.ReadNumbers(m.only(t, stem+"-numbers.json"))
	}
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// closeTo fails unless got is want to tol.
func closeTo(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.5f, want %.5f, off by %.5f, allowed %g", what, got, want, got-want, tol)
	}
}

// rounding is half of the last place of a point in the PDF, mm: two decimals of
// 1/72 inch.
const rounding = 0.0018

func (s truth) checkSheets(t *testing.T, size [2]float64) {
	last := 0
	for _, v := range s.numbers.Pages {
		last = max(last, v.Page)
		closeTo(t, v.String()+": sheet width", v.Sheet[0], size[0], 0)
		closeTo(t, v.String()+": sheet height", v.Sheet[1], size[1], 0)
	}
	if said := fmt.Sprintf("\n%d sheet", len(s.pages)+s.small); last != len(s.pages) || !strings.Contains(s.said, said) {
		t.Fatalf("%d pages, the last pattern on page %d, and the program said %q", len(s.pages), last, s.said)
	}
	for i, p := range s.pages {
		closeTo(t, fmt.Sprintf("page %d: width", i+1), p.W, size[0], rounding)
		closeTo(t, fmt.Sprintf("page %d: height", i+1), p.H, size[1], rounding)
		number := fmt.Sprintf("sheet %d of %d", i+1, len(s.pages)+s.small)
		if !slices.ContainsFunc(p.Texts, func(x rendertest.Text) bool { return x.Words == number }) {
			t.Errorf("page %d does not say %q", i+1, number)
		}
	}
}

// checkBars looks for the two scale bars: 4 inches long, with a tick at 100 mm.
func (s truth) checkBars(t *testing.T) {
	const long, tol = 101.6, 2 * rounding
	for i, p := range s.pages {
		level, upright := p.Bars(long, tol)
		if len(level) != 1 || len(upright) != 1 {
			t.Errorf("page %d: %d level and %d upright bars, want one each", i+1, len(level), len(upright))
			continue
		}
		for _, bar := range append(level, upright...) {
			at100 := bar.At(100 / long)
			if !slices.ContainsFunc(p.Lines(), func(l rendertest.Piece) bool { return l.From.To(at100) <= tol }) {
				t.Errorf("page %d: no tick at 100 mm of the bar from %v", i+1, bar.From)
			}
		}
	}
}

// checkMargins keeps all ink off what home printers may leave blank: 10 mm at
// three edges, 12.7 mm at the lower one; and lettering large enough to read.
func (s truth) checkMargins(t *testing.T) {
	for i, p := range s.pages {
		s.checkInk(t, i, p, rendertest.Box{X0: 10, Y0: 12.7, X1: p.W - 10, Y1: p.H - 10}.Grow(2*rounding))
		for _, x := range p.Texts {
			if x.CapHeight() < 2.5-rounding {
				t.Errorf("page %d: %q is %.3f mm high, want 2.5 or more", i+1, x.Words, x.CapHeight())
			}
		}
	}
}

// checkInk keeps all of a page's ink in a room.
func (s truth) checkInk(t *testing.T, i int, p rendertest.Page, room rendertest.Box) {
	t.Helper()
	for _, k := range p.Strokes {
		if seen := k.Seen(); !seen.Empty() && !room.HoldsBox(seen) {
			t.Errorf("page %d: a line fills %.2f, outside the printable area", i+1, seen)
		}
	}
	for _, x := range p.Texts {
		if seen := x.Bounds().Meet(x.Clip); !seen.Empty() && !room.HoldsBox(seen) {
			t.Errorf("page %d: %q fills %.2f, outside the printable area", i+1, x.Words, seen)
		}
	}
}

// checkMortises looks up every rectangle of a mortise's size on the gunwale
// strip: one at each place the numbers give, and no other.
func (s truth) checkMortises(t *testing.T) {
	const tol = 0.05
	m := s.numbers.Gunwale.Mortises
	whole := make([]bool, len(m))
	for _, v := range s.numbers.Views()["mortises"] {
		found := make([]int, len(m))
		for _, k := range v.Strokes(s.pages[v.Page-1]) {
			b, ok := k.Outlines[0].Rectangle(tol)
			if !ok || math.Abs(b.W()-m[0].Length) > tol || math.Abs(b.H()-m[0].Width) > tol {
				continue
			}
			i := slices.IndexFunc(m, func(q rendertest.Mortise) bool { return b.Off(q.Slot()) <= tol })
			if i < 0 {
				t.Errorf("%v: a mortise at %.3f that the numbers do not know", v, b)
				continue
			}
			found[i]++
		}
		for i, q := range m {
			shown, near := v.Frame().Meet(q.Slot()), v.Frame().Grow(0.5).Meet(q.Slot()) // a line has a width
			if found[i] > 1 || found[i] == 0 && !shown.Empty() || found[i] == 1 && near.Empty() {
				t.Errorf("%v: mortise %s is drawn %d times, and %.2f of it shows", v, q.Rib, found[i], shown)
			}
			whole[i] = whole[i] || v.Frame().HoldsBox(q.Slot())
		}
	}
	for i, ok := range whole {
		if !ok {
			t.Errorf("mortise %s, %.2f mm, is nowhere shown whole", m[i].Rib, m[i].Slot())
		}
	}
}

// checkRibStick looks for every rib's name on a lane, and for the marks of the rib that is
// named first there: lines that hang whole from the lane's upper edge.
func (s truth) checkRibStick(t *testing.T) {
	stick := s.numbers.Views()["ribs"]
	if len(stick) == 0 {
		s.checkRibStrips(t)
		return
	}
	for _, r := range s.numbers.Ribs {
		edge, first := s.laneOf(stick, r.Rib)
		if math.IsInf(edge, 1) {
			t.Errorf("no lane is for rib %s", r.Rib)
		}
		if !first {
			continue // it shares the lane of another
		}
		for _, x := range append([]float64{r.Length / 2, r.Length/2 + r.Tenon, r.Blank / 2}, append(r.BendMarks, r.StringerMarks...)...) {
			if !slices.ContainsFunc(stick, func(v rendertest.View) bool { return s.hangs(v, x, edge, 0.05) }) {
				t.Errorf("the lane of rib %s has no mark at %.2f mm", r.Rib, x)
			}
		}
	}
}

// laneNamed is how far from its beginning a lane's name may stand, mm: a joint's cross moves it on. Words
// at marks, which name the rib too, stand farther.
const laneNamed = 12

// laneOf finds the upper edge of a rib's lane, the lowest long line over its name, and
// whether the rib is the first that is named there.
func (s truth) laneOf(stick []rendertest.View, rib string) (edge float64, first bool) {
	edge = math.Inf(1)
	for _, v := range stick {
		page := s.pages[v.Page-1]
		for _, x := range page.Texts {
			at, names := v.Back(x.At), strings.Fields(x.Words)
			if !slices.Contains(names, rib) || !v.Frame().Holds(at) || at.X > laneNamed {
				continue
			}
			for _, k := range v.Strokes(page) {
				if b := k.Outlines[0].Bounds(); k.Width > 0.2 && b.H() < 0.01 && b.W() > 100 && b.Y0 > at.Y { // a mark, no joint
					edge, first = math.Min(edge, b.Y0), names[0] == rib
				}
			}
		}
	}
	return edge, first
}

// hangs reports whether a view shows an upright line that hangs from an edge at x.
func (s truth) hangs(v rendertest.View, x, edge, tol float64) bool {
	return slices.ContainsFunc(v.Strokes(s.pages[v.Page-1]), func(k rendertest.Stroke) bool {
		b := k.Outlines[0].Bounds()
		return len(k.Outlines[0].Pieces) == 1 && b.W() <= tol && math.Abs(b.X0-x) <= tol && math.Abs(b.Y1-edge) < tol && b.H() > 2 && v.Frame().HoldsBox(b)
	})
}

// checkRibStrips looks for the marks of every rib that has a strip, and for
// every rib's name on a strip.
func (s truth) checkRibStrips(t *testing.T) {
	named := map[string]bool{}
	for _, p := range s.pages {
		for _, x := range p.Texts {
			if names, ok := strings.CutPrefix(x.Words, "middle of rib "); ok {
				for _, n := range strings.Split(strings.TrimSuffix(names, ", turn over here"), ", ") {
					named[n] = true
				}
			}
		}
	}
	for _, r := range s.numbers.Ribs {
		if !named[r.Rib] {
			t.Errorf("no strip is for rib %s", r.Rib)
		}
		strip := s.numbers.Views()["rib-"+r.Rib]
		if len(strip) == 0 {
			continue // it shares the strip of another
		}
		marks := append([]float64{0, r.Length / 2, r.Length/2 + r.Tenon, r.Blank / 2}, append(r.BendMarks, r.StringerMarks...)...)
		for _, x := range marks {
			if !slices.ContainsFunc(strip, func(v rendertest.View) bool { return s.showsUpright(v, x, 0.05) }) {
				t.Errorf("the strip of rib %s has no mark at %.2f mm", r.Rib, x)
			}
		}
	}
}

// showsUpright reports whether a view shows an upright line across y = 0 at x.
func (s truth) showsUpright(v rendertest.View, x, tol float64) bool {
	return slices.ContainsFunc(v.Strokes(s.pages[v.Page-1]), func(k rendertest.Stroke) bool {
		b := k.Outlines[0].Bounds()
		return len(k.Outlines[0].Pieces) == 1 && b.W() <= tol && math.Abs(b.X0-x) <= tol && b.Y0 < -5 && b.Y1 > 5 && v.Frame().HoldsBox(b)
	})
}

// overlap is how far neighbouring pieces show the same part of a pattern, mm.
const overlap = 10

// checkCover: some piece shows every point of every line. The file holds lines
// whole, whatever is clipped of them.
func (s truth) checkCover(t *testing.T) {
	for pattern, views := range s.numbers.Views() {
		for _, v := range views {
			strokes := v.Strokes(s.pages[v.Page-1])
			if len(strokes) == 0 {
				t.Errorf("%v shows no line", v)
			}
			for _, k := range strokes {
				for _, q := range k.Outlines[0].Points(8) {
					if !slices.ContainsFunc(views, func(w rendertest.View) bool { return w.Frame().Grow(2 * rounding).Holds(q) }) {
						t.Fatalf("%s: no piece shows the point %.2f of a line", pattern, q)
					}
				}
			}
		}
	}
}

// alike reports whether the mortises fore and aft of midship lie equally far.
func (s truth) alike() bool {
	m := s.numbers.Gunwale.Mortises
	return !slices.ContainsFunc(m, func(q rendertest.Mortise) bool {
		return !slices.ContainsFunc(m, func(o rendertest.Mortise) bool { return math.Abs(q.FromMidship+o.FromMidship) < 0.001 })
	})
}

func (s truth) checkGunwaleStrip(t *testing.T) {
	views, ends := s.numbers.Views()["mortises"], s.numbers.Gunwale.Ends
	turned := func(v rendertest.View) bool { return v.Turned }
	if half := slices.ContainsFunc(views, turned); half != s.alike() {
		t.Fatalf("the strip is a half: %v, the ends are alike: %v", half, !half)
	} else if half {
		// The half and its turn must meet at midship, and reach the stock's ends.
		last := slices.MinFunc(views, func(a, b rendertest.View) int { return cmp.Compare(a.Edges[0], b.Edges[0]) })
		if last.Frame().X0 > ends[0] || !last.Turned {
			t.Errorf("the turned half reaches to %.2f, the stock to %.2f mm", last.Frame().X0, ends[0])
		}
		views = slices.DeleteFunc(views, turned)
		ends[0] = 0
	}
	slices.SortFunc(views, func(a, b rendertest.View) int { return cmp.Compare(a.Edges[0], b.Edges[0]) })
	first, last := views[0].Frame(), views[len(views)-1].Frame()
	if first.X0 > ends[0] || last.X1 < ends[1] {
		t.Errorf("the pieces reach from %.2f to %.2f, the stock from %.2f to %.2f mm", first.X0, last.X1, ends[0], ends[1])
	}
	for i := 1; i < len(views); i++ {
		closeTo(t, views[i-1].String()+": overlap with the next", views[i-1].Frame().X1-views[i].Frame().X0, overlap, 0.001)
	}
}

// checkGunwaleLine measures the gunwale along its points: each mortise must lie
// as far from midship along it as the numbers say, and be marked on the straight stock
// by what springing in the edge-set moves it nearer to midship.
func (s truth) checkGunwaleLine(t *testing.T) {
	line := s.numbers.Gunwale.Line
	along := make([]float64, len(line))
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		along[i] = along[i-1] + math.Sqrt((b[0]-a[0])*(b[0]-a[0])+(b[1]-a[1])*(b[1]-a[1])+(b[2]-a[2])*(b[2]-a[2]))
	}
	at := func(x float64) float64 {
		i := slices.IndexFunc(line, func(p [3]float64) bool { return math.Abs(p[0]-x) < 0.001 })
		if i < 0 {
			t.Fatalf("the line has no point at station %g", x)
		}
		return along[i]
	}
	g := s.numbers.Gunwale
	shift := func(x float64) float64 {
		for _, e := range g.EdgeSets {
			if e.End == "bow" && x > 0 {
				return e.Shift(line[len(line)-1][0]-x, g.Height)
			}
			if e.End == "stern" && x < 0 {
				return -e.Shift(x-line[0][0], g.Height)
			}
		}
		return 0
	}
	for _, m := range g.Mortises {
		closeTo(t, "mortise "+m.Rib+" along the line", m.AlongLine, at(m.Station)-at(0), 0.05)
		closeTo(t, "mortise "+m.Rib+" from midship", m.FromMidship, at(m.Station)-at(0)-shift(m.Station), 0.05)
	}
	for _, p := range s.numbers.Hull.Spreaders {
		i := slices.IndexFunc(line, func(q [3]float64) bool { return math.Abs(q[0]-p.Station) < 0.001 })
		if i < 0 {
			t.Fatalf("the line has no point at the spreader at station %g", p.Station)
		}
		closeTo(t, fmt.Sprintf("beam at the spreader at %g", p.Station), p.Beam, 2*line[i][1], 0.001)
		if way := map[string]float64{"apart": 1, "together": -1}[p.Holds]; way*p.Force < 0 {
			t.Errorf("the spreader at %g holds %s with %g N", p.Station, p.Holds, p.Force)
		}
	}
	after, fore := line[0][0], line[len(line)-1][0]
	closeTo(t, "after end", g.Ends[0], along[0]-at(0)-shift(after), 0.05)
	closeTo(t, "forward end", g.Ends[1], along[len(along)-1]-at(0)-shift(fore), 0.05)
}

// checkRibs walks each half rib from the keel outward.
func (s truth) checkRibs(t *testing.T) {
	for _, r := range s.numbers.Ribs {
		end, length := r.Walk()
		closeTo(t, "rib "+r.Rib+": half-breadth walked to", end.X, r.HalfBreadth, 0.01)
		closeTo(t, "rib "+r.Rib+": depth walked to", end.Y, r.Depth, 0.01)
		sum := 0.0
		for _, b := range r.HalfArcs {
			sum += b.Length
		}
		closeTo(t, "rib "+r.Rib+": length walked", sum, length, 0.01)
		closeTo(t, "rib "+r.Rib+": length", r.Length, 2*sum+r.Correction, 0.01)
	}
}

func (s truth) checkSymmetry(t *testing.T) {
	m, r := s.numbers.Gunwale.Mortises, s.numbers.Ribs
	for i := range m {
		o := m[len(m)-1-i]
		closeTo(t, m[i].Rib+" against "+o.Rib+": from midship", m[i].FromMidship, -o.FromMidship, 0.001)
	}
	for i := range r {
		o := r[len(r)-1-i]
		what := "rib " + r[i].Rib + " against " + o.Rib
		closeTo(t, what+": station", r[i].Station, -o.Station, 0.001)
		closeTo(t, what+": half-breadth", r[i].HalfBreadth, o.HalfBreadth, 0.001)
		closeTo(t, what+": depth", r[i].Depth, o.Depth, 0.001)
		closeTo(t, what+": length", r[i].Length, o.Length, 0.001)
	}
}

// checkOutlines counts the pieces to cut: closed, apart, on the plate.
func (s truth) checkOutlines(t *testing.T) {
	pieces := s.plate.Pieces()
	said := regexp.MustCompile(`(\d+) parts? on (?:a sheet|\d+ sheets) of`).FindStringSubmatch(s.said)
	if said == nil {
		t.Fatalf("the program said %q", s.said)
	}
	if n, _ := strconv.Atoi(said[1]); n != len(pieces) {
		t.Errorf("%d pieces, the program said %d", len(pieces), n)
	}
	plate := rendertest.Box{X1: s.plate.W, Y1: s.plate.H}
	for i, o := range pieces {
		if !o.Closed || !plate.HoldsBox(o.Bounds()) {
			t.Errorf("piece %d fills %.2f of a plate of %.0f by %.0f mm; closed: %v", i, o.Bounds(), plate.X1, plate.Y1, o.Closed)
		}
		for j := range i {
			if gap := o.Polygon().Gap(pieces[j].Polygon(), spacing+1); gap < spacing-0.001 {
				t.Errorf("pieces %d and %d lie %.4f mm apart, want %g", i, j, gap, float64(spacing))
			}
		}
	}
}

// spacing is what a 6 mm cutter needs between parts, mm: its diameter and 6.
const spacing = 12

// checkAreas finds each flat part of the numbers on the plate by its area and the
// greatest distance between two of its corners, each on a piece of its own; parts
// may be turned, but not turned over.
func (s truth) checkAreas(t *testing.T) {
	pieces := s.plate.Pieces()
	for _, set := range [][]rendertest.Flat{s.numbers.Stems, s.numbers.Breasthooks, s.numbers.Thwarts} {
		for i, f := range set {
			want, area := f.Outline(), f.Outline().Area(1)
			k := slices.IndexFunc(pieces, func(o rendertest.Outline) bool {
				return math.Abs(o.Across()-want.Across()) < 0.05 && math.Abs(o.Area(64)-area) <= 0.0005*area
			})
			if k < 0 {
				t.Errorf("part %d of %d: no piece %.2f mm across and of %.0f mm2, counter-clockwise, on the plate", i+1, len(set), want.Across(), area)
				continue
			}
			pieces = slices.Delete(pieces, k, k+1)
		}
	}
}
