package sail

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
)

// judge says what can drown people or break, and lays the figures beside practice.
func (f *Fit) judge() {
	f.Findings.Say("people", finding.Arithmetic, "%s. To windward they sit as high, hips against the side", f.Boat.Who())
	f.judgeWind()
	f.judgeSize()
	f.judgeBoard()
	f.judgeSpars()
	f.judgeBed()
	f.judgeClips()
	f.judgeReefs()
	if down := -f.Rest.TrimRise(); down > bowDown {
		f.Findings.Say("trim", finding.Arithmetic, "with the rig aboard and the crew at their seats the bow lies %.0f mm deeper than the stern over the waterline: move gear or crew aft until it floats level", down)
	}
	n := &f.Findings
	f.Boat.SayOutfits(n)
	n.Warn("capsize", finding.Practice, "practice letting the sail go, taking it down and climbing back in shallow warm water before anything else; an open canoe that fills under sail does not sail home. Flotation in both ends, a life jacket on each person, a knife at hand, nobody else's help counted on")
	n.Warn("rules", finding.Law, "a sail takes the boat out of what is said of boats moved by people alone (in the European Union directive 2013/53/EU, article 2(2)(a)); by a yardstick that leaves canoes out, %.0f kg all up count as a sailing boat from %.2f m2, and this sail has %.2f m2. Registration, insurance, lights and rights of way may change; local law comes first",
		f.Load.Mass, Sailing(f.Load.Mass), f.Plan.Area())
}

func (f *Fit) judgeWind() {
	n := &f.Findings
	chosen := f.Stands[f.Chosen()]
	var steps []string
	for i, v := range f.Wind.Reef[:f.Needed(f.Chosen())-1] {
		steps = append(steps, fmt.Sprintf("from %s to %s at %.1f m/s (%d kn)", f.States[i].Name, f.States[i+1].Name, v, Knots(v)))
	}
	reef := ""
	if len(steps) > 0 {
		reef = "shorten " + strings.Join(steps, ", ") + "; "
	}
	if s := f.Spared(); s != "" {
		reef += s + "; "
	}
	n.Warn("wind", finding.Estimate, "with the crew %s: %shave no sail up at %.1f m/s (%d kn, force %d). Steady wind as a sailor judges it at the water; gusts %.1f times that are allowed for, squalls and waves are not; past %.1f m/s no open canoe has a sail up, whatever it would stand. Never make the sheet fast. %s",
		f.Chosen(), reef, f.Wind.Stop, Knots(f.Wind.Stop), Beaufort(f.Wind.Stop), Gust, Rough, wording.Capital(f.InMiddle()))
	switch {
	case math.IsNaN(chosen.Calm):
		n.Warn("lull", finding.Arithmetic, "when the wind drops and the crew stays %s, the boat goes over to windward: move in at once, and never sit out in a gusty wind alone", chosen.Place)
	case chosen.Calm > 0.5*math.Pi/180:
		n.Warn("lull", finding.Arithmetic, "when the wind drops and the crew stays %s, the boat lies over %.0f deg to windward", chosen.Place, chosen.Calm*180/math.Pi)
	}
	f.judgeRun()
}

// bowDown is how much deeper the bow may lie before it is told, mm. Our own choice.
const bowDown = 10.0

// crossHalf is half the width of a cross piece with room for a hand, mm. Common practice,
// no source.
const crossHalf = 45.0

func (f *Fit) judgeSize() {
	n := &f.Findings
	area := f.Plan.Area()
	if !f.Asked {
		switch full := f.carried(); {
		case full < f.Sail.Wind-0.15:
			n.Judge(finding.Unfit, "area", finding.Arithmetic, "this boat cannot carry even %.1f m2 in %.1f m/s with the crew %s, only in %.1f m/s: ask for less wind, sit out, carry ballast low, or tie two hulls together", area, f.Sail.Wind, f.Chosen(), full)
		case f.Sail.Wind > Rough:
			n.Say("area", finding.Arithmetic, "by its righting moment alone the boat stands %.2f m2 in %.1f m/s with the crew %s; past %.1f m/s all sail is down none the less", area, f.Sail.Wind, f.Chosen(), Rough)
		case f.Sail.Rig == design.Vee && full > f.Sail.Wind+0.1:
			n.Say("area", finding.Arithmetic, "%.2f m2 is what spars that pack to %.0f mm in %d pieces carry; the boat would stand it up to %.1f m/s", area, f.Packed(), pieces, math.Min(full, Rough))
		case area > ceiling-0.06:
			n.Say("area", finding.Practice, "the boat would carry more in %.1f m/s; %.1f m2 is what a cruising canoe's sail has, and the program stops there by itself", f.Sail.Wind, ceiling)
		default:
			n.Say("area", finding.Arithmetic, "%.2f m2 is what the boat carries in %.1f m/s with the crew %s", area, f.Sail.Wind, f.Chosen())
		}
	}
	if area > large {
		n.Warn("area", finding.Practice, "%.1f m2 is more than a racing class for open canoes allows (%.1f m2, with wide boats and crews who sit far out)", area, large)
	}
	if f.Asked && f.Wind.Reef[0] < 2 {
		n.Judge(finding.Unfit, "area", finding.Arithmetic, "%.1f m2 must come in at %.1f m/s, a light air: it is far too much for this boat", area, f.Wind.Reef[0])
	}
}

