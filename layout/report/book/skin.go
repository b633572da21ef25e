package book

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/curve"
	"ribwright/geometry/fabric"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

func (w *writer) skin() {
	d := w.Frame.Design.Skin
	w.chapter("Skin")
	if d.Cloth == 0 {
		w.say("The design has no cloth: this is a frame without its skin.")
	} else {
		w.add(w.clothToBuy(), w.skinMeasures(), w.sheetFigure(), w.pulledMarks())
		w.cloth()
		w.section("Sew and draw on the cloth")
		w.add(report.List{First: 1, Items: w.sewing()})
		w.taut()
		w.coats()
	}
	w.outsideSkin()
}

// fiber is what the cloth is woven of.
func (w *writer) fiber() fabric.Fiber { return fabric.Fiber(w.Frame.Design.Skin.Fiber) }

// grams letters a mass of cloth.
func (w *writer) grams(g float64) string {
	ounces := fmt.Sprintf("%.1f oz/yd2", measure.OuncesPerSquareYard(g))
	return report.Either(w.Letters.Units, fmt.Sprintf("%.0f g/m2 (%s)", g, ounces), ounces)
}

// coat is what is mixed for one coat of so many liters, up to a tenth of a liter or a quart,
// L: what is printed, so that the coats of a table add up to what is bought.
func (w *writer) coat(l float64) float64 {
	unit := report.Either(w.Letters.Units, 1, quart)
	return math.Ceil(l/unit*10-1e-9) / 10 * unit
}

// mixed is all coats together, L.
func (w *writer) mixed() float64 {
	k := w.Needs.Coating
	return w.coat(k.FirstCoat) + w.coat(k.EachLater)*float64(k.Count-1)
}

// liters letters a volume of coating.
func (w *writer) liters(l float64) string {
	return report.Either(w.Letters.Units, fmt.Sprintf("%.1f L", l), fmt.Sprintf("%.1f US quarts", l/quart))
}

// degrees letters a temperature in C.
func (w *writer) degrees(c float64) string {
	return report.Either(w.Letters.Units, fmt.Sprintf("%.0f degrees C", c), fmt.Sprintf("%.0f degrees F", math.Round((c*1.8+32)/5)*5))
}

func (w *writer) clothToBuy() report.Table {
	c, k := w.Needs.Cloth, w.Needs.Coating
	t := report.Titled("What to buy for the skin").Names("Thing").Words("What to ask for").Numbers("How much")
	what := w.grams(k.Cloth) + ", woven, off a roll " + w.Length(c.Roll) + " wide"
	if w.fiber() == fabric.Polyester {
		what += ", not heat-set, or it will not shrink"
	}
	t.Row(wording.Capital(w.fiber().String())+" cloth", what, w.off(c.OffRoll()))
	t.Row("Thread", "waxed polyester, about 1 mm (1/25 in) thick, for the seams", w.meters(1000*math.Ceil(c.Thread/1000)))
	t.Row("Tacks or staples", "bronze or stainless, "+w.Length(12)+" long, every "+w.Length(materials.TackPitch), fmt.Sprint(w.Needs.Tacks))
	if k.Count > 0 {
		t.Row("Coating", fmt.Sprintf("two-part polyurethane for brushing, %.0f %% solids by volume, %s", k.Solids*100, wording.Counted(k.Count, "coat")), w.liters(w.mixed()))
	}
	what = "needle and coating"
	if len(w.fiber().Ironing().Steps) > 0 {
		what = "needle, heat and coating"
	}
	try := "Try " + what + " first, on what is trimmed off the sheet."
	if c.Trial > 0 {
		try = "Of the length " + report.Either(w.Letters.Units, w.off(c.Trial), w.Length(c.Trial)) + " are to try " + what + " on first: cut them off before all else."
	}
	return t.Noted(fmt.Sprintf("Another roll does when it is %s wide or more: that is %s round the boat and %s beyond each gunwale, the least to pull by. Of the coating, %.0f %% stays in tray and brush: paint makers reckon 10 to 20 %%. ", w.Length(c.Least), w.Length(c.Girth), w.Length(materials.GripLeast), fabric.Loss*100) + try)
}

