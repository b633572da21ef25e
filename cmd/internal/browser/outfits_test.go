package browser

import (
	"bytes"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"ribwright/cmd/internal/job"
)

// figureOf is what the command line draws of an outfit or a nest.
func figureOf(t *testing.T, verb string, names []string, fields ...[2]string) string {
	t.Helper()
	r, err := job.Ask(verb, names, append(fields, [2]string{"svg", "true"})...)
	if err != nil {
		t.Fatal(err)
	}
	result, err := r.Do(job.World{Made: job.UsualDate()})
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range result.Outputs {
		if strings.HasSuffix(o.Name, ".svg") {
			var b bytes.Buffer
			if err := o.Write(&b); err != nil {
				t.Fatal(err)
			}
			return b.String()
		}
	}
	t.Fatalf("%s draws nothing", verb)
	return ""
}

// TestOutfits: each outfit and the nest of several boats is the command line's own figure
// with its report, on every width, and follows the boat.
func TestOutfits(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		works := func() {
			v.Helper()
			v.click("#fit-out")
			v.until(`!document.getElementById("fit-out").disabled`)
			same(v, `document.getElementById("status").classList.contains("wrong")`, false)
		}
		drawn := func(says, want string) {
			v.Helper()
			got, err := url.PathUnescape(strings.TrimPrefix(get[string](v, `document.querySelector("#fitted img").src`), "data:image/svg+xml,"))
			if err != nil || got != want {
				t.Errorf("%v: the figure is not the command line's: %d bytes, %d wanted", err, len(got), len(want))
			}
			same(v, `document.querySelector("#fitted img").alt.length > 60`, true)
			if all := get[string](v, `document.getElementById("fitted").textContent`); !strings.Contains(all, says) {
				t.Errorf("nothing is said of %q", says)
			}
			for _, px := range widths {
				v.wide(px, "light")
				same(v, `document.documentElement.scrollWidth - innerWidth`, 0)
			}
			if to := os.Getenv("RIBWRIGHT_SHOW"); to != "" {
				v.do(evaluate(`document.getElementById("outfits").scrollIntoView()`))
				png, err := chromedp.Run(v.tab, chromedp.CaptureScreenshot())
				if err != nil {
					t.Fatal(err)
				}
				os.WriteFile(to+"/outfit-"+get[string](v, `document.getElementById("outfit-kind").value`)+".png", png, 0o600)
			}
		}
		brook := []string{"brook"}
		works()
		drawn("Wind", figureOf(t, "sail", brook, [2]string{"rig", "spritsail"}))
		v.choose("#outfit-rig", "lug")
		v.rest()
		same(v, `document.getElementById("fitted").childElementCount`, 0)
		works()
		drawn("Wind", figureOf(t, "sail", brook, [2]string{"rig", "lug"}))
		v.choose("#outfit-kind", "pair")
		v.choose("#outfit-beside", "lake")
		v.rest()
		works()
		drawn("As one craft", figureOf(t, "pair", []string{"brook", "lake"}, [2]string{"purpose", "open"}))
		v.choose("#outfit-kind", "row")
		v.rest()
		works()
		drawn("rower", figureOf(t, "row", brook))
		v.choose("#outfit-kind", "fleet")
		v.click("#outfit-nest [value=river]")
		v.rest()
		works()
		drawn("Brook", figureOf(t, "fleet", []string{"brook", "lake", "river"}))
		v.axe("light")
		v.do(chromedp.Reload())
		v.rest()
		same(v, `[...document.querySelectorAll("#outfit-nest :checked")].map((b) => b.value).join()`, "lake,river")
		v.click("#outfit-nest [value=pinned]")
		v.rest()
		v.click("#fit-out")
		v.until(`document.getElementById("status").textContent.startsWith("No boat is pinned")`)
	})
}
