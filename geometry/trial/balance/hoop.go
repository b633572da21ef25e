package balance

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// modes is in how many ways a rib is let bend: as a level push at its head bends it,
// and with curvature that is even or follows a polynomial of rising degree along it, in
// such measure that the head stays. The tests hold it against ribs that may bend in
// more ways.
const modes = 4

// ways are the amounts of all ways of bending, or what each of them does.
type ways [modes]float64

func (w ways) dot(other ways) float64 {
	sum := 0.0
	for k, v := range w {
		sum += v * other[k]
	}
	return sum
}

// hoop is the port half of a rib as it gives. The other half keeps its middle at the
// keel level and in the middle of the boat. An amount of 1 of the first way moves the
// head outward by 1 mm.
type hoop struct {
	stiff   float64     // against bending, N mm2
	length  float64     // along its middle, mm
	energy  [modes]ways // ∫ c d ds for the curvatures c and d of two ways, 1/mm3
	turn    ways        // of the head, outward, radians
	move    [][2]ways   // of the middle of the keel and of each stringer: outward, and up as seen from the head, mm
	cloth   ways        // ∫ c e ds, e the room from the rib's middle out to the cloth: what the cloth gives up, mm
	samples []ways      // c at the keel, the stringers and the ends of bends, 1/mm2
}

// crossing is where a stringer crosses a rib.
type crossing struct {
	along  float64        // the middle of the half rib, from the keel, mm
	middle geometry.Point // of the stringer, from the rib's middle at the keel
}

// newHoop works out a half rib of the stiffness E I in N mm2 and the thickness in mm.
// The cloth is the outline on which it lies, in the order of frame.Corners, from the
// rib's middle at the keel.
//
// How: a bit ds of the rib that opens by c ds swings all that lies beyond it. So a
// place (y, z) moves outward by ∫ c (z - z(s)) ds and up by -∫ c (y - y(s)) ds, from
// the keel to where it is tied on, and the cloth gives up c e ds.
// Returns: nil for a rib that does not stand up, which can hold nothing.
func newHoop(half curve.Chain, stiff, thick float64, at []crossing, cloth []geometry.Point) *hoop {
	h := &hoop{stiff: stiff, length: half.Length(), move: make([][2]ways, 0, len(at)+1), samples: make([]ways, 0, len(at)+len(half)+1)}
	w := walk{hoop: h, cloth: cloth, least: thick / 2}
	w.head, _ = half.End()
	h.samples = append(h.samples, w.shapes())
	h.move = append(h.move, [2]ways{}) // the keel's
	for _, b := range half {
		left := b.Length
		for w.next < len(at) && at[w.next].along-w.s < left {
			step := at[w.next].along - w.s
			w.run(b, step)
			w.tie(at[w.next].middle)
			left -= step
		}
		w.run(b, left)
	}
	for w.next < len(at) {
		w.tie(at[w.next].middle)
	}
	if !(w.gram[0][0] > 0) {
		return nil
	}
	w.finish()
	return h
}

// walk goes along a half rib from the keel and sums up on the way what the raw shapes
// of its curvature do: those of which the ways are made.
type walk struct {
	hoop    *hoop
	head    geometry.Point
	cloth   []geometry.Point
	least   float64 // room from the rib's middle to its outer face, mm
	s       float64
	p       geometry.Point
	heading float64
	next    int // the stringer that comes next

	gram                       [modes]ways // ∫ a b ds
	sum, byHeight, byHalf, out ways        // ∫ a ds, ∫ a z ds, ∫ a y ds, ∫ a e ds
}

// shapes are the raw shapes here: the height of the head above, and Legendre's
// polynomials.
func (w *walk) shapes() ways {
	t := 2*w.s/w.hoop.length - 1
	out := ways{w.head.Y - w.p.Y, 1, t}
	for k := 3; k < modes; k++ {
		n := float64(k - 1)
		out[k] = ((2*n-1)*t*out[k-1] - (n-1)*out[k-2]) / n
	}
	return out
}

// room is how far outside the rib's middle the cloth runs here, mm: off the line from
// one stringer to the next, but never inside the rib's face.
func (w *walk) room() float64 {
	if len(w.cloth) < 2*w.next+3 {
		return 0
	}
	a, b := w.cloth[2*w.next+1], w.cloth[2*w.next+2]
	along := b.Sub(a)
	return math.Max(w.least, along.Cross(w.p.Sub(a))/along.Norm())
}

// steepest is the turn over which the sums go in one panel, radians: it leaves less
// than 1e-10 of them.
const steepest = 0.8

// The five-point Gauss rule on [0, 1]. Abramowitz and Stegun, table 25.4.
var (
	fiveAt     = [5]float64{0.04691007703066802, 0.23076534494715845, 0.5, 0.7692346550528415, 0.953089922969332}
	fiveWeight = [5]float64{0.11846344252809454, 0.23931433524968324, 0.28444444444444444, 0.23931433524968324, 0.11846344252809454}
)

