package text

import (
	"bytes"
	"fmt"
	stdhtml "html"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/layout"
	"ribwright/layout/report"
	"ribwright/layout/report/reporttest"
	"ribwright/render/html"
)

// TestSame: the page of a browser and that of a terminal carry the same words, marks
// of lists too. A list of contents, which only the browser has, is taken out first.
func TestSame(t *testing.T) {
	cases := reporttest.Cases()
	for _, h := range reporttest.Hostile() {
		cases = append(cases, reporttest.Case{Name: h[:min(len(h), 20)], Report: reporttest.Everything(h)})
	}
	for _, c := range cases {
		shown, told := browser(t, c.Report), terminal(encode(t, c.Report))
		if c.Parted {
			shown, told = set(shown), set(told)
		}
		if a, b := letterSet(shown), letterSet(told); a != b {
			t.Errorf("%q: a browser shows\n%s\na terminal tells\n%s", c.Name, strings.Join(shown, " "), strings.Join(told, " "))
		}
	}
}

// browser is what a browser shows of a report: elements become nothing, but for marks
// of lists and the word before a figure.
func browser(t *testing.T, r report.Report) []string {
	t.Helper()
	var out bytes.Buffer
	about := func(w io.Writer, d layout.Drawing, about string) error {
		_, err := io.WriteString(w, stdhtml.EscapeString(report.Clean(about)))
		return err
	}
	if err := html.Encode(&out, r, about); err != nil {
		t.Fatal(err)
	}
	_, page, _ := strings.Cut(out.String(), "<body>")
	page = regexp.MustCompile(`(?s)(<h\d[^\n]*\n)?<nav.*</nav>`).ReplaceAllString(page, "")
	next := 0
	page = regexp.MustCompile(`<[^>]*>`).ReplaceAllStringFunc(page, func(tag string) string {
		number := regexp.MustCompile(`<ol start="(\d+)">`).FindStringSubmatch(tag)
		switch {
		case number != nil:
			next, _ = strconv.Atoi(number[1])
		case tag == "</ol>":
			next = 0
		case tag == "<figure>":
			return "Figure: "
		case tag == "<li>" && next > 0:
			next++
			return fmt.Sprintf(" %d. ", next-1)
		case tag == "<li>":
			return " - "
		case tag == "<bdi>" || tag == "</bdi>" || strings.Contains(tag, "small"):
			return ""
		}
		return " "
	})
	return strings.Fields(strings.ToLower(stdhtml.UnescapeString(page)))
}

// terminal is the words of a page without the lines that are drawn with dashes.
func terminal(page string) []string {
	return strings.Fields(strings.ToLower(regexp.MustCompile(`(?m)^--+$`).ReplaceAllString(page, "")))
}

func set(words []string) []string {
	return slices.Compact(slices.Sorted(slices.Values(words)))
}

// letterSet sorts all letters: words stand in another order where a cell is broken
// beside others.
func letterSet(words []string) string {
	return string(slices.Sorted(slices.Values([]rune(strings.Join(words, "")))))
}
