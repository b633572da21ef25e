package nest_test

import (
	"testing"

	"ribwright/layout/plate/nest"
)

// BenchmarkQuick and BenchmarkClose lay brook's parts both ways.
func BenchmarkQuick(b *testing.B) { benchmark(b, true) }

func BenchmarkClose(b *testing.B) { benchmark(b, false) }

func benchmark(b *testing.B, quick bool) {
	parts, o := canoe(b, "brook"), nest.DefaultOptions()
	o.Quick = quick
	for b.Loop() {
		p, err := nest.Lay("brook", parts, o)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(p.Spread(), "areas")
	}
}
