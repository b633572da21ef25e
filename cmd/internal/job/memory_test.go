package job

import (
	"bytes"
	"io/fs"
	"os"
	"strings"
	"testing"

	"ribwright/geometry/design"
)

// TestFromMemory lofts, floats and books a design that is nowhere on a disk, with a
// second boat and a price table that are nowhere either. Whatever else the engine
// asks for is a fault.
func TestFromMemory(t *testing.T) {
	own := bytes.ReplaceAll(brookFile(t), []byte(`"Brook"`), []byte(`"Nowhere"`))
	own = append(own, []byte("\n[outfit.pair]\npurpose = \"open\"\nwith = \"other.toml\"\n")...)
	files := map[string][]byte{"shed/mine.toml": own, "shed/other.toml": brookFile(t), "prices.toml": priceTable(t)}
	asked := map[string]int{}
	w := world()
	w.Files = func(name string) ([]byte, error) {
		asked[name]++
		if data, ok := files[name]; ok {
			return data, nil
		}
		t.Errorf("the engine asks for %q", name)
		return nil, fs.ErrNotExist
	}
	for _, c := range []struct {
		verb   string
		fields [][2]string
		made   string
	}{
		{"loft", [][2]string{{"nest", "quick"}}, "nowhere-patterns-letter.pdf"},
		{"float", [][2]string{{"svg", "true"}}, "nowhere-float.svg"},
		{"book", [][2]string{{"prices", "prices.toml"}, {"html", "true"}}, "nowhere-book.html"},
	} {
		r, err := Ask(c.verb, []string{"shed/mine.toml"}, c.fields...)
		if err != nil {
			t.Fatal(err)
		}
		if m := do(t, r, w); len(m.files[c.made]) == 0 {
			t.Errorf("%s made no %s", c.verb, c.made)
		} else if c.verb != "loft" && !strings.Contains(string(m.files[c.made]), "Nowhere") {
			t.Errorf("%s is not of the boat that was given", c.made)
		}
	}
	for name := range files {
		if asked[name] == 0 {
			t.Errorf("nothing asked for %s", name)
		}
	}
}

// priceTable is a shipped table as a file of somebody's own.
func priceTable(t *testing.T) []byte {
	t.Helper()
	data, err := os.ReadFile("../../../geometry/shop/cost/prices/local.toml")
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// TestFactsOnce: a fact is worked out once, however often it is asked for.
func TestFactsOnce(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	k, err := newFacts(d, "brook")
	if err != nil {
		t.Fatal(err)
	}
	f, err := k.frame()
	if err != nil {
		t.Fatal(err)
	}
	b, err := k.bending()
	if err != nil {
		t.Fatal(err)
	}
	again, _ := k.frame()
	bent, _ := k.bending()
	if again != f || b.Frame != f || bent != b {
		t.Error("a second question works the frame or its bends out anew")
	}
}
