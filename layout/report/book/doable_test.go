package book

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/trial/bend"
)

// TestRestsOfRips: before a rip whose rest is ripped once more stands what is crosscut off it,
// which is its pieces with a saw cut after each; every line says what its pieces are planed to.
func TestRestsOfRips(t *testing.T) {
	for _, name := range []string{"brook", "river"} {
		f := facts(t, shipped(t, name), measure.Metric)
		b := sharedBook(t, f)
		all, rests := tables(b), 0
		for _, v := range f.Plan.Woods {
			for i, s := range v.Boards {
				way := ""
				if s.Board.Sawn != "" {
					way = ", " + string(s.Board.Sawn) + "-sawn"
				}
				table := all[fmt.Sprintf("%s, board %d of %d%s, mm", strings.ToUpper(v.Species[:1])+v.Species[1:], i+1, len(v.Boards), way)]
				rows := table.Rows
				for _, r := range s.Rips {
					if p := f.Plan.Sticks[r.Layers[0][0].Stick]; !strings.Contains(rows[0][2], fmt.Sprintf("%.1f x %.1f", p.Width, p.Thickness)) {
						t.Errorf("%s: %v does not say that it is planed to %g by %g", name, rows[0], p.Width, p.Thickness)
					}
					if len(r.Rest) > 0 {
						rests++
						off := 0.0
						for _, p := range r.Layers[0] {
							off += math.Ceil(p.Length) + f.Plan.Kerf
						}
						if want := fmt.Sprintf("first crosscut %.0f off this rip", off); !strings.HasPrefix(rows[0][3], want) {
							t.Errorf("%s: %q, want %q", name, rows[0][3], want)
						}
					}
					rows = rows[1+len(r.Rest):]
				}
			}
		}
		if rests == 0 {
			t.Errorf("%s: no rest is ripped", name)
		}
		inOrder(t, steps(b)["Sawing"], "Rip each board", "rips the rest of a rip", "Cut the checked end off each rip", "Plane every stick")
	}
}

// TestBeforeItIsHidden: what is out of reach later is done before: gunwales' ends are bored
// before they are lashed, stringers' ends feathered before they are, bolts of seats put in and
// taken out before the skin, cloth pulled before it is cut, wood joined before it is oiled.
func TestBeforeItIsHidden(t *testing.T) {
	b := sharedBook(t, facts(t, shipped(t, "river"), measure.Metric))
	inOrder(t, stepsOf(b), "sloping cut at each end", "outside the sloping marks", "Leave it overnight", "Cut the mortises", "Bore each end across for its lashing",
		"Glue the layers of a blank", "Leave them overnight", "Saw each stem to its pattern", "Prick the crosses", "Lash the ends there", "Glue the breasthooks in", "Leave them overnight", "drive them",
		"Feather their ends", "Lash the stringers", "Saw the cross pieces by hand", "Bow seat: saw its four hangers", "through gunwale, block and hanger in one", "put in the bolts, 8 of M6 by 55 mm", "with 1 washer under its head", "Leave it overnight", "take off the hangers", "Oil or varnish every stick", "loops of webbing for the straps",
		"tack it from amidships", "pull by what stands over", "Cut the cloth flush", "bolt its hangers dry", "cut their slots", "bore hangers and rails for the pegs", "glue spreaders and rails", "Leave it overnight", "round all edges and oil it", "sew the webbing",
		"Swamp it")
	if strings.Contains(stepsOf(b), "landings to") || strings.Contains(steps(b)["Skin"], "the iron") {
		t.Error("a stem has landings to cut, or nylon is ironed")
	}
}

// TestPeggedWhenFree: heads that a spreader's stick covers are left out where all others are
// pegged, and pegged when it is out; pegs are to hand in both steps.
func TestPeggedWhenFree(t *testing.T) {
	b := sharedBook(t, facts(t, shipped(t, "brook"), measure.Metric))
	all := steps(b)
	inOrder(t, all["Ribs"], "Peg all heads", "not yet those of ribs A7, M and F7", "after the battens are lashed")
	inOrder(t, all["Keel and stringers"], "Fit and bolt the cross pieces", "take the spreaders out", "Peg the heads of ribs A7, M and F7 now")
	inOrder(t, stepsOf(b), "its middle 26 mm aft of the stick's", "Peg all heads")
	f := own(t, shipped(t, "brook"))
	for i := range f.Bend.Spread.Spreaders {
		s := &f.Bend.Spread.Spreaders[i]
		s.Waits, s.Over, s.Strap.Off = nil, nil, 0
	}
	f.Bend.Spread.Spreaders[0].Waits, f.Bend.Spread.Spreaders[1].Over = []string{"A11"}, []string{"Carrying thwart"}
	said := stepsOf(bookOf(t, f))
	inOrder(t, said, "lead it over no mortise", "not yet those of rib A11:", "Glue the heads of rib A11 now", "Carrying thwart has its bolts under the stick at midship", "Peg the heads of rib A11 now")
	f.Bend.Spread.Spreaders[0].Waits = nil
	if said := stepsOf(bookOf(t, f)); strings.Contains(said, "not yet those") || !strings.Contains(said, "shows. The heads of the last 2 ribs") {
		t.Error("no stick is in the way, and heads wait")
	}
}

