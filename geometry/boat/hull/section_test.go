package hull

import (
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/referencetest"
)

func rad(deg float64) float64 { return deg * math.Pi / 180 }

// TestKnownSections checks girths that follow from elementary geometry.
func TestKnownSections(t *testing.T) {
	tests := []struct {
		name    string
		b, d    float64
		shape   Shape
		girth   float64
		pieces  int
		merged  bool
		tol     float64
		because string
	}{
		{"semicircle", 300, 300, Shape{BottomTurn: rad(20), BilgeRadius: 400}, math.Pi / 2 * 300, 1, true, 1e-9, "quarter circle of radius 300"},
		{"quarter arc under a wall", 200, 350, Shape{BottomTurn: rad(20), BilgeRadius: 400}, math.Pi/2*200 + 150, 2, true, 1e-9, "quarter circle of 200 and 150 upright"},
		{"flat bottom, upright side", 400, 300, Shape{BilgeRadius: 100}, 300 + math.Pi/2*100 + 200, 3, false, 1e-9, "300 level, quarter circle of 100, 200 upright"},
		{"flat bottom, 45 degrees of flare", 300 + 100*math.Sin(rad(45)) + 100, 100*(1-math.Cos(rad(45))) + 100,
			Shape{BilgeRadius: 100, Flare: rad(45)}, 300 + math.Pi/4*100 + 100*math.Sqrt2, 3, false, 1e-9, "300 level, eighth circle of 100, a diagonal of 100"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s, err := Solve(tt.b, tt.d, tt.shape)
			if err != nil {
				t.Fatal(err)
			}
			if got := s.Half.Length(); math.Abs(got-tt.girth) > tt.tol {
				t.Errorf("girth %.12f mm, want %.12f mm (%s)", got, tt.girth, tt.because)
			}
			if len(s.Half) != tt.pieces || s.Merged != tt.merged {
				t.Errorf("%d pieces, merged %v; want %d, %v", len(s.Half), s.Merged, tt.pieces, tt.merged)
			}
		})
	}
}

// TestFourthArc checks a tumblehome section made by hand: bottom arc 1000 mm
// through 15 degrees, bilge 120 mm to 80 degrees, side arc 600 mm to 105.
func TestFourthArc(t *testing.T) {
	want := curve.Chain{curve.Turned(1000, rad(15)), curve.Turned(120, rad(65)), curve.Turned(600, rad(25))}
	end, _ := want.End()
	s, err := Solve(end.X, end.Y, Shape{BottomTurn: rad(15), BilgeRadius: 120, Flare: rad(-15), TopsideCurve: rad(25)})
	if err != nil {
		t.Fatal(err)
	}
	for i, b := range s.Half {
		if math.Abs(b.Radius-want[i].Radius) > 1e-8 || math.Abs(b.Sweep-want[i].Sweep) > 1e-12 {
			t.Errorf("piece %d: radius %.9f sweep %.9f, want %.9f and %.9f", i, b.Radius, b.Sweep, want[i].Radius, want[i].Sweep)
		}
	}
}

// TestSectionsMeetTheirEnds is a property: whatever is solved ends on its point
// with its flare, turns only one way and has no piece of negative length.
func TestSectionsMeetTheirEnds(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	made := 0
	for range 20000 {
		b, d := 30+400*r.Float64(), 100+300*r.Float64()
		shape := Shape{rad(40 * r.Float64()), 30 + 200*r.Float64(), rad(-15 + 35*r.Float64()), rad(20 * r.Float64() * float64(r.IntN(2)))}
		s, err := Solve(b, d, shape)
		if err != nil {
			continue
		}
		made++
		end, heading := s.Half.End()
		if miss := end.Sub(geometry.Point{X: b, Y: d}).Norm(); miss > 1e-8 {
			t.Fatalf("%+v at (%.3f, %.3f): misses its end by %.2e mm", shape, b, d, miss)
		}
		if math.Abs(heading-(math.Pi/2-shape.Flare)) > 1e-9 {
			t.Fatalf("%+v at (%.3f, %.3f): arrives at %.6f rad, want %.6f", shape, b, d, heading, math.Pi/2-shape.Flare)
		}
		for _, p := range s.Half {
			if !(p.Length > 0) || p.Radius < 0 || p.Sweep < 0 {
				t.Fatalf("%+v at (%.3f, %.3f): piece %+v", shape, b, d, p)
			}
		}
	}
	if made < 5000 {
		t.Errorf("only %d of 20000 random sections could be made: the draw does not test much", made)
	}
}

