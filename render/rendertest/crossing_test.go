package rendertest

import "testing"

func TestCrossesItself(t *testing.T) {
	for _, c := range []struct {
		name string
		pts  []Point
		want bool
	}{
		{"square", []Point{{0, 0}, {1, 0}, {1, 1}, {0, 1}, {0, 0}}, false},
		{"bow tie", []Point{{0, 0}, {1, 1}, {1, 0}, {0, 1}}, true},
		{"five-pointed star", []Point{{10, 0}, {-8, 6}, {3, -9.5}, {3, 9.5}, {-8, -6}}, true},
		{"arrow head", []Point{{0, 0}, {10, 5}, {0, 10}, {3, 5}}, false},
	} {
		if got := CrossesItself(c.pts); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
