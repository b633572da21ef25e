package eyes

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/cmd/internal/job"
	"ribwright/geometry/design"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/layout/lettering"
	"ribwright/render/rendertest"
)

// words is a line of lettering as it lies on a sheet: its place is turned so that it
// begins at zero and runs right.
type words struct {
	rendertest.Text
	seen rendertest.Box // on the sheet, its letters' box
	wide float64
}

// shy is what lettering is taken in by on all sides before it is said to touch something, mm:
// the widths of letters hold some air.
const shy = 0.15

// lettered lists the lines of lettering of a page that show at all.
func lettered(p rendertest.Page) []words {
	var out []words
	for _, t := range p.Texts {
		w := words{Text: t, wide: lettering.Width(t.Words, t.CapHeight())}
		w.seen = rendertest.Around(w.corners(0)...)
		if !w.seen.Meet(t.Clip).Empty() {
			out = append(out, w)
		}
	}
	return out
}

// corners of the letters, from their feet to their heads, taken in by so much.
func (w words) corners(in float64) []rendertest.Point {
	sin, cos := math.Sincos(w.Angle)
	var out []rendertest.Point
	for _, q := range [][2]float64{{in, in}, {w.wide - in, in}, {w.wide - in, w.CapHeight() - in}, {in, w.CapHeight() - in}} {
		out = append(out, rendertest.Point{X: w.At.X + q[0]*cos - q[1]*sin, Y: w.At.Y + q[0]*sin + q[1]*cos})
	}
	return out
}

// own brings a point into the lettering's own coordinates.
func (w words) own(p rendertest.Point) (x, y float64) {
	sin, cos := math.Sincos(w.Angle)
	dx, dy := p.X-w.At.X, p.Y-w.At.Y
	return dx*cos + dy*sin, dy*cos - dx*sin
}

// touches reports whether a straight line passes through the letters.
func (w words) touches(p, q rendertest.Point) bool {
	px, py := w.own(p)
	qx, qy := w.own(q)
	from, to := 0.0, 1.0
	for _, c := range [][4]float64{{px, qx, shy, w.wide - shy}, {py, qy, shy, w.CapHeight() - shy}} {
		d := c[1] - c[0]
		if math.Abs(d) < 1e-9 {
			if c[0] < c[2] || c[0] > c[3] {
				return false
			}
			continue
		}
		a, b := (c[2]-c[0])/d, (c[3]-c[0])/d
		from, to = math.Max(from, math.Min(a, b)), math.Min(to, math.Max(a, b))
	}
	return from <= to
}

// overlaps reports whether two lines of lettering lie on each other: no straight line
// along an edge of one parts them.
func (w words) overlaps(v words) bool {
	if w.seen.Meet(v.seen).Empty() {
		return false
	}
	a, b := w.corners(shy), v.corners(shy)
	for _, pair := range [][2][]rendertest.Point{{a, b}, {b, a}} {
		for i := range 2 {
			axis := rendertest.Point{X: pair[0][i+1].X - pair[0][i].X, Y: pair[0][i+1].Y - pair[0][i].Y}
			least, most := math.Inf(1), math.Inf(-1)
			low, high := least, most
			for k := range 4 {
				s, t := pair[0][k].X*axis.X+pair[0][k].Y*axis.Y, pair[1][k].X*axis.X+pair[1][k].Y*axis.Y
				least, most = math.Min(least, s), math.Max(most, s)
				low, high = math.Min(low, t), math.Max(high, t)
			}
			if most <= low || high <= least {
				return false
			}
		}
	}
	return true
}

// spoiled counts what keeps a builder from reading a set of sheets.
type spoiled struct {
	texts                       int
	shortened, cut, struck, lie []string // each with its sheet and words
}

func (s spoiled) String() string {
	return fmt.Sprintf("%d lines of lettering: %d shortened, %d cut off, %d struck by a line, %d on other words", s.texts, len(s.shortened), len(s.cut), len(s.struck), len(s.lie))
}

