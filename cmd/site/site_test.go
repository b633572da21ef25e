package main

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ribwright/cmd/internal/answer"
	"ribwright/cmd/internal/job"
	"ribwright/geometry/design"
)

// most is how large the engine in a page may be, compressed, bytes.
const most = 5_000_000

// TestSameAnswers asks the engine as a browser runs it what is asked of the program
// itself: the shipped boats, boats changed at random, sizing, patterns and a book. Every
// answer is the same, byte for byte, files too.
func TestSameAnswers(t *testing.T) {
	if os.Getenv("RIBWRIGHT_LONG") == "" {
		t.Skip("builds the engine for browsers; set RIBWRIGHT_LONG=1")
	}
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("no node to run the engine in")
	}
	engine, err := build()
	if err != nil {
		t.Fatal(err)
	}
	if len(engine.Module) > most {
		t.Errorf("the engine is %d bytes compressed, %d at most", len(engine.Module), most)
	}
	z, err := gzip.NewReader(bytes.NewReader(engine.Module))
	if err != nil {
		t.Fatal(err)
	}
	module, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	at := func(name string, data []byte) string {
		place := filepath.Join(dir, name)
		if err := os.WriteFile(place, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return place
	}
	c := exec.Command(node, "testdata/ask.cjs", at("runtime.js", []byte(engine.Runtime)), at("engine.wasm", module))
	all := questions(t)
	c.Stdin, c.Stderr = strings.NewReader(strings.Join(all, "\n")), os.Stderr
	said, err := c.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimRight(string(said), "\n"), "\n")
	if len(lines) != len(all)+1 {
		t.Fatalf("%d answers to %d questions", len(lines)-1, len(all))
	}
	for i, q := range all {
		if want := string(answer.To([]byte(q), job.World{Made: job.UsualDate()})); lines[i] != want {
			t.Errorf("%.120s: another answer in a browser: %.200s", q, lines[i])
		}
	}
	var took []float64
	if err := json.Unmarshal([]byte(lines[len(all)]), &took); err != nil {
		t.Fatal(err)
	}
	slices.Sort(took)
	t.Logf("median of %d questions in the browser's engine: %.0f ms", len(took), took[len(took)/2])
}

// questions are what is asked of both, most of them sliders.
func questions(t *testing.T) []string {
	t.Helper()
	var out []string
	put := func(q answer.Question) {
		message, err := json.Marshal(q)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, string(message))
	}
	r := rand.New(rand.NewPCG(17, 4))
	for i, name := range design.ShippedNames() {
		put(answer.Question{Verb: "look", Names: []string{name}, Fields: [][2]string{{"whole", "true"}}, Make: true})
		for range []int{34, 33, 33}[i] {
			put(answer.Question{Verb: "look", Names: []string{name}, Fields: [][2]string{
				{"hull-length", fmt.Sprintf("%d mm", 3300+1300*i/2+r.IntN(300))}, {"hull-beam", fmt.Sprintf("%d mm", 700+40*i+r.IntN(60))},
				{"hull-depth", fmt.Sprintf("%d mm", 280+20*i+r.IntN(40))}, {"turn", fmt.Sprint(r.IntN(360))},
				{"flare", fmt.Sprintf("%d deg", r.IntN(15))}, {"fullness", fmt.Sprintf("%d %%", 72+r.IntN(8))}}})
		}
	}
	put(answer.Question{Verb: "workshop", Names: []string{"brook"}, Fields: [][2]string{{"board", "3 of white ash, 2400 mm x 150 mm x 26 mm"}}})
	put(answer.Question{Verb: "sheets", Names: []string{"lake"}, Fields: [][2]string{{"paper", "a4"}}})
	put(answer.Question{Verb: "sight", Names: []string{"river"}, Fields: [][2]string{{"fault", "side"}, {"stand", "stern"}}})
	figure := [2]string{"svg", "true"}
	put(answer.Question{Verb: "sail", Names: []string{"brook"}, Fields: [][2]string{figure, {"rig", "lug"}}, Told: true, Make: true})
	put(answer.Question{Verb: "pair", Names: []string{"brook", "lake"}, Fields: [][2]string{figure, {"purpose", "open"}}, Told: true, Make: true})
	put(answer.Question{Verb: "row", Names: []string{"lake"}, Fields: [][2]string{figure, {"units", "imperial"}}, Told: true, Make: true})
	put(answer.Question{Verb: "fleet", Names: []string{"brook", "lake", "river"}, Fields: [][2]string{figure}, Told: true, Make: true})
	card := map[string]string{"card.csv": "rib,beam_mm,depth_mm,free_width_mm\nM,721,286,722\nF1,719,286,718\nA1,718,294,716\n"}
	put(answer.Question{Verb: "built", Names: []string{"brook"}, Told: true, Make: true})
	put(answer.Question{Verb: "built", Names: []string{"brook", "card.csv"}, Files: card, Fields: [][2]string{{"feedback", "true"}}, Told: true, Make: true})
	put(answer.Question{Verb: "learn", Names: []string{"card.csv"}, Files: card, Fields: [][2]string{{"of", "brook"}, {"date", "2026-11-26"}}, Told: true, Make: true})
	put(answer.Question{Verb: "compare", Names: []string{"brook", "lake"}, Fields: [][2]string{{"cut", "stems"}}, Told: true, Make: true})
	put(answer.Question{Verb: "size", Fields: [][2]string{{"paddler", "62 kg, 168 cm"}}, Make: true})
	put(answer.Question{Verb: "loft", Names: []string{"brook"}, Fields: [][2]string{{"nest", "quick"}}, Make: true})
	put(answer.Question{Verb: "book", Names: []string{"lake"}, Fields: [][2]string{{"paper", "a4"}}, Make: true})
	return out
}
