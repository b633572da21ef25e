package sail

import (
	"cmp"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/outfit/clip"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wood/beam"
)

// Fit is a boat fitted with a sail. Lengths in mm, stations from midship, forward
// positive, heights above the baseline.
type Fit struct {
	Boat     aboard.Boat
	Sail     design.Sail
	Water    water.Water
	Asked    bool // the area was given, not worked
	Plan     Plan
	Cloth    Cloth   // how the sail is cut
	States   []State // full sail first, then each reef
	Stands   []Stand // in the order of Places
	Mast     Mast
	Bed      Bed // spreads the mast's load
	Board    Board
	Hold     clip.Pull // on the clip that is pulled hardest
	Hull     Profile   // the hull's under water
	Tack     float64   // height of the tack
	Rest     float.Hydrostatics
	Load     float.Load // all up, the crew in the middle
	Wind     Wind       // with the crew where the design has them
	Run      *Run       // the vee's other limits
	Findings finding.List
	Ranges   []finding.Range
}

// State is one size of the sail.
type State struct {
	Name   string
	Plan   Plan
	Area   float64 // m2
	Center geometry.Point
	Arm    float64 // from the lateral resistance to the center, m
	Limits []Limit // by place of the crew
}

// Wind is what to do when, m/s.
type Wind struct {
	Reef []float64 // to take in full sail, then each reef; the last is to stop
	Stop float64   // to have no sail up
}

// Places lists where the crew may sit, in the order of tables.
func Places() []Place { return []Place{Middle, Inside, Out} }

// Chosen is where the design has the crew.
func (f *Fit) Chosen() Place {
	if f.Sail.Hike {
		return Out
	}
	return Inside
}

// The limits of a sail worked from the wind, m2: a cruising canoe's is 4.1, and a
// class of larger ones stops at 5.1.
const (
	smallest = 0.5
	ceiling  = 4.1
	large    = 5.1
)

// New fits a boat with the sail of its design.
//
// Errors: a mast outside the boat; a boat that does not stay upright or afloat with
// the rig aboard; a wood that is not known.
func New(b aboard.Boat, s design.Sail, w water.Water) (*Fit, error) {
	f := &Fit{Boat: b, Sail: s, Water: w, Asked: s.Area > 0}
	if err := f.stepMast(); err != nil {
		return nil, err
	}
	if err := f.choose(); err != nil {
		return nil, err
	}
	f.tabulate()
	f.judge()
	return f, nil
}

// areaStep is what a sail's area is rounded down to, m2.
const areaStep = 0.05

// choose works out the sail that is asked for, or the largest that is carried in the
// wind that the sailor wants.
func (f *Fit) choose() error {
	if f.Asked {
		return f.try(f.Sail.Area, true)
	}
	most, err := f.most()
	if err != nil {
		return err
	}
	lo, hi := smallest, most
	if err := f.try(most, false); err != nil {
		return err
	}
	if f.carried() >= f.Sail.Wind {
		lo = most
	}
	for lo < most && hi-lo > 0.01 {
		mid := (lo + hi) / 2
		if err := f.try(mid, false); err != nil {
			return err
		}
		if f.carried() >= f.Sail.Wind {
			lo = mid
		} else {
			hi = mid
		}
	}
	// The search took the rig's weight from one turn only: settled, it may carry a
	// step less.
	for steps := math.Floor(lo/areaStep + 1e-6); ; steps-- {
		if err := f.try(steps*areaStep, true); err != nil {
			return err
		}
		if f.carried() >= f.Sail.Wind || (steps-1)*areaStep < smallest-1e-9 {
			return nil
		}
	}
}

// carried is the wind in which full sail is carried by the crew as chosen.
func (f *Fit) carried() float64 {
	reef := f.States[0].Limits[f.Chosen()].Reef
	if f.Run != nil {
		reef = math.Min(reef, f.Run.Most()/Gust)
	}
	return reef
}

