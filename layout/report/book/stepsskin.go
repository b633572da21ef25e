package book

import (
	"fmt"
	"slices"

	"ribwright/geometry/fabric"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
)

// skinStep and coatStep are the skin in the order of work.
func (w *writer) skinStep() step {
	tool, dry, cut, care := "iron with a thermometer", "", "shears, ", "A needle goes through a finger as easily as through cloth, and shears slip: push and cut away from you."
	if words := w.hotTools(); words != "" {
		care, cut = words, "shears or a hot knife, "
	}
	switch w.fiber() {
	case fabric.Nylon:
		tool, dry = "tub of water", "overnight, until the damp cloth is dry"
	case fabric.Cotton:
		tool, dry = "kettle and sponge", "a day, until the wet cloth is dry"
	}
	return step{name: string(hours.Skin), work: stage(hours.Skin), buys: []string{"cloth", "thread", "tack"}, do: []string{
		"Turn the frame upside down on its trestles, level.",
		"Draw the middle thread and the marks of all ribs on the sheet, by the table Marks on the cloth.",
		"Lay it over the frame, and tack it from amidships outward.",
		"Sew both ends. The chapter Skin has each act of it, under Sew and draw on the cloth.",
		w.drawTaut(),
		"Draw tacks where it is still slack, pull by what stands over, and tack again.",
		"Cut the cloth flush with the gunwales' upper edges now, and not before.",
	}, tools: "tape, straightedge, soft pencil, pins, needles, palm, flat pliers, tack hammer or stapler, " + cut + tool,
		check: "drum-tight, no slack between stringers, both sides alike, every tack in one line near the gunwale's upper edge",
		wrong: "a slack place or a wrinkle: draw the tacks beside it and pull again, before the cloth is cut and before any coat",
		dry:   dry, care: care, who: "common practice, no source read"}
}

// drawTaut says in short how the cloth is made tight.
func (w *writer) drawTaut() string {
	switch w.fiber() {
	case fabric.Polyester:
		return "Draw it taut with the iron, in the passes that the chapter Skin gives under Draw it taut."
	case fabric.Nylon:
		return "Let it dry where it is, overnight, out of the sun; it draws taut by itself. No iron."
	}
	return "Sponge it with hot water once and let it dry for a day; it draws taut by itself. No iron."
}

func (w *writer) coatStep() step {
	n := w.Needs.Coating.Count
	return step{name: string(hours.Coat), work: stage(hours.Coat), buys: []string{"coating"}, do: slices.Concat([]string{
		"Mix what you brush out in a quarter of an hour.",
		fmt.Sprintf("Brush on %s, thin, each on the one before while it still bonds. Coat it, in the chapter Skin, says how much each takes.", wording.Counted(n, "coat")),
		"Before the last coat hold a lamp inside in the dark. Touch up every pinhole."},
		w.band(), []string{"Give the seams at the stems one coat more."}),
		tools: "scales or a measuring cup, pots and sticks to mix in, brushes, rollers, gloves, goggles, respirator, lamp, abrasive", dry: "hours between coats, a week before the water; the maker's sheet comes first",
		check: "a lamp inside in the dark shows no pinhole",
		wrong: "a pinhole or a run: roughen it when it is hard, and coat that place again",
		care:  "Two-part urethanes hold diisocyanates: asthma, other lung disease and deaths have followed exposure, and once sensitized a person stays so. Brush or roll, never spray; ventilate; gloves, goggles, and the respirator that the maker's sheet asks for; supplied air where an air-purifying mask is not enough. Keep others out until it is dry.",
		who:   "NIOSH alert 96-111"}
}
