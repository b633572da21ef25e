//go:build !js

package job

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"ribwright/geometry/survey/built"
)

// manyBuilds is a table of builds with their cards: each board of brook's ribs springs back its
// own, and hands miss as they do.
func manyBuilds(t testing.TB, n int) World {
	t.Helper()
	b, f := standing(t, "brook")
	r := rand.New(rand.NewPCG(18, 60))
	files := map[string][]byte{}
	table := "builder,design,measures,notes\n"
	for i := range n {
		back := 0.11 + 0.02*r.NormFloat64()
		var card strings.Builder
		card.WriteString("rib,beam_mm,depth_mm,free_width_mm,broken\n")
		for j, rib := range b.Frame.Ribs {
			point := b.Ribs[j].Point * 100 // mm of width for the whole of it
			broken := ""
			if r.Float64() < 0.04 {
				broken = "yes"
			}
			fmt.Fprintf(&card, "%s,%.0f,%.0f,%.0f,%s\n", rib.Name, f.Drawn(j, built.Beam)+2*r.NormFloat64(), f.Drawn(j, built.Depth)+2*r.NormFloat64(),
				f.Drawn(j, built.Free)+point*(back-0.08+0.01*r.NormFloat64()), broken)
		}
		name := fmt.Sprintf("card-%d.csv", i)
		files[name] = []byte(card.String())
		files[fmt.Sprintf("notes-%d.csv", i)] = fmt.Appendf(nil, "what,of,drawn,found\nboiler,,,%c\nskill,,,beginner\nhours,ribs,5.4 h,%.1f h\nhours,skin,3 h,%.1f h\nweight,ribs,1.9 kg,%.2f kg\n",
			'A'+rune(i%3), 9*math.Exp(0.2*r.NormFloat64()), 5*math.Exp(0.2*r.NormFloat64()), 2+0.1*r.NormFloat64())
		table += fmt.Sprintf("Bench %d,brook,%s,notes-%d.csv\n", i+1, name, i)
	}
	files["course.csv"] = []byte(table)
	w := world()
	w.Files = InMemory(files)
	return w
}

// TestLearnCourse: sixty cards of one design are read and learned from in under a second, or
// three on a machine that has other work, and what was planted, 11 %, lies within what is told of them.
func TestLearnCourse(t *testing.T) {
	w := manyBuilds(t, 60)
	best := time.Hour
	var m made
	for range 5 { // on a machine that has other work
		if best < time.Second {
			break
		}
		first := time.Now()
		m = do(t, asked(t, "learn", "course.csv"), w)
		best = min(best, time.Since(first))
	}
	if t.Log(best); best > 3*time.Second {
		t.Errorf("60 builds take %v", best)
	}
	var boards, ribs int
	var says, low, high float64
	line := lineWith(m.said, "white ash, ")
	if _, err := fmt.Sscanf(line, "white ash, %d %d %f %f to %f", &boards, &ribs, &says, &low, &high); err != nil {
		t.Fatalf("%q: %v", line, err)
	}
	if boards != 60 || ribs < 1000 || low > 11 || high < 11 || high-low > 2 {
		t.Errorf("%d boards of %d ribs say %.1f, %.1f to %.1f", boards, ribs, says, low, high)
	}
	if !strings.Contains(string(m.files["pack-proposed.family"]), "bending.springback") {
		t.Error("no line is proposed")
	}
}

// TestNotesOnce: what one builder weighed and the hours it took count for that one alone; notes that
// tell of the boiler and no more may be shared.
func TestNotesOnce(t *testing.T) {
	w := manyBuilds(t, 3)
	files := w.Files
	for notes, want := range map[string]string{"notes-0.csv": "course.csv:3: notes-0.csv stands on line 2 already", "shared.csv": ""} {
		w.Files = func(name string) ([]byte, error) {
			switch name {
			case "shared.csv":
				return []byte("what,of,drawn,found\nboiler,,,B\n"), nil
			case "course.csv":
				return fmt.Appendf(nil, "design,measures,notes\nbrook,card-0.csv,%[1]s\nbrook,card-1.csv,%[1]s\nbrook,card-2.csv,\n", notes), nil
			}
			return files(name)
		}
		_, err := asked(t, "learn", "course.csv").Do(w)
		if want == "" && err != nil || want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%s: %v, want %q", notes, err, want)
		}
	}
}

// TestCardsAlone: cards that no table lists are of the design that is said; those and notes
// that one lists count there, given by themselves too; without a design a card is refused.
func TestCardsAlone(t *testing.T) {
	w := manyBuilds(t, 4)
	table := "design,measures,notes\nbrook,card-0.csv,notes-0.csv\n"
	files := w.Files
	w.Files = func(name string) ([]byte, error) {
		if name == "short.csv" {
			return []byte(table), nil
		}
		return files(name)
	}
	r := asked(t, "learn", "card-0.csv", "card-1.csv", "notes-0.csv", "short.csv", "card-2.csv").(*Learn)
	r.Of = "brook"
	if m := do(t, r, w); !strings.Contains(m.said, "3 builds read") {
		t.Errorf("two cards and one in a table: %.60q", m.said)
	}
	if _, err := asked(t, "learn", "card-1.csv").Do(w); err == nil || !strings.Contains(err.Error(), "card-1.csv:1: is the card of one frame") {
		t.Errorf("%v", err)
	}
}

// TestTwice: a build that is listed and sent counts once.
func TestTwice(t *testing.T) {
	w := manyBuilds(t, 2)
	r := asked(t, "built", "brook", "card-0.csv").(*AsBuilt)
	r.Feedback = true
	sent := do(t, r, w).files["feedback.csv"]
	files := w.Files
	w.Files = func(name string) ([]byte, error) {
		if name == "sent.csv" {
			return sent, nil
		}
		return files(name)
	}
	_, err := asked(t, "learn", "course.csv", "sent.csv").Do(w)
	if err == nil || !strings.Contains(err.Error(), "sent.csv says the same as Bench 1") {
		t.Errorf("%v", err)
	}
}
