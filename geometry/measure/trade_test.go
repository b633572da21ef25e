package measure

import "testing"

// TestScrews: shanks of wood screws are 0.138 in for No. 6, 0.151 in for No. 7, 0.164 in for No. 8
// (NDS 2018, appendix L); lengths go by eighths under an inch and by quarters over it.
func TestScrews(t *testing.T) {
	for wide, want := range map[float64]string{3.5: "No. 6", 3.51: "No. 6", 3.84: "No. 7", 4.17: "No. 8", 0.190 * 25.4: "No. 10"} {
		if got := ScrewNumber(wide); got != want {
			t.Errorf("%g mm: %q, want %q", wide, got, want)
		}
	}
	for long, want := range map[float64]string{12: "1/2 in", 16: "5/8 in", 20: "3/4 in", 25: "1 in", 30: "1 in", 35: "1 1/4 in", 40: "1 1/2 in", 45: "1 3/4 in", 50: "2 in"} {
		got := Imperial.ScrewLong(long)
		if Sixteenths(got) != want || got > long+1 {
			t.Errorf("%g mm: %g mm, %q, want %q", long, got, Sixteenths(got), want)
		}
	}
	if got := Imperial.Screw(3.51, 40); got != "No. 6 x 1 1/2 in (3.5 x 40 mm)" {
		t.Errorf("%q", got)
	}
	if got := Metric.Screw(3.51, 40); got != "3.5 mm by 40.0 mm" || Metric.ScrewLong(40) != 40 {
		t.Errorf("%q", got)
	}
}
