package browser

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"
)

// TestPrices: a table of prices is saved, filled in and opened; cost and a link then go by
// it, and a table that is none is told of in one line.
func TestPrices(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		dir := t.TempDir()
		v.savesTo(dir)
		v.click("#fill-in")
		v.until(`document.getElementById("status").textContent.startsWith("Saved: prices.toml.")`)
		want, err := os.ReadFile("../../../geometry/shop/cost/prices/mixed.toml")
		if err != nil {
			t.Fatal(err)
		}
		got := v.came(filepath.Join(dir, "prices.toml"), len(want))
		if !bytes.Equal(got, want) {
			t.Fatalf("%d bytes are saved, %d come with the program", len(got), len(want))
		}
		give := func(text []byte) {
			v.Helper()
			v.do(evaluate(fmt.Sprintf(`(() => {
				const all = new DataTransfer(), box = document.getElementById("own-prices");
				all.items.add(new File([%q], "mine.toml")); box.files = all.files; box.dispatchEvent(new Event("change"));
			})()`, text)))
			v.until(`document.getElementById("prices").value === "own"`)
			v.rest()
			v.click("#work-out")
			v.until(`!document.getElementById("work-out").disabled`)
		}
		give(bytes.Replace(got, []byte(`"mixed"`), []byte(`"Harbor yard"`), 1))
		const sum = `document.querySelector("#worked p").textContent`
		same(v, sum+`.includes("at prices Harbor yard")`, true)
		same(v, `document.getElementById("priced").textContent`, "Your own prices, from mine.toml.")
		cost := get[string](v, sum)
		v.reload()
		v.click("#work-out")
		v.until(`document.querySelector("#worked p")`)
		same(v, sum, cost)
		give([]byte("no table"))
		same(v, `document.getElementById("status").classList.contains("wrong")`, true)
		same(v, `document.getElementById("status").textContent.startsWith("mine.toml:1: no price table")`, true)
		v.choose("#prices", "local")
		v.rest()
		same(v, `document.getElementById("priced").textContent.startsWith("The prices are invented")`, true)
	})
}
