package answer

import (
	"regexp"
	"strconv"
	"testing"

	"ribwright/cmd/internal/job"
)

// TestSheetsCounted: who looks at the sheets before they are printed is told of as many as
// then come out of the printer, the one behind them with the cutter's plates too.
func TestSheetsCounted(t *testing.T) {
	count := func(message, form string) int {
		t.Helper()
		text := string(To([]byte(message), job.World{Made: job.UsualDate()}))
		m := regexp.MustCompile(form).FindStringSubmatch(text)
		if m == nil {
			t.Fatalf("%s: %.300s", message, text)
		}
		n, err := strconv.Atoi(m[1])
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	seen := count(`{"verb":"sheets","names":["brook"]}`, `(\d+) sheets of Letter[^"]*One more behind them shows the cutter's plates in small\.`)
	made := count(`{"verb":"loft","names":["brook"],"fields":[["nest","quick"]],"told":true}`, `(\d+) sheets of letter`)
	if made != seen+1 {
		t.Errorf("%d sheets are seen and one more told of, %d are printed", seen, made)
	}
}
