package answer

import (
	"strings"
	"testing"
)

// TestTold: the report comes block by block where it is asked for, a sail's with its
// cautions and the table of winds, and not where it is not.
func TestTold(t *testing.T) {
	ask := Question{Verb: "sail", Names: []string{"brook"}, Told: true}
	told, ok := to(t, ask).Told.([]any)
	if !ok {
		t.Fatal("nothing is told")
	}
	cautions, winds := 0, 0
	for _, b := range told {
		b := b.(map[string]any)
		switch title, _ := b["title"].(string); {
		case b["kind"] == "caution":
			cautions++
		case strings.HasPrefix(title, "Wind"):
			winds += len(b["rows"].([]any))
		}
	}
	if cautions < 3 || winds < 2 {
		t.Errorf("%d cautions and %d rows of winds are told", cautions, winds)
	}
	ask.Told = false
	if a := to(t, ask); a.Told != nil {
		t.Error("what was not asked for is told")
	}
}
