package timber

import (
	"math"
	"strings"
	"testing"
)

func TestScarfLength(t *testing.T) {
	for _, row := range []struct{ thickness, slope, want, tol float64 }{ // arithmetic
		{19, 8, 152, 0}, {19, 12, 228, 0}, {0.5, 8, 4, 0}, {6, MinScarfSlope, 30, 0}, {6, MaxScarfSlope, 120, 0},
	} {
		got, err := ScarfLength(row.thickness, row.slope)
		if err != nil {
			t.Fatal(err)
		}
		near(t, got, row.want, row.tol, "mm")
	}
}

func TestScarfLengthRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		thickness, slope float64
		want             string
	}{
		{19, 0.125, "write length over thickness"}, {19, 0.99, "write length over thickness"}, {19, 1, "write 5 to 20"}, {19, 0, "write 5 to 20"}, {19, -8, "write 5 to 20"},
		{19, 4.99, "write 5 to 20"}, {19, 20.01, "write 5 to 20"}, {19, nan, "write 5 to 20"}, {19, inf, "write 5 to 20"},
		{0, 8, "must be above 0"}, {-1, 8, "must be above 0"}, {nan, 8, "must be above 0"}, {inf, 8, "must be above 0"},
	} {
		got, err := ScarfLength(row.thickness, row.slope)
		if err == nil || got != 0 || !strings.Contains(err.Error(), row.want) {
			t.Errorf("ScarfLength(%g, %g) = %g, %v, want %q", row.thickness, row.slope, got, err, row.want)
		}
	}
}
