package html

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/finding"
	"ribwright/layout"
	"ribwright/layout/report"
)

// drawn stands in for the figure writer.
func drawn(w io.Writer, d layout.Drawing, about string) error {
	_, err := fmt.Fprintf(w, `<svg role="img"><title>figure</title><desc>seen</desc></svg>`)
	return err
}

func encode(t *testing.T, b report.Report) string {
	t.Helper()
	var out bytes.Buffer
	if err := Encode(&out, b, drawn); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// everything is a book with every kind of block, each saying the same.
func everything(words string) report.Report {
	d := layout.Drawing{Title: words}
	d.Straight(layout.Mark, 0, 0, 10, 10)
	d.Write(0, 0, 3, layout.Left, words)
	return report.Report{Title: words, For: words, Fingerprint: words, Blocks: []report.Block{
		report.Heading{Level: 1, Words: words}, report.Heading{Level: 3, Words: words}, report.Contents{}, report.Paragraph{Words: words},
		report.List{Items: []string{words}}, report.List{First: 4, Items: []string{words}}, report.Caution{Words: words, Says: words},
		report.Table{Title: words, Columns: []report.Column{{Head: words, Text: true}, {Head: words, Align: layout.Right}, {}}, Rows: [][]string{{words, words, words}}, Note: words},
		report.Figure{Drawing: d, Caption: words, About: words},
		report.Findings{List: found(words)}, report.Findings{List: found(words), Judged: true},
	}}
}

// found is a danger and a fact that say the words.
func found(words string) finding.List {
	f := finding.Finding{About: words, Text: words, Standing: finding.Standing(words), Cure: words, Measure: finding.Measure{Value: 1, Limit: 2, Unit: words}}
	danger := f
	danger.Verdict = finding.Weak
	return finding.List{f, danger}
}

// TestFindings: findings are written as the blocks that they are for every writer.
func TestFindings(t *testing.T) {
	f := report.Findings{List: found("plain words")}
	if a, b := encode(t, report.Report{Blocks: []report.Block{f}}), encode(t, report.Report{Blocks: f.Blocks()}); a != b {
		t.Errorf("%s\nwant\n%s", a, b)
	}
}

// hostile are words that would be markup, or act on what stands round them.
func hostile() []string {
	return []string{
		`<script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `'--></style><svg onload=alert(1)>`, "]]> &lt; &#60;script&#62;",
		"\u202eevil\u202c \u2066x\u2069", "מפרש שלי", "<b>\x00\x1b[31m</b>", strings.Repeat("long", 500), "{{.}} %s %d ${x}", "\xff\xfe<i>",
	}
}

// TestHostile puts hostile words everywhere: nothing of them may become an element
// or an attribute. A browser's reading of elements is stood in for by Go's XML
// decoder in HTML mode, which shares nothing with the encoder.
func TestHostile(t *testing.T) {
	plain := elements(t, encode(t, everything("plain words")))
	for _, words := range hostile() {
		got := encode(t, everything(words))
		if e := elements(t, got); e != plain {
			t.Errorf("%.30q changes the elements:\n%s\nwant\n%s", words, e, plain)
		}
		if i := strings.IndexFunc(got, func(r rune) bool {
			return r < ' ' && r != '\n' || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
		}); i >= 0 {
			t.Errorf("%.30q leaves a character that acts: %.20q", words, got[i:])
		}
	}
}

// elements lists every element with the names of its attributes, and the values of
// those that fetch or run something.
func elements(t *testing.T, text string) string {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(text))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var out strings.Builder
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out.String()
		}
		if err != nil {
			t.Fatal(err)
		}
		if e, ok := tok.(xml.StartElement); ok {
			fmt.Fprintf(&out, "%s", e.Name.Local)
			for _, a := range e.Attr {
				fmt.Fprintf(&out, " %s", a.Name.Local)
				if n := a.Name.Local; n == "href" || n == "src" || strings.HasPrefix(n, "on") {
					fmt.Fprintf(&out, "=%s", a.Value)
				}
			}
			out.WriteByte('\n')
		}
	}
}

// TestNothingFetched finds every address in the file: places in the page itself, and
// the empty picture of the tab.
func TestNothingFetched(t *testing.T) {
	got := encode(t, everything("words"))
	for _, m := range regexp.MustCompile(`(?:href|src|srcset|action|data)="([^"]*)"`).FindAllStringSubmatch(got, -1) {
		if !strings.HasPrefix(m[1], "#c") && m[1] != "data:," {
			t.Errorf("%q would be fetched", m[1])
		}
	}
	for _, w := range []string{"url(", "@import", "<script", "<iframe", "<object", "<link rel=\"stylesheet\""} {
		if strings.Contains(got, w) {
			t.Errorf("the file holds %q", w)
		}
	}
}

// TestWhole: every part of every block is in the file, escaped.
func TestWhole(t *testing.T) {
	got := encode(t, everything("3 < 4 & 5"))
	if n := strings.Count(got, "3 &lt; 4 &amp; 5"); n < 20 {
		t.Errorf("the words stand %d times, want 20 or more", n)
	}
	for _, w := range []string{`lang="en"`, `name="viewport"`, "<th scope=\"col\"", "<figcaption>", `role="img"`, `<ol start="4">`, "<caption>", `href="#c1"`, `id="c1"`} {
		if !strings.Contains(got, w) {
			t.Errorf("the file has no %q", w)
		}
	}
}

// TestErrors: a figure that fails names itself, and nothing is written.
func TestErrors(t *testing.T) {
	var out bytes.Buffer
	err := Encode(&out, everything("x"), func(io.Writer, layout.Drawing, string) error { return errors.New("no ink") })
	if err == nil || !strings.Contains(err.Error(), `the figure "x": no ink`) || out.Len() != 0 {
		t.Errorf("%v, %d bytes", err, out.Len())
	}
}

// TestContrast holds the colours of words to WCAG 2.1, 1.4.3: 4.5 to 1 against each
// ground they may stand on; and no lettering under 15 px.
func TestContrast(t *testing.T) {
	screen, _, _ := strings.Cut(style, "@media print")
	var inks, grounds []string
	for _, m := range regexp.MustCompile(`[;{] ?(color|background): (#[0-9a-f]{3,6})`).FindAllStringSubmatch(screen, -1) {
		if m[1] == "color" {
			inks = append(inks, m[2])
		} else {
			grounds = append(grounds, m[2])
		}
	}
	if len(inks) < 3 || len(grounds) < 3 {
		t.Fatalf("inks %v on grounds %v", inks, grounds)
	}
	for _, ink := range inks {
		for _, ground := range grounds {
			a, b := luminance(t, ink), luminance(t, ground)
			if ratio := (math.Max(a, b) + 0.05) / (math.Min(a, b) + 0.05); ratio < 4.5 {
				t.Errorf("%s on %s: %.1f to 1", ink, ground, ratio)
			}
		}
	}
	for _, m := range regexp.MustCompile(`(\d+)px/|font-size: (\d+)px`).FindAllStringSubmatch(screen, -1) {
		if px, _ := strconv.Atoi(m[1] + m[2]); px < 15 {
			t.Errorf("lettering of %d px", px)
		}
	}
}

// luminance is the relative luminance of WCAG 2.1.
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	hex = strings.TrimPrefix(hex, "#")
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		v := float64(n) / 255
		if v <= 0.03928 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		sum += weight * v
	}
	return sum
}
