package browser

import "testing"

// TestMend: what is amiss with a boat is mended by one click, which undo takes back.
func TestMend(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "#"+tippy)
		const line = `document.querySelector("#stands li")`
		same(v, line+`.classList.contains("grave")`, true)
		same(v, line+`.textContent.includes("does not stand as it should")`, true)
		same(v, line+`.querySelector("button").textContent`, "Lower the seats by 10 mm")
		v.click("#stands .mend")
		v.until(set("seat-height") + ` === 60`)
		v.rest()
		same(v, line+`.classList.contains("grave")`, false)
		same(v, line+`.querySelector("button")`, (*int)(nil))
		same(v, `document.activeElement.id`, "undo")
		same(v, `document.getElementById("status").textContent`, "Done: lower the seats by 10 mm. Undo takes it back.")
		same(v, `document.querySelector("#m-seat-height output").textContent`, "60 mm")
		v.back("#undo", set("seat-height")+` === 70`)
		same(v, line+`.classList.contains("grave")`, true)

		v.do(evaluate(`location.hash = "` + bent + `"`))
		v.until(set("hull-depth") + ` === 224`)
		v.rest()
		same(v, `document.querySelector("#bends li").classList.contains("grave")`, true)
		v.click("#bends .mend")
		v.until(set("rib-thickness") + ` > 0`)
		v.rest()
		same(v, `document.querySelector("#bends li").classList.contains("grave")`, false)
	})
}

// tippy is Brook with a seat so high that it rolls, bent a shallow one whose bilges are
// tight for its ribs.
const (
	tippy = `%7B%22base%22%3A%22brook%22%2C%22name%22%3A%22brook%22%2C%22set%22%3A%7B%22seat-height%22%3A70%7D%7D`
	bent  = `%7B%22base%22%3A%22brook%22%2C%22name%22%3A%22brook%22%2C%22set%22%3A%7B%22hull-depth%22%3A224%7D%7D`
)
