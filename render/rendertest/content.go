package rendertest

import (
	"fmt"
	"math"
)

// matrix takes (x, y) to (a x + c y + e, b x + d y + f).
type matrix [6]float64

func (m matrix) apply(x, y float64) Point {
	return Point{m[0]*x + m[2]*y + m[4], m[1]*x + m[3]*y + m[5]}
}

// before returns the transform that does m first and n after it.
func (m matrix) before(n matrix) matrix {
	return matrix{
		m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3],
		m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3],
		m[4]*n[0] + m[5]*n[2] + n[4], m[4]*n[1] + m[5]*n[3] + n[5],
	}
}

// size returns by how much m makes lengths larger.
func (m matrix) size() float64 { return math.Sqrt(math.Abs(m[0]*m[3] - m[1]*m[2])) }

// state is what q saves and Q gives back.
type state struct {
	ctm      matrix
	clip     Box
	width    float64
	dash     []float64
	gray     float64
	fillGray float64
	font     *font
	size     float64
}

// pen interprets page content (ISO 32000-1, annex A, the part our writers use).
type pen struct {
	file   *PDF
	page   *Page
	fonts  Dict
	state  state
	saved  []state
	path   []Outline
	start  Point // of the outline being drawn
	here   Point
	open   bool // an outline has been started and may go on
	clip   bool // W was seen, the path becomes the clip
	inText bool
	text   matrix
}

// draw runs the content of a page and puts what it draws on the page.
func (f *PDF) draw(page *Page, src []byte, resources any, origin Point) error {
	p := &pen{file: f, page: page, state: state{
		ctm:  matrix{mmPerPoint, 0, 0, mmPerPoint, -origin.X, -origin.Y},
		clip: Box{0, 0, page.W, page.H}, width: 1,
	}}
	if r, ok := f.resolve(resources).(Dict); ok {
		p.fonts, _ = f.resolve(r["Font"]).(Dict)
	}
	s := &scanner{src: src}
	var args []any
	for !s.done() {
		v, err := s.value()
		if err != nil {
			return err
		}
		op, isOp := v.(operator)
		if !isOp {
			args = append(args, v)
			continue
		}
		if err := p.do(string(op), args); err != nil {
			return fmt.Errorf("%v %s: %w", args, op, err)
		}
		args = args[:0]
	}
	if len(p.saved) > 0 || p.inText || len(p.path) > 0 || len(args) > 0 {
		return fmt.Errorf("the content ends with something left open")
	}
	return nil
}

// takes is the number of numbers each operator takes.
var takes = map[string]int{
	"q": 0, "Q": 0, "cm": 6, "w": 1, "G": 1, "g": 1, "J": 1, "j": 1,
	"m": 2, "l": 2, "c": 6, "h": 0, "re": 4, "S": 0, "W": 0, "n": 0,
	"BT": 0, "ET": 0, "Td": 2,
}

func (p *pen) do(op string, args []any) error {
	switch op {
	case "d", "Tf", "Tj":
		return p.doMixed(op, args)
	}
	want, known := takes[op]
	if !known {
		return fmt.Errorf("an operator that is not expected")
	}
	if len(args) != want {
		return fmt.Errorf("%d values, not %d", len(args), want)
	}
	var v [6]float64
	for i, a := range args {
		n, ok := a.(float64)
		if !ok {
			return fmt.Errorf("%v is no number", a)
		}
		v[i] = n
	}
	switch op {
	case "q", "Q", "cm", "w", "G", "g", "J", "j":
		return p.doState(op, v)
	case "BT", "ET", "Td":
		return p.doText(op, v)
	}
	return p.doPath(op, v)
}

func (p *pen) doState(op string, v [6]float64) error {
	switch op {
	case "q":
		p.saved = append(p.saved, p.state)
	case "Q":
		if len(p.saved) == 0 {
			return fmt.Errorf("nothing was saved")
		}
		p.state = p.saved[len(p.saved)-1]
		p.saved = p.saved[:len(p.saved)-1]
	case "cm":
		p.state.ctm = matrix(v).before(p.state.ctm)
	case "w":
		p.state.width = v[0]
	case "G":
		p.state.gray = v[0]
	case "g":
		p.state.fillGray = v[0]
	case "J":
		if v[0] != 0 {
			return fmt.Errorf("ends of lines are to be plain")
		}
	case "j":
		if v[0] != 0 && v[0] != 1 {
			return fmt.Errorf("corners of lines are to be plain or round")
		}
	}
	return nil
}
