package body

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

func value(t testing.TB, p Person, name string) Estimate {
	t.Helper()
	for _, e := range p.Estimates() {
		if e.Name == name {
			return e
		}
	}
	t.Fatalf("no estimate %q", name)
	return Estimate{}
}

// TestEstimatesAgainstSurvey holds the estimate at the survey's own medians of
// stature and weight to its median of the measure: a third of a residual
// standard deviation, for a median of a skewed measure is not its mean. At the
// 5th and 95th percentile of stature the mean of people that tall lies nearer
// the middle than the measure's own percentile, never farther out.
func TestEstimatesAgainstSurvey(t *testing.T) {
	for name, measure := range map[string]string{
		"span": "span", "sitting_height": "sittingheight", "hip_breadth": "hipbreadthsitting", "buttock_knee": "buttockkneelength",
		"popliteal_height": "poplitealheight", "knee_height": "kneeheightsitting", "thigh": "thighclearance", "shoulder_breadth": "bideltoidbreadth",
		"shoulder_joints": "biacromialbreadth", "shoulder_height": "acromialheight", "upper_arm": "shoulderelbowlength",
		"forearm": "forearmhandlength", "hand_breadth": "handbreadth", "foot": "footlength", "eye_height": "eyeheightsitting",
	} {
		m, err := FindMeasure(measure)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []Sex{Woman, Man} {
			w, h, want := mustMeasure("weightkg").Of(s), mustMeasure("stature").Of(s), m.Of(s)
			e := value(t, Person{Sex: s, Weight: w.P50, Stature: h.P50}, name)
			if d := math.Abs(e.Value - want.P50); d > e.Spread/3 {
				t.Errorf("%s of the median %s: %.1f mm, the survey's median is %.1f mm (spread %.1f)", name, s, e.Value, want.P50, e.Spread)
			}
			low := value(t, Person{Sex: s, Weight: w.P50, Stature: h.P5}, name).Value
			high := value(t, Person{Sex: s, Weight: w.P50, Stature: h.P95}, name).Value
			if low < want.P5-e.Spread/2 || high > want.P95+e.Spread/2 {
				t.Errorf("%s of the 5th and 95th %s: %.1f and %.1f mm, the survey's percentiles are %.1f and %.1f mm", name, s, low, high, want.P5, want.P95)
			}
		}
	}
}

// TestSpanRatio compares with the survey's mean of span over stature: 1.020
// (women) and 1.033 (men), computed from its individual records.
func TestSpanRatio(t *testing.T) {
	for s, want := range map[Sex]float64{Woman: 1.020, Man: 1.033} {
		h := mustMeasure("stature").Of(s).P50
		if got := value(t, Person{Sex: s, Weight: 70, Stature: h}, "span").Value / h; math.Abs(got-want) > 0.002 {
			t.Errorf("%s: span is %.4f of stature, want %.3f", s, got, want)
		}
	}
}

// TestSurvey spot-checks the file that is built in against the printed table.
func TestSurvey(t *testing.T) {
	if n := len(survey()); n != 23 {
		t.Errorf("%d measures, want 23", n)
	}
	m, err := FindMeasure("weightkg")
	if err != nil || m.Woman != (Percentiles{51.3, 66.8, 87.1}) || m.Man != (Percentiles{64.4, 84.6, 110.7}) {
		t.Errorf("weights %+v, %v", m, err)
	}
	if !strings.Contains(percentileFile[:200], "ANSUR II") {
		t.Error("the file of percentiles does not name its source")
	}
	for _, m := range survey() {
		for _, p := range []Percentiles{m.Woman, m.Man} {
			if !(p.P5 < p.P50 && p.P50 < p.P95) {
				t.Errorf("%s: %+v does not rise", m.Name, p)
			}
		}
	}
}

// TestMeasuredSpan: a longer span makes longer arms, each by half of it.
func TestMeasuredSpan(t *testing.T) {
	p := Person{Sex: Woman, Weight: 60, Stature: 1650}
	arms := func() float64 { return value(t, p, "upper_arm").Value + value(t, p, "forearm").Value }
	before := arms()
	p.Span = value(t, p, "span").Value + 60
	if got := arms() - before; math.Abs(got-30) > 1e-9 {
		t.Errorf("arms grow by %v mm for 60 mm of span, want 30", got)
	}
	if e := value(t, p, "span"); e.Spread != 0 || e.Value != p.Span {
		t.Errorf("a measured span has no spread: %+v", e)
	}
}

// TestTaller: among 4000 bodies, a taller one never has shorter arms.
func TestTaller(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 4000 {
		p := Random(r)
		p.Span = 0
		q := p
		q.Stature += 5 * r.Float64()
		for _, name := range []string{"span", "upper_arm", "forearm", "shoulder_joints", "sitting_height", "shoulder_height"} {
			if a, b := value(t, p, name).Value, value(t, q, name).Value; b < a {
				t.Fatalf("%s: %.3f mm at %.1f mm, %.3f mm at %.1f mm", name, a, p.Stature, b, q.Stature)
			}
		}
	}
}

// TestRandom: bodies stay inside the survey's range, half of them on each side
// of its medians, and the same source gives the same bodies.
func TestRandom(t *testing.T) {
	const n = 4000
	r, again := rand.New(rand.NewPCG(3, 4)), rand.New(rand.NewPCG(3, 4))
	under, women := 0, 0
	for range n {
		p := Random(r)
		if q := Random(again); p != q {
			t.Fatalf("%+v, then %+v", p, q)
		}
		if p.Check() != nil || len(p.Outside()) > 1 || p.Weight < 51 || p.Weight > 111 {
			t.Fatalf("%+v: %v %v", p, p.Check(), p.Outside())
		}
		if p.Stature < mustMeasure("stature").Of(p.Sex).P50 {
			under++
		}
		if p.Sex == Woman {
			women++
		}
	}
	for what, k := range map[string]int{"under the median": under, "women": women} {
		if math.Abs(float64(k)-n/2) > 4*math.Sqrt(n)/2 { // four standard deviations of a coin
			t.Errorf("%d of %d are %s", k, n, what)
		}
	}
}

func TestOutside(t *testing.T) {
	p := Person{Sex: Woman, Weight: 95, Stature: 1650}
	if got := p.Outside(); len(got) != 1 || !strings.Contains(got[0], "weight 95 kg lies outside the survey's 5th to 95th percentile, 51.3 to 87.1 kg") {
		t.Errorf("%q", got)
	}
	p.Sex = Untold
	if got := p.Outside(); len(got) != 0 {
		t.Errorf("%q", got)
	}
	for _, p := range []Person{{Weight: 5, Stature: 1700}, {Weight: 60, Stature: 170}, {Weight: 60, Stature: 1700, Span: 170}, {Weight: math.NaN(), Stature: 1700}} {
		if p.Check() == nil {
			t.Errorf("%+v is taken", p)
		}
	}
}
