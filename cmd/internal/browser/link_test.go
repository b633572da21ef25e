package browser

import (
	"encoding/json"
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"ribwright/geometry/design"
)

// TestBadLink: a link that holds no boat, or one that cannot be built, shows the first
// boat all the same and says what is wrong with the other.
func TestBadLink(t *testing.T) {
	home := served(t)
	v := begin(t, home, "")
	for link, says := range map[string]string{
		"%E0%A4": "",
		url.PathEscape(`{"base":"yacht","set":{}}`):                                               "",
		url.PathEscape(`{"base":"brook","name":"../../etc/passwd","set":null}`):                   "",
		url.PathEscape(`{"base":"brook","name":"brook","set":{"hull-beam":9000}}`):                "out of range",
		url.PathEscape(`{"base":"file","name":"<b>.toml","text":"title = 3"}`):                    "<b>.toml",
		url.PathEscape(`{"base":"people","people":{"weight":"much","use":"solo","posture":"x"}}`): "much",
		url.PathEscape(`{"base":"brook","name":"brook","turn":"<img src=x onerror=alert(1)>"}`):   "a number",
	} {
		v.do(evaluate(`localStorage.clear()`), chromedp.Navigate("about:blank"))
		v.open(home + "#" + link)
		same(v, `document.getElementById("title").textContent`, "Brook")
		if said := get[string](v, `document.getElementById("status").textContent`); !strings.Contains(said, says) || (says == "") != (said == "") {
			t.Errorf("%s: the page says %q, want %q", link, said, says)
		}
		same(v, `document.querySelectorAll("img, b:not(.found b)").length`, 0)
	}
}

// TestHostileFile: a design's words are words, whatever they look like, in the title, in
// findings, and in the link that holds the file.
func TestHostileFile(t *testing.T) {
	const title = `</script><img src=x onerror=alert(1)>`
	d, err := design.Shipped("lake")
	if err != nil {
		t.Fatal(err)
	}
	d.Title, d.For = title, "<script>alert(2)</script>"
	var text strings.Builder
	if err := design.Encode(&text, d); err != nil {
		t.Fatal(err)
	}
	state, err := json.Marshal(map[string]string{"base": "file", "name": "<b>.toml", "text": text.String()})
	if err != nil {
		t.Fatal(err)
	}
	v := begin(t, served(t), "#"+url.PathEscape(string(state)))
	same(v, `document.getElementById("title").textContent`, title)
	same(v, `document.getElementById("for").textContent`, "<script>alert(2)</script>")
	same(v, `document.querySelectorAll("img").length`, 0)
}
