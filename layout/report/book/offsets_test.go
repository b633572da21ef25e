package book

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/layout/report"
)

// read turns a cell of the table of offsets into mm: whole mm, or feet-inches-eighths
// with + for a sixteenth.
func read(t *testing.T, cell string, units measure.System) float64 {
	t.Helper()
	if units == measure.Metric {
		v, err := strconv.ParseFloat(cell, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	minus := 1.0
	if rest, ok := strings.CutPrefix(cell, "-"); ok {
		minus, cell = -1, rest
	}
	rest, plus := strings.CutSuffix(cell, "+")
	parts := strings.Split(rest, "-")
	if len(parts) != 3 {
		t.Fatalf("the cell %q is not feet-inches-eighths", cell)
	}
	sum := 0.0
	for i, in := range []float64{12, 1, 0.125} {
		v, err := strconv.Atoi(parts[i])
		if err != nil {
			t.Fatal(err)
		}
		sum += float64(v) * in
	}
	if plus {
		sum += 0.0625
	}
	return minus * sum * 25.4
}

// TestOffsetsFloat integrates the printed table alone, by trapezoids over the
// outline that its cells give and by Simpson's rule along the boat, up to the water
// of the trial, and compares with the displacement that the trial reports: 1 %, and what the
// rounding of its cells leaves open.
func TestOffsetsFloat(t *testing.T) {
	for _, d := range boats(t) {
		for _, units := range []measure.System{measure.Metric, measure.Imperial} {
			f := facts(t, d, units)
			if f.Trial == nil {
				t.Fatalf("%s does not float: %s", d.Title, f.NoTrial)
			}
			all := tables(sharedBook(t, f))
			x, area := areas(t, all, units, f.Trial.Rest.Plane.Water)
			got := alongSimpson(x, area) * f.Trial.Options.Water.Density * 1e-9
			want := f.Trial.Rest.Displacement
			t.Logf("%s, %v: %.2f kg, the trial %.2f, %+.2f %%", d.Title, units, got, want, 100*(got/want-1))
			// The mean of some fifty cells, each off by up to half a millimeter, is off by 0.1 mm.
			if off := 0.1 * f.Trial.Rest.Waterplane * f.Trial.Options.Water.Density * 1e-9; math.Abs(got-want) > 0.01*want+off {
				t.Errorf("%s, %v: the table displaces %.2f kg, the trial %.2f kg", d.Title, units, got, want)
			}
		}
	}
}

// areas reads every station of the table and returns where it stands and what of it
// lies under the water, from the bow to the stern.
func areas(t *testing.T, all map[string]report.Table, units measure.System, water func(x float64) float64) (x, area []float64) {
	t.Helper()
	fore, ok := all["Fore body"]
	if !ok {
		t.Fatal("the book has no table of offsets")
	}
	column := func(tab report.Table, c int) (float64, [][2]float64) {
		at := read(t, tab.Rows[0][c], units)
		var pts [][2]float64 // half-breadth, height
		heights := map[string]float64{}
		for _, row := range tab.Rows[1:] {
			if row[c] == "-" {
				continue
			}
			v := read(t, row[c], units)
			words := strings.Fields(row[0])
			name := strings.Join(words[2:], " ")
			line := 0.0
			if last := words[len(words)-1]; last == "in" {
				n, _ := strconv.ParseFloat(words[len(words)-2], 64)
				line = n * 25.4
			} else {
				line, _ = strconv.ParseFloat(last, 64)
			}
			switch {
			case strings.HasPrefix(row[0], "height of buttock"):
				pts = append(pts, [2]float64{line, v})
			case strings.HasPrefix(row[0], "height of"):
				heights[name] = v
				if name == "keel" {
					pts = append(pts, [2]float64{0, v})
				}
			case strings.HasPrefix(row[0], "half-breadth at waterline"):
				pts = append(pts, [2]float64{v, line})
			case name == "sheer":
			default:
				pts = append(pts, [2]float64{v, heights[name]})
			}
		}
		return at, pts
	}
	for c := 1; c < len(fore.Columns); c++ {
		at, pts := column(fore, c)
		x, area = append(x, at), append(area, under(pts, water(at)))
	}
	if aft, ok := all["After body"]; ok {
		for c := 2; c < len(aft.Columns); c++ {
			at, pts := column(aft, c)
			x, area = append(x, at), append(area, under(pts, water(at)))
		}
		return x, area
	}
	for c := len(fore.Columns) - 2; c >= 1; c-- {
		at, pts := column(fore, c)
		x, area = append(x, -at), append(area, under(pts, water(-at)))
	}
	return x, area
}

// under is the area of a whole section below a height: trapezoids between the
// points of its outline, sorted from the keel up.
func under(pts [][2]float64, water float64) float64 {
	for i := range pts {
		for k := i; k > 0 && (pts[k][1] < pts[k-1][1] || pts[k][1] == pts[k-1][1] && pts[k][0] < pts[k-1][0]); k-- {
			pts[k], pts[k-1] = pts[k-1], pts[k]
		}
	}
	sum := 0.0
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		if a[1] >= water {
			break
		}
		if b[1] > water {
			t := (water - a[1]) / (b[1] - a[1])
			b = [2]float64{a[0] + t*(b[0]-a[0]), water}
		}
		sum += (a[0] + b[0]) * (b[1] - a[1])
	}
	return sum
}

// alongSimpson integrates over ten equal steps of which the first and the last are
// halved: Simpson's first rule throughout, the half intervals as one pair each.
func alongSimpson(x, y []float64) float64 {
	n := len(x) - 1
	half := (x[0] - x[1] + x[1] - x[2]) / 2
	simpson := func(h float64, v ...float64) float64 {
		sum := v[0] + v[len(v)-1]
		for i := 1; i < len(v)-1; i++ {
			sum += v[i] * float64(2+2*(i%2))
		}
		return sum * h / 3
	}
	inner := y[2 : n-1]
	return simpson(half, y[0], y[1], y[2]) + simpson((x[2]-x[n-2])/float64(len(inner)-1), inner...) + simpson(half, y[n-2], y[n-1], y[n])
}

// TestKeelKeepsItsBreadth: the keel is one batten, so its half-breadth at the stations
// along it is that of half the keel and the skin beside it, however it rises.
func TestKeelKeepsItsBreadth(t *testing.T) {
	for _, name := range []string{"lake", "river"} {
		f := facts(t, shipped(t, name), measure.Metric)
		half := float64(f.Frame.Design.Keel.Width) / 2
		for title, table := range tables(sharedBook(t, f)) {
			if !strings.HasSuffix(title, "body") {
				continue
			}
			place, keel := table.Rows[0], table.Rows[len(table.Rows)-1]
			for i := 1; i < len(place); i++ {
				x, errX := strconv.ParseFloat(place[i], 64)
				got, err := strconv.ParseFloat(keel[i], 64)
				if errX != nil || err != nil || keel[0] != "half-breadth at keel" {
					t.Fatal(keel, place)
				}
				if last := f.Frame.Ribs[len(f.Frame.Ribs)-1].Station; math.Abs(x) < last-100 && math.Abs(got-half) > 2.5 {
					t.Errorf("%s: %.0f mm from midship the keel is %.0f mm to a side, cut to %.1f", name, x, got, half)
				}
			}
		}
	}
}
