package float

import (
	"math"
	"testing"

	"ribwright/geometry"
)

// form is a hull with a formula: the half-breadth at the station x and the
// height z over the keel, mm, for abs(x) <= L/2 and 0 <= z <= T.
type form struct {
	l, b, t float64
	y       func(f form, x, z float64) float64
	low     func(f form, x float64) float64 // height of the keel; level at 0 when nil
}

func barge(f form, _, _ float64) float64 { return f.b / 2 }
func prism(f form, _, z float64) float64 { return f.b / 2 * z / f.t }
func wedge(f form, x, z float64) float64 { return f.b / 2 * (1 - 2*math.Abs(x)/f.l) * z / f.t }
func ellipsoid(f form, x, z float64) float64 {
	u, v := 2*x/f.l, 1-z/f.t
	return f.b / 2 * math.Sqrt(math.Max(0, 1-u*u-v*v))
}
func ellipsoidKeel(f form, x float64) float64 {
	u := 2 * x / f.l
	return f.t * (1 - math.Sqrt(math.Max(0, 1-u*u)))
}
func wigley(f form, x, z float64) float64 {
	u, v := 2*x/f.l, 1-z/f.t
	return f.b / 2 * (1 - u*u) * (1 - v*v)
}

// hull takes the form's offsets on a grid of stations and waterlines and carries
// the sides up plumb by freeboard. spread places the stations.
func (f form) hull(t testing.TB, stations, lines int, freeboard float64, spread func(share float64) float64) *Hull {
	t.Helper()
	h, err := New(f.stations(stations, lines, freeboard, spread))
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func (f form) stations(stations, lines int, freeboard float64, spread func(share float64) float64) []Station {
	var out []Station
	for i := range stations {
		x := f.l / 2 * spread(2*float64(i)/float64(stations-1)-1)
		s := Station{X: x, Knuckle: x == 0}
		low := 0.0
		if f.low != nil {
			low = f.low(f, x)
		}
		for k := range lines {
			z := low + (f.t-low)*float64(k)/float64(lines-1)
			s.Half = append(s.Half, geometry.Point{X: f.y(f, x, z), Y: z})
		}
		if freeboard > 0 {
			top := s.Half[len(s.Half)-1]
			s.Half = append(s.Half, geometry.Point{X: top.X, Y: f.t + freeboard})
		}
		out = append(out, s)
	}
	return out
}

func even(share float64) float64 { return share }

func near64(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if d := math.Abs(got-want) / math.Max(math.Abs(want), 1e-300); !(d <= rel) {
		t.Errorf("%s is %.9g, want %.9g: off by %.3g, accepted %.3g", what, got, want, d, rel)
	}
}

// TestClosedForms sets shapes with formulas on the water at their own draft.
// Source: geometry; barge and prism also in Barrass and Derrett, Ship Stability
// for Masters and Mates, pp. 111 and 130; the parabolic hull's coefficients
// after W. C. S. Wigley, Proc. Roy. Soc. A 144 (1934).
func TestClosedForms(t *testing.T) {
	const l, b, d = 5000.0, 900.0, 120.0
	for _, c := range []struct {
		name                 string
		f                    form
		stations, lines      int
		v, kb, bm, bml       float64
		cb, cwp, cm, cp, s   float64
		volTol, momTol, sTol float64
	}{
		{"barge", form{l, b, d, barge, nil}, 5, 2, l * b * d, d / 2, b * b / (12 * d), l * l / (12 * d),
			1, 1, 1, 1, l*(b+2*d) + 2*b*d, 1e-9, 1e-9, 1e-9},
		{"prism", form{l, b, d, prism, nil}, 5, 2, l * b * d / 2, 2 * d / 3, b * b / (6 * d), l * l / (6 * d),
			.5, 1, .5, 1, 2*l*math.Sqrt(b*b/4+d*d) + b*d, 1e-9, 1e-9, 1e-9},
		{"wedge", form{l, b, d, wedge, nil}, 9, 2, l * b * d / 4, 2 * d / 3, b * b / (12 * d), l * l / (12 * d),
			.25, .5, .5, .5, math.NaN(), 1e-9, 1e-9, 0},
		{"Wigley, fine grid", form{l, b, d, wigley, nil}, 41, 8001, 4 * l * b * d / 9, 5 * d / 8, 3 * b * b / (35 * d), 3 * l * l / (40 * d),
			4. / 9, 2. / 3, 2. / 3, 2. / 3, 3.406645e6, 1e-8, 5e-5, 1e-3},
		{"Wigley, 21 by 11", form{l, b, d, wigley, nil}, 21, 11, 4 * l * b * d / 9, 5 * d / 8, 3 * b * b / (35 * d), 3 * l * l / (40 * d),
			4. / 9, 2. / 3, 2. / 3, 2. / 3, 3.406645e6, 2.6e-3, 5e-3, 1e-3},
		{"semi-ellipsoid", form{l, b, d, ellipsoid, ellipsoidKeel}, 81, 401, 2. / 3 * math.Pi * l / 2 * b / 2 * d, 5 * d / 8, 3 * b * b / (32 * d), 3 * l * l / (32 * d),
			math.Pi / 6, math.Pi / 4, math.Pi / 4, 2. / 3, math.NaN(), 5e-3, 5e-3, 0},
		{"round semi-ellipsoid", form{l, 800, 400, ellipsoid, ellipsoidKeel}, 81, 401, 0.837758e9, 250, 150, 3 * l * l / (32 * 400),
			math.Pi / 6, math.Pi / 4, math.Pi / 4, 2. / 3, 4.990449e6, 5e-3, 5e-3, 5e-3},
		{"flat semi-ellipsoid", form{l, 800, 150, ellipsoid, ellipsoidKeel}, 81, 401, 0.3141593e9, 5 * 150. / 8, 400, 3 * l * l / (32 * 150),
			math.Pi / 6, math.Pi / 4, math.Pi / 4, 2. / 3, 3.582891e6, 5e-3, 5e-3, 5e-3},
		{"canoe-like Wigley", form{4800, 720, 120, wigley, nil}, 41, 4001, 0.184320e9, 75, 3 * 720 * 720 / (35 * 120.), 3 * 4800 * 4800 / (40 * 120.),
			4. / 9, 2. / 3, 2. / 3, 2. / 3, 2.739359e6, 1e-7, 5e-5, 1e-3},
		{"standard Wigley", form{1000, 100, 62.5, wigley, nil}, 41, 4001, 4. / 9 * 6.25e6, 39.0625, 13.7143, 3 * 1e6 / (40 * 62.5),
			4. / 9, 2. / 3, 2. / 3, 2. / 3, 0.148790631e6, 1e-7, 5e-5, 1e-3},
	} {
		t.Run(c.name, func(t *testing.T) {
			spread := even
			if c.f.low != nil {
				spread = func(s float64) float64 { return math.Sin(s * math.Pi / 2) }
			}
			h := c.f.hull(t, c.stations, c.lines, 50, spread)
			o := h.Upright(Level(c.f.t), Load{}, 1000)
			near64(t, "volume", o.Volume, c.v, c.volTol)
			near64(t, "displacement", o.Displacement, c.v*1e-6, c.volTol)
			near64(t, "KB", o.KB, c.kb, c.momTol)
			near64(t, "BM", o.BM, c.bm, c.momTol)
			near64(t, "BML", o.BML, c.bml, c.momTol)
			near64(t, "CB", o.CB, c.cb, c.volTol)
			near64(t, "CWP", o.CWP, c.cwp, c.volTol)
			near64(t, "CM", o.CM, c.cm, c.volTol)
			near64(t, "CP", o.CP, c.cp, c.volTol)
			near64(t, "draft", o.Draft, c.f.t, 1e-12)
			near64(t, "LWL", o.LWL, c.f.l, 1e-12)
			near64(t, "BWL", o.BWL, c.f.b, 1e-12)
			if math.Abs(o.LCB) > 1e-6*l || math.Abs(o.LCF) > 1e-6*l {
				t.Errorf("LCB %g mm and LCF %g mm, want midship", o.LCB, o.LCF)
			}
			if c.sTol > 0 {
				near64(t, "wetted surface", o.Wetted, c.s, c.sTol)
			}
			t.Logf("worst: V %.2g, KB %.2g, BM %.2g, BML %.2g, S %.2g", o.Volume/c.v-1, o.KB/c.kb-1, o.BM/c.bm-1, o.BML/c.bml-1, o.Wetted/c.s-1)
		})
	}
}
