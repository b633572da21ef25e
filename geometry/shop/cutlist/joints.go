package cutlist

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/curve/stick"
	"ribwright/geometry/design"
	"ribwright/geometry/wood/timber"
)

// Joint is a scarf in a stick, its middle along the stock from midship, mm.
type Joint struct{ Middle, Length float64 }

// apart is how many scarf lengths lie between two splices of one member. Source:
// FAA AC 43.13-1B, ch. 1, of wooden spars.
const apart = 3.0

// hard is the share of a batten's sharpest bend beyond which no scarf lies, unless there is
// no other place and the wood bears that bend for years. Our own rule for the usual advice
// to keep scarfs out of the hardest curve: a batten that bends alike all along has none.
const hard = 0.5

// battenRun gives a batten its scarf rule: between ribs, so that no lashing lies on
// a feather edge, and where it bends least.
func battenRun(f *frame.Frame, species string, line *curve.Track, aft, fore, depth float64) *Run {
	run := &Run{Aft: aft - frame.EndTrim, Fore: fore + frame.EndTrim, Scarf: f.Design.Gunwale.ScarfSlope * depth}
	var zones []frame.Zone
	half := float64(f.Design.Ribs.Width) / 2
	for _, r := range f.Ribs {
		at := line.Length(r.Station)
		zones = append(zones, frame.Zone{From: at - half, To: at + half})
	}
	zones = append(zones, frame.Zone{From: run.Aft, To: aft + frame.EndTrim}, frame.Zone{From: fore - frame.EndTrim, To: run.Fore})
	run.Rooms = rooms(frame.Merged(append(slices.Clone(zones), hardCurves(line, 0)...)), run.Scarf)
	run.Borne = rooms(frame.Merged(append(zones, hardCurves(line, bears(f.Design, species, depth))...)), run.Scarf)
	return run
}

// rooms are the gaps between zones that hold the length.
func rooms(zones []frame.Zone, length float64) []frame.Zone {
	var out []frame.Zone
	for i := 1; i < len(zones); i++ {
		if z := (frame.Zone{From: zones[i-1].To, To: zones[i].From}); z.To-z.From >= length {
			out = append(out, z)
		}
	}
	return out
}

// hardCurves are the stretches in which a line bends more than its share of its
// sharpest bend, and more than the wood bears, 1/mm.
func hardCurves(line *curve.Track, bears float64) []frame.Zone {
	const step = 20.0 // mm
	a, b := line.Ends()
	n := int(math.Ceil((b - a) / step))
	bends, most := make([]float64, n+1), 0.0
	for i := range bends {
		bends[i] = bendAt(line, a+(b-a)*float64(i)/float64(n))
		most = math.Max(most, bends[i])
	}
	var out []frame.Zone
	for i, k := range bends {
		if most > 1e-9 && k > math.Max(hard*most, bears) {
			x := a + (b-a)*float64(i)/float64(n)
			out = append(out, frame.Zone{From: line.Length(math.Max(a, x-step)), To: line.Length(math.Min(b, x+step))})
		}
	}
	return out
}

// bears is the bend, 1/mm, that a stick of a wood as deep as given bears for years: its
// outer faces then carry their lasting share of the wood's strength. None for a wood that
// is not known.
func bears(d *design.Design, species string, depth float64) float64 {
	wood, err := d.Wood(species)
	if err != nil || depth <= 0 {
		return 0
	}
	return 2 * timber.LastingShare / (wood.ColdRatio() * depth)
}

// bendAt is the curvature of a line at a station, 1/mm, over the length that a scarf
// feels: a batten's bend has a peak at every rib, far shorter than any scarf.
func bendAt(line *curve.Track, x float64) float64 {
	const h = 15.0 // mm either way
	a, b := line.Ends()
	x = math.Min(math.Max(x, a+h), b-h)
	y1, z1 := line.Slopes(x - h)
	y2, z2 := line.Slopes(x + h)
	turn := stick.Turn(geometry.Point{X: y1, Y: z1}, geometry.Point{X: y2, Y: z2})
	return turn / (line.Length(x+h) - line.Length(x-h))
}

// joints places the scarfs of a run so that no piece is longer than the stock,
// those of the design first. taken are the middles of scarfs in the sticks beside
// it. From aft forward each piece is made as long as it can be. Scarfs keep out of what is
// steamed where they can, for heat opens most glues, and out of its hardest curve where
// they can.
//
// Errors: no place within the rules.
func (r *Run) joints(stock float64, taken []Joint) (out []Joint, err error) {
	tries := [][]frame.Zone{r.Rooms, r.Borne}
	if len(r.Heat) > 0 {
		tries = [][]frame.Zone{r.cool(r.Rooms), r.cool(r.Borne), r.Rooms, r.Borne}
	}
	for _, rooms := range tries {
		try := *r
		try.Rooms = rooms
		if out, err = try.within(stock, taken); err == nil {
			break
		}
	}
	return out, err
}

