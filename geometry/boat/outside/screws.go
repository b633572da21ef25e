package outside

import (
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/wood/fasten"
)

// Where screws stand, mm: midway between ribs, and closer where that is too far. Common
// practice, no source.
const (
	MostApart   = 200.0
	OutwaleEnd  = 45.0  // from an outwale's end to its first screw: clear of the gunwales' lashing, which lies lower
	KeelEnd     = 70.0  // the same of the keel strip: past the end that is thinned
	MostFromEnd = 130.0 // from either's end
	leastApart  = 35.0  // 10 diameters, as the NDS commentary has for bored holes
	Sunk        = 1.0   // a head under the face of its strip
	Under       = 3.0   // wood left under a screw's tip
	leastBite   = 5.0   // of a screw in the wood under the skin

	// From the middle of a screw to the edge of a slot or of a cord, to a peg, another screw
	// or a bolt, and to a bolt whose head is let in.
	OffSlot = 6.0
	OffPeg  = 12.0
	OffHead = 16.0
)

// screwLengths are those that are sold, mm: from 1/2 to 1 5/8 in.
func screwLengths() []float64 { return []float64{12, 16, 20, 25, 30, 35, 40} }

// row is where the screws of a strip may stand, along it from midship.
type row struct {
	from, to, first float64   // its ends, and from each to its first screw
	ribs            []float64 // middles
	shut            []frame.Zone
}

// alongOutwale is the row of an outwale: clear of mortises, of bolts, and of the pegs of
// the breasthooks.
func alongOutwale(f *frame.Frame, driven joint.Driven) row {
	g := &f.Gunwale
	// The ends are cut off square, so that the inner faces reach farther than the outer ones.
	aft, fore := g.Width/2*math.Tan(g.AftCut), g.Width/2*math.Tan(g.ForeCut)
	r := row{from: g.Aft + aft, to: g.Fore - fore, first: OutwaleEnd}
	for _, m := range g.Mortises {
		lo, hi := m.Ends()
		r.ribs, r.shut = append(r.ribs, m.FromMidship), append(r.shut, frame.Zone{From: lo - OffSlot, To: hi + OffSlot})
	}
	for i := range f.Thwarts {
		for _, at := range f.Thwarts[i].BoltsOn(g) {
			r.keepOff(at, OffPeg)
		}
	}
	for _, s := range f.Seats {
		if s.Hung != nil {
			for _, at := range slices.Concat(s.Hung.Front.Hanger.Bolts[:], s.Hung.After.Hanger.Bolts[:]) {
				r.keepOff(at, OffHead)
			}
		}
	}
	for _, in := range driven.Gunwale[0] {
		r.keepOff(g.Aft-aft+in, OffPeg)
	}
	for _, in := range driven.Gunwale[1] {
		r.keepOff(g.Fore+fore-in, OffPeg)
	}
	return r
}

// alongKeel is the row of the strip under the keel: clear of the lashings of the ribs, and
// of the screws and lashings of the stems' feet.
func alongKeel(f *frame.Frame, driven joint.Driven) row {
	k := &f.Keel
	r := row{from: k.Aft, to: k.Fore, first: KeelEnd, ribs: k.RibMarks}
	for _, at := range k.RibMarks {
		r.keepOff(at, float64(f.Design.Ribs.Width)/2+OffSlot)
	}
	for _, in := range driven.Keel[0] {
		r.keepOff(k.Aft+in, OffPeg)
	}
	for _, in := range driven.Keel[1] {
		r.keepOff(k.Fore-in, OffPeg)
	}
	return r
}

func (r *row) keepOff(at, by float64) {
	r.shut = append(r.shut, frame.Zone{From: at - by, To: at + by})
}

// clear returns the place nearest to another where a screw may stand; that place itself
// where there is none.
func (r *row) clear(at float64) float64 {
	if r.open(at) {
		return at
	}
	best := math.Inf(1)
	try := func(p float64) {
		if math.Abs(p-at) < math.Abs(best-at) && r.open(p) {
			best = p
		}
	}
	for _, z := range r.shut {
		try(z.From)
		try(z.To)
	}
	if math.IsInf(best, 1) {
		return at
	}
	return best
}

// open reports whether a screw may stand at a place.
func (r *row) open(p float64) bool {
	return p >= r.from+r.first && p <= r.to-r.first && !slices.ContainsFunc(r.shut, func(z frame.Zone) bool { return p > z.From && p < z.To })
}

// places are the screws: one in the middle of every bay and one near each end, and more
// where they would stand too far apart.
func (r *row) places() []float64 {
	out := []float64{r.clear(r.from + r.first)}
	last := r.clear(r.to - r.first)
	for i := 1; i < len(r.ribs); i++ {
		bay := r.ribs[i] - r.ribs[i-1]
		n := math.Ceil(bay / MostApart)
		for k := range int(n) {
			at := r.clear(r.ribs[i-1] + bay*(float64(k)+0.5)/n)
			if at-out[len(out)-1] >= leastApart && last-at >= leastApart {
				out = append(out, at)
			}
		}
	}
	return r.filled(append(out, last))
}

// filled puts more screws where neighbors stand too far apart, evenly as far as they may.
func (r *row) filled(all []float64) []float64 {
	out := all[:1:1]
	for _, to := range all[1:] {
		from := out[len(out)-1]
		for to-from > MostApart {
			n := math.Ceil((to - from) / MostApart)
			at := r.clear(from + (to-from)/n)
			if at-from > MostApart || at-from < leastApart { // the clear place before that one
				at = r.before(from + MostApart)
			}
			if at-from < leastApart || to-at < leastApart/2 {
				break
			}
			out, from = append(out, at), at
		}
		out = append(out, to)
	}
	return out
}

// before returns the last clear place up to another.
func (r *row) before(at float64) float64 {
	best := math.Inf(-1)
	for _, p := range append([]float64{at}, r.edges()...) {
		if p <= at && p > best && r.open(p) {
			best = p
		}
	}
	return best
}

func (r *row) edges() (out []float64) {
	for _, z := range r.shut {
		out = append(out, z.From, z.To)
	}
	return out
}

// Mirrored reports whether the screws stand alike fore and aft of midship, to the whole
// millimeter that is told of them.
func (s *Strip) Mirrored() bool {
	for i, at := range s.Screws {
		if math.Round(at) != -math.Round(s.Screws[len(s.Screws)-1-i]) {
			return false
		}
	}
	return len(s.Screws) > 0
}

// screwed puts screws through a strip and the skin into wood so deep, hard or soft: the longest
// that are sold and whose tips stay in it when their heads are sunk.
func (s *Strip) screwed(r row, skin, wood float64, hard bool) {
	s.From, s.To = r.from, r.to
	for _, l := range screwLengths() {
		if l+Sunk <= s.Across+skin+wood-Under {
			s.Screw = l
		}
	}
	if s.Screw+Sunk < s.Across+skin+leastBite {
		s.Screw = 0
		return
	}
	s.Screws, s.Into = r.places(), s.Screw+Sunk-s.Across-skin
	s.Pilot = math.Round(2*fasten.Remembered().Pilot(fasten.Number6Root, hard)) / 2
	for i := 1; i < len(s.Screws); i++ {
		s.Apart = math.Max(s.Apart, s.Screws[i]-s.Screws[i-1])
	}
}