func (w *writer) skinMeasures() report.Table {
	c, s := w.Needs.Cloth, w.Frame.Design.Skin
	t := report.Titled("The skin in figures").Words("").Numbers("").Filled(
		"girth: the greatest way round, gunwale top to gunwale top", w.Length(c.Girth),
		"girth at the last ribs, the least", w.Length(c.EndGirth),
		"cloth left beyond each gunwale, to grip and pull", w.Length(c.Grip),
		"width of the sheet: the girth, and what is left on both sides", w.Length(c.Wide),
		"how far that is stretched, both sides together", w.Length(c.Pull),
		"seam up the after stem, up the fore stem", w.Letters.Units.Rough(c.Ends[0])+", "+w.Letters.Units.Rough(c.Ends[1]))
	if c.Seam > 0 {
		t.Row("seams along the boat", w.Length(c.Seam))
	}
	t.Row("outside of the boat", report.Either(w.Letters.Units, fmt.Sprintf("%.2f m2 (%.1f sq ft)", c.Area/1e6, c.Area/92903.04), fmt.Sprintf("%.1f sq ft", c.Area/92903.04)))
	t.Row("finished skin, cloth and "+wording.Counted(s.Coats, "coat"), w.grams(s.Mass()))
	t.Row("its thickness", report.Either(w.Letters.Units, fmt.Sprintf("%.1f mm", float64(s.Thickness())), fmt.Sprintf("%.3f in", float64(s.Thickness())/25.4)))
	return t
}

// sheetFigure draws the sheet flat, with what of it the boat takes.
func (w *writer) sheetFigure() report.Figure {
	c := w.Needs.Cloth
	wide := c.Wide
	per := scaleFor(c.Length, wide, report.Wide-16, 80)
	s := newSketch("sheet", "The sheet of cloth", per)
	middle := (c.Lies[0].Station + c.Lies[len(c.Lies)-1].Station) / 2
	aft, fore := middle-c.Length/2, middle+c.Length/2
	s.path(layout.Cut, curve.Rectangle(geometry.Rect(aft, -wide/2, fore, wide/2)))
	s.line(layout.Center, aft, 0, fore, 0)
	for k := 1; k < c.Sheets; k++ {
		y := -c.Sewn()/2 + float64(k)*(c.Roll-materials.JoinLap) + materials.JoinLap/2
		s.line(layout.Mark, aft, y, fore, y)
	}
	for _, side := range []float64{1, -1} {
		var edge []geometry.Point
		for i, l := range c.Lies {
			edge = append(edge, geometry.Point{X: l.Station, Y: side * l.Outer})
			if b := c.Lies[max(0, i-1)]; b.Inner > 0 || l.Inner > 0 {
				s.line(layout.Mark, b.Station, side*b.Inner, l.Station, side*l.Inner)
			}
		}
		s.path(layout.Guide, curve.Polyline(edge...))
		for _, m := range c.Marks {
			s.line(layout.Tick, m.Station, side*(m.Half-20), m.Station, side*(m.Half+20))
		}
	}
	s.pleats(c)
	s.across(aft, fore, -wide/2/per-6, w.Length(c.Length))
	s.up(-wide/2, wide/2, aft/per-4, w.Length(wide))
	s.note(middle, 0, 0, 1, layout.Middle, "middle thread, on the keel")
	caption := fmt.Sprintf("The sheet laid flat, trimmed, %s, bow to the right. Dashed: where the gunwales' upper edges come; you pull by the cloth beyond. Each tick across it stands half of a rib's girth from the middle thread. At each end two curves are sewn together on the stem; the wedge between them is cut off %s beyond the stitches.", ratio(per), w.Length(pastSeam))
	if c.Sheets > 1 {
		caption += " Lines from end to end: seams between sheets."
	}
	if c.Pleats > 0 {
		caption += " Short lines between the last ribs and the stems: pleats."
	}
	return report.Figure{Drawing: s.settled(), Caption: caption, About: "Flat sheet of cloth with its middle thread, the line of the gunwales and the seams at the stems."}
}

// pleats draws them beside each stem, as many as there are.
func (s *sketch) pleats(c materials.Cloth) {
	first, last := c.Marks[0], c.Marks[len(c.Marks)-1]
	for _, e := range []struct {
		m   materials.Pulled
		tip float64
	}{{first, c.Lies[0].Station}, {last, c.Lies[len(c.Lies)-1].Station}} {
		for k := range c.Pleats {
			x := e.m.Station + (e.tip-e.m.Station)*(0.2+0.6*(float64(k)+0.5)/float64(c.Pleats))
			for _, side := range []float64{1, -1} {
				s.line(layout.Tick, x, side*e.m.Half*0.45, x, side*e.m.Half*0.75)
			}
		}
	}
}

// room letters how far a rib may stand out, in whole units and never more than there is.
func (w *writer) room(mm float64) string {
	if mm > 0 && mm < 1 {
		return "under " + w.Whole(1)
	}
	return w.Whole(math.Floor(math.Max(0, mm)))
}

