package design

import "testing"

// TestAboard refuses people and gear that cannot be, by their key.
func TestAboard(t *testing.T) {
	for _, c := range []struct {
		change func(d *Design)
		key    string
	}{
		{func(d *Design) { d.Crew[1].Mass = 9 }, "crew.1.mass"},
		{func(d *Design) { d.Crew[0].Mass = 251 }, "crew.0.mass"},
		{func(d *Design) { d.Crew[0].Name = " " }, "crew.0.name"},
		{func(d *Design) { d.Crew[0].At = 2300 }, "crew.0.at"},
		{func(d *Design) { d.Crew[0].Seat = 601 }, "crew.0.seat"},
		{func(d *Design) { d.Crew[0].Stature = 700 }, "crew.0.stature"},
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
	d := mustDecode(t, text(t, "river"))
	if d.Crew, d.Gear = nil, nil; d.Check() != nil {
		t.Errorf("an empty boat is refused: %+v", d.Check())
	}
}
