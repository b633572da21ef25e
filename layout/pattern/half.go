package pattern

import (
	"math"

	"ribwright/geometry/boat/frame"
)

// Where fore and aft are equal, one half of a pattern serves both: it is turned
// over at midship. What differs between the halves all the same, such as a seat,
// is drawn on the half with a word about which one it belongs to.

// halved reports whether halves are printed.
func halved(f *frame.Frame) bool { return f.Design.EndsAlike() }

// overMidship is how far a half reaches over midship, mm, so that a mortise
// there is whole.
const overMidship = 20.0

// onHalf reports whether what lies at x is drawn on the half.
func onHalf(x float64) bool { return x > -1e-6 }

// twins names the rib and, on a half, the one that lies opposite.
func twins(f *frame.Frame, i int) string {
	j := len(f.Ribs) - 1 - i
	if !halved(f) || i == j {
		return f.Ribs[i].Name
	}
	return f.Ribs[i].Name + " " + f.Ribs[j].Name
}

// folded brings a place on the whole to the half, with a word on whose it is.
func folded(x float64) (float64, string) {
	switch {
	case x > 1e-6:
		return x, ", forward half only"
	case x < -1e-6:
		return -x, ", after half only"
	}
	return 0, ""
}

// foldedZones brings the stretches of both halves onto one.
func foldedZones(zones []frame.Zone) []frame.Zone {
	var out []frame.Zone
	for _, z := range zones {
		if z.To > 0 {
			out = append(out, frame.Zone{From: math.Max(z.From, -overMidship), To: z.To})
		}
		if z.From < 0 {
			out = append(out, frame.Zone{From: math.Max(-z.To, -overMidship), To: -z.From})
		}
	}
	return frame.Merged(out)
}
