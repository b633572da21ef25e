package seat

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// face is the ribs' inner face at a station, from the keel out: straight from place to
// place of faceSteps steps of one length. A place is worked out when it is asked for, x
// the half-breadth, y the height above the baseline.
type face struct {
	at     func(step int) geometry.Point
	bulges bool // it turns up and in all the way, so that it rises all the way
}

const faceSteps = 60

// inside returns that of the section at a station.
func (b Boat) inside(x float64) (face, error) {
	sec, err := b.Hull.Section(x)
	if err != nil {
		return face{}, err
	}
	t := float64(b.Design.Ribs.Thickness)
	place, length := sec.Faces(), sec.Half.Length()
	at := func(step int) geometry.Point { return place(length*float64(step)/faceSteps, -t/2) }
	return face{at, bulges(sec.Half, t/2)}, nil
}

// bulges reports whether a chain turns to the left all the way, but for straight pieces, by
// half a turn at most, and so does the line so far inside it.
func bulges(c curve.Chain, in float64) bool {
	turn := 0.0
	for _, b := range c {
		if turn += b.Sweep; b.Radius != 0 && !(b.Radius > in && b.Sweep >= 0) {
			return false
		}
	}
	return turn <= math.Pi
}

// broad returns the half-breadth at a height, the outermost where the face is met more than
// once; 0 under its lowest point.
func (f face) broad(z float64) float64 {
	if f.bulges {
		return f.rising(z)
	}
	y, a := 0.0, f.at(0)
	for i := 1; i <= faceSteps; i++ {
		b := f.at(i)
		if lo, hi := min(a.Y, b.Y), max(a.Y, b.Y); z >= lo && z <= hi && hi > lo {
			y = max(y, a.Lerp(b, (z-a.Y)/(b.Y-a.Y)).X)
		}
		a = b
	}
	if z > a.Y {
		return a.X
	}
	return y
}

// rising is that of a face that rises all the way: the piece at the height is looked for
// where the chord has it, and half-way where that does not find it soon.
func (f face) rising(z float64) float64 {
	const soon = 4
	lo, hi := 0, faceSteps
	a, b := f.at(lo), f.at(hi)
	switch {
	case z < a.Y:
		return 0
	case z >= b.Y:
		return b.X
	}
	for n := 0; hi-lo > 1; n++ {
		mid := (lo + hi) / 2
		if n < soon {
			mid = min(max(lo+int((z-a.Y)/(b.Y-a.Y)*float64(hi-lo)), lo+1), hi-1)
		}
		if p := f.at(mid); p.Y <= z {
			lo, a = mid, p
		} else {
			hi, b = mid, p
		}
	}
	return a.Lerp(b, (z-a.Y)/(b.Y-a.Y)).X
}

// floorAt returns the height at a half-breadth, the lowest where it is met more than once;
// that of the face's end beyond it.
func (f face) floorAt(y float64) float64 {
	a := f.at(0)
	for i := 1; i <= faceSteps; i++ {
		b := f.at(i)
		if b.X >= y && b.X > a.X {
			return a.Lerp(b, (y-a.X)/(b.X-a.X)).Y
		}
		a = b
	}
	return a.Y
}
