package rowing

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wood/timber"
	"ribwright/geometry/wording"
)

// Fit is a boat fitted out for rowing. Stations in mm from midship, forward
// positive; heights above the baseline unless they say otherwise.
type Fit struct {
	Boat  aboard.Boat
	Row   design.Row
	Water water.Water
	Body  Body
	Who   string // rows

	Span      float64
	Oar       Oar
	Ruled     Oar        // what the rule gives for the span
	Width     float64    // over the finished gunwales' outer edges at the rowlocks
	Bars      [2]float64 // stations of the bars, the forward one first
	Clear     bool       // whether their clips find room between rib heads and cross pieces
	GunwaleZ  float64    // their upper edges there
	LockX     float64
	LockZ     float64
	SeatX     float64 // the middle of the seat
	SeatOver  float64 // over the floor
	SeatZ     float64
	Legs      Legs
	FootX     float64 // station of the heels
	Cheek     Cheek
	Foot      inside.Brace // the footrest
	FootFits  bool
	BarThick  float64
	Strength  Strength
	Load      float.Load // boat, rower, gear and frame
	Rest      float.Hydrostatics
	Fault     *float.Fault // set when it does not float upright; what depends on the water then has no meaning
	Standing  float.Standing
	WaterLock float64 // of the rowlock over the water, mm
	Level     Stroke  // upright
	HighSide  Stroke  // rolled, the rowlock that rises
	LowSide   Stroke  // the one that falls
	Reaches   bool    // the blades reach the water on all three
	Ranges    []finding.Range
	Findings  finding.List
}

// The measures of frame and seat, mm. Those without a word are common practice, no source.
const (
	usualSpan = 48 * 25.4
	SeatWide  = 200.0 // of the seat along the boat: 6.5 to 8 in, a skiff builder
	lockAft   = 305.0 // of the rowlocks behind the seat's after edge: 12 in, a skiff builder
	LockRise  = 45.0  // of the oar's middle over the gunwale, the frame's boards lying on it
	lockOver  = 180.0 // of the rowlock over the seat: 6 to 8 in
	Pitch     = 280.0 // between the two bars
	BarWide   = 45.0
	BoardWide = 75.0
	BarSpare  = 45.0 // of the bar beyond the rowlock
	PinHole   = 13.0
	massAhead = 220.0 // of a seated person's weight before the back of the buttocks (from scans)
	roll      = 5.0 * math.Pi / 180
	clearHand = 40.0 // half the height of a hand on a grip
	loom      = 25.0 // half the thickness of the oar
	overLegs  = 25.0 // that the hands should pass over the legs
)

// New fits a boat out for a rower of given measures, or for the heaviest of its people.
// The others stay ashore: the rower alone is aboard, with the gear.
//
// Errors: a span that lies inside the gunwales, an oar shorter than the span, a
// place where there is no boat; a boat that cannot carry the rower.
func New(b aboard.Boat, row design.Row, w water.Water) (*Fit, error) {
	f := &Fit{Boat: b, Row: row, Water: w}
	f.takeRower()
	f.Boat.People, f.Boat.Crew = nil, nil
	wood, err := b.Frame.Design.Wood(row.Species)
	if err != nil {
		return nil, err
	}
	if err := f.level(wood); err != nil {
		return nil, err
	}
	if err := f.float(); err != nil {
		return nil, err
	}
	f.judge()
	return f, nil
}

// takeRower finds out who rows: whoever is described, else the heaviest of the boat's
// people, who asks most of it.
func (f *Fit) takeRower() {
	r := &f.Row
	f.Who = "the rower described"
	if r.Stature == 0 && r.Mass == 0 && len(f.Boat.People) > 0 {
		p := slices.MaxFunc(f.Boat.People, func(a, b design.Person) int { return cmp.Compare(a.Mass, b.Mass) })
		f.Who, r.Mass, r.Stature = wording.OneLine(wording.Clip(p.Name, 40)), p.Mass, p.Stature
		if r.Body = design.Woman; p.Mass > (medianWoman.mass+medianMan.mass)/2 {
			r.Body = design.Man // the body whose median is nearer
		}
	}
	f.Body = BodyOf(r.Body, float64(r.Stature), r.Mass)
}

