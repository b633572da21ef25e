package weighing

import (
	"strings"
	"testing"
)

// TestParseIncline: what is written is read back the same, and what is wrong is told with
// what is accepted.
func TestParseIncline(t *testing.T) {
	for _, text := range []string{"10kg 200mm 7.5 -7.9", "10 kg, 200 mm, 7.5, -7.9", "10kg 200mm 7.5deg -7.9deg"} {
		i, err := ParseIncline(text)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		shown := ShowIncline(i)
		again, err := ParseIncline(shown)
		if err != nil || ShowIncline(again) != shown || i.Mass != 10 || i.Distance != 200 || len(i.Angles) != 2 {
			t.Errorf("%s is shown as %q (%v)", text, shown, err)
		}
	}
	if i, err := ParseIncline("10.25kg 200mm 7.5 -7.9"); err != nil || !strings.HasPrefix(ShowIncline(i), "10.25 kg ") {
		t.Errorf("10.25kg is shown as %q (%v)", ShowIncline(i), err)
	}
	if ShowIncline(nil) != "" {
		t.Error("no test is shown")
	}
	for text, says := range map[string]string{
		"10kg 200mm 7.5": "at least two angles", "10 200mm 7.5 -7.9": "10kg or 22lb", "10kg 20mm 7.5 -7.9": "50 to 1000 mm",
		"10kg 200mm 7.5 -x9": "a number, -90 to 90", "300kg 200mm 7 -7": "0.5 kg to 200 kg", "10kg 200mm 7.5 7.9": "both ways", "": "at least two angles",
	} {
		if _, err := ParseIncline(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, want %q", text, err, says)
		}
	}
}
