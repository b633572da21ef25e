package browser

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"

	"ribwright/cmd/internal/answer"
	"ribwright/cmd/internal/job"
)

// spy stands between the page and its engines: it notes each question for sheets with the
// engine that it goes to, holds back questions of the verbs in hold, and notes what sheets
// ever stand on the page.
const spy = `
window.asked = []; window.hold = []; window.held = []; window.engines = []; window.answered = {}; window.stood = [];
window.passing = (text, to, send) => {
	const verb = JSON.parse(text).verb;
	if (verb === "sheets") asked.push({ to, text });
	if (hold.includes(verb)) held.push(send); else send();
};
window.Worker = class extends Worker {
	constructor(...all) {
		super(...all);
		engines.push(this);
		this.addEventListener("message", ({ data }) => { if (data.text) (answered[data.id] ??= []).push(data.text); });
	}
	postMessage(m) {
		if (m.text && m.id) passing(m.text, engines.indexOf(this), () => super.postMessage(m)); else super.postMessage(m);
	}
};
const plainly = window.fetch;
window.fetch = (to, how) => new Promise((done, fail) => passing(how.body, 0, () => plainly(to, how).then(done, fail)));
window.free = () => { hold = []; for (const send of held.splice(0)) send(); };
window.drawn = () => [...document.querySelectorAll("#sheets figure")].map((f) => f.textContent + ":" + [...f.querySelectorAll("path")].map((p) => p.getAttribute("d")).join()).join("|");
document.addEventListener("DOMContentLoaded", () => new MutationObserver(() => { const d = drawn(); if (d) stood.push(d); }).observe(document.getElementById("sheets"), { childList: true }));
`

// drawnOf is what the page shall show: the sheets as the program itself lays them, each
// with its name and its lines in the pens' order, y down.
func drawnOf(t *testing.T, question string) string {
	t.Helper()
	var a struct {
		Numbers struct {
			Sheets []struct {
				Title string
				Lines json.RawMessage
			}
		}
		Fault *answer.Fault
	}
	if err := json.Unmarshal(answer.To([]byte(question), job.World{Made: job.UsualDate()}), &a); err != nil || a.Fault != nil {
		t.Fatal(err, a.Fault)
	}
	var all []string
	for _, s := range a.Numbers.Sheets {
		all = append(all, s.Title+":"+strings.Join(linesOf(t, s.Lines), ","))
	}
	return strings.Join(all, "|")
}

// linesOf are the lines of a drawing by pens, as a browser wants them.
func linesOf(t *testing.T, lines json.RawMessage) (pens []string) {
	t.Helper()
	in := json.NewDecoder(strings.NewReader(string(lines)))
	if _, err := in.Token(); err != nil {
		t.Fatal(err)
	}
	for in.More() {
		var runs [][]float64
		if _, err := in.Token(); err != nil {
			t.Fatal(err)
		}
		if err := in.Decode(&runs); err != nil {
			t.Fatal(err)
		}
		var d strings.Builder
		for _, run := range runs {
			for i := 0; i < len(run); i += 2 {
				d.WriteString(map[bool]string{true: "L", false: "M"}[i > 0])
				fmt.Fprintf(&d, "%v %v", run[i], -run[i+1]+0)
			}
		}
		pens = append(pens, d.String())
	}
	return pens
}

// spied begins a visit with the spy between, and goes to the paper.
func spied(t *testing.T, home string) *visit {
	t.Helper()
	v := begin(t, home, "")
	v.do(command(page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: spy}))
	v.reload()
	v.toPaper()
	return v
}

// toPaper scrolls to the paper and waits until its sheets are laid.
func (v *visit) toPaper() {
	v.Helper()
	v.do(evaluate(`document.getElementById("paper").scrollIntoView()`))
	v.until(`document.documentElement.dataset.laid === "true"`)
}

// slides moves the beam's slider; a hand that still holds it has not let go.
func (v *visit) slides(mm int, lets bool) {
	v.Helper()
	v.do(evaluate(fmt.Sprintf(`(() => { const r = document.getElementById("r-hull-beam"); r.value = %d; r.dispatchEvent(new Event("input")); if (%v) r.dispatchEvent(new Event("change")); })()`, mm, lets)))
}

