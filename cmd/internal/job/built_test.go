package job

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/survey/built"
	"ribwright/geometry/trial/bend"
	"ribwright/render/rendertest"
)

// standing is a shipped design's bends and its frame, to be measured.
func standing(t testing.TB, name string) (*bend.Report, *built.Frame) {
	t.Helper()
	k, err := world().factsOf(name)
	if err != nil {
		t.Fatal(err)
	}
	b, err := k.bending()
	if err != nil {
		t.Fatal(err)
	}
	f, err := built.NewFrame(b)
	if err != nil {
		t.Fatal(err)
	}
	return b, f
}

// cardOf is a card of a shipped design with every rib as drawn but for what off says, mm
// wider and deeper.
func cardOf(t testing.TB, name string, off func(i int) (wider, deeper float64)) (World, string) {
	t.Helper()
	b, f := standing(t, name)
	var card strings.Builder
	card.WriteString("rib,beam_mm,depth_mm,free_width_mm\n")
	for i, r := range b.Frame.Ribs {
		wider, deeper := off(i)
		fmt.Fprintf(&card, "%s,%.1f,%.1f,%.0f\n", r.Name, f.Drawn(i, built.Beam)+wider, f.Drawn(i, built.Depth)+deeper, f.Drawn(i, built.Free))
	}
	w := world()
	w.Files = InMemory(map[string][]byte{"card.csv": []byte(card.String())})
	return w, "card.csv"
}

// TestCardLegible: no words of a card lie on others, however deep the boat is and so however high
// the stringer that its bilge is measured at.
func TestCardLegible(t *testing.T) {
	text := shippedText(t, "brook")
	for _, deep := range []string{"250 mm", "263.5 mm", "277 mm", "290 mm"} {
		file := depthOf.ReplaceAllString(text, "${1}'"+deep+"'")
		w := world()
		w.Files = InMemory(map[string][]byte{"deep.toml": []byte(file)})
		card, err := rendertest.ReadPDF(do(t, asked(t, "built", "deep.toml"), w).only(t, "-card-letter.pdf"))
		if err != nil || file == text {
			t.Fatal(deep, err)
		}
		pages, err := card.Pages()
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range pages {
			if lie := rendertest.OnEachOther(p.Texts); len(lie) > 0 {
				t.Errorf("%s deep, page %d: %q", deep, i+1, lie)
			}
		}
	}
}

var depthOf = regexp.MustCompile(`(?s)^(.*?\ndepth = )[^\n]*`) // the first is the hull's

// TestShip: a frame as drawn is shipped, floats as the design does and is written as the
// same boat; one rib proud is to be mended first.
func TestShip(t *testing.T) {
	w, card := cardOf(t, "brook", func(int) (float64, float64) { return 0, 0 })
	m := do(t, asked(t, "built", "brook", card), w)
	if !strings.Contains(m.said, "Ship it") {
		t.Errorf("a frame as drawn is not shipped:\n%s", m.said)
	}
	drawn := ask(t, "float", "brook")
	for _, line := range []string{"displacement", "draft ", "least freeboard", "KG, GM"} {
		if a, b := lineWith(m.said, line), lineWith(drawn.said, line); a == "" || a != b {
			t.Errorf("%q of the frame as drawn, %q of the design", a, b)
		}
	}
	d, err := design.Decode(strings.NewReader(string(m.files["brook-as-built.toml"])), "as-built.toml")
	if err != nil {
		t.Fatal(err)
	}
	shipped, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	if d.Hull.Beam != shipped.Hull.Beam || d.Hull.Depth != shipped.Hull.Depth || d.Hull.RockerBow != shipped.Hull.RockerBow {
		t.Errorf("as built it is %v wide, %v deep, rocker %v", d.Hull.Beam, d.Hull.Depth, d.Hull.RockerBow)
	}
	w, card = cardOf(t, "brook", func(i int) (float64, float64) { return 0, map[bool]float64{true: 9}[i == 8] })
	if m = do(t, asked(t, "built", "brook", card), w); !strings.Contains(m.said, "Fix it: 1 rib wants") {
		t.Errorf("a rib 9 mm deep:\n%s", m.said)
	}
}

func lineWith(text, start string) string {
	for _, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(line, start) {
			return strings.Join(strings.Fields(line), " ")
		}
	}
	return ""
}

// TestWeighedFloats: a boat that is 2 kg heavier on the scale floats 2 kg deeper with its
// crew, and its weight is told.
func TestWeighedFloats(t *testing.T) {
	k, err := world().factsOf("brook")
	if err != nil {
		t.Fatal(err)
	}
	carried, err := k.carried()
	if err != nil {
		t.Fatal(err)
	}
	heavier := carried.Own().Mass + 2
	m := ask(t, "built", "brook", "--weight", fmt.Sprintf("%.2fkg", heavier))
	var was, is float64
	if _, err := fmt.Sscanf(lineWith(ask(t, "float", "brook").said, "displacement"), "displacement %f", &was); err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Sscanf(lineWith(m.said, "displacement"), "displacement %f", &is); err != nil {
		t.Fatal(err)
	}
	if math.Abs(is-was-2) > 0.2 {
		t.Errorf("displacement %.1f kg, and %.1f before 2 kg were found", is, was)
	}
}

// TestOddCards: designs at the edges, with a card of two ribs, are judged and told in both
// systems without a panic or a number that is none.
func TestOddCards(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, units := range []string{"metric", "imperial"} {
			w := world()
			w.Files = InMemory(map[string][]byte{"card.csv": []byte("rib,depth_mm,broken\nF1,,yes\nA1,300,\n")})
			m := do(t, asked(t, "built", name, "card.csv", "--crew", "none", "--units", units), w)
			if strings.Contains(m.said, "NaN") || strings.Contains(m.said, "Inf") {
				t.Errorf("%s, %s:\n%s", name, units, m.said)
			}
			ask(t, "built", name, "--units", units)
		}
	}
}

// BenchmarkBuilt reads a whole card.
func BenchmarkBuilt(b *testing.B) {
	w, card := cardOf(b, "lake", func(i int) (float64, float64) { return math.Sin(float64(i)), 2 * math.Cos(float64(i)) })
	for b.Loop() {
		if _, err := asked(b, "built", "lake", card).Do(w); err != nil {
			b.Fatal(err)
		}
	}
}
