package bend

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/stringer"
	"ribwright/geometry/curve"
	"ribwright/geometry/curve/stick"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/timber"
)

// Stringer is how one stringer is bent and wrung in the boat, where it is worst.
// Stresses are those of clear wood that stays elastic, N/mm2.
type Stringer struct {
	Number   int
	Edgewise float64 // along its flat, over its width
	Flatwise float64 // off its flat, over its depth
	Corner   float64 // of both together, at the corner where they meet
	Twist    float64 // of its flat in one bay, radians
	Shear    float64 // from the twist
	Bays     []Bay   // from the after end to the forward one

	Hot     []Hot   // from aft; nil where dry wood bears all of it
	Minutes float64 // in steam, where it is steamed
}

// Hot is a stretch of a stringer from one of its ties to another that is bent or wrung
// harder than dry wood bears, so that it is steamed before it is bent in.
type Hot struct {
	Bays  frame.Zone // stations of the two ties, mm
	Bent  frame.Zone // stations from the first to the last tie where it bends harder; the zero Zone where it is only wrung
	Along frame.Zone // Bays along the straight stock from midship, mm
	Twist float64    // of the flat in the bay that is wrung most, radians; 0 where dry wood bears it
}

// atEnd is how many bays from a stem on are looked at as an end: there the stick leaves
// the ribs' slope.
const atEnd = 3

// ends returns the number of the first bay that is no longer the after end, and of the
// first that is the forward end.
func (s Stringer) ends() (aft, fore int) {
	n := len(s.Bays)
	return min(atEnd, n/2), max(n-atEnd, n/2)
}

// Bay is a stringer from one of its ties to the next: ribs, and the stems at both ends.
type Bay struct {
	From, To   float64 // stations, mm
	Off, Along float64 // curvatures where the two together stress a corner most, 1/mm
	Edgewise   float64 // the greatest stress along its flat, N/mm2
	Flatwise   float64 // off its flat
	Twist      float64 // of its flat over the bay, radians
	Shear      float64 // from it, N/mm2
	Turn       float64 // of the stick's run from end to end of the bay, radians
}

// looks is at how many places a bay is looked at. The bend within one is nearly
// straight, so the worst of them leaves the worst by under 2 % (TestLooks).
const looks = 16

// stringers judges every bay of every stringer about both axes and in twist.
func (r *Report) stringers() error {
	d := r.Frame.Design
	wood, err := d.Wood(d.Stringers.Species)
	if err != nil {
		return err
	}
	b := batten{wood, float64(d.Stringers.Width), float64(d.Stringers.Depth)}
	for _, s := range r.Frame.Stringers {
		out := b.inPlace(s, r.Frame.Ribs)
		out.Minutes = timber.SteamTime(b.depth, d.Bending.Moisture, d.Bending.Stock == design.KilnDried)
		r.judgeStringer(b, out)
		out.Hot = b.hot(out, s.Line)
		r.Stringers = append(r.Stringers, out)
	}
	return nil
}

// inPlace works out how a stringer is bent.
func (b batten) inPlace(s frame.Stringer, ribs []frame.Rib) Stringer {
	out := Stringer{Number: s.Number, Bays: make([]Bay, 0, len(ribs)+1)}
	from, end := s.Stick.Ends()
	for k := range len(ribs) + 1 {
		to := end
		if k < len(ribs) {
			to = ribs[k].Station
		}
		bay := b.bay(s.Stick, from, to)
		out.Bays, from = append(out.Bays, bay), to
		out.Edgewise, out.Flatwise = math.Max(out.Edgewise, bay.Edgewise), math.Max(out.Flatwise, bay.Flatwise)
		out.Corner = math.Max(out.Corner, b.stress(bay.Off, bay.Along))
		out.Twist, out.Shear = math.Max(out.Twist, bay.Twist), math.Max(out.Shear, bay.Shear)
	}
	return out
}

func (b batten) bay(s *stick.Stick, from, to float64) Bay {
	out := Bay{From: from, To: to}
	var mostOff, mostAlong, corner float64
	for k := range looks + 1 {
		off, along := s.About(from + (to-from)*float64(k)/looks)
		off, along = math.Abs(off), math.Abs(along)
		mostOff, mostAlong = max(mostOff, off), max(mostAlong, along)
		if at := b.stress(off, along); at > corner {
			corner, out.Off, out.Along = at, off, along
		}
	}
	out.Edgewise, out.Flatwise = b.stress(0, mostAlong), b.stress(mostOff, 0)
	_, begins, _ := s.Run(from)
	_, ends, _ := s.Run(to)
	out.Turn = stick.Turn(begins, ends)
	_, turn := s.Flat((from + to) / 2)
	out.Twist = math.Abs(turn) * (to - from)
	out.Shear = beam.TwistStress(b.width, b.depth, b.wood.MOE*beam.Rigidity, math.Abs(turn))
	return out
}