// spoiledOn reads the lettering of finished pages against all lines and letters beside it.
func spoiledOn(pages []rendertest.Page) spoiled {
	var out spoiled
	for n, p := range pages {
		all := lettered(p)
		out.texts += len(all)
		say := func(what string, w words) string {
			return fmt.Sprintf("sheet %d: %s: %q at %.0f %.0f", n+1, what, w.Words, w.At.X, w.At.Y)
		}
		lines := stretches(p)
		for i, w := range all {
			if strings.Contains(w.Words, "...") {
				out.shortened = append(out.shortened, say("shortened", w))
			}
			if !w.Clip.Grow(0.3).HoldsBox(w.seen) {
				out.cut = append(out.cut, say("cut off", w))
			}
			if l, struck := struckBy(w, lines); struck {
				out.struck = append(out.struck, say(fmt.Sprintf("struck by %.2f mm %v", l.width, l.dash), w))
			}
			for _, v := range all[:i] {
				if w.overlaps(v) {
					out.lie = append(out.lie, say("on "+fmt.Sprintf("%q", v.Words), w))
				}
			}
		}
	}
	return out
}

// seenLine is a straight stretch of a line with what of it shows.
type seenLine struct {
	from, to rendertest.Point
	width    float64
	dash     []float64
	clip     rendertest.Box
}

// stretches lists the lines of a page in straight stretches.
func stretches(p rendertest.Page) []seenLine {
	var out []seenLine
	for _, s := range p.Strokes {
		for _, o := range s.Outlines {
			pts := o.Points(24)
			if o.Closed && len(pts) > 0 {
				pts = append(pts, pts[0])
			}
			for i := 1; i < len(pts); i++ {
				out = append(out, seenLine{pts[i-1], pts[i], s.Width, s.Dash, s.Clip})
			}
		}
	}
	return out
}

func struckBy(w words, lines []seenLine) (seenLine, bool) {
	for _, l := range lines {
		if box := rendertest.Around(l.from, l.to); box.Meet(w.seen).Empty() || l.clip.Meet(w.seen).Empty() {
			continue
		}
		from, to, shows := within(l.from, l.to, l.clip)
		if shows && w.touches(from, to) {
			return l, true
		}
	}
	return seenLine{}, false
}

// within clips a straight line to a box.
func within(p, q rendertest.Point, b rendertest.Box) (rendertest.Point, rendertest.Point, bool) {
	from, to := 0.0, 1.0
	for _, c := range [][4]float64{{p.X, q.X, b.X0, b.X1}, {p.Y, q.Y, b.Y0, b.Y1}} {
		d := c[1] - c[0]
		if math.Abs(d) < 1e-9 {
			if c[0] < c[2] || c[0] > c[3] {
				return p, q, false
			}
			continue
		}
		s, t := (c[2]-c[0])/d, (c[3]-c[0])/d
		from, to = math.Max(from, math.Min(s, t)), math.Min(to, math.Max(s, t))
	}
	at := func(k float64) rendertest.Point {
		return rendertest.Point{X: p.X + k*(q.X-p.X), Y: p.Y + k*(q.Y-p.Y)}
	}
	return at(from), at(to), from <= to
}

// TestLegible reads every line of lettering of whole sets: none is shortened with dots or
// cut off, no line of any kind strikes it and no other words lie on it.
func TestLegible(t *testing.T) {
	for _, boat := range oneOf("brook", "lake", "river") {
		for _, paper := range oneOf("letter", "a4") {
			for _, units := range oneOf("metric", "imperial") {
				for _, ribs := range oneOf("stick", "strips") {
					t.Run(boat+" "+paper+" "+units+" "+ribs, func(t *testing.T) {
						isLegible(t, ask(t, "loft", boat, "--paper", paper, "--units", units, "--ribs", ribs, "--nest", "quick")(".pdf"))
					})
				}
			}
		}
	}
	for _, fit := range oneOf("row lake", "row brook", "row river", "pair river", "sail lake", "pair lake", "sail river") {
		for _, paper := range oneOf("letter", "a4") {
			t.Run(fit+" "+paper, func(t *testing.T) {
				verb, design, _ := strings.Cut(fit, " ")
				flags := []string{"--loft", "--paper", paper}
				if verb == "pair" {
					flags = append(flags, "--purpose", "open")
				}
				isLegible(t, ask(t, verb, design, flags...)(".pdf"))
			})
		}
	}
}

