package rendertest

import (
	"fmt"
	"strconv"
	"strings"
)

// name reads a name after its slash; #41 stands for A.
func (s *scanner) name() (Name, error) {
	w := s.word()
	var b strings.Builder
	for i := 0; i < len(w); i++ {
		if w[i] != '#' {
			b.WriteByte(w[i])
			continue
		}
		if i+2 >= len(w) {
			return "", fmt.Errorf("the name %q ends inside a code", w)
		}
		v, err := strconv.ParseUint(w[i+1:i+3], 16, 8)
		if err != nil {
			return "", fmt.Errorf("the name %q holds a broken code", w)
		}
		b.WriteByte(byte(v))
		i += 2
	}
	return Name(b.String()), nil
}

// literal reads a string in parentheses with its escapes (ISO 32000-1, 7.3.4.2).
func (s *scanner) literal() (string, error) {
	from := s.pos
	s.pos++
	var b strings.Builder
	for depth := 1; s.pos < len(s.src); s.pos++ {
		switch c := s.src[s.pos]; c {
		case '\\':
			s.pos++
			s.escape(&b)
			continue
		case '(':
			depth++
		case ')':
			if depth--; depth == 0 {
				s.pos++
				return b.String(), nil
			}
		case '\r': // any end of line reads as one line feed
			if s.pos+1 < len(s.src) && s.src[s.pos+1] == '\n' {
				s.pos++
			}
			b.WriteByte('\n')
			continue
		}
		b.WriteByte(s.src[s.pos])
	}
	return "", fmt.Errorf("the string at byte %d is not closed", from)
}

// escape reads what follows a backslash and stays on its last byte.
func (s *scanner) escape(b *strings.Builder) {
	if s.pos >= len(s.src) {
		return
	}
	c := s.src[s.pos]
	if i := strings.IndexByte("nrtbf", c); i >= 0 {
		b.WriteByte("\n\r\t\b\f"[i])
		return
	}
	switch {
	case c == '\r':
		if s.pos+1 < len(s.src) && s.src[s.pos+1] == '\n' {
			s.pos++
		}
	case c == '\n': // the line goes on
	case c >= '0' && c <= '7':
		v, n := 0, 0
		for n < 3 && s.pos+n < len(s.src) && s.src[s.pos+n] >= '0' && s.src[s.pos+n] <= '7' {
			v = v*8 + int(s.src[s.pos+n]-'0')
			n++
		}
		s.pos += n - 1
		b.WriteByte(byte(v))
	default:
		b.WriteByte(c)
	}
}

// hex reads a string in angle brackets; a missing last digit is 0.
func (s *scanner) hex() (string, error) {
	end := strings.IndexByte(string(s.src[s.pos:]), '>')
	if end < 0 {
		return "", fmt.Errorf("the string at byte %d is not closed", s.pos)
	}
	digits := strings.Join(strings.Fields(string(s.src[s.pos+1:s.pos+end])), "")
	s.pos += end + 1
	if len(digits)%2 == 1 {
		digits += "0"
	}
	var b strings.Builder
	for i := 0; i < len(digits); i += 2 {
		v, err := strconv.ParseUint(digits[i:i+2], 16, 8)
		if err != nil {
			return "", fmt.Errorf("%q is no hexadecimal string", digits)
		}
		b.WriteByte(byte(v))
	}
	return b.String(), nil
}
