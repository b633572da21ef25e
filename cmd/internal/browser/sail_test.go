package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// TestUnderSail: the sail stands on the boat that turns, of the kind that is chosen, stays
// through a turn and a reload, and undo takes it down.
func TestUnderSail(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		const says, high = `document.getElementById("aloft").textContent`, `Number(document.getElementById("quarter").getAttribute("viewBox").split(" ")[3])`
		bare := get[float64](v, high)
		v.click("#under-sail")
		v.until(says + `.startsWith("Spritsail of ")`)
		v.rest()
		if tall := get[float64](v, high); tall < 1.5*bare {
			t.Errorf("the view is %.0f mm high under sail, %.0f without", tall, bare)
		}
		spritsail := get[string](v, says)
		v.do(focus("quarter"))
		v.press(kb.ArrowLeft)
		v.until(`document.documentElement.dataset.whole === "false"`)
		same(v, says, spritsail)
		v.rest()
		same(v, says, spritsail)
		v.do(chromedp.Reload())
		v.rest()
		same(v, says, spritsail)
		v.choose("#outfit-rig", "vee")
		v.until(says + `.startsWith("Vee of ")`)
		v.rest()
		v.back("#undo", says+`.startsWith("Spritsail")`)
		v.click("#under-sail")
		v.until(says + ` === ""`)
		v.rest()
		same(v, high, bare)
	})
}
