package browser

import "testing"

// TestForm: the sides are flared and the ends filled by sliders; each says within which
// band and what limits it, the boat follows, and a link keeps both.
func TestForm(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		same(v, `document.querySelector("#m-flare output").textContent`, "10 deg")
		same(v, `/^-1\.\d deg to 22\.\d deg: .*wood/.test(document.querySelector("#m-flare .band").textContent)`, true)
		same(v, `/^68 % to [78]\d(\.\d)? %: .*hollow/.test(document.querySelector("#m-fullness .band").textContent)`, true)
		const section = `document.querySelector("#sections .cut").getAttribute("d")`
		upright := get[string](v, section)
		v.drag("#r-fullness", -5)
		v.until(set("fullness") + ` > 0`)
		v.rest()
		full := get[float64](v, set("fullness"))
		if full < 71 || full > 72.5 {
			t.Errorf("dragged by 5 %%, the fullness went from 76.7 to %g %%", full)
		}
		v.do(evaluate(`(() => { const r = document.getElementById("r-flare"); r.value = 2; r.dispatchEvent(new Event("input")); r.dispatchEvent(new Event("change")); })()`))
		v.until(set("flare") + ` === 2`)
		v.rest()
		same(v, `document.querySelector("#m-flare output").textContent`, "2 deg")
		if get[string](v, section) == upright {
			t.Error("with plumb sides the sections are those of flared ones")
		}
		v.reload()
		same(v, set("flare"), 2.0)
		same(v, set("fullness"), full)
	})
}