const (
	// shearStrength is the strength of wood in shear along the grain over its MOR: 0.09 to
	// 0.13 in the woods of the table, of which the least is taken. From memory of the Wood
	// Handbook, table 5-3.
	shearStrength = 0.09
)

// judgeStringer notes the worst bay along the boat and the worst of those at the last
// two ribs of each end, where the stick leaves the ribs' slope; then the twist, where it
// matters.
func (r *Report) judgeStringer(b batten, s Stringer) {
	name := fmt.Sprintf("stringer %d", s.Number)
	worst := func(bays []Bay) (w Bay) {
		for _, y := range bays {
			if b.stress(y.Off, y.Along) > b.stress(w.Off, w.Along) {
				w = y
			}
		}
		return w
	}
	n := len(s.Bays)
	aft, fore := s.ends()
	if mid := s.Bays[aft:fore]; len(mid) > 0 {
		w := worst(mid)
		r.note(b.judge(name+", between its ends", w.Off, w.Along))
	}
	w := worst(append(append([]Bay(nil), s.Bays[:aft]...), s.Bays[fore:]...))
	r.note(b.judge(name+", ends", w.Off, w.Along))
	r.judgeTwist(name, b, s)
	for side, run := range [2][2]Bay{{s.Bays[0], s.Bays[1]}, {s.Bays[n-1], s.Bays[n-2]}} {
		r.judgeRunOut(name+", "+[2]string{"stern", "bow"}[side], run[0], run[1])
	}
}

// hot returns the stretches of a stringer that are steamed: runs of bays that follow each
// other, each bent or wrung too hard for dry wood.
func (b batten) hot(s Stringer, line *curve.Track) (out []Hot) {
	for _, y := range s.Bays {
		v := b.judge("", y.Off, y.Along).Verdict
		bent, wrung := v != finding.Dry && v != finding.Eases, b.wrung(y)
		if !bent && !wrung {
			continue
		}
		if n := len(out); n == 0 || out[n-1].Bays.To != y.From {
			out = append(out, Hot{Bays: frame.Zone{From: y.From}})
		}
		h := &out[len(out)-1]
		h.Bays.To = y.To
		h.Along = frame.Zone{From: line.Length(h.Bays.From), To: line.Length(h.Bays.To)}
		if bent {
			if h.Bent == (frame.Zone{}) {
				h.Bent.From = y.From
			}
			h.Bent.To = y.To
		}
		if wrung {
			h.Twist = math.Max(h.Twist, y.Twist)
		}
	}
	return out
}

// wrung reports whether the flat turns more in a bay than dry wood bears.
func (b batten) wrung(y Bay) bool { return y.Shear > timber.AssemblyShare*shearStrength*b.wood.MOR }

// Heat lists the steamed stretches of each stringer by its number, along the straight
// stock from midship, mm.
func (r *Report) Heat() map[int][]frame.Zone {
	out := map[int][]frame.Zone{}
	for _, s := range r.Stringers {
		for _, h := range s.Hot {
			out[s.Number] = append(out[s.Number], h.Along)
		}
	}
	return out
}

// judgeRunOut notes an end that turns harder from the last rib to the stem than looks fair
// after the bay before.
func (r *Report) judgeRunOut(about string, out, before Bay) {
	most := stringer.Fair(before.Turn, before.To-before.From, out.To-out.From)
	if out.Turn <= most {
		return
	}
	r.note(finding.Finding{About: about, Verdict: finding.Noted, Standing: finding.Common,
		Cure: fmt.Sprintf("from the last rib to the stem it turns by %.1f degrees, where %.1f would look fair: set the last rib nearer the stem, or give the stringer another place (stringers.at)",
			out.Turn*180/math.Pi, most*180/math.Pi)})
}

// judgeTwist notes a twist that dry wood does not bear. How far hot wood may be wrung is
// not known, so there is no limit beside it.
func (r *Report) judgeTwist(name string, b batten, s Stringer) {
	if !slices.ContainsFunc(s.Bays, b.wrung) {
		return
	}
	r.note(finding.Finding{About: name + ", twist", Verdict: finding.Steam, Standing: finding.Memory,
		Cure: fmt.Sprintf("its flat turns by %.0f degrees in one bay: wring it hot there, or let it ride on one edge and plane a seat for it", s.Twist*180/math.Pi)})
}
