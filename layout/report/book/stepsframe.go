package book

import (
	"fmt"
	"slices"

	"ribwright/geometry/boat/joint"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
)

// propped is what holds the gunwales while an edge-set is sprung.
func (w *writer) propped() string {
	if w.Bend.EdgeSet == nil {
		return ""
	}
	return "loose bars, a prop with a board for each end, hammer and nails, "
}

// frameSteps are from loose parts to a frame that stands by itself.
func (w *writer) frameSteps() []step {
	ribs := w.bending()
	heads := []string{"peg", "form"}
	if w.Needs.Joints.Head.Glue > 0 {
		heads = append(heads, "glue")
		ribs.dry += "; glue of rib heads overnight"
	}
	setup := step{name: string(hours.Setup), work: stage(hours.Setup), do: w.setUp(), wood: []cutlist.Family{cutlist.Keel}, buys: []string{"cord", "peg", "screw", "glue"}, dry: "glue of the breasthooks overnight",
		tools: "story stick, two trestles, blocks, shims, an upright plank for each stem, spreaders, " + w.propped() + "pencil, saw, strap or cord for a windlass, clamps, wedges, level, bevel, square, straightedge, string, tape, plane, brush for glue, steel plate, mallet, drill with a stop, countersink, screwdriver",
		check: "diagonals alike within 3 mm (1/8 in); the undersides at both ends as high port and starboard",
		wrong: "the diagonals differ: push the longer one's ends together until they agree, then lash the ends again. One side is high: shim its trestle",
		care:  "Bent gunwales are springs: tie every spreader before you let go.", who: "common practice, no source"}
	lash := step{name: string(hours.Lash), work: stage(hours.Lash), do: w.battensOn(), wood: []cutlist.Family{cutlist.Stringer}, buys: []string{"cord"},
		tools: "pencil, plane, fid, spring clamps, saw, drill with a stop, Forstner drill, chisel, bevel, tape, straightedge, wrench, brush and rags for oil" + w.toSteamEnds(), check: "sight every batten for a fair curve; " + w.levelPairs(),
		wrong: "look the picture up in Judging by eye. Cut that lashing, ease the batten, and lash it again",
		care:  "Awls and fids slip: push away from the other hand." + w.sleeveScalds(), who: "common practice, no source"}
	if len(w.waiting()) > 0 {
		lash.buys, lash.tools = append(lash.buys, "peg"), lash.tools+", hammer"
	}
	of := &lash
	if w.Bend.Boat.Why != nil {
		of = &setup
	}
	// Cross pieces are fitted in setting up where nothing else holds the shape, with the battens where ribs do.
	crosses := func(k hours.Work) bool { return k.Name == hours.CrossPieces }
	for _, s := range []*step{&setup, &lash} {
		mine := s == of
		usual := s.work
		s.work = func(k hours.Work) bool { return mine && crosses(k) || usual(k) && !crosses(k) }
	}
	of.wood, of.buys = append(of.wood, cutlist.Thwart), append(of.buys, "bolt-5", "oil")
	return []step{setup, {name: string(hours.Bend), work: stage(hours.Bend), wood: []cutlist.Family{cutlist.Rib}, buys: heads, do: ribs.do, tools: ribs.tools, dry: ribs.dry, check: ribs.check,
		wrong: "see Judging by eye: it has a picture and a cure for each fault. Steam a rib again before you force it",
		care:  "Steam scalds worse than boiling water and pure steam is invisible. Vent the box, drain it downhill, never plug it; stand aside when you open it; gauntlets, long sleeves, goggles. Burners make carbon monoxide: steam outdoors, and never let the kettle boil dry.",
		who:   "common practice; bend limits from memory"}, lash}
}

// sleeveScalds is the caution where ends are steamed in a sleeve, "" where none is.
func (w *writer) sleeveScalds() string {
	if w.toSteamEnds() == "" {
		return ""
	}
	return " A sleeve of steam scalds: gauntlets and goggles, its open end away from you, the boiler off before you pull it."
}

func (w *writer) levelPairs() string {
	if n := len(w.Frame.Stringers); n == 1 {
		return "the stringers level port and starboard"
	} else if n > 1 {
		return fmt.Sprintf("%d pairs level port and starboard", n)
	}
	return "the keel straight from end to end"
}

// battensOn is the work on keel and stringers, up to a frame that stands by itself.
func (w *writer) battensOn() []string {
	return slices.Concat(w.readyStringers(), acts(
		fmt.Sprintf("There are %d lashings of %d turns. The chapter Joints shows them.", w.Needs.Joints.Keel.Count+w.Needs.Joints.Stringers.Count, joint.Turns),
		"Lash the keel first, from midship to both ends, and take the ties off rib by rib."), w.letGo(), w.lashStringers(), w.cutToGaps(), w.takeOut())
}