// pulledMarks has lines to draw on slack cloth that tell when it is pulled enough, at every
// rib, for it is tacked rib by rib.
func (w *writer) pulledMarks() report.Table {
	c := w.Needs.Cloth
	t := report.Titled("Marks on the cloth, "+w.Unit()).Names("Rib").Numbers("Along the middle thread", "Mark on slack cloth", "Half the girth", "Room in the cloth")
	var at []float64
	for i, m := range c.Marks {
		t.Row(m.Rib, w.Whole(math.Abs(w.Frame.Keel.RibMarks[i])), w.Whole(m.Mark), w.Whole(m.Half), w.room(-w.Clearance.Ribs[i].By))
		at = append(at, m.Station)
	}
	return t.Outward(at).Noted("Along the middle thread: from its middle, which is midship; A ribs lie toward the stern, F ribs toward the bow. Mark on slack cloth: from the thread to each side. Pull until the mark stands on the gunwale's upper edge. At a rib that you made longer the mark stops below by half of that, at a shorter one as much above. The ends, beyond the last ribs, come after. Half the girth: what a tape shows on the frame, keel's middle to gunwale's upper edge. Room in the cloth: how far a rib may stand out midway between two battens before it touches the cloth; under a batten it pushes both out.")
}

// taut is how the cloth is made tight, and what that gives.
func (w *writer) taut() {
	i := w.fiber().Ironing()
	w.section("Draw it taut")
	w.say("%s", w.cautionOf(hours.Skin))
	switch w.fiber() {
	case fabric.Polyester:
		t := report.Titled("Iron the whole boat once at each step").Names("Pass").Numbers("Iron no hotter than").Words("What you should see")
		see := []string{"wrinkles shorten; seams lie flat", "the cloth drums between stringers", "the last wrinkles go; stop here"}
		for k, s := range i.Steps {
			t.Row(fmt.Sprint(k+1), w.degrees(s), see[min(k, len(see)-1)])
		}
		w.add(t.Noted(fmt.Sprintf("From memory of common practice: measure your iron, for its dial may be off by %s. Never over %s: hotter, polyester slackens for good, and it melts at about %s. Start at the seams, then from amidships outward, one side and the other in turn, so that no side pulls the frame over. Keep the iron moving. Ten seconds on one place is too long.", w.spread(30), w.degrees(i.Most), w.degrees(i.Melts))))
	case fabric.Nylon:
		w.say("Let the cloth dry where it is, overnight, out of the sun: it drums as the water leaves. Where it is still slack, wet that part again, draw it over a little more and let it dry. Heat does little for nylon; never over %s, and it melts from about %s (from memory). Coat it while it is dry and taut: bare nylon takes up %.1f %% of its mass from damp air and slackens.", w.degrees(i.Most), w.degrees(i.Melts), 100*w.fiber().Regain())
	default:
		w.say("Sponge the whole skin with hot water, once, and let it dry a day: cotton shrinks as it dries. No iron: it scorches from about %s and shrinks no more for it. Coat it dry; wet cotton rots.", w.degrees(i.Melts))
	}
	w.say("%s", w.flush())
	w.tension()
}

// flush says when the cloth is cut at the gunwales.
func (w *writer) flush() string {
	edge := "fold the edge in"
	if w.fiber() != fabric.Cotton {
		edge = "sear or fold the edge"
	}
	return "Wherever the cloth is still slack, draw the tacks, pull by what stands over and tack once more. When you will not pull at it again, and not before, cut it flush with the gunwales' upper edges, and " + edge + "."
}

// hotTools warns of what is hot that draws or cuts the cloth, "" where nothing is.
func (w *writer) hotTools() string {
	const fumes = " burns hands and gives off fumes from synthetic cloth: it needs ventilation, so open the doors; keep the other hand out of its way and a bucket of water near. Cut away from yourself."
	switch w.fiber() {
	case fabric.Polyester:
		return "A hot iron or a hot knife" + fumes
	case fabric.Nylon:
		return "A hot knife" + fumes
	}
	return ""
}

// cautionOf sends the reader to the caution of a step, which is told once, where the step is.
func (w *writer) cautionOf(s hours.Stage) string {
	return fmt.Sprintf("Read the caution of %s first, in the chapter Order of work.", wording.Capital(string(s)))
}

// spread letters a difference of temperatures in C.
func (w *writer) spread(c float64) string {
	return report.Either(w.Letters.Units, fmt.Sprintf("%.0f degrees C", c), fmt.Sprintf("%.0f degrees F", math.Round(c*1.8/5)*5))
}

