package measure

import "testing"

// A kilogram weighs 9.80665 N (3rd CGPM, 1901), a pound is 0.45359237 kg.
func TestForce(t *testing.T) {
	for _, c := range []struct {
		n                float64
		metric, imperial string
	}{
		{0, "next to nothing", "next to nothing"}, {-2.4, "next to nothing", "next to nothing"},
		{3, "5 N (0.5 kg)", "5 N (1 lb)"}, {-67.9, "70 N (7 kg)", "70 N (15 lb)"}, {97.4, "95 N (10 kg)", "95 N (22 lb)"},
		{97.9, "100 N (10 kg)", "100 N (22 lb)"}, {154.6, "150 N (16 kg)", "150 N (35 lb)"}, {98.0665, "100 N (10 kg)", "100 N (22 lb)"},
	} {
		if got := Metric.Force(c.n); got != c.metric {
			t.Errorf("%g N: %q, want %q", c.n, got, c.metric)
		}
		if got := Imperial.Force(c.n); got != c.imperial {
			t.Errorf("%g N: %q, want %q", c.n, got, c.imperial)
		}
	}
}
