package job

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"
	"time"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/render/rendertest"
)

// filesOf lofts and returns the files, each of which other programs can open.
func filesOf(t *testing.T, args ...string) map[string]string {
	t.Helper()
	return wellFormed(t, ask(t, "loft", append([]string{"--nest", "quick"}, args...)...), 4)
}

// wellFormed returns the files of a job, of which there must be so many.
func wellFormed(t *testing.T, m made, count int) map[string]string {
	t.Helper()
	if len(m.files) != count {
		t.Fatalf("%d files, want %d", len(m.files), count)
	}
	got := map[string]string{}
	for name, data := range m.files {
		if err := rendertest.WellFormed(name, data); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		got[name] = string(data)
	}
	return got
}

// TestLoftNames checks the names that the contract promises.
func TestLoftNames(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, paper := range []string{"letter", "a4"} {
			if name == "river" && paper == "a4" && !long {
				continue // where there is time, as in CI
			}
			t.Run(name+" "+paper, func(t *testing.T) {
				t.Parallel()
				got := filesOf(t, name, "--paper", paper)
				for _, file := range []string{name + "-patterns-" + paper + ".pdf", name + "-cut.svg", name + "-cut.dxf", name + "-numbers.json"} {
					if len(got[file]) == 0 {
						t.Errorf("%s is missing or empty", file)
					}
				}
			})
		}
	}
}

// TestLoftUnits checks that the units asked for change what is lettered, and no
// number but those of the sheets.
func TestLoftUnits(t *testing.T) {
	for _, name := range design.ShippedNames() {
		if name == "river" && !long {
			continue // where there is time, as in CI
		}
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			metric, imperial := filesOf(t, name, "--units", "metric"), filesOf(t, name, "--units", "imperial")
			var m, i map[string]any
			for _, c := range []struct {
				from map[string]string
				to   *map[string]any
			}{{metric, &m}, {imperial, &i}} {
				if err := json.Unmarshal([]byte(c.from[name+"-numbers.json"]), c.to); err != nil {
					t.Fatal(err)
				}
				if pages, ok := (*c.to)["pages"].([]any); !ok || len(pages) == 0 {
					t.Error("there are no pages")
				}
				delete(*c.to, "pages")
			}
			if len(m) < 8 || !reflect.DeepEqual(m, i) {
				t.Errorf("the numbers differ between metric and imperial, or there are only %d kinds", len(m))
			}
			pdf := name + "-patterns-letter.pdf"
			if metric[pdf] == imperial[pdf] {
				t.Error("the patterns are lettered the same in metric and imperial")
			}
			if metric[name+"-cut.svg"] != imperial[name+"-cut.svg"] || metric[name+"-cut.dxf"] != imperial[name+"-cut.dxf"] {
				t.Error("the cutter's files depend on the units; they are in millimetres")
			}
		})
	}
}

// TestLoftLettering checks that the units reach the patterns and the sheets
// around them.
func TestLoftLettering(t *testing.T) {
	var drawn [2]string
	figures := [2]map[string]bool{{}, {}}
	for i, units := range []measure.System{measure.Metric, measure.Imperial} {
		l := laidOut(t, "river", "letter", "--units", units.String())
		for _, s := range l.printed.Sheets {
			addNumbers(figures[i], s.Texts)
			for _, v := range s.Views {
				drawn[i] += wordsOf(v.Drawing.Texts)
			}
		}
	}
	if drawn[0] == "" || drawn[0] == drawn[1] {
		t.Error("the patterns are lettered the same in metric and imperial")
	}
	if len(figures[0]) == 0 || maps.Equal(figures[0], figures[1]) {
		t.Error("the figures along the edges of tiles are the same in metric and imperial")
	}
}

func wordsOf(texts []layout.Text) string {
	var b strings.Builder
	for _, t := range texts {
		b.WriteString(t.Words + "\n")
	}
	return b.String()
}

// addNumbers notes the texts that are bare numbers, such as distances along the
// edge of a tile; how often each stands there hangs on the count of sheets.
func addNumbers(set map[string]bool, texts []layout.Text) {
	for _, t := range texts {
		if _, err := strconv.ParseFloat(t.Words, 64); err == nil {
			set[t.Words] = true
		}
	}
}

// TestLoftPaper checks that the paper changes the sheets and nothing else.
func TestLoftPaper(t *testing.T) {
	letter, a4 := filesOf(t, "brook", "--paper", "letter"), filesOf(t, "brook", "--paper", "a4")
	var l, a map[string]any
	for _, c := range []struct {
		from map[string]string
		to   *map[string]any
	}{{letter, &l}, {a4, &a}} {
		if err := json.Unmarshal([]byte(c.from["brook-numbers.json"]), c.to); err != nil {
			t.Fatal(err)
		}
	}
	if reflect.DeepEqual(l["pages"], a["pages"]) {
		t.Error("the sheets of letter and a4 are the same")
	}
	delete(l, "pages")
	delete(a, "pages")
	if !reflect.DeepEqual(l, a) {
		t.Error("the paper changes a number that is not about sheets")
	}
}

// TestLoftNoClock looks for today in the files: it would make tomorrow's differ.
func TestLoftNoClock(t *testing.T) {
	now := time.Now()
	for name, data := range filesOf(t) {
		for _, layout := range []string{"20060102", "2006-01-02", "02 January 2006", "January 2, 2006", "2 Jan 2006"} {
			for _, zone := range []time.Time{now, now.UTC()} {
				if day := zone.Format(layout); strings.Contains(data, day) {
					t.Errorf("%s holds today's date as %q", name, day)
				}
			}
		}
	}
}