func (f *Fit) judgeBoard() {
	b := f.Board
	if b.Area == 0 {
		f.Findings.Say("leeboard", finding.Practice, "a vee that only runs needs none; a paddle steers")
		return
	}
	n := &f.Findings
	lead := (f.Mast.At + f.Plan.Center().X - f.Resists().X) / f.Rest.LWL * 100
	f.Ranges = []finding.Range{
		{Name: "lead of the sail over the waterline", Value: lead, Low: leadLow * 100, High: leadHigh * 100, Unit: "%", Source: "5 to 12 for small boats in books, from memory; 4 to 17 over all, a sailmaker"},
		{Name: "leeboard over sail", Value: b.OfSail, Low: 4, High: 8, Unit: "%", Source: "4 is seen, 5 to 8 where a board pierces the surface; forum grade"},
		{Name: "all under water over sail", Value: b.AllUnder, Low: 10, High: 15, Unit: "%", Source: "of the whole profile; forum grade"},
		{Name: "area", Value: f.Plan.Area(), Low: smallest, High: ceiling, Unit: "m2", Source: fmt.Sprintf("a cruising canoe's is %.1f m2", ceiling)},
	}
	n.Say("leeboard", finding.Practice, "%.0f mm wide and %.0f mm under water; its middle at station %.0f mm for a lead of %.0f %%, between %.0f and %.0f mm for %.0f to %.0f %%: cramp the bracket there and try it before its clips are bored; move it forward when she turns away from the wind by herself, aft when she rounds up hard",
		b.Chord, b.Deep, b.At, lead, b.Range[0], b.Range[1], leadHigh*100, leadLow*100)
	n.Warn("leeboard", finding.Estimate, "it bears %.0f N sideways, %.0f N m at the gunwale and %.0f N up and down on the gunwales under its bracket; let the blade swing up when it strikes. Its two cheeks, grain up and down, then carry %.1f N/mm2 beside the bar's hole, of the %.1f asked of %s", b.Load, b.Moment, b.Pinch, b.Cheeks, b.Working, f.Sail.Boards)
	if b.Cheeks > b.Working {
		n.Judge(finding.Weak, "leeboard", finding.Estimate, "the cheeks are too weak for that: take thicker or harder boards, or a smaller sail")
	}
	if !f.Balanced() {
		cure := "take another rig or a smaller sail"
		if at, found := f.balancedAt(); found {
			cure = fmt.Sprintf("set outfit.sail.mast_at to %.0f mm", at)
		}
		n.Judge(finding.Unfit, "balance", finding.Arithmetic, "no leeboard inside the boat balances this sail: the one wanted lies at %.0f mm; %s", b.At, cure)
	}
}

// crossedAt are the cross pieces that a mast at a station would go through.
func (f *Fit) crossedAt(at float64) []string {
	room := f.Mast.Diameter/2 + crossHalf
	return f.Boat.Crosses(at-room, at+room)
}

func (f *Fit) judgeSpars() {
	m := f.Mast
	if want := float64(f.Sail.MastAt); want != 0 && math.Abs(want-m.At) >= 1 {
		f.Findings.Say("mast", finding.Practice, "it stands at %.0f mm instead of the %.0f mm that are asked for: midway between two ribs, where its step has room", m.At, want)
	}
	if in := f.crossedAt(m.At); len(in) > 0 {
		f.Findings.Judge(finding.Unfit, "mast", finding.Arithmetic, "at station %.0f mm it would go through a cross piece, %s: set outfit.sail.mast_at so that it passes before or behind", m.At, strings.Join(in, "; "))
	}
	what := "the mast"
	if f.Sail.Rig == design.Vee {
		what = "each spar"
	}
	f.Findings.Warn("mast", finding.Estimate, "the most the boat stands, with a gust, is %.0f N on the sail: %.0f N on the partner, %.0f N sideways on the step, %.0f N m at the partner. %s of %.0f mm then carries %.1f N/mm2 of the %.1f asked of %s. Step the mast on its bed between two ribs, never on the skin",
		m.Force, m.Partner, m.Step, m.Moment, wording.Capital(what), m.Diameter, m.Stress, m.Working, f.Sail.Spars)
}
