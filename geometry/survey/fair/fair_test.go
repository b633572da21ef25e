package fair

import (
	"bytes"
	"math"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/survey/offsets"
	"ribwright/geometry/water/float"
)

func table(t testing.TB, name string) *offsets.Table {
	t.Helper()
	f, err := os.Open("../../../testdata/offsets/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	out, err := offsets.Read(f, name)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// reread writes a design as its file and reads it back: what a builder gets.
func reread(t *testing.T, d *design.Design) *design.Design {
	t.Helper()
	var b bytes.Buffer
	if err := design.Encode(&b, d); err != nil {
		t.Fatal(err)
	}
	out, err := design.Decode(&b, "faired.toml")
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// walk gives points of the faired skin at a station, close together, found anew
// from the hull's own section: each point of the rib moved out square by half its
// thickness, a stringer and the skin, then the gunwale's outer face.
func walk(t *testing.T, d *design.Design, h *hull.Hull, x float64) []geometry.Point {
	t.Helper()
	s, err := h.Section(x)
	if err != nil {
		t.Fatal(err)
	}
	over := float64(d.Ribs.Thickness)/2 + float64(d.Stringers.Depth) + float64(d.Skin.Thickness())
	pts := []geometry.Point{{Y: s.KeelZ - float64(d.Ribs.Thickness)/2 - float64(d.Keel.Depth) - float64(d.Skin.Thickness())}}
	const steps = 4000
	girth := s.Half.Length()
	for i := range steps + 1 {
		p, heading := s.Half.At(girth * float64(i) / steps)
		pts = append(pts, p.Add(geometry.Point{X: over * math.Sin(heading), Y: s.KeelZ - over*math.Cos(heading)}))
	}
	g := frame.Gunwale{Line: h.Gunwale, Width: float64(d.Gunwale.Width), Height: float64(d.Gunwale.Height), Tilt: float64(d.Gunwale.Tilt)}
	a, b := g.EdgeAt(x, g.Width/2, 0), g.EdgeAt(x, g.Width/2, g.Height)
	for i := range 400 {
		u := float64(i+1) / 400
		pts = append(pts, geometry.Point{X: a.Y + (b.Y-a.Y)*u + float64(d.Skin.Thickness()), Y: a.Z + (b.Z-a.Z)*u})
	}
	return pts
}

// TestWholeBoats fits three measured canoes, every point of every station, and
// asks for less than the reading error of their drawings (about 5 mm) where the
// task was 8 and 10 mm. Source: testdata/offsets/README.md. What is left over is
// measured again here from the written file, by walking the sections.
func TestWholeBoats(t *testing.T) {
	for _, c := range []struct {
		file string
		rms  float64 // mm
	}{{"fig69.csv", 6}, {"fig108.csv", 6}, {"fig31.csv", 8}, {"cruising.csv", 6}} {
		t.Run(c.file, func(t *testing.T) {
			tab := table(t, c.file)
			begun := time.Now()
			r, err := Of(tab, "Old canoe")
			if err != nil {
				t.Fatal(err)
			}
			if spent := time.Since(begun); spent > time.Minute {
				t.Errorf("took %v, want seconds", spent)
			}
			d := reread(t, r.Design)
			h, err := hull.New(d)
			if err != nil {
				t.Fatal(err)
			}
			sum, n, worst, told := 0.0, 0, 0.0, 0.0
			for at, s := range tab.Stations {
				if s.Sheer().X < narrow || len(s.Points) < 3 {
					continue // a station on the stem has no section to walk
				}
				told = math.Max(told, r.Stations[at].Worst.Off)
				skin := walk(t, d, h, s.X)
				for i, p := range s.Points {
					off := math.Inf(1)
					for _, q := range skin {
						off = math.Min(off, p.Sub(q).Norm())
					}
					if i == len(s.Points)-1 {
						off = p.Sub(skin[len(skin)-1]).Norm()
					}
					sum, n, worst = sum+off*off, n+1, math.Max(worst, off)
				}
			}
			rms := math.Sqrt(sum / float64(n))
			t.Logf("rms %.2f mm here, %.2f mm reported; worst section %.1f and %.1f mm, all %.1f", rms, r.RMS, worst, told, r.Worst.Off)
			if r.RMS > c.rms || rms > c.rms {
				t.Errorf("rms %.2f mm reported and %.2f mm measured, want at most %.0f", r.RMS, rms, c.rms)
			}
			if math.Abs(worst-told) > 2 {
				t.Errorf("worst %.2f mm, reported %.2f", worst, told)
			}
			floats(t, tab, d, r)
		})
	}
}

// floats builds the frame and sets it beside the table on one waterline: the same
// boat, but for cloth flat between stringers and a stem where the table has few
// points.
func floats(t *testing.T, tab *offsets.Table, d *design.Design, r *Result) {
	t.Helper()
	f, err := frame.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	c, err1 := skin.Of(f)
	b, err2 := tab.Hull()
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	if got := c.Hull.Immerse(float.Level(r.Waterline)).Volume; math.Abs(got-r.Faired) > 1 || r.Waterline != float64(d.Hull.Waterline) {
		t.Errorf("at %.0f mm the written design displaces %.0f mm3, told are %.0f", r.Waterline, got, r.Faired)
	}
	if got := b.Immerse(float.Level(r.Waterline)).Volume; math.Abs(got-r.Measured) > 1 || math.Abs(r.More(2*got)-1) > 1e-9 {
		t.Errorf("the table displaces %.0f mm3, told are %.0f", got, r.Measured)
	}
	if !(r.Smooth > r.Faired && r.Smooth < 1.05*r.Faired) {
		t.Errorf("cloth on the curves displaces %.0f mm3, flat cloth %.0f", r.Smooth, r.Faired)
	}
	const draft = 127
	if share := c.Hull.Immerse(float.Level(draft)).Volume / b.Immerse(float.Level(draft)).Volume; share < 0.92 || share > 1.1 {
		t.Errorf("at a draft of %d mm the faired boat displaces %.1f %% of the table's", draft, share*100)
	}
}

// TestSame: the same table gives the same file.
func TestSame(t *testing.T) {
	a, err1 := Of(table(t, "fig108.csv"), "A")
	b, err2 := Of(table(t, "fig108.csv"), "A")
	if err1 != nil || err2 != nil || !reflect.DeepEqual(a, b) {
		t.Errorf("two fits of one table differ (%v, %v)", err1, err2)
	}
}

// TestOwnHull takes offsets off Lake's ribs, whose shape is known, and finds it
// again to a fraction of a millimeter at every rib it was given.
func TestOwnHull(t *testing.T) {
	r := ownHull(t, []float64{-1700, -1300, -900, -450, 0, 450, 900, 1300, 1700}, 300)
	if r.RMS > 1.5 {
		t.Errorf("rms %.2f mm, worst %+v; want under 1.5 mm of a hull of the family itself", r.RMS, r.Worst)
	}
}

// TestScan: a table of a hundred points at each of many stations, as from a scan, is
// faired from a part of them, as true, and compared with all.
func TestScan(t *testing.T) {
	var stations []float64
	for x := -1700.0; x <= 1700; x += 50 {
		stations = append(stations, x)
	}
	r := ownHull(t, stations, 40)
	if r.RMS > 1.5 {
		t.Errorf("rms %.2f mm, worst %+v; want under 1.5 mm of a hull of the family itself", r.RMS, r.Worst)
	}
	if n := len(r.Design.Hull.Sections); n != MostSections {
		t.Errorf("%d sections shape it, want %d", n, MostSections)
	}
	if n := len(r.Stations); n != len(stations)+2 {
		t.Errorf("%d stations are compared, want all %d", n, len(stations)+2)
	}
	for _, s := range r.Stations {
		if math.Abs(s.Station) < 1701 && s.Points < 100 {
			t.Errorf("%d points are compared at station %.0f mm, want all of more than 100", s.Points, s.Station)
		}
	}
}

// ownHull fairs offsets off Lake, at the stations given, one point in every so many of a walk
// along the skin in steps of a quarter of a millimeter.
func ownHull(t *testing.T, stations []float64, every int) *Result {
	t.Helper()
	d, err := design.Shipped("lake")
	if err != nil {
		t.Fatal(err)
	}
	h, err := hull.New(d)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString("station_mm,height_mm,half_breadth_mm\n")
	row := func(x float64, p geometry.Point) {
		for _, s := range []float64{x, p.Y, p.X} {
			b.WriteString(measured(s))
		}
		b.WriteString("\n")
	}
	for _, x := range stations {
		skin := walk(t, d, h, x)
		for i := 0; i < len(skin); i += every {
			row(x, skin[i])
		}
		row(x, skin[len(skin)-1])
	}
	for _, side := range []float64{-1, 1} {
		top, _ := h.Bow.Point(h.Bow.Outer.Length())
		row(side*top.X, geometry.Point{Y: top.Y})
	}
	tab, err := offsets.Read(strings.NewReader(b.String()), "lake.csv")
	if err != nil {
		t.Fatal(err)
	}
	r, err := Of(tab, "Lake again")
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func measured(mm float64) string {
	return strings.TrimSuffix(measureText(mm), " mm") + ","
}

// measureText rounds as a careful measurer would, to a tenth of a millimeter.
func measureText(mm float64) string { return rounded(mm).String() }

// TestRefused has tables that are no canoe of the family, each with its reason.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"too long", "station_m,height_m,half_breadth_m\n-6,1,0\n-3,0,0\n-3,.2,.5\n-3,.5,.6\n0,0,0\n0,.2,.5\n0,.5,.6\n3,0,0\n3,.2,.5\n3,.5,.6\n6,1,0\n", "outside what is built"},
		{"no midship", "station_mm,height_mm,half_breadth_mm\n-2400,300,0\n-1200,0,0\n-1200,100,200\n-1200,300,250\n1300,0,0\n1300,100,200\n1300,300,250\n2400,300,0\n", "near midship"},
	} {
		tab, err := offsets.Read(strings.NewReader(c.text), "t.csv")
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if _, err = Of(tab, c.name); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want ... %s ...", c.name, err, c.want)
		}
	}
}

// TestOtherBoat: a table whose sections zigzag, or are read a hand off at one station, is
// refused with the worst place.
func TestOtherBoat(t *testing.T) {
	tab := table(t, "fig108.csv")
	for _, s := range tab.Stations {
		if math.Abs(s.X) < 1000 {
			for i := range s.Points {
				s.Points[i].X *= 1 + 0.45*float64(i%2)
			}
		}
	}
	_, err := Of(tab, "Zigzag")
	if err == nil || !strings.Contains(err.Error(), "accepted: 15 mm or less in the mean, 45 mm anywhere") || !strings.Contains(err.Error(), "at station") {
		t.Errorf("%v", err)
	}
	// One station of twenty read 30 mm too wide hides in the mean.
	tab = table(t, "cruising.csv")
	for i := range tab.Stations {
		if at := &tab.Stations[i]; math.Abs(at.X-609.6) < 1 {
			for k := range at.Points[1:] { // not the keel
				at.Points[k+1].X += 30
			}
		}
	}
	if _, err := Of(tab, "Slip"); err == nil || !strings.Contains(err.Error(), "45 mm anywhere") {
		t.Errorf("a slip of 30 mm: %v", err)
	}
}

// TestEitherLimit: the mean alone refuses a fit, and so does one point; at both limits it
// passes. Nobody reads that what is refused is as accepted.
func TestEitherLimit(t *testing.T) {
	for _, c := range []struct {
		name       string
		rms, worst float64
		want       string // what the refusal says of it; "" where it passes
	}{
		{"far within", 3, 8, ""},
		{"at both limits", MostRMS, MostOff, ""},
		{"over in the mean, no point far off", MostRMS + 0.2, MostOff - 15, "16 mm in the mean"},
		{"over in the mean, a point at its limit", MostRMS + 0.2, MostOff, "16 mm in the mean"},
		{"one point over", 3, MostOff + 0.2, "by 46 mm at station"},
		{"one point over, the mean at its limit", MostRMS, MostOff + 0.2, "by 46 mm at station"},
		{"no number", math.NaN(), 8, "the nearest boat"},
		{"no number at a point", 3, math.NaN(), "the nearest boat"},
	} {
		err := (&Result{RMS: c.rms, Worst: Miss{Off: c.worst}}).near()
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%s: %v, want ... %s ...", c.name, err, c.want)
		}
	}
}

