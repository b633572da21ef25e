package browser

import "testing"

// TestEye: what a fault looks like stands beside the fair frame, from every place, and
// grows with its slider; with no fault both pictures are one.
func TestEye(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		v.click("#eye-open summary")
		const (
			drawn  = `document.documentElement.dataset.eye`
			fair   = `document.querySelector("#eye-fair .cut").getAttribute("d")`
			faulty = `document.querySelector("#eye-faulty .cut").getAttribute("d")`
		)
		v.until(drawn + ` === "bow,proud,12"`)
		seen := get[string](v, fair)
		if len(seen) < 50 || get[string](v, faulty) == seen {
			t.Error("a rib that is proud looks fair")
		}
		v.do(focus("eye-size"))
		v.do(evaluate(`{ const s = document.getElementById("eye-size"); s.value = 0; s.dispatchEvent(new Event("input")); s.dispatchEvent(new Event("change")); }`))
		v.until(drawn + ` === "bow,proud,0"`)
		same(v, faulty, get[string](v, fair))
		same(v, fair, seen)
		for _, place := range []string{"stern", "abeam"} {
			v.do(evaluate(`{ const s = document.getElementById("eye-stand"); s.value = "` + place + `"; s.dispatchEvent(new Event("change")); }`))
			v.until(drawn + ` === "` + place + `,proud,0"`)
			if get[string](v, fair) == seen {
				t.Errorf("from the %s it looks as from the bow", place)
			}
		}
		v.back("#undo", `document.getElementById("eye-stand").value === "stern"`)
		v.until(drawn + ` === "stern,proud,0"`)
	})
}
