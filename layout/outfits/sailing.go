package outfits

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/clip"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/wording"
	"ribwright/layout"
)

// SailBoards returns the wooden pieces: step, partner, leeboard with its bracket, and
// the clips that hold partner and bracket.
func SailBoards(f *sail.Fit, units measure.System) []Board {
	out := []Board{mastStep(f, units), mastBed(f, units), boxSide(f, 1), boxSide(f, -1), partner(f, units)}
	clips := sail.PartnerClips
	if f.Board.Area > 0 {
		out = append(out, leeboard(f, units), bracketBar(f, units), bracketCheek(f, units))
		clips += sail.BracketClips
	}
	return append(out, gunwaleClip(f.Boat.Frame.Gunwale, clips))
}

// mastHoles are the places of mast or spars across a board.
func mastHoles(f *sail.Fit, z float64) []float64 {
	if f.Sail.Rig == design.Vee {
		s := f.Spread(z)
		return []float64{s, -s}
	}
	return []float64{0}
}

// mastHole says what goes through a hole.
func mastHole(f *sail.Fit) string {
	if f.Sail.Rig == design.Vee {
		return "a spar"
	}
	return "the mast"
}

// mastStep is the block on the bed, from above: x along the boat.
func mastStep(f *sail.Fit, units measure.System) Board {
	half, high := sail.StepLong/2.0, f.StepAcross()/2
	b := Board{Name: "step", Title: "Mast step", Count: 1, Thick: sail.StepThick, Outline: curve.Rectangle(geometry.Rect(-half, -high, half, high)), Flat: true,
		At: geometry.Pt(-half+3, high-7), NameAt: geometry.Pt(0, -high+9), Engrave: "step",
		Words: []string{"on its bed, between the sides of the box"}}
	for _, y := range mastHoles(f, f.Mast.StepZ+sail.StepThick) {
		b.hole(0, y, f.Mast.Diameter+1, mastHole(f))
	}
	b.Rows = []string{"middle at station " + units.Fine(f.Mast.At) + "; its " + units.Fine(sail.StepLong) + " along the boat, grain across it; two rods run through it along the boat, with the sides of the box: bore them through both together",
		fmt.Sprintf("its upper face is level and the mast's hole plumb: plane %s more off the lower face at its %s edge than at the other", units.Fine(math.Abs(math.Tan(f.BedPitch()))*sail.StepLong), foreOrAft(f.BedPitch()))}
	return b
}

// boxSide is the side of the mast box before the mast (1) or behind it (-1) as it stands,
// seen along the boat: x across, y up from the bed.
func boxSide(f *sail.Fit, way float64) Board {
	half, high := f.BoxWide()/2, f.BoxHigh(way)
	b := Board{Name: "box-fore", Title: "Fore side of the mast box", Count: 1, Thick: sail.BoxThick, Outline: curve.Rectangle(geometry.Rect(-half, 0, half, high)), Flat: true, Zero: "the bed",
		At: geometry.Pt(-half+8, high-45), NameAt: geometry.Pt(0, high/2), Engrave: "box",
		Words: []string{"grain up and down, its foot on the bed; height at the face", "that meets the partner: plane its top even with the partner", "bore its upper holes with the partner's edges, in place"}}
	if way < 0 {
		b.Name, b.Title = "box-aft", "After side of the mast box"
	}
	for _, y := range []float64{sail.StepThick / 2, high - sail.PartnerThick/2} {
		for _, side := range []float64{1, -1} {
			b.hole(side*f.RodsAt(), y, bolt, "rod")
		}
	}
	return b
}

// mastBed is the plank under the step, from above: x along the boat, forward to the right.
func mastBed(f *sail.Fit, units measure.System) Board {
	half, high := f.Bed.Long/2, sail.BedWide/2.0
	b := Board{Name: "bed", Title: "Mast bed", Count: 1, Thick: sail.BedThick, Outline: curve.Rectangle(geometry.Rect(-half, -high, half, high)), Flat: true,
		At: geometry.Pt(-half+12, high-8), NameAt: geometry.Pt(0, -high+9), Engrave: "bed",
		Words: []string{"forward is to the right; the step goes on its middle", "plane its lower face to the ribs: hard on the two beside the mast, " + units.Fine(sail.BedThick) + " left",
			"in the middle there, " + units.Fine(f.BedLeast()) + " at the thinnest edge; so its top keeps its height", "lash it to " + sail.Names(f.Lashed()) + " on both sides of the keel, four turns of 4 mm cord", "that pass between rib and cloth"}}
	lash := f.Lashes()
	for _, r := range f.Bed.Ribs {
		x := r.Station - f.Mast.At
		b.mark(x, high, "middle of rib "+r.Name)
		if !slices.ContainsFunc(f.Lashed(), func(l frame.Rib) bool { return l.Name == r.Name }) {
			continue
		}
		for _, dx := range []float64{-lash.X, lash.X} {
			for _, y := range []float64{lash.Y, -lash.Y} {
				b.hole(x+dx, y, sail.LashHole, "lashing")
			}
		}
	}
	return b
}

