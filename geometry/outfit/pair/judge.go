package pair

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/outfit/clip"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wording"
)

// judge says what can hurt, and lays the figures beside practice.
func (c *Craft) judge() {
	c.judgeLift()
	c.judgeBeams()
	n := &c.Findings
	c.Boats[0].SayOutfits(n)
	n.Warn("water between", finding.Practice, "whoever falls between the hulls goes under beams: keep the space clear, stop the boats before anyone steps across, and keep a knife in each hull for the lashings")
	if l := math.Abs(c.Rest.Heel) * 180 / math.Pi; l > 0.3 {
		n.Say("list", finding.Arithmetic, "it lies over %.1f deg at rest, for the hulls are not laden alike; move weight until it is level", l)
	}
	n.Say("wind and waves", finding.Practice, "the beams' lower faces lie %.0f mm over still water; waves higher than about half of that strike them: that is the limit, and a wind with the first white crests, some 4 m/s (7 knots)", c.Beneath)
	c.judgeWaves()
	length := math.Min(c.Boats[0].Frame.Hull.Length, c.Boats[1].Frame.Hull.Length)
	apart := finding.Range{Name: "spacing over length", Value: c.Spacing / length * 100, Low: 50, High: 70, Unit: "%", Source: "half the length or more, to sail; paddlers report, no standard"}
	if c.Pair.Purpose == design.MovingWater {
		apart = finding.Range{Name: "middle lines apart", Value: c.Spacing, Low: 1300, High: 1700, Unit: "mm", Source: "about 1.4 m on moving water, to turn and to pass; from memory"}
	}
	c.Practices = []finding.Range{apart,
		{Name: "beams apart over length", Value: (c.Beams.At[len(c.Beams.At)-1] - c.Beams.At[0]) / length * 100, Low: 30, High: 50, Unit: "%", Source: "common practice, no source"},
	}
	c.judgeUse()
	n.Say("handling", finding.Practice, "wider is stiffer and makes fewer waves between the hulls, but turns slowly, loads the beams more and is hard to land; less than half the length does for paddling. %.0f mm over all; a paddler reaches the water on the outer side only", c.Over)
	n.Say("setting up", finding.Practice, "set the hulls without toe-out, which forces water between them; glue the saddles to the beams and line them with leather; hulls shift, so cross two lines of doubled cord between them, %.0f mm each, from the after beam beside one inner gunwale to the forward beam beside the other; bear on both gunwales of each hull, never on the thwarts alone", c.Diagonal())
	n.Say("rules", finding.Law, "two hulls side by side are no monohull boat (33 CFR 183.3): rules for one hull do not fit. A sail or motor on them changes which rules apply again. A wearable life jacket for each person")
}

// judgeUse says what the pair is for, and who is in which hull.
func (c *Craft) judgeUse() {
	use := "its spacing was given"
	switch c.Pair.Purpose {
	case design.MovingWater:
		use = "for moving water: narrow, so that it turns and passes between rocks. Sail and open water want it wider"
	case design.OpenWater:
		use = "for open water: wide, so that it stands steady. In current it turns slowly and catches on rocks"
	case design.Sailing:
		use = "to carry a sail: wide, so that the windward hull stays down longer. In current it turns slowly and catches on rocks"
	}
	c.Findings.Say("use", finding.Practice, "%s", use)
	for i, b := range c.Boats {
		side := [...]string{"port", "starboard"}[i]
		c.Findings.Say("people", finding.Arithmetic, "in the hull to %s, %s: %s", side, wording.OneLine(b.Title), b.Who())
	}
}

func (c *Craft) judgeLift() {
	n := &c.Findings
	lesser := c.Lesser()
	lift, flooded, most := lesser.Lift*180/math.Pi, lesser.Flooded*180/math.Pi, lesser.Most.GZ
	lifts, floods := !math.IsNaN(lift), !math.IsNaN(flooded)
	switch {
	case lifts:
		n.Warn("lift", finding.Arithmetic, "the windward hull leaves the water at %.1f deg, with %.0f N m. GM %.0f mm means nothing past that: the lever is at most %.0f mm, and what lifts the hull turns it over. It gives no warning as one hull does, and it does not come back by itself",
			lift, c.Lifting, c.GM, most)
	case floods:
		n.Warn("flooding", finding.Arithmetic, "water comes over the leeward gunwale at %.1f deg, before the windward hull lifts. GM %.0f mm means nothing past that: the lever is at most %.0f mm", flooded, c.GM, most)
	}
	if lifts && floods {
		n.Say("flooding", finding.Arithmetic, "water comes over a gunwale at %.1f deg", flooded)
	}
}

func (c *Craft) judgeBeams() {
	n := &c.Findings
	stress, lash, sag := worst(c.Cases)
	if !c.Beams.Enough {
		n.Judge(finding.Weak, "beams", finding.Estimate, "beams of %.0f x %.0f mm of %s are too weak or too soft: %.1f N/mm2 where %.1f is asked, a sag of %.0f mm where %.0f is allowed. Bring the hulls nearer, or take more or deeper beams",
			c.Beams.Width, c.Beams.Depth, c.Beams.Wood.Name, stress, beam.Working(c.Beams.Wood), sag, c.Spacing/softest)
	}
	if !c.Beams.Clear {
		n.Judge(finding.Unfit, "beams", finding.Arithmetic, "a beam has no room between rib heads, cross pieces and hangers for the bar under it: set them farther or less far apart")
	}
	for i, b := range c.Boats {
		for _, x := range c.Beams.At {
			if _, foam := b.SideFoam(x-c.Beams.Bar/2, x+c.Beams.Bar/2); foam && (i == 0 || b.Frame != c.Boats[0].Frame) {
				n.Say("foam", finding.Arithmetic, "foam lies under the gunwales of %s where the bar at station %.0f mm goes: leave %.0f mm of it open", wording.OneLine(b.Title), x, c.Beams.Bar+10)
			}
		}
	}
	got, asked := c.press()
	v, cure := finding.Caution, ""
	if got > asked {
		v, cure = finding.Weak, ": too much: bring the hulls nearer, or take more beams"
	}
	n.Judge(v, "lashings", finding.Estimate, "one lashing may have to hold %.0f N: %d turns of cord that bears %.0f N in each part, round the beam and the under bar, inside the gunwale, with frapping turns. %s. The bar's end then presses the gunwale with %.1f N/mm2 of the %.1f asked across its grain%s. The bars are our own way: try them ashore with more than the load, and look at gunwales, rib heads, skin and every lashing before each trip and under way",
		lash, Turns(lash), CordPull, clip.NoCord, got, asked, cure)
	n.Say("beams", finding.Estimate, "worked from clear wood at a quarter of its modulus of rupture, from memory; straight grain without knots in the middle half, and no holes through it")
}

func (c *Craft) judgeWaves() {
	change := func(a, b Wave) int { return cmp.Compare(a.Change(), b.Change()) }
	worst, best := slices.MaxFunc(c.Waves, change), slices.MinFunc(c.Waves, change)
	c.Findings.Say("waves", finding.Compared, "between these hulls the waves cost %.0f %% more at %.0f km/h at worst, and at best %.0f %% at %.0f km/h, than with the hulls far apart, by the thin-ship law for deep water", worst.Change()*100, worst.Speed*3.6, best.Change()*100, best.Speed*3.6)
}