// tension says what the skin may pull, beside what the design reckons with.
func (w *writer) tension() {
	r, got := w.fiber().Tension(), w.Frame.Design.Skin.Tension
	pull := func(v float64) string { return fmt.Sprintf("%.2g", w.Letters.Units.Value(v, "N/mm")) }
	w.say("Drawn so, a skin of %s pulls with %s to %s %s of the boat's length, %s likely: from memory, nobody has published measured skins. The balance of this frame reckons with %s.", w.fiber(), pull(r.Low), pull(r.High), report.Either(w.Letters.Units, "N on each mm", "lb on each inch"), pull(r.Likely), pull(got))
	if got > 0 && (got < r.Low || got > r.High) {
		w.warn(fmt.Sprintf("The tension of the design, %g N/mm, is outside what %s gives. Set skin.tension between %g and %g, and look at What holds the shape again.", got, w.fiber(), r.Low, r.High), "from memory")
	}
}

// coats is the coating, coat by coat.
func (w *writer) coats() {
	k := w.Needs.Coating
	if k.Count == 0 {
		w.say("The design has no coats: bare cloth leaks.")
		return
	}
	w.section("Coat it")
	w.say("%s", w.cautionOf(hours.Coat))
	rate := func(m2 float64) string {
		return report.Either(w.Letters.Units, fmt.Sprintf("%.1f m2", m2), fmt.Sprintf("%.0f sq ft", m2*10.7639*quart))
	}
	t := report.Titled("Coat by coat").Names("Coat").Numbers("Takes", report.Either(w.Letters.Units, "A liter covers", "A quart covers")).Words("Wait before the next")
	wait := []string{"until it no longer comes off on a glove, 2 to 6 hours when the shop is warm", "the same; past a day, roughen it first, or the next one peels"}
	for i := range k.Count {
		takes, covers := k.EachLater, fabric.Spread(k.Solids, k.Film)
		name := fmt.Sprint(i + 1)
		if i == 0 {
			takes, covers = k.FirstCoat, fabric.FirstSpread(w.fiber(), k.Cloth)
			name += ", fills the cloth"
		}
		then := wait[min(i, 1)]
		if i == k.Count-1 {
			then = "a week before the water, or as the maker says"
		}
		t.Row(name, w.liters(w.coat(takes)), rate(covers), then)
	}
	w.add(t.Noted(fmt.Sprintf("The first coat fills the room between the threads; each later one leaves a film of %.0f um: volume solids in percent times %s covers. Takes is with losses, covers without; all coats together are %s. Times are common practice; what the maker's sheet says comes first.", k.Film, report.Either(w.Letters.Units, "10 over the film in um are the m2 that a liter", "102 over the film in um are the sq ft that a quart"), w.liters(w.mixed()))))
	w.add(report.List{First: 1, Items: []string{
		fmt.Sprintf("Wait for dry weather or a dry shop, %s to %s. Wipe the cloth with a dry cloth; no oil, no wax, no dust.", strings.TrimSuffix(strings.TrimSuffix(w.degrees(15), " degrees C"), " degrees F"), w.degrees(25)),
		"Mix only what you brush out before it thickens, by the maker's proportions, by weight if you can.",
		"First coat: work it into the cloth with a stiff brush from the keel outward until the weave is full and dark. Wipe off what hangs in runs inside.",
		"Later coats: thin, with a roller and a brush after it, each across the one before. The seams at the stems get one more.",
		"Hold a lamp inside in the dark: touch up every pinhole before the last coat.",
	}})
}

// cloth says whether the stringers hold the cloth off the ribs.
func (w *writer) cloth() {
	f, c := w.Frame, w.Clearance
	near := c.Nearest
	if len(c.Proud) == 0 {
		if near.By <= -0.1 {
			w.say("The stringers hold the flat cloth off every rib. Rib %s comes nearest: its outer face lies %s inside the cloth between %s, the least of all in the boat as drawn. The table has the room at each rib; Judging by eye has that of the rib it shows proud. Stringers planed thinner leave less.",
				near.Rib, w.Fine(-near.By), near.Between(f))
		}
		return
	}
	text := fmt.Sprintf("Ribs %s stand outside the flat cloth, most of all rib %s, by %s between %s: the cloth lies on them there, they show through and chafe it.",
		skin.Runs(f, c.Proud), near.Rib, w.Fine(near.By), near.Between(f))
	if c.Cure != nil {
		text += fmt.Sprintf(" The cheapest cure, before the stringers are lashed: %s, and make the book and the patterns anew; then every rib stays inside the cloth.", c.Cure.Words(f.Design, w.Fine))
	} else {
		text += " Round their outer edges over with care."
	}
	w.say("%s", text)
}
