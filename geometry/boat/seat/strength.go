package seat

import (
	"fmt"
	"math"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/fasten"
	"ribwright/geometry/wood/timber"
)

// What strength is judged by. From memory, unless a comment says otherwise.
const (
	patch      = 300.0  // mm of a rail that a person's weight lies on
	WantFactor = 2.0    // on the modulus of rupture: load duration, wet wood and scatter; the load has its 1.5 already
	uneven     = 0.6    // share of the load on one side
	Sag        = 40.0   // mm that webbing sinks under the person; tighter pulls the rails together harder
	strapHolds = 2300.0 // N that the sewn end of one strap holds, a ninth of what polypropylene webbing of 50 mm breaks at (US specification A-A-59467, 20.9 kN)
	plugSafe   = 3.5    // on wood that shears out
)

// Loads are what a hung seat bears, N, mm and N/mm2.
type Loads struct {
	Person  float64 // the load: 1.5 times the weight
	Kneeler float64 // stress in the front rail when all lies on it
	Sitter  float64 // stress in a rail with half of the load and the webbing's pull
	Pull    float64 // of all webbing together, sideways on each rail
	Strap   float64 // tension in one strap
	Slat    float64 // stress in a slat
	Hanger  float64 // the worst of four
	Bolts   float64 // what its two bolts are asked to bear at most
	Splits  float64 // what splits the gunwale there
	Plug    float64 // what shears the bolts out of the hanger's top, over its safety
	Pry     float64 // pull on each bolt, from the hanger standing inside the gunwale
	Washer  float64 // what the washer under its nut bears
}

// WebPull returns the sideways pull of webbing under an even load, N: a cable of that
// span that sinks so far.
func WebPull(load, span, sag float64) float64 { return load * span / (8 * sag) }

// Weighs returns the load of a seat, N: 1.5 times the weight of those who sit on it.
func (s Seat) Weighs() float64 {
	kg := s.Load
	if kg == 0 {
		kg = JudgedFor
	}
	return LoadFactor * kg * measure.Gravity
}

// Share returns the most that one hanger bears, N: all on one rail, and uneven.
func (s Seat) Share() float64 { return uneven * s.Weighs() }

// Loads works out what a hung seat bears in the gunwale of the design.
//
// Errors: a wood that is not known.
func (s Seat) Loads(d *design.Design) (l Loads, err error) {
	wood, err := d.Wood(s.Wood)
	if err != nil {
		return l, err
	}
	rail, err := d.Wood(d.Gunwale.Species)
	if err != nil {
		return l, err
	}
	h := s.Hung
	p, span := s.Weighs(), max(h.Front.Between, h.After.Between)
	l.Person, l.Hanger = p, s.Share()
	upright, flat := beam.Rectangle(h.Width, h.Depth), beam.Rectangle(h.Depth, h.Width)
	on := beam.Patch(patch / span)
	l.Kneeler = on.Bending(p, span) / upright.Modulus
	l.Sitter = on.Bending(p/2, span) / upright.Modulus
	if h.Bottom == design.Webbing {
		l.Pull = WebPull(p, h.Spreader, Sag)
		l.Strap = math.Hypot(l.Pull, p/2) / float64(h.Along)
		// Between the spreaders, which take the pull, the rail bends sideways.
		l.Sitter += beam.Even().Bending(l.Pull, s.Wide+SpreadWide) / flat.Modulus
	} else {
		l.Slat = beam.Even().Bending(p/float64(h.Along), h.Spreader+h.Width) / beam.Rectangle(SlatWide, SlatThick).Modulus
	}
	l.bolted(h.Front.Hanger, d, wood, rail)
	return l, nil
}

// bolted judges the hanger that bears most: on the front rail, on the heavier side.
func (l *Loads) bolted(h Hanger, d *design.Design, wood, gunwale timber.Species) {
	wide, high := float64(d.Gunwale.Width), float64(d.Gunwale.Height)
	usual := fasten.Remembered()
	// Under a quarter of an inch the NDS takes nothing off for the end of the hanger, as
	// long as it keeps the least distance; what shears out there is looked at by itself.
	bears := func(in timber.Species, deep float64) float64 {
		z, _ := fasten.Single(fasten.Bolt(Bolt),
			fasten.Piece{Bearing: fasten.Bearing(wood.Gravity(), Bolt, 0), Length: Thick},
			fasten.Piece{Bearing: fasten.Bearing(in.Gravity(), Bolt, math.Pi/2), Length: deep}).Design(Bolt, math.Pi/2)
		return z
	}
	// The bolt stands in the block and in what its nut's seat leaves of the gunwale: the epoxy
	// in that counts for nothing. Two cautious sums, of which the better one holds: both as soft
	// as the gunwale, and the block alone, whose glue carries it on to the gunwale.
	l.Bolts = 2 * math.Max(bears(gunwale, wide-LetIn+h.Block), bears(wood, h.Block))
	l.Splits = usual.Splits(math.Min(wide, wide-LetIn+h.Block), high, high-h.Down) // the block makes good what the nut's seat takes, and no more is counted
	l.Plug = 2 * fasten.TearsOut(wood, h.Down, Thick) / plugSafe
	// The hanger's middle stands inside the gunwale's: the bolts hold it back, the
	// gunwale's lower edge is where it turns.
	l.Pry = l.Hanger * (wide/2 + h.Block + Thick/2) / (high - h.Down) / 2
	l.Washer = fasten.Washer(Washer, Hole, gunwale.Crush)
}

