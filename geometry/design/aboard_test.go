package design

import (
	"strings"
	"testing"
)

// TestAboard refuses people and gear that cannot be, by their key.
func TestAboard(t *testing.T) {
	for _, c := range []struct {
		change func(d *Design)
		key    string
	}{
		{func(d *Design) { d.Crew[1].Mass = 9 }, "crew.1.mass"},
		{func(d *Design) { d.Crew[0].Mass = 251 }, "crew.0.mass"},
		{func(d *Design) { d.Crew[0].Name = " " }, "crew.0.name"},
		{func(d *Design) { d.Crew[0].Seat, d.Crew[0].Posture, d.Crew[0].At = OnFloor, Floor, 2300 }, "crew.0.at"},
		{func(d *Design) { d.Crew[0].At = 1 }, "crew.0.at"},
		{func(d *Design) { d.Crew[0].Seat = "" }, "crew.0.seat"},
		{func(d *Design) { d.Crew[0].Seat = "230 mm" }, "crew.0.seat"},
		{func(d *Design) { d.Crew[0].Seat = "nowhere" }, "crew.0.seat"},
		{func(d *Design) { d.Crew[1].Seat = "seat-3" }, "crew.1.seat"},
		{func(d *Design) { d.Crew[0].Seat, d.Crew[0].Posture = OnFloor, Bench }, "crew.0.posture"},
		{func(d *Design) { d.Seats[1].Name = "bow-seat" }, "seat.1.name"},
		{func(d *Design) { d.Seats[0].Name = " Floor" }, "seat.0.name"},
		{func(d *Design) { d.Seats[0].Height = 149 }, "seat.0.height"},
		{func(d *Design) { d.Seats[0].Height = 0 }, "seat.0.height"},
		{func(d *Design) { d.Seats[0].Kind, d.Seats[0].Height = Pad, 121 }, "seat.0.height"},
		{func(d *Design) { d.Seats[0].Kind, d.Seats[0].Height = Pad, 40 }, "crew.0.posture"},
		{func(d *Design) { d.Seats[1].At = -2300 }, "seat.1.at"},
		{func(d *Design) { d.Seats[1].Species = "tin" }, "seat.1.species"},
		{func(d *Design) { d.Crew[0].Stature = 690 }, "crew.0.stature"},
		{func(d *Design) { d.Crew[0].Role = Dog }, "crew.0.role"},
		{func(d *Design) { d.Gear[0].Mass = 0 }, "gear.0.mass"},
		{func(d *Design) { d.Gear[0].Height = -1 }, "gear.0.height"},
		{func(d *Design) { d.Crew = make([]Person, 21) }, "crew"},
		{func(d *Design) { d.Gear = make([]Gear, 21) }, "gear"},
	} {
		d := mustDecode(t, text(t, "river"))
		c.change(d)
		if p := d.Check(); p == nil || p.Key != c.key {
			t.Errorf("Check() = %+v, want a problem of %s", p, c.key)
		}
	}
	old := mustDecode(t, text(t, "river"))
	old.Crew[0].Seat = "230 mm"
	if p := old.Check(); p == nil || !strings.Contains(p.Text, `height = "230 mm"`) {
		t.Errorf("a height for a seat: %+v", p)
	}
	d := mustDecode(t, text(t, "river"))
	if d.Crew, d.Gear = nil, nil; d.Check() != nil {
		t.Errorf("an empty boat is refused: %+v", d.Check())
	}
}
