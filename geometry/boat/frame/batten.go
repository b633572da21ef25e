package frame

import (
	"cmp"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/stringer"
	"ribwright/geometry/curve"
	"ribwright/geometry/curve/stick"
	"ribwright/geometry/design"
	"ribwright/geometry/sidebyside"
)

// Batten is a stick along the ribs. Distances along it are measured from midship,
// forward positive.
type Batten struct {
	Line      *curve.Track
	Aft, Fore float64   // its ends, mm
	RibMarks  []float64 // middles of the ribs, from aft forward, mm
}

// Stringer is one batten along the outside of the ribs; each side has one.
type Stringer struct {
	Number int     // 1 is next to the keel
	Share  float64 // of the way from keel to gunwale along the ribs; its marks on the last ribs may lie elsewhere
	Stick  *stick.Stick
	Batten
}

func newBatten(t *curve.Track, ribs []Rib) Batten {
	aft, fore := t.Ends()
	b := Batten{t, t.Length(aft), t.Length(fore), make([]float64, len(ribs))}
	for i, r := range ribs {
		b.RibMarks[i] = t.Length(r.Station)
	}
	return b
}

// newKeel runs the keel under the ribs, butted between the stems' shoulders. Its line
// is the middle of its depth, which keeps its length when the keel is bent to the
// rocker.
func newKeel(d *design.Design, h *hull.Hull, ribs []Rib) (Batten, error) {
	up := keelMiddle(d)
	middle := func(x float64) (at, run geometry.Point) {
		foot, slope := x, 0.0
		for range 5 { // the foot lies forward by the height times the slope, which changes little: each round wins two digits
			_, slope = h.KeelZ(foot)
			before := foot
			if foot = x + up*slope/math.Sqrt(1+slope*slope); foot == before {
				break
			}
		}
		z, slope := h.KeelZ(foot)
		return geometry.Point{Y: z + up/math.Sqrt(1+slope*slope)}, geometry.Point{Y: slope}
	}
	end := func(e hull.End) float64 { return e.Toe.X - up*math.Sin(e.Heading) }
	t, err := curve.NewTrack(-end(h.Stern), end(h.Bow), 0, middle)
	if err != nil {
		return Batten{}, fmt.Errorf("keel: %w", err)
	}
	return newBatten(t, ribs), nil
}

// keelMiddle is the height of the middle of the keel's depth over the skin's face, mm.
func keelMiddle(d *design.Design) float64 { return float64(d.Skin.Thickness() + d.Keel.Depth/2) }

// KeelHalf is half the keel's width at a station, mm. Past the last rib of either end its
// sides taper to the stem's siding at the keel's end, as the cloth runs there: a square
// shoulder would stand under it. A keel that is no wider than the stem does not taper.
func (f *Frame) KeelHalf(x float64) float64 {
	aft, fore := f.Keel.Line.Ends()
	last, end, siding := f.Ribs[len(f.Ribs)-1].Station, fore, f.Bow.Thickness
	if x < 0 {
		x, last, end, siding = -x, -f.Ribs[0].Station, -aft, f.Stern.Thickness
	}
	half := float64(f.Design.Keel.Width) / 2
	share := min(max((x-last)/(end-last), 0), 1)
	return half - share*max(half-siding/2, 0)
}

// LashingRoom is the least room between neighboring battens on a rib, mm.
const LashingRoom = stringer.LashingRoom

// stringersApart keeps stringers, keel and gunwales off each other at every rib.
func stringersApart(d *design.Design, ribs []Rib) error {
	wide := float64(d.Stringers.Width)
	for _, r := range ribs {
		girth := r.Section.Half.Length()
		last, edge := "the keel", float64(d.Keel.Width)/2
		for i, at := range r.Stringers {
			name := fmt.Sprintf("stringer %d", i+1)
			if gap := at - wide/2 - edge; gap < LashingRoom {
				return tooNear(name, last, r.Name, gap)
			}
			last, edge = name, at+wide/2
		}
		if gap := girth - edge; gap < LashingRoom {
			return tooNear(last, "the gunwale", r.Name, gap)
		}
	}
	return nil
}

func tooNear(name, other, rib string, gap float64) error {
	lies := fmt.Sprintf("lies %.0f mm from", math.Max(0, gap))
	if gap <= -0.5 {
		lies = fmt.Sprintf("lies %.0f mm over", -gap)
	}
	return fmt.Errorf("%s %s %s on rib %s, at least %.0f mm between them are needed to lash it; change stringers.at", name, lies, other, rib, LashingRoom)
}

// newStringers runs each stringer as a stick tied to the ribs and ended on the stems;
// its own line is the middle of its depth.
func newStringers(d *design.Design, c *stringer.Courses, ribs []Rib) ([]Stringer, error) {
	out, faults := make([]Stringer, len(d.Stringers.At)), make([]error, len(d.Stringers.At))
	sidebyside.Each(len(out), func(i int) { out[i], faults[i] = newStringer(d, c, ribs, i) })
	return out, cmp.Or(faults...)
}

func newStringer(d *design.Design, c *stringer.Courses, ribs []Rib, i int) (Stringer, error) {
	s, err := stick.New(c.Pins(i), stringer.Stiff(d))
	if err != nil {
		return Stringer{}, fmt.Errorf("stringer %d: %w", i+1, err)
	}
	aft, fore := s.Ends()
	t, err := curve.NewSloping(aft, fore, 0, s.Line, s.Slopes)
	if err != nil {
		return Stringer{}, fmt.Errorf("stringer %d: %w", i+1, err)
	}
	return Stringer{i + 1, d.Stringers.At[i], s, newBatten(t, ribs)}, nil
}
