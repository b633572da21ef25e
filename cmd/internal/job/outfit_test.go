package job

import (
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/render/rendertest"
)

// outfitted does the job of an outfit with its patterns and reads everything back.
func outfitted(t *testing.T, verb, design, paper string, flags ...string) truth {
	t.Helper()
	m := ask(t, verb, append(append([]string{design, "--loft", "--svg", "--paper", paper}, purpose(verb)...), flags...)...)
	stem := design + "-" + verb
	s := truth{said: m.said, files: m.files}
	file, err := rendertest.ReadPDF(m.only(t, ".pdf"))
	if err == nil {
		s.pages, err = file.Pages()
	}
	if err == nil {
		s.plate, err = rendertest.ReadSVG(m.only(t, stem+"-cut.svg"))
	}
	if err == nil {
		s.dxf, err = rendertest.ReadDXF(m.only(t, stem+"-cut.dxf"))
	}
	if err == nil {
		s.numbers, err = rendertest.ReadPages(m.only(t, stem+"-numbers.json"))
	}
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// purpose is what a pair must be told and nothing else.
func purpose(verb string) []string {
	if verb == "pair" {
		return []string{"--purpose", "open"}
	}
	return nil
}

// long says whether there is time for all boats and rigs, as in CI.
var long = os.Getenv("RIBWRIGHT_LONG") != ""

// fitRow is one outfit of a boat. rig is that of a sail; flags are more than what
// the model is rebuilt from, so with them sizes are held against the numbers alone.
type fitRow struct {
	verb, design, paper, rig string
	flags                    []string
	small                    bool // straight pieces and panels as sketches
}

// fitRows are all outfits of all shipped boats, the sail in each of its rigs, on
// both papers in turn, and some that flags change; each kind once where there is no
// time for all.
func fitRows() []fitRow {
	var out []fitRow
	papers := []string{"letter", "a4"}
	for i, boat := range []string{"brook", "lake", "river"} {
		if !long && i == 1 {
			continue
		}
		out = append(out, fitRow{verb: "row", design: boat, paper: papers[i%2]}, fitRow{verb: "pair", design: boat, paper: papers[(i+1)%2]})
		for k, rig := range []string{"spritsail", "leg-of-mutton", "lug", "vee"} {
			if !long && k/2 != i/2 { // two rigs a boat
				continue
			}
			out = append(out, fitRow{verb: "sail", design: boat, paper: papers[(i+k)%2], rig: rig})
		}
	}
	return append(out,
		fitRow{"row", "lake", "a4", "", []string{"--paddler", "man"}, false}, fitRow{"row", "river", "a4", "", []string{"--units", "imperial"}, false},
		fitRow{"pair", "lake", "a4", "", []string{"--beams", "3"}, false}, fitRow{"sail", "brook", "letter", "leg-of-mutton", []string{"--wind", "8m/s"}, false},
		fitRow{"sail", "river", "letter", "vee", []string{"--area", "1.5m2"}, false}, fitRow{"sail", "lake", "letter", "lug", []string{"--area", "1.8m2", "--reefs", "3"}, false},
		fitRow{verb: "row", design: "lake", paper: "a4", small: true}, fitRow{verb: "pair", design: "river", paper: "letter", small: true}, fitRow{verb: "sail", design: "lake", paper: "a4", rig: "spritsail", small: true})
}

// TestOutfitTruth reads the outfits' sheets and cutter's files back and measures them
// as TestTruth and TestModelAndFiles do the boat's.
func TestOutfitTruth(t *testing.T) {
	papers := map[string][2]float64{"letter": {215.9, 279.4}, "a4": {210, 297}} // as in TestTruth
	for _, row := range fitRows() {
		flags := row.flags
		if row.rig != "" {
			flags = append([]string{"--rig", row.rig}, flags...)
		}
		if !row.small {
			flags = append([]string{"--full-size"}, flags...)
		}
		t.Run(row.verb+" "+row.design+" on "+row.paper+strings.Join(flags, " "), func(t *testing.T) {
			t.Parallel()
			s := outfitted(t, row.verb, row.design, row.paper, flags...)
			size := papers[row.paper]
			if strings.Contains(s.said, row.paper+", lying") {
				size[0], size[1] = size[1], size[0]
			}
			t.Run("sheets", func(t *testing.T) { s.checkOutfitSheets(t, size) })
			t.Run("scale bars", s.checkBars)
			t.Run("margins", s.checkMargins)
			t.Run("crosses", s.checkCrosses)
			t.Run("cover", s.checkCover)
			t.Run("outlines", s.checkOutlines)
			t.Run("cutter's files", s.checkCutter)
			t.Run("words", s.checkWords)
			if !row.small {
				t.Run("figures", func(t *testing.T) { s.checkFigures(t, row) })
			}
			plates := map[string]truth{"cut": s}
			if row.verb == "sail" {
				cloth := s.cloth(t, row.design)
				t.Run("cloth", cloth.checkCloth)
				t.Run("cloth outlines", cloth.checkOutlines)
				t.Run("cloth cutter's files", cloth.checkCutter)
				plates["cloth"] = cloth
			}
			if row.flags == nil && !row.small {
				t.Run("model and files", func(t *testing.T) { checkOutfitModel(t, row, plates) })
			}
		})
	}
}

// TestFewSheets: what is straight or cloth takes words and not paper. How many sheets of
// a4 each set may take is our own choice.
func TestFewSheets(t *testing.T) {
	for _, c := range []struct {
		verb, design string
		most         int
	}{{"sail", "lake", 12}, {"pair", "river", 6}, {"row", "lake", 8}} {
		if s := outfitted(t, c.verb, c.design, "a4"); len(s.pages) > c.most {
			t.Errorf("%s of %s takes %d sheets, %d are enough", c.verb, c.design, len(s.pages), c.most)
		}
	}
}

// checkOutfitSheets: every page of the size of the paper, numbered, and said.
func (s truth) checkOutfitSheets(t *testing.T, size [2]float64) {
	said := regexp.MustCompile(`(?m)^(\d+) sheets? of `).FindStringSubmatch(s.said)
	if said == nil || said[1] != strconv.Itoa(len(s.pages)) {
		t.Errorf("%d pages, the program said %q", len(s.pages), said)
	}
	for i, p := range s.pages {
		closeTo(t, "width", p.W, size[0], rounding)
		closeTo(t, "height", p.H, size[1], rounding)
		number := "sheet " + strconv.Itoa(i+1) + " of " + strconv.Itoa(len(s.pages))
		if !slices.ContainsFunc(p.Texts, func(x rendertest.Text) bool { return x.Words == number }) {
			t.Errorf("page %d does not say %q", i+1, number)
		}
	}
}

// checkWords: the first sheets carry the cautions, and nothing on the page or the
// sheets claims that a rule is met.
func (s truth) checkWords(t *testing.T) {
	all := s.said
	for _, p := range s.pages {
		for _, x := range p.Texts {
			all += " " + x.Words
		}
	}
	all = strings.Join(strings.Fields(all), " ")
	for _, want := range []string{"Cautions", "CAUTION", "nothing here certifies a boat", "life jacket", "Local law"} {
		if !strings.Contains(all, want) {
			t.Errorf("nowhere stands %q", want)
		}
	}
	if claim := regexp.MustCompile(`(?i)\b(complies|compliant|certified|approved|meets the (rule|standard))`).FindString(all); claim != "" {
		t.Errorf("somewhere stands %q", claim)
	}
}

// TestOutfitPages keeps the pages within 80 columns in both systems, free of numbers
// that are none, and the cautions before any figure.
func TestOutfitPages(t *testing.T) {
	for _, verb := range []string{"sail", "pair", "row"} {
		for _, design := range []string{"brook", "lake", "river"} {
			for _, units := range []string{"metric", "imperial"} {
				page := ask(t, verb, append([]string{design, "--units", units}, purpose(verb)...)...).said
				for i, l := range strings.Split(page, "\n") {
					if n := len([]rune(l)); n > 80 {
						t.Errorf("%s %s %s, line %d has %d columns: %s", verb, design, units, i+1, n, l)
					}
				}
				if strings.Contains(page, "NaN") || strings.Contains(page, "Inf") {
					t.Errorf("%s %s: a number is none:\n%s", verb, design, page)
				}
				if at := strings.Index(page, "CAUTION"); at < 0 || at > 200 {
					t.Errorf("%s %s: the cautions begin at %d", verb, design, at)
				}
			}
		}
	}
}
