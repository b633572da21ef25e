package afloat

import (
	"errors"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water"
)

func report(t testing.TB, name string, change func(d *design.Design)) *afloat.Report {
	t.Helper()
	d, err := design.Shipped(name)
	if err != nil {
		t.Fatal(err)
	}
	change(d)
	f, err := frame.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	b, err := aboard.New(f, d.Crew, d.Gear)
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

func same(*design.Design) {}

func tippy(d *design.Design) { d.Crew[0].Mass, d.Crew[0].Posture = 120, design.Bench }

// TestNoUpright shows no levers of a boat that will not stay upright.
func TestNoUpright(t *testing.T) {
	var page strings.Builder
	if err := Page(&page, report(t, "brook", tippy), measure.Metric); err != nil || strings.Contains(page.String(), "RIGHTING") {
		t.Errorf("the page shows righting levers (%v)", err)
	}
}

// TestPage fits a terminal of 80 columns in both systems, has no tabs or codes,
// and closes with what it does not promise.
func TestPage(t *testing.T) {
	for _, units := range []measure.System{measure.Metric, measure.Imperial} {
		for _, name := range design.ShippedNames() {
			var b strings.Builder
			if err := Page(&b, report(t, name, same), units); err != nil {
				t.Fatal(err)
			}
			for i, l := range strings.Split(b.String(), "\n") {
				if n := len([]rune(l)); n > 80 || strings.ContainsAny(l, "\t\x1b\r") || strings.HasSuffix(l, " ") {
					t.Errorf("%s %v line %d, %d letters: %q", name, units, i+1, n, l)
				}
			}
			for _, want := range []string{"AT REST", "WEIGHTS", "EFFORT", "WHAT TO MAKE OF IT", "nothing here certifies a boat", "life jacket", "GM"} {
				if !strings.Contains(b.String(), want) {
					t.Errorf("%s %v has no %q", name, units, want)
				}
			}
			if metric := strings.Contains(b.String(), " kg "); metric == (units == measure.Imperial) && !strings.Contains(b.String(), " lb ") {
				t.Errorf("%s %v is lettered in the wrong system", name, units)
			}
		}
	}
}

// TestFullDisk passes a full disk on.
func TestFullDisk(t *testing.T) {
	full := errors.New("full")
	if err := Page(fullDisk{full}, report(t, "lake", same), measure.Metric); !errors.Is(err, full) {
		t.Errorf("a full disk gives %v", err)
	}
}

type fullDisk struct{ err error }

func (f fullDisk) Write([]byte) (int, error) { return 0, f.err }
