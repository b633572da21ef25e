package afloat

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

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
	b, err := afloat.OfFrame(f, d.Crew, d.Gear, true)
	if err != nil {
		t.Fatal(err)
	}
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	r, err := afloat.Run(b, afloat.Options{Water: w, Freeboard: 150, Speeds: []float64{1, 1.5, 2, 2.5}})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func same(*design.Design) {}

func tippy(d *design.Design) { d.Crew[0].Mass, d.Crew[0].Posture = 120, design.Bench }

// promised are the names that other programs read: the contract of the program.
var promised = map[string][]string{
	"water": {"density_kg_m3", "viscosity_m2_s"},
	"hydrostatics": {"displacement_kg", "volume_m3", "draft_mm", "trim_deg", "freeboard_min_mm", "wetted_surface_m2", "waterplane_m2",
		"lwl_mm", "bwl_mm", "cb", "cp", "cm", "cwp", "lcb_mm", "lcf_mm", "kb_mm", "bm_mm", "bml_mm", "kg_mm", "gm_mm"},
	"gz":       {"heel_deg", "gz_mm"},
	"effort":   {"speed_m_s", "froude", "friction_n", "wave_n", "total_n", "power_w"},
	"findings": {"about", "text", "standing"},
}

// TestPromised finds every name of the contract, with a number where one is due.
func TestPromised(t *testing.T) {
	var b bytes.Buffer
	if err := Encode(&b, report(t, "brook", same)); err != nil {
		t.Fatal(err)
	}
	var doc map[string]any
	if err := json.Unmarshal(b.Bytes(), &doc); err != nil {
		t.Fatal(err)
	}
	for table, names := range promised {
		fields, ok := doc[table].(map[string]any)
		if list, is := doc[table].([]any); is && len(list) > 0 {
			fields, ok = list[len(list)-1].(map[string]any)
		}
		if !ok {
			t.Errorf("%s is %T", table, doc[table])
			continue
		}
		for _, n := range names {
			switch v := fields[n].(type) {
			case float64:
			case string:
				if table != "findings" || v == "" {
					t.Errorf("%s.%s is %q", table, n, v)
				}
			default:
				t.Errorf("%s.%s is %v", table, n, v)
			}
		}
	}
	if v, ok := doc["downflooding_deg"].(float64); !ok || v < 10 || v > 90 {
		t.Errorf("downflooding_deg is %v", doc["downflooding_deg"])
	}
	last := doc["gz"].([]any)[len(doc["gz"].([]any))-1].(map[string]any)
	if last["heel_deg"].(float64) > doc["downflooding_deg"].(float64) {
		t.Error("GZ is given past the flooding")
	}
}

// TestNoUpright has no curve and no flooding for a boat that will not stay
// upright, and says so first.
func TestNoUpright(t *testing.T) {
	var b bytes.Buffer
	r := report(t, "brook", tippy)
	if err := Encode(&b, r); err != nil {
		t.Fatal(err)
	}
	var doc document
	if err := json.Unmarshal(b.Bytes(), &doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.GZ) != 0 || doc.Downflooding != nil || !strings.Contains(doc.Findings[0].Text, "capsizes") || doc.Hydrostatics.GM > 0 {
		t.Errorf("gz %v, downflooding %v, GM %v, %+v", doc.GZ, doc.Downflooding, doc.Hydrostatics.GM, doc.Findings[0])
	}
	var page strings.Builder
	if err := Page(&page, r, measure.Metric); err != nil || strings.Contains(page.String(), "RIGHTING") {
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

// TestFigures rounds to significant figures.
func TestFigures(t *testing.T) {
	for _, c := range []struct{ v, want float64 }{{1234.56789, 1234.568}, {0.00012345678, 0.000123}, {-1e-12, 0}, {0, 0}, {999.99999999, 1000}} {
		if got := figures(c.v, 7); math.Abs(got-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%g is written %g, want %g", c.v, got, c.want)
		}
	}
	for _, v := range []float64{math.NaN(), math.Inf(1)} {
		if b, err := number(v).MarshalJSON(); err != nil || string(b) != "null" {
			t.Errorf("%g is written %s, %v", v, b, err)
		}
	}
}

// TestRepeat writes the same bytes twice, and passes a full disk on.
func TestRepeat(t *testing.T) {
	var a, b bytes.Buffer
	err1, err2 := Encode(&a, report(t, "lake", same)), Encode(&b, report(t, "lake", same))
	if err1 != nil || err2 != nil || !slices.Equal(a.Bytes(), b.Bytes()) {
		t.Errorf("two runs differ (%v, %v)", err1, err2)
	}
	full := errors.New("full")
	if err := Page(fullDisk{full}, report(t, "lake", same), measure.Metric); !errors.Is(err, full) {
		t.Errorf("a full disk gives %v", err)
	}
}

type fullDisk struct{ err error }

func (f fullDisk) Write([]byte) (int, error) { return 0, f.err }
