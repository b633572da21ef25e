package seat

import (
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
)

// TestBroadOfRising: on a face that rises all the way, with level pieces too, the pieces at
// the height are enough: the answer is that of the whole face, to the last bit.
func TestBroadOfRising(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 5))
	for range 200 {
		face := []geometry.Point{{X: 0, Y: 7}}
		for range 20 {
			last := face[len(face)-1]
			face = append(face, last.Add(geometry.Point{X: 30 * (rnd.Float64() - 0.3), Y: 10 * float64(rnd.IntN(3))}))
		}
		s := side{face: face, rising: true}
		for z := 0.0; z < 420; z += 2.5 {
			if got, want := s.broad(z), broad(face, z); got != want {
				t.Fatalf("%v: %g mm wide at %g mm, want %g", face, got, z, want)
			}
		}
	}
}
