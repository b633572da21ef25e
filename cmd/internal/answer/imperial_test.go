package answer

import (
	"regexp"
	"testing"
)

// TestImperialWords: who asks for feet and pounds is told nothing in millimeters, newtons
// or kilograms: no finding, no cure and no band.
func TestImperialWords(t *testing.T) {
	metric := regexp.MustCompile(`\d (mm|cm|kg|N|N m|km/h|m/s)\b`)
	for _, name := range []string{"brook", "river"} {
		n := to(t, Question{Verb: "look", Names: []string{name}, Fields: [][2]string{{"whole", "true"}, {"units", "imperial"}, {"hull-beam", map[string]string{"brook": "660 mm", "river": "760 mm"}[name]}}}).Numbers.(map[string]any)
		said := 0
		for _, list := range []string{"lines", "told", "water", "wood", "measures"} {
			for _, one := range n[list].([]any) {
				one := one.(map[string]any)
				mend, _ := one["mend"].(map[string]any)
				for _, words := range []any{one["about"], one["says"], one["why"], mend["says"]} {
					words, _ := words.(string)
					both := regexp.MustCompile(`(in|lb|ft|"|knots|mph) \([^()]*\)`).ReplaceAllString(words, "")
					if words != "" {
						said++
					}
					if found := metric.FindString(both); found != "" {
						t.Errorf("%s: %q in %q", name, found, words)
					}
				}
			}
		}
		if said < 100 {
			t.Errorf("%s: %d texts only", name, said)
		}
	}
}
