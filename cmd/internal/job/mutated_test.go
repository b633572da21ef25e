//go:build unix

package job

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"runtime/debug"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"ribwright/geometry/design"
	renderjson "ribwright/render/json"
	"ribwright/render/text"
)

// mutated is how many boats are made of designs that are changed at random; without it a few
// dozen, and in the long run what goes into two minutes.
var mutated = flag.Int("mutated", 0, "boats to make of designs that are changed at random")

// seedOfMutated lets a longer search go on where another left off.
var seedOfMutated = flag.Uint64("mutatedseed", 21, "first seed of the changes")

func howManyMutated() int {
	switch {
	case *mutated > 0:
		return *mutated
	case long:
		return 40
	}
	return 12
}

// hang is more than any verb may take of a processor. Time of a processor is counted, not the
// clock, so that other work on the machine does not matter.
const hang = 5 * time.Second

// TestMutated: a design file that was changed at random is refused in one line, or every
// verb answers: in time, in one line where it cannot, every figure a number, and nothing drawn that
// cannot be, by plain geometry on the files.
func TestMutated(t *testing.T) {
	all := tally{}
	for i := range howManyMutated() {
		seed := *seedOfMutated + uint64(i)
		r := rand.New(rand.NewPCG(seed, 3))
		c, name := newChanger(r), design.ShippedNames()[seed%3]
		text := shippedText(t, name)
		for tries := 1; ; tries++ {
			file, about := c.change(text)
			about = fmt.Sprintf("seed %d, %s: %s", seed, name, about)
			d, err := aBoat(t, all, about, file)
			if err == nil {
				everyVerb(t, all, about, file, d, seed)
				break
			}
			if oneLine(t, about, err); tries == 40 {
				t.Fatalf("%s: no change of 40 is accepted, the last for %v", about, err)
			}
		}
	}
	all.tell(t)
}

// aBoat reads a design and floats it: what that refuses, no verb accepts.
func aBoat(t *testing.T, all tally, about, file string) (*design.Design, error) {
	t.Helper()
	d, err := design.Decode(strings.NewReader(file), "changed.toml")
	if all.count("read", err, 0); err != nil {
		return nil, err
	}
	_, err = inTime(t, all, about, question{"float", []string{"changed.toml"}, fields{{"svg", "true"}}}, World{Files: InMemory(map[string][]byte{"changed.toml": []byte(file)})})
	return d, err
}

// tally counts what was asked of each verb, what it answered, and its slowest answer.
type tally map[string]*counted

type counted struct {
	asked, answered int
	slowest         time.Duration
}

func (t tally) count(verb string, err error, took time.Duration) {
	if t[verb] == nil {
		t[verb] = &counted{}
	}
	c := t[verb]
	c.asked++
	if err == nil {
		c.answered++
	}
	c.slowest = max(c.slowest, took)
}

func (c tally) tell(t *testing.T) {
	var lines []string
	for verb, n := range c {
		lines = append(lines, fmt.Sprintf("%s: %d of %d, slowest %.2f s", verb, n.answered, n.asked, n.slowest.Seconds()))
	}
	slices.Sort(lines)
	t.Log(strings.Join(lines, "\n"))
}

func oneLine(t *testing.T, about string, err error) {
	t.Helper()
	if s := err.Error(); strings.ContainsAny(s, "\n\r") || notANumber.MatchString(s) || len(s) > 700 {
		t.Errorf("%s: %q is no one line", about, s)
	}
}

// question is what a verb is asked.
type question struct {
	verb   string
	names  []string
	fields fields
}

type fields [][2]string

