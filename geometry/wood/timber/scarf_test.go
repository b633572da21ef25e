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

func TestStockLength(t *testing.T) {
	for _, row := range []struct {
		name            string
		finished        float64
		pieces          int
		scarf, trim     float64
		want, tolerance float64
	}{ // arithmetic
		{"gunwale of two", 4880, 2, 152, 0, 5032, 0},
		{"gunwale of three with trim", 4880, 3, 152, 50, 5234, 0},
		{"one piece has no scarf", 4880, 1, 152, 50, 4930, 0},
		{"one piece, no scarf given", 4880, 1, 0, 0, 4880, 0},
		{"a part below a millimetre", 0.5, 2, 4, 0, 4.5, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			got, err := StockLength(row.finished, row.pieces, row.scarf, row.trim)
			if err != nil {
				t.Fatal(err)
			}
			near(t, got, row.want, row.tolerance, "mm")
		})
	}
}

func TestStockLengthRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		finished    float64
		pieces      int
		scarf, trim float64
		want        string
	}{
		{0, 2, 152, 0, "finished length"}, {-1, 2, 152, 0, "finished length"}, {nan, 2, 152, 0, "finished length"}, {inf, 2, 152, 0, "finished length"},
		{4880, 0, 152, 0, "at least 1"}, {4880, -2, 152, 0, "at least 1"},
		{4880, 2, -1, 0, "0 or more"}, {4880, 2, nan, 0, "0 or more"}, {4880, 2, inf, 0, "0 or more"},
		{4880, 2, 0, 0, "nothing joins them"},
		{4880, 2, 152, -1, "end trim"}, {4880, 2, 152, nan, "end trim"}, {4880, 2, 152, inf, "end trim"},
	} {
		got, err := StockLength(row.finished, row.pieces, row.scarf, row.trim)
		if err == nil || got != 0 || !strings.Contains(err.Error(), row.want) {
			t.Errorf("StockLength(%g, %d, %g, %g) = %g, %v, want %q", row.finished, row.pieces, row.scarf, row.trim, got, err, row.want)
		}
	}
}
