package browser

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"ribwright/cmd/internal/job"
)

const says = `document.getElementById("status").textContent`

// typed puts words into a field as a person leaves it.
func (v *visit) typed(field, words string) {
	v.Helper()
	v.do(evaluate(fmt.Sprintf(`{ const e = document.querySelector(%q); e.value = %q; e.dispatchEvent(new Event("input", { bubbles: true })); e.dispatchEvent(new Event("change", { bubbles: true })); }`, field, words)))
}

// gives gives files to a field for them.
func (v *visit) gives(field string, all ...file) {
	v.Helper()
	v.do(chromedp.SetUploadFiles(chromedp.CSS(field), v.onDisk(all)))
}

// onDisk writes files for a field that takes some, and tells where they lie.
func (v *visit) onDisk(all []file) (places []string) {
	v.Helper()
	dir := v.TempDir()
	for _, f := range all {
		place := filepath.Join(dir, f.name)
		if err := os.WriteFile(place, f.data, 0o600); err != nil {
			v.Fatal(err)
		}
		places = append(places, place)
	}
	return places
}

// show writes a picture of the page as it stands, for a person to look at.
func (v *visit) show(name string) {
	v.Helper()
	to := os.Getenv("RIBWRIGHT_SHOW")
	if to == "" {
		return
	}
	png, err := chromedp.Run(v.tab, chromedp.FullScreenshot(100))
	if err != nil {
		v.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(to, name+".png"), png, 0o600); err != nil {
		v.Fatal(err)
	}
}

// savedAs clicks a button by its words and returns what comes into the folder.
func (v *visit) savedAs(dir, button, name string) []byte {
	v.Helper()
	place := filepath.Join(dir, name)
	os.Remove(place)
	v.do(evaluate(fmt.Sprintf(`[...document.querySelectorAll("button")].find((b) => b.textContent === %q).click()`, button)))
	v.until(fmt.Sprintf("%s === %q", says, "Saved: "+name))
	data := v.came(place, 1)
	v.do(evaluate(`document.getElementById("status").textContent = ""`))
	return data
}

// commandLine is what a verb makes of files on the command line, by the end of its name.
func (v *visit) commandLine(end, verb string, names []string, fields [][2]string, given ...file) []byte {
	v.Helper()
	r, err := job.Ask(verb, names, fields...)
	if err != nil {
		v.Fatal(err)
	}
	files := map[string][]byte{}
	for _, f := range given {
		files[f.name] = f.data
	}
	result, err := r.Do(job.World{Made: job.UsualDate(), Files: func(name string) ([]byte, error) {
		if data, ok := files[name]; ok {
			return data, nil
		}
		return nil, fs.ErrNotExist
	}})
	if err != nil {
		v.Fatal(err)
	}
	for _, o := range result.Outputs {
		if strings.HasSuffix(o.Name, end) {
			var b bytes.Buffer
			if err := o.Write(&b); err != nil {
				v.Fatal(err)
			}
			return b.Bytes()
		}
	}
	v.Fatalf("%s makes no %s", verb, end)
	return nil
}

