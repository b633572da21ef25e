package timber

import (
	"testing"

	"ribwright/geometry/finding"
)

// TestJoining: what joints ask of wood, against the inch-pound Table 5-3b of the Wood
// Handbook, FPL-GTR-282 (2021), read second hand in open data: along and across the
// grain, shear, tension across, psi.
func TestJoining(t *testing.T) {
	const mpa = 6894.757e-6
	for name, psi := range map[string][4]float64{
		"white ash":          {7410, 1160, 1910, 940},
		"white oak":          {7440, 1070, 2000, 800},
		"Sitka spruce":       {5610, 580, 1150, 370},
		"western redcedar":   {4560, 460, 990, 220},
		"Douglas-fir":        {7230, 800, 1130, 340},
		"yellow-poplar":      {5540, 500, 1190, 540},
		"yellow cedar":       {6310, 620, 1130, 360},
		"eastern white pine": {4800, 440, 900, 310},
	} {
		s, err := Lookup(name)
		if err != nil {
			t.Fatal(err)
		}
		near(t, s.CrushAlong, psi[0]*mpa, 0.06, "N/mm2 along "+name)
		near(t, s.Crush, psi[1]*mpa, 0.006, "N/mm2 across "+name)
		near(t, s.Shear, psi[2]*mpa, 0.006, "N/mm2 shear "+name)
		near(t, s.Split, psi[3]*mpa, 0.006, "N/mm2 tension "+name)
	}
}

// TestDerived: a wood without values for joints gets those of the weakest for its
// strength, as estimates, and never more than any wood that was read; what it has stays.
func TestDerived(t *testing.T) {
	s := Species{MOR: 80}.Derived()
	if s.Joints != finding.Estimate {
		t.Errorf("stands as %q", s.Joints)
	}
	// Douglas-fir is the weakest across for its strength: 2.34 for 85; white spruce in crush: 2.96 for 65.
	near(t, s.Split, 80*2.34/85, 1e-9, "N/mm2")
	near(t, s.Crush, 80*2.96/65, 1e-9, "N/mm2")
	for _, k := range All() {
		d := Species{MOR: k.MOR}.Derived()
		if !(k.CrushAlong > 0 && k.Crush > 0 && k.Shear > 0 && k.Split > 0) || k.Joints == "" {
			t.Errorf("%s has %+v", k.Name, k)
		}
		if k.Joints == finding.Handbook && (d.Crush > k.Crush+1e-9 || d.Shear > k.Shear+1e-9 || d.Split > k.Split+1e-9 || d.CrushAlong > k.CrushAlong+1e-9) {
			t.Errorf("%s: %+v derived over %+v", k.Name, d, k)
		}
		near(t, Density12(k.Gravity()), k.Density, 1e-9, "kg/m3")
	}
	own := Species{MOR: 80, Crush: 9, Joints: finding.Measured}.Derived()
	if own.Crush != 9 {
		t.Errorf("its own crush became %v", own.Crush)
	}
	if e, _ := Lookup("European ash"); e.Joints != finding.Estimate || !e.Hard {
		t.Errorf("%+v", e)
	}
}
