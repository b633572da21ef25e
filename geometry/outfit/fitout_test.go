package outfit

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/shop/shoptest"
	"ribwright/geometry/water"
)

// ship is a shipped boat with outfits.
func ship(t *testing.T, boat string, change func(*design.Design)) Ship {
	t.Helper()
	f := frametest.Shipped(t, boat, change)
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	s, err := NewShip(f, f.Design.Gear, w)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// every gives a design all outfits.
func every(d *design.Design) {
	s, p, r := d.Sail(), d.Pair(), d.Row()
	p.Purpose = design.OpenWater
	d.Outfit = &design.Outfit{Sail: &s, Pair: &p, Row: &r}
}

func weigh(t *testing.T, o *Outfits) map[string]float64 {
	t.Helper()
	all, err := o.Weights()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]float64{}
	for _, w := range all {
		out[string(w.Name)] = weight.Sum(w.Items).Mass
	}
	return out
}

// TestTogether: each outfit is sized with the weight of the others as they are alone,
// and floats at the sum of all masses, by plain addition.
func TestTogether(t *testing.T) {
	alone := map[string]float64{}
	for name, add := range map[string]func(*design.Design){
		"sail": func(d *design.Design) { s := d.Sail(); d.Outfit = &design.Outfit{Sail: &s} },
		"pair": func(d *design.Design) {
			p := d.Pair()
			p.Purpose = design.OpenWater
			d.Outfit = &design.Outfit{Pair: &p}
		},
		"row": func(d *design.Design) { r := d.Row(); d.Outfit = &design.Outfit{Row: &r} },
	} {
		got := weigh(t, Of(ship(t, "lake", add)))
		if len(got) != 1 {
			t.Fatalf("%s: %v", name, got)
		}
		alone[name] = got[name]
	}
	s := ship(t, "lake", every)
	o := Of(s)
	crew, gear := weight.Sum(s.Boat.Crew).Mass, weight.Sum(s.Boat.Gear).Mass
	now := weigh(t, o)
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %.6f kg, want %.6f", what, got, want)
		}
	}
	near("all up under sail", o.Sail.Load.Mass, s.Boat.Own().Mass+crew+gear+alone["pair"]+alone["row"]+now["sail"])
	near("all up rowed", o.Row.Load.Mass, s.Boat.Own().Mass+o.Row.Body.Mass+gear+alone["sail"]+alone["pair"]+now["row"])
	near("the pair", o.Pair.Load.Mass, 2*(s.Boat.Own().Mass+crew+gear)+alone["sail"]+alone["row"]+2*now["pair"])
	// The verbs say the same of an outfit as book and float do.
	for _, n := range names() {
		one, err := One(s, n)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range [][2]float64{{loaded(one, Sail), loaded(o, Sail)}, {loaded(one, Pair), loaded(o, Pair)}, {loaded(one, Row), loaded(o, Row)}} {
			if w[0] != 0 {
				near("by the verb "+string(n), w[0], w[1])
			}
		}
	}
	if a, b := Of(ship(t, "lake", func(d *design.Design) { s := d.Sail(); d.Outfit = &design.Outfit{Sail: &s} })).Sail, o.Sail; a.Rest.Draft >= b.Rest.Draft {
		t.Errorf("the sail's boat draws %.1f mm alone and %.1f mm with 17 kg more", a.Rest.Draft, b.Rest.Draft)
	}
}

// loaded is all that floats under an outfit, kg; 0 when it is not there.
func loaded(o *Outfits, n Name) float64 {
	switch {
	case n == Sail && o.Sail != nil:
		return o.Sail.Load.Mass
	case n == Pair && o.Pair != nil:
		return o.Pair.Load.Mass
	case n == Row && o.Row != nil:
		return o.Row.Load.Mass
	}
	return 0
}

// TestTooMuch: an outfit under which the boat goes over is named and left out; the
// others stay.
func TestTooMuch(t *testing.T) {
	o := Of(ship(t, "brook", func(d *design.Design) {
		every(d)
		d.Outfit.Sail.Area = 8
		d.Gear = []design.Gear{{Name: "Statue", Mass: 60, Height: 1000}}
	}))
	if o.Sail != nil || len(o.Findings) == 0 || !strings.Contains(o.Findings[0].Text, "the sail is not counted: ") {
		t.Errorf("sail %v, notes %+v", o.Sail != nil, o.Findings)
	}
}

