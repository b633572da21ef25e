package json

import (
	"bytes"
	"errors"
	"io"
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water"
)

func trial(t testing.TB, name string, change func(d *design.Design)) *afloat.Report {
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

func tippy(d *design.Design) {
	d.Crew[0].Mass, d.Crew[0].Posture = 120, design.Bench
	d.Seats[0].Kind, d.Seats[0].Height = design.Saddle, 250
}

// afloatKeys are the names that other programs read: the contract of the program.
var afloatKeys = map[string][]string{
	"design": {"title", "slug", "edition", "fingerprint"},
	"water":  {"density_kg_m3", "viscosity_m2_s"},
	"hydrostatics": {"displacement_kg", "volume_m3", "draft_mm", "trim_deg", "freeboard_min_mm", "wetted_surface_m2", "waterplane_m2",
		"lwl_mm", "bwl_mm", "cb", "cp", "cm", "cwp", "lcb_mm", "lcf_mm", "kb_mm", "bm_mm", "bml_mm", "kg_mm", "gm_mm"},
	"gz":       {"heel_deg", "gz_mm"},
	"effort":   {"speed_m_s", "froude", "friction_n", "wave_n", "total_n", "power_w"},
	"findings": {"about", "text", "standing"},
}

// TestAfloatKeys finds every name of the contract, with a number where one is due.
func TestAfloatKeys(t *testing.T) {
	doc := parsed(t)(Afloat(trial(t, "brook", nil)))
	for table, names := range afloatKeys {
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
				if table != "findings" && table != "design" || v == "" && n != "edition" {
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

// TestAfloatNoUpright has no curve and no flooding for a boat that will not stay
// upright, and says so first.
func TestAfloatNoUpright(t *testing.T) {
	doc := parsed(t)(Afloat(trial(t, "brook", tippy)))
	first := doc["findings"].([]any)[0].(map[string]any)["text"].(string)
	gm := doc["hydrostatics"].(map[string]any)["gm_mm"].(float64)
	flooding, there := doc["downflooding_deg"]
	if len(doc["gz"].([]any)) != 0 || !there || flooding != nil || !strings.Contains(first, "capsizes") || gm > 0 {
		t.Errorf("gz %v, downflooding %v, GM %v, %q", doc["gz"], flooding, gm, first)
	}
}

// TestAfloatOfTable: a table of offsets has a title and a slug, and no design.
func TestAfloatOfTable(t *testing.T) {
	r := trial(t, "brook", nil)
	r.Boat.Frame, r.Boat.Title = nil, "Old Canoe"
	want := map[string]any{"title": "Old Canoe", "slug": "old-canoe", "edition": "", "fingerprint": ""}
	if got := parsed(t)(Afloat(r))["design"]; !reflect.DeepEqual(got, want) {
		t.Errorf("%v", got)
	}
}

// TestRepeat writes the same bytes twice, and passes a full disk on.
func TestRepeat(t *testing.T) {
	write := func(w io.Writer) error {
		r, err := Afloat(trial(t, "lake", nil))
		if err != nil {
			t.Fatal(err)
		}
		return Encode(w, r)
	}
	var a, b bytes.Buffer
	if err1, err2 := write(&a), write(&b); err1 != nil || err2 != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Errorf("two runs differ (%v, %v)", err1, err2)
	}
	full := errors.New("full")
	if err := write(fullDisk{full}); !errors.Is(err, full) {
		t.Errorf("a full disk gives %v", err)
	}
}

type fullDisk struct{ err error }

func (f fullDisk) Write([]byte) (int, error) { return 0, f.err }
