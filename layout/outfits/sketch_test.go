package outfits

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water"
	"ribwright/layout"
)

// read is a sketch as a builder reads it: its words alone.
type read struct {
	count                     int
	long, wide, thick, corner float64
	rows                      []readRow
}

// readRow is a row of its table: how often, the diameter of a hole or its sides, where.
type readRow struct {
	count       int
	what        string
	dia         float64
	slot        geometry.Point
	along, away []float64 // every place
}

// written joins the words of a drawing that stand on one level, from the top down, and
// the lines below that have no letter of their own to the row above.
func written(d layout.Drawing) [][]layout.Text {
	texts := slices.Clone(d.Texts)
	slices.SortStableFunc(texts, func(a, b layout.Text) int {
		return cmp.Or(cmp.Compare(b.At.Y, a.At.Y), cmp.Compare(a.Start().X, b.Start().X))
	})
	var out [][]layout.Text
	for i, x := range texts {
		if i == 0 || texts[i-1].At.Y-x.At.Y > 0.5 {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], x)
	}
	return out
}

var sizeLine = regexp.MustCompile(`Make (\d+): ([0-9.]+) mm long, ([0-9.]+) mm wide, ([0-9.]+) mm thick(?:, corners rounded to ([0-9.]+) mm)?\.`)
var millimeters = regexp.MustCompile(`(-?[0-9.]+) mm`)

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// readSketch reads the words of a sketch and nothing else of it.
func readSketch(t *testing.T, d layout.Drawing) read {
	t.Helper()
	var all []string
	var rows [][3]string
	in := false
	for _, line := range written(d) {
		words := line[0].Words
		all = append(all, words)
		key := len(words) == 1 && line[0].At.X == 0 && len(line) > 2
		switch {
		case key:
			in = true
			rows = append(rows, [3]string{})
		case in && line[0].At.X == 0:
			in = false
		}
		if !in {
			continue
		}
		for _, x := range line {
			switch {
			case x.At.X == whatFrom:
				rows[len(rows)-1][0] += " " + x.Words
			case x.At.X == alongEnds || x.At.X == sketchWide && len(line) == 3 && key && strings.HasSuffix(line[2].Words, x.Words) && line[1].At.X == whatFrom && !strings.Contains(line[1].Words, "hole"):
				rows[len(rows)-1][1] += " " + x.Words
			case x.At.X == sketchWide:
				rows[len(rows)-1][2] += " " + x.Words
			}
		}
	}
	m := sizeLine.FindStringSubmatch(strings.Join(all, " "))
	if m == nil {
		t.Fatalf("%s: no size in %q", d.Name, all)
	}
	out := read{long: number(t, m[2]), wide: number(t, m[3]), thick: number(t, m[4])}
	out.count, _ = strconv.Atoi(m[1])
	if m[5] != "" {
		out.corner = number(t, m[5])
	}
	for _, r := range rows {
		out.rows = append(out.rows, readCells(t, r))
	}
	return out
}

func readCells(t *testing.T, cells [3]string) readRow {
	t.Helper()
	count, what, ok := strings.Cut(strings.TrimSpace(cells[0]), " x ")
	if !ok {
		t.Fatalf("%q is no row", cells)
	}
	out := readRow{what: what, along: readPlaces(t, cells[1]), away: readPlaces(t, cells[2])}
	out.count, _ = strconv.Atoi(count)
	mm := millimeters.FindAllStringSubmatch(what, -1)
	switch {
	case strings.HasPrefix(what, "hole of") && len(mm) > 0:
		out.dia = number(t, mm[0][1])
	case strings.HasPrefix(what, "middle of a hole") && len(mm) > 1:
		out.slot = geometry.Pt(number(t, mm[0][1]), number(t, mm[1][1]))
	}
	return out
}

