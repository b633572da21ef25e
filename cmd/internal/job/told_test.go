package job

import (
	"bytes"
	"errors"
	"regexp"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/water/float"
)

// TestWrittenShort: a person given in pounds and feet gives a file without a number of many
// places, and the file reads back as the design that was told of.
func TestWrittenShort(t *testing.T) {
	r, err := asked(t, "size", "--paddler", "137 lb, 5 ft 6 in", "--gear", "17 lb").Do(World{})
	if err != nil {
		t.Fatal(err)
	}
	text := written(t, r.Outputs[0])
	long := regexp.MustCompile(`\d\.\d{4,}`)
	for _, line := range strings.Split(string(text), "\n") {
		if !strings.HasPrefix(line, "#") && long.MatchString(line) {
			t.Error(line)
		}
	}
	d, err := design.Decode(bytes.NewReader(text), "x.toml")
	if err != nil {
		t.Fatal(err)
	}
	if print, _ := d.Fingerprint(); print != r.Report.Fingerprint {
		t.Errorf("the report is of %s, the file of %s", r.Report.Fingerprint, print)
	}
}

// TestWarned: a boat whose ribs do not bend warns, one of the family's own does not; a
// boat that finds no rest is told of, and any other fault is a fault.
func TestWarned(t *testing.T) {
	for fields, warns := range map[string]bool{"ribs.thickness=9mm": true, "ribs.thickness=5.5mm": false} {
		r, err := sizeOne(t, World{}, "--set", fields)
		if err != nil {
			t.Fatal(err)
		}
		if (len(r.Warnings) > 0) != warns {
			t.Errorf("%s: %v", fields, r.Warnings)
		}
	}
	told, err := toldOf(nil, of("x.toml", &float.Fault{Outcome: float.Sinks, Text: "it sinks"}), &bend.Report{})
	if err != nil || told[0].Verdict != finding.Unsafe || len(warnings(told)) != 1 {
		t.Errorf("%v, %v", told, err)
	}
	if _, err := toldOf(nil, errors.New("no such wood"), &bend.Report{}); err == nil {
		t.Error("a fault is swallowed")
	}
}
