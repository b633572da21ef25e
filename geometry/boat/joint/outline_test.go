package joint

import (
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
)

// TestEdgeOfStar: rings of triangles about one point, of a hundred sides. A place is inside
// where the triangle in whose angle it lies holds it, and as far from the edge as from the
// nearest side, every one of them asked.
func TestEdgeOfStar(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 9))
	for range 20 {
		const n = 100
		pts := make([]geometry.Point, n)
		for i := range pts {
			pts[i] = geometry.Polar(40+20*rnd.Float64(), 2*math.Pi*float64(i)/n)
		}
		o := outlineOf(pts)
		for range 200 {
			turn := 2 * math.Pi * rnd.Float64()
			p := geometry.Polar(80*rnd.Float64(), turn)
			want := math.Inf(1)
			for i, a := range pts {
				b := pts[(i+1)%n]
				run, to := b.Sub(a), p.Sub(a)
				t := math.Max(0, math.Min(1, to.Dot(run)/run.Dot(run)))
				want = math.Min(want, to.Sub(run.Scale(t)).Norm())
			}
			i := int(turn / (2 * math.Pi) * n)
			if a, b := pts[i%n], pts[(i+1)%n]; b.Sub(a).Cross(p.Sub(a)) < 0 {
				want = -want
			}
			if got := o.edgeTo(p); math.Abs(got-want) > 1e-9 {
				t.Fatalf("%v is %.9f mm inside, want %.9f", p, got, want)
			}
		}
	}
}
