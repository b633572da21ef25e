package browser

import (
	"context"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// visit is one person's tab, in a profile of their own.
type visit struct {
	*testing.T
	tab  context.Context
	home string // the page's address, without a state

	asked chan cdp.BackendNodeID // which field asks for files, where its dialog is caught

	lock sync.Mutex
	bad  []string // what the console said and what was asked of others
}

// begin goes to the page, with a state or without, and waits for its first drawing.
func begin(t *testing.T, home, state string) *visit {
	t.Helper()
	v := &visit{T: t, home: home, asked: make(chan cdp.BackendNodeID, 1)}
	tab, close := chromedp.NewContext(chromium, chromedp.WithNewBrowserContext(), chromedp.WithListener(v.hear))
	t.Cleanup(close)
	v.tab = tab
	// The first makes the tab, which lives as long as what it is made with.
	if err := chromedp.Do(tab, command(network.Enable, network.EnableParams{}), command(log.Enable, cdp.Empty{})); err != nil {
		t.Fatal(err)
	}
	v.open(home + state)
	t.Cleanup(func() {
		v.lock.Lock()
		defer v.lock.Unlock()
		for _, b := range v.bad {
			t.Error(b)
		}
	})
	return v
}

// command is a command of the browser's own.
func command[P, R any](c cdp.Command[P, R], params P) step {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, c, params)
		return err
	})
}

// step is something that is done and says nothing.
type step = chromedp.Action[chromedp.Void]

// hear notes what a clean page never does.
func (v *visit) hear(event any) {
	said := ""
	switch e := event.(type) {
	case *runtime.EventConsoleAPICalled:
		said = "the console is not empty: " + string(e.Type)
		for _, a := range e.Args {
			said += " " + string(a.Value) + a.Description
		}
	case *runtime.EventExceptionThrown:
		said = "the script failed: " + e.ExceptionDetails.Text + described(e.ExceptionDetails.Exception)
	case *page.EventFileChooserOpened:
		v.asked <- e.BackendNodeID
	case *log.EventEntryAdded:
		said = "the browser complains: " + e.Entry.Text + " " + e.Entry.URL
	case *network.EventRequestWillBeSent:
		u := e.Request.URL
		if !strings.HasPrefix(u, v.home) && !strings.HasPrefix(u, "data:") && !strings.HasPrefix(u, "blob:") {
			said = "it asks others: " + u
		}
	}
	if said != "" {
		v.lock.Lock()
		v.bad = append(v.bad, said)
		v.lock.Unlock()
	}
}

func described(o *runtime.RemoteObject) string {
	if o == nil {
		return ""
	}
	return " " + o.Description
}

// do does things one after the other, within their time.
func (v *visit) do(all ...step) {
	v.Helper()
	within, end := context.WithTimeout(v.tab, long)
	defer end()
	if err := chromedp.Do(within, all...); err != nil {
		v.Fatal(err)
	}
}

// open goes to an address and waits until the boat is drawn in full.
func (v *visit) open(address string) {
	v.Helper()
	v.do(chromedp.Navigate(address))
	v.rest()
}

// reload loads the page again, as a person does, and waits until the new one is drawn in
// full: the old one answers, and is ready, until it is gone.
func (v *visit) reload() {
	v.Helper()
	v.do(evaluate(`window.old = true; location.reload()`))
	v.until(`!window.old`)
	v.rest()
}

// rest waits until the page has drawn the newest state in full.
func (v *visit) rest() {
	v.Helper()
	v.until(`document.documentElement.dataset.ready === "true" && document.documentElement.dataset.engine === "ready" && document.documentElement.dataset.whole === "true"`)
}

// until waits for an expression of the page to be true. The page's policy forbids the
// library's own way of waiting, which makes a function of text.
func (v *visit) until(expression string) {
	v.Helper()
	for end := time.Now().Add(long); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		// While a page is left, nobody answers.
		if yes, err := chromedp.Run(v.tab, chromedp.Evaluate[bool]("Boolean("+expression+")")); err == nil && yes {
			return
		}
	}
	v.Fatalf("it never comes: %s; the page says %q", expression, get[string](v, `document.getElementById("status")?.textContent ?? ""`))
}

// get reads an expression of the page.
func get[T any](v *visit, expression string) T {
	v.Helper()
	within, end := context.WithTimeout(v.tab, long)
	defer end()
	out, err := chromedp.Run(within, chromedp.Evaluate[T](expression))
	if err != nil {
		v.Fatalf("%s: %v", expression, err)
	}
	return out
}

// same fails when an expression of the page is not what is wanted.
func same[T comparable](v *visit, expression string, want T) {
	v.Helper()
	if got := get[T](v, expression); got != want {
		v.Errorf("%s: %v, want %v", expression, got, want)
	}
}

// wide gives the tab a size, as of a phone, a tablet or a desk, light or dark.
func (v *visit) wide(px int64, scheme string) {
	v.Helper()
	v.do(command(emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: px, Height: 900, DeviceScaleFactor: 1, Mobile: px < 600}),
		command(emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}}))
}

// click clicks a thing as a hand does.
func (v *visit) click(selector string) {
	v.Helper()
	v.do(chromedp.Click(chromedp.CSS(selector)))
}

// press presses keys where the page's focus is.
func (v *visit) press(keys string) {
	v.Helper()
	v.do(chromedp.KeyEvent(keys))
}

// evaluate runs a line of the page's language.
func evaluate(line string) step { return chromedp.Evaluate[chromedp.Void](line) }
