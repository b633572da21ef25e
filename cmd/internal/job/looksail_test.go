package job

import (
	"encoding/json"
	"strings"
	"testing"

	"ribwright/geometry/design"
)

// looked is what a look tells of a sail.
type looked struct {
	Sail *struct {
		Rig  string
		Area float64 `json:"area_m2"`
		Says string
	}
	Told []struct{ About, Says string }
}

// lookAt looks at a shipped boat, or at one whose file is given.
func lookAt(t *testing.T, name string, fields ...[2]string) (out looked, sheets string) {
	t.Helper()
	text, world := name, World{Made: UsualDate()}
	if strings.Contains(text, "\n") {
		name, world.Files = "mine.toml", func(string) ([]byte, error) { return []byte(text), nil }
	}
	r, err := Ask("look", []string{name}, fields...)
	if err != nil {
		t.Fatal(err)
	}
	result, err := r.Do(world)
	if err != nil {
		t.Fatal(err)
	}
	told, err := json.Marshal(result.Numbers)
	if err == nil {
		err = json.Unmarshal(told, &out)
	}
	if err != nil {
		t.Fatal(err)
	}
	var file strings.Builder
	if err := result.Outputs[0].Write(&file); err != nil {
		t.Fatal(err)
	}
	return out, file.String()
}

// TestLookUnderSail: a whole look shows the sail that the boat is fitted with by its own
// verb; a small one keeps the area that it is told, and none where it is told none; the
// design that is saved has no sail of it.
func TestLookUnderSail(t *testing.T) {
	for _, rig := range []string{"spritsail", "vee"} {
		of := [2]string{"rig", rig}
		whole, design := lookAt(t, "brook", of, [2]string{"whole", "true"})
		if _, plain := lookAt(t, "brook", [2]string{"whole", "true"}); design != plain {
			t.Errorf("%s: a look alters the design", rig)
		}
		r, err := Ask("sail", []string{"brook"}, of)
		if err != nil {
			t.Fatal(err)
		}
		fitted, err := r.Do(World{Made: UsualDate()})
		if err != nil {
			t.Fatal(err)
		}
		text, err := json.Marshal(fitted.Numbers)
		if err != nil {
			t.Fatal(err)
		}
		var verb struct {
			Sail struct {
				Area float64 `json:"area_m2"`
			}
		}
		if err := json.Unmarshal(text, &verb); err != nil || whole.Sail == nil || whole.Sail.Area != verb.Sail.Area || verb.Sail.Area == 0 {
			t.Fatalf("%s: %v: the view shows %+v, the verb sizes %g m2", rig, err, whole.Sail, verb.Sail.Area)
		}
		if small, _ := lookAt(t, "brook", of, [2]string{"area", "2.5m2"}); small.Sail == nil || small.Sail.Area != 2.5 {
			t.Errorf("%s: told 2.5 m2, a small look shows %+v", rig, small.Sail)
		}
	}
	if small, _ := lookAt(t, "brook", [2]string{"rig", "lug"}); small.Sail != nil {
		t.Errorf("told no area, a small look sizes a sail: %+v", small.Sail)
	}
}

// TestLookCannotSail: a boat that cannot carry the sail is drawn without it, and it is said
// why.
func TestLookCannotSail(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	mast := d.Sail()
	mast.MastAt = 1150
	d.Outfit = &design.Outfit{Sail: &mast}
	var file strings.Builder
	if err := design.Encode(&file, d); err != nil {
		t.Fatal(err)
	}
	got, _ := lookAt(t, file.String(), [2]string{"rig", "vee"}, [2]string{"area", "1m2"})
	last := got.Told[len(got.Told)-1]
	if got.Sail != nil || last.About != "sail" || !strings.Contains(last.Says, "gunwales stand only") {
		t.Errorf("%+v; %+v", got.Sail, last)
	}
}
