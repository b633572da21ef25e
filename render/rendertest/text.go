package rendertest

import (
	"fmt"
	"math"
	"strings"
)

func (p *pen) doText(op string, v [6]float64) error {
	switch op {
	case "BT":
		if p.inText {
			return fmt.Errorf("lettering within lettering")
		}
		p.inText, p.text = true, matrix{1, 0, 0, 1, 0, 0}
	case "ET":
		p.inText = false
	case "Td":
		p.text = matrix{1, 0, 0, 1, v[0], v[1]}.before(p.text)
	}
	return nil
}

func (p *pen) setFont(name, size any) error {
	key, ok1 := name.(Name)
	n, ok2 := size.(float64)
	font, ok3 := p.file.resolve(p.fonts[key]).(Dict)
	if !ok1 || !ok2 || !ok3 || n <= 0 {
		return fmt.Errorf("no such font or size")
	}
	if font["BaseFont"] != Name("Helvetica") || font["Encoding"] != Name("WinAnsiEncoding") {
		return fmt.Errorf("a font other than Helvetica in cp1252: %v", font)
	}
	p.state.font, p.state.size, p.state.fontKnown = key, n, true
	return nil
}

func (p *pen) show(bytes string) error {
	if !p.inText || !p.state.fontKnown {
		return fmt.Errorf("lettering without a font or outside BT and ET")
	}
	words, err := fromCP1252(bytes)
	if err != nil {
		return err
	}
	m := p.text.before(p.state.ctm)
	p.page.Texts = append(p.page.Texts, Text{
		Words: words, At: m.apply(0, 0), Size: p.state.size * m.size(),
		Angle: math.Atan2(m[1], m[0]), Gray: p.state.fillGray, Clip: p.state.clip,
	})
	return nil
}

// high are the characters of the codes 0x80 to 0x9f; a space where cp1252 has
// none. Source: WHATWG, Encoding Standard, index windows-1252 (which fills the
// five gaps with controls).
const high = "\u20ac \u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152 \u017d " +
	" \u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153 \u017e\u0178"

// fromCP1252 decodes cp1252; control characters and empty codes are an error.
func fromCP1252(s string) (string, error) {
	table := []rune(high)
	var b strings.Builder
	for i := range len(s) {
		r := rune(s[i])
		if r >= 0x80 && r <= 0x9f {
			r = table[r-0x80]
			if r == ' ' {
				r = 0
			}
		}
		if r < ' ' || r == 0x7f {
			return "", fmt.Errorf("the code %#x is no character of cp1252", s[i])
		}
		b.WriteRune(r)
	}
	return b.String(), nil
}
