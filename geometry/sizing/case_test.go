package sizing

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
)

// ownCase is the pack canoe with a few lines changed.
func ownCase(t *testing.T, lines string) *Case {
	t.Helper()
	f, err := family.Read(formula.Source{Name: "own", Text: "use \"pack\"\n" + lines})
	if err != nil {
		t.Fatal(err)
	}
	c, err := NewCase(f, briefFor(f, body.Person{Weight: 62, Stature: 1680}, 12))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestSettles: values that feed on what is found afloat come to rest, and formulas
// that feed too strongly are named.
func TestSettles(t *testing.T) {
	c := ownCase(t, "depth = draft + 190 mm")
	if err := c.Settle(); err != nil {
		t.Fatal(err)
	}
	if d := c.run.Number("depth") - c.found["draft"]; d < 189.9 || d > 190.1 {
		t.Errorf("depth is %.2f mm over the draft, want 190", d)
	}
	c = ownCase(t, "guess extreme_beam = 700 mm\nbeam = if extreme_beam > 700 mm then 640 mm else 740 mm")
	if err := c.Settle(); err == nil || !strings.Contains(err.Error(), "own: the formulas never settle") {
		t.Errorf("%v", err)
	}
	for lines, want := range map[string]string{
		"beam = 3000 mm":                         "own:2:1: beam: 3000 mm is out of range; accepted: 400 to 1500 mm",
		"beam = 1 m * (1 / (1-1))":               "own:2:17: beam: divides by zero",
		"crew.paddler.mass = 900 kg":             "own:2:1: crew.paddler.mass: 900 kg is out of range; accepted: 3 to 250 kg",
		"gear.bag.mass = 499 kg\ndepth = 200 mm": "sinks: the whole is",
		"ribs.species = \"teak\"":                `own:2:1: ribs.species: species "teak" is not known`,
	} {
		c := ownCase(t, lines)
		err := c.Settle()
		if err == nil {
			_, err = c.Finish()
		}
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", lines, err, want)
		}
	}
}

// TestWritten reads a written design back: the same, with a note for every value
// that has a formula, and the same bytes every time.
func TestWritten(t *testing.T) {
	for _, name := range family.Names() {
		f := shipped(t, name)
		var texts [2]string
		for i := range texts {
			boat, err := Size(f, briefFor(f, body.Person{Sex: body.Woman, Weight: 60, Stature: 1650}, 0))
			if err != nil {
				t.Fatal(err)
			}
			var b bytes.Buffer
			if err := boat.Write(&b); err != nil {
				t.Fatal(err)
			}
			texts[i] = b.String()
			d, err := design.Decode(bytes.NewReader(b.Bytes()), "written")
			if err != nil {
				t.Fatalf("%v\n%s", err, b.String())
			}
			if !reflect.DeepEqual(d, boat.Design) {
				t.Errorf("%s: read back %+v\nwritten %+v", name, d, boat.Design)
			}
		}
		if texts[0] != texts[1] {
			t.Errorf("%s: the second time other bytes", name)
		}
		for _, s := range []string{".family:", "reach"} {
			if !strings.Contains(texts[0], s) {
				t.Errorf("%s: %q is nowhere", name, s)
			}
		}
	}
}

// TestScarfs: short stock gets scarfs that the frame accepts, none where one stick
// is enough, and stock too short is refused.
func TestScarfs(t *testing.T) {
	f := shipped(t, "tandem")
	for stock, want := range map[float64]int{6000: 0, 4200: 1, 2700: 2, 2300: 2} {
		b := briefFor(f, body.Person{Weight: 75, Stature: 1720}, 20)
		b.LongestStick = stock
		boat, err := Size(f, b)
		if err != nil {
			t.Fatalf("%.0f mm: %v", stock, err)
		}
		if n := len(boat.Design.Gunwale.Scarfs); n != want {
			t.Errorf("sticks of %.0f mm: %d scarfs, want %d", stock, n, want)
		}
		// No piece is longer than the stock.
		last, half := boat.Frame.Gunwale.Aft, boat.Frame.Gunwale.ScarfLength/2
		for _, s := range boat.Frame.Gunwale.Scarfs {
			if l := s.Middle - last + 2*half; l > stock {
				t.Errorf("sticks of %.0f mm: a piece of %.0f mm", stock, l)
			}
			last = s.Middle
		}
		if l := boat.Frame.Gunwale.Fore - last + half; l > stock {
			t.Errorf("sticks of %.0f mm: a last piece of %.0f mm", stock, l)
		}
	}
	b := briefFor(f, body.Person{Weight: 75, Stature: 1720}, 20)
	b.LongestStick = 1500
	if _, err := Size(f, b); err == nil || !strings.Contains(err.Error(), "is too short for a stick of") {
		t.Error(err)
	}
}

func TestBriefRefuses(t *testing.T) {
	f := shipped(t, "pack")
	for want, change := range map[string]func(*Brief){
		"seats 1 and 2 paddlers":   func(b *Brief) { b.Crew = append(b.Crew, b.Crew[0]) },
		"gear of -1 kg":            func(b *Brief) { b.Gear = -1 },
		`waters "sea"`:             func(b *Brief) { b.Waters = "sea" },
		`skill "none"`:             func(b *Brief) { b.Skill = "none" },
		`posture "lying"`:          func(b *Brief) { b.Crew[0].Posture = "lying" },
		"a longest stick of 10 mm": func(b *Brief) { b.LongestStick = 10 },
		"a speed of":               func(b *Brief) { b.Speed = 0 },
		`species "teak"`:           func(b *Brief) { b.RibWood = "teak" },
	} {
		b := briefFor(f, body.Person{Weight: 62, Stature: 1680}, 12)
		change(&b)
		if err := b.Check(1); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}