// partner is the plank across the gunwales that the mast passes, from above: x across
// the boat, y forward.
func partner(f *sail.Fit, units measure.System) Board {
	inner, _ := f.Boat.GunwaleTop(f.Mast.At)
	half, high := f.PartnerLong()/2, sail.PartnerWide/2.0
	b := Board{Name: "partner", Title: "Mast partner", Count: 1, Thick: sail.PartnerThick, Outline: curve.Rounded(geometry.Rect(-half, -high, half, high), 20), Flat: true, Corner: 20,
		At: geometry.Pt(-inner.Y+kit.ClipWide+12, high-8), NameAt: geometry.Pt(-inner.Y/2-20, -high/2-10), Engrave: "partner",
		Words: []string{"middle at station " + units.Fine(f.Mast.At), "forward is up"}}
	for _, x := range mastHoles(f, f.Mast.PartnerZ) {
		b.hole(x, 0, f.Mast.Diameter+sail.PartnerRoom, mastHole(f)+", with leather of 2 mm round it")
	}
	b.line(layout.Center, 0, high-14, 0, high)
	b.line(layout.Center, 0, -high, 0, -high+14)
	b.gunwales(f.Boat, f.Mast.At, high)
	clips, _ := f.Clips()
	b.clipHoles(f.Mast.At, clips[:]...)
	b.Rows = []string{fmt.Sprintf("It lies on gunwales that rise %.1f deg %s, and the mast stands plumb: bore the mast's hole and plane both long edges %.1f deg off square, each upper end %s further %s.", math.Abs(f.Pitch())*180/math.Pi, forward(f.Pitch()),
		math.Abs(f.Pitch())*180/math.Pi, units.Fine(math.Abs(math.Tan(f.Pitch()))*sail.PartnerThick), forward(f.Pitch())),
		"Clip bolts stand " + inFrom(units) + ", wherever it is: check that on your boat before you bore. Turn each clip on its bolt until it lies along the gunwale."}
	b.label(inner.Y-kit.ClipWide-6, -high+4, layout.Right, "marks: the gunwale's edges; leather the hole")
	return b
}

// inFrom says where a clip's bolt goes.
func inFrom(units measure.System) string {
	return units.Fine(clip.BoltIn) + " inside the gunwale's upper inner edge, square to it"
}

func forward(pitch float64) string {
	if pitch < 0 {
		return "aft"
	}
	return "forward"
}

// foreOrAft is the edge that stands higher.
func foreOrAft(pitch float64) string {
	if pitch < 0 {
		return "after"
	}
	return "fore"
}

// inPieces says how a spar comes apart; nothing for one that does not.
func inPieces(f *sail.Fit, s sail.Spar, units measure.System) string {
	n := f.Pieces(s)
	if n == 1 {
		return ""
	}
	return fmt.Sprintf(", in %d pieces of %s that butt in a sleeve of %s", n, units.Fine(s.Length()/float64(n)), units.Fine(f.SleeveLong()))
}

// bought lists what is bought for an outfit.
func bought(k kit.Kit) (out []string) {
	for _, t := range k.Things {
		if t.Unit == "each" {
			out = append(out, fmt.Sprintf("%.0f %s: %s.", t.Amount, t.Name, t.How))
		} else {
			out = append(out, fmt.Sprintf("%s, %.4g %s: %s.", wording.Capital(t.Name), t.Amount, t.Unit, t.How))
		}
	}
	return out
}

// SailFirst is what the first sheet says.
func SailFirst(f *sail.Fit, units measure.System) *layout.First {
	var winds []string
	last := f.Needed(f.Chosen()) - 1
	for i, s := range f.States[:last+1] {
		what := "take in the next reef"
		if i == last {
			what = "take the sail down"
		}
		winds = append(winds, fmt.Sprintf("%s, %.2f m2: %s at %.1f m/s (%d knots, force %d).", wording.Capital(s.Name), s.Area, what, f.Wind.Reef[i], sail.Knots(f.Wind.Reef[i]), sail.Beaufort(f.Wind.Reef[i])))
	}
	if s := f.Spared(); s != "" {
		winds = append(winds, wording.Capital(s)+".")
	}
	winds = append(winds, fmt.Sprintf("With the crew %s; %s.", f.Chosen(), f.InMiddle()))
	var sticks []string
	if f.Mast.Long > 0 {
		sticks = append(sticks, fmt.Sprintf("Mast %s long, %.0f mm at the partner, %s; its taper stands under Rigging.", units.Fine(f.Mast.Long), f.Mast.Diameter, f.Sail.Spars))
	}
	for _, s := range f.Plan.Spars {
		sticks = append(sticks, fmt.Sprintf("%s %s long, %.0f mm in its middle%s.", wording.Capital(s.Name), units.Fine(s.Length()), s.Diameter, inPieces(f, s, units)))
	}
	sticks = append(sticks, fmt.Sprintf("The tack stands %s over the gunwale.", units.Fine(f.Tack-(f.Mast.PartnerZ-sail.PartnerThick/2))))
	return &layout.First{Notes: []layout.Note{{Heading: "Wind", Lines: winds}, {Heading: "Spars", Lines: sticks}}, Cautions: cautions(f.Findings)}
}

// sailNotes are told among the patterns: how the rig goes together, and what is bought.
func sailNotes(f *sail.Fit) []layout.Drawing {
	var told []string
	for _, a := range f.Rigging() {
		told = append(told, wording.Capital(a.What)+": "+a.How+".")
	}
	return []layout.Drawing{note("rigging", "Rigging and use", "common practice, to be tried ashore first", told), note("to-buy", "To buy", "for the sail", bought(f.Kit()))}
}

// note is a piece of paper with words.
func note(name, title, what string, lines []string) layout.Drawing {
	d := layout.Drawing{Name: name, Title: title, Make: what}
	s := &sketcher{d: &d, y: -head - 2} // under the title
	d.Straight(layout.Tick, 0, 0, sketchWide, 0)
	for _, l := range lines {
		s.write(small, l)
	}
	d.Straight(layout.Tick, 0, s.y-2, sketchWide, s.y-2)
	keepWords(&d)
	return d
}
