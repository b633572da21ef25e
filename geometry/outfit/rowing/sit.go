package rowing

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/outfit/clip"
	"ribwright/geometry/wording"
)

// Cheek is one of the two boards that the seat stands on.
type Cheek struct {
	Across    float64          // its middle from the middle line
	Aft, Fore float64          // stations of its ends
	Ribs      []geometry.Point // where it stands: station, and height of what is under its inboard face
	Slat      bool             // whether that is a floor slat, else the ribs
	Off       float64          // what is planed off its outboard lower edge at most
}

// How the seat stands, mm. Common practice, no source.
const (
	cheekIn   = 50.0         // of a cheek's middle from the seat's end
	cheekPast = 20.0         // of a cheek beyond the last rib that it stands on
	bearing   = SeatWide / 4 // from the seat's middle: it stands on a rib no nearer to the middle, both ways
	slatPlay  = 2.0          // of a cheek beside a slat
	leastHigh = 25.0         // of a cheek
	CordHole  = 6.0          // through a cheek, for its lashings
	braceHigh = 80.0         // of the board between the cheeks, at most
	barMoves  = 70.0         // how far a bar may move to find room for its clips
	heelWide  = 60.0         // of a slat under a heel, at most
)

// barAt is the station of a bar near to one at which its clips find room.
func (f *Fit) barAt(x float64) float64 {
	c, ok := clip.Near(f.Boat.Frame, x, x-barMoves, x+barMoves)
	f.Clear = f.Clear && ok
	return c.Hole.X
}

// sit places the seat's cheeks on ribs or slats, and the footrest.
func (f *Fit) sit() {
	ribs := f.Boat.Frame.Ribs
	first, last := 0, len(ribs)-1
	for i, r := range ribs {
		if r.Station <= f.SeatX-bearing {
			first = i
		}
		if at := ribs[len(ribs)-1-i].Station; at >= f.SeatX+bearing {
			last = len(ribs) - 1 - i
		}
	}
	c := Cheek{Aft: math.Min(ribs[first].Station-cheekPast, f.SeatX-SeatWide/2+10), Fore: math.Max(ribs[last].Station+cheekPast, f.SeatX+SeatWide/2-10)}
	want := f.SeatLong()/2 - cheekIn
	c.Across, _ = clip.Nearest(want, want/2, func(y float64) bool {
		c.Slat = false
		for _, fl := range f.Boat.Places.Inside.Floors {
			if fl.Aft > c.Fore || fl.Fore < c.Aft {
				continue
			}
			whole := fl.Aft <= ribs[first].Station && fl.Fore >= ribs[last].Station
			for _, s := range fl.Across {
				off := math.Abs(s - y)
				if whole && off <= (fl.Wide-BoardThick)/2 {
					c.Slat = true
				} else if off < (fl.Wide+BoardThick)/2+slatPlay {
					return false
				}
			}
		}
		return true
	})
	for _, r := range ribs[first : last+1] {
		in, out := over(r, c.Across-BoardThick/2), over(r, c.Across+BoardThick/2)
		c.Off = math.Max(c.Off, out-in)
		if c.Slat {
			in += float64(f.Boat.Frame.Design.Inside.Floor())
		}
		c.Ribs = append(c.Ribs, geometry.Pt(r.Station, in))
	}
	f.Cheek = c
	f.Foot, f.FootFits = f.Boat.Places.Inside.Facing(f.Boat.Frame, f.FootX)
}

// over is the height of a rib's upper face so far from the middle line, over the baseline.
func over(r frame.Rib, across float64) float64 {
	face := func(along float64) geometry.Point { return r.Section.Face(along, -r.Thickness/2) }
	return face(curve.Bisect(0, r.Section.Half.Length(), func(s float64) bool { return face(s).X < across })).Y
}

// CheekOutline is a cheek from outboard: x forward from the seat's middle, y up from its top.
func (f *Fit) CheekOutline() []geometry.Point {
	c, top := f.Cheek, f.SeatZ-BoardThick
	at := func(x, z float64) geometry.Point { return geometry.Pt(x-f.SeatX, math.Min(z-top, -leastHigh)) }
	out := []geometry.Point{at(c.Aft, c.Ribs[0].Y)}
	for _, p := range c.Ribs {
		out = append(out, at(p.X, p.Y))
	}
	out = append(out, at(c.Fore, c.Ribs[len(c.Ribs)-1].Y))
	return append(out, geometry.Pt(c.Fore-f.SeatX, 0), geometry.Pt(c.Aft-f.SeatX, 0))
}

// low tells by how much the seat is too low for its cheeks, mm; 0 where it is not.
func (f *Fit) low() (short float64) {
	for _, p := range f.Cheek.Ribs {
		short = math.Max(short, leastHigh-(f.SeatZ-BoardThick-p.Y))
	}
	return short
}

// SeatBrace is the length and height of the board between the cheeks, under the seat.
func (f *Fit) SeatBrace() (long, high float64) {
	return 2*f.Cheek.Across - BoardThick, math.Max(leastHigh, math.Min(braceHigh, math.Floor((f.SeatOver-BoardThick)/2)))
}

// HeelSlat is how wide and thick each slat under a heel is; 0 where there is no room or the
// floor's slats lie there.
func (f *Fit) HeelSlat() (wide, thick float64) {
	for _, fl := range f.Boat.Places.Inside.Floors {
		if fl.Aft < f.FootX && fl.Fore > f.FootX {
			return 0, 0
		}
	}
	wide = math.Min(heelWide, math.Floor(f.Foot.KneeAcross()-f.Foot.RailWide/2-7))
	if wide < heelWide/2 {
		return 0, 0
	}
	return wide, cmp.Or(float64(f.Boat.Frame.Design.Inside.Floor()), 6)
}

// amid reports whether a station lies between the rower's heels and what is behind the back.
func (f *Fit) amid(x float64) bool { return x >= f.FootX && x <= f.Back()+SeatWide/2 }

// InWay names what is in the rower's way: cross pieces, hung seats, foam at the sides.
func (f *Fit) InWay() []string {
	out := f.Boat.Crosses(f.FootX, f.Back()+SeatWide/2)
	for _, s := range f.Boat.Seats {
		if s.Hung != nil && f.amid(s.At) {
			out = append(out, fmt.Sprintf("%s at %.0f mm", wording.OneLine(wording.Clip(s.Name, 40)), s.At))
		}
	}
	for _, b := range f.Boat.Flotation.Bags {
		for _, k := range b.Blocks {
			if half := f.SeatLong() / 2; b.Foam && strings.HasPrefix(b.Where, "port") && math.Abs(k.At.X-f.SeatX) < SeatWide/2 && k.At.Y-k.Wide/2 < half {
				out = append(out, fmt.Sprintf("foam of the sides from %.0f to %.0f mm (or a seat of %.0f mm)", b.Aft, b.Fore, 2*math.Floor(k.At.Y-k.Wide/2)))
				break
			}
		}
	}
	return out
}