// mastShare is where the mast stands, as a share of the length before midship: the
// longer the foot, the farther forward, but a vee's spars need room between the
// gunwales. Common practice, no source.
func mastShare(r design.Rig) float64 {
	return map[design.Rig]float64{design.Vee: 0.20, design.LegOfMutton: 0.24, design.Spritsail: 0.30, design.Lug: 0.30}[r]
}

// PartnerThick is the partner's thickness, mm.
const PartnerThick = 34.0

// stepMast puts the mast midway between two ribs.
func (f *Fit) stepMast() error {
	ribs := f.Boat.Frame.Ribs
	want := cmp.Or(float64(f.Sail.MastAt), f.Boat.Frame.Hull.Length*mastShare(f.Sail.Rig))
	first, last := ribs[0].Station, ribs[len(ribs)-1].Station
	if want < first || want > last {
		return fmt.Errorf("the mast at %.0f mm stands outside the ribs, from %.0f to %.0f mm; accepted: a station between them (outfit.sail.mast_at)", want, first, last)
	}
	f.Mast.At = math.Inf(1)
	for i := 1; i < len(ribs); i++ {
		if mid := (ribs[i-1].Station + ribs[i].Station) / 2; math.Abs(mid-want) < math.Abs(f.Mast.At-want) {
			f.Mast.At = mid
		}
	}
	inner, outer := f.Boat.GunwaleTop(f.Mast.At)
	top := math.Max(inner.Z, outer.Z)
	if inner.Y < 90 {
		return fmt.Errorf("at the mast, %.0f mm from midship, the gunwales stand only %.0f mm apart; accepted: 180 mm or more; move outfit.sail.mast_at towards midship", f.Mast.At, 2*inner.Y)
	}
	if wide := f.Spread(top) + 60; f.Sail.Rig == design.Vee && inner.Y < wide {
		return fmt.Errorf("at the foot of the vee, %.0f mm from midship, the gunwales stand only %.0f mm apart; accepted: %.0f mm or more; move outfit.sail.mast_at towards midship", f.Mast.At, 2*inner.Y, 2*wide)
	}
	f.Mast.StepZ = f.Boat.Floor(f.Mast.At) + BedThick
	f.Mast.PartnerZ = top + PartnerThick/2
	f.Tack = top + tackOver(f.Sail.Rig)
	return nil
}

// Spread is how far the middle of each spar of a vee stands from the boat's middle
// line at a height over the baseline, mm: side by side at the step, and apart from
// there as the sail's edges are.
func (f *Fit) Spread(z float64) float64 {
	return 0.75*math.Max(f.Mast.Diameter, 45) + (z-f.Boat.Floor(f.Mast.At))*veeOpens
}

// tackOver is how high the sail's tack stands over the gunwale, mm: a boom must clear
// heads that duck. Common practice, no source.
func tackOver(r design.Rig) float64 {
	return map[design.Rig]float64{design.Vee: 60, design.Spritsail: 220, design.LegOfMutton: 300, design.Lug: 300}[r]
}

