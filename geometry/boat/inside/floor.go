package inside

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry/boat/seat"
)

// Floor is slats side by side, lashed over the ribs.
type Floor struct {
	Count, Wanted     int
	Wide, Thick, Long float64
	Aft, Fore         float64   // stations of their ends
	Across            []float64 // middles of the slats from the middle line, port positive
	Ribs              []string  // that they lie on
}

// Slats want room between them for water and sand, and no more than a heel goes through.
// Common practice, no source.
const (
	leastGap, mostGap = 12.0, 40.0
	risen             = 30.0 // by how much the ribs may have risen under the outer slats
	past              = 20.0 // of a slat beyond its last rib
)

// floors lays slats under each person and under each seat that stands on them; those that
// meet are one.
func (out *Fit) floors(f Boat) {
	d := f.Design
	if d.Inside.Slats == 0 {
		return
	}
	var spans [][2]float64
	for _, p := range d.Crew {
		w := placed(d, p)
		spans = append(spans, [2]float64{w.aft, w.fore})
	}
	for _, s := range f.Seats { // one that nobody sits on yet stands on slats too
		if s.Hung == nil {
			spans = append(spans, [2]float64{s.At - s.Long/2, s.At + s.Long/2})
		}
	}
	if len(spans) == 0 {
		spans = [][2]float64{{-600, 600}}
	}
	slices.SortStableFunc(spans, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	for i := 0; i < len(spans); i++ {
		s := spans[i]
		for i+1 < len(spans) && spans[i+1][0] < s[1]+2*float64(d.Ribs.Pitch) {
			i++
			s[1] = math.Max(s[1], spans[i][1])
		}
		if fl, ok := floor(f, s[0], s[1]); ok {
			out.Floors = append(out.Floors, fl)
		}
	}
}

// floor lays slats over the ribs from one station to another, as far as the floor is wide
// enough for one.
func floor(f Boat, aft, fore float64) (Floor, bool) {
	in := f.Design.Inside
	fl := Floor{Wanted: in.Slats, Wide: float64(in.SlatWidth), Thick: float64(in.SlatThickness)}
	narrow := math.Inf(1)
	for _, r := range f.Ribs {
		if r.Station < aft-past || r.Station > fore+past {
			continue
		}
		half := f.flat(r, risen)
		if half < fl.Wide {
			continue
		}
		if len(fl.Ribs) == 0 {
			fl.Aft = r.Station - past
		}
		fl.Fore, narrow = r.Station+past, math.Min(narrow, half)
		fl.Ribs = append(fl.Ribs, r.Name)
	}
	if len(fl.Ribs) < 2 {
		return fl, false
	}
	fl.Long = fl.Fore - fl.Aft
	fl.Count = min(in.Slats, max(1, int((2*narrow+leastGap)/(fl.Wide+leastGap))))
	fl.spread(narrow, cheeks(f, fl))
	return fl, true
}

// cheeks lists how far from the middle line the cheeks of saddles stand on a floor.
func cheeks(f Boat, fl Floor) (out []float64) {
	for _, s := range f.Seats {
		if s.Saddle != nil && s.At > fl.Aft && s.At < fl.Fore {
			out = append(out, s.Saddle.Apart/2)
		}
	}
	return out
}

// spread lays the slats as wide apart as floor and gaps allow; where cheeks of a saddle
// stand on them, as wide as puts a slat under each, with fewer slats if it must be.
func (fl *Floor) spread(half float64, cheeks []float64) {
	lay := func(n int, pitch float64) (across []float64) {
		for i := range n {
			across = append(across, pitch*(float64(i)-float64(n-1)/2))
		}
		return across
	}
	most := func(n int) float64 {
		if n < 2 {
			return fl.Wide + mostGap
		}
		return math.Min(fl.Wide+mostGap, (2*half-fl.Wide)/float64(n-1))
	}
	fl.Across = lay(fl.Count, most(fl.Count))
	for n := fl.Count; n > 1; n-- {
		for pitch := most(n); pitch >= fl.Wide+leastGap; pitch-- {
			if across := lay(n, pitch); fl.bears(across, cheeks) {
				fl.Count, fl.Across = n, across
				return
			}
		}
	}
}

// bears reports whether slats lie under all cheeks.
func (fl *Floor) bears(across, cheeks []float64) bool {
	for _, y := range cheeks {
		under := func(slat float64) bool { return math.Abs(slat-y) <= (fl.Wide-seat.BoardThick)/2 }
		if !slices.ContainsFunc(across, under) {
			return false
		}
	}
	return true
}