// Judge tells whether a seat bears its people.
//
// Errors: a wood that is not known.
func (s Seat) Judge(d *design.Design) (finding.List, error) {
	var out finding.List
	switch {
	case s.Hung != nil:
		l, err := s.Loads(d)
		if err != nil {
			return nil, err
		}
		wood, err := d.Wood(s.Wood)
		if err != nil {
			return nil, err
		}
		s.judgeHung(&out, l, wood)
	case s.Saddle != nil:
		if err := s.judgeSaddle(&out, d); err != nil {
			return nil, err
		}
	default:
		out.Say(s.Name, finding.Practice, "a pad of firm closed-cell foam gives by some tenth of its thickness under a person, which only lowers them")
	}
	return out, nil
}

// judged is a measure with its verdict: the value must reach the limit, or stay under it.
func (s Seat) judged(out *finding.List, what string, m finding.Measure, st finding.Standing, cure string) {
	f := finding.Finding{About: s.Name + ", " + what, Verdict: finding.Holds, Measure: m, Standing: st}
	if m.Margin() < 0 {
		f.Verdict, f.Cure = finding.Weak, cure
	}
	*out = append(*out, f)
}

func stress(v float64, wood timber.Species) finding.Measure {
	return finding.Measure{Value: v, Limit: wood.MOR / WantFactor, Unit: "N/mm2", AtMost: true}
}

func force(v, limit float64) finding.Measure {
	return finding.Measure{Value: math.Round(v), Limit: math.Round(limit), Unit: "N", AtMost: true}
}

func (s Seat) judgeHung(out *finding.List, l Loads, wood timber.Species) {
	h := s.Hung
	deeper := func(stress float64) string {
		return fmt.Sprintf("rails %.0f mm deep (seat.rail_depth), or a stronger wood", math.Ceil(h.Depth*math.Sqrt(max(1, stress*WantFactor/wood.MOR))))
	}
	s.judged(out, "front rail, all on it", stress(l.Kneeler, wood), finding.Arithmetic, deeper(l.Kneeler))
	s.judged(out, "rails, sat on", stress(l.Sitter, wood), finding.Arithmetic, deeper(l.Sitter))
	if h.Bottom == design.Slats {
		s.judged(out, "slats", stress(l.Slat, wood), finding.Arithmetic, "webbing, or a stronger wood")
	} else {
		s.judged(out, "webbing, one strap's end", force(l.Strap, strapHolds), finding.Memory, "a wider seat with more straps (seat.wide)")
	}
	lighter := fmt.Sprintf("a saddle (kind = \"saddle\"), or nobody over %.0f kg on it", math.Floor(l.Person/LoadFactor/measure.Gravity*min(l.Bolts, l.Splits, l.Plug, l.Washer*l.Hanger/l.Pry)/l.Hanger))
	s.judged(out, "bolts of a hanger", force(l.Hanger, l.Bolts), finding.Arithmetic, lighter)
	s.judged(out, "gunwale at the bolts, splitting", force(l.Hanger, l.Splits), finding.Memory, lighter)
	s.judged(out, "hanger's top, over the bolts", force(l.Hanger, l.Plug), finding.Memory, lighter)
	s.judged(out, "nuts of the bolts in the gunwale", force(l.Pry, l.Washer), finding.Estimate, lighter)
}

// Feet says how much room there is for feet under the front edge of a hung seat, and
// warns of what a foot caught there means; none for a seat that is not hung.
func (s Seat) Feet() finding.List {
	if s.Hung == nil {
		return nil
	}
	clear := s.Hung.Clear
	f := finding.Finding{About: s.Name + ", feet", Standing: finding.Arithmetic, Verdict: finding.Caution, Measure: finding.Measure{Value: math.Round(clear), Limit: WantedClear, Unit: "mm"}}
	f.Text = fmt.Sprintf("%.0f mm are clear under the front edge; a bare heel is 117 to 152 mm deep. A foot that catches under a seat holds its owner in a capsized boat: wear slim soles, keep the insteps flat, lash nothing under the seat, and try to get out near shore, capsized, before you rely on it", clear)
	if f.Margin() < 0 {
		f.Cure = fmt.Sprintf("%.0f mm more height, or a saddle between the feet", math.Ceil(WantedClear-clear))
		f.Text += "; large feet do not come out from under so low an edge: " + f.Cure + " is safer"
	}
	return finding.List{f}
}

func (s Seat) judgeSaddle(out *finding.List, d *design.Design) error {
	wood, err := d.Wood(s.Wood)
	if err != nil {
		return err
	}
	board := beam.Even().Bending(s.Weighs(), s.Saddle.Apart) / beam.Rectangle(s.Long, BoardThick).Modulus
	s.judged(out, "top board", stress(board, wood), finding.Arithmetic, "a narrower saddle (seat.wide)")
	out.Say(s.Name, finding.Practice, "stands on the floor slats beside the keel, which spread the load over several ribs: lash it down so that it cannot slide")
	return nil
}
