package job

import (
	"strings"
	"testing"

	"ribwright/geometry/design"
)

// TestFloatBendFleetPages keeps what is told of every shipped boat within 80 columns,
// free of codes, of numbers that are none and of the names of verbs and fields, and the
// same each time; it holds what nobody may miss, in the system asked for.
func TestFloatBendFleetPages(t *testing.T) {
	for _, units := range []string{"metric", "imperial"} {
		for _, name := range design.ShippedNames() {
			page(t, []string{"float", name, "--smooth", "--units", units}, "At rest", "Weights", "Effort on flat", "What to make of it", "nothing here certifies a boat", "life jacket", "KG, GM")
			page(t, []string{"bend", name, "--units", units}, "Everything can be made as the design says", "Will the wood take it", "Bend one rib", "Steam scalds", "Relax", "Beam: mm off the design")
		}
		page(t, []string{"fleet", "--roof", "75kg", "--door", "900mm", "--units", units}, "Least room", "must come out", "Lifting:", "Wind:", "nothing here certifies a load")
	}
}

func page(t *testing.T, args []string, wanted ...string) {
	t.Helper()
	told := ask(t, args[0], args[1:]...).said
	for _, l := range strings.Split(told, "\n") {
		if n := len([]rune(l)); n > 80 || strings.ContainsAny(l, "\t\x1b\r") || strings.HasSuffix(l, " ") {
			t.Errorf("%v: %d columns: %q", args, n, l)
		}
	}
	for _, w := range []string{"NaN", "Inf", "-0.0", "%!", "?", "--smooth", "--fit", "ribwright "} {
		if strings.Contains(told, w) {
			t.Errorf("%v: the page holds %s", args, w)
		}
	}
	run := strings.Join(strings.Fields(told), " ")
	for _, w := range wanted {
		if !strings.Contains(run, w) {
			t.Errorf("%v: the page has no %q", args, w)
		}
	}
	metric, masses := args[len(args)-1] == "metric", args[0] != "bend"
	if masses && strings.Contains(told, " lb") == metric {
		t.Errorf("%v is lettered in the wrong system", args)
	}
	if told != ask(t, args[0], args[1:]...).said {
		t.Errorf("%v: a second page differs", args)
	}
}
