// Package inside is what is fitted in a boat for the people in it: floor slats under
// them, a backrest behind them and a footbrace at the length of their leg. Units: mm, kg.
package inside

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
)

// Fit is all of it.
type Fit struct {
	Wood   string
	Floors []Floor // from aft forward
	Braces []Brace // a row for each person who has one, in the order of the crew
	Backs  []Back
}

// Floor is slats side by side, lashed over the ribs.
type Floor struct {
	Count, Wanted     int
	Wide, Thick, Long float64
	Aft, Fore         float64   // stations of their ends
	Across            []float64 // middles of the slats from the middle line, port positive
	Ribs              []string  // that they lie on
}

// Brace is a board for both feet on two rails, which has holes to move it by.
type Brace struct {
	Who                    string
	Leg                    float64 // seat back to sole, leg straight
	At                     float64 // station of its after face, in the middle of its holes
	Bar, Tall, Thick       float64 // the board: across the boat, upward, along it; it stands on the rails
	Rail, RailWide, Across float64 // one of two rails: its length along the boat, width, and middle from the middle line
	RailTall, RailAft      float64 // its height, and the station of its after end
	HoleUp, HoleAt         float64 // its holes: over its underside, and the station of the middle one
	KneeFoot               float64 // the knees' feet over the rails' undersides: clear of the slats
	Floor                  float64 // height of the ribs' upper faces there, over the baseline
	Room                   float64 // across the boat between the ribs at the board's lower edge; less than Bar where it does not fit
}

// Back is two bars to lean on, one over the other.
type Back struct {
	Who                          string
	At, Low, Across, Tall, Thick float64 // station of its fore face; lower edge over the floor; over both bars
	Bar                          float64 // height of one of them
	Gunwale                      float64 // between the gunwales there
	Rib                          string  // round whose heads its loops are tied
	RibAt                        float64 // its station
	Floor                        float64 // as of a brace
}

// Where people sit and reach, mm. The weight of one who sits comes down some 220 mm
// forward of the back, as the design file has it; a kneeling person reaches from the toes
// to the knees. Knees a little bent, a leg is 0.93 to 0.97 of its length. Common practice,
// no source.
const (
	backFromWeight = 220.0
	kneesBent      = 0.95
	toes, knees    = 500.0, 350.0
)

// Footbraces move by holes 25 mm apart, 75 mm either way. Common practice, no source.
const (
	Step  = 25.0
	Holes = 7
)

// Leg is the functional length of a leg, seat back to sole with the leg straight, mm:
// 0.676 of the stature less 57 mm, within 32 mm for two people of three (ANSUR II, 2012,
// 6068 persons). A person whose stature is not known has that of the mass.
func Leg(p design.Person) float64 {
	return 0.676*stature(p) - 57
}

func stature(p design.Person) float64 {
	if p.Stature > 0 {
		return float64(p.Stature)
	}
	return weight.Sitting(p) / 0.525
}

// place is what a person takes up along the boat, mm: the back where one leans on
// something, the soles, and the floor that is needed.
type place struct {
	leans, braces   bool
	back, sole      float64
	aft, fore, seat float64
}

// ahead is how far forward the person wants room, the footbrace in its foremost hole.
func (w place) ahead() float64 {
	if !w.braces {
		return w.fore
	}
	return math.Max(w.fore, w.sole+Step*(Holes-1)/2)
}

// placed is where a person sits, facing forward.
func placed(d *design.Design, p design.Person) place {
	at := d.WeightAt(p)
	if p.Posture == design.Kneeling {
		return place{aft: at - toes, fore: at + knees}
	}
	on, _ := d.SeatOf(p)
	high := float64(on.Height)
	reach := kneesBent * Leg(p)
	w := place{leans: true, braces: true, back: at - backFromWeight, seat: high}
	w.sole = w.back + math.Sqrt(math.Max(0, reach*reach-high*high))
	w.aft, w.fore = w.back-60, w.sole-60
	if p.Posture == design.Bench {
		w.aft = at
	}
	return w
}

// Boat is what people and their fittings are in: a finished frame, or a sketch of one.
type Boat struct {
	Design  *design.Design
	Hull    *hull.Hull
	Gunwale seat.Gunwale
	Ribs    []Rib // from aft forward
	Seats   []seat.Seat
}

// Rib is one that floor slats may lie on.
type Rib struct {
	Name string
	hull.Section
}

// Of works out what the design of a frame has inside.
func Of(f *frame.Frame) Fit { return framed(f).Fit() }

func framed(f *frame.Frame) Boat {
	b := Boat{Design: f.Design, Hull: f.Hull, Gunwale: &f.Gunwale, Seats: f.Seats}
	for _, r := range f.Ribs {
		b.Ribs = append(b.Ribs, Rib{r.Name, r.Section})
	}
	return b
}

// Fit works out what a boat has inside.
func (f Boat) Fit() Fit {
	d := f.Design
	out := Fit{Wood: d.InsideWood()}
	out.floors(f)
	for _, p := range d.Crew {
		w := placed(d, p)
		if d.Inside.Backrest && w.leans {
			out.Backs = append(out.Backs, back(f, p, w))
		}
		if d.Inside.Footbrace && w.braces {
			if b, ok := brace(f, p, w); ok {
				b.Across = out.clear(b)
				out.Braces = append(out.Braces, b)
			}
		}
	}
	return out
}

