package svg

import (
	"bytes"
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

const air = 3

// EncodeFigure writes a drawing to be looked at, not cut: a curve, a profile, a
// stack of boats. One unit is one millimeter as drawn; about says in words what
// is to be seen, for those who cannot see it.
// Errors: a drawing with nothing in it, a number that is no place, or the
// writer's own error. Nothing is written unless all is made.
func EncodeFigure(w io.Writer, d layout.Drawing, about string) error {
	var out bytes.Buffer
	if err := figure(&out, d, about); err != nil {
		return err
	}
	_, err := w.Write(out.Bytes())
	return err
}

// EncodeInline writes what EncodeFigure does as an element to stand in a page: no
// declaration before it, and the role of a picture for readers of the page.
func EncodeInline(w io.Writer, d layout.Drawing, about string) error {
	var out bytes.Buffer
	if err := figure(&out, d, about); err != nil {
		return err
	}
	const open = "<svg"
	_, element, ok := strings.Cut(out.String(), open)
	if !ok {
		return errors.New("the figure came out without its element; please report this")
	}
	_, err := io.WriteString(w, open+` role="img"`+strings.TrimRight(element, "\n"))
	return err
}

func figure(out *bytes.Buffer, d layout.Drawing, about string) error {
	b := d.Bounds()
	if b.Empty() {
		return errors.New("a figure with nothing in it")
	}
	if err := render.CheckDrawing(d); err != nil {
		return err
	}
	b = b.Grow(air)
	c := svg.New(out)
	c.Decimals = decimals
	c.StartviewUnit(b.W(), b.H(), "mm", 0, 0, b.W(), b.H())
	c.Title(lettering.Safe(d.Title))
	c.Desc(lettering.Safe(about))
	e := &encoder{svg: c, left: b.Min.X, high: b.Max.Y}
	for _, s := range d.Strokes {
		if !trace.Pointlike(s.Path) {
			c.Path(e.data(s.Path), penStyle(s.Pen))
		}
	}
	for _, t := range d.Texts {
		e.figureText(t)
	}
	c.End()
	return nil
}

// penStyle gives a line the weight and dash it has on paper.
func penStyle(p layout.Pen) string {
	style := fmt.Sprintf(`fill="none" stroke="#000000" stroke-width="%s"`, render.Number(p.Width(), 3))
	if p.Dash() == nil {
		return style
	}
	var dash []string
	for _, d := range p.Dash() {
		dash = append(dash, render.Number(d, 3))
	}
	return style + fmt.Sprintf(` stroke-dasharray="%s"`, strings.Join(dash, " "))
}

// figureText writes lettering as text, which a screen shows sharp and a reader
// can search; its height is that of capitals.
func (e *encoder) figureText(t layout.Text) {
	anchor := [...]string{"start", "middle", "end"}[t.Align]
	style := fmt.Sprintf(`font-family="Helvetica, Arial, sans-serif" font-size="%s" text-anchor="%s"`,
		render.Number(t.Height/lettering.CapHeight, 3), anchor)
	x, y := t.At.X-e.left, e.high-t.At.Y
	if t.Angle != 0 {
		style += fmt.Sprintf(` transform="rotate(%s %s %s)"`, render.Number(-t.Angle*180/math.Pi, 3), render.Number(x, 3), render.Number(y, 3))
	}
	e.svg.Text(x, y, t.Words, style)
}
