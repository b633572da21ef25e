package curve

import (
	"testing"

	"ribwright/geometry"
)

func TestLine(t *testing.T) {
	for _, row := range []struct {
		name   string
		l      Line
		length float64
		middle geometry.Point
		bounds geometry.Box
	}{ // arithmetic, by hand
		{"3 by 4", Line{pt(10, 20), pt(13, 16)}, 5, pt(11.5, 18), geometry.Box{Min: pt(10, 16), Max: pt(13, 20)}},
		{"upright", Line{pt(5, -3), pt(5, 40)}, 43, pt(5, 18.5), geometry.Box{Min: pt(5, -3), Max: pt(5, 40)}},
		{"of no length", Line{pt(1, 2), pt(1, 2)}, 0, pt(1, 2), geometry.Box{Min: pt(1, 2), Max: pt(1, 2)}},
	} {
		t.Run(row.name, func(t *testing.T) {
			near(t, "length", row.l.Length(), row.length, 0, "mm")
			nearPoint(t, "middle", row.l.At(0.5), row.middle, 0)
			nearPoint(t, "start", row.l.Start(), row.l.A, 0)
			nearPoint(t, "end", row.l.End(), row.l.B, 0)
			if got := row.l.Bounds(); got != row.bounds {
				t.Errorf("%v: bounds %v, want %v mm", row.l, got, row.bounds)
			}
			if got := row.l.Reverse(); got != (Line{row.l.B, row.l.A}) {
				t.Errorf("%v reversed: got %v", row.l, got)
			}
		})
	}
}
