package rendertest

import (
	"fmt"
	"strconv"
	"strings"
)

// Name is a PDF name without its slash.
type Name string

// Ref points at a numbered object.
type Ref struct{ Number, Generation int }

// Dict is a PDF dictionary. A key that stands in it twice is an error.
type Dict map[Name]any

// operator is a bare word: obj, endobj, or a drawing operator.
type operator string

// scanner reads PDF values one after another (ISO 32000-1, 7.2 and 7.3). The
// values are float64, string (its bytes), Name, Ref, Dict, []any, bool, nil and
// operator.
type scanner struct {
	src  []byte
	pos  int
	refs bool // "7 0 R" is a reference, as everywhere but in page content
}

func isSpace(c byte) bool { return strings.IndexByte("\x00\t\n\f\r ", c) >= 0 }
func isDelim(c byte) bool { return strings.IndexByte("()<>[]{}/%", c) >= 0 }

func (s *scanner) skip() {
	for s.pos < len(s.src) {
		switch c := s.src[s.pos]; {
		case isSpace(c):
			s.pos++
		case c == '%':
			for s.pos < len(s.src) && s.src[s.pos] != '\n' && s.src[s.pos] != '\r' {
				s.pos++
			}
		default:
			return
		}
	}
}

// done reports whether nothing but space is left.
func (s *scanner) done() bool { s.skip(); return s.pos >= len(s.src) }

func (s *scanner) starts(w string) bool {
	return s.pos+len(w) <= len(s.src) && string(s.src[s.pos:s.pos+len(w)]) == w
}

// word reads up to the next space or delimiter.
func (s *scanner) word() string {
	from := s.pos
	for s.pos < len(s.src) && !isSpace(s.src[s.pos]) && !isDelim(s.src[s.pos]) {
		s.pos++
	}
	return string(s.src[from:s.pos])
}

// value reads the next value.
func (s *scanner) value() (any, error) {
	if s.done() {
		return nil, fmt.Errorf("the file ends where a value is due")
	}
	switch c := s.src[s.pos]; {
	case c == '/':
		s.pos++
		return s.name()
	case c == '(':
		return s.literal()
	case s.starts("<<"):
		s.pos += 2
		return s.dict()
	case c == '<':
		return s.hex()
	case c == '[':
		s.pos++
		return s.array()
	case isDelim(c):
		return nil, fmt.Errorf("a stray %q at byte %d", c, s.pos)
	case c >= '0' && c <= '9' || c == '-' || c == '+' || c == '.':
		return s.number()
	}
	switch w := s.word(); w {
	case "true", "false":
		return w == "true", nil
	case "null":
		return nil, nil
	default:
		return operator(w), nil
	}
}

// number reads a plain decimal: PDF knows neither exponents nor infinities.
func (s *scanner) number() (any, error) {
	at, w := s.pos, s.word()
	v, err := strconv.ParseFloat(w, 64)
	if err != nil || strings.Trim(w, "+-.0123456789") != "" {
		return nil, fmt.Errorf("%q at byte %d is no number", w, at)
	}
	if n := int(v); s.refs && float64(n) == v {
		if r, ok := s.reference(n); ok {
			return r, nil
		}
	}
	return v, nil
}

// reference reads "GENERATION R" after an object's number, if that follows.
func (s *scanner) reference(number int) (Ref, bool) {
	back := s.pos
	s.skip()
	generation, err := strconv.Atoi(s.word())
	s.skip()
	if err != nil || s.word() != "R" {
		s.pos = back
		return Ref{}, false
	}
	return Ref{number, generation}, true
}

func (s *scanner) array() ([]any, error) {
	var out []any
	for {
		if s.done() {
			return nil, fmt.Errorf("an array is not closed")
		}
		if s.src[s.pos] == ']' {
			s.pos++
			return out, nil
		}
		v, err := s.value()
		if err != nil {
			return nil, err
		}
		out = append(out, v)
	}
}

func (s *scanner) dict() (Dict, error) {
	out := Dict{}
	for {
		if s.done() {
			return nil, fmt.Errorf("a dictionary is not closed")
		}
		if s.starts(">>") {
			s.pos += 2
			return out, nil
		}
		k, err := s.value()
		if err != nil {
			return nil, err
		}
		key, ok := k.(Name)
		if !ok {
			return nil, fmt.Errorf("%v stands where a dictionary needs a key", k)
		}
		if _, twice := out[key]; twice {
			return nil, fmt.Errorf("the key /%s stands twice in a dictionary", key)
		}
		if out[key], err = s.value(); err != nil {
			return nil, err
		}
	}
}
