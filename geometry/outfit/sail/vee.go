package sail

import (
	"cmp"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wood/beam"
)

// A vee stands across the boat on two spars that part from one foot, each that much
// aside for its height: 44 degrees from spar to spar. Our own choice: the more it opens
// the lower its middle lies, and the more room it wants between the gunwales.
const veeOpens = 0.40

var veeSlope = math.Hypot(1, veeOpens) // of a spar, its length over its height

// veePlan is a vee's cloth, so high and at its foot twice so wide as its spars stand apart
// there, mm: its sides lie on the spars, which have parted below it.
func veePlan(high, apart float64) Plan {
	p := Plan{Rig: design.Vee, Names: []string{"port foot", "port head", "starboard head", "starboard foot"},
		Edges: []Edge{{"port side", false}, {"head", false}, {"starboard side", false}, {"foot", false}}}
	for i, name := range []string{"port spar", "starboard spar"} {
		side := float64(1 - 2*i)
		s := Spar{Name: name, From: geometry.Pt(side*apart, 0), To: geometry.Pt(side*(apart+veeOpens*high), high), Share: 0.5, Hinge: true}
		p.Spars = append(p.Spars, s)
	}
	port, starboard := p.Spars[0], p.Spars[1]
	p.Corners = []geometry.Point{port.From, port.To, starboard.To, starboard.From}
	return p
}

// veeArea is a vee's cloth of a height in mm, m2, and veeHigh its height for an area.
func veeArea(high, apart float64) float64 { return (2*apart + veeOpens*high) * high / 1e6 }

func veeHigh(area, apart float64) float64 {
	return (math.Sqrt(apart*apart+veeOpens*area*1e6) - apart) / veeOpens
}

// rolled is a vee of which a share of the height is still spread, from the foot up.
func (p Plan) rolled(share float64) Plan {
	return veePlan(share*p.Corners[1].Y, p.Corners[0].X)
}

// What a vee packs to where nothing is said, mm, and into how many pieces a spar comes
// apart at most where the program chooses its size. Our own choice: a piece lies beside
// a pack, and each joint more is a place to work loose.
const (
	packs  = 1200.0
	pieces = 2
)

// veeMost is the largest vee that the program chooses where nothing is said of its pack, m2:
// with more of it before the wind a canoe buries her bow or broaches. Common practice has 1
// to 1.5, no source.
const veeMost = 1.5

// Packed is how long the pieces of a vee may be, mm.
func (f *Fit) Packed() float64 { return cmp.Or(float64(f.Sail.Pack), packs) }

// Pieces is how many pieces a spar comes apart into.
func (f *Fit) Pieces(s Spar) int {
	if !s.Hinge {
		return 1
	}
	return max(1, int(math.Ceil(s.Length()/f.Packed()-1e-9)))
}

// most is the largest sail that the program chooses, m2: of a vee what its spars pack to.
//
// Errors: a vee that packs too short.
func (f *Fit) most() (float64, error) {
	if f.Sail.Rig != design.Vee {
		return ceiling, nil
	}
	foot, apart := f.Tack-f.Mast.StepZ, f.Spread(f.Tack)
	of := func(pack float64) float64 {
		return veeArea(math.Max(0, (pieces*pack-sparEnds)/veeSlope-foot), apart)
	}
	switch a := of(f.Packed()); {
	case a < smallest:
	case f.Sail.Pack == 0:
		return math.Min(veeMost, a), nil
	default:
		return math.Min(ceiling, a), nil
	}
	least := ((veeHigh(smallest, apart)+foot)*veeSlope + sparEnds) / pieces
	return 0, fmt.Errorf("a vee whose spars pack to %.0f mm in %d pieces has only %.2f m2; accepted: %.0f mm or more, or an area of your own with more pieces (outfit.sail.pack)",
		f.Packed(), pieces, of(f.Packed()), math.Ceil(least/10)*10)
}

// A sleeve joins two pieces of a spar: a tube of aluminum with a wall of so many mm that
// reaches four diameters over each. It is asked to carry half of what a plain alloy
// (6060 T66) yields at, 160 N/mm2. From memory.
const (
	sleeveWall    = 2.0
	sleeveReach   = 4.0
	sleeveWorking = 80.0
	aluminum      = 2700.0 // kg/m3
)

// SleeveLong is how long a sleeve is, mm.
func (f *Fit) SleeveLong() float64 { return math.Ceil(2*sleeveReach*f.Mast.Diameter/10) * 10 }

// Sleeves is how many sleeves the spars have.
func (f *Fit) Sleeves() int {
	n := 0
	for _, s := range f.Plan.Spars {
		n += f.Pieces(s) - 1
	}
	return n
}

// sleeveMass is one sleeve's, kg.
func (f *Fit) sleeveMass() float64 {
	return math.Pi * (f.Mast.Diameter + sleeveWall) * sleeveWall * f.SleeveLong() * aluminum * 1e-9
}

// SleeveStress is what a sleeve bears if it had to take all that a spar bears at the
// partner, N/mm2.
func (f *Fit) SleeveStress() float64 {
	out := f.Mast.Diameter + 2*sleeveWall
	modulus := (beam.Round(out).Inertia - beam.Round(f.Mast.Diameter).Inertia) / (out / 2)
	return f.Mast.Moment * 1000 / float64(f.Mast.Count) / modulus
}

