package stringer

import (
	"testing"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
)

// sections are those at a design's ribs, found anew.
func sections(t testing.TB, d *design.Design) (*hull.Hull, []hull.Section) {
	t.Helper()
	h, err := hull.New(d)
	if err != nil {
		t.Fatal(err)
	}
	pitch := float64(d.Ribs.Pitch)
	first := pitch / 2
	if d.Ribs.AtMidship {
		first = 0
	}
	var out []hull.Section
	for k := -100; k <= 100; k++ {
		x := first + pitch*float64(k)
		if x < -h.Stern.GunwaleX+float64(d.Ribs.FromStern) || x > h.Bow.GunwaleX-float64(d.Ribs.FromBow) {
			continue
		}
		s, err := h.Section(x)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, s)
	}
	return h, out
}

// BenchmarkOf is all ways of a boat, as a search asks for them hundreds of times.
func BenchmarkOf(b *testing.B) {
	for _, name := range design.ShippedNames() {
		d, err := design.Shipped(name)
		if err != nil {
			b.Fatal(err)
		}
		h, ribs := sections(b, d)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Of(d, h, ribs); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
