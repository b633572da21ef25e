package curve

import (
	"errors"
	"math"
	"sort"
	"sync"

	"ribwright/geometry"
)

// Func gives a coordinate (mm) and its slope per mm of x.
type Func func(x float64) (value, slope float64)

// Run gives a place of a line along the boat at the station x, X its half-breadth and Y
// its height in mm, and their slopes per mm of x.
type Run func(x float64) (at, slope geometry.Point)

// Apart returns the run of a line whose plan y and profile z know nothing of one another.
func Apart(y, z Func) Run {
	return func(x float64) (at, slope geometry.Point) {
		at.X, slope.X = y(x)
		at.Y, slope.Y = z(x)
		return at, slope
	}
}

// Track is a curve in space that never turns back along x: a gunwale, the keel
// or a stringer. It knows its own length, so that a place can be marked on
// straight stock before the stock is bent.
type Track struct {
	run     Run
	slopes  func(x float64) geometry.Point
	x0, x1  float64
	zero    float64         // station that lengths are counted from, mm
	lengths func() *lengths // made when a length is first asked for
}

// lengths is the table of a track's lengths.
type lengths struct {
	x, s   []float64 // stations and the length from the after end to each, mm
	origin float64   // length from there to the zero
}

// trackPanel is the step of the length table in mm. Five Gauss points in 25 mm
// leave less than 1e-9 mm for an arc (TestTrackAgainstArc) and 1e-6 mm where a
// batten's pins fall inside a panel (TestTrackOverBatten).
const trackPanel = 25

// NewTrack returns the track from x0 to x1 (mm, x0 < x1) with lengths counted
// from the station zero, positive forward. Its lengths need the slopes of the run alone.
func NewTrack(x0, x1, zero float64, run Run) (*Track, error) {
	return NewSloping(x0, x1, zero, run, func(x float64) geometry.Point { _, slope := run(x); return slope })
}

// NewSloping returns the same of a run whose slopes can be had without its places, which
// is quicker.
func NewSloping(x0, x1, zero float64, run Run, slopes func(x float64) geometry.Point) (*Track, error) {
	if !(x0 < x1) || x1-x0 > 1e6 {
		return nil, errors.New("a line along the boat needs its after end behind its forward end")
	}
	t := &Track{run: run, slopes: slopes, x0: x0, x1: x1, zero: zero}
	t.lengths = sync.OnceValue(t.measure)
	return t, nil
}

// measure makes the table of lengths.
func (t *Track) measure() *lengths {
	n := int(math.Ceil((t.x1 - t.x0) / trackPanel))
	l := &lengths{x: make([]float64, n+1), s: make([]float64, n+1)}
	l.x[0] = t.x0
	for i := 1; i <= n; i++ {
		l.x[i] = t.x0 + (t.x1-t.x0)*float64(i)/float64(n)
		l.s[i] = l.s[i-1] + Integrate(t.speed, l.x[i-1], l.x[i], 1)
	}
	l.origin = l.fromStart(t, t.zero)
	return l
}

// Moved returns the track with another run added to its own, between the same ends and
// with lengths from the same station.
func (t *Track) Moved(by Run) (*Track, error) {
	return NewSloping(t.x0, t.x1, t.zero, func(x float64) (at, slope geometry.Point) {
		at, slope = t.run(x)
		more, steeper := by(x)
		return at.Add(more), slope.Add(steeper)
	}, func(x float64) geometry.Point {
		_, steeper := by(x)
		return t.slopes(x).Add(steeper)
	})
}

func (t *Track) speed(x float64) float64 {
	slope := t.slopes(x)
	return math.Sqrt(1 + slope.X*slope.X + slope.Y*slope.Y)
}

// Ends returns the stations of the after and the forward end, mm.
func (t *Track) Ends() (float64, float64) { return t.x0, t.x1 }

// Point returns the place at the station x, mm.
func (t *Track) Point(x float64) geometry.Point3 {
	p, _, _ := t.At(x)
	return p
}

// Slopes returns dy/dx and dz/dx at the station x.
func (t *Track) Slopes(x float64) (dy, dz float64) {
	slope := t.slopes(x)
	return slope.X, slope.Y
}

// At returns the place at the station x, mm, and the slopes dy/dx and dz/dx there.
func (t *Track) At(x float64) (p geometry.Point3, dy, dz float64) {
	at, slope := t.run(x)
	return geometry.Point3{X: x, Y: at.X, Z: at.Y}, slope.X, slope.Y
}

// Length returns the length along the track from its zero to the station x in
// mm, negative abaft the zero. Stations beyond the ends are extended.
func (t *Track) Length(x float64) float64 {
	l := t.lengths()
	return l.fromStart(t, x) - l.origin
}

func (l *lengths) fromStart(t *Track, x float64) float64 {
	i := sort.SearchFloat64s(l.x, x)
	i = min(max(i-1, 0), len(l.x)-1)
	return l.s[i] + Integrate(t.speed, l.x[i], x, 1)
}

// Station returns the station x whose Length is s, to 1e-9 mm. Lengths beyond
// the ends give stations beyond the ends.
func (t *Track) Station(s float64) float64 {
	l := t.lengths()
	i := min(max(sort.SearchFloat64s(l.s, s+l.origin), 1), len(l.x)-1)
	x := l.x[i-1] + (s+l.origin-l.s[i-1])*(l.x[i]-l.x[i-1])/(l.s[i]-l.s[i-1])
	for range 50 { // Newton; the speed is at least 1 and nearly constant
		miss := t.Length(x) - s
		if math.Abs(miss) < 1e-10 {
			break
		}
		x -= miss / t.speed(x)
	}
	return x
}