// TestInTheWay: outfits that take the same place are named, others are not. Places as
// they are typed: a beam of a pair lies on a bar of the rowing frame, a mast stands on
// the rower's lap.
func TestInTheWay(t *testing.T) {
	s := ship(t, "lake", every)
	row := Of(s).Row
	about := func(change func(*design.Design)) map[string]int {
		out := map[string]int{}
		for _, n := range Of(ship(t, "lake", func(d *design.Design) { every(d); d.Outfit.Row.SeatAt = measure.Length(row.SeatX); change(d) })).Findings {
			out[n.About]++
		}
		return out
	}
	if n := about(func(d *design.Design) { d.Outfit.Pair.Apart = 1900 }); n["places"] != 0 || n["sail on a pair"] != 1 || n["oars in a pair"] != 1 {
		t.Errorf("far apart: %v", n)
	}
	bar := math.Abs(row.LockX - 140)
	if n := about(func(d *design.Design) { d.Outfit.Pair.Apart = measure.Length(2 * bar) }); n["places"] == 0 {
		t.Errorf("a beam on the after bar, %.0f mm aft: %v", bar, n)
	}
	if n := about(func(d *design.Design) {
		d.Outfit.Pair.Apart, d.Outfit.Sail.MastAt = 1900, measure.Length(row.SeatX)
	}); n["places"] == 0 {
		t.Errorf("a mast on the seat: %v", n)
	}
}

// TestCounted: sticks, things and hours of the outfits are added to the boat's, no more
// and no less.
func TestCounted(t *testing.T) {
	for _, boat := range design.ShippedNames() {
		s := ship(t, boat, every)
		f, kits := s.Boat.Frame, Of(s).Kits()
		bare, plan := cutlist.Heat(nil).Sticks(f), cutlist.Heat(nil).Make(f, kits...)
		for _, m := range plan.Missing() { // the boards that the builder has may be too small
			if m.Stick < len(bare) || !strings.Contains(m.Why, "no board named") {
				t.Errorf("%s: no wood for %s: %s", boat, plan.Sticks[m.Stick].Part, m.Why)
			}
		}
		wood, want, marks := 0.0, 0.0, map[string]bool{}
		thick := map[string]float64{}
		for _, k := range plan.Sticks[len(bare):] {
			if marks[k.Mark] {
				t.Errorf("%s: two sticks are marked %s", boat, k.Mark)
			}
			marks[k.Mark] = true
			wood += k.Net
			thick[k.Member] += k.Thickness
		}
		things := map[string]float64{}
		for _, k := range kits {
			for _, p := range k.Pieces {
				want += float64(p.Count) * p.Volume()
			}
			for _, v := range k.Things {
				things[v.Key] += v.Amount
			}
		}
		if math.Abs(wood/want-1) > 1e-12 {
			t.Errorf("%s: sticks hold %.0f mm3 of wood, the pieces %.0f", boat, wood, want)
		}
		if got, ask := thick["Beam 1 (pair)"], beamThick(kits); ask > 45 && math.Abs(got-ask) > 1e-9 {
			t.Errorf("%s: layers of %.1f mm make a beam of %.1f", boat, got, ask)
		}
		_, bareNeeds := shoptest.Needs(t, f)
		_, needs := shoptest.Needs(t, f, kits...)
		had := map[string]float64{}
		for _, i := range bareNeeds.Items {
			had[i.Key] = i.Amount
		}
		now := map[string]float64{}
		for _, i := range needs.Items {
			now[i.Key] = i.Amount
		}
		for key, add := range things {
			if math.Abs(now[key]-had[key]-add) > 1e-9 {
				t.Errorf("%s: %.1f of %s, want %.1f and %.1f", boat, now[key], key, had[key], add)
			}
		}
		for _, name := range cost.Levels() {
			table, err := cost.Level(name)
			if err != nil {
				t.Fatal(err)
			}
			if e := cost.Of(needs, plan, table); e.Without() != "" {
				t.Errorf("%s: no price at %s for %v", boat, name, e.Without())
			}
		}
	}
}

// TestHours: the operations are counted on the pieces.
func TestHours(t *testing.T) {
	s := ship(t, "lake", every)
	f, kits := s.Boat.Frame, Of(s).Kits()
	plan, needs := shoptest.Needs(t, f, kits...)
	work := hours.Count(f, plan, needs, kits...)
	got := map[string]float64{}
	for _, w := range work {
		if w.Stage == hours.Outfit {
			got[w.Name] = w.Count
		}
	}
	// By hand from the lists: step, bed, two sides of the box, partner, leeboard, bar, two cheeks, six clips; four
	// saddles to a beam; two bars, two rowlock boards, four clips, seat, two cheeks and their
	// brace, footrest with two rails, two knees and two slats under the heels;
	// the four corners of a spritsail.
	for name, want := range map[string]float64{"sail: shape and drill boards": 15, "pair: shape and drill boards": 8, "row: shape and drill boards": 19, "sail: patch and eyelet corners": 4, "row: fit and try on land": 1} {
		if got[name] != want {
			t.Errorf("%s: %.1f, want %.0f", name, got[name], want)
		}
	}
	bare, least := shoptest.Needs(t, f)
	if h := hours.Hours(hours.Count(f, bare, least), hours.Outfit, hours.Average); h != 0 {
		t.Errorf("%.1f h of work on no outfits", h)
	}
}

func beamThick(kits []kit.Kit) float64 {
	for _, k := range kits {
		for _, p := range k.Pieces {
			if p.Name == "Beam 1" {
				return p.Thick
			}
		}
	}
	return 0
}
