package formula

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

type tokenKind int8

const (
	wordToken tokenKind = iota
	numberToken
	textToken
	signToken   // operators, brackets, commas
	remarkToken // what follows #
	stopToken   // the end of a statement
)

type token struct {
	kind tokenKind
	text string
	num  float64
	dim  Dim
	at   Place
	from int // offset in the text, for showing the formula
}

type scanner struct {
	text string
	pos  int   // bytes already read
	at   Place // of what comes next; kept up, for counting it anew takes time with the square of a line
	out  []token
}

// lexeme is what a token looks like, with a group for each kind: a number, a word, a
// text and a sign.
var lexeme = regexp.MustCompile(`^(?:([0-9]+(?:\.[0-9]+)?)|(\w+(?:\.\w+)*)|("[^"\n]*")|([<>=!]=|[-+*/^()\[\],<>=]))`)

// ahead is how many bytes are searched for a token, more than any that is accepted:
// looking at the whole file for each would take time with its square.
const ahead = 400

// scan returns the tokens of a file; every statement ends with a stopToken.
func scan(src Source) []token {
	s := &scanner{text: src.Text, at: Place{File: src.Name}}
	switch {
	case len(src.Text) > maxFile:
		s.fail("is larger than 256 kB, so it is no file of formulas")
	case !utf8.ValidString(src.Text), strings.IndexByte(src.Text, 0) >= 0:
		s.fail("is no UTF-8 text; a file of formulas is plain text")
	}
	for s.at.Line, s.at.Col = 1, 1; s.pos < len(src.Text); {
		s.next()
	}
	s.add(stopToken, s.pos)
	return s.out
}

func (s *scanner) add(k tokenKind, end int) *token {
	s.out = append(s.out, token{kind: k, text: s.text[s.pos:end], at: s.at, from: s.pos})
	s.skip(end)
	return &s.out[len(s.out)-1]
}

func (s *scanner) skip(end int) {
	s.at.Col += utf8.RuneCountInString(s.text[s.pos:end])
	s.pos = end
}

func (s *scanner) fail(format string, args ...any) { refuse(s.at, "", format, args...) }

func (s *scanner) next() {
	rest := s.text[s.pos:]
	found := lexeme.FindStringSubmatch(rest[:min(len(rest), ahead)])
	switch {
	case rest[0] == '\n':
		s.newLine()
	case strings.IndexByte(" \t\r", rest[0]) >= 0:
		s.skip(s.pos + 1)
	case rest[0] == '#':
		remark, _, _ := strings.Cut(rest, "\n")
		s.add(remarkToken, s.pos+len(remark))
	case found == nil && rest[0] == '"':
		s.fail("the quotes are not closed on this line, or hold more than 200 bytes")
	case found == nil:
		r, _ := utf8.DecodeRuneInString(rest)
		s.fail("%q means nothing here; formulas use + - * / ^ ( ) [ ] , < <= > >= == != and words", r)
	case found[1] != "":
		s.number(found[1])
	case len(found[3]) > 202:
		s.fail("the text has %d bytes; accepted: up to 200", len(found[3])-2)
	default:
		for i, k := range []tokenKind{wordToken, textToken, signToken} {
			if found[i+2] != "" {
				s.add(k, s.pos+len(found[0])).text = strings.Trim(found[0], `"`)
			}
		}
	}
}

// newLine ends the statement unless the next line begins with white space or is
// empty.
func (s *scanner) newLine() {
	text, next := s.text, s.pos+1
	if next < len(text) && strings.IndexByte(" \t\r\n", text[next]) < 0 {
		s.add(stopToken, next)
	} else {
		s.skip(next)
	}
	s.at.Line, s.at.Col = s.at.Line+1, 1
}

// exponent is how numbers go on elsewhere: 1e3.
var exponent = regexp.MustCompile(`^[eE][-+0-9]`)

// number reads a number with the unit after it, if there is one.
func (s *scanner) number(digits string) {
	after := s.text[s.pos+len(digits):]
	v, err := strconv.ParseFloat(digits, 64)
	switch {
	case len(digits) > 30:
		s.fail("the number has %d digits; accepted: up to 30", len(digits))
	case err != nil:
		s.fail("%q is no number", digits)
	case strings.HasPrefix(after, "."):
		s.fail("write digits on both sides of one point, as 3.5")
	case exponent.MatchString(after):
		s.fail("exponents are not read; write the number out, as 1000 or 1000 mm")
	}
	end, rest := s.pos+len(digits), strings.TrimLeft(after, " \t")
	u, ok := unitOf(rest)
	if ok {
		end = len(s.text) - len(rest) + len(u.word)
	} else if word := leadingWord(rest); word != "" && !isKeyword(word) {
		s.fail("unknown unit %q after %s; accepted: %s", wording.Clip(word, 20), digits, unitWords())
	} else {
		u.worth = 1
	}
	t := s.add(numberToken, end)
	t.num, t.dim = v*u.worth, u.dim
}

var wordly = regexp.MustCompile(`^\w*`)

func leadingWord(s string) string { return wordly.FindString(s) }

func isKeyword(word string) bool {
	return slices.Contains([]string{"if", "then", "else", "and", "or", "not", "true", "false"}, word)
}

func unitWords() string {
	var all []string
	for _, u := range units() {
		all = append(all, u.word)
	}
	return strings.Join(all, " ")
}

// Quantity reads one number with its unit, as on a command line: 62 kg, 110mm,
// 5'-6", 4 km/h, 12 %. The result is in mm, kg, s and radians.
//
// Errors: anything else, with what is accepted.
func Quantity(text string) (v float64, d Dim, err error) {
	text = strings.TrimSpace(text)
	if len(text) > 64 {
		return 0, Plain, fmt.Errorf("%q is too long for a number with its unit", wording.Clip(text, 20))
	}
	// Feet and inches have a reader of their own.
	if strings.ContainsAny(text, `'"/ `+"\u2032\u2033\u2019\u201d") || text == "" {
		if v, err := measure.ParseLength(text); err == nil {
			return float64(v), Length, nil
		}
	}
	defer func() {
		var f *wording.Fault
		if errors.As(err, &f) {
			err = fmt.Errorf("%q: %s", wording.Clip(text, 30), f.Text)
		}
	}()
	defer catch(&err)
	number, below := strings.CutPrefix(text, "-")
	toks := scan(Source{Text: number})
	if len(toks) != 2 || toks[0].kind != numberToken {
		return 0, Plain, fmt.Errorf("%q is no number with its unit; accepted: one as 62 kg or 168 cm", wording.Clip(text, 30))
	}
	if v = toks[0].num; below {
		v = -v
	}
	return v, toks[0].dim, nil
}