// questions are those that every design is asked, the patterns of its gunwales and of one more
// part in turn with all numbers among them, and one in turn of those that take long or make the
// whole set.
func questions(r *rand.Rand, seed uint64, d *design.Design) []question {
	one, two := []string{"changed.toml"}, []string{"changed.toml", design.ShippedNames()[r.IntN(3)]}
	paper := [2]string{"paper", []string{"letter", "a4", "a3"}[r.IntN(3)]}
	in := [2]string{"units", []string{"metric", "imperial"}[r.IntN(2)]}
	turns := []question{
		{"loft", one, fields{paper, in}}, {"parcel", one, fields{paper, {"nest", "quick"}}}, {"book", one, fields{{"html", "true"}, in}}, {"sheets", one, fields{paper}}, {"workshop", one, nil},
		{"sail", one, fields{{"loft", "true"}}}, {"pair", one, fields{{"purpose", "moving"}, {"loft", "true"}}}, {"row", one, fields{{"loft", "true"}}}, {"sight", one, nil},
		{"compare", two, fields{in}}, {"fleet", two, fields{in}}, {"built", []string{"changed.toml", "measured.csv"}, fields{in, {"feedback", "true"}}}, {"learn", []string{"builds.csv"}, nil},
		{"size", nil, sizedFor(r)}, {"class", []string{"class.csv"}, fields{{"book", "false"}}}, {"fair", []string{"offsets.csv"}, nil}, {"proof", nil, fields{paper, in}},
	}
	parts := []string{"ribs", "stems", "ribs", "breasthooks", "battens", "body"}
	if len(d.Thwarts) > 0 {
		parts = append(parts, "thwarts")
	}
	only := "mortises," + parts[seed%uint64(len(parts))]
	return []question{
		{"loft", one, fields{{"only", only}, {"nest", "quick"}, paper}}, {"bend", one, fields{{"svg", "true"}, in}}, {"built", one, nil}, {"look", one, nil},
		turns[seed%uint64(len(turns))],
	}
}

// sizedFor are people for a boat to be sized for.
func sizedFor(r *rand.Rand) fields {
	person := func() [2]string {
		return [2]string{"paddler", fmt.Sprintf("%.3g kg, %.4g cm", 30+110*r.Float64(), 120+90*r.Float64())}
	}
	use := []string{"pack", "solo", "tandem"}[r.IntN(3)]
	out := fields{{"use", use}, person()}
	if use == "tandem" {
		out = append(out, person())
	}
	return out
}

// everyVerb asks what is asked of a design and makes all that is offered.
func everyVerb(t *testing.T, all tally, about, file string, d *design.Design, seed uint64) {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, 4))
	files := besides(t, r, file)
	shown := drawings{length: float64(d.Hull.Length)}
	for _, q := range questions(r, seed, d) {
		shown.about = fmt.Sprintf("%s: %s %v", about, q.verb, q.fields)
		result, err := inTime(t, all, shown.about, q, World{Files: InMemory(files)})
		if err != nil {
			oneLine(t, shown.about, err)
		}
		shown.set(t, result)
		for _, f := range result {
			if strings.HasSuffix(f.name, "-numbers.json") && files["measured.csv"] == nil {
				files["measured.csv"] = filledIn(r, f.data)
			}
		}
	}
}

// inTime asks; what takes too long is asked twice more, for work on the other processor slows
// this one down.
func inTime(t *testing.T, all tally, about string, q question, w World) (out []file, err error) {
	t.Helper()
	least := time.Hour
	for range 3 {
		stuck := time.AfterFunc(10*time.Minute, func() { panic(about + " does not end") })
		start := processorTime(t)
		out, err = answer(t, about, q, w)
		least = min(least, processorTime(t)-start)
		if stuck.Stop(); least <= hang {
			break
		}
	}
	all.count(q.verb, err, least)
	if least > hang {
		t.Errorf("%s takes %.1f s", about, least.Seconds())
	}
	return out, err
}

// answer asks a verb and makes all that it offers. A panic is told with the design.
func answer(t *testing.T, about string, q question, w World) (out []file, err error) {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%s: panic: %v\n%s", about, r, debug.Stack())
		}
	}()
	request, err := Ask(q.verb, q.names, q.fields...)
	if err != nil {
		return out, err
	}
	got, err := request.Do(w)
	if err != nil {
		return out, err
	}
	for _, f := range got.Warnings {
		oneLine(t, about, errors.New(f.Text))
	}
	var page, numbers bytes.Buffer
	if err := text.Encode(&page, got.Report); err != nil {
		t.Errorf("%s: %v", about, err)
	}
	if got.Numbers != nil {
		if err := renderjson.Encode(&numbers, got.Numbers); err != nil || !json.Valid(numbers.Bytes()) {
			t.Errorf("%s: no numbers: %v", about, err)
		}
	}
	out = []file{{"report.txt", page.Bytes()}, {"told.txt", numbers.Bytes()}}
	for _, o := range got.Outputs {
		var b bytes.Buffer
		if err := o.Write(&b); err != nil {
			return out, err
		}
		out = append(out, file{o.Name, b.Bytes()})
	}
	return out, nil
}

// processorTime is how long processors have worked on this program.
func processorTime(t *testing.T) time.Duration {
	t.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
