package inside

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
)

// Brace is a board for both feet on two rails, which has holes to move it by.
type Brace struct {
	Who                    string
	Leg                    float64 // seat back to sole, leg straight
	At                     float64 // station of its after face, in the middle of its holes
	Bar, Tall, Thick       float64 // the board: across the boat, upward, along it; it stands on the rails
	Rail, RailWide, Across float64 // one of two rails: its length along the boat, width, and middle from the middle line
	RailTall, RailAft      float64 // its height, and the station of its after end
	Lean                   float64 // of the ribs under the rails, radians: they rise outward by so much
	HoleUp, HoleAt         float64 // its holes: over the inboard edge of its underside, and the station of the middle one
	KneeFoot               float64 // the knees' feet over the rails' undersides: clear of the slats
	Floor                  float64 // height of the floor there, over the baseline
	Room                   float64 // across the boat between the ribs at the board's lower edge; less than Bar where it does not fit
}

// Footbraces move by holes 25 mm apart, 75 mm either way. Common practice, no source.
const (
	Step  = 25.0
	Holes = 7
)

// Sizes of a footbrace, mm. Our own choice.
const (
	barTall, barThick, barMost, barLeast = 90.0, 15.0, 420.0, 160.0
	railWide                             = 20.0
	sideRoom                             = 12.0 // between the board's ends and the ribs
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

// Off is what is planed off the outboard edge of a rail's underside, running out to nothing
// inboard, so that the rail stands plumb on ribs that rise, mm.
func (b Brace) Off() float64 { return b.RailWide * math.Tan(b.Lean) }

// lean is how steeply the upper faces of the ribs under a brace's rails rise across the rails,
// from one edge to the other, in the middle between the least and the most, radians.
func (f Boat) lean(b Brace) float64 {
	least, most := math.Inf(1), math.Inf(-1)
	for _, r := range f.Ribs {
		if r.Station < b.RailAft || r.Station > b.RailAft+b.Rail {
			continue
		}
		in, out := f.faceAt(r, b.Across-b.RailWide/2), f.faceAt(r, b.Across+b.RailWide/2)
		lean := math.Atan2(out.Y-in.Y, out.X-in.X)
		least, most = math.Min(least, lean), math.Max(most, lean)
	}
	if math.IsInf(least, 0) {
		return 0
	}
	return (least + most) / 2
}

// brace places a person's footbrace; false where no board of a foot's width fits.
func brace(f Boat, p design.Person, w place) (Brace, bool) {
	b, ok := f.brace(w.sole, 1)
	b.Who, b.Leg = p.Name, Leg(p)
	return b, ok
}

// Facing places a footbrace for soles at a station of one who faces aft; false where no
// board of a foot's width fits.
func (o Fit) Facing(f *frame.Frame, sole float64) (Brace, bool) {
	in := framed(f)
	b, ok := in.brace(sole, -1)
	if ok {
		b.Across = o.clear(b)
		b.Lean = in.lean(b)
	}
	return b, ok
}

// brace places a footbrace for soles at a station, its knees on the far side of its board:
// forward, 1, or aft, -1.
func (f Boat) brace(sole, way float64) (Brace, bool) {
	at := sole
	if way < 0 {
		at -= Step * (Holes - 1) / 2 // as far as it goes, where the boat is narrower
	}
	r := f.nearest(at)
	b := Brace{At: sole, Tall: barTall, Thick: barThick, RailWide: railWide, Floor: f.Hull.FloorZ(sole)}
	b.KneeFoot = kneePlay + float64(f.Design.Inside.Floor())
	b.HoleUp, b.HoleAt = b.KneeFoot+KneeUp, b.At+way*(b.Thick+KneeHole)
	b.RailTall = b.HoleUp + 1.5*Peg
	b.Room = 2 * f.flat(r, b.RailTall)
	b.Bar = math.Min(barMost, math.Floor((b.Room-2*sideRoom)/10)*10)
	near, end := way*f.Ribs[0].Station, way*f.Ribs[len(f.Ribs)-1].Station
	if way < 0 {
		near, end = end, near
	}
	if b.Bar < barLeast || way*b.HoleAt+Step*(Holes-1)/2+holeEnd > end+past || way*sole < near {
		return b, false
	}
	b.Rail = math.Max(2*float64(f.Design.Ribs.Pitch)+2*past, Step*(Holes-1)+2*60)
	b.RailAft = way*(math.Min(way*b.HoleAt+b.Rail/2, end+past)-b.Rail/2) - b.Rail/2
	b.Across = b.Bar/2 - 2*railWide
	return b, true
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