// TestRibsPulledIn: a boat whose ends cannot be framed is refused and not left bare.
func TestRibsPulledIn(t *testing.T) {
	d, err := design.Shipped("lake")
	if err != nil {
		t.Fatal(err)
	}
	f := &fit{d: d}
	d.Ribs.MortiseDepth, d.Gunwale.Tilt = 30, turned(22) // all mortises lean through the wall
	d.Ribs.FromBow, d.Ribs.FromStern = 350, 350
	err = f.lofts()
	if err == nil || !strings.Contains(err.Error(), "pulled in to 600 mm") {
		t.Errorf("%v", err)
	}
}

// TestLeast finds the bottom of a bent valley inside its spans, and an edge.
func TestLeast(t *testing.T) {
	valley := func(p []float64) float64 { return 100*math.Pow(p[1]-p[0]*p[0], 2) + math.Pow(1-p[0], 2) }
	p, c := least([]span{{-2, 2}, {-1, 3}}, [][]float64{{-1.2, 1}, {0, 0}}, valley)
	if c > 1e-4 || math.Abs(p[0]-1) > 0.02 {
		t.Errorf("least at %v with %g, want (1, 1) with 0 (Rosenbrock, Computer Journal 3, 1960)", p, c)
	}
	p, _ = least([]span{{2, 5}}, [][]float64{{4}}, func(p []float64) float64 { return p[0] })
	if math.Abs(p[0]-2) > 1e-3 {
		t.Errorf("least at %v, want the edge 2", p)
	}
}

// TestSpread: of many, the first and the last are kept and the others lie evenly; a few stay.
func TestSpread(t *testing.T) {
	var row []int
	for i := range 101 {
		row = append(row, i)
	}
	if got := spread(row, 5); !slices.Equal(got, []int{0, 25, 50, 75, 100}) {
		t.Errorf("%v", got)
	}
	if got := spread(row[:5], 5); !slices.Equal(got, row[:5]) {
		t.Errorf("%v", got)
	}
}
