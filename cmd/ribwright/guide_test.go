package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// block is what stands between two fences of a page.
type block struct{ language, file, text string }

// blocks reads the fences of a page.
func blocks(page string) (out []block) {
	parts := strings.Split(page, "```")
	for i := 1; i < len(parts); i += 2 {
		head, text, _ := strings.Cut(parts[i], "\n")
		language, file, _ := strings.Cut(head, " ")
		out = append(out, block{language, file, text})
	}
	return out
}

// shellWords splits a line as a shell does, at blanks outside quotes.
func shellWords(line string) (out []string) {
	for _, m := range regexp.MustCompile(`(?:[^\s'"]|'[^']*'|"[^"]*")+`).FindAllString(line, -1) {
		out = append(out, regexp.MustCompile(`['"]`).ReplaceAllString(m, ""))
	}
	return out
}

// call returns the arguments of a line that calls the program and ends by itself; false
// for any other.
func call(line string) ([]string, bool) {
	line = strings.Replace(line, "go run ./cmd/ribwright ", "ribwright ", 1)
	args := shellWords(line)
	if len(args) < 2 || args[0] != "ribwright" || args[1] == "open" {
		return nil, false
	}
	return args[1:], true
}

// redirected parts a call from the file that a shell writes what it says into; "" for none.
func redirected(args []string) (call []string, into string) {
	if n := len(args); n > 2 && args[n-2] == ">" {
		return args[:n-2], args[n-1]
	}
	return args, ""
}

// documents are the README and the pages of the guide, by their paths.
func documents(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	names, err := filepath.Glob("guide/*.md")
	if err != nil || len(names) == 0 {
		t.Fatal("no guide:", err)
	}
	for _, name := range append(names, "../../README.md") {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = string(data)
	}
	return out
}

// TestExamples does what the README and the guide tell a builder to type, page by page in
// a folder that holds the files
// they show and a table of a measured boat: every line ends well. The guide's other
// than the README's are tried in the long form.
func TestExamples(t *testing.T) {
	for name, page := range documents(t) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			if filepath.Base(name) != "README.md" && os.Getenv("RIBWRIGHT_LONG") == "" {
				t.Skip("RIBWRIGHT_LONG is not set")
			}
			table, err := os.ReadFile("../../testdata/offsets/fig108.csv")
			if err != nil {
				t.Fatal(err)
			}
			t.Chdir(t.TempDir())
			if err := os.WriteFile("old-canoe.csv", table, 0o644); err != nil {
				t.Fatal(err)
			}
			for _, b := range blocks(page) {
				if b.file != "" {
					if err := os.WriteFile(b.file, []byte(b.text), 0o644); err != nil {
						t.Fatal(err)
					}
				}
				for line := range strings.Lines(b.text) {
					args, ok := call(line)
					if !ok || b.language != "sh" {
						continue
					}
					args, into := redirected(args)
					var out, errs bytes.Buffer
					if code := run(args, &out, &errs); code != done || errs.Len() > 0 || out.Len() == 0 {
						t.Errorf("%s: exit %d, %s", line, code, errs.String())
					}
					if into == "" {
						continue
					}
					if err := os.WriteFile(into, out.Bytes(), 0o644); err != nil {
						t.Fatal(err)
					}
				}
			}
		})
	}
}

// TestExamplesAreFound: the words of a line come apart as in a shell, and the README has
// its main command and no other line of tests.
func TestExamplesAreFound(t *testing.T) {
	got, ok := call(`ribwright size --paddler "62 kg, 168 cm" --door '900 mm' -o x.toml`)
	if want := "size|--paddler|62 kg, 168 cm|--door|900 mm|-o|x.toml"; !ok || strings.Join(got, "|") != want {
		t.Errorf("%q, want %q", got, want)
	}
	count := map[string]int{}
	for _, b := range blocks(documents(t)["../../README.md"]) {
		for line := range strings.Lines(b.text) {
			count[strings.TrimSpace(line)]++
		}
	}
	for _, line := range []string{"go run ./cmd/ribwright loft", "go install ./cmd/ribwright", "go test ./..."} {
		if count[line] != 1 {
			t.Errorf("README.md has %q %d times, want once", line, count[line])
		}
	}
}

// TestReadme: the front page stays short, shows a boat and a sheet, and names every verb
// here or on a page that it leads to.
func TestReadme(t *testing.T) {
	all := documents(t)
	readme := all["../../README.md"]
	if n := len(strings.Fields(readme)); n > 1300 {
		t.Errorf("README.md has %d words, want at most 1300", n)
	}
	if n := strings.Count(readme, "!["); n != 2 {
		t.Errorf("README.md has %d pictures, want one of a boat and one of a sheet", n)
	}
	var whole strings.Builder
	for name, page := range all {
		whole.WriteString(page)
		if page := strings.TrimSuffix(filepath.Base(name), ".md"); page != "README" && !strings.Contains(readme, "guide/"+page+".md") {
			t.Errorf("README.md does not lead to the page %s", page)
		}
	}
	for _, verb := range program(verbs()).list() {
		if !strings.Contains(whole.String(), "ribwright "+verb) {
			t.Errorf("neither README.md nor the guide shows %s at work", verb)
		}
	}
}

// TestLinks: what a page leads to is there.
func TestLinks(t *testing.T) {
	for name, page := range documents(t) {
		for _, m := range regexp.MustCompile(`\]\(([^)]+)\)`).FindAllStringSubmatch(page, -1) {
			if strings.HasPrefix(m[1], "https://") {
				continue
			}
			if _, err := os.Stat(filepath.Join(filepath.Dir(name), m[1])); err != nil {
				t.Errorf("%s leads to %s: %v", name, m[1], err)
			}
		}
	}
}

// TestTopics: every page is read on a terminal without Markdown's signs, in lines that a
// terminal holds where they are not commands; none has the name of a verb.
func TestTopics(t *testing.T) {
	for _, name := range topics() {
		if program(verbs()).find(name) != nil {
			t.Errorf("%s is a verb too: its flags could not be asked for", name)
		}
		page, ok := topic(name)
		for line := range strings.Lines(page) {
			if !strings.HasPrefix(line, "    ") && (strings.ContainsAny(line, "`*#") || strings.Contains(line, "](") || len(line) > 100) {
				t.Errorf("%s is not plain: %s", name, line)
			}
		}
		if !ok || page == "" {
			t.Errorf("%s is not found", name)
		}
	}
	if _, ok := topic("nowhere"); ok {
		t.Error("a page that is not there is found")
	}
	if got, want := bare("# Head\n\nSee `a` and [b](c.md).\n\n```csv x.csv\n# *1*\n```\n"), "Head\n\nSee a and b.\n\nx.csv:\n\n    # *1*\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
