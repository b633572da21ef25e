package browser

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// widths are those of a phone, a tablet and a desk, px.
var widths = []int64{390, 820, 1440}

// TestWidths: nothing is wider than the screen, pinned boat and long titles too.
func TestWidths(t *testing.T) {
	v := begin(t, served(t), `#`+pinned)
	for _, px := range widths {
		v.wide(px, "light")
		same(v, `document.documentElement.scrollWidth - innerWidth`, 0)
		same(v, `innerWidth`, int(px))
		same(v, `[...document.querySelectorAll("body *")].filter((e) => e.getBoundingClientRect().right > innerWidth + 1 && getComputedStyle(e).position !== "absolute").map((e) => e.tagName + "#" + e.id).join()`, "")
	}
}

// pinned is a state with all there is to see: a changed boat with another under it.
const pinned = `%7B%22base%22%3A%22lake%22%2C%22name%22%3A%22lake%22%2C%22units%22%3A%22imperial%22%2C%22set%22%3A%7B%22hull-beam%22%3A800%7D%2C%22heel%22%3A20%2C%22pin%22%3A%7B%22base%22%3A%22lake%22%2C%22name%22%3A%22lake%22%2C%22text%22%3A%22%22%2C%22people%22%3Anull%2C%22set%22%3A%7B%7D%7D%7D`

// TestAxe holds the page to the rules, light and dark, on a phone and on a desk.
func TestAxe(t *testing.T) {
	v := begin(t, served(t), `#`+pinned)
	for i, scheme := range []string{"light", "dark"} {
		v.wide([]int64{390, 1440}[i], scheme)
		v.axe(scheme)
	}
}

// axe asks axe-core, which knows the rules of the Web Content Accessibility Guidelines,
// what keeps people out of the page as it stands.
func (v *visit) axe(scheme string) {
	v.Helper()
	axe, err := os.ReadFile("testdata/axe/axe.min.js")
	if err != nil {
		v.Fatal(err)
	}
	v.do(chromedp.Evaluate[chromedp.Void](string(axe)))
	found, err := chromedp.Run(v.tab, chromedp.Evaluate[string](`axe.run().then((r) => JSON.stringify({ passes: r.passes.length,
		bad: r.violations.flatMap((b) => b.nodes.map((n) => b.id + ": " + n.target + ": " + n.failureSummary)) }))`, chromedp.EvalAwaitPromise))
	if err != nil {
		v.Fatal(err)
	}
	var r struct {
		Passes int
		Bad    []string
	}
	if err := json.Unmarshal([]byte(found), &r); err != nil || r.Passes < 20 {
		v.Fatalf("%v: axe-core held the page to %d rules only", err, r.Passes)
	}
	for _, bad := range r.Bad {
		v.Errorf("%s: %s", scheme, bad)
	}
}

// TestLinesSeen: every line that is drawn stands out from the paper, light and dark; a
// drawing's lines want 3 to 1 (WCAG 2.2, 1.4.11). An axis is no line of the boat.
func TestLinesSeen(t *testing.T) {
	v := begin(t, served(t), `#`+pinned)
	for _, scheme := range []string{"light", "dark"} {
		v.wide(820, scheme)
		got := get[map[string]float64](v, `(() => {
			const light = (c) => { const [r, g, b] = c.match(/[\d.]+/g).map((v) => v / 255).map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
			const paper = light(getComputedStyle(document.body).backgroundColor), out = {};
			for (const p of document.querySelectorAll("svg path:not(.axis)")) {
				const l = light(getComputedStyle(p).stroke);
				out[p.parentNode.id + " " + p.getAttribute("class")] = (Math.max(l, paper) + 0.05) / (Math.min(l, paper) + 0.05);
			}
			return out;
		})()`)
		if len(got) < 20 {
			t.Errorf("%s: %d kinds of lines only", scheme, len(got))
		}
		for line, ratio := range got {
			if ratio < 3 {
				t.Errorf("%s: %s stands out by %.1f to 1 only", scheme, line, ratio)
			}
		}
	}
}

// TestPrinted: on paper there is the boat and what is said of it, and nothing to click.
func TestPrinted(t *testing.T) {
	v := begin(t, served(t), `#`+pinned)
	v.do(command(emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print",
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: "dark"}}}))
	same(v, `[...document.querySelectorAll("button, input, select, a")].filter((e) => e.checkVisibility() && e.getBoundingClientRect().bottom > 0).map((e) => e.tagName + "#" + e.id).join()`, "")
	same(v, `getComputedStyle(document.body).backgroundColor`, "rgb(255, 255, 255)")
	same(v, `getComputedStyle(document.querySelector("#plan .cut")).stroke`, "rgb(0, 0, 0)")
	same(v, `["title", "quarter", "sheer", "plan", "sections", "told", "levers", "wood"].filter((id) => !document.getElementById(id).checkVisibility()).join()`, "")
	pdf, err := chromedp.Run(v.tab, chromedp.PrintToPDF(chromedp.PDFPaper(chromedp.PaperA4)))
	if err != nil {
		t.Fatal(err)
	}
	if pages := bytes.Count(pdf, []byte("/Type /Page\n")); !bytes.HasPrefix(pdf, []byte("%PDF-")) || pages < 1 || pages > 6 {
		t.Errorf("the page prints on %d sheets", pages)
	}
	if to := os.Getenv("RIBWRIGHT_SHOW"); to != "" {
		os.WriteFile(to+"/printed.pdf", pdf, 0o600)
	}
}

// TestShown writes pictures of the page for a person to look at.
func TestShown(t *testing.T) {
	if os.Getenv("RIBWRIGHT_SHOW") == "" {
		t.Skip("set RIBWRIGHT_SHOW to a folder for pictures of the page")
	}
	v := begin(t, served(t), `#`+pinned)
	for _, px := range widths {
		for _, scheme := range []string{"light", "dark"} {
			v.wide(px, scheme)
			v.show(fmt.Sprintf("%d-%s", px, scheme))
		}
	}
}
