package curve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// mustEase returns the curve through the controls.
func mustEase(t *testing.T, x, y []float64) *Ease {
	t.Helper()
	e, err := NewEase(x, y)
	if err != nil {
		t.Fatalf("controls %v, %v: %v", x, y, err)
	}
	return e
}

func TestEaseAt(t *testing.T) {
	for _, row := range []struct {
		name          string
		x, y          []float64
		at, want, tol float64
	}{ // arithmetic, by hand on the formula of Fritsch and Butland 1984
		{"one control", []float64{5}, []float64{42}, 5, 42, 0},
		{"one control, before", []float64{5}, []float64{42}, -900, 42, 0},
		{"one control, behind", []float64{5}, []float64{42}, 900, 42, 0},
		{"two controls make a straight line", []float64{0, 10}, []float64{2, 7}, 4, 4, 1e-15},
		{"before the first", []float64{0, 10}, []float64{2, 7}, -3, 2, 0},
		{"behind the last", []float64{0, 10}, []float64{2, 7}, 13, 7, 0},
		// Slopes 0.1 and 0.2: in the middle 2/15, at the ends 0.05 and 0.25.
		{"first piece", []float64{0, 10, 20}, []float64{0, 1, 3}, 5, 0.5 + 10.0/8*(0.05-2.0/15), 1e-15},
		{"second piece", []float64{0, 10, 20}, []float64{0, 1, 3}, 15, 2 + 10.0/8*(2.0/15-0.25), 1e-15},
		// Steps 10 and 20, slopes 0.1 and 0.4: weights 50 and 40, in the middle
		// 90/(500 + 100) = 0.15; at the start 0.1 - 10/30*0.3 = 0, level.
		{"uneven steps, first piece", []float64{0, 10, 30}, []float64{0, 1, 9}, 5, 0.5 - 10.0/8*0.15, 1e-15},
		// At the end (50*0.4 - 20*0.1)/30 = 0.6.
		{"uneven steps, second piece", []float64{0, 10, 30}, []float64{0, 1, 9}, 20, 5 + 20.0/8*(0.15-0.6), 1e-15},
		// Slopes 1 and -1: level at the crest, (3*1+1)/2 = 2 at the start.
		{"crest, rising", []float64{0, 1, 2}, []float64{0, 1, 0}, 0.5, 0.5 + 2.0/8, 1e-15},
		// Slopes 1 and -9: (3+9)/2 = 6 is cut to 3 at the start.
		{"crest, start slope cut to three times", []float64{0, 1, 2}, []float64{0, 1, -8}, 0.5, 0.5 + 3.0/8, 1e-15},
		// Slopes 1 and 9: (3-9)/2 points the wrong way, so level at the start.
		{"start slope the wrong way", []float64{0, 1, 2}, []float64{0, 1, 10}, 0.5, 0.5 - 1.8/8, 1e-15},
		{"flat piece stays flat", []float64{0, 1, 2, 3}, []float64{0, 5, 5, 9}, 1.3, 5, 1e-14},
	} {
		t.Run(row.name, func(t *testing.T) {
			e := mustEase(t, row.x, row.y)
			near(t, fmt.Sprintf("controls %v, %v at %g", row.x, row.y, row.at), e.At(row.at), row.want, row.tol, "")
		})
	}
}

// Property: between two controls the curve never leaves their values nor turns
// back, however wild they are; outside it is constant.
func TestEaseNeverOvershoots(t *testing.T) {
	random := rand.New(rand.NewPCG(19, 20))
	for trial := range 100 {
		x, y := randomPins(random, 2+trial%9)
		if trial%3 == 0 { // plateaus and cliffs
			for i := range y {
				y[i] = math.Trunc(y[i]/300) * math.Pow(10, float64(i%4))
			}
		}
		e := mustEase(t, x, y)
		for i := 1; i < len(x); i++ {
			low, high := math.Min(y[i-1], y[i]), math.Max(y[i-1], y[i])
			slack := 1e-13 * (math.Abs(low) + math.Abs(high))
			last := y[i-1]
			for k := 0; k <= 100; k++ {
				at := x[i-1] + (x[i]-x[i-1])*float64(k)/100
				got := e.At(at)
				if !(got >= low-slack && got <= high+slack) {
					t.Fatalf("controls %v, %v: %g at %g leaves %g to %g", x, y, got, at, low, high)
				}
				if step := (got - last) * (y[i] - y[i-1]); step < -slack*slack && math.Abs(got-last) > slack {
					t.Fatalf("controls %v, %v: turns back by %g at %g", x, y, got-last, at)
				}
				last = got
			}
			near(t, fmt.Sprintf("control %d", i), e.At(x[i]), y[i], 0, "")
		}
		near(t, "first control", e.At(x[0]), y[0], 0, "")
		for _, far := range []float64{1e-9, 1, 1e6} {
			near(t, "before the first", e.At(x[0]-far), y[0], 0, "")
			near(t, "behind the last", e.At(x[len(x)-1]+far), y[len(y)-1], 0, "")
		}
	}
}

