package curve

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"ribwright/geometry"
)

func TestArea(t *testing.T) {
	hexagon := make([]geometry.Point, 6)
	for i := range hexagon {
		hexagon[i] = geometry.Polar(10, float64(i)*math.Pi/3)
	}
	for _, row := range []struct {
		name      string
		pts       []geometry.Point
		want, tol float64
	}{ // arithmetic, by hand
		{"no point", nil, 0, 0},
		{"one point", []geometry.Point{pt(3, 4)}, 0, 0},
		{"two points", []geometry.Point{pt(3, 4), pt(9, 9)}, 0, 0},
		{"triangle", []geometry.Point{pt(0, 0), pt(4, 0), pt(0, 3)}, 6, 0},
		{"rectangle", []geometry.Point{pt(1, 1), pt(6, 1), pt(6, 4), pt(1, 4)}, 15, 0},
		{"first point repeated at the end", []geometry.Point{pt(1, 1), pt(6, 1), pt(6, 4), pt(1, 4), pt(1, 1)}, 15, 0},
		{"L of 4 by 4 less 3 by 2", []geometry.Point{pt(0, 0), pt(4, 0), pt(4, 1), pt(2, 1), pt(2, 4), pt(0, 4)}, 10, 0},
		{"hexagon, 3 sqrt(3)/2 R^2", hexagon, 150 * math.Sqrt(3), 1e-12},
		{"bow tie, its halves cancel", []geometry.Point{pt(0, 0), pt(4, 4), pt(4, 0), pt(0, 4)}, 0, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			near(t, fmt.Sprint(row.pts), Area(row.pts), row.want, row.tol, "mm2")
			back := slices.Clone(row.pts)
			slices.Reverse(back)
			near(t, fmt.Sprintf("%v, clockwise", back), Area(back), -row.want, row.tol, "mm2")
			var moved []geometry.Point
			for _, p := range row.pts {
				moved = append(moved, p.Add(pt(700, -300)))
			}
			near(t, fmt.Sprintf("%v, moved", moved), Area(moved), row.want, row.tol+1e-9, "mm2")
		})
	}
}
