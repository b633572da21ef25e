package formula

import (
	"strconv"
	"strings"
	"unicode/utf8"

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
	end  int // offset behind it, for showing the formula
	from int
}

// scanner cuts a file into tokens.
type scanner struct {
	src       Source
	pos       int
	line      int
	lineStart int
	out       []token
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
func isWord(c byte) bool {
	return c == '_' || isDigit(c) || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z'
}

// scan returns the tokens of a file; every statement ends with a stopToken.
func scan(src Source) ([]token, *Fault) {
	if why := unreadable(src.Text); why != "" {
		return nil, &Fault{At: Place{File: src.Name}, Text: why}
	}
	src.Text = strings.ReplaceAll(strings.TrimPrefix(src.Text, "\uFEFF"), "\r\n", "\n")
	s := &scanner{src: src, line: 1}
	for s.pos < len(src.Text) {
		if f := s.next(); f != nil {
			return nil, f
		}
	}
	s.add(stopToken, s.pos)
	return s.out, nil
}

// unreadable says why a file is not worth reading, "" when it is.
func unreadable(text string) string {
	switch {
	case len(text) > maxFile:
		return "is larger than 256 kB, so it is no file of formulas"
	case !utf8.ValidString(text), strings.IndexByte(text, 0) >= 0:
		return "is no UTF-8 text; a file of formulas is plain text"
	}
	return ""
}

func (s *scanner) place() Place {
	col := utf8.RuneCountInString(s.src.Text[s.lineStart:s.pos]) + 1
	return Place{s.src.Name, s.line, col}
}

func (s *scanner) add(k tokenKind, end int) *token {
	s.out = append(s.out, token{kind: k, text: s.src.Text[s.pos:end], at: s.place(), from: s.pos, end: end})
	s.pos = end
	return &s.out[len(s.out)-1]
}

func (s *scanner) fault(format string, args ...any) *Fault {
	return faultAt(s.place(), "", format, args...)
}

func (s *scanner) next() *Fault {
	text := s.src.Text
	switch c := text[s.pos]; {
	case c == '\n':
		s.newLine()
	case c == ' ', c == '\t', c == '\r':
		s.pos++
	case c == '#':
		end := strings.IndexByte(text[s.pos:], '\n')
		if end < 0 {
			end = len(text) - s.pos
		}
		s.add(remarkToken, s.pos+end)
	case isDigit(c):
		return s.number()
	case isWord(c):
		end := s.pos
		for end < len(text) && (isWord(text[end]) || text[end] == '.' && end+1 < len(text) && isWord(text[end+1])) {
			end++
		}
		s.add(wordToken, end)
	case c == '"':
		return s.quoted()
	default:
		return s.sign()
	}
	return nil
}

// newLine ends the statement unless the next line begins with white space or is
// empty.
func (s *scanner) newLine() {
	text, next := s.src.Text, s.pos+1
	if next < len(text) && strings.IndexByte(" \t\r\n", text[next]) < 0 {
		s.add(stopToken, next)
	} else {
		s.pos = next
	}
	s.line++
	s.lineStart = s.pos
}

func (s *scanner) sign() *Fault {
	text := s.src.Text
	if s.pos+1 < len(text) {
		switch text[s.pos : s.pos+2] {
		case "<=", ">=", "==", "!=":
			s.add(signToken, s.pos+2)
			return nil
		}
	}
	if strings.IndexByte("+-*/^()[],<>=", text[s.pos]) >= 0 {
		s.add(signToken, s.pos+1)
		return nil
	}
	r, _ := utf8.DecodeRuneInString(text[s.pos:])
	return s.fault("%q means nothing here; formulas use + - * / ^ ( ) [ ] , < <= > >= == != and words", r)
}

func (s *scanner) quoted() *Fault {
	text := s.src.Text
	end := strings.IndexAny(text[s.pos+1:], "\"\n")
	if end < 0 || text[s.pos+1+end] == '\n' {
		return s.fault("the quotes are not closed on this line")
	}
	if end > 200 {
		return s.fault("the text has %d bytes; accepted: up to 200", end)
	}
	t := s.add(textToken, s.pos+end+2)
	t.text = t.text[1 : len(t.text)-1]
	return nil
}

// number reads a number with the unit after it, if there is one.
func (s *scanner) number() *Fault {
	text, end := s.src.Text, s.pos
	for end < len(text) && isDigit(text[end]) {
		end++
	}
	if end+1 < len(text) && text[end] == '.' && isDigit(text[end+1]) {
		for end++; end < len(text) && isDigit(text[end]); {
			end++
		}
	}
	if end-s.pos > 30 {
		return s.fault("the number has %d digits; accepted: up to 30", end-s.pos)
	}
	v, err := strconv.ParseFloat(text[s.pos:end], 64)
	if err != nil {
		return s.fault("%q is no number", text[s.pos:end])
	}
	if f := s.badAfter(end); f != nil {
		return f
	}
	rest := strings.TrimLeft(text[end:], " \t")
	u, ok := unitOf(rest)
	if ok {
		end = len(text) - len(rest) + len(u.word)
	} else if word := leadingWord(rest); word != "" && !isKeyword(word) {
		return s.fault("unknown unit %q after %s; accepted: %s", wording.Clip(word, 20), text[s.pos:end], unitWords())
	} else {
		u.worth = 1
	}
	t := s.add(numberToken, end)
	t.num, t.dim = v*u.worth, u.dim
	return nil
}

// badAfter catches what numbers are written with elsewhere.
func (s *scanner) badAfter(end int) *Fault {
	text := s.src.Text
	if end >= len(text) {
		return nil
	}
	rest := text[end:]
	switch {
	case rest[0] == '.':
		return s.fault("write digits on both sides of one point, as 3.5")
	case (rest[0] == 'e' || rest[0] == 'E') && len(rest) > 1 && (isDigit(rest[1]) || rest[1] == '-' || rest[1] == '+'):
		return s.fault("exponents are not read; write the number out, as 1000")
	}
	return nil
}

func leadingWord(s string) string {
	n := 0
	for n < len(s) && isWord(s[n]) {
		n++
	}
	return s[:n]
}

func isKeyword(word string) bool {
	switch word {
	case "if", "then", "else", "and", "or", "not", "true", "false":
		return true
	}
	return false
}

func unitWords() string {
	var all []string
	for _, u := range units() {
		all = append(all, u.word)
	}
	return strings.Join(all, " ")
}