// try works out everything for an area, m2; only the full sail unless all.
func (f *Fit) try(area float64, all bool) error {
	f.hoist(area)
	f.Cloth = f.Plan.cut(f.Sail)
	wood, err := f.Boat.Frame.Design.Wood(f.Sail.Spars)
	boards, other := f.Boat.Frame.Design.Wood(f.Sail.Boards)
	ribs, third := f.Boat.Frame.Design.Wood(f.Boat.Frame.Design.Ribs.Species)
	gunwale, fourth := f.Boat.Frame.Design.Wood(f.Boat.Frame.Design.Gunwale.Species)
	if err := cmp.Or(err, other, third, fourth); err != nil {
		return err
	}
	// The rig's own weight waits for its spars, and they for the moment it stands:
	// a second turn settles it to well under a percent.
	f.Mast.Diameter = math.Max(f.Mast.Diameter, 45)
	f.Mast.Count = 1
	if f.Sail.Rig == design.Vee {
		f.Mast.Count = 2
	}
	turns := 1
	if all {
		turns = 3
	}
	for range turns {
		if err := f.turn(area, all); err != nil {
			return err
		}
		most := 0.0
		for _, s := range f.Stands {
			most = math.Max(most, s.Most.N)
		}
		force := Gust * most / f.States[0].Arm
		f.Mast.bury(force, f.Tack+f.Plan.Center().Y)
		f.Mast.size(wood)
		f.hoist(area) // thicker spars of a vee stand farther apart
		for i := range f.Plan.Spars {
			f.Plan.Spars[i] = f.Plan.Spars[i].sized(force, wood, f.Mast.Diameter)
		}
		f.Mast.Long = f.mastLong()
		f.layBed(boards, ribs)
		f.bearBoard(force, beam.Working(boards))
		f.Hold = clip.Bears(f.Boat.Frame.Gunwale, math.Max(f.Bed.Lift/(PartnerClips/2), f.Board.Pinch), boards, gunwale)
	}
	f.Cloth = f.Plan.cut(f.Sail)
	return nil
}

// mastLong is from the step's bottom to the head.
func (f *Fit) mastLong() float64 {
	if f.Sail.Rig == design.Vee {
		return 0
	}
	return math.Ceil((f.Tack-f.Mast.StepZ+f.Plan.Mast)/10) * 10
}

// turn floats the boat with the rig as it is known now and finds the winds.
func (f *Fit) turn(area float64, all bool) error {
	f.Mast.Long = f.mastLong()
	items, err := f.Items()
	if err != nil {
		return err
	}
	fixed := []float.Load{f.Boat.Light(), weight.Sum(f.Boat.Gear)}
	for _, i := range items {
		fixed = append(fixed, i.Load())
	}
	base := float.Total(fixed...)
	f.Load = float.Total(base, seated(f.Boat, Middle))
	plane, _, err := f.Boat.Hull.Settle(f.Load, f.Water.Density)
	if err != nil {
		return fmt.Errorf("with the rig aboard and the crew at their seats: %w", err)
	}
	f.Rest = f.Boat.Hull.Upright(plane, f.Load, f.Water.Density)
	f.Hull = profile(f.Boat.Hull, plane)
	f.layBoard(area)
	f.Stands = nil
	for _, p := range Places() {
		if !all && p != f.Chosen() {
			f.Stands = append(f.Stands, Stand{Place: p})
			continue
		}
		s, err := stand(f.Boat, base, p, f.Water.Density)
		if err != nil {
			return fmt.Errorf("with the rig aboard and the crew %s: %w", p, err)
		}
		f.Stands = append(f.Stands, s)
	}
	f.sizes(all)
	return f.run()
}

func (f *Fit) sizes(all bool) {
	f.States = nil
	for r := range f.Sail.Reefs + 1 {
		if r > 0 && !all {
			return
		}
		p := f.Plan.Reefed(r)
		s := State{Name: stateName(r), Plan: p, Area: p.Area(), Center: p.Center()}
		s.Arm = (f.Tack + s.Center.Y - f.Resists().Y) / 1000
		for _, stand := range f.Stands {
			l := Limit{}
			if len(stand.Moments) > 0 {
				l = stand.limit(f.broadside(s.Area), s.Arm)
			}
			s.Limits = append(s.Limits, l)
		}
		f.States = append(f.States, s)
	}
}

func stateName(r int) string {
	return [...]string{"full sail", "one reef", "two reefs", "three reefs"}[min(r, 3)]
}

// broadside is what of a sail can heel the boat, m2: all of a fore-and-aft sail; of
// the vee, which stands across the boat and spills when she broaches, half. From
// memory, no source.
func (f *Fit) broadside(area float64) float64 {
	if f.Sail.Rig == design.Vee {
		return area / 2
	}
	return area
}