// readPlaces reads a cell of distances: to both sides, or to one.
func readPlaces(t *testing.T, cell string) []float64 {
	t.Helper()
	m := millimeters.FindStringSubmatch(cell)
	if m == nil {
		return []float64{0}
	}
	v := number(t, m[1])
	switch {
	case strings.Contains(cell, "both ways"):
		return []float64{-v, v}
	case strings.Contains(cell, "left"), strings.Contains(cell, "below"), strings.Contains(cell, "down"):
		return []float64{-v}
	}
	return []float64{v}
}

// outline is the polygon of a piece as its sketch tells it, and the area of its holes.
func (r read) outline(box geometry.Box) (pts []geometry.Point, holes float64) {
	for _, row := range r.rows {
		holes += float64(len(row.along)*len(row.away)) * (math.Pi/4*row.dia*row.dia + row.slot.X*row.slot.Y)
		if strings.HasPrefix(row.what, "corner") {
			for _, x := range row.along {
				for _, y := range row.away {
					pts = append(pts, geometry.Pt(x, y))
				}
			}
		}
	}
	if pts == nil {
		w, h := r.long, r.wide
		if box.H() > box.W() {
			w, h = h, w
		}
		return curve.Rounded(geometry.Rect(-w/2, -h/2, w/2, h/2), math.Max(r.corner, 1e-6)).Flatten(0.05), holes
	}
	mid := geometry.Point{}
	for _, p := range pts {
		mid = mid.Add(p.Scale(1 / float64(len(pts))))
	}
	slices.SortFunc(pts, func(a, b geometry.Point) int {
		a, b = a.Sub(mid), b.Sub(mid)
		return cmp.Compare(math.Atan2(a.Y, a.X), math.Atan2(b.Y, b.X))
	})
	return pts, holes
}

// sketchesGiveAll: of every board that comes as a sketch, the words alone give the
// number, the size, the wood that is left of the block and the place of every hole and
// line; where they speak of curves the full-size halves give the rest.
func sketchesGiveAll(t *testing.T, boat string, k kit.Kit, boards []Board) {
	t.Helper()
	for _, b := range boards {
		i := slices.IndexFunc(k.Pieces, func(p kit.Piece) bool { return strings.EqualFold(p.Name, b.Title) })
		if i < 0 {
			t.Fatalf("%s: %s is drawn and not sawn", boat, b.Title)
		}
		if b.Flat {
			sketched(t, boat, b, k.Pieces[i])
		}
	}
}

func sketched(t *testing.T, boat string, b Board, p kit.Piece) {
	t.Helper()
	d := b.Sketch(measure.Metric)
	r := readSketch(t, d)
	if r.count != p.Count || math.Abs(r.long-math.Max(p.Long, p.Wide)) > 0.6 || math.Abs(r.wide-math.Min(p.Long, p.Wide)) > 0.6 && p.Form == kit.Board {
		t.Errorf("%s: the sketch of %s says %d of %.1f x %.1f x %.1f mm, sawn are %d of %.1f x %.1f x %.1f", boat, b.Title, r.count, r.long, r.wide, r.thick, p.Count, p.Long, p.Wide, p.Thick)
	}
	for _, k := range d.Strokes {
		if k.Pen == layout.Cut {
			t.Errorf("%s: the sketch of %s has a line to cut", boat, b.Title)
		}
	}
	pts, holes := r.outline(b.Outline.Bounds())
	if len(b.Curves) > 0 {
		pts, holes = halves(b), 0
	}
	if left := (math.Abs(curve.Area(pts)) - holes) / (r.long * r.wide); math.Abs(left-p.Fill) > 0.04 && p.Form == kit.Board {
		t.Errorf("%s: by its sketch %s fills %.3f of its block, taken as %.3f", boat, b.Title, left, p.Fill)
	}
	if len(b.Curves) > 0 {
		return
	}
	up := b.Outline.Bounds().Center().Y
	if b.Zero != "" {
		up = 0
	}
	given := 0
	for _, row := range r.rows {
		if row.dia > 0 || row.slot.X > 0 {
			given += len(row.along) * len(row.away)
		}
	}
	if given != len(b.Holes) {
		t.Errorf("%s: the sketch of %s gives %d holes, it has %d", boat, b.Title, given, len(b.Holes))
	}
	for _, h := range b.Holes {
		at := h.Bounds().Center().Sub(geometry.Pt(0, up))
		if !slices.ContainsFunc(r.rows, func(row readRow) bool {
			return (math.Abs(row.dia-h.Bounds().W()) < 0.06 || math.Abs(row.slot.X-h.Bounds().W()) < 0.06) && has(row.along, at.X) && has(row.away, at.Y)
		}) {
			t.Errorf("%s: the sketch of %s gives no hole of %.1f mm at %.2f", boat, b.Title, h.Bounds().W(), at)
		}
	}
	for _, k := range b.Marks {
		box := k.Path.Bounds()
		if k.Pen == layout.Mark && box.W() == 0 && !slices.ContainsFunc(r.rows, func(row readRow) bool { return row.dia == 0 && has(row.along, box.Min.X) }) {
			t.Errorf("%s: the sketch of %s gives no line at %.2f", boat, b.Title, box.Min.X)
		}
	}
}

