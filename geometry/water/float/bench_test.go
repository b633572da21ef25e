package float

import (
	"testing"

	"ribwright/geometry"
)

// BenchmarkGZ18 is a full curve: 18 angles with free trim, on a hull of 41
// stations with 21 points each. Measured on one core: 0.46 ms, where numpy and
// scipy take 59 ms on the same stations (testdata/reference/float.py).
func BenchmarkGZ18(b *testing.B) { benchGZ(b, 41) }

// BenchmarkGZ18Double has twice the stations; its time should be twice as long.
func BenchmarkGZ18Double(b *testing.B) { benchGZ(b, 81) }

func benchGZ(b *testing.B, stations int) {
	h := form{4800, 720, 300, wigley, nil}.hull(b, stations, 21, 0, even)
	l := Load{120, geometry.Point3{X: -40, Z: 250}}
	heels := make([]float64, 18)
	for i := range heels {
		heels[i] = float64(i+1) * 2.5 * degree
	}
	for b.Loop() {
		if _, err := sweep(h, l, 1000, heels); err != nil {
			b.Fatal(err)
		}
	}
}