// clear is where a brace's rails lie down beside the floor slats, their middles from the
// middle line: in the outermost gap that is wide enough and under the board, else where
// they are, on the slats.
func (f Fit) clear(b Brace) float64 {
	const play = 4
	best := 0.0
	for _, fl := range f.Floors {
		if fl.Fore < b.RailAft || fl.Aft > b.RailAft+b.Rail {
			continue
		}
		for i := 1; i < fl.Count; i++ {
			y := (fl.Across[i-1] + fl.Across[i]) / 2
			if gap := fl.Across[i] - fl.Across[i-1] - fl.Wide; gap >= b.RailWide+play && y+b.RailWide/2 <= b.Bar/2 {
				best = math.Max(best, y)
			}
		}
	}
	if best >= b.Bar/4 {
		return best
	}
	return b.Across
}

// Reach returns the stations between which the people of a design sit, kneel and stretch
// their legs; false when it has nobody.
func Reach(d *design.Design) (aft, fore float64, ok bool) {
	for i, p := range d.Crew {
		w := placed(d, p)
		from, to := w.aft, w.ahead()
		if i == 0 {
			aft, fore = from, to
		}
		aft, fore = math.Min(aft, from), math.Max(fore, to)
	}
	return aft, fore, len(d.Crew) > 0
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
	slices.SortFunc(spans, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
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
		half := f.flat(r, risen)
		if r.Station < aft-past || r.Station > fore+past || half < fl.Wide {
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

// flat is how far from the middle line a rib's upper face has risen by so much, mm, to
// 0.01 mm.
func (f Boat) flat(r Rib, by float64) float64 {
	out := -float64(f.Design.Ribs.Thickness) / 2
	low := r.Face(0, out).Y
	from, to := 0.0, r.Half.Length()
	for to-from > 0.01 {
		if mid := (from + to) / 2; r.Face(mid, out).Y > low+by {
			to = mid
		} else {
			from = mid
		}
	}
	return r.Face(to, out).X
}

// nearest returns the rib nearest to a station.
func (f Boat) nearest(x float64) Rib {
	best := f.Ribs[0]
	for _, r := range f.Ribs {
		if math.Abs(r.Station-x) < math.Abs(best.Station-x) {
			best = r
		}
	}
	return best
}

// Sizes of what people lean on and push against, mm. Our own choice.
const (
	barTall, barThick, barMost, barLeast  = 90.0, 15.0, 420.0, 160.0
	railWide                              = 20.0
	sideRoom                              = 12.0 // between the board's ends and the ribs
	backLow, backTall, backThick, backBar = 110.0, 130.0, 10.0, 60.0
	backWide                              = 340.0
)

// The knees of a footbrace, mm: one stands against the inboard side of each rail, forward
// of the board, and the peg goes through both. Our own choice; a peg stands 1.5 diameters
// from every edge.
const (
	Peg      = 8.0
	Knee     = 90.0      // its two legs, up the board and along the rail
	KneeHole = 30.0      // from the board to the hole, along the rail
	KneeUp   = 1.5 * Peg // the hole over the knee's foot
	kneePlay = 1.0       // a knee off the slats and off its rail
	holeEnd  = 5 * Peg   // from the last hole to the rail's end
)

// KneeAcross is how far the middle of a knee stands from the middle line, mm.
func (b Brace) KneeAcross() float64 { return b.Across - b.RailWide - kneePlay }

// brace places a person's footbrace; false where no board of a foot's width fits.
func brace(f Boat, p design.Person, w place) (Brace, bool) {
	r := f.nearest(w.sole)
	b := Brace{Who: p.Name, Leg: Leg(p), At: w.sole, Tall: barTall, Thick: barThick, RailWide: railWide, Floor: f.Hull.FloorZ(w.sole)}
	b.KneeFoot = kneePlay
	if f.Design.Inside.Slats > 0 {
		b.KneeFoot += float64(f.Design.Inside.SlatThickness)
	}
	b.HoleUp, b.HoleAt = b.KneeFoot+KneeUp, b.At+b.Thick+KneeHole
	b.RailTall = b.HoleUp + 1.5*Peg
	b.Room = 2 * f.flat(r, b.RailTall)
	b.Bar = math.Min(barMost, math.Floor((b.Room-2*sideRoom)/10)*10)
	first, last := f.Ribs[0].Station, f.Ribs[len(f.Ribs)-1].Station
	if b.Bar < barLeast || b.HoleAt+Step*(Holes-1)/2+holeEnd > last+past || w.sole < first {
		return b, false
	}
	b.Rail = math.Max(2*float64(f.Design.Ribs.Pitch)+2*past, Step*(Holes-1)+2*60)
	b.RailAft = math.Min(b.HoleAt+b.Rail/2, last+past) - b.Rail
	b.Across = b.Bar/2 - 2*railWide
	return b, true
}

func back(f Boat, p design.Person, w place) Back {
	inner := f.Gunwale.EdgeAt(w.back, -float64(f.Design.Gunwale.Width)/2, 0)
	r := f.nearest(w.back)
	return Back{Rib: r.Name, RibAt: r.Station, Who: p.Name, At: w.back, Low: w.seat + backLow, Across: math.Min(backWide, 2*inner.Y-60), Tall: backTall, Thick: backThick, Bar: backBar,
		Gunwale: 2 * inner.Y, Floor: f.Hull.FloorZ(w.back)}
}