// has finds a place among those that are lettered to a tenth of a millimeter.
func has(all []float64, want float64) bool {
	return slices.ContainsFunc(all, func(v float64) bool { return math.Abs(v-want) < 0.06 })
}

// halves joins the full-size curves of a board by straight lines, and turns them over.
func halves(b Board) []geometry.Point {
	var top []geometry.Point
	for _, d := range b.CurveDrawings(measure.Metric) {
		for _, k := range d.Strokes {
			if k.Pen == layout.Cut {
				top = append(top, k.Path.Flatten(0.05)...)
			}
		}
	}
	slices.SortStableFunc(top, func(p, q geometry.Point) int { return cmp.Compare(p.X, q.X) })
	out := slices.Clone(top)
	for i := len(top) - 1; i >= 0; i-- {
		out = append(out, geometry.Pt(top[i].X, -top[i].Y))
	}
	return out
}

// panelsAreTaped: the words of a panel's sketch alone give its outline: every point by
// its way along and off the base line, closed by its distances from both ends, and the
// rounds by their offsets; nowhere is the outline further off than cloth is cut.
func panelsAreTaped(t *testing.T, what string, f *sail.Fit) {
	t.Helper()
	all := TapedPanels(f, measure.Metric)
	for i, p := range f.Cloth.Panels {
		taped(t, what, all[i], p.Outline)
	}
	for _, d := range all[len(f.Cloth.Panels)+1:] { // after the whole sail
		if !slices.ContainsFunc(d.Strokes, func(k layout.Stroke) bool { return k.Pen == layout.Cut && k.Path.Length() > 20 }) {
			t.Errorf("%s: %s has nothing to cut", what, d.Title)
		}
	}
	for _, name := range f.Plan.Names {
		if !slices.ContainsFunc(all, func(d layout.Drawing) bool { return d.Title == "Corner: "+name }) {
			t.Errorf("%s: the corner %s is nowhere at full size", what, name)
		}
	}
}

