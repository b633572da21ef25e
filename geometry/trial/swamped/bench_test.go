package swamped

import "testing"

// BenchmarkOf: what float and book pay for the swamped boat.
func BenchmarkOf(b *testing.B) {
	f := boat(b, "river", nil)
	for b.Loop() {
		Of(f, 1000)
	}
}
