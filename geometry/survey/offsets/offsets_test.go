package offsets

import (
	"errors"
	"math"
	"os"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wording"
)

func load(t testing.TB, name string) *Table {
	t.Helper()
	f, err := os.Open("../../../testdata/offsets/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	out, err := Read(f, name)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestDigitised floats three bark canoes at four drafts and compares with figures
// worked independently, with trapezoids and a monotone cubic along the boat, from
// the same drawings: within 6 %, for the ends alone leave 3 to 5 % open. Source of
// the drawings: testdata/offsets/README.md.
func TestDigitised(t *testing.T) {
	for _, c := range []struct {
		file                                            string
		draft, bwl, litres, cm, cp, wet, wp, kb, bm, km float64
	}{
		{"fig69.csv", 76, 697, 101, .76, .49, 2.10, 1.87, 45, 455, 499},
		{"fig69.csv", 102, 738, 151, .78, .50, 2.41, 2.02, 59, 375, 434},
		{"fig69.csv", 127, 770, 204, .80, .51, 2.69, 2.14, 74, 323, 397},
		{"fig69.csv", 152, 792, 259, .81, .52, 2.96, 2.24, 88, 283, 371},
		{"fig31.csv", 76, 829, 128, .81, .49, 2.46, 2.25, 45, 642, 687},
		{"fig31.csv", 102, 865, 187, .83, .51, 2.73, 2.36, 59, 497, 555},
		{"fig31.csv", 127, 874, 248, .85, .52, 2.98, 2.42, 72, 390, 462},
		{"fig31.csv", 152, 864, 309, .89, .52, 3.24, 2.41, 86, 300, 385},
		{"fig108.csv", 76, 697, 92, .85, .50, 1.79, 1.61, 45, 466, 510},
		{"fig108.csv", 102, 723, 134, .86, .52, 2.02, 1.73, 59, 373, 432},
		{"fig108.csv", 127, 738, 179, .87, .54, 2.23, 1.80, 73, 307, 380},
		{"fig108.csv", 152, 750, 226, .88, .55, 2.45, 1.88, 86, 267, 354},
	} {
		tab := load(t, c.file)
		h, err := tab.Hull()
		if err != nil {
			t.Fatal(err)
		}
		o := h.Upright(float.Level(c.draft), float.Load{}, 1000)
		for _, v := range []struct {
			name      string
			got, want float64
		}{
			{"beam", o.BWL, c.bwl}, {"volume", o.Volume / 1e6, c.litres}, {"midship coefficient", o.CM, c.cm},
			{"prismatic on the length overall", o.CP * o.LWL / tab.Length(), c.cp}, {"wetted surface", o.Wetted / 1e6, c.wet},
			{"waterplane", o.Waterplane / 1e6, c.wp}, {"KB", o.KB, c.kb}, {"BM", o.BM, c.bm}, {"KM", o.KM, c.km},
		} {
			off := v.got/v.want - 1
			if math.Abs(off) > 0.06 {
				t.Errorf("%s at %g mm: %s %.3f, want %.3f (%+.1f %%)", c.file, c.draft, v.name, v.got, v.want, off*100)
			}
			t.Logf("%s at %g mm: %s %+.1f %%", c.file, c.draft, v.name, off*100)
		}
	}
}

func beamOf(t *Table) float64 {
	wide := 0.0
	for _, s := range t.Stations {
		for _, p := range s.Points {
			wide = max(wide, 2*p.X)
		}
	}
	return wide
}

// TestPrintedBeams: twice the largest half-breadth against the beam printed on the
// drawings, within the reading error.
func TestPrintedBeams(t *testing.T) {
	for file, beam := range map[string]float64{"fig69.csv": 851, "fig31.csv": 883, "fig108.csv": 806, "cruising.csv": 29.75 * 25.4} {
		if got := beamOf(load(t, file)); math.Abs(got-beam) > 10 {
			t.Errorf("%s: beam %.0f mm, printed %.0f", file, got, beam)
		}
	}
}

// TestCruising compares the printed table with volumes worked from it with
// trapezoids, which read 3 to 5 % low for round sections: 111, 156 and 204 l at
// drafts of 4, 5 and 6 in.
func TestCruising(t *testing.T) {
	h, err := load(t, "cruising.csv").Hull()
	if err != nil {
		t.Fatal(err)
	}
	for inches, litres := range map[float64]float64{4: 111, 5: 156, 6: 204} {
		got := h.Immerse(float.Level(inches*25.4)).Volume / 1e6
		if share := got / litres; share < 0.97 || share > 1.06 {
			t.Errorf("at %g in %.1f l, want %.0f and up to 6 %% more", inches, got, litres)
		}
	}
	if aft, fore := h.Ends(); math.Abs(fore-2133.6) > 0.1 || math.Abs(aft+2133.6) > 0.1 {
		t.Errorf("the ends lie at %.1f and %.1f mm, want 7 ft either way", aft, fore)
	}
}

// volume reads a table and floats it at 4 in, mm3.
func volume(t *testing.T, text string) float64 {
	t.Helper()
	tab, err := Read(strings.NewReader(text), "box.csv")
	if err != nil {
		t.Fatal(err)
	}
	h, err := tab.Hull()
	if err != nil {
		t.Fatal(err)
	}
	return h.Immerse(float.Level(101.6)).Volume
}

// TestNotations writes one box 96 in by 24 in, 12 in deep in many ways; afloat at
// 4 in it displaces 96 x 24 x 4 cubic inches in all of them.
func TestNotations(t *testing.T) {
	want := 96 * 24 * 4 * math.Pow(25.4, 3)
	for name, text := range map[string]string{
		"inches":             "station_in,height_in,half_breadth_in\n-48,0,12\n-48,12,12\n0,0,12\n0,12,12\n48,0,12\n48,12,12\n",
		"eighths":            "station_in,height_in,half_breadth_in\n-4-0-0,0-0-0,1-0-0\n-4-0-0,1-0-0,1-0-0\n0,0,1-0-0\n0,1-0-0,1-0-0\n4-0-0,0,12\n4-0-0,1-0-0,12\n",
		"metres and feet":    "height_ft;station_m;half_breadth_cm\n0;-1.2192;30.48\n1;-1.2192;30.48\n0;0;30.48\n1;0;30.48\n0;1.2192;30.48\n1;1.2192;30.48\n",
		"own units":          "station_mm,height_mm,half_breadth_mm\n-4 ft,0,1 ft\n-4 ft,12 in,304.8\n0,0,30.48 cm\n0,0.3048 m,304.8\n1219.2,0,304.8\n1219.2,304.8,304.8\n",
		"any order, repeats": "# a box\nStation_IN, Height_IN ,half_breadth_in,note\n\n48,12,12,x\n0,0,12\n-48,12,12\n0,12,12\n,,,\n48,0,12\n-48,0,12\n\"# more\"\n0,12,12\n48,12,12\n",
		"missing points":     "station_in,height_in,half_breadth_in\n-48,0,12\n-48,4,....\n-48,12,12\n0,0,12\n0,,12\n0,12,12\n48,0,12\n48,12,12\n48,8,\n",
		"from one end":       "station_in,height_in,half_breadth_in\n0,10,12\n0,22,12\n48,10,12\n48,22,12\n96,10,12\n96,22,12\n",
	} {
		if name == "from one end" { // the first station is as full as any, so it is not taken for midship
			text = strings.Replace(text, "0,22,12\n48", "0,22,11.999999\n48", 1)
		}
		if got := volume(t, text); math.Abs(got/want-1) > 1e-6 {
			t.Errorf("%s: %.6g mm3, want %.6g", name, got, want)
		}
	}
}

// TestEighths reads the trade's notation. Arithmetic: an inch is 25.4 mm.
func TestEighths(t *testing.T) {
	in := unit{"in", 25.4}
	for text, inches := range map[string]float64{"1-2-6": 14.75, "0-10-2": 10.25, "0-0-1": .125, "10-11-7+": 131.9375, "-4-0-0": -48, "0-0-0": 0} {
		if got, err := in.cell(text); err != nil || math.Abs(got-inches*25.4) > 1e-9 {
			t.Errorf("%s is %g mm, %v; want %g in", text, got, err, inches)
		}
	}
	for _, text := range []string{"1-2", "1-2-8", "1-12-0", "1-2-3-4", "1--3", "a-b-c", "1-2-", "--1-2-3", "99999-0-0"} {
		if got, err := in.cell(text); err == nil {
			t.Errorf("%s is %g mm, want it refused", text, got)
		}
	}
}

// TestMirrored takes a half for a whole only where midship is the fullest.
func TestMirrored(t *testing.T) {
	half := "station_mm,height_mm,half_breadth_mm\n0,0,0\n0,200,300\n900,0,0\n900,200,200\n1800,0,0\n1800,200,0\n"
	tab, err := Read(strings.NewReader(half), "x")
	if err != nil || len(tab.Stations) != 5 || tab.Length() != 3600 {
		t.Fatalf("%+v, %v; want five stations over 3600 mm", tab, err)
	}
	aft, err := Read(strings.NewReader(strings.NewReplacer("\n900", "\n-900", "\n1800", "\n-1800").Replace(half)), "x")
	if err != nil || len(aft.Stations) != 5 || aft.Length() != 3600 {
		t.Fatalf("%+v, %v; want the after half mirrored too", aft, err)
	}
	whole, err := Read(strings.NewReader(strings.Replace(half, "0,200,300", "0,200,10", 1)), "x")
	if err != nil || len(whole.Stations) != 3 || whole.Stations[0].X != -900 {
		t.Fatalf("%+v, %v; want three stations about 900 mm", whole, err)
	}
}

// TestFaults names the line of what is wrong.
func TestFaults(t *testing.T) {
	head := "station_mm,height_mm,half_breadth_mm\n"
	for _, c := range []struct {
		text, want string
		line       int
	}{
		{"", "is empty", 0},
		{"# only words\n\n", "is empty", 0},
		{"station,height,half_breadth\n0,0,0\n", "must name the columns with their units", 1},
		{"station_mm,height_mm\n", "must name the columns", 1},
		{"station_mm,height_mm,half_breadth_mm,height_in\n", "two columns give the height", 1},
		{head + "0,0,0\n0,x,5\n", `height: "x" is no number`, 3},
		{head + "0,0,0\n\n# c\n0,9,-5\n", "half-breadth: -5 mm is negative", 5},
		{head + ",1,5\n", "no station is given", 2},
		{head + "0,nan,5\n", `"nan" is no number`, 2},
		{head + "0,1e9,5\n", "which no hull has", 2},
		{head + "0,1-2-3,5\n", "feet-inches-eighths in a column of mm", 2},
		{head + "0,0,0\n0,9,9\n1,0,0\n1,9,9\n", "only 1 mm from the one at 0 mm on line 2", 4},
		{head + "0,0,0\n0,9,9\n500,0,100\n", "station 500 mm has one point, 100 mm off", 4},
		{head + "0,0,0\n0,100,50\n", "has 1 stations", 0},
		{head + "0 5,1,1\n", "is no number", 2},
	} {
		_, err := Read(strings.NewReader(c.text), "t.csv")
		var f *wording.Fault
		if !errors.As(err, &f) || f.Line != c.line || !strings.Contains(f.Text, c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v, want line %d: ... %s", c.text, err, c.line, c.want)
		}
	}
}

// FuzzRead: whatever is read is refused in one line or makes a table whose hull
// is made or refused without a panic, with finite places.
func FuzzRead(f *testing.F) {
	f.Add("station_mm,height_mm,half_breadth_mm\n0,0,0\n0,200,300\n900,0,0\n900,200,200\n1800,0,0\n1800,200,0\n")
	f.Add("station_in;height_ft;half_breadth_cm\n1-2-3;-0;4\n")
	f.Fuzz(func(t *testing.T, text string) {
		tab, err := Read(strings.NewReader(text), "f")
		if err != nil {
			return
		}
		for _, s := range tab.Stations {
			for _, p := range s.Points {
				if !p.Finite() || !geometry.Finite(s.X) {
					t.Fatalf("a point that is no place: %v at %g", p, s.X)
				}
			}
		}
		if h, err := tab.Hull(); err == nil && !(h.Holds() > 0) {
			t.Fatalf("a hull that holds %g mm3", h.Holds())
		}
	})
}
