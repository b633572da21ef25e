package afloat

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
)

// TestCarried: the boat balances where its parts do, by their moments; a yoke farther off
// than 50 mm is missed, with a place between ribs that the same finding accepts.
func TestCarried(t *testing.T) {
	d := shipped(t, "lake")
	d.Thwarts[0].At = 65
	r := run(t, d)
	moment, mass := 0.0, 0.0
	for _, p := range r.Boat.Parts {
		for _, l := range p.Loads {
			moment, mass = moment+l.Mass*l.At.X, mass+l.Mass
		}
	}
	if c := r.Carried; math.Abs(c.Balance-moment/mass) > 1e-9 || math.Abs(c.Mass-mass) > 1e-9 || c.By != "Yoke" || c.At != 65 {
		t.Errorf("%+v, want %g kg at %g mm", c, mass, moment/mass)
	}
	f := finding.Finding{}
	for _, v := range r.Findings {
		if v.About == "carrying" {
			f = v
		}
	}
	at := 0.0
	if n, _ := fmt.Sscanf(f.Cure, "Yoke at %f mm", &at); n != 1 || f.Verdict != finding.Missed {
		t.Fatalf("%+v", f)
	}
	d.Thwarts[0].At = measure.Length(at)
	if c := run(t, d).Carried; math.Abs(c.Off()) > CarryWithin {
		t.Errorf("the cure, %s, leaves it %.0f mm off", f.Cure, c.Off())
	}
	for _, name := range design.ShippedNames() {
		if c := run(t, shipped(t, name)).Carried; math.Abs(c.Off()) > CarryWithin {
			t.Errorf("%s is carried %.0f mm off its balance", name, c.Off())
		}
	}
}

// TestCureClearOfPeople: where people sit over the balance, the yoke is told to go as near
// to it as their trunks let it, which reach 60 mm ahead of where their weight comes down.
func TestCureClearOfPeople(t *testing.T) {
	d := shipped(t, "lake")
	d.Seats, d.Thwarts = nil, d.Thwarts[:1]
	d.Crew[0].Seat, d.Crew[0].Posture, d.Crew[0].At = design.OnFloor, design.Floor, 0
	d.Thwarts[0].At = 195
	r := run(t, d)
	at := 0.0
	for _, v := range r.Findings {
		if v.About == "carrying" {
			fmt.Sscanf(v.Cure, "Yoke at %f mm", &at)
		}
	}
	if half := float64(d.Thwarts[0].Width) / 2; at-half < 60 || at >= 195 {
		t.Errorf("balance at %.0f mm: the yoke is told to go to %.0f mm", r.Carried.Balance, at)
	}
}

// TestSwampedTold: with none, the boat says what it lacks; with people holding on and
// sitting low it lies upright; on high seats it rolls over, and says what to do.
func TestSwampedTold(t *testing.T) {
	const holding, low, seated = "swamped, people in the water, holding on", "swamped, people sitting on the floor", "swamped, people on their seats"
	d := shipped(t, "brook")
	r := run(t, d)
	for _, about := range []string{holding, low} {
		if text := r.about(about); !strings.Contains(text, ", upright (GM") {
			t.Errorf("%s: %q", about, text)
		}
	}
	if text := r.about(seated); text != "" {
		t.Errorf("the paddler sits on the floor, and %q", text)
	}
	d = shipped(t, "river")
	d.Crew[0].Mass, d.Crew[1].Mass = 100, 100
	if text := run(t, d).about(seated); !strings.Contains(text, "rolls over") || !strings.Contains(text, "Go down from the seats to the floor") {
		t.Errorf("on high seats: %q", text)
	}
	d = shipped(t, "brook")
	d.Inside.Flotation = design.NoFlotation
	if r = run(t, d); !strings.Contains(r.about("swamped"), "has no flotation") || !strings.Contains(r.about(low), "mm under water") || !strings.Contains(r.about(low), "do not climb in") {
		t.Errorf("%q, %q", r.about("swamped"), r.about(low))
	}
	if weight.Sum(r.Boat.Parts).Mass >= run(t, shipped(t, "brook")).Carried.Mass {
		t.Error("flotation weighs nothing")
	}
}
