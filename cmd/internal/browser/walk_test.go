package browser

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// set is what the address says of a slider; -1 while it is as it was.
func set(field string) string {
	return fmt.Sprintf(`(JSON.parse(decodeURIComponent(location.hash.slice(1))).set?.[%q] ?? -1)`, field)
}

// shape is what is drawn from above.
const shape = `document.querySelector("#plan .cut").getAttribute("d")`

// grip is where the thumb of a slider is, and how far a millimeter is on the screen.
type grip struct{ X, Y, Step float64 }

func (v *visit) grip(slider string) grip {
	v.Helper()
	return get[grip](v, fmt.Sprintf(`(() => {
		const s = document.querySelector(%q); s.scrollIntoView({ block: "center" });
		const r = s.getBoundingClientRect(), step = (r.width - 16) / (s.max - s.min);
		return { X: r.left + 8 + (s.value - s.min) * step, Y: r.top + r.height / 2, Step: step };
	})()`, slider))
}

func (v *visit) mouse(what input.DispatchMouseEventType, x, y float64) {
	v.Helper()
	e := input.DispatchMouseEventParams{Type: what, X: x, Y: y, Button: input.MouseButtonLeft, ClickCount: 1}
	if what != chromedp.MouseReleased {
		e.Buttons = 1
	}
	v.do(command(input.DispatchMouseEvent, e))
}

// drag takes a slider by its thumb; the boat is redrawn before it is let go.
func (v *visit) drag(slider string, mm float64) {
	v.Helper()
	before, g := get[string](v, shape), v.grip(slider)
	v.mouse(chromedp.MousePressed, g.X, g.Y)
	for i := 1; i <= 4; i++ {
		v.mouse(chromedp.MouseMoved, g.X+g.Step*mm*float64(i)/4, g.Y)
	}
	v.until(fmt.Sprintf("%s !== %q", shape, before))
	v.mouse(chromedp.MouseReleased, g.X+g.Step*mm, g.Y)
}

// TestWalk is a person's way through the page: a slider is dragged and the boat follows,
// what was done is undone in every way, and neither a reload nor a link loses anything.
func TestWalk(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		same(v, `document.getElementById("title").textContent`, "Brook")
		same(v, `["quarter", "sheer", "plan", "sections"].filter((id) => document.querySelector("#" + id + " .tick").getAttribute("d").length > 100).length`, 4)
		brook := get[string](v, shape)

		v.drag("#r-hull-beam", 40)
		v.until(set("hull-beam") + ` > 745`)
		v.rest()
		beam, wide := get[float64](v, set("hull-beam")), get[string](v, shape)
		if beam < 755 || beam > 765 || wide == brook {
			t.Errorf("dragged by 40 mm, the beam went from 720 to %.0f mm", beam)
		}
		same(v, `document.querySelector("#m-hull-beam output").textContent`, fmt.Sprintf("%.0f mm", beam))
		v.drag("#r-hull-depth", -30)
		v.until(set("hull-depth") + ` > 0`)
		v.rest()
		low := get[float64](v, set("hull-depth"))

		v.back(`#undo`, set("hull-depth")+` === -1`)
		same(v, set("hull-beam"), beam)
		same(v, shape, wide)
		v.back(`#undo`, set("hull-beam")+` === -1`)
		same(v, shape, brook)
		same(v, `document.getElementById("undo").disabled`, true)
		v.back(`#redo`, set("hull-beam")+` > 0`)
		v.back(`#redo`, fmt.Sprintf("%s === %v", set("hull-depth"), low))
		same(v, `document.getElementById("redo").disabled`, true)

		v.do(chromedp.NavigateBack())
		v.until(set("hull-depth") + ` === -1`)
		v.rest()
		same(v, shape, wide)
		v.do(chromedp.Reload())
		v.rest()
		same(v, shape, wide)
		same(v, `document.getElementById("undo").disabled`, false)

		link := get[string](v, `location.href`)
		other := begin(t, home, strings.TrimPrefix(link, home))
		same(other, shape, wide)
		v.do(chromedp.Navigate("about:blank"))
		v.open(home) // as after the tab was closed
		same(v, shape, wide)
	})
}

// back clicks a button of the history and waits for the state that it leads to.
func (v *visit) back(button, state string) {
	v.Helper()
	v.click(button)
	v.until(state)
	v.rest()
}

