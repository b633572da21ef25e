// Package course plans a course: what each builder does on which day, who has the boiler
// when, what the teacher prepares, and what is left for later where the days do not reach.
package course

import (
	"strings"

	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/design"
	"ribwright/geometry/fabric"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/trial/bend"
)

// Operation is a part of the work on one boat that is done in one go.
type Operation struct {
	Name      string
	Hours     float64 // by its builder
	Practiced float64 // hours by an experienced woodworker
	At        Machine
	Whole     bool // wet glue and hot wood are not left for the night
	After     []After
}

// After is an operation that is done before, and how many hours by the clock the next one then
// waits: glue sets and wood dries by night too.
type After struct {
	Name  string
	Hours float64
}

// Machine is what all builders share.
type Machine string

// The machines.
const (
	Bench  Machine = ""
	Saw    Machine = "rip saw"
	Boiler Machine = "boiler"
)

// Hours of waiting, as the order of work in a build book tells them in words. Common practice
// for a heated workshop, no source; what the maker of a glue or a coating says comes first.
const (
	overnight   = 12.0
	day         = 24.0
	settled     = 3 * day           // ribs that dry for some days
	damp        = 2*day - overnight // heads that were steamed, before they are glued: two nights
	betweenCoat = 4.0
	cured       = 7 * day // a coating, before the water
)

// The operations, in the order of the build.
const (
	patterns   = "print and tape the patterns"
	sawing     = "rip and crosscut the sticks"
	scarfing   = "scarf sticks and glue wide parts"
	planing    = "plane the sticks"
	blocks     = "glue the gunwales' blocks"
	gluing     = "glue the gunwales"
	mortises   = "mortise the gunwales and cut their ends"
	ends       = "make stems and breasthooks"
	setup      = "set up the gunwales"
	ready      = "mark and ready the ribs"
	forms      = "saw the forms"
	firstRib   = "steam and bend the first rib"
	ribs       = "steam and bend the ribs"
	pegging    = "fit, true and peg the ribs"
	battens    = "fit keel and stringers"
	hotEnds    = "steam and fit stringers whose ends are bent hot"
	lashing    = "lash the frame"
	smoothing  = "smooth the frame"
	oiling     = "oil the frame, coat "
	loops      = "tie the loops on the oiled frame"
	skin       = "stretch and sew the skin"
	coating    = "brush on coat "
	fitGlue    = "glue what is fitted"
	fitShape   = "shape what is fitted"
	fitting    = "fit out the boat"
	firstWater = hours.FirstWater
	outfits    = "make and try outfits"
	rigging    = hours.RigBox // once for a whole course
)

// boat is what the work on one boat hangs on.
type boat struct {
	*bend.Report
	needs *materials.Needs
}

// Of lists the operations of a boat in the order of the build. Every counted work is part of
// one of them.
func Of(b *bend.Report, n *materials.Needs, work []hours.Work, s hours.Skill) []Operation {
	of := boat{b, n}
	own, practiced := map[string]float64{}, map[string]float64{}
	for _, w := range work {
		name := of.operation(w)
		own[name] += w.Hours(s)
		practiced[name] += w.Hours(hours.Experienced)
	}
	var out []Operation
	for _, o := range of.all() {
		name, share := of.counted(o.Name)
		o.Hours, o.Practiced = own[name]*share, practiced[name]*share
		out = append(out, o)
	}
	return linked(out)
}

// counted is under which name the hours of an operation are counted, and its share of them.
func (b boat) counted(name string) (string, float64) {
	first, hot := 1/float64(max(1, len(b.Frame.Ribs))), b.hot()
	switch {
	case name == firstRib:
		return ribs, first
	case name == ribs:
		return ribs, 1 - first
	case name == hotEnds:
		return battens, hot
	case name == battens:
		return battens, 1 - hot
	case strings.HasPrefix(name, oiling):
		return oiling, 1.0 / materials.OilCoats
	case strings.HasPrefix(name, coating):
		return coating, 1 / float64(b.needs.Coating.Count)
	}
	return name, 1
}

// hot is the share of keel and stringers whose ends are steamed.
func (b boat) hot() float64 {
	n := 0.0
	for _, s := range b.Stringers {
		if len(s.Hot) > 0 {
			n += 2
		}
	}
	return n / float64(1+2*len(b.Frame.Stringers))
}

// operation is what a counted work is part of.
func (b boat) operation(w hours.Work) string {
	switch w.Stage {
	case hours.Loft:
		return patterns
	case hours.Saw:
		return among(w.Name, sawing, map[string]string{hours.Scarf: scarfing, hours.Staves: scarfing, hours.PlaneSticks: planing})
	case hours.Gunwale:
		return among(w.Name, mortises, map[string]string{hours.Sheer: gluing, hours.GluePlies: gluing, hours.PlanePlies: gluing,
			hours.Gauges: blocks, hours.TrimBlocks: blocks, hours.GlueBlocks: blocks})
	case hours.Ends:
		return ends
	case hours.Setup:
		return setup
	case hours.Bend:
		return among(w.Name, ribs, map[string]string{hours.RigBox: rigging, hours.ReadyRibs: ready, hours.TaperHeads: ready, hours.SawForms: forms, hours.FitRibs: pegging})
	case hours.Lash:
		return among(w.Name, lashing, map[string]string{hours.Battens: battens, hours.CrossPieces: b.crossPieces()})
	case hours.Oil:
		return b.onFrame(w)
	case hours.Skin:
		return skin
	case hours.Coat:
		return coating
	case hours.Outfit:
		return outfits
	}
	return onBoat(w)
}

func among(work, usual string, others map[string]string) string {
	if o := others[work]; o != "" {
		return o
	}
	return usual
}

// crossPieces are fitted in setting up where nothing else holds the shape.
func (b boat) crossPieces() string {
	if b.Boat.Why != nil {
		return setup
	}
	return lashing
}

// onFrame is work on the frame before it is covered: webbing comes on the dry oil.
func (b boat) onFrame(w hours.Work) string {
	switch {
	case w.Name == hours.OilWood:
		return oiling
	case w.Kit == "", w.Kit == fittings.Seats, outside.Named(kit.Kit{Name: w.Kit, Own: true}):
		return smoothing
	}
	return loops
}

// onBoat is work on what is fitted to the boat, most of which is made beside it.
func onBoat(w hours.Work) string {
	if w.Name == hours.FirstWater {
		return firstWater
	}
	_, name, _ := strings.Cut(w.Name, ": ")
	return among(name, fitting, map[string]string{hours.GlueLayers: fitGlue, hours.ShapeBoards: fitShape, hours.PlaneSpars: fitShape, hours.PlaneBeams: fitShape})
}

// dries is how long bent ribs dry until they have settled, hours.
func (b boat) dries() float64 {
	if most := b.Soak.Most; most > settled || b.Frame.Design.Bending.Stock == design.Green {
		return max(4*day, 2*most)
	}
	return settled
}

// drawn is how long cloth that was wetted dries, hours.
func (b boat) drawn() float64 {
	switch fabric.Fiber(b.Frame.Design.Skin.Fiber) {
	case fabric.Nylon:
		return overnight
	case fabric.Cotton:
		return day
	}
	return 0
}
