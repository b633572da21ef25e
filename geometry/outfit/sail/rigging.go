package sail

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/wording"
)

// Act is a piece of work on the rig or with it, and how it is done. Common practice, no source.
type Act struct{ What, How string }

// Line is cord that the rig wants: how thick, mm, and how long, m.
type Line struct {
	Name  string
	Thick int
	Long  float64
}

// Lines lists the cord of the rig.
func (f *Fit) Lines() []Line {
	round := math.Pi * f.Mast.Diameter
	c := f.Plan.Corners
	foot := c[len(c)-1].Sub(c[0]).Norm()
	var out []Line
	add := func(name string, thick int, long float64) { // mm, to half a metre up
		out = append(out, Line{name, thick, math.Ceil(long/500) / 2})
	}
	if f.Mast.Long > 0 {
		add("sheet", 8, 1.2*foot+3000)
		add("halyard", 5, 2*(f.Tack-f.Mast.PartnerZ+f.Plan.Mast)+1000)
		add("tack line", 5, 1500)
	}
	if f.Plan.Rig != design.Lug && f.Plan.Rig != design.Vee {
		add("snotter", 5, 1500)
	}
	add("loops of the laced edges", 3, float64(f.Loops())*(round+250))
	reefs := 0.0
	for r := 1; r < f.Useful(); r++ {
		n, _ := f.Ties(r)
		reefs += float64(n)*600 + 2*800
	}
	if reefs > 0 && f.Plan.Rig != design.Vee {
		add("reefing", 3, reefs)
	}
	turn := 2*(BedThick+float64(f.Boat.Frame.Design.Ribs.Thickness)) + 4*f.Lashes().X
	add("lashings of the bed", 4, float64(2*len(f.Lashed()))*(4*turn+300))
	if f.Board.Area > 0 {
		add("leeboard", 4, 2000)
	}
	return out
}

// laced are the edges that lie on mast and spars.
func (f *Fit) laced() (out []int) {
	on := map[design.Rig][]string{design.Spritsail: {"luff"}, design.LegOfMutton: {"luff"}, design.Lug: {"head", "foot"}, design.Vee: {"port side", "starboard side"}}[f.Plan.Rig]
	for i, e := range f.Plan.Edges {
		for _, n := range on {
			if e.Name == n {
				out = append(out, i)
			}
		}
	}
	return out
}

// Loops counts the eyelets along the laced edges between the corners.
func (f *Fit) Loops() int {
	n := 0
	for _, i := range f.laced() {
		n += spaced(f.edge(i)) - 1
	}
	return n
}

func (f *Fit) edge(i int) float64 {
	c := f.Plan.Corners
	return c[(i+1)%len(c)].Sub(c[i]).Norm()
}

// Eyelets says where eyelets go in the finished edges.
func (f *Fit) Eyelets() (words string, count int) {
	var out []string
	for _, i := range f.laced() {
		n := spaced(f.edge(i))
		out = append(out, fmt.Sprintf("on the %s %d more, %.0f mm apart", f.Plan.Edges[i].Name, n-1, f.edge(i)/float64(n)))
		count += n - 1
	}
	if f.Plan.Rig != design.Vee {
		for r := 1; r < f.Useful(); r++ {
			n, apart := f.Ties(r)
			out = append(out, fmt.Sprintf("on the line of reef %d one at each end, patched as a corner, and %d between, %.0f mm apart", r, n, apart))
			count += n + 2
		}
	}
	return "one in each corner; " + strings.Join(out, "; "), count + len(f.Plan.Corners)
}

// Rigging tells how the rig goes together, on the boat and down again.
func (f *Fit) Rigging() []Act {
	m, s := f.Mast, f.Plan.Spars
	var out []Act
	add := func(what, how string, v ...any) { out = append(out, Act{what, fmt.Sprintf(how, v...)}) }
	words, _ := f.Eyelets()
	add("eyelets", "%s", words)
	add("order on the boat", "bed, lashed; box with step and partner, bolted together on the bench; set down on bed and gunwales; clips hooked under and bolted; mast last, ashore")
	luff := "tie the luff to the mast with a loop of 3 mm cord at each eyelet, slack enough to slide"
	if m.Long > 0 {
		add("mast", "%.0f mm from its foot to a hand over the partner, then evenly to %.0f at the head; halyard of 5 mm through a hole of 10 mm across it, %.0f mm over the tack, its ends rounded smooth, down to a cleat a hand over the partner", m.Diameter, 0.6*m.Diameter, f.Plan.Mast-30)
	}
	switch f.Plan.Rig {
	case design.Spritsail:
		add("sail", "halyard to the throat; %s; tack tied to the mast %.0f mm over the partner", luff, f.Tack-m.PartnerZ-PartnerThick/2)
		add("sprit", "%.0f mm in its middle, six tenths of that at its ends; the upper end planed to a pin of 12 mm for a loop in the peak's eyelet, the heel notched 8 mm wide and 15 deep for the snotter: a cord of 5 mm from the mast, %.0f mm over the tack, through the notch and back, hauled until a crease runs from peak to tack", s[0].Diameter, s[0].From.Y)
	case design.LegOfMutton:
		add("sail", "halyard to the head; %s; tack tied to the mast", luff)
		add("sprit boom", "%.0f mm in its middle, six tenths at its ends; the clew on a pin at its after end, its heel in a snotter of 5 mm cord, %.0f mm over the tack; in a reef it stands forward of the mast", s[0].Diameter, s[0].From.Y)
	case design.Lug:
		add("sail", "head and foot tied to yard and boom with a loop of 3 mm cord at each eyelet; halyard to the yard, %.0f mm behind its fore end, with a loop round the mast; tack line from the boom to the partner, hauled hard", 0.35*s[0].Length())
	case design.Vee:
		add("sail", "both sides tied to the spars with a loop of 3 mm cord at each eyelet; roll it from the head to reef it")
	}
	if m.Long > 0 {
		clew := f.Plan.Corners[len(f.Plan.Corners)-1]
		add("sheet", "8 mm, from the clew%s to the hand, never fast; steer with a paddle on the lee side in the other hand, %s", f.under(m.At+clew.X), "and let the sheet go when both hands are wanted")
		add("down", "practice this first, ashore, then in a light air: let the sheet go; %shalyard off, gather the sail; the mast comes out ashore only", map[design.Rig]string{design.Spritsail: "slip the snotter, take the sprit out; "}[f.Plan.Rig])
	} else {
		add("down", "practice this first, ashore: turn into the wind with the paddle, lift both spars out and lay them along the boat")
	}
	if f.Board.Area > 0 {
		add("leeboard", "it stays on one side on both tacks, its cheeks take both pushes; best to leeward on the longer one. Leather washers on its bolt, drawn so tight that the blade stays down and yields when it strikes; a line of 4 mm from its after edge raises it and is tied to the bracket, never to hold it down. Section: fore edge half round, thickest at a third, after edge planed to 4 mm over the last third")
	}
	return out
}

// sheetReach is how far aft of the clew a cross piece may stand that the sheet runs under, mm.
const sheetReach = 500.0

// under names the cross piece that the sheet runs under: the first aft of the clew, because
// from before it a sheet pulls the clew of a loose foot forward, and the sail bags.
func (f *Fit) under(clew float64) string {
	name, best := "", sheetReach
	for _, t := range f.Boat.Frame.Thwarts {
		if off := clew - t.At; off >= 0 && off < best {
			name, best = t.Name, off
		}
	}
	if name == "" {
		return " straight, from aft of it,"
	}
	return " under " + wording.OneLine(wording.Clip(name, 40))
}
