package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

const (
	benchHead = `document.querySelector("#bench-page h2").textContent`
	benchAt   = `document.documentElement.dataset.bench`
)

// TestBench: at the bench there is one step at a time in big letters, what is ticked off
// stays so, ribs come one by one, and whoever reloads is where they were.
func TestBench(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		v.wide(390, "light")
		v.click("#to-bench")
		v.until(benchAt + ` === "steps0"`)
		same(v, `document.querySelector("main").checkVisibility()`, false)
		same(v, `parseFloat(getComputedStyle(document.querySelector(".ticks span")).fontSize) >= 20`, true)
		same(v, `document.documentElement.scrollWidth - innerWidth`, 0)
		first := get[string](v, benchHead)
		if !strings.HasPrefix(first, "Patterns") {
			t.Errorf("the first step is %q", first)
		}
		v.click(".ticks input")
		v.click("#bench-next")
		v.until(benchAt + ` === "steps1"`)
		same(v, `document.querySelector(".ticks input").checked`, false)
		v.do(chromedp.Reload())
		v.rest()
		v.until(benchAt + ` === "steps1"`)
		v.click("#bench-before")
		v.until(benchAt + ` === "steps0"`)
		same(v, `document.querySelector(".ticks input").checked`, true)
		same(v, `document.getElementById("bench-before").disabled`, true)

		v.click("#tab-ribs")
		v.until(benchAt + ` === "ribs0"`)
		same(v, benchHead, "Rib M")
		v.click("#bench-next")
		v.until(benchAt + ` === "ribs1"`)
		same(v, `[...document.querySelectorAll("#bench-page dt")].some((d) => d.textContent === "Shoulder to shoulder" && d.nextSibling.textContent.length > 2)`, true)
		v.click("#from-bench")
		v.until(`document.getElementById("bench").hidden`)
		same(v, `document.querySelector("main").checkVisibility()`, true)
		same(v, `document.activeElement.id`, "to-bench")
	})
}

// TestShop: what the boat costs and how long it takes, for the boards at hand; a slip in
// a board is told in one line.
func TestShop(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		work := func() {
			v.click("#work-out")
			v.until(`!document.getElementById("work-out").disabled`)
		}
		work()
		same(v, `/^Materials about \d+ at prices mixed.* hours, average builder\.$/.test(document.querySelector("#worked p").textContent)`, true)
		same(v, `document.querySelectorAll("#worked details").length`, 4)
		same(v, `document.querySelector("#worked img").alt.length > 10`, true)
		plan := get[string](v, `document.querySelector("#worked details").textContent`)
		v.do(chromedp.SetValue(chromedp.CSS("#skill"), "beginner"))
		v.do(evaluate(`document.getElementById("skill").dispatchEvent(new Event("change"))`))
		v.rest()
		same(v, `document.querySelectorAll("#worked p").length`, 0)
		v.do(evaluate(`document.getElementById("b-count").value = "4"`))
		v.click("#boards [type=submit]")
		v.rest()
		same(v, `document.querySelector("#boards span").textContent`, "4 of western redcedar, 2400 mm x 150 mm x 26 mm")
		same(v, `document.activeElement.id`, "b-count")
		work()
		same(v, `document.querySelector("#worked p").textContent.endsWith("beginner builder.")`, true)
		if got := get[string](v, `document.querySelector("#worked details").textContent`); got == plan {
			t.Error("the boards at hand change nothing in the plan")
		}
		v.do(evaluate(`document.getElementById("b-thick").value = "26"`))
		v.click("#boards [type=submit]")
		v.rest()
		work()
		same(v, `document.getElementById("status").classList.contains("wrong")`, true)
		same(v, `document.getElementById("status").textContent.includes("is not understood")`, true)
	})
}
