package browser

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// TestKeyboard: whoever has no mouse comes to everything in its order and sees where
// they are; arrow keys move sliders, turn the boat and heel it.
func TestKeyboard(t *testing.T) {
	v := begin(t, served(t), "")
	v.press(kb.Tab)
	same(v, `document.activeElement.id`, "skip")
	same(v, `document.activeElement.getBoundingClientRect().top >= 0`, true)
	v.press(kb.Enter)
	same(v, `document.activeElement.id`, "r-hull-length")
	same(v, `location.hash.includes("brook")`, true)

	v.press(kb.ArrowRight + kb.ArrowRight + kb.ArrowRight)
	v.until(set("hull-length") + ` === 3503`)
	v.rest()
	same(v, `document.activeElement.getAttribute("aria-valuetext")`, "3503 mm")
	same(v, `history.state.n`, 1) // one step, not three
	same(v, `document.activeElement.id`, "r-hull-length")

	same(v, reached(v), "")
	v.do(focus("quarter"))
	before := get[string](v, `document.querySelector("#quarter .mark").getAttribute("d")`)
	v.press(kb.ArrowLeft + kb.ArrowLeft)
	v.until(fmt.Sprintf(`document.querySelector("#quarter .mark").getAttribute("d") !== %q`, before))
	v.rest()
	same(v, `JSON.parse(decodeURIComponent(location.hash.slice(1))).turn`, 45)
	v.do(focus("heel"))
	v.press(kb.End)
	same(v, `document.getElementById("heel-says").textContent.startsWith("Water comes in")`, true)
	same(v, `document.getElementById("heeled").textContent`, "41 degrees")
	v.press(kb.Home)
	same(v, `document.getElementById("heeled").textContent`, "0 degrees")
}

func focus(id string) step {
	return evaluate(fmt.Sprintf(`document.getElementById(%q).focus()`, id))
}

// reached tabs through the whole page; it returns an expression of what was not come to
// in its order or does not show that it has the focus.
func reached(v *visit) string {
	v.do(evaluate(`document.getElementById("skip").focus(); window.came = [document.activeElement]`))
	v.do(evaluate(`window.wanted = [...document.querySelectorAll("a[href], button, input, select, summary, [tabindex='0']")].filter((e) => !e.disabled && e.checkVisibility())`))
	count := get[int](v, `window.wanted.length`)
	for range count - 1 {
		v.press(kb.Tab)
		v.do(evaluate(`came.push(document.activeElement);
			{ const e = document.activeElement, seen = e.closest(".button") ?? e; if (getComputedStyle(seen).outlineStyle === "none") document.title = "no outline on " + e.id; }`))
	}
	return `wanted.filter((e, i) => came[i] !== e).map((e) => e.tagName + "#" + e.id).join() + (document.title.startsWith("no outline") ? document.title : "")`
}
