package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial/flaw"
	"ribwright/layout/report"
)

// practice closes what rests on common practice alone: the chapter says that this has no
// source.
const practice = " (common practice)"

// faultTable says of a fault where to look from, what it is and what to do.
func (w *writer) faultTable(l flaw.Look) report.Table {
	rows := map[flaw.Kind]func(flaw.Look) [5]string{
		flaw.Proud: w.proud, flaw.OneSide: w.oneSide, flaw.Wavy: w.wavy, flaw.Aside: w.aside, flaw.Twist: w.twist,
	}[l.Fault.Kind](l)
	t := report.Titled("").Names("").Words("")
	for i, head := range []string{"Look from", "It shows as", "It is", "Do this", "Leave it when"} {
		t.Row(head, rows[i])
	}
	return t
}

// past says where an eye stands, to the nearest hand's breadth.
func (w *writer) past(l flaw.Look) string {
	hand := map[bool]float64{true: 50.8, false: 50}[w.Letters.Units == measure.Imperial]
	near := func(v float64) string { return w.Length(math.Round(math.Abs(v)/hand) * hand) }
	e := l.Eye.At
	words := near(e.X-w.Frame.Hull.Bow.Tip()) + " past the bow"
	if e.Y != 0 {
		words += ", " + near(e.Y) + " off the middle line"
	}
	return words + ", " + near(e.Z) + map[bool]string{true: " over", false: " under"}[e.Z > 0] + " the keel's lowest place"
}

func (w *writer) proud(l flaw.Look) [5]string {
	shows := "The batten"
	if w.Eye.Sighted > 0 {
		shows = fmt.Sprintf("The batten on the marks of S%d", w.Eye.Sighted)
	}
	shows += " jumps out at one rib"
	if h := w.Eye.Hollow * l.Fault.Size; h >= 0.5 {
		shows += fmt.Sprintf(" and lies %s hollow in the bays beside it", w.Length(h))
	}
	return [5]string{
		"low " + w.past(l) + ", along the bilge",
		shows + ". Fair, it runs in one sweep.",
		"That rib is too long or its bilge bent too hard" + w.lengthToo() + ".",
		"Steam its bilge again and ease it under the batten. " + w.offHeads() + fmt.Sprintf("A rib that is shy shows as a hollow: bend it farther hot, or pack under its middle; replace it when it is over %s shy%s.", w.Length(8), practice),
		w.clears() + w.hands("length of each rib"),
	}
}

// lengthToo says how the length of a rib goes with its bulge; nothing of one so straight
// that a bulge asks for no length.
func (w *writer) lengthToo() string {
	if w.Eye.Longer < 0.05 {
		return ""
	}
	return fmt.Sprintf(": its half is %.1f times as much too long as it stands proud", w.Eye.Longer)
}

func (w *writer) offHeads() string {
	if w.Eye.Long < 0.5 {
		return ""
	}
	return "Where it is too long, a bump like this asks for " + w.Length(w.Eye.Long) + " off the head of that side. "
}

// clears says how proud a rib may stay, for the eye and for the cloth.
func (w *writer) clears() string {
	const mild = 4.0 // mm
	leave, touch := "under "+w.Length(mild)+practice+". ", w.Eye.Touches
	switch most := w.Length(math.Floor(touch)); {
	case math.IsInf(touch, 1):
		return leave + "However proud, this rib does not touch the cloth: the stringers ride out on it."
	case touch < 0.5:
		return leave + "The cloth lies on this rib even as it is drawn, so that every bump shows through."
	case touch < mild:
		return "under " + most + ": farther out it touches the flat cloth between two stringers."
	default:
		return leave + "At " + most + " this rib touches the flat cloth between two stringers; between battens each rib has less room, which the chapter Skin has under Marks on the cloth."
	}
}

func (w *writer) oneSide(l flaw.Look) [5]string {
	return [5]string{
		w.past(l) + ", down into the nested row of ribs",
		"The gap to the next rib is narrow on one side and wide on the other. Fair, gaps are alike to port and starboard and change evenly from rib to rib.",
		"Its bend marks were not centered on the keel, or one side cooled first." + w.offMiddle(l.Fault.Size),
		"Look at the middle mark over the keel first. When it is right, steam the rib again, pull it to the flat side and hold it there until it is cold.",
		"under " + w.Length(5) + " at one height" + practice + ". " + w.heels(l, "This rib alone") + w.hands("bend marks of each rib"),
	}
}

