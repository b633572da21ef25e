package measure

import "testing"

// TestWords: each unit in its other one, by arithmetic from the exact inch, pound and mile;
// ranges, what stands in both already, and what is no quantity.
func TestWords(t *testing.T) {
	for text, want := range map[string]string{
		"freeboard 254 mm, least":           "freeboard 10 in, least",
		"a lever of 38.1 mm at 25 deg":      "a lever of 1 1/2 in (38.1 mm) at 25 deg",
		"it is 3048 mm long":                `it is 10'-0" long`,
		"4.65 m of waterline":               `15'-3" of waterline`,
		"a heel is 117 to 152 mm deep":      "a heel is 4 5/8 to 6 in deep",
		"station -900 mm":                   `station -2'-11 7/16"`,
		"20 x 40 mm":                        "13/16 x 1 9/16 in",
		"GM -25.4 mm, 0 mm":                 "GM -1 in (-25.4 mm), 0 in",
		"ribs of 5.8 mm in slots of 6.1 mm": "ribs of 0.228 in (5.8 mm) in slots of 0.240 in (6.1 mm)",
		"50, 127, 457 mm":                   `1 15/16", 5", 1'-6"`,
		"6.9 and 13.8 N/mm2 of 20.7 N/mm2":  "1000 and 2000 psi of 3000 psi",
		"ribs F3 and 25 mm":                 "ribs F3 and 1 in",
		"24, 127 mm":                        "15/16, 5 in",
		"6.9, 13.8 N/mm2 at 100 N":          "1000, 2000 psi at 22 lb",
		"stations 24, 127 mm":               "stations 24, 5 in",
		"75 kg each":                        "165 lb each",
		"34 N m; 100 N":                     "25 ft lb; 22 lb",
		"bears 112 N/mm2":                   "bears 16240 psi",
		"about 6.8 km/h":                    "about 4.2 mph",
		"2.97 m2":                           "31.97 sq ft",
		"71 l would":                        "18.8 gal would",
		"water of 15 degrees Celsius":       "water of 59 degrees Fahrenheit",
		"0.5 l, 300 ml":                     "0.53 US quarts, 10 fl oz",
		"3 m at each end, 36.2 m":           `10 ft at each end, 118'-9"`,
		"6 screws of 3.5 mm; 6 screws of 25 mm; a wrench of 10 mm": "6 screws No. 6; 6 screws of 1 in; a wrench of 10 mm",
		"8 of M6 x 55 mm, M5 by 70 mm":                             "8 of M6 x 55 mm, M5 by 70 mm",
		"leaves the 6 in (152 mm) of":                              "leaves the 6 in (152 mm) of",
		"1/2 in (12.7 mm)":                                         "1/2 in (12.7 mm)",
		"spring apart with 95 N (22 lb) on":                        "spring apart with 22 lb on",
		"over 60 mm (2 3/8 in).":                                   "over 2 3/8 in.",
		"rib F3, 12 ribs, No 4 m":                                  `rib F3, 12 ribs, No 13 ft`,
		"mm per mm, 13.9 radius/thickness":                         "mm per mm, 13.9 radius/thickness",
		"50 W at 12 deg, 7 mm2, F4 mm, 3 kg/x":                     "50 W at 12 deg, 7 mm2, F4 mm, 3 kg/x",
		`add "span 173 cm", 6 1/2" (165 mm)`:                       `add "span 173 cm", 6 1/2" (165 mm)`,
		"-0.4 mm up":                                               "-0.016 in (-0.4 mm) up",
		"25.4 mm":                                                  "1 in (25.4 mm)",
		"":                                                         "",
	} {
		if got := Imperial.Words(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
		if again := Imperial.Words(Imperial.Words(text)); again != want {
			t.Errorf("%q, twice: %q, want %q", text, again, want)
		}
		if got := Metric.Words(text); got != text {
			t.Errorf("metric %q: %q", text, got)
		}
	}
	for _, c := range [][3]string{{"254", "mm", "10"}, {"5.8", "mm", "0.228"}, {"254.0", "mm", "10"}, {"34", "N m", "25"}, {"-", "mm", "-"}, {"41 deg", "mm", "41 deg"}, {"7", "deg", "7"}} {
		if got := Imperial.Cell(c[0], c[1]); got != c[2] {
			t.Errorf("%q", got)
		}
	}
	if Imperial.UnitOf("mm") != "in" || Imperial.UnitOf("N/mm2") != "psi" || Imperial.UnitOf("deg") != "deg" || Metric.UnitOf("mm") != "mm" {
		t.Error("units")
	}
}