const (
	newest = `asked.at(-1).text`
	none   = `document.querySelectorAll("#sheets > *, #laid > *").length`
	shows  = `document.querySelector("#sheets svg") && !document.getElementById("show-sheets").disabled`
)

// TestLaidAhead: whoever scrolls to the paper finds its sheets laid, by an engine beside the
// one that follows the sliders; they are the program's own, and asked for once.
func TestLaidAhead(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := spied(t, home)
		same(v, `asked.length`, 1)
		same(v, none, 0)
		v.click("#show-sheets")
		v.until(shows)
		same(v, `asked.length`, 1)
		want := drawnOf(t, get[string](v, newest))
		if got := get[string](v, `drawn()`); got != want {
			t.Errorf("%d bytes of sheets stand on the page, not the %d of the program's: %.300s\nwant %.300s", len(got), len(want), got, want)
		}
		if !get[bool](v, `engines.length > 0`) {
			return // a server answers
		}
		same(v, `engines.length`, 2)
		same(v, `asked[0].to`, 1)
		v.do(evaluate(`engines[0].postMessage({ id: -1, text: asked[0].text })`))
		v.until(`answered[-1]`)
		same(v, `Object.values(answered).flat().filter((t) => t === answered[-1][0]).length`, 2)
	})
}

// TestLaidAnew: sheets go as soon as the boat or the paper is another, while the hand still
// holds the slider too; what is laid for what it was is never seen, whoever waited for it.
func TestLaidAnew(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := spied(t, home)
		show := func() {
			v.Helper()
			v.do(evaluate(`stood = []; document.getElementById("show-sheets").click()`))
		}
		seen := func(what string) {
			v.Helper()
			v.until(shows)
			v.rest()
			if got, want := get[string](v, `[...new Set([...stood, drawn()])].join("\n")`), drawnOf(t, get[string](v, newest)); got != want {
				t.Errorf("%s: %d bytes of sheets stood on the page, want the %d of the newest boat alone", what, len(got), len(want))
			}
		}
		show()
		seen("at first")
		v.slides(730, false)
		same(v, none, 0)
		v.slides(735, true)
		v.rest()
		show()
		seen("after the slider")
		v.choose("#size", "a4")
		same(v, none, 0)
		v.rest()

		v.do(evaluate(`hold = ["sheets"]`))
		v.choose("#size", "a3")
		v.until(`held.length === 1`) // laid ahead for a boat that then changes
		show()
		v.slides(745, true)
		v.rest()
		v.do(evaluate(`free()`))
		seen("changed while it was laid")
		beam := v.files("brook", [][2]string{{"hull-beam", "745 mm"}})("look", ".toml")
		same(v, `Object.values(JSON.parse(`+newest+`).files)[0]`, string(beam.data))
	})
}

// TestLaidSized: while a boat is still sized for someone, its sheets are not those of the
// boat that stood there before.
func TestLaidSized(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := spied(t, home)
		v.click("#people [type=submit]")
		v.until(`location.hash.includes("people")`)
		v.rest()
		sized := get[string](v, `document.getElementById("title").textContent`)
		v.back("#undo", `!location.hash.includes("people")`)
		v.reload()
		v.do(evaluate(`hold = ["size"]; history.forward()`))
		v.until(`location.hash.includes("people") && held.length > 0`)
		v.do(evaluate(`document.getElementById("show-sheets").click()`))
		same(v, `held.length`, 1)
		v.do(evaluate(`free()`))
		v.until(shows)
		v.rest()
		if asked := get[string](v, `Object.values(JSON.parse(`+newest+`).files ?? {}).join()`); !strings.Contains(asked, sized) {
			t.Errorf("the sheets that stand are not of %s", sized)
		}
		if get[string](v, `drawn()`) != drawnOf(t, get[string](v, newest)) {
			t.Error("the sheets that stand are of another boat than was asked for last")
		}
	})
}
