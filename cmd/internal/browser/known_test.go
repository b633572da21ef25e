package browser

import "testing"

// TestKnown: the boat's levers are drawn beside those of the shipped boats and of measured
// canoes for as many people, each with its name.
func TestKnown(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		const drawn, says = `document.querySelector("#levers .known").getAttribute("d").split("M").length - 1`, `document.getElementById("known").textContent`
		same(v, drawn, 4)
		same(v, says+`.includes("a: Malecite river canoe, 5.08 m (figure 31); b: ") && `+says+`.includes("110 kg")`, true)
		v.choose("#base", "river")
		v.until(drawn + ` === 3`)
		v.rest()
		v.choose("#units", "imperial")
		v.rest()
		same(v, says+`.includes("463 lb")`, true)
		v.until(`["Brook", "Lake", "River", "a", "b", "c"].every((name) => [...document.querySelectorAll("#levers text")].some((t) => t.textContent === name))`)
	})
}