// TestMergeIsSmooth checks that girth does not jump where bottom and bilge
// become one arc: it is looked at on both sides of that edge.
func TestMergeIsSmooth(t *testing.T) {
	shape := Shape{BottomTurn: rad(25), BilgeRadius: 150, Flare: rad(5)}
	last, merged := 0.0, false
	for b := 300.0; b > 100; b -= 0.01 {
		s, err := Solve(b, 300, shape)
		if err != nil {
			t.Fatal(err)
		}
		if g := s.Half.Length(); last > 0 && math.Abs(g-last) > 0.02 {
			t.Fatalf("girth jumps from %.4f to %.4f mm at half-breadth %.2f mm", last, g, b)
		} else {
			last = g
		}
		merged = merged || s.Merged
	}
	if !merged {
		t.Error("the sections never merged, so the edge was not tested")
	}
}

// TestImpossibleSections checks that the cure named in the message cures.
func TestImpossibleSections(t *testing.T) {
	tests := []struct {
		name       string
		b, d       float64
		shape      Shape
		cure       Shape
		cureDepth  float64
		wantInText string
	}{
		{"too narrow for its flare", 50, 350, Shape{BottomTurn: rad(25), BilgeRadius: 100, Flare: rad(12)},
			Shape{BottomTurn: rad(25), BilgeRadius: 100, Flare: rad(8)}, 350, "flare under 8.1 deg"},
		{"bilge too large", 400, 150, Shape{BottomTurn: rad(5), BilgeRadius: 200, Flare: rad(5)},
			Shape{BottomTurn: rad(5), BilgeRadius: 100, Flare: rad(5)}, 150, "smaller bilge radius"},
		{"no breadth", 0, 300, Shape{BilgeRadius: 100}, Shape{}, 0, "no section"},
		{"NaN depth", 300, math.NaN(), Shape{BilgeRadius: 100}, Shape{}, 0, "no section"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Solve(tt.b, tt.d, tt.shape)
			if err == nil || !contains(err.Error(), tt.wantInText) {
				t.Fatalf("got %v, want a message with %q", err, tt.wantInText)
			}
			if tt.cureDepth == 0 {
				return
			}
			if _, err := Solve(tt.b, tt.cureDepth, tt.cure); err != nil {
				t.Errorf("the cure does not cure: %v", err)
			}
		})
	}
}

func contains(s, part string) bool {
	for i := 0; i+len(part) <= len(s); i++ {
		if s[i:i+len(part)] == part {
			return true
		}
	}
	return false
}

// TestMeasuredMidships lays the section family on the digitised midship sections
// of three canoes (testdata/canoes). The shapes are the least-squares fit; what
// is tested is that the family can follow real boats to about the reading error
// of their drawings, 5 mm.
func TestMeasuredMidships(t *testing.T) {
	tests := []struct {
		figure string
		shape  Shape
		rms    float64
	}{
		{"69", Shape{rad(8.17), 233.0, rad(4.47), 0}, 3},
		{"108", Shape{rad(0.40), 180, rad(8.50), 0}, 4},
		{"31", Shape{rad(8.10), 107.5, rad(-21.9), 0}, 6},
	}
	for _, tt := range tests {
		t.Run("figure "+tt.figure, func(t *testing.T) {
			pts := midship(t, tt.figure)
			head := pts[len(pts)-1]
			s, err := Solve(head.X, head.Y, tt.shape)
			if err != nil {
				t.Fatal(err)
			}
			sum := 0.0
			for _, p := range pts {
				d := nearest(p, s.Half)
				sum += d * d
			}
			if rms := math.Sqrt(sum / float64(len(pts))); rms > tt.rms {
				t.Errorf("the section leaves the drawing by %.1f mm rms, want at most %.1f", rms, tt.rms)
			}
		})
	}
}

func midship(t *testing.T, figure string) []geometry.Point {
	t.Helper()
	var out []geometry.Point
	for _, r := range referencetest.Table(t, "../../../testdata/canoes/midship-fig"+figure+".csv") {
		out = append(out, geometry.Point{X: referencetest.Number(t, r[1]), Y: referencetest.Number(t, r[0])})
	}
	return out
}

// nearest returns the distance of p from the chain, on points 1 mm apart.
func nearest(p geometry.Point, c curve.Chain) float64 {
	best := math.Inf(1)
	for s := 0.0; s <= c.Length(); s++ {
		q, _ := c.At(s)
		best = math.Min(best, q.Sub(p).Norm())
	}
	return best
}
