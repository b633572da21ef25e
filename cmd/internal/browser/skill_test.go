package browser

import (
	"fmt"
	"testing"
)

// choose takes one of a list, as a hand does.
func (v *visit) choose(list, value string) {
	v.Helper()
	v.do(evaluate(fmt.Sprintf(`(() => { const list = document.querySelector(%q); list.value = %q; list.dispatchEvent(new Event("change", { bubbles: true })); })()`, list, value)))
}

// TestSkill: what the form is told of the builder stands in the design, and from there in
// the hours, until another is chosen beside them; another boat starts anew.
func TestSkill(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		works := func(who string) {
			v.Helper()
			v.click("#work-out")
			v.until(`!document.getElementById("work-out").disabled`)
			if says := get[string](v, `document.querySelector("#worked p").textContent.split(", ").pop()`); says != who+" builder." {
				t.Errorf("the hours are for %q, want %s", says, who)
			}
		}
		same(v, `document.getElementById("skill").value`, "average")
		v.choose("#p-skill", "beginner")
		v.click("#people [type=submit]")
		v.until(`location.hash.includes("people")`)
		v.rest()
		same(v, `document.getElementById("skill").value`, "beginner")
		works("beginner")
		v.choose("#skill", "experienced")
		v.rest()
		works("experienced")
		v.back("#undo", `document.getElementById("skill").value === "beginner"`)
		v.choose("#base", "lake")
		v.rest()
		same(v, `document.getElementById("skill").value`, "average")
	})
}