// level puts the seat where the boat floats level, or where the design has it.
func (f *Fit) level(wood timber.Species) error {
	if f.Row.SeatAt != 0 {
		return f.place(float64(f.Row.SeatAt), wood)
	}
	far := f.Boat.Frame.Hull.Length * 0.25
	lo, hi := -far, far // a seat farther forward brings the bow down
	for range 24 {
		mid := (lo + hi) / 2
		if err := f.place(mid, wood); err != nil {
			return err
		}
		p, _, err := f.Boat.Hull.Balance(f.Load, f.Water.Density, 0, nil)
		var fault *float.Fault
		if errors.As(err, &fault) && fault.Outcome == float.Sinks {
			return err
		}
		if err == nil && p.Trim > 0 || err != nil && f.Load.At.X < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return f.place(math.Round((lo+hi)/2/5)*5, wood)
}

// place works out everything for the middle of the seat at a station.
func (f *Fit) place(seat float64, wood timber.Species) error {
	f.SeatX = seat
	f.LockX = seat - SeatWide/2 - lockAft
	if aft := f.Boat.Frame.Ribs[0].Station; f.LockX-Pitch < aft {
		return fmt.Errorf("the seat at %.0f mm puts the rowlocks at %.0f mm, past the last rib at %.0f mm; accepted: outfit.row.seat_at from %.0f mm on",
			seat, f.LockX, aft, aft+Pitch+SeatWide/2+lockAft)
	}
	f.Clear = true
	f.Bars = [2]float64{f.barAt(f.LockX + Pitch/2), f.barAt(f.LockX - Pitch/2)}
	f.measureWidth()
	if err := f.chooseOar(); err != nil {
		return err
	}
	f.BarThick, f.Strength = thickness(func(thick float64) Strength {
		s := bear(f.Oar, f.Span, f.Width, f.Apart(), f.Row.Pull, BarWide, thick, wood)
		// The bar that is nearer to the rowlock bears more of what presses it down.
		more := 2 * math.Max(f.Bars[0]-f.LockX, f.LockX-f.Bars[1]) / f.Apart()
		s.Upright, s.Sag, s.ClipLift = s.Upright*more, s.Sag*more, s.ClipLift*more
		return s
	})
	floor := f.Boat.Floor(seat)
	f.LockZ = f.GunwaleZ + LockRise
	f.SeatOver = cmp.Or(float64(f.Row.Seat), math.Max(40, math.Round(f.LockZ-lockOver-floor)))
	f.SeatZ = floor + f.SeatOver
	f.Legs = f.Body.Stretched(f.SeatOver)
	f.FootX = f.Back() - f.Legs.Heel
	f.sit()
	items, err := f.Items()
	if err != nil {
		return err
	}
	rower := float.Load{Mass: f.Body.Mass, At: geometry.Point3{X: f.Back() - massAhead, Z: f.SeatZ + weight.BenchShare*f.Body.Sitting}}
	loads := []float.Load{rower}
	for _, i := range items {
		loads = append(loads, i.Load())
	}
	f.Load = f.Boat.Load(loads...)
	return nil
}

// Apart is how far the bars stand apart, BoardLong the length of the boards that join them.
func (f *Fit) Apart() float64     { return f.Bars[0] - f.Bars[1] }
func (f *Fit) BoardLong() float64 { return f.Apart() + 130 }

// Back is the station of the back of the rower, who faces aft.
func (f *Fit) Back() float64 { return f.SeatX + SeatWide/2 }

// measureWidth finds the greatest width over the gunwales under the frame.
func (f *Fit) measureWidth() {
	f.Width, f.GunwaleZ = 0, 0
	for _, x := range []float64{f.Bars[1], f.LockX, f.Bars[0]} {
		outer := f.Boat.Rail(x)
		f.Width = math.Max(f.Width, 2*outer.Y)
		f.GunwaleZ = math.Max(f.GunwaleZ, outer.Z)
	}
}

// leastReach is how far a rowlock must stand outside the gunwale, so that its board
// lies beside it, mm.
const leastReach = BoardWide/2 + 5

func (f *Fit) chooseOar() error {
	f.Span = cmp.Or(float64(f.Row.Span), math.Max(usualSpan, math.Ceil((f.Width+2*leastReach)/10)*10))
	if f.Span < f.Width+2*leastReach {
		return fmt.Errorf("a span of %.0f mm between the rowlocks is too little for gunwales %.0f mm apart; accepted: %.0f mm or more, %.0f mm (%.0f in) is usual",
			f.Span, f.Width, math.Ceil(f.Width+2*leastReach), usualSpan, usualSpan/25.4)
	}
	f.Ruled = ForSpan(f.Span)
	f.Oar = f.Ruled
	if f.Row.Oar != 0 {
		f.Oar = Given(float64(f.Row.Oar), f.Span)
	}
	if f.Oar.Length <= f.Span || f.Oar.Outboard() <= f.Oar.Inboard {
		return fmt.Errorf("oars of %.0f mm are too short for a span of %.0f mm; accepted: more than %.0f mm, and %.0f mm by the rule",
			f.Oar.Length, f.Span, math.Max(f.Span, 2*f.Oar.Inboard), f.Ruled.Length)
	}
	return nil
}

// float sets the boat on the water and follows the handles.
//
// Errors: those of a curve of levers.
func (f *Fit) float() error {
	p, _, err := f.Boat.Hull.Settle(f.Load, f.Water.Density)
	errors.As(err, &f.Fault)
	f.Rest = f.Boat.Hull.Upright(p, f.Load, f.Water.Density)
	f.WaterLock = f.Rest.Plane.Above(geometry.Point3{X: f.LockX, Z: f.LockZ})
	over, rise := f.LockZ-f.SeatZ, f.Span/2*math.Sin(roll)
	f.Level, _ = stroke(f.Oar, f.WaterLock, over)
	f.HighSide, f.Reaches = stroke(f.Oar, f.WaterLock+rise, over) // and then on the others too
	f.LowSide, _ = stroke(f.Oar, f.WaterLock-rise, over)
	if f.Fault != nil {
		return nil
	}
	c, err := f.Boat.Hull.Curve(f.Load, f.Water.Density, float.Fine)
	f.Standing = c.Standing(f.Load.Mass, f.Body.Mass, f.Rest)
	return err
}

// OverLegs returns the least clearance of the hands over thighs and knees on the
// way back, rolled to that side, mm.
func (f *Fit) OverLegs() float64 {
	return f.LowSide.Recover - clearHand - math.Max(f.Body.Thigh, f.Legs.KneeTop)
}

// OverGunwale returns the least clearance of the oar over the gunwale's top, mm: the
// oar rises inward from the rowlock as the blade is over the water's own height.
func (f *Fit) OverGunwale() float64 {
	slope := (f.LowSide.Recover - (f.LockZ - f.SeatZ)) / f.Oar.Inboard
	return LockRise + math.Min(slope*f.Strength.Reach, slope*(f.Strength.Reach+f.Boat.Frame.Gunwale.Width)) - loom
}

// Finish returns how far the oar can swing past square before the grip meets the belly, radians.
func (f *Fit) Finish() float64 {
	room := (f.Back() - f.Body.Belly) - f.LockX
	return math.Asin(math.Max(-1, math.Min(1, room/f.Oar.Inboard)))
}