func taped(t *testing.T, what string, d layout.Drawing, outline []geometry.Point) {
	t.Helper()
	var pts []geometry.Point
	var all []string
	for _, line := range written(d) {
		if len(line) == 5 && len(line[0].Words) == 1 {
			var v [4]float64
			for k := range v {
				v[k] = number(t, strings.TrimSuffix(line[k+1].Words, " mm"))
			}
			pts = append(pts, geometry.Pt(v[0], v[1]))
			base := pts[min(1, len(pts)-1)]
			if math.Abs(pts[len(pts)-1].Norm()-v[2]) > 1.3 || len(pts) > 1 && math.Abs(pts[len(pts)-1].Sub(base).Norm()-v[3]) > 1.3 {
				t.Errorf("%s: %s of %s does not close: %v", what, line[0].Words, d.Title, v)
			}
			if line[0].Words >= "a" { // the end of a reef, no corner
				pts = pts[:len(pts)-1]
			}
		}
		for _, x := range line {
			all = append(all, x.Words)
		}
	}
	off := map[int][]float64{}
	for _, m := range regexp.MustCompile(`([A-Z]) to [A-Z] is round: (.*?) Bend a batten`).FindAllStringSubmatch(strings.Join(all, " "), -1) {
		for _, v := range millimeters.FindAllStringSubmatch(m[2], -1)[2:] {
			off[int(m[1][0]-'A')] = append(off[int(m[1][0]-'A')], number(t, v[1]))
		}
	}
	var whole []geometry.Point
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		whole = append(whole, a)
		out := b.Sub(a).Unit().Left().Scale(-1)
		for k, v := range off[i] {
			whole = append(whole, a.Lerp(b, float64(k+1)/float64(len(off[i])+1)).Add(out.Scale(v)))
		}
	}
	box := geometry.Around(outline...)
	for _, q := range outline {
		far, low := math.Inf(1), math.Inf(1)
		for _, p := range outline {
			if p.Y < box.Min.Y+1e-6 {
				low = math.Min(low, p.X)
			}
		}
		q = q.Sub(geometry.Pt(low, box.Min.Y))
		for i, a := range whole {
			far = math.Min(far, distance(q, a, whole[(i+1)%len(whole)]))
		}
		if far > 2.6 { // 1.5 of an edge cut straight, half a millimeter of each rounding
			t.Errorf("%s: a point of %s lies %.1f mm from the outline that the words give", what, d.Title, far)
		}
	}
	if got, want := math.Abs(curve.Area(whole)), math.Abs(curve.Area(outline)); math.Abs(got-want) > 2*geometry.Around(outline...).W()+2*box.H() {
		t.Errorf("%s: %s has %.0f mm2 by its words, %.0f by its outline", what, d.Title, got, want)
	}
}

// distance is how far a point lies from a line between two others.
func distance(p, a, b geometry.Point) float64 {
	along := b.Sub(a)
	t := p.Sub(a).Dot(along) / math.Max(1e-9, along.Dot(along))
	return p.Sub(a.Lerp(b, math.Max(0, math.Min(1, t)))).Norm()
}

// TestScaleFor: a sketch is as large as a usual scale allows. 700 by 130 mm goes on 122
// by 52 at 1 : 8 and not at 1 : 5.
func TestScaleFor(t *testing.T) {
	for _, c := range [][3]float64{{700, 130, 8}, {122, 52, 2}, {3460, 60, 30}, {100, 260, 5}, {1e5, 10, 820}} {
		if got := scaleFor(c[0], c[1]); got != c[2] {
			t.Errorf("%v by %v mm: 1 : %g, want 1 : %g", c[0], c[1], got, c[2])
		}
	}
}

// TestTapedOdd: narrow cloth makes many panels, mere strips among them, and the roundest
// edges; the words give those too.
func TestTapedOdd(t *testing.T) {
	b := manned(t, "river", nil).Boat
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ bolt, hem, seam, roach, area float64 }{{500, 25, 12, 0.06, 5}, {700, 10, 40, 0.06, 1}, {2000, 80, 6, 0, 0.5}} {
		for _, r := range []design.Rig{design.Lug, design.LegOfMutton} {
			s := b.Frame.Design.Sail()
			s.Rig, s.Area, s.Roach = r, c.area, c.roach
			s.Bolt, s.Hem, s.Seam = measure.Length(c.bolt), measure.Length(c.hem), measure.Length(c.seam)
			f, err := sail.New(b, s, w)
			if err != nil {
				t.Fatal(err)
			}
			panelsAreTaped(t, fmt.Sprintf("%v %+v", r, c), f)
		}
	}
}