// offMiddle says how far a rib sits off the keel's middle when one side is so full.
func (w *writer) offMiddle(size float64) string {
	if off := size * w.Eye.Longer; off >= 0.5 {
		return " So much is a rib whose middle sits " + w.Length(off) + " off the keel's middle."
	}
	return ""
}

func (w *writer) wavy(l flaw.Look) [5]string {
	i := slices.IndexFunc(w.Frame.Stations(), func(x float64) bool { return x == w.Frame.Nearest(0).Station })
	takes, depth := w.Hands.KeelTakes[i], w.Corrections[i].Depth
	is := "Depths differ from rib to rib. "
	if takes < 0.5 {
		is += fmt.Sprintf("One rib alone does not make it: of what a rib is too deep or too shallow the keel there takes only %s, and spreads it. Look for several ribs, for a keel that does not lie hard on them, or for a stick with a crook.", report.Percent(takes))
	} else {
		is += fmt.Sprintf("Of what one rib is too deep or too shallow the keel there takes %s.", report.Percent(takes))
	}
	return [5]string{
		"low " + w.past(l) + ", up along the keel's underside",
		"The keel's edges snake up and down. Fair, they are straight amidships and rise in one sweep to either end.",
		is,
		fmt.Sprintf("Measure depths from the straightedge, port and starboard alike. %s of depth is %s of length on rib %s, half of it at each head.", w.Length(l.Fault.Size), w.Length(l.Fault.Size*depth), w.Frame.Ribs[i].Name),
		"under " + w.Length(3) + " over three ribs" + practice + "." + w.hands("length of all ribs alike"),
	}
}

func (w *writer) aside(l flaw.Look) [5]string {
	return [5]string{
		w.past(l) + ", down on both gunwales and the string",
		"The string runs nearer to one gunwale amidships: measure to both. Fair, it halves the boat everywhere.",
		fmt.Sprintf("The plies of one side are stiffer, or a spreader's notches are not alike from its middle: %s here.", w.Length(l.Fault.Size)),
		"Before the glue: swap the plies of one side end for end, or shim the spreader in one notch. After it: draw the middle over when the cross pieces are fitted, and mark their middles from the string.",
		"under " + w.Length(4) + practice + ". " + w.heels(l, "This much") + w.hands("spreaders"),
	}
}

func (w *writer) twist(l flaw.Look) [5]string {
	ribs := w.Frame.Ribs
	degree := w.Eye.Sticks * math.Sin(math.Pi/180)
	return [5]string{
		fmt.Sprintf("a few steps past the bow, the eye so high that an even sliver of the far stick shows over the near one: straight sticks %s long, laid across the gunwales at ribs %s and %s", w.Length(w.Eye.Sticks), ribs[0].Name, ribs[len(ribs)-1].Name),
		fmt.Sprintf("The sliver is a wedge, or the sticks cross. Each degree between them is %s more at one end than at the other.", w.Length(degree)),
		"The trestles are not level with each other, or a stem leans.",
		"Level both trestles, then wedge the low gunwale up until the sticks are even, before the ribs are pegged: pegged ribs keep a twist.",
		"under 1 degree" + practice + ". " + w.heels(l, "The whole twist of this picture"),
	}
}

// plainAngle letters an angle in degrees, with a decimal where it has one.
func plainAngle(a float64) string {
	return strings.TrimSuffix(fmt.Sprintf("%.1f", a*180/math.Pi), ".0")
}

// heels says how far a fault leans the loaded boat.
func (w *writer) heels(l flaw.Look, what string) string {
	switch deg := l.Heels * 180 / math.Pi; {
	case math.IsNaN(deg):
		return ""
	case deg < 0.1:
		return what + " leans the loaded boat by less than a tenth of a degree."
	default:
		return fmt.Sprintf("%s leans the loaded boat by about %.1f degrees.", what, deg)
	}
}

// hands says what the error behind a fault does to the boat at its usual size.
func (w *writer) hands(name string) string {
	for _, e := range w.Hands.Errors {
		if e.Name != name {
			continue
		}
		if !e.Matters() {
			return fmt.Sprintf(" The usual error in the %s hardly matters to beam, depth, trim or GM.", name)
		}
		o := w.Hands.Outcomes[e.Hits]
		return fmt.Sprintf(" The usual error in the %s is worth up to %s of %s.", name, w.Length(e.Moves[e.Hits].First), o.Name)
	}
	return ""
}