// Property: at a crest or hollow the curve is level, so close by it leaves the
// control with the square of the share of the piece: 6 t^2 at most.
func TestEaseIsLevelAtCrests(t *testing.T) {
	x := []float64{0, 100, 250, 300, 700, 710}
	y := []float64{5, 90, 20, 20, -60, 400}
	e := mustEase(t, x, y)
	for i := 1; i < len(x)-1; i++ {
		before, after := y[i]-y[i-1], y[i+1]-y[i]
		if before*after > 0 {
			t.Fatalf("control %d is no crest, hollow or flat", i)
		}
		const share = 1e-3
		near(t, fmt.Sprintf("just before control %d", i), e.At(x[i]-share*(x[i]-x[i-1])), y[i], 6*share*share*math.Abs(before)+1e-12, "")
		near(t, fmt.Sprintf("just behind control %d", i), e.At(x[i]+share*(x[i+1]-x[i])), y[i], 6*share*share*math.Abs(after)+1e-12, "")
	}
}

// Property: the slope is continuous at controls that are no crest.
func TestEaseIsSmooth(t *testing.T) {
	x, y := []float64{0, 100, 250, 300, 700}, []float64{0, 10, 60, 100, 500}
	e := mustEase(t, x, y)
	const step = 1e-4
	for i := 1; i < len(x)-1; i++ {
		before := (y[i] - e.At(x[i]-step)) / step
		after := (e.At(x[i]+step) - y[i]) / step
		near(t, fmt.Sprintf("slope behind control %d against before it", i), after, before, 1e-5, "per mm")
		if before < 0.05 {
			t.Errorf("slope %g at control %d of a curve that always climbs", before, i)
		}
	}
}

// Property: mirrored controls give the mirrored curve, fore and aft and up and
// down, and a scale of either axis scales along.
func TestEaseScaleAndMirror(t *testing.T) {
	random := rand.New(rand.NewPCG(23, 24))
	x, y := randomPins(random, 8)
	e := mustEase(t, x, y)
	n := len(x)
	u, v := make([]float64, n), make([]float64, n)
	for i := range x {
		u[n-1-i], v[n-1-i] = -2*x[i], -3*y[i]
	}
	m := mustEase(t, u, v)
	for at := x[0] - 100; at < x[n-1]+100; at += 13 {
		near(t, fmt.Sprintf("at %g", at), m.At(-2*at), -3*e.At(at), 1e-9, "")
	}
}

// The curve keeps its own copy of the controls.
func TestEaseKeepsItsControls(t *testing.T) {
	x, y := []float64{0, 1, 2}, []float64{0, 5, 9}
	e := mustEase(t, x, y)
	x[1], y[1] = 77, 77
	near(t, "at the middle control after the caller's slices changed", e.At(1), 5, 0, "")
}

func TestEaseRefuses(t *testing.T) {
	for _, row := range []struct {
		name string
		x, y []float64
	}{
		{"no control", nil, nil},
		{"more x than y", []float64{1, 2}, []float64{1}},
		{"more y than x", []float64{1}, []float64{1, 2}},
		{"two at one place", []float64{0, 1, 1}, []float64{0, 1, 2}},
		{"backwards", []float64{1, 0}, []float64{0, 1}},
		{"not a number", []float64{0, math.NaN()}, []float64{0, 1}},
	} {
		t.Run(row.name, func(t *testing.T) {
			if e, err := NewEase(row.x, row.y); err == nil || e != nil {
				t.Errorf("controls %v, %v: got %v, %v, want an error", row.x, row.y, e, err)
			}
		})
	}
}

// TestEaseNotANumber checks both doors by which a NaN could come in.
func TestEaseNotANumber(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1)} {
		if _, err := NewEase([]float64{bad}, []float64{1}); err == nil {
			t.Errorf("a control at %v is accepted", bad)
		}
		if _, err := NewEase([]float64{0, 1}, []float64{1, bad}); err == nil {
			t.Errorf("a control of %v is accepted", bad)
		}
	}
	e, err := NewEase([]float64{0}, []float64{7})
	if err != nil {
		t.Fatal(err)
	}
	if got := e.At(math.NaN()); got != 7 {
		t.Errorf("at NaN: %v, want the only control's 7", got)
	}
}
