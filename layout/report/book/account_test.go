package book

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/materials"
	"ribwright/layout/pattern"
)

// bareBoat has nothing that a boat can do without.
func bareBoat(d *design.Design) {
	d.Thwarts, d.Gunwale.Plies, d.Gunwale.Glued, d.Gunwale.Scarfs = nil, 1, design.GluedStraight, nil
	d.Ribs.Spare, d.Skin.Cloth = 0, 0 // the coats of the design have nothing to lie on
	d.Outside.Outwale, d.Outside.KeelStrip, d.Outside.Painters, d.Outside.Drain = 0, 0, 0, false
	d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0
}

// accounted are boats that want different work.
func accounted(t *testing.T) map[string]Facts {
	of := func(name string, change func(*design.Design)) Facts {
		d := shipped(t, name)
		if change != nil {
			change(d)
		}
		if p := d.Check(); p != nil {
			t.Fatal(name, p)
		}
		return facts(t, d, measure.Metric)
	}
	stiff := own(t, shipped(t, "lake"))
	stiff.Bend.Boat.Why = &finding.Finding{Text: "too stiff"}
	return map[string]Facts{
		"brook": of("brook", nil), "lake": of("lake", nil), "river": of("river", nil),
		"by gap":      of("brook", func(d *design.Design) { d.Gunwale.Mortises = design.ByGap }),
		"on forms":    of("lake", func(d *design.Design) { d.Bending.Method = design.OnForms }),
		"bare":        of("brook", bareBoat),
		"solid stems": of("brook", func(d *design.Design) { d.Bow.Made = design.StemsSolid }),
		"laminated stems": of("brook", func(d *design.Design) {
			d.Bow.Made, d.Bending.StemPlies, d.Bending.StemSpecies = design.StemsLaminated, 11, "white ash"
		}),
		"no neutral set": stiff,
		"outfitted":      outfitted(t, "lake", design.Spritsail, measure.Metric),
	}
}

// TestAccounts walks the lists both ways. Each stick, each operation and each thing that is
// bought is used by a step, a stick and an operation by one alone; a step that asks for wood,
// an operation or a thing finds it in the lists.
func TestAccounts(t *testing.T) {
	for name, f := range accounted(t) {
		t.Run(name, func(t *testing.T) {
			w := &writer{Facts: f}
			sticks, works, items := map[string]int{}, make([]int, len(f.Work)), map[string]int{}
			for _, s := range w.steps() {
				for _, k := range w.sticksOf(s) {
					sticks[k.Mark]++
				}
				for i, k := range f.Work {
					if s.work(k) {
						works[i]++
					}
				}
				for _, k := range w.itemsOf(s) {
					items[k.Key]++
				}
				for _, family := range s.wood {
					// A frame without cross pieces, blocks or stringers has no such sticks.
					if !slices.ContainsFunc(f.Plan.Sticks, func(k cutlist.Stick) bool { return k.Family == family }) && !slices.Contains([]cutlist.Family{cutlist.Block, cutlist.Thwart, cutlist.Stringer, cutlist.Stem}, family) {
						t.Errorf("%s fits a %s and the cut list has none", s.name, family)
					}
				}
				if len(w.workOf(s)) == 0 {
					t.Errorf("%s takes no time", s.name)
				}
				for what, words := range map[string]string{"tools": s.tools, "check": s.check, "cure": s.wrong, "caution": s.care, "source": s.who} {
					if words == "" {
						t.Errorf("%s has no %s", s.name, what)
					}
				}
			}
			for _, k := range f.Plan.Sticks {
				if n := sticks[k.Mark]; n != 1 {
					t.Errorf("%s, %s: fitted in %d steps", k.Mark, k.Part, n)
				}
			}
			for i, k := range f.Work {
				if n := works[i]; n != 1 {
					t.Errorf("%s: done in %d steps", k.Name, n)
				}
			}
			for _, k := range f.Needs.Items {
				if items[k.Key] == 0 {
					t.Errorf("%s (%s): no step uses it", k.Key, k.Name)
				}
				if !(k.Amount > 0) && !strings.HasPrefix(k.Key, "wood: ") {
					t.Errorf("%s: %g %s", k.Key, k.Amount, k.Unit)
				}
			}
			unheardOf(t, f, w.steps())
			weighed(t, f)
			drawnOrTold(t, f)
		})
	}
}

