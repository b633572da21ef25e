package joint

import "testing"

// TestScarcest keeps the joint that has least to spare, whatever the order.
func TestScarcest(t *testing.T) {
	loads := [][2]float64{{10, 100}, {50, 100}, {30, 40}, {5, 50}}
	for i := range loads {
		var s Scarcest
		for k := range loads {
			l := loads[(i+k)%len(loads)]
			s.Take("", l[0], l[1])
		}
		if s.Load != 30 || s.Bears != 40 {
			t.Errorf("kept %.0f of %.0f N", s.Load, s.Bears)
		}
	}
}
