package answer

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"ribwright/cmd/internal/job"
	"ribwright/geometry/design"
)

// to asks and reads the answer.
func to(t *testing.T, q Question) Answer {
	t.Helper()
	message, err := json.Marshal(q)
	if err != nil {
		t.Fatal(err)
	}
	var a Answer
	if err := json.Unmarshal(To(message, job.World{Made: job.UsualDate()}), &a); err != nil {
		t.Fatal(err)
	}
	return a
}

// TestLook draws every shipped boat, in few lines and in full, and says how it stands.
func TestLook(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, whole := range []string{"false", "true"} {
			a := to(t, Question{Verb: "look", Names: []string{name}, Fields: [][2]string{{"whole", whole}, {"turn", "200"}}})
			if a.Fault != nil {
				t.Fatalf("%s: %s", name, a.Fault.Says)
			}
			n := a.Numbers.(map[string]any)
			drawings := n["drawings"].([]any)
			if len(drawings) != 4 || len(n["measures"].([]any)) != 10 || len(n["wood"].([]any)) == 0 || (whole == "true") != (len(n["water"].([]any)) > 0) {
				t.Errorf("%s, whole %s: %d drawings, %d measures, %d findings of the wood", name, whole, len(drawings), len(n["measures"].([]any)), len(n["wood"].([]any)))
			}
			for _, d := range drawings {
				if d := d.(map[string]any); len(d["lines"].(map[string]any)) < 2 {
					t.Errorf("%s: %s has hardly a line", name, d["name"])
				}
			}
		}
	}
}

// TestFilesAreTheCommandLines: a design that a page has changed, saved and given to the
// command line, makes the bytes that the page hands out.
func TestFilesAreTheCommandLines(t *testing.T) {
	now := to(t, Question{Verb: "look", Names: []string{"brook"}, Fields: [][2]string{{"hull-beam", "740 mm"}, {"hull-length", "3610 mm"}}, Make: true})
	if now.Fault != nil || len(now.Files) != 1 {
		t.Fatalf("%+v", now.Fault)
	}
	name, text := now.Files[0].Name, string(now.Files[0].Data)
	q := Question{Verb: "loft", Names: []string{name}, Files: map[string]string{name: text}, Fields: [][2]string{{"nest", "quick"}, {"paper", "a4"}}, Make: true}
	got := to(t, q)
	r, err := job.Ask("loft", []string{name}, q.Fields...)
	if err != nil {
		t.Fatal(err)
	}
	want, err := r.Do(job.World{Files: func(string) ([]byte, error) { return now.Files[0].Data, nil }, Made: job.UsualDate()})
	if err != nil || len(want.Outputs) != len(got.Files) || len(got.Files) != 4 {
		t.Fatalf("%v: %d files, %d from the page (%v)", err, len(want.Outputs), len(got.Files), got.Fault)
	}
	for i, o := range want.Outputs {
		var b bytes.Buffer
		if err := o.Write(&b); err != nil || !bytes.Equal(b.Bytes(), got.Files[i].Data) || o.Name != got.Files[i].Name {
			t.Errorf("%s: other bytes (%v)", o.Name, err)
		}
	}
	q.Only = []string{"-numbers.json"}
	if one := to(t, q); len(one.Files) != 1 || !strings.HasSuffix(one.Files[0].Name, "-numbers.json") {
		t.Errorf("asked for the numbers alone, got %d files", len(one.Files))
	}
}

// TestEditionGoesOn: a design that a page has changed is the next edition and says what it
// changes; one that was given the measures that it has is the same.
func TestEditionGoesOn(t *testing.T) {
	for _, c := range []struct{ beam, edition, changed string }{{"740 mm", "2", "beam 720 mm to 740 mm"}, {"720 mm", "", ""}} {
		a := to(t, Question{Verb: "look", Names: []string{"brook"}, Fields: [][2]string{{"hull-beam", c.beam}}, Make: true})
		d, err := design.Decode(bytes.NewReader(a.Files[0].Data), "brook.toml")
		if err != nil || d.Edition != c.edition || d.Changed != c.changed {
			t.Errorf("%s: edition %q, changed %q (%v)", c.beam, d.Edition, d.Changed, err)
		}
	}
}

// TestFaults: whatever comes, a plain line goes back, and the next question is answered.
func TestFaults(t *testing.T) {
	for _, c := range []struct{ message, field, want string }{
		{``, "", "is no request"}, {`[]`, "", "is no request"}, {`{"verb":"nothing"}`, "", `nothing is called "nothing"`},
		{`{"verb":"look","names":["../../etc/passwd"]}`, "", "no design file"},
		{`{"verb":"look","names":["/etc/hostname"]}`, "", "no design file"},
		{`{"verb":"look","names":["mine.toml"],"files":{"mine.toml":"title = 3"}}`, "", "mine.toml"},
		{`{"verb":"look","names":["brook"],"fields":[["hull-beam","9 m"]]}`, "", "accepted: "},
		{`{"verb":"look","names":["brook"],"fields":[["turn","west"]]}`, "turn", "a number"},
		{`{"verb":"size","fields":[["paddler","62"]]}`, "paddler", "is a plain number"},
		{strings.Repeat(" ", Largest+1), "", "larger than"},
	} {
		var a Answer
		if err := json.Unmarshal(To([]byte(c.message), job.World{Made: job.UsualDate()}), &a); err != nil {
			t.Fatal(err)
		}
		short := c.message[:min(len(c.message), 60)]
		if a.Fault == nil || !strings.Contains(a.Fault.Says, c.want) || strings.Contains(a.Fault.Says, "\n") || strings.Join(a.Fault.Fields, ",") != c.field {
			t.Errorf("%s: %+v, want %q of %q", short, a.Fault, c.want, c.field)
		}
	}
}

// FuzzTo: any message is answered with an Answer, and never by a fault of the program. What
// a message asks for is not worked out here: its design is given no file, and is none that is shipped.
func FuzzTo(f *testing.F) {
	for _, s := range []string{"", "{}", "null", "[]", `{"verb":"float","names":["x.toml"]}`, `{"verb":"loft","names":["x.toml"],"fields":[["paper","a4"],["sheets","1-4"]]}`, `{"verb":"look","names":["x.toml"],"files":{"x.toml":"title = 1"}}`, `{"verb":"float","fields":[["load"]]}`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, message string) {
		var q Question
		if json.Unmarshal([]byte(message), &q) == nil && (len(q.Names) == 0 || len(q.Files) > 0 && strings.Contains(message, "hull") || q.Verb == "proof") {
			return // it would be a long work
		}
		for _, n := range q.Names {
			if _, err := design.Shipped(n); err == nil {
				return
			}
		}
		var a Answer
		if err := json.Unmarshal(To([]byte(message), job.World{Made: job.UsualDate()}), &a); err != nil {
			t.Fatal(err)
		}
		if a.Fault != nil && (a.Fault.Says == "" || strings.ContainsAny(a.Fault.Says, "\n\r") || strings.Contains(a.Fault.Says, "fault in the program")) {
			t.Fatalf("%q: %q", message, a.Fault.Says)
		}
	})
}