// TestRoundedOnce: edges under cord are rounded while the sticks are loose, thin sticks by a
// quarter of their thickness, the heads of ribs not at all: with their tenon of 18 mm and 12 mm to
// spare they reach 30 mm in. No step rounds them again or by another figure.
func TestRoundedOnce(t *testing.T) {
	b := sharedBook(t, facts(t, shipped(t, "brook"), measure.Metric))
	inOrder(t, steps(b)["Sawing"], "Plane every stick", "of the ribs to a radius of 1.5 mm, of the stringers to 2.5 mm and of the keel to 3.0 mm", "the last 50 mm of each rib", "the spare blanks")
	if said := told(b); strings.Contains(said, "Round over all") || strings.Contains(said, "Round all edges under cord") {
		t.Error("edges are rounded twice")
	}
}

// TestOneFit: the room of a head in its mortise is the design's, and what is planed off a head
// is what its wood swells beyond that room: width times movement times the rise in moisture
// (Wood Handbook, FPL-GTR-282, chapter 4).
func TestOneFit(t *testing.T) {
	d := shipped(t, "river")
	d.Ribs.FitWidth = 0.4
	wood, err := d.Wood(d.Ribs.Species)
	if err != nil {
		t.Fatal(err)
	}
	rise := d.Bending.Moisture - d.Bending.Stock.Bought()
	swells := float64(d.Ribs.Width) * wood.Tangential * rise
	b := sharedBook(t, facts(t, d, measure.Metric))
	inOrder(t, steps(b)["Ribs"], "0.4 mm longer than the rib is wide", fmt.Sprintf("%.1f mm in width", swells), fmt.Sprintf("plane %.1f mm off their width", math.Ceil(10*(swells-0.4))/10))
	d.Ribs.FitWidth = 3
	if said := steps(sharedBook(t, facts(t, d, measure.Metric)))["Ribs"]; !strings.Contains(said, "go in hot as they are") {
		t.Errorf("heads with room are planed: %s", said)
	}
}

// TestBilgeBatten: it lies on the marks that Judging by eye looks along, as far as it bends dry.
func TestBilgeBatten(t *testing.T) {
	f := own(t, shipped(t, "river"))
	at := f.Eye.Sighted
	b := bookOf(t, f)
	inOrder(t, steps(b)["Ribs"], fmt.Sprintf("marks of S%d; the sticks of S4 serve", at), "Tie it from rib ")
	if !strings.Contains(told(b), fmt.Sprintf("The batten on the marks of S%d", at)) {
		t.Error("Judging by eye looks along another batten")
	}
	w := &writer{Facts: f}
	aft, fore := w.dryRun(at)
	for _, h := range f.Bend.Stringers[at-1].Hot {
		for _, r := range f.Frame.Ribs {
			if (r.Name == aft || r.Name == fore) && r.Station > h.Bent.From+1 && r.Station < h.Bent.To-1 {
				t.Errorf("a dry batten is tied to %s, where it would be steamed", r.Name)
			}
		}
	}
	f.Bend.Stringers[at-1].Hot = []bend.Hot{{Bays: frame.Zone{From: -10, To: 10}, Bent: frame.Zone{From: -10, To: 10}}}
	if aft, fore := w.dryRun(at); aft != "" || fore != "" {
		t.Errorf("hot at midship, dry from %s to %s", aft, fore)
	}
}