// TestEditions: the older boat lies dotted under the other; what moved is told in words and
// figures, with what is cut too, and goes when the boat becomes another.
func TestEditions(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		dir := t.TempDir()
		v.savesTo(dir)
		v.rest()
		v.do(evaluate(`document.getElementById("quarter").dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowLeft" })); document.querySelector("#cut-parts button").click()`))
		v.until(says + `.startsWith("Pin the older boat first")`)
		v.rest() // a look that was still on its way leaves what was said since
		same(v, says+`.startsWith("Pin the older boat first")`, true)
		v.click("#pin")
		v.rest()
		v.drag("#r-hull-beam", 20)
		v.until(set("hull-beam") + ` > 0`)
		v.rest()
		const changes, moved = `Number(document.getElementById("moved").dataset.changes ?? 0)`, `document.getElementById("moved").textContent`
		v.typed("#cut", "masts")
		v.click("#cut-parts button")
		v.until(says + `.includes("is no part that is cut")`)
		v.typed("#cut", "stems,gunwales")
		v.click("#cut-parts button")
		v.until(changes + ` > 50`)
		v.wide(390, "light")
		same(v, `document.documentElement.scrollWidth - innerWidth`, 0)
		v.do(evaluate(`for (const d of document.querySelectorAll("#moved details")) d.open = true`))
		same(v, `document.documentElement.scrollWidth - innerWidth`, 0)
		v.axe("light")
		v.show("editions")
		beam := fmt.Sprintf("%v mm", get[float64](v, set("hull-beam")))
		same(v, moved+`.includes("Edition 2: beam 720 mm to `+beam+`.")`, true)
		same(v, `[...document.querySelectorAll("#moved summary")].map((h) => h.textContent).includes("What moved")`, true)
		same(v, `document.querySelector("#plan .pin").getAttribute("d").length > 100`, true)
		same(v, `document.getElementById("kept").hidden`, false)
		design := v.files("brook", [][2]string{{"hull-beam", beam}})("look", ".toml")
		v.do(evaluate(`document.getElementById("status").textContent = ""`))
		got := v.savedAs(dir, "Save the edition that keeps what is cut", "brook-edition-3-kept.toml")
		if want := v.commandLine("-kept.toml", "compare", []string{"brook", design.name}, [][2]string{{"cut", "stems,gunwales"}}, design); !bytes.Equal(got, want) {
			t.Error("the edition that keeps what is cut is not the command line's")
		}
		if os.Getenv("RIBWRIGHT_LONG") != "" {
			got = v.savedAs(dir, "Save the changed sheets", "brook-edition-2-patterns-letter.pdf")
			if want := v.commandLine(".pdf", "loft", []string{design.name}, [][2]string{{"since", "brook"}}, design); !bytes.Equal(got, want) {
				t.Errorf("the changed sheets are not the command line's: %d bytes, %d wanted", len(got), len(want))
			}
		}
		v.back("#undo", `!document.querySelector("#cut").value.includes("gunwales")`)
		same(v, moved, "")
		v.gives("#under", file{"mine.toml", design.data})
		v.until(`location.hash.includes("mine.toml")`)
		v.rest()
		v.typed("#cut", "")
		v.click("#cut-parts button")
		v.until(moved + `.includes("no mark moved")`)
	})
}

// turn turns the page at the bench. What is judged may move the button while a hand is on
// its way.
func (v *visit) turn(way string) {
	v.Helper()
	v.do(evaluate(`document.getElementById("bench-` + way + `").click()`))
}

// measured is the first rib's line of a card that the page saves.
const measured = "M,728,319,,,,,,,,\n"

