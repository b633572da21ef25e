package seat

import (
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
)

// bent is a random chain from the keel out; one in three turns back somewhere, and some are
// bent tighter than half a rib.
func bent(r *rand.Rand) hull.Section {
	s := hull.Section{Half: curve.Chain{curve.Straight(150 * r.Float64())}}
	for range 3 {
		s.Half = append(s.Half, curve.Turned(3+300*r.Float64(), 0.8*r.Float64()))
	}
	if r.IntN(3) == 0 {
		s.Half = append(s.Half, curve.Turned(-200, -0.3*r.Float64()))
	}
	s.Half = append(s.Half, curve.Straight(200*r.Float64()))
	return s
}

func faceOf(s hull.Section, t float64) face {
	place, length := s.Faces(), s.Half.Length()
	return face{func(i int) geometry.Point { return place(length*float64(i)/faceSteps, -t/2) }, bulges(s.Half, t/2)}
}

// TestBroadOfBulging: on a face that bulges the piece at the height is enough. The answer
// is that of looking at all pieces.
func TestBroadOfBulging(t *testing.T) {
	r, bulging := rand.New(rand.NewPCG(5, 5)), 0
	for range 500 {
		f := faceOf(bent(r), 8)
		if f.bulges {
			bulging++
		}
		whole := face{at: f.at}
		for z := -10.0; z < 700; z += 3.5 {
			if got, want := f.broad(z), whole.broad(z); math.Abs(got-want) > 1e-9 {
				t.Fatalf("%g mm wide at %g mm, want %g", got, z, want)
			}
		}
	}
	if bulging < 100 || bulging > 400 {
		t.Errorf("%d of 500 faces bulge, which tries little", bulging)
	}
}

// TestClearsByEnds: whether a hanger clears a bulging face is told by its two ends and what
// of it stands over the face; looking every few millimeters all the way says the same.
func TestClearsByEnds(t *testing.T) {
	r, clear, tried := rand.New(rand.NewPCG(6, 6)), 0, 0
	for range 3000 {
		f := faceOf(bent(r), 8)
		if !f.bulges {
			continue
		}
		top, lean := f.at(faceSteps), 0.5*(r.Float64()-0.5)
		h := Hanger{Length: 80 + 200*r.Float64(), high: 20, Block: 12 + 10*r.Float64(), stands: board{
			from: geometry.Point3{Y: top.X - 12*r.Float64(), Z: top.Y + 40*r.Float64()}, fore: geometry.Point3{X: 1},
			down: geometry.Point3{Y: -math.Sin(lean), Z: -math.Cos(lean)}, inward: geometry.Point3{Y: -math.Cos(lean), Z: math.Sin(lean)}}}
		got := h.clears(side{face: f, top: top.Y})
		if want := h.clears(side{face: face{at: f.at}, top: top.Y}); got != want {
			t.Fatalf("clears %v by its ends, %v all the way", got, want)
		}
		if tried++; got {
			clear++
		}
	}
	if clear < tried/10 || clear > 9*tried/10 {
		t.Errorf("%d of %d clear, which tries little", clear, tried)
	}
}
