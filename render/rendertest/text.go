package rendertest

import (
	"fmt"
	"math"
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
	at, ok3 := p.fonts[key].(Ref)
	if !ok1 || !ok2 || !ok3 || n <= 0 {
		return fmt.Errorf("no such font or size")
	}
	if p.file.fonts[at.Number] == nil {
		d, _ := p.file.resolve(at).(Dict)
		f, err := p.file.font(d)
		if err != nil {
			return err
		}
		p.file.fonts[at.Number] = f
	}
	p.state.font, p.state.size = p.file.fonts[at.Number], n
	return nil
}

func (p *pen) show(bytes string) error {
	if !p.inText || p.state.font == nil {
		return fmt.Errorf("lettering without a font or outside BT and ET")
	}
	words, thousandths, err := p.state.font.read(bytes)
	if err != nil {
		return err
	}
	m := p.text.before(p.state.ctm)
	size := p.state.size * m.size()
	p.page.Texts = append(p.page.Texts, Text{
		Words: words, At: m.apply(0, 0), Size: size, advance: thousandths / 1000 * size,
		Angle: math.Atan2(m[1], m[0]), Gray: p.state.fillGray, Clip: p.state.clip,
	})
	return nil
}
