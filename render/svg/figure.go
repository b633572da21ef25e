package svg

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	svg "github.com/ajstarks/svgo/float"

	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/plate/trace"
	"ribwright/render"
)

// air is left round a figure, mm.
const air = 3

// EncodeFigure writes a drawing to be looked at, not cut: a curve, a profile, a
// stack of boats. One unit is one millimetre as drawn; about says in words what
// is to be seen, for those who cannot see it.
//
// Errors: a drawing with nothing in it, a number that is no place, or the
// writer's own error. Nothing is written unless all is made.
func EncodeFigure(w io.Writer, d layout.Drawing, about string) error {
	out, err := figure(d, about)
	if err == nil {
		_, err = io.WriteString(w, out)
	}
	return err
}

// EncodeInline writes what EncodeFigure does as an element to stand in a page: no
// declaration before it, and the role of a picture for readers of the page.
func EncodeInline(w io.Writer, d layout.Drawing, about string) error {
	out, err := figure(d, about)
	if err != nil {
		return err
	}
	const open = "<svg"
	_, element, ok := strings.Cut(out, open)
	if !ok {
		return errors.New("the figure came out without its element; please report this")
	}
	_, err = io.WriteString(w, open+` role="img"`+strings.TrimRight(element, "\n"))
	return err
}

func figure(d layout.Drawing, about string) (string, error) {
	b := d.Bounds()
	if b.Empty() {
		return "", errors.New("a figure with nothing in it")
	}
	if err := render.CheckDrawing(d); err != nil {
		return "", err
	}
	e := &encoder{}
	c := e.begin(b.Grow(air), d.Title, about)
	for _, s := range d.Strokes {
		if !trace.Pointlike(s.Path) {
			c.Path(e.data(s.Path), penStyle(s.Pen))
		}
	}
	for _, t := range d.Texts {
		e.text(c, t)
	}
	c.End()
	return e.out.String(), nil
}

// penStyle gives a line the weight and dash it has on paper.
func penStyle(p layout.Pen) string {
	style := fmt.Sprintf(`fill="none" stroke="#000000" stroke-width="%s"`, render.Number(p.Width(), 3))
	if dash := p.Dash(); dash != nil {
		style += fmt.Sprintf(` stroke-dasharray="%s"`, strings.Trim(fmt.Sprint(dash), "[]"))
	}
	return style
}

// text writes lettering as text, which a screen shows sharp and a reader
// can search; its height is that of capitals.
func (e *encoder) text(c *svg.SVG, t layout.Text) {
	anchor := [...]string{"start", "middle", "end"}[t.Align]
	style := fmt.Sprintf(`font-family="Helvetica, Arial, sans-serif" font-size="%s" text-anchor="%s"`,
		render.Number(t.Height/lettering.CapHeight, 3), anchor)
	x, y := t.At.X-e.left, e.high-t.At.Y
	if t.Angle != 0 {
		style += fmt.Sprintf(` transform="rotate(%s %s %s)"`, render.Number(-t.Angle*180/math.Pi, 3), render.Number(x, 3), render.Number(y, 3))
	}
	c.Text(x, y, t.Words, style)
}