// within places the scarfs in the rooms of a run.
func (r *Run) within(stock float64, taken []Joint) ([]Joint, error) {
	var out []Joint
	for _, m := range r.Fixed {
		out = append(out, Joint{m, r.Scarf})
	}
	slices.SortStableFunc(out, func(a, b Joint) int { return cmp.Compare(a.Middle, b.Middle) })
	for {
		pieces := r.pieces(out)
		at := slices.IndexFunc(pieces, func(z frame.Zone) bool { return z.To-z.From > stock+1e-6 })
		if at < 0 {
			return out, nil
		}
		from, to := pieces[at].From, pieces[at].To
		m, ok := r.place(from, to, stock, out, taken)
		if !ok {
			return nil, fmt.Errorf("no place for a scarf of %.0f mm between %.0f and %.0f mm from midship that keeps out of mortises, ribs, hard curves and %.0f scarf lengths from the next", r.Scarf, from, math.Min(to, from+stock), apart)
		}
		out = slices.Insert(out, at, Joint{m, r.Scarf})
	}
}

// pieces are the stretches of the stock that the joints leave, from aft; each reaches
// past the middle of a joint by half its length.
func (r *Run) pieces(joints []Joint) []frame.Zone {
	var out []frame.Zone
	from := r.Aft
	for _, j := range joints {
		out = append(out, frame.Zone{From: from, To: j.Middle + j.Length/2})
		from = j.Middle - j.Length/2
	}
	return append(out, frame.Zone{From: from, To: r.Fore})
}

// place finds the farthest middle of a scarf that ends a piece begun at from.
func (r *Run) place(from, to, stock float64, own, taken []Joint) (float64, bool) {
	reach := math.Min(from+stock, to) - r.Scarf/2
	if m, ok := r.placeUpTo(math.Min(reach, to+r.Scarf/2-leastPiece), from, own, taken); ok {
		return m, true
	}
	return r.placeUpTo(reach, from, own, taken)
}

// leastPiece is the length that a scarf leaves of a stick where it can, mm: shorter
// ends are hard to hold while planing. Common practice, no source.
const leastPiece = 400.0

func (r *Run) placeUpTo(reach, from float64, own, taken []Joint) (float64, bool) {
	for i := len(r.Rooms) - 1; i >= 0; i-- {
		z := r.Rooms[i]
		const step = 5.0 // mm
		for m := math.Min(z.To-r.Scarf/2, reach); m >= z.From+r.Scarf/2 && m > from+r.Scarf; m -= step {
			if clear(m, r.Scarf, apart, own) && clear(m, r.Scarf, 1, taken) {
				return m, true
			}
		}
	}
	return 0, false
}

// clear reports whether a scarf keeps so many of its lengths from all the others.
func clear(middle, length, lengths float64, others []Joint) bool {
	for _, o := range others {
		if math.Abs(middle-o.Middle)-(length+o.Length)/2 < lengths*length-1e-6 {
			return false
		}
	}
	return true
}

// Piece is one length to crosscut: a whole stick or a part of a scarfed one.
type Piece struct {
	Stick  int // number in the list of sticks
	Number int // of the piece in its stick, from aft, from 1
	Of     int // pieces of the stick
	Length float64
}

// Cutting is how a stick is made up of pieces.
type Cutting struct {
	Pieces []Piece
	Joints []Joint
}

// maker splits sticks for stock of a length, staggering scarfs with those placed
// before in the sticks beside.
type maker struct {
	sticks []Stick
	placed map[string][]Joint
	roomy  bool // pieces leave some of the stock to spare where that takes no more scarfs
}

// split returns the pieces of stick i from stock of the given length.
//
// Errors: a stick that is too long and may not or cannot be scarfed.
func (m *maker) split(i int, stock float64) (Cutting, error) {
	s := &m.sticks[i]
	switch {
	case s.Length <= stock && (s.Run == nil || len(s.Run.Fixed) == 0):
		return Cutting{Pieces: []Piece{{i, 1, 1, s.Length}}}, nil
	case s.Run == nil:
		return Cutting{}, fmt.Errorf("is %.0f mm long and must be one piece; the longest board gives %.0f mm between its checked ends", s.Length, stock)
	}
	taken := m.placed[s.Run.Beside]
	joints, err := s.Run.joints(stock, taken)
	for more := ample; m.roomy && err == nil && len(joints) > 0 && more >= Checked; more /= 2 {
		if short, none := s.Run.joints(stock-more, taken); none == nil && len(short) == len(joints) {
			joints = short
			break
		}
	}
	if err != nil {
		return Cutting{}, fmt.Errorf("is %.0f mm long, the longest board %.0f mm: %w", s.Length, stock, err)
	}
	m.placed[s.Run.Beside] = append(m.placed[s.Run.Beside], joints...)
	out := Cutting{Joints: joints}
	for k, z := range s.Run.pieces(joints) {
		out.Pieces = append(out.Pieces, Piece{i, k + 1, len(joints) + 1, z.To - z.From})
	}
	return out, nil
}