// TestCard: at the bench a rib is measured, judged at once and kept; a slip is told in a
// line; what is saved is the command line's card, and what comes of it the command line's too.
func TestCard(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		dir := t.TempDir()
		v.savesTo(dir)
		v.wide(390, "light")
		v.click("#to-bench")
		v.until(benchAt + ` === "steps0"`)
		v.click("#tab-card")
		v.until(benchAt + ` === "card0"`)
		const rib, verdict = `document.getElementById("rib-says").textContent`, `document.getElementById("rib-says").dataset.verdict`
		same(v, benchHead, "Measure rib M")
		same(v, `document.querySelector("#c-beam").previousSibling.textContent`, "Beam, mmdrawn 720 mm")
		same(v, `document.documentElement.scrollWidth - innerWidth`, 0)
		v.typed("#c-beam", "7280")
		v.until(rib + `.includes("nought too many")`)
		v.typed("#c-beam", "728")
		v.typed("#c-straightedge", "319")
		v.until(verdict + ` === "wait"`)
		same(v, rib+`.includes("Off the drawing: beam +8 mm, depth +2 mm.")`, true)
		v.axe("light")
		v.turn("next")
		v.until(benchAt + ` === "card1" && ` + rib + `.startsWith("Still to set")`)
		v.do(chromedp.Reload())
		v.rest()
		v.until(benchAt + ` === "card1" && ` + rib + `.startsWith("Still to set")`)
		v.turn("before")
		v.until(verdict + ` === "wait"`)
		card := v.savedAs(dir, "Save the card", "brook-measures.csv")
		if !strings.HasSuffix(string(card), "\n"+measured) {
			t.Errorf("the card that is saved: %q", card)
		}
		given := file{"measures.csv", card}
		for name, b := range map[string]struct {
			button string
			fields [][2]string
		}{"brook-as-built.toml": {"Save the boat as built", nil}, "feedback.csv": {"Save what it says of the formulas", [][2]string{{"feedback", "true"}}}} {
			if got := v.savedAs(dir, b.button, name); !bytes.Equal(got, v.commandLine(name, "built", []string{"brook", given.name}, b.fields, given)) {
				t.Errorf("%s is not the command line's", name)
			}
		}
		printed := v.savedAs(dir, "Print the card", "brook-card-letter.pdf")
		if !bytes.Equal(printed, v.commandLine(".pdf", "built", []string{"brook"}, nil)) {
			t.Error("the card on paper is not the command line's")
		}
		v.gives("#open-card", file{"bad.csv", []byte("rib,beam_mm\nZ9,700\n")})
		v.until(says + `.includes("this frame has no rib")`)
		v.gives("#open-card", file{"mine.csv", []byte("# by hand\nrib;beam_in;depth_in;broken\nm;28 3/8;11 1/4;no\na1;;;yes\n")})
		v.until(`document.querySelector("#c-beam").value === "28 3/8"`)
		same(v, `document.querySelector("#c-depth").value`, "11 1/4")
		same(v, `document.querySelector("#c-beam").previousSibling.textContent`, "Beam, indrawn 28 3/8 in")
		v.until(verdict + ` === "wait"`)
		v.show("card")
		v.turn("next")
		v.until(benchAt + ` === "card1" && ` + verdict + ` === "replace"`)
		same(v, `document.querySelector("#c-broken").checked`, true)
		v.do(evaluate(`[...document.querySelectorAll("#bench button")].find((b) => b.textContent === "See it over the drawing").click()`))
		v.until(`document.getElementById("bench").hidden && location.hash.includes("as-built.toml")`)
		v.rest()
		same(v, `document.querySelector("#plan .pin").getAttribute("d").length > 100`, true)
	})
}

// TestLearn: cards, notes and a table that names them are dropped together; each build
// counts once, and the lines that are proposed are the command line's.
func TestLearn(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		dir := t.TempDir()
		v.savesTo(dir)
		card := func(name string, wider int) file {
			text := "rib,beam_mm,depth_mm,free_width_mm\n"
			for i, rib := range []string{"M", "F1", "A1"} {
				text += fmt.Sprintf("%s,%d,%d,%d\n", rib, []int{721, 719, 718}[i], 286+i, []int{726, 724, 721}[i]+wider)
			}
			return file{name, []byte(text)}
		}
		notes := file{"notes.csv", []byte("what,of,drawn,found\nboiler,,,B\nhours,ribs,5.4 h,15 h\n")}
		table := file{"course.csv", []byte("builder,design,measures,notes\nAnn,brook,first.csv,notes.csv\n")}
		all := []file{card("first.csv", 0), card("second.csv", 3), card("third.csv", 1), notes, table}
		same(v, `document.getElementById("learn").disabled`, true)
		v.gives("#builds", all...)
		v.until(`document.querySelectorAll("#dropped li").length === 5`)
		const builds = `document.getElementById("learned").dataset.builds`
		v.click("#learn")
		v.until(builds + ` === "3"`)
		same(v, `document.getElementById("learned").textContent.includes("For the family file: bending.springback = ")`, true)
		v.wide(390, "dark")
		same(v, `document.documentElement.scrollWidth - innerWidth`, 0)
		v.axe("dark")
		v.show("learn")
		got := v.savedAs(dir, "Save pack-proposed.family", "pack-proposed.family")
		var names []string
		for _, f := range all {
			names = append(names, f.name)
		}
		if want := v.commandLine(".family", "learn", names, [][2]string{{"of", "brook"}}, all...); !bytes.Equal(got, want) {
			t.Errorf("the family that is proposed is not the command line's:\n%s", got)
		}
		v.do(evaluate(`document.querySelector("#dropped button").click()`))
		same(v, `document.querySelectorAll("#dropped li").length`, 4)
		same(v, `document.getElementById("learned").textContent`, "")
		v.click("#learn")
		v.until(says + `.includes("first.csv")`)
	})
}