// Run is what limits a sail before the wind: it presses the bow down, and it turns the
// boat across the wind.
type Run struct {
	Bow    float64 // wind, m/s, in which the bow's freeboard is down to its least
	Broach float64 // wind, m/s, past which the paddle no longer holds the boat before it
	Least  float64 // mm
}

// Most is the lesser of both winds, m/s.
func (r Run) Most() float64 { return math.Min(r.Bow, r.Broach) }

// bowLeast is the freeboard at the bow that a sail before the wind must leave, mm. From memory.
const bowLeast = 120.0

// How far the boat rolls and yaws in a following sea, and what a paddle at the stern
// holds against it without a stroke, N. Our own choice.
const (
	runRoll  = 10 * math.Pi / 180
	runYaw   = 15 * math.Pi / 180
	runHolds = 50.0
)

// fiercest is the wind up to which a limit is looked for, m/s.
const fiercest = 40.0

// run finds the winds that press the bow of a boat before it down too far, or turn it.
func (f *Fit) run() error {
	f.Run = nil
	if f.Sail.Rig != design.Vee {
		return nil
	}
	f.Run = &Run{Bow: upTo(func(v float64) bool {
		p, err := f.pressed(v)
		return err == nil && f.Boat.Hull.Freeboard(p).Least >= bowLeast
	}), Broach: upTo(func(v float64) bool {
		p, err := f.pressed(v)
		return err == nil && f.Turning(p, v) <= 0
	}), Least: bowLeast}
	return nil
}

// upTo is the wind up to which something holds, m/s.
func upTo(holds func(v float64) bool) float64 {
	lo, hi := 0.0, fiercest
	for range 24 {
		if mid := (lo + hi) / 2; holds(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// push is the force of the full sail before a wind, N.
func (f *Fit) push(v float64) float64 { return Pressure(v) * Force * f.Plan.Area() }

// pressed is how the boat lies when a wind from astern pushes the sail: its force over
// the middle of what resists is a moment that trims the boat by the bow.
func (f *Fit) pressed(v float64) (float.Plane, error) {
	l := f.Load
	l.At.X += f.push(v) * (f.Tack + f.Plan.Center().Y - f.Hull.Center.Y) / (f.Load.Mass * measure.Gravity)
	p, _, err := f.Boat.Hull.Balance(l, f.Water.Density, 0, &f.Rest.Plane)
	return p, err
}

// Turning is the moment about the middle of what resists sideways that turns a boat
// across the wind, over what holds it, N mm; what it lies on is given. A boat that rolls
// carries the sail's force aside, which turns it. One that yaws feels the force across:
// ahead of the lateral resistance it pulls the bow back before the wind, behind it not.
// A bow pressed down brings the resistance forward, so that the sail holds less.
func (f *Fit) Turning(p float.Plane, v float64) float64 {
	side := profile(f.Boat.Hull, p).Center
	lead := f.Mast.At - side.X
	high := f.Tack + f.Plan.Center().Y - side.Y
	return f.push(v)*(high*math.Sin(runRoll)-lead*math.Sin(runYaw)) - runHolds*f.steers(side)
}

// steers is how far behind the lateral resistance the aftmost of the crew steers, mm.
func (f *Fit) steers(side geometry.Point) float64 {
	arm := 0.0
	for _, c := range f.Boat.Crew {
		arm = math.Max(arm, side.X-c.Load().At.X)
	}
	return arm
}

// judgeRun tells of a sail that only runs.
func (f *Fit) judgeRun() {
	if f.Run == nil {
		return
	}
	n, s := &f.Findings, f.Plan.Spars[0]
	n.Warn("running", finding.Estimate, "before the wind the bow is down to %.0f mm of freeboard at %s m/s, and rolling %.0f deg and yawing %.0f deg a paddle at the stern that bears %.0f N no longer keeps her from broaching past %s m/s; crew and gear go aft. A vee only runs: it cannot bring you back to windward. Half of it is taken as heeling the boat when she broaches",
		f.Run.Least, Over(f.Run.Bow), deg(runRoll), deg(runYaw), runHolds, Over(f.Run.Broach))
	count := f.Pieces(s)
	n.Say("packing", finding.Arithmetic, "each spar of %.0f mm comes apart into %d of %.0f mm; it packs to %.0f mm", s.Length(), count, s.Length()/float64(count), f.Packed())
	if f.Sleeves() > 0 {
		v := finding.Holds
		if f.SleeveStress() > sleeveWorking {
			v = finding.Weak
		}
		n.Judge(v, "sleeves", finding.Estimate, "a sleeve of aluminum tube, %.0f mm inside, %.0f mm wall, %.0f mm long, joins two pieces; with all that the spar bears at the partner it carries %.0f N/mm2 of the %.0f asked of it", f.Mast.Diameter, sleeveWall, f.SleeveLong(), f.SleeveStress(), sleeveWorking)
	}
}

func deg(a float64) float64 { return a * 180 / math.Pi }
