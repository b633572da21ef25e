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
			return get[int](v, `document.querySelectorAll("#sheets svg").length`)
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
		if again := get[int](v, `document.querySelectorAll("#sheets svg").length`); again < n || again > n+1 { // worked against, the sheet holds 0.4 % less
			t.Errorf("%d sheets, %d for a printer that stretches", n, again)
		}
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
