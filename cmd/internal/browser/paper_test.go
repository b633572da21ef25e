package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// TestPaper: all sheets are seen before they are printed, what the proof's bars measure
// is kept in the link and drawn into the patterns, and whoever prints is told what to
// tick.
func TestPaper(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		seen := func() int {
			v.click("#show-sheets")
			v.until(`!document.getElementById("show-sheets").disabled && document.querySelector("#sheets svg")`)
			return allShown(v)
		}
		n := seen()
		if n < 10 || n > 30 {
			t.Errorf("Brook comes out on %d sheets", n)
		}
		same(v, `[...document.querySelectorAll("#sheets svg")].every((s) => [...s.querySelectorAll("path")].some((p) => p.getAttribute("d").length > 50))`, true)
		same(v, `document.querySelector("#sheets figcaption").textContent`, "1. Read first")
		same(v, `[...document.querySelectorAll("#sheets figcaption")].filter((c, i) => !c.textContent.startsWith(i + 1 + ". ") || !/^\d+\. (Read first|[A-Z][a-z, ]+(, pieces? [A-Z0-9]+(, [A-Z0-9]+)*( and [A-Z0-9]+)?)?(; |$))+$/.test(c.textContent)).map((c) => c.textContent).join()`, "")
		same(v, `document.getElementById("bar-across").textContent`, " (drawn 190 mm)")
		const status = `document.getElementById("status")`
		v.do(evaluate(`document.getElementById("across").value = "9 mm"`))
		v.click("#printed button")
		v.until(status + `.classList.contains("wrong")`)
		same(v, status+`.textContent.includes("of a printer")`, true)
		v.do(evaluate(`document.getElementById("across").value = "190.8"`))
		v.click("#printed button")
		v.until(`location.hash.includes("190.8")`)
		v.rest()
		same(v, `document.getElementById("across").value`, "190.8 mm of 190 mm")
		same(v, `document.getElementById("true").textContent.startsWith("Kept")`, true)
		allShown(v) // worked against, a sheet holds 0.4 % less, so that they may be one more
		same(v, `document.getElementById("laid").textContent.includes("corrected across 1.0042")`, true)
		v.do(chromedp.Reload())
		v.rest()
		same(v, `document.getElementById("across").value`, "190.8 mm of 190 mm")
		seen()
		v.click("#print")
		same(v, `document.getElementById("ticks").open`, true)
		same(v, `document.querySelectorAll("#tick-list li").length`, 5)
		v.click("#print-not")
		same(v, `document.getElementById("ticks").open`, false)
	})
}

// allShown counts the sheets that are seen: as many as the engine says that it has laid.
func allShown(v *visit) int {
	v.Helper()
	n := get[int](v, `document.querySelectorAll("#sheets svg").length`)
	same(v, `Number(/(\d+) sheets/.exec(document.getElementById("laid").textContent)[1])`, n)
	return n
}