// TestWoodWhereItIsUsed: the keel is for setting up, hangers and blocks of seats for the bare frame, and
// glue stands only with a step that glues.
func TestWoodWhereItIsUsed(t *testing.T) {
	f := facts(t, shipped(t, "river"), measure.Metric)
	w := &writer{Facts: f}
	blocks := 0
	for _, s := range w.steps() {
		for _, k := range w.sticksOf(s) {
			switch {
			case k.Family == cutlist.Keel && s.name != "setting up":
				t.Errorf("the keel is for %s", s.name)
			case strings.Contains(k.Part, "block"), strings.Contains(k.Part, "hanger"):
				if blocks++; s.name != "smoothing and oiling" {
					t.Errorf("%s is for %s", k.Part, s.name)
				}
			}
		}
	}
	if blocks != 2*(4+4) {
		t.Errorf("%d hangers and blocks of two seats with four each", blocks)
	}
	brook := &writer{Facts: facts(t, shipped(t, "brook"), measure.Metric)}
	for _, s := range brook.steps() {
		said := strings.ToLower(strings.Join(s.do, " "))
		if slices.Contains(s.buys, "glue") && !strings.Contains(said, "glue") {
			t.Errorf("glue is to hand for %s, which glues nothing", s.name)
		}
		if slices.Contains(s.buys, "bolt-5") && !strings.Contains(said, "bolt") {
			t.Errorf("bolts are to hand for %s, which bolts nothing", s.name)
		}
	}
}

// TestByMachine: what is cut to the boat as it stands is not cut by machine before.
func TestByMachine(t *testing.T) {
	f := facts(t, shipped(t, "river"), measure.Metric)
	inOrder(t, steps(sharedBook(t, f))["Patterns"], "cut gauges now, and breasthooks when their stock is sawn", "glued their blanks", "has cross pieces and hangers of seats too", "by hand from their patterns")
	bare := shipped(t, "brook")
	bareBoat(bare)
	bare.Bow.Made = design.StemsSolid
	if said := steps(sharedBook(t, facts(t, bare, measure.Metric)))["Patterns"]; strings.Contains(said, "leaves out") || strings.Contains(said, "blank") {
		t.Errorf("a boat without cross pieces: %s", said)
	}
}

// TestToolsNamed: what an act of the order of work is done with is among its step's tools or
// to hand.
func TestToolsNamed(t *testing.T) {
	asks := []struct{ act, tools string }{
		{`\b[Ss]aw (the|each|two|off|ends|a|one)|saw their`, "saw"}, {`\b[Pp]lane (the\b|their|each|two|every|away|it|both|so)|plane their`, "plane|spokeshave"},
		{`\b[Bb]ore\b`, "drill"}, {`\b[Mm]easure\b`, "tape|rule|scale"}, {`\b[Mm]ark (the|from|its|them)|Write`, "pencil|gauge"},
		{`\bscrape\b`, "scraper"}, {`spread glue|Glue the (heads|plies|breasthooks)|Glue the \d+ plies`, "glue"}, {`\bClamp\b`, "clamp"}, {`\bPare\b|pared`, "chisel"},
		{`windlass`, "windlass"}, {`[Ss]tretch a string`, "string"}, {`with a bevel`, "bevel"}, {`straightedge`, "straightedge"}, {`upright plank`, "plank"},
		{`wedges`, "wedges"}, {`[Ss]crew(s)? |screwed`, "screwdriver"}, {`whip `, "thread"}, {`Prick`, "awl"}, {`gauge\.|by their gauges`, "gauges"}, {`thermometer`, "thermometer"},
		{`nailed`, "nails"}, {`[Cc]arry .* with a square`, "square"}, {`wax them`, "wax"}, {`film`, "film"}, {`\b[Mm]ix |thickened with`, "stick"}, {`\b[Ss]oak `, "trough"},
		{`\bshims? (from|its)|add shims|on shims`, "shims"}, {`[Ll]ay a loose bar`, "bars"}, {`[Pp]ull out each tack|[Dd]raw tacks`, "pliers"}, {`bead of`, "gun"}, {`webbing`, "shears"},
		{`\b[Oo]il (or|it|them|all|every)`, "brush"}, {`kettle`, "kettle"}, {`Bolt the trestles|unbolt|bolt its hangers`, "wrench"}, {`[Gg]lue (the|one|them|a|both|spreaders|it)\b|spread glue`, "brush for glue"}}
	for _, name := range design.ShippedNames() {
		b := sharedBook(t, facts(t, shipped(t, name), measure.Metric))
		tools := toolsOf(b)
		for stage, acts := range steps(b) {
			if tools[stage] == "" {
				continue
			}
			for _, a := range asks {
				if act := regexp.MustCompile(a.act).FindString(acts); act != "" && !regexp.MustCompile(a.tools).MatchString(tools[stage]) {
					t.Errorf("%s, %s: %q wants %s, named are %s", name, stage, act, a.tools, tools[stage])
				}
			}
		}
	}
}
