package browser

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"ribwright/cmd/internal/answer"
	"ribwright/cmd/internal/job"
)

// TestTimes prints how fast the page is and how large, each beside what it should be, on
// two idle cores. It judges nothing, for machines are busy:
//
//	RIBWRIGHT_TIMES=1 RIBWRIGHT_LONG=1 go test ./cmd/internal/browser -run TestTimes -v
func TestTimes(t *testing.T) {
	if os.Getenv("RIBWRIGHT_TIMES") == "" {
		t.Skip("set RIBWRIGHT_TIMES=1 for how fast the page is, on an idle machine")
	}
	home := carried(t)
	say := func(what string, value float64, unit string, goal float64) {
		t.Logf("%-58s %8.1f %-3s goal under %g", what, value, unit, goal)
	}
	say("slider to redrawn, engine itself, median", native(t, 40, `[["hull-beam","%d mm"]]`), "ms", 16)
	say("the whole look after it: findings, effort, hidden lines", native(t, 20, `[["hull-beam","%d mm"],["whole","true"]]`), "ms", 100)

	v := begin(t, home, "")
	v.watchStart()
	var useful, ready []float64
	for range 5 {
		v.do(chromedp.Navigate("about:blank"))
		v.open(home)
		useful, ready = append(useful, get[float64](v, `times.ready`)), append(ready, get[float64](v, `times.engine`))
	}
	say("from opening to the first useful view, median of 5", median(useful), "ms", 1000)
	say("from opening to the engine's answer, median of 5", median(ready), "ms", 3000)

	v.choose("#base", "lake")
	v.rest()
	var worked, redrawn, sheets, ahead []float64
	for i := range 40 {
		v.do(evaluate(fmt.Sprintf(`delete document.documentElement.dataset.took; { const r = document.getElementById("r-hull-beam"); r.value = Number(r.min) + 20 + %d; r.dispatchEvent(new Event("input")); }`, i)))
		v.until(`document.documentElement.dataset.took`)
		worked = append(worked, get[float64](v, `Number(document.documentElement.dataset.worked)`))
		redrawn = append(redrawn, get[float64](v, `Number(document.documentElement.dataset.took)`))
	}
	say("slider to redrawn, engine in WebAssembly, median", median(worked), "ms", 40)
	t.Logf("%-58s %8.1f ms", "the same from the slider to the drawing", median(redrawn))
	v.rest()
	show := func() float64 {
		v.do(evaluate(`window.from = performance.now(); new MutationObserver((_, o) => { window.took = performance.now() - from; o.disconnect(); }).observe(document.getElementById("sheets"), { childList: true }); document.getElementById("show-sheets").click()`))
		v.until(`document.querySelector("#sheets svg")`)
		return get[float64](v, `took`)
	}
	papers := []string{"a4", "letter", "legal", "tabloid", "a3"}
	for _, size := range papers { // the paper is far out of sight
		v.choose("#size", size)
		v.rest()
		sheets = append(sheets, show())
	}
	say("all sheets in small, WebAssembly, laid when asked for", median(sheets), "ms", 300)
	v.do(evaluate(`document.getElementById("paper").scrollIntoView()`))
	for _, size := range papers {
		v.do(evaluate(`delete document.documentElement.dataset.laid`))
		v.choose("#size", size)
		v.rest()
		v.until(`document.documentElement.dataset.laid === "true"`)
		ahead = append(ahead, show())
	}
	say("the same, laid while the paper was scrolled to", median(ahead), "ms", 300)

	html, err := os.ReadFile(strings.TrimPrefix(home, "file://"))
	if err != nil {
		t.Fatal(err)
	}
	_, engine, _ := bytes.Cut(html, []byte(`id="engine">`))
	engine, _, _ = bytes.Cut(engine, []byte("<"))
	say("the one file", float64(len(html))/1e6, "MB", most/1e6)
	say("the engine in it, compressed", float64(base64.StdEncoding.DecodedLen(len(engine)))/1e6, "MB", 5)
}

// native is the median of so many looks at lake as the program itself answers them, ms.
func native(t *testing.T, n int, fields string) float64 {
	t.Helper()
	var all []float64
	for i := range n {
		from := time.Now()
		out := answer.To(fmt.Appendf(nil, `{"verb":"look","names":["lake"],"fields":`+fields+`}`, 740+i), job.World{Made: job.UsualDate()})
		all = append(all, float64(time.Since(from).Microseconds())/1000)
		if bytes.Contains(out, []byte(`"fault":{`)) {
			t.Fatalf("%.200s", out)
		}
	}
	return median(all)
}

func median(all []float64) float64 {
	slices.Sort(all)
	return all[len(all)/2]
}

// watchStart notes when a page that is opened has its first drawing and its engine, ms.
func (v *visit) watchStart() {
	v.Helper()
	v.do(command(page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `window.times = {};
		new MutationObserver(() => { const d = document.documentElement?.dataset ?? {}; if (d.ready === "true") times.ready ??= performance.now(); if (d.engine === "ready") times.engine ??= performance.now(); })
			.observe(document, { attributes: true, subtree: true, childList: true });`}))
}