// TestMeasure: a boat to a person's measure, from the form alone; a slip is told in one
// line, takes nothing away, and leads back to its field.
func TestMeasure(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		brook := get[string](v, shape)
		weight := func(w string) {
			v.do(evaluate(`document.getElementById("p-weight").select()`), chromedp.KeyEvent(w+kb.Enter))
		}
		weight("62")
		v.until(`document.getElementById("status").classList.contains("wrong")`)
		if says := get[string](v, `document.getElementById("status").textContent`); says != "Your weight: 62 has no unit. Write it as in 70 kg or 154 lb." {
			t.Errorf("a weight without a unit: %q", says)
		}
		same(v, `document.activeElement.id`, "p-weight")
		same(v, shape, brook)
		v.do(evaluate(`document.getElementById("p-height").value = ""; document.getElementById("p-span").value = "1.75 m"`))
		weight("62 kg")
		same(v, says, "Your height: this is empty. Write it as in 172 cm or 5 ft 8 in. Most people are about as tall as their arms span.")
		same(v, `document.activeElement.id`, "p-height")
		v.do(evaluate(`document.getElementById("p-height").value = "172 cm"; document.getElementById("p-gear").value = ""`))
		weight("62 kg")
		v.until(`location.hash.includes("people")`)
		v.rest()
		same(v, `document.getElementById("status").textContent.startsWith("This boat is sized to your measure")`, true)
		same(v, `document.getElementById("base").value`, "people")
		same(v, `document.getElementById("for").textContent`, "62 kg, 172 cm tall, arm span 175 cm, with 0 kg of gear, sheltered water")
		sized := get[string](v, shape)
		if sized == brook {
			t.Error("a boat to another measure is drawn as Brook")
		}
		v.back("#undo", `!location.hash.includes("people")`)
		same(v, shape, brook)
		same(v, `document.getElementById("p-weight").value`, "70 kg")
		v.back("#redo", `location.hash.includes("people")`)
		v.do(chromedp.Reload())
		v.rest()
		same(v, shape, sized)
		same(v, `document.getElementById("p-weight").value`, "62 kg")
		v.do(chromedp.SendKeys(chromedp.CSS("#p-gear"), "10 kg1"), chromedp.Reload())
		v.rest()
		same(v, `document.getElementById("p-gear").value`, "10 kg1")
		v.do(evaluate(`document.getElementById("p-gear").value = "10 kg"`), chromedp.SendKeys(chromedp.CSS("#p-dog"), "20 kg"), chromedp.SendKeys(chromedp.CSS("#p-child"), "25"+kb.Enter))
		v.until(`document.getElementById("status").classList.contains("wrong")`)
		same(v, `document.activeElement.id`, "p-child")
		v.do(chromedp.SendKeys(chromedp.CSS("#p-child"), " kg, 120 cm"+kb.Enter))
		v.until(`location.hash.includes("120%20cm")`)
		v.rest()
		if get[string](v, shape) == sized {
			t.Error("a boat with a child and a dog along is the same as without")
		}
	})
}

// TestPinned: a pinned boat stays as it was, under the one that changes and in the link.
func TestPinned(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		brook := get[string](v, shape)
		v.click("#pin")
		v.rest()
		v.drag("#r-hull-length", 300)
		v.until(set("hull-length") + ` > 0`)
		v.rest()
		const under, lengths = `document.querySelector("#plan .pin").getAttribute("d")`, `[...document.querySelector("#beside tbody tr").cells].map((c) => c.textContent).join()`
		long := get[float64](v, set("hull-length"))
		same(v, lengths, fmt.Sprintf("Length,%.0f mm,3500 mm", long))
		first := get[string](v, under)
		if !strings.HasPrefix(first, brook) {
			t.Error("what is drawn under the boat is not the pinned one")
		}
		v.do(chromedp.Reload())
		v.rest()
		same(v, under, first)
		same(v, lengths, fmt.Sprintf("Length,%.0f mm,3500 mm", long))
		v.click("#unpin")
		v.rest()
		same(v, under, "")
		same(v, `document.getElementById("beside").hidden`, true)
		v.back("#undo", `!document.getElementById("beside").hidden`)
		same(v, under, first)
	})
}
