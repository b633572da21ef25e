package page

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"

	"ribwright/cmd/internal/answer"
	"ribwright/cmd/internal/job"
	"ribwright/geometry/design"
)

func newPage(t *testing.T, engine *Engine) Page {
	t.Helper()
	start, err := Begin("", nil)
	if err != nil {
		t.Fatal(err)
	}
	p, err := New(start, engine)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestWhoMayAsk: the page and its answers are for this machine by its own name, and for
// the page itself; no path leads to a file.
func TestWhoMayAsk(t *testing.T) {
	h := Handler(newPage(t, nil), job.UsualDate())
	question := `{"verb":"look","names":["brook"]}`
	for _, c := range []struct {
		what, method, path, host, kind, origin, body string
		want                                         int
	}{
		{"the page", "GET", "/", "127.0.0.1:8000", "", "", "", 200},
		{"by name", "GET", "/", "localhost:8000", "", "", "", 200},
		{"a question", "POST", "/ask", "127.0.0.1:8000", "application/json", "http://127.0.0.1:8000", question, 200},
		{"another name", "GET", "/", "evil.example:8000", "", "", "", 403},
		{"a name that begins like ours", "GET", "/", "localhost.evil.example", "", "", "", 403},
		{"no name", "POST", "/ask", "", "application/json", "", question, 403},
		{"from another site", "POST", "/ask", "127.0.0.1:8000", "application/json", "http://evil.example", question, 403},
		{"from another port", "POST", "/ask", "127.0.0.1:8000", "application/json", "http://127.0.0.1:9", question, 403},
		{"a form", "POST", "/ask", "127.0.0.1:8000", "text/plain", "", question, 415},
		{"a path", "GET", "/etc/passwd", "127.0.0.1:8000", "", "", "", 404},
		{"a way up", "GET", "/..%2f..%2fetc/passwd", "127.0.0.1:8000", "", "", "", 404},
		{"asked by GET", "GET", "/ask", "127.0.0.1:8000", "", "", "", 405},
		{"too much", "POST", "/ask", "127.0.0.1:8000", "application/json", "", strings.Repeat("x", answer.Largest+1), 413},
	} {
		r := httptest.NewRequest(c.method, c.path, strings.NewReader(c.body))
		r.Host = c.host
		for name, value := range map[string]string{"Content-Type": c.kind, "Origin": c.origin} {
			if value != "" {
				r.Header.Set(name, value)
			}
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != c.want {
			t.Errorf("%s: %d, want %d", c.what, w.Code, c.want)
		}
		if policy := w.Header().Get("Content-Security-Policy"); c.want == 200 && (!strings.HasPrefix(policy, "default-src 'none'") || strings.Contains(policy, "unsafe-inline")) {
			t.Errorf("%s: policy %q", c.what, policy)
		}
	}
}

// TestManySliders: a hundred questions at once are all answered, each with its own boat.
func TestManySliders(t *testing.T) {
	s := httptest.NewServer(Handler(newPage(t, nil), job.UsualDate()))
	defer s.Close()
	var all sync.WaitGroup
	for i := range 100 {
		all.Go(func() {
			beam := 680 + i%60
			q, _ := json.Marshal(answer.Question{Verb: "look", Names: []string{"brook"}, Fields: [][2]string{{"hull-beam", fmt.Sprintf("%d mm", beam)}}})
			r, err := http.Post(s.URL+"/ask", "application/json", bytes.NewReader(q))
			if err != nil {
				t.Error(err)
				return
			}
			defer r.Body.Close()
			var a struct {
				Numbers struct {
					Measures []struct {
						Name string  `json:"name"`
						Now  float64 `json:"now"`
					} `json:"measures"`
				} `json:"numbers"`
			}
			if err := json.NewDecoder(r.Body).Decode(&a); err != nil || len(a.Numbers.Measures) < 2 || a.Numbers.Measures[1].Now != float64(beam) {
				t.Errorf("beam %d: %v, %+v", beam, err, a)
			}
		})
	}
	all.Wait()
}

// TestHostileTitle: a title is text, whatever it looks like.
func TestHostileTitle(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	d.Title, d.For = `</script><script>alert(1)</script>`, `<!-- <img src=x onerror=alert(2)> @SCRIPT@`
	var text bytes.Buffer
	if err := design.Encode(&text, d); err != nil {
		t.Fatal(err)
	}
	start, err := Begin("mine.toml", text.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	p, err := New(start, nil)
	if err != nil {
		t.Fatal(err)
	}
	if page := string(p.HTML); strings.Contains(page, "alert(1)</script") || strings.Contains(page, "<img src=x") || strings.Count(page, "<script") != 4 {
		t.Error("the title has become part of the page")
	}
}

// TestCarried: a page with an engine asks nobody, and an engine that would end its own
// element is refused.
func TestCarried(t *testing.T) {
	p := newPage(t, &Engine{Module: []byte{1, 2, 3}, Runtime: "var Go;"})
	if !strings.Contains(p.Policy, "connect-src 'none'") || !bytes.Contains(p.HTML, []byte("AQID")) {
		t.Error("the engine is not in the page, or the page may ask others")
	}
	if _, err := New(Start{}, &Engine{Runtime: "</SCRIPT>"}); err == nil {
		t.Error("an engine that ends its element is taken")
	}
}
