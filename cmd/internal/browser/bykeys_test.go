package browser

import (
	"fmt"
	"os"
	"testing"
	"time"

	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp/kb"
)

// onto tabs on until a thing has the focus, and sees that it shows it and that nothing lies
// over it.
func (v *visit) onto(selector string) {
	v.Helper()
	at := fmt.Sprintf(`document.activeElement === document.querySelector(%q)`, selector)
	for range 400 {
		if get[bool](v, at) {
			if got := get[string](v, `(() => {
				const e = document.activeElement, seen = e.closest(".button") ?? e, box = seen.getBoundingClientRect();
				const top = document.elementFromPoint(box.left + box.width / 2, Math.max(0, box.top) + Math.min(box.height, innerHeight) / 2);
				return (getComputedStyle(seen).outlineStyle === "none" ? "shows no focus " : "") + (seen.contains(top) || top?.contains(seen) ? "" : "lies under " + (top?.id || top?.tagName));
			})()`); got != "" {
				v.Errorf("%s %s", selector, got)
			}
			return
		}
		v.press(kb.Tab)
	}
	v.Fatalf("tabbing on never comes to %s; it is at %s", selector, get[string](v, `document.activeElement.outerHTML.slice(0, 200)`))
}

// enter tabs on to a thing and presses the key that works it.
func (v *visit) enter(selector, key string) {
	v.Helper()
	v.onto(selector)
	v.press(key)
}

// from goes back to a thing, from where keys go on.
func (v *visit) from(id string) { v.do(focus(id)) }

// opens opens or shuts what is folded.
func (v *visit) opens(in string) {
	v.Helper()
	before := get[bool](v, fmt.Sprintf(`document.querySelector(%q).open`, in+" details"))
	v.enter(in+" summary", kb.Enter)
	same(v, fmt.Sprintf(`document.querySelector(%q).open`, in+" details"), !before)
}

// picks opens a field's dialog for files by its key, and chooses files there.
func (v *visit) picks(selector string, all ...file) {
	v.Helper()
	places := v.onDisk(all)
	v.do(command(page.SetInterceptFileChooserDialog, page.SetInterceptFileChooserDialogParams{Enabled: true}))
	v.enter(selector, " ")
	select {
	case field := <-v.asked:
		v.do(command(dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: places, BackendNodeID: field}))
	case <-time.After(long):
		v.Fatalf("%s opens no dialog for files", selector)
	}
}

// TestByKeys walks what came to the page with keys alone, on a phone, a tablet and a desk:
// the sail on the boat, outfits and nests, own prices, editions, a card at the bench, what
// builds say. With RIBWRIGHT_LONG=1 all three; else the phone alone. axe-core finds nothing on the way.
func TestByKeys(t *testing.T) {
	home := served(t)
	for i, px := range widths {
		if i > 0 && os.Getenv("RIBWRIGHT_LONG") == "" {
			break
		}
		t.Run(fmt.Sprint(px), func(t *testing.T) {
			v := begin(t, home, "")
			scheme := []string{"light", "dark", "light"}[i]
			v.wide(px, scheme)
			clean := func() {
				v.Helper()
				same(v, `document.documentElement.scrollWidth - innerWidth`, 0)
				v.axe(scheme)
			}
			v.underSailByKeys()
			clean()
			v.editionsByKeys()
			clean()
			v.pricesByKeys()
			clean()
			v.outfitsByKeys(clean)
			v.learnByKeys()
			clean()
			v.cardByKeys()
			clean()
		})
	}
}

func (v *visit) underSailByKeys() {
	v.Helper()
	v.enter("nav li:last-child a", kb.Enter)
	same(v, `document.activeElement.id`, "h-paper")
	same(v, `document.activeElement.getBoundingClientRect().top > -1 && document.activeElement.getBoundingClientRect().bottom < innerHeight`, true)
	v.from("skip")
	v.enter("#under-sail", " ")
	v.until(`document.getElementById("aloft").textContent.startsWith("Spritsail of ")`)
	v.rest()
	same(v, `document.activeElement.id`, "under-sail")
}

func (v *visit) editionsByKeys() {
	v.Helper()
	v.from("skip")
	v.enter("#pin", kb.Enter)
	v.rest()
	v.enter("#r-hull-beam", kb.PageUp)
	v.until(set("hull-beam") + ` > 720`)
	v.rest()
	v.onto("#cut")
	v.press("stems" + kb.Enter)
	v.until(`Number(document.getElementById("moved").dataset.changes ?? 0) > 20`)
	v.opens("#moved")
	v.rest()
}

func (v *visit) pricesByKeys() {
	v.Helper()
	table, err := os.ReadFile("../../../geometry/shop/cost/prices/mixed.toml")
	if err != nil {
		v.Fatal(err)
	}
	v.picks("#own-prices", file{"mine.toml", table})
	v.until(`document.getElementById("prices").value === "own"`)
	v.rest()
	v.enter("#work-out", kb.Enter)
	v.until(`document.querySelector("#worked p")`)
	v.opens("#worked")
}

func (v *visit) outfitsByKeys(clean func()) {
	v.Helper()
	for _, kind := range []string{"sail", "pair", "row", "fleet"} {
		if kind != "sail" {
			v.from("work-out")
			v.enter("#outfit-kind", kb.ArrowDown)
		}
		v.until(fmt.Sprintf(`document.getElementById("outfit-kind").value === %q`, kind))
		v.rest()
		if kind == "fleet" {
			v.enter(`#outfit-nest [value="river"]`, " ")
			v.rest()
		}
		v.enter("#fit-out", kb.Enter)
		v.until(`document.querySelector("#fitted img") && !document.getElementById("fit-out").disabled`)
		same(v, `document.getElementById("status").textContent`, "")
		clean()
	}
}

func (v *visit) learnByKeys() {
	v.Helper()
	v.picks("#builds", file{"first.csv", []byte("rib,beam_mm,depth_mm,free_width_mm\nM,721,286,726\nF1,719,287,724\nA1,718,288,721\n")})
	v.until(`document.querySelectorAll("#dropped li").length === 1`)
	v.enter("#learn", kb.Enter)
	v.until(`document.getElementById("learned").dataset.builds === "1"`)
}

func (v *visit) cardByKeys() {
	v.Helper()
	v.from("skip")
	v.enter("#to-bench", kb.Enter)
	v.until(benchAt + ` === "steps0"`)
	v.enter("#tab-card", kb.Enter)
	v.until(benchAt + ` === "card0"`)
	v.onto("#c-beam")
	v.press("728" + kb.Tab)
	v.onto("#c-straightedge")
	v.press("319" + kb.Tab)
	v.until(`document.getElementById("rib-says").dataset.verdict`)
	v.enter("#bench-next", kb.Enter)
	v.until(benchAt + ` === "card1"`)
}
