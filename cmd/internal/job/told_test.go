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
	"ribwright/render/text"
)

// TestWrittenShort: people given in pounds and feet, and in kilograms, give files without a
// number of many places, and each reads back as the design that was told of.
func TestWrittenShort(t *testing.T) {
	long := regexp.MustCompile(`\d\.\d{4,}`)
	for _, ask := range [][]string{
		{"--paddler", "137 lb, 5 ft 6 in", "--gear", "17 lb"},
		{"--paddler", "80 kg, 182 cm", "--use", "solo"},
		{"--paddler", "55 kg, 160 cm", "--use", "solo", "--waters", "moving"},
		{"--paddler", "95 kg, 190 cm", "--paddler", "61 kg, 167 cm", "--use", "tandem"},
	} {
		r, err := asked(t, "size", ask...).Do(World{})
		if err != nil {
			t.Fatal(err)
		}
		text := written(t, r.Outputs[0])
		for _, line := range strings.Split(string(text), "\n") {
			if !strings.HasPrefix(line, "#") && long.MatchString(line) {
				t.Errorf("%v: %s", ask, line)
			}
		}
		d, err := design.Decode(bytes.NewReader(text), "x.toml")
		if err != nil {
			t.Fatal(err)
		}
		if print, _ := d.Fingerprint(); print != r.Report.Fingerprint {
			t.Errorf("%v: the report is of %s, the file of %s", ask, r.Report.Fingerprint, print)
		}
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

// TestToldInImperial: who asks for inches and pounds reads no metric figure but behind an
// imperial one, and finds the weights as they were given.
func TestToldInImperial(t *testing.T) {
	behind := regexp.MustCompile(`\([^()]*\)|"[^" ]+ [^"]*"`)
	metric := regexp.MustCompile(`\d (mm|m|kg|N|N m|km/h|m2|N/mm2)($|[^\w/])`)
	for verb, args := range map[string][]string{"size": {"--paddler", "137 lb, 5 ft 6 in", "--gear", "20 lb"}, "float": nil, "bend": nil} {
		r, err := asked(t, verb, append(args, "--units", "imperial")...).Do(World{})
		if err != nil {
			t.Fatal(err)
		}
		r.Report.For = ""
		var b bytes.Buffer
		if err := text.Encode(&b, r.Report); err != nil {
			t.Fatal(err)
		}
		all := strings.Join(strings.Fields(b.String()), " ")
		for _, at := range metric.FindAllStringIndex(behind.ReplaceAllString(all, ""), -1) {
			left := behind.ReplaceAllString(all, "")
			t.Errorf("%s: ...%s", verb, left[max(0, at[0]-60):at[1]])
		}
		if verb == "size" && !strings.Contains(all, `Sized for 137 lb, 5'-6" tall, with 20 lb of gear`) {
			t.Error(all[:200])
		}
	}
}
