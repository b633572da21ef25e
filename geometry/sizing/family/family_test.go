package family

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/sizing/formula"
)

// TestShipped reads every shipped family: each gives every key of the design that
// has no default, and says of each value on the page why it is so.
func TestShipped(t *testing.T) {
	for _, name := range Names() {
		f, err := Shipped(name)
		if err != nil {
			t.Fatal(err)
		}
		if want := map[string]int{"pack": 1, "solo": 1, "tandem": 2}[name]; f.Seats != want {
			t.Errorf("%s seats %d, want %d", name, f.Seats, want)
		}
		if len(f.Program.OnPage()) < 6 {
			t.Errorf("%s tells only %q", name, f.Program.OnPage())
		}
		run := f.Program.NewRun()
		for _, n := range f.Program.OnPage() {
			if run.Reason(n) == "" {
				t.Errorf("%s: %s has no reason", name, n)
			}
		}
	}
	if _, err := Shipped("barge"); err == nil || !strings.Contains(err.Error(), "there are pack, solo, tandem") {
		t.Error(err)
	}
}

// own is a family file that changes the pack canoe.
func own(more string) error {
	_, err := Read(formula.Source{Name: "own", Text: "use \"pack\"\n" + more})
	return err
}

func TestOwnFamily(t *testing.T) {
	if err := own("beam = min(700 mm, 0.9 * reach)   # narrower\nthwart.seat.name = \"Seat\"\nthwart.seat.at = 1.5 * ribs.pitch"); err != nil {
		t.Error(err)
	}
	for _, c := range []struct{ name, text, want string }{
		{"unknown key", "hull.lenght = 3 m", "own:2:1: hull.lenght: the design has no key hull.lenght; its keys in [hull] are length, beam"},
		{"key in kg", "hull.waterline = 3 kg", "own:2:1: hull.waterline: is a weight (kg); the design takes a length (mm)"},
		{"row without label", "thwart.at = 3 mm", "thwart.at: takes a label and a key, as thwart.label.at"},
		{"row's key", "thwart.a.wide = 3 mm", "the design has no key thwart.a.wide; its keys there are name, kind, at"},
		{"table", "hull.section = 3 mm", "takes a label and a key"},
		{"fitted", "thwart.carry.fitted = 3", "is a plain number; accepted: true or false"},
		{"seats", "seats = 3", "own:2:1: seats: is not 1 or 2 written out"},
		{"seats by formula", "seats = if beginner then 1 else 1", "is not 1 or 2 written out"},
		{"partner", "load = partner.weight", "nothing is called partner.weight"},
		{"afloat without guess", "load = wetted / 1 m2 * 60 kg", "rests on wetted, which is only known afloat; say where to start, as in: guess wetted ="},
		{"no family", "use \"barge\"", "own:2:5: no file \"barge\" to use; there are pack, solo, tandem, people, making"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if err := own(c.text); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("says %v, want %q", err, c.want)
			}
		})
	}
	if _, err := Read(formula.Source{Name: "own", Text: "seats = 1"}); err == nil || !strings.Contains(err.Error(), "own: seat_at: is missing: place of the paddler") {
		t.Error(err)
	}
}

// TestDesignTakesEveryValue puts known values through the connection: lengths,
// angles, counts, words, lists, weights of cloth, rows and rows left out.
func TestDesignTakesEveryValue(t *testing.T) {
	f, err := Read(formula.Source{Name: "own", Text: `use "pack"
hull.length = 11 ft
bow.rake = 12.5 deg
gunwale.plies = 4
ribs.spare = 2
bending.method = "on forms"
gunwale.scarfs = [-1 m, 1 m]
skin.mass = 510 g/m2
stern.horn = 17 mm
thwart.carry.kind = "yoke"
thwart.extra.fitted = gear > 1000 kg
thwart.extra.name = "Never"
hull.symmetric = false
`})
	if err != nil {
		t.Fatal(err)
	}
	d, err := f.Design(worked(t, f))
	if err != nil {
		t.Fatal(err)
	}
	got := fmt.Sprint(d.Hull.Length, d.Bow.Rake, d.Gunwale.Plies, d.Ribs.Spare, d.Bending.Method, d.Gunwale.Scarfs, math.Round(d.Skin.Mass()*1e6)/1e6, d.Stern.Horn, d.Hull.Symmetric, len(d.Thwarts), d.Thwarts[0].Kind == design.Yoke)
	want := "3352.8 mm 12.5 deg 4 2 on forms [-1000 mm 1000 mm] 510 17 mm false 1 true"
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if d.Hull.RockerStern != d.Hull.RockerBow {
		t.Error("the stern's rocker does not follow the bow's")
	}
	if f, err = Read(formula.Source{Name: "own", Text: "use \"pack\"\nthwart.carry.kind = \"bench\""}); err != nil {
		t.Fatal(err)
	}
	if _, err := f.Design(worked(t, f)); err == nil || !strings.Contains(err.Error(), `own:2:1: thwart.carry.kind: "bench" is no kind of cross piece`) {
		t.Error(err)
	}
}

// worked gives a family some values to work with.
func worked(t *testing.T, f *Family) *formula.Run {
	t.Helper()
	r := f.Program.NewRun()
	for _, g := range inputs(f.Seats) {
		if g.Afloat || g.Kind.Class != formula.Number {
			continue
		}
		v := 400.0
		if g.Kind.Dim == formula.Mass {
			v = 60
		}
		if g.Name == "longest_stick" {
			v = 6000
		}
		if err := r.Set(g.Name, formula.Num(v)); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.Work(f.Drawing); err != nil {
		t.Fatal(err)
	}
	return r
}
