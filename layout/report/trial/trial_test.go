package trial

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/stow"
	"ribwright/geometry/water"
	"ribwright/layout/report"
)

func tippy(d *design.Design) {
	d.Crew[0].Mass, d.Crew[0].Posture = 120, design.Bench
	d.Seats[0].Kind, d.Seats[0].Height = design.Saddle, 250
}

func tried(t testing.TB, name string, change func(d *design.Design)) *afloat.Report {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	r, err := afloat.Run(b, afloat.Options{Water: w, Freeboard: 150, Speeds: []float64{1, 1.5, 2, 2.5}, Smooth: true})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// words are all that blocks say, a block a line.
func words(blocks []report.Block) string {
	var out strings.Builder
	for _, b := range blocks {
		switch b := b.(type) {
		case report.Findings:
			out.WriteString(words(b.Blocks()))
		case report.Caution:
			fmt.Fprintln(&out, b)
		default:
			fmt.Fprintf(&out, "%+v\n", b)
		}
	}
	return out.String()
}

// TestAfloatOrder tells what to make of it before the figures, and warns of swamping
// before any of them.
func TestAfloatOrder(t *testing.T) {
	told := words(Afloat(tried(t, "brook", nil), measure.Metric))
	at := -1
	for _, w := range []string{"What to make of it", "stability", "CAUTION: Wear a life jacket", "At rest", "Weights", "Righting lever", "Effort", report.Promise} {
		i := strings.Index(told, w)
		if i <= at {
			t.Errorf("%q stands at %d, after %d is wanted", w, i, at)
		}
		at = i
	}
}

// TestNoUpright shows no levers of a boat that will not stay upright, and says so first.
func TestNoUpright(t *testing.T) {
	told := words(Afloat(tried(t, "brook", tippy), measure.Metric))
	if strings.Contains(told, "Righting") || strings.Contains(told, "water comes in at") || !strings.Contains(told, "held upright") {
		t.Error("righting levers are shown, or nothing says that the boat is held:", told)
	}
	if i, j := strings.Index(told, "CAUTION: Stability: it capsizes"), strings.Index(told, "least amidships"); i < 0 || i > j {
		t.Errorf("the danger stands at %d, freeboard at %d", i, j)
	}
}

// TestSmallRooms letters the rooms between boats no finer than a tenth of a millimeter
// or a sixteenth of an inch: 4.76 mm are 3/16 in.
func TestSmallRooms(t *testing.T) {
	mm, in := nest{}, nest{Letters: report.Letters{Units: measure.Imperial}}
	for got, want := range map[string]string{mm.small(4.76): "5 mm", mm.small(0.3): "1 mm", in.small(4.76): `3/16"`, mm.cell(math.Inf(1)): "ample", in.cell(4.76): "3/16", mm.cell(4.76): "5"} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestLimits warns of a roof that carries too little and of a door that is too narrow,
// and only then.
func TestLimits(t *testing.T) {
	n := nest{Report: &stow.Report{Stack: &stow.Stack{Mass: 50, Width: 800, Height: 500}}}
	for _, c := range []struct {
		roof, door float64
		want       string
	}{
		{0, 0, ""}, {60, 900, "Roof: 10.0 kg left of the 60.0 kg given, before bars and straps are counted. Door of 900 mm: goes through level."},
		{40, 600, "CAUTION: Roof: 10.0 kg OVER the 40.0 kg given, before bars and straps are counted. Door of 600 mm: too wide level; goes through on its side, strapped together."},
		{0, 400, "CAUTION: Door of 400 mm: does NOT go through, level or on its side."},
	} {
		n.Limits = stow.Limits{Roof: c.roof, Door: c.door}
		got := strings.NewReplacer("{Words:", "", "}", "", "\n", " ").Replace(words(append(n.roof(), n.door()...)))
		if strings.TrimSpace(got) != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestVerdictsFirst: what cannot be made stands before the table, with its cure; what helps where a
// caution stands comes after it, then what spares work.
func TestVerdictsFirst(t *testing.T) {
	l := finding.List{
		{About: "keel", Verdict: finding.Dry, Measure: finding.Measure{Value: 4, Limit: 20, Unit: "N/mm2", AtMost: true}},
		{About: "stringer 2", Verdict: finding.Steam, Measure: finding.Measure{Value: 57, Limit: 38, Unit: "radius/thickness"}, Cure: "4.9 mm thinner"},
		{About: "ribs", Verdict: finding.NoStrap, Measure: finding.Measure{Value: 6.5, Limit: 13, Unit: "radius/thickness"}, Cure: "1 mm thinner"},
		{About: "neutral set", Verdict: finding.Weak, Text: "stiff gunwales", Cure: "thicker ribs"},
	}
	b := verdicts(l)
	if fails := b[2].(report.List).Items; len(fails) != 2 || fails[0] != "neutral set: too weak; stiff gunwales; thicker ribs" || fails[1] != "ribs: needs a strap; 1 mm thinner" {
		t.Errorf("%q", fails)
	}
	rows := b[3].(report.Table).Rows
	for i, want := range []string{"neutral set|too weak||||", "keel|bends dry|4.0|20.0|N/mm2|+400%", "stringer 2|steam|57.0|38.0|r/t|+50%", "ribs|needs a strap|6.5|13.0|r/t|-50%"} {
		if got := strings.Join(rows[i], "|"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if easier := b[5].(report.List).Items; len(easier) != 1 || easier[0] != "stringer 2: 4.9 mm thinner" {
		t.Errorf("%q", easier)
	}
	l = append(l, finding.Finding{About: "gunwale", Verdict: finding.Caution, Measure: finding.Measure{Value: 36, Limit: 35, Unit: "N/mm2", AtMost: true}, Cure: "taller gunwales"})
	if wary := verdicts(l)[5].(report.List).Items; len(wary) != 1 || wary[0] != "gunwale: taller gunwales" {
		t.Errorf("%q", wary)
	}
	if !strings.Contains(words(verdicts(l[:2])), "Everything can be made") {
		t.Error("what passes is not said to")
	}
}

// TestMissed names the way in which ribs miss the neutral set.
func TestMissed(t *testing.T) {
	l := report.Letters{}
	if got := (Balance{Miss: 10}).missed(l) + ", " + (Balance{Miss: -6}).missed(l); got != "10 mm wider, 6 mm narrower" {
		t.Error(got)
	}
}
