package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/cmd/ribwright/keep"
)

// message is one text that the program may say, and where it stands.
type message struct{ place, words string }

// messages are the texts of four words or more in the sources: errors, findings, lines of a
// report, what flags and keys are for.
func messages(t *testing.T) (out []message) {
	t.Helper()
	root := filepath.Join("..", "..")
	files := token.NewFileSet()
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.HasSuffix(filepath.Dir(path), "test") {
			return err
		}
		file, err := parser.ParseFile(files, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.Field:
				if n.Tag != nil {
					tag, _ := strconv.Unquote(n.Tag.Value)
					out = append(out, message{files.Position(n.Pos()).String(), reflect.StructTag(tag).Get("comment")})
					return false
				}
			case *ast.BinaryExpr:
				if words, ok := joined(n); ok {
					out = append(out, message{files.Position(n.Pos()).String(), words})
					return false
				}
			case *ast.BasicLit:
				if words, err := strconv.Unquote(n.Value); n.Kind == token.STRING && err == nil && strings.Count(words, " ") >= 3 {
					out = append(out, message{files.Position(n.Pos()).String(), words})
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// joined are literals that are added up to one text.
func joined(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BinaryExpr:
		a, left := joined(e.X)
		b, right := joined(e.Y)
		return a + b, left && right && e.Op == token.ADD
	case *ast.BasicLit:
		words, err := strconv.Unquote(e.Value)
		return words, err == nil && e.Kind == token.STRING
	}
	return "", false
}

// british are spellings that Americans write otherwise. "moulded" is a key of the design file.
//
// Source: Merriam-Webster, from memory.
var british = regexp.MustCompile(`(?i)\b(colou?rs?ed|colour\w*|centres?|centred|(milli|centi|cubic )?metres?|litres?|favour\w*|grey|labour\w*|neighbour\w*|behaviour|licence|catalogue|whilst|aluminium|ploughs?|fibres?|analyse\w*|practise\w*|organis\w+|recognis\w+|travelled|labelled|modelled|levelled|cancelled|judgement|mould|moulds|programme)\b`)

// notWhole is what no sentence holds: an order of fmt that went wrong, a gap or a stop in the
// wrong place, a word said twice, a figure with a tail.
var notWhole = regexp.MustCompile(`%!|\S  +\S|\w ,|\w [.:;]( |$)|,,|;;|, ,|: :|\?\?|\d\.\d{6,}|(?i:\b(the|a|an|of|is|to|in|and|or|on|at|by|for|with|it|be|are) ([Tt]he|a|an|of|is|to|in|and|or|on|at|by|for|with|be|are)\b)`)

// twice reports whether a run of small words is one word said twice.
func twice(run string) bool {
	words := strings.Fields(run)
	return len(words) == 2 && strings.EqualFold(words[0], words[1]) && words[0] != "in" // 1/32 in in 8 ft
}

// faults are what is wrong with a sentence.
func faults(words string) (out []string) {
	for _, m := range notWhole.FindAllString(words, -1) {
		if two := strings.Fields(m); len(two) != 2 || regexp.MustCompile(`[^\w ]`).MatchString(m) || twice(m) {
			out = append(out, fmt.Sprintf("holds %q", m))
		}
	}
	if m := british.FindString(words); m != "" {
		out = append(out, fmt.Sprintf("spells %q", m))
	}
	for _, pair := range []string{"()", "[]", "{}"} {
		if strings.Count(words, pair[:1]) != strings.Count(words, pair[1:]) {
			out = append(out, "leaves a bracket open: "+pair)
		}
	}
	return out
}

// asInches are the marks of feet and inches, which stand alone.
var asInches = regexp.MustCompile(`/\d+"|' and "`)

// TestSources: no sentence in the sources is broken.
func TestSources(t *testing.T) {
	all := messages(t)
	if len(all) < 1500 {
		t.Fatalf("only %d sentences are found in the sources", len(all))
	}
	for _, m := range all {
		if !isSentence(m.words) {
			continue
		}
		for _, fault := range faults(m.words) {
			if isPiece(m.words) && strings.Contains(fault, "bracket") {
				continue
			}
			t.Errorf("%s: %q %s", m.place, m.words, fault)
		}
	}
	t.Logf("%d texts read", len(all))
}

// isPiece reports whether a text is put together with others, so that its brackets may close
// in the next one.
func isPiece(words string) bool {
	return strings.HasPrefix(words, " ") || strings.HasPrefix(words, ")") || strings.HasSuffix(words, "(")
}

// isSentence reports whether people read it: it holds no code of a file's format.
func isSentence(words string) bool {
	return !strings.ContainsAny(words, "<>\\\n\t") && !strings.HasPrefix(words, "^") && !strings.Contains(words, "{{") && !strings.Contains(words, "(?:") && strings.Count(words, " ") >= 3
}

// TestFiguresAreShort: no refusal tells a figure with all its digits, which for 22.1 mm read
// in feet may be seventeen.
func TestFiguresAreShort(t *testing.T) {
	bare := regexp.MustCompile(`%[0-9]*[fge]`)
	for _, m := range messages(t) {
		if isSentence(m.words) && strings.Contains(m.words, "accepted") && bare.MatchString(strings.ReplaceAll(m.words, "%%", "")) {
			t.Errorf("%s: %q tells a figure with all its digits", m.place, m.words)
		}
	}
}

// quantities are what flags take that have a unit.
var quantities = []string{"length", "mass", "weight", "area", "speed", "force", "degrees", "who", "people", "test", "aft,midship,fore", "WxH,...", "bush,bit", "ways", "measured", "edges"}

// withUnit is a number with its unit, or a sheet's two sides with the one of both.
var withUnit = regexp.MustCompile(`\d ?(mm|cm|m|in|ft|kg|lb|km/h|m/s|kn|mph|m2|sqft|N|C|F)\b`)

// TestRefusals: whatever nonsense stands behind a flag, the answer is one line that is whole,
// and so is what the pages say to do next. None shows how the program reads a number.
func TestRefusals(t *testing.T) {
	seen := map[string]bool{}
	for _, v := range verbs() {
		if v.request == nil {
			continue
		}
		for _, f := range v.request().Fields() {
			for _, text := range []string{"", "none such", "-1", "0", "1,5", "12 parsecs", "(", "NaN", "1e309", "\"", "beam=1..0/0"} {
				var out, errs bytes.Buffer
				if _, err := v.requestWith(f.Name, text); err == nil {
					continue
				}
				run([]string{v.name, "--" + f.Name + "=" + text}, &out, &errs)
				said := strings.TrimSuffix(errs.String(), "\n")
				seen[said] = true
				if strings.Contains(said, "\n") || said == "" || !strings.HasPrefix(said, "ribwright: ") {
					t.Errorf("%s --%s %q: %q is no line of its own", v.name, f.Name, text, said)
				}
				if text == "(" || text == "beam=1..0/0" {
					continue // what was typed is said as it is
				}
				if strings.Contains(said, "strconv") {
					t.Errorf("%s --%s %q: %q is no word for a builder", v.name, f.Name, text, said)
				}
				for _, fault := range faults(said) {
					t.Errorf("%s --%s %q: %q %s", v.name, f.Name, text, said, fault)
				}
				told, _, _ := strings.Cut(said, " (try ")
				if text != "\"" && slices.Contains(quantities, f.Takes) && !withUnit.MatchString(strings.ReplaceAll(told, text, "")) {
					t.Errorf("%s --%s %q: %q shows no number with its unit", v.name, f.Name, text, said)
				}
				if inside := asInches.ReplaceAllString(said, ""); text != "\"" && strings.Count(inside, `"`)%2 != 0 {
					t.Errorf("%s --%s %q: %q leaves a quotation open", v.name, f.Name, text, said)
				}
			}
		}
		for _, made := range [][]keep.File{nil, {{Path: "heron.toml"}}} {
			command, why := v.next([]string{"river"}, []string{"river"}, made)
			for _, fault := range append(faults(command), faults(why)...) {
				t.Errorf("%s, next with %v: %s", v.name, made, fault)
			}
			if (command == "") != (why == "") {
				t.Errorf("%s: next is %q for %q", v.name, command, why)
			}
		}
	}
	if len(seen) < 150 {
		t.Errorf("only %d refusals are read", len(seen))
	}
	t.Logf("%d refusals read", len(seen))
}

// requestWith is the verb's request with one field set, and the error of setting it.
func (v verb) requestWith(field, text string) (any, error) {
	r := v.request()
	for _, f := range r.Fields() {
		if f.Name == field {
			return r, f.Value.Set(text)
		}
	}
	return r, nil
}
