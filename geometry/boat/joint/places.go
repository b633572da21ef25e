package joint

import (
	"slices"

	"ribwright/geometry/boat/frame"
)

// Driven is what is driven into the ends of keel and gunwales, which other fastenings keep
// clear of: stern and bow, mm from either's end.
type Driven struct {
	Keel    [2][]float64 // screws of the stems' feet and the lashings between them, from the keel's ends
	Gunwale [2][]float64 // pegs of the breasthooks, from the gunwales' ends along their inner faces
}

// Driven returns those places.
func (j *Joints) Driven() (out Driven) {
	for i, f := range j.Feet {
		out.Keel[i] = append(slices.Clone(f.FromEnd), f.Lash)
	}
	for i, h := range j.Hooks {
		out.Gunwale[i] = h.FromEnd
	}
	return out
}

// ends are the stems with their ends of the hull, stern and bow.
func ends(f *frame.Frame) [2]stemAt {
	return [2]stemAt{{f.Stern, f.Hull.Stern, -1}, {f.Bow, f.Hull.Bow, 1}}
}
