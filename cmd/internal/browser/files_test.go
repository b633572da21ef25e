package browser

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/chromedp"

	"ribwright/cmd/internal/job"
)

// TestDownloads: what the page saves are the command line's own bytes, of a shipped boat
// and of one that a slider has changed.
func TestDownloads(t *testing.T) {
	bothWays(t, func(t *testing.T, home string) {
		v := begin(t, home, "")
		dir := t.TempDir()
		v.savesTo(dir)
		brook := v.files("brook", nil)
		v.saves(dir, "The design", brook("look", ".toml"))
		v.saves(dir, "Save the proof sheet", brook("proof", ".pdf"))
		v.drag("#r-hull-beam", 30)
		v.until(set("hull-beam") + ` > 0`)
		v.rest()
		changed := v.files("brook", [][2]string{{"hull-beam", fmt.Sprintf("%v mm", get[float64](v, set("hull-beam")))}})
		design := changed("look", ".toml")
		v.saves(dir, "The design", design)
		if os.Getenv("RIBWRIGHT_LONG") != "" { // a set of patterns takes its time
			mine := v.files(design.name, nil, design)
			v.saves(dir, "Every number", mine("loft", "-numbers.json"))
			v.saves(dir, "Patterns, full size", mine("loft", ".pdf"))
			v.saves(dir, "Cutter, SVG", mine("loft", ".svg"))
			v.saves(dir, "Build book", mine("book", ".pdf"))
			v.saves(dir, "Everything as one zip", mine("parcel", ".zip"))
		}
	})
}

// file is a file as the command line writes it.
type file struct {
	name string
	data []byte
}

// files makes what a verb writes of a design, as the command line does.
func (v *visit) files(design string, fields [][2]string, given ...file) func(verb, end string) file {
	made := map[string][]job.Output{}
	return func(verb, end string) file {
		v.Helper()
		if made[verb] == nil {
			names := []string{design}
			if verb == "proof" {
				names = nil
			}
			r, err := job.Ask(verb, names, fields...)
			if err != nil {
				v.Fatal(err)
			}
			result, err := r.Do(job.World{Made: job.UsualDate(), Files: func(string) ([]byte, error) { return given[0].data, nil }})
			if err != nil {
				v.Fatal(err)
			}
			made[verb] = result.Outputs
		}
		for _, o := range made[verb] {
			if strings.HasSuffix(o.Name, end) {
				var b bytes.Buffer
				if err := o.Write(&b); err != nil {
					v.Fatal(err)
				}
				return file{o.Name, b.Bytes()}
			}
		}
		v.Fatalf("%s writes no %s", verb, end)
		return file{}
	}
}

// savesTo sends downloads into a folder.
func (v *visit) savesTo(dir string) {
	v.Helper()
	id := chromedp.FromContext(v.tab).BrowserContextID
	all := chromedp.FromContext(v.tab).Browser
	_, err := cdp.Call(v.tab, all, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{Behavior: browser.SetDownloadBehaviorBehaviorAllow, BrowserContextID: id, DownloadPath: dir})
	if err != nil {
		v.Fatal(err)
	}
}

// came waits until a file that is saved has at least so many bytes, and returns them; fewer
// where no more come.
func (v *visit) came(place string, least int) (data []byte) {
	for end := time.Now().Add(long); time.Now().Before(end) && len(data) < least; time.Sleep(20 * time.Millisecond) {
		data, _ = os.ReadFile(place)
	}
	return data
}

// saves clicks a button of the paper and holds what comes to the file that is wanted.
func (v *visit) saves(dir, button string, want file) {
	v.Helper()
	place := filepath.Join(dir, want.name)
	os.Remove(place)
	v.do(evaluate(fmt.Sprintf(`[...document.querySelectorAll("#paper button")].find((b) => b.textContent === %q).click()`, button)))
	v.until(fmt.Sprintf(`document.getElementById("status").textContent === %q`, "Saved: "+want.name))
	if got := v.came(place, len(want.data)); !bytes.Equal(got, want.data) {
		v.Errorf("%s: %s is not the command line's file: %d bytes, %d wanted", button, want.name, len(got), len(want.data))
	}
	v.do(evaluate(`document.getElementById("status").textContent = ""`))
}