// run walks the next stretch of a bend.
func (w *walk) run(b curve.Bend, length float64) {
	turn := 0.0
	if b.Radius != 0 {
		turn = math.Abs(length / b.Radius)
	}
	panels := max(1, int(math.Ceil(turn/steepest)))
	for range panels {
		w.panel(b.Radius, length/float64(panels))
	}
	w.hoop.samples = append(w.hoop.samples, w.shapes())
}

func (w *walk) panel(radius, length float64) {
	from := *w
	for i, t := range fiveAt {
		w.s, w.p, w.heading = from.onward(radius, t*length)
		w.count(fiveWeight[i] * length)
	}
	w.s, w.p, w.heading = from.onward(radius, length)
}

// onward is the place so far along a bend.
func (w walk) onward(radius, length float64) (s float64, p geometry.Point, heading float64) {
	if radius == 0 {
		return w.s + length, w.p.Add(geometry.Polar(length, w.heading)), w.heading
	}
	sin, cos := math.Sincos(w.heading)
	heading = w.heading + length/radius
	sin2, cos2 := math.Sincos(heading)
	return w.s + length, w.p.Add(geometry.Pt(radius*(sin2-sin), radius*(cos-cos2))), heading
}

func (w *walk) count(ds float64) {
	a, e := w.shapes(), w.room()
	for k, v := range a {
		v *= ds
		w.sum[k] += v
		w.byHeight[k] += v * w.p.Y
		w.byHalf[k] += v * w.p.X
		w.out[k] += v * e
		for l := range k + 1 {
			w.gram[k][l] += v * a[l]
		}
	}
}

// tie notes what has moved a stringer that is tied on here: outward, and up as seen
// from the keel.
func (w *walk) tie(at geometry.Point) {
	var m [2]ways
	for k, a := range w.sum {
		m[0][k] = at.Y*a - w.byHeight[k]
		m[1][k] = w.byHalf[k] - at.X*a
	}
	w.hoop.move = append(w.hoop.move, m)
	w.next++
}

// finish makes the ways from the raw shapes: the first moves the head by 1 mm, to the
// others so much of it is added that they leave the head in place.
func (w *walk) finish() {
	h := w.hoop
	for k := range modes {
		for l := range k {
			w.gram[l][k] = w.gram[k][l]
		}
	}
	whole := w.gram[0]
	per := 1 / (h.length * h.length) // makes an amount of 1 about a millimeter
	made := func(a ways) ways {
		out := ways{a[0] / whole[0]}
		for k := 1; k < modes; k++ {
			out[k] = (a[k] - whole[k]/whole[0]*a[0]) * per
		}
		return out
	}
	var half [modes]ways
	for k, row := range w.gram {
		half[k] = made(row)
	}
	for k := range modes {
		var column ways
		for l := range modes {
			column[l] = half[l][k]
		}
		h.energy[k] = made(column)
	}
	h.turn, h.cloth = made(w.sum), made(w.out)
	headUp := ways{}
	for k := range modes {
		headUp[k] = w.byHalf[k] - w.head.X*w.sum[k]
	}
	for i, m := range h.move {
		for k := range modes {
			m[1][k] -= headUp[k]
		}
		h.move[i] = [2]ways{made(m[0]), made(m[1])}
	}
	for i, c := range h.samples {
		h.samples[i] = made(c)
	}
}

// give is how far the head of the whole rib opens for 1 N, mm: Castigliano, 2 ∫ m² ds
// over the half rib, m the height of the head above the place.
func (h *hoop) give() float64 { return 2 / (h.energy[0][0] * h.stiff) }

// held is the rib's stiffness when its heads bear so large a share of the moment that
// heads which cannot turn would bear.
//
// How: a spring at the head, which alone would let a rib of even bending turn so far
// that the share of the moment is left.
func (h *hoop) held(share float64) [modes]ways {
	share = math.Min(share, 1-1e-7) // heads that cannot turn, to that share
	spring := share / (1 - share) / h.length
	var out [modes]ways
	for k := range modes {
		for l := range modes {
			out[k][l] = h.stiff * (h.energy[k][l] + spring*h.turn[k]*h.turn[l])
		}
	}
	return out
}

// opened is the shape of a free rib that stands wide mm wider than its place in the
// boat: bent over all along as a level push would bend it, or, by the share upright,
// with its heads as they stand in the boat, for which an even curvature is added until
// they do not turn.
func (h *hoop) opened(wide, upright float64) ways {
	return ways{wide / 2, -upright * wide / 2 * h.turn[0] / h.turn[1]}
}

// bent is the greatest bending of the rib, N mm, at the amounts and slopes u of its
// ways, when it stands free at the amounts given.
func (h *hoop) bent(u []float64, free ways) float64 {
	var now ways
	for k := range now {
		now[k] = u[2*k] - free[k]
	}
	most := 0.0
	for _, c := range h.samples {
		most = math.Max(most, math.Abs(c.dot(now)))
	}
	return most * h.stiff
}
