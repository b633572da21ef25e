package cutlist

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
)

// Joint is a scarf in a stick, its middle along the stock from midship, mm.
type Joint struct{ Middle, Length float64 }

// apart is how many scarf lengths lie between two splices of one member. Source:
// FAA AC 43.13-1B, ch. 1, of wooden spars.
const apart = 3.0

// hard is the share of a batten's sharpest bend beyond which no scarf may lie. Our
// own rule for the usual advice to keep scarfs out of the hardest curve.
const hard = 0.5

// battenRun gives a batten its scarf rule: between ribs, so that no lashing lies on
// a feather edge, and where it bends least.
func battenRun(f *frame.Frame, line *curve.Track, aft, fore, depth float64) *Run {
	run := &Run{Aft: aft - endTrim, Fore: fore + endTrim, Scarf: f.Design.Gunwale.ScarfSlope * depth}
	zones := hardCurves(line)
	half := float64(f.Design.Ribs.Width) / 2
	for _, r := range f.Ribs {
		at := line.Length(r.Station)
		zones = append(zones, frame.Zone{From: at - half, To: at + half})
	}
	zones = append(zones, frame.Zone{From: run.Aft, To: aft + endTrim}, frame.Zone{From: fore - endTrim, To: run.Fore})
	run.Rooms = rooms(frame.Merged(zones), run.Scarf)
	return run
}

// rooms are the gaps between zones that hold the length.
func rooms(zones []frame.Zone, length float64) []frame.Zone {
	var out []frame.Zone
	for i := 1; i < len(zones); i++ {
		if z := (frame.Zone{From: zones[i-1].To, To: zones[i].From}); z.To-z.From >= length {
			out = append(out, z)
		}
	}
	return out
}

// hardCurves are the stretches in which a line bends more than its share of its
// sharpest bend.
func hardCurves(line *curve.Track) []frame.Zone {
	const step = 20.0 // mm
	a, b := line.Ends()
	n := int(math.Ceil((b - a) / step))
	bends, most := make([]float64, n+1), 0.0
	for i := range bends {
		bends[i] = bendAt(line, a+(b-a)*float64(i)/float64(n))
		most = math.Max(most, bends[i])
	}
	var out []frame.Zone
	for i, k := range bends {
		if most > 1e-9 && k > hard*most {
			x := a + (b-a)*float64(i)/float64(n)
			out = append(out, frame.Zone{From: line.Length(math.Max(a, x-step)), To: line.Length(math.Min(b, x+step))})
		}
	}
	return out
}

// bendAt is the curvature of a line at a station, 1/mm.
func bendAt(line *curve.Track, x float64) float64 {
	const h = 1.0 // mm
	a, b := line.Ends()
	x = math.Min(math.Max(x, a+h), b-h)
	y1, z1 := line.Slopes(x - h)
	y2, z2 := line.Slopes(x + h)
	return math.Hypot(y2-y1, z2-z1) / (2 * h)
}

// joints places the scarfs of a run so that no piece is longer than the stock,
// those of the design first. taken are the middles of scarfs in the sticks beside
// it. From aft forward each piece is made as long as it can be.
//
// Errors: no place within the rules.
func (r *Run) joints(stock float64, taken []Joint) ([]Joint, error) {
	var out []Joint
	for _, m := range r.Fixed {
		out = append(out, Joint{m, r.Scarf})
	}
	slices.SortFunc(out, func(a, b Joint) int { return int(math.Copysign(1, a.Middle-b.Middle)) })
	for {
		from, to, at := r.tooLong(out, stock)
		if at < 0 {
			return out, nil
		}
		m, ok := r.place(from, to, stock, out, taken)
		if !ok {
			return nil, fmt.Errorf("no place for a scarf of %.0f mm between %.0f and %.0f mm from midship that keeps out of mortises, ribs, hard curves and %.0f scarf lengths from the next", r.Scarf, from, math.Min(to, from+stock), apart)
		}
		out = slices.Insert(out, at, Joint{m, r.Scarf})
	}
}

// tooLong returns the first piece longer than the stock and where among the joints
// a new one comes; at is -1 when all fit.
func (r *Run) tooLong(joints []Joint, stock float64) (from, to float64, at int) {
	from = r.Aft
	for i := 0; i <= len(joints); i++ {
		to, next := r.Fore, 0.0
		if i < len(joints) {
			to, next = joints[i].Middle+r.Scarf/2, joints[i].Middle-r.Scarf/2
		}
		if to-from > stock+1e-6 {
			return from, to, i
		}
		from = next
	}
	return 0, 0, -1
}

// place finds the farthest middle of a scarf that ends a piece begun at from.
func (r *Run) place(from, to, stock float64, own, taken []Joint) (float64, bool) {
	reach := math.Min(from+stock, to) - r.Scarf/2
	if m, ok := r.placeUpTo(math.Min(reach, to+r.Scarf/2-leastPiece), from, own, taken); ok {
		return m, true
	}
	return r.placeUpTo(reach, from, own, taken)
}

// leastPiece is the length that a scarf leaves of a stick where it can, mm: shorter
// ends are hard to hold while planing. Common practice, no source.
const leastPiece = 400.0

func (r *Run) placeUpTo(reach, from float64, own, taken []Joint) (float64, bool) {
	for i := len(r.Rooms) - 1; i >= 0; i-- {
		z := r.Rooms[i]
		const step = 5.0 // mm
		for m := math.Min(z.To-r.Scarf/2, reach); m >= z.From+r.Scarf/2 && m > from+r.Scarf; m -= step {
			if clear(m, r.Scarf, apart, own) && clear(m, r.Scarf, 1, taken) {
				return m, true
			}
		}
	}
	return 0, false
}

// clear reports whether a scarf keeps so many of its lengths from all the others.
func clear(middle, length, lengths float64, others []Joint) bool {
	for _, o := range others {
		if math.Abs(middle-o.Middle)-(length+o.Length)/2 < lengths*length-1e-6 {
			return false
		}
	}
	return true
}
