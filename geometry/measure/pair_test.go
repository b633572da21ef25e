package measure

import "testing"

// TestParsePair: sizes as they are written in shops. 1 ft is 304.8 mm.
func TestParsePair(t *testing.T) {
	for text, want := range map[string][2]Length{
		"1220x2440":            {1220, 2440},
		"4ft x 8ft":            {1219.2, 2438.4},
		"12x18in":              {304.8, 457.2},
		`8 1/2 x 11"`:          {215.9, 279.4},
		"300 mm \u00D7 0.42 m": {300, 420},
		"24 IN X 5 M":          {609.6, 5000},
		"4'-0\"x8'-0\"":        {1219.2, 2438.4},
	} {
		a, b, err := ParsePair(text)
		if err != nil || a != want[0] || b != want[1] {
			t.Errorf("%q: %v x %v, %v; want %v", text, a, b, err, want)
		}
	}
	for _, text := range []string{"", "x", "1220", "1220x", "x2440", "1220x2440x18", "12in x 18", "1220 by 2440", "a4", "1220x2440 furlongs", "12,5x18"} {
		if a, b, err := ParsePair(text); err == nil {
			t.Errorf("%q was read as %v x %v", text, a, b)
		}
	}
}