// unheardOf looks for words of what the boat does not have.
func unheardOf(t *testing.T, f Facts, steps []step) {
	d := f.Frame.Design
	has := func(key string) bool {
		return slices.ContainsFunc(f.Needs.Items, func(i materials.Item) bool { return i.Key == key })
	}
	for words, there := range map[string]bool{
		"cross piece": len(f.Frame.Thwarts) > 0, "spare blank": d.Ribs.Spare > 0, "form for rib": f.Bend.OnForms(),
		"plies": d.Gunwale.Plies > 1 || d.Bending.StemPlies > 0, "edge-set": f.Bend.EdgeSet != nil, "props": f.Bend.EdgeSet != nil,
		"glue": has("glue"), "scarf": (&writer{Facts: f}).alongSticks() > 0, "tack": d.Skin.Cloth > 0, "Brush on": d.Skin.Cloth > 0, "sew": d.Skin.Cloth > 0,
		"utwale": d.Outside.Outwale > 0, "trip under the keel": d.Outside.KeelStrip > 0, "ainter": d.Outside.Painters > 0, "rain:": d.Outside.Drain,
		"gauges for the gaps": f.Frame.Gunwale.Blocks != nil, "outer": d.Gunwale.Mortises == design.CutMortises, "eyelet": f.Outfits.Sail != nil, "boiler": true,
	} {
		for _, s := range steps {
			if said := strings.Join(s.do, "\n") + s.dry; !there && strings.Contains(said, words) {
				t.Errorf("%s speaks of %q: %s", s.name, words, said)
			}
		}
	}
}

// weighed: what the pieces of the cut list weigh is what the list of weights has for
// them: to 1 % where the cut list goes by finished lengths, exactly for kits.
func weighed(t *testing.T, f Facts) {
	mass := map[string]float64{}
	density := func(species string) float64 {
		s, err := f.Frame.Design.Wood(species)
		if err != nil {
			t.Fatal(err)
		}
		return s.Density * 1e-9
	}
	entry := map[cutlist.Family]string{cutlist.Gunwale: "Gunwales", cutlist.Block: "Gunwales", cutlist.Rib: "Ribs", cutlist.Keel: "Keel", cutlist.Stringer: "Stringers",
		cutlist.Stem: "Stems and breasthooks", cutlist.Breasthook: "Stems and breasthooks", cutlist.Thwart: "Cross pieces"}
	if d := f.Frame.Design; d.MadeStems() == design.StemsPlywood { // bought as sheets
		for _, s := range []frame.Stem{f.Frame.Bow, f.Frame.Stern} {
			mass[entry[cutlist.Stem]] += math.Abs(curve.Area(s.Outline.Flatten(0.05))) * s.Thickness * density(d.StemWood())
		}
	}
	kits := map[string]float64{}
	for _, s := range f.Plan.Sticks {
		if s.Spare {
			continue
		}
		if s.Kit == "" {
			mass[entry[s.Family]] += s.Net * density(s.Species)
		} else {
			kits[s.Kit] += s.Net * density(s.Species)
		}
	}
	for _, i := range f.Afloat.Parts {
		for what, kg := range mass {
			if strings.HasPrefix(i.Name, what) && kg > 0 {
				if got := i.Load().Mass; math.Abs(got/kg-1) > 0.01 {
					t.Errorf("%s: weighed as %.3f kg, the sticks are %.3f kg", i.Name, got, kg)
				}
				delete(mass, what)
			}
		}
	}
	for what, kg := range mass {
		if kg > 0 {
			t.Errorf("%s of %.3f kg are not weighed", what, kg)
		}
	}
	for _, k := range slices.Concat(f.Afloat.Fittings, f.Outfits.Kits()) {
		items, err := k.Items(f.Frame.Design)
		if err != nil {
			t.Fatal(err)
		}
		sum := -kits[k.Name]
		for _, i := range items {
			sum += i.Load().Mass
		}
		for _, b := range k.Things {
			sum -= b.Mass
		}
		if math.Abs(sum) > 1e-9 {
			t.Errorf("%s: %.4f kg are weighed twice or not at all", k.Name, sum)
		}
	}
}

// drawnOrTold: each stick of the boat has a pattern or, where it is straight, a dimension
// that is marked on the wood; the block of each piece of a kit has three sizes.
func drawnOrTold(t *testing.T, f Facts) {
	told := ""
	all, err := marks.Of(f.Frame, f.Bend)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range all {
		told += strings.ToLower(fmt.Sprint(m.Part)) + "\n"
	}
	for _, p := range pattern.All(f.Bend, measure.Metric, pattern.Stick) {
		told += strings.ToLower(p.Name+" "+p.Title) + "\n"
	}
	if !strings.Contains(told, "bow stem") {
		t.Error("the bow stem has no pattern")
	}
	for _, s := range f.Plan.Sticks {
		if !(s.Length > 0 && s.Width > 0 && s.Thickness > 0) {
			t.Errorf("%+v has no size", s)
		}
		if s.Kit != "" || s.Spare {
			continue
		}
		word := strings.ToLower(string(s.Family))
		switch s.Family {
		case cutlist.Thwart:
			word = strings.ToLower(s.Part)
		case cutlist.Gunwale, cutlist.Block:
			word = "mortise"
		}
		if !strings.Contains(told, word) {
			t.Errorf("%s (%s) has neither a pattern nor a mark", s.Part, word)
		}
	}
}
