package joint

import "ribwright/geometry/boat/frame"

// Driven is what is driven into the ends of keel and gunwales, which other fastenings keep
// clear of: stern and bow, mm from either's end.
type Driven struct {
	Keel    [2][]float64 // screws of the stems' feet and the lashings between them, from the keel's ends
	Gunwale [2][]float64 // pegs of the breasthooks, from the gunwales' ends along their inner faces
}

// DrivenInto returns those places. They follow from the frame alone, whatever its woods.
func DrivenInto(f *frame.Frame) (out Driven) {
	u := Remembered()
	for i, e := range ends(f) {
		_, foot, _ := screwed(f, u, e)
		out.Keel[i] = append(foot.FromEnd, foot.Lash)
	}
	for i, h := range [2]frame.Breasthook{f.SternHook, f.BowHook} {
		hook, _, _ := pegged(u, h)
		out.Gunwale[i] = hook.FromEnd
	}
	return out
}

// ends are the stems with their ends of the hull, stern and bow.
func ends(f *frame.Frame) [2]stemAt {
	return [2]stemAt{{f.Stern, f.Hull.Stern, -1}, {f.Bow, f.Hull.Bow, 1}}
}
