package cutlist

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/bend"
)

// TestHeated: an end is hot from its innermost bend outward, with 100 mm of bag; a bend
// across midship is hot by itself.
func TestHeated(t *testing.T) {
	for _, c := range []struct{ heat, want []frame.Zone }{
		{nil, nil},
		{[]frame.Zone{{From: -1500, To: -1200}, {From: 900, To: 1000}, {From: 1400, To: 1500}}, []frame.Zone{{From: -2000, To: -1100}, {From: 800, To: 2000}}},
		{[]frame.Zone{{From: -50, To: 200}}, []frame.Zone{{From: -150, To: 300}}},
	} {
		r := Run{Aft: -2000, Fore: 2000, Heat: c.heat}
		got := r.heated()
		if len(got) != len(c.want) {
			t.Errorf("%v is hot in %v, want %v", c.heat, got, c.want)
			continue
		}
		for i, z := range got {
			if z != c.want[i] {
				t.Errorf("%v is hot in %v, want %v", c.heat, got, c.want)
			}
		}
	}
}

// TestScarfsStayCool: in stock of 3000 mm a stick of 4000 mm is scarfed as far forward as the
// board reaches, short of the heat where there is some; where all is hot it is scarfed all
// the same, and a finding says so.
func TestScarfsStayCool(t *testing.T) {
	const scarf = 100.0
	for _, c := range []struct {
		heat    []frame.Zone
		want    float64 // of the scarf's end
		missing int
	}{
		{nil, 1000, 0},
		{[]frame.Zone{{From: 700, To: 800}}, 600, 0},
		{[]frame.Zone{{From: -1900, To: 1900}}, 1000, 1},
	} {
		run := &Run{Aft: -2000, Fore: 2000, Scarf: scarf, Rooms: []frame.Zone{{From: -2000, To: 2000}}, Heat: c.heat}
		p := &Plan{Sticks: []Stick{{Mark: "S1p", Part: "port stringer 1", Length: 4000, Run: run}}}
		m := maker{p.Sticks, map[string][]Joint{}, false}
		cut, err := m.split(0, 3000)
		if err != nil || len(cut.Joints) != 1 {
			t.Fatalf("%v: %+v, %v", c.heat, cut, err)
		}
		if j := cut.Joints[0]; math.Abs(j.Middle+j.Length/2-c.want) > 1e-9 {
			t.Errorf("%v: the scarf ends at %g, want %g", c.heat, j.Middle+j.Length/2, c.want)
		}
		p.Cuttings = []Cutting{cut}
		found := p.Heated()
		if len(found) != c.missing {
			t.Errorf("%v: %v", c.heat, found)
		}
		for _, f := range found {
			if f.Verdict != finding.Missed || !strings.Contains(f.About, "S1p") || !strings.Contains(f.Cure, "4050 mm") {
				t.Errorf("%v: %v", c.heat, f)
			}
		}
	}
}

// TestSteamedStringers: no scarf of the shipped boats lies where its stringer is steamed, with
// their own boards and with short ones.
func TestSteamedStringers(t *testing.T) {
	scarfs := 0
	for _, boat := range []string{"brook", "lake", "river"} {
		f := frametest.Shipped(t, boat, nil)
		r, err := bend.Of(f)
		if err != nil {
			t.Fatal(err)
		}
		heat := r.Heat()
		if len(heat) == 0 {
			t.Fatalf("%s: nothing is steamed", boat)
		}
		check := func(s Stick, number int, joints []Joint) {
			for _, j := range joints {
				scarfs++
				for _, z := range heat[number] {
					if j.Middle+j.Length/2 > z.From-bag && j.Middle-j.Length/2 < z.To+bag {
						t.Errorf("%s, %s: a scarf at %.0f mm, steamed from %.0f to %.0f", boat, s.Part, j.Middle, z.From, z.To)
					}
				}
			}
		}
		p := Heat(heat).Make(f)
		for i, s := range p.Sticks {
			if s.Family == Stringer {
				check(s, int(s.Mark[1]-'0'), p.Cuttings[i].Joints)
				if joints, err := s.Run.joints(0.75*s.Length, nil); err == nil {
					check(s, int(s.Mark[1]-'0'), joints)
				} else {
					t.Errorf("%s, %s: %v", boat, s.Part, err)
				}
			}
		}
		if found := p.Heated(); len(found) > 0 {
			t.Errorf("%s: %v", boat, found)
		}
	}
	if scarfs < 20 {
		t.Errorf("only %d scarfs", scarfs)
	}
}
