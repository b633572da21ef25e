package timber

import "testing"

// TestSoaked: 10 kg of redcedar of gravity 0.31 green are 8.93 kg oven-dry, 28.80 l and
// 11.61 kg at 30 % of moisture; 8 kg of white ash of 0.55 are 12.99 l and 9.29 kg.
func TestSoaked(t *testing.T) {
	for _, c := range []struct {
		name             string
		kg, liters, soak float64
	}{{"western redcedar", 10, 10 / 1.12 / 0.31, 10 / 1.12 * 1.30}, {"white ash", 8, 8 / 1.12 / 0.55, 8 / 1.12 * 1.30}} {
		s := wood(t, c.name)
		volume, mass := s.Soaked()
		near(t, c.kg/s.Density*1000*volume, c.liters, 1e-9, c.name+", l")
		near(t, c.kg*mass, c.soak, 1e-9, c.name+", kg")
	}
	other := Species{Name: "other", Density: Density12(0.32)}
	if v, _ := other.Soaked(); v < 1.03 || v > 1.06 {
		t.Errorf("wood as light as redcedar swells to %.3f; redcedar to 1.032", v)
	}
}