// TestLoftRepeats makes every file twice in one process, where a map would
// give its keys in another order the second time.
func TestLoftRepeats(t *testing.T) {
	for _, args := range [][]string{{"brook"}, {"river", "--paper", "a4", "--units", "imperial"}} {
		again := do(t, asked(t, "loft", append([]string{"--nest", "quick"}, args...)...), world())
		if one, two := filesOf(t, args...), wellFormed(t, again, 4); !maps.Equal(one, two) {
			t.Errorf("loft %q makes other bytes the second time", args)
		}
	}
}

// TestLoftTitle has titles that could break out of the folder, of a file's
// format or of a line.
func TestLoftTitle(t *testing.T) {
	shipped := brookFile(t)
	for _, c := range []struct{ name, title, slug string }{
		{"marks", `& < > " '`, "boat"},
		{"xml", `]]> <!-- --> <?x?> </svg> &amp; &#0;`, "x-svg-amp-0"},
		{"pdf", `) Tj ET (\\( \ %%EOF endstream`, "tj-et-eof-endstream"},
		{"em dash", "Salt—Pepper", "salt-pepper"},
		{"emoji", "🛶👩🏽‍🚀🇫🇮 Otter", "otter"},
		{"300 letters", strings.Repeat("Ñandú ", 50), strings.Repeat("ñandú-", 6) + "ñand"},
		{"300 w in one word", strings.Repeat("w", 300), strings.Repeat("w", 40)},
		{"separators", `/../../etc\..\passwd:C:\con`, "etc-passwd-c-con"},
		{"device", "NUL", "boat-nul"},
		{"control characters", "a\x00\x01\x1b[31m\u0085\u2028\nb", "a-31m-b"},
		{"right to left", "\u202eeonac", "eonac"},
		{"other alphabets", "Каноэ 船 قارب", "каноэ-船-قارب"},
		{"longest", strings.Repeat("x ", 1000), strings.Repeat("x-", 19) + "x"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			quoted, err := json.Marshal(c.title) // a JSON text is a TOML text too
			if err != nil {
				t.Fatal(err)
			}
			own := bytes.ReplaceAll(shipped, []byte(`"Brook"`), quoted)
			own = bytes.ReplaceAll(own, []byte(`"Carrying thwart"`), []byte(`"<Thwart> & 'co'"`))
			w := world()
			w.Files = InMemory(map[string][]byte{"x.toml": own})
			res := do(t, asked(t, "loft", "x.toml", "--nest", "quick"), w)
			got := wellFormed(t, res, 4)
			if said := strings.Contains(strings.Join(strings.Fields(res.said), " "), "Cyrillic and have no"); said != (lettering.Missing(c.title) != "") {
				t.Errorf("that letters are missing is told: %v", said)
			}
			for _, end := range []string{"-patterns-letter.pdf", "-cut.svg", "-cut.dxf", "-numbers.json"} {
				if len(got[c.slug+end]) == 0 {
					t.Errorf("%s%s is not among the files", c.slug, end)
				}
			}
			var numbers struct{ Design struct{ Title, Slug string } }
			if err := json.Unmarshal([]byte(got[c.slug+"-numbers.json"]), &numbers); err != nil {
				t.Fatal(err)
			}
			if numbers.Design.Title != c.title || numbers.Design.Slug != c.slug {
				t.Errorf("the numbers have the title %q and slug %q, want %q and %q", numbers.Design.Title, numbers.Design.Slug, c.title, c.slug)
			}
		})
	}
}

// TestOutfitTitles fits boats out whose titles could break out of the folder or of a
// file's format, as TestLoftTitle lofts them.
func TestOutfitTitles(t *testing.T) {
	shipped := brookFile(t)
	for verb, count := range map[string]int{"row": 4, "pair": 4, "sail": 6} {
		for title, slug := range map[string]string{
			`]]> <!-- --> <?x?> </svg> &amp; &#0;`: "x-svg-amp-0", `) Tj ET (\\( \ %%EOF endstream`: "tj-et-eof-endstream",
			`/../../etc\..\passwd:C:\con`: "etc-passwd-c-con", "Каноэ 船 قارب": "каноэ-船-قارب",
		} {
			if !long && verb != "sail" && !strings.HasPrefix(slug, "каноэ") {
				continue
			}
			t.Run(verb+" "+slug, func(t *testing.T) {
				t.Parallel()
				quoted, err := json.Marshal(title) // a JSON text is a TOML text too
				if err != nil {
					t.Fatal(err)
				}
				w := world()
				w.Files = InMemory(map[string][]byte{"x.toml": bytes.ReplaceAll(shipped, []byte(`"Brook"`), quoted)})
				for name := range wellFormed(t, do(t, asked(t, verb, append([]string{"x.toml", "--loft"}, purpose(verb)...)...), w), count) {
					if !strings.HasPrefix(name, slug+"-"+verb+"-") {
						t.Errorf("a file is called %q, want %s-%s-...", name, slug, verb)
					}
				}
			})
		}
	}
}

// brookFile is the shipped design of brook as its file has it.
func brookFile(t *testing.T) []byte {
	t.Helper()
	b, err := os.ReadFile("../../../geometry/design/shipped/brook.toml")
	if err != nil {
		t.Fatal(err)
	}
	return b
}