// pagesOf reads what stands on the pages of a finished file.
func pagesOf(t *testing.T, file []byte) []rendertest.Page {
	t.Helper()
	content, err := rendertest.ReadPDF(file)
	if err != nil {
		t.Fatal(err)
	}
	pages, err := content.Pages()
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

func isLegible(t *testing.T, file []byte) {
	t.Helper()
	pages := pagesOf(t, file)
	s := spoiledOn(pages)
	t.Log(s)
	for _, fault := range slices.Concat(s.shortened, s.cut, s.struck, s.lie) {
		t.Error(fault)
	}
}

// TestLegibleSized reads so the sets of the smallest and the largest boats that families
// give: for the 5th percentile of women without gear and the 95th of men with much of it
// (ANSUR II, US Army 2012).
func TestLegibleSized(t *testing.T) {
	if !long {
		t.Skip("takes long")
	}
	for _, boat := range []struct {
		family, paddler string
		gear            float64
	}{
		{"pack", "51.3 kg, 1525 mm", 0}, {"pack", "110.7 kg, 1870 mm", 60}, {"solo", "51.3 kg, 1525 mm", 0},
		{"solo", "110.7 kg, 1870 mm", 60}, {"tandem", "51.3 kg, 1525 mm", 0}, {"tandem", "110.7 kg, 1870 mm", 60},
	} {
		world := job.World{Made: job.UsualDate(), Files: sized(t, boat.family, boat.paddler, boat.gear)}
		for _, paper := range []string{"letter", "a4"} {
			for _, units := range []string{"metric", "imperial"} {
				t.Run(strings.Join([]string{boat.family, boat.paddler, paper, units}, " "), func(t *testing.T) {
					isLegible(t, askOf(t, world, "loft", "sized.toml", "--paper", paper, "--units", units, "--nest", "quick")(".pdf"))
				})
			}
		}
	}
}

// TestLegibleLongNames reads so the sheets of a boat whose every name is long: names wrap or
// are set smaller, and none is cut.
func TestLegibleLongNames(t *testing.T) {
	const words = "The old canoe of Wilhelmina and Bartholomew for the upper reaches of the river that their grandparents paddled every summer"
	d, err := design.Shipped("lake")
	if err != nil {
		t.Fatal(err)
	}
	d.Title, d.For, d.Edition = words+", "+words, words+", "+words, words[:80]
	for i := range d.Thwarts {
		d.Thwarts[i].Name = words[:60+i]
	}
	for i := range d.Seats {
		was := d.Seats[i].Name
		d.Seats[i].Name = words[:60+i]
		for k := range d.Crew {
			if d.Crew[k].Seat == was {
				d.Crew[k].Seat = d.Seats[i].Name
			}
		}
	}
	world := job.World{Made: job.UsualDate(), Files: inFile(t, d)}
	for _, paper := range oneOf("letter", "a4") {
		for _, units := range oneOf("imperial", "metric") {
			file := askOf(t, world, "loft", "long.toml", "--paper", paper, "--units", units, "--nest", "quick")(".pdf")
			isLegible(t, file)
			pages := pagesOf(t, file)
			for _, n := range []int{0, 1} {
				var all []string
				for _, l := range pages[n].Texts {
					all = append(all, l.Words)
				}
				if said := strings.Join(all, " "); !strings.Contains(said, d.Title) {
					t.Errorf("%s, sheet %d does not have the whole name", paper, n+1)
				}
			}
		}
	}
}

// inFile is a design in a file.
func inFile(t *testing.T, d *design.Design) job.Files {
	t.Helper()
	var file bytes.Buffer
	if err := design.Encode(&file, d); err != nil {
		t.Fatal(err)
	}
	return func(string) ([]byte, error) { return file.Bytes(), nil }
}

// sized is a boat of a family.
func sized(t *testing.T, name, paddler string, gear float64) job.Files {
	t.Helper()
	f, err := family.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	p, err := sizing.ParsePaddler(paddler)
	if err != nil {
		t.Fatal(err)
	}
	b := sizing.DefaultBrief()
	b.Title, b.Gear, b.Crew = name+" for "+paddler, gear, []sizing.Paddler{p}
	if name == "tandem" {
		b.Crew = append(b.Crew, p)
	}
	boat, err := sizing.Size(f, b)
	if err != nil {
		t.Fatal(err)
	}
	return inFile(t, boat.Design)
}
