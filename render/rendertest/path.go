package rendertest

import (
	"fmt"
	"math"
)

func (p *pen) doPath(op string, v [6]float64) error {
	at := func(i int) Point { return p.state.ctm.apply(v[i], v[i+1]) }
	switch op {
	case "m":
		p.moveTo(at(0))
	case "l":
		return p.add(Piece{To: at(0)})
	case "c":
		return p.add(Piece{C1: at(0), C2: at(2), To: at(4), Curved: true})
	case "h":
		return p.close()
	case "re":
		m := p.state.ctm
		p.moveTo(m.apply(v[0], v[1]))
		for _, q := range []Point{m.apply(v[0]+v[2], v[1]), m.apply(v[0]+v[2], v[1]+v[3]), m.apply(v[0], v[1]+v[3])} {
			if err := p.add(Piece{To: q}); err != nil {
				return err
			}
		}
		return p.close()
	case "W":
		p.clip = true
	case "S":
		if len(p.path) == 0 {
			return fmt.Errorf("nothing to draw")
		}
		p.stroke()
		return p.endPath()
	case "n":
		return p.endPath()
	}
	return nil
}

func (p *pen) moveTo(q Point) {
	p.start, p.here, p.open = q, q, true
	p.path = append(p.path, Outline{})
}

// add draws on from where the pen is.
func (p *pen) add(piece Piece) error {
	if !p.open {
		return fmt.Errorf("no place to draw from")
	}
	piece.From, p.here = p.here, piece.To
	last := &p.path[len(p.path)-1]
	last.Pieces = append(last.Pieces, piece)
	return nil
}

func (p *pen) close() error {
	if !p.open {
		return fmt.Errorf("no outline to close")
	}
	if p.here != p.start {
		if err := p.add(Piece{To: p.start}); err != nil {
			return err
		}
	}
	p.path[len(p.path)-1].Closed = true
	p.open = false
	return nil
}

func (p *pen) stroke() {
	k := p.state.ctm.size()
	s := Stroke{Outlines: p.path, Width: p.state.width * k, Gray: p.state.gray, Clip: p.state.clip}
	for _, d := range p.state.dash {
		s.Dash = append(s.Dash, d*k)
	}
	p.page.Strokes = append(p.page.Strokes, s)
}

// endPath forgets the path; after W it becomes the clip, within the one before.
func (p *pen) endPath() error {
	path, clip := p.path, p.clip
	p.path, p.clip, p.open = nil, false, false
	if !clip {
		return nil
	}
	if len(path) != 1 {
		return fmt.Errorf("a clip of %d outlines", len(path))
	}
	b, ok := path[0].Rectangle(1e-6)
	if !ok {
		return fmt.Errorf("a clip that is no upright rectangle")
	}
	p.state.clip = p.state.clip.Meet(b)
	return nil
}

// Rectangle returns the box a closed outline draws, if it is an upright
// rectangle of four straight sides, to tol mm.
func (o Outline) Rectangle(tol float64) (Box, bool) {
	c := o.Corners()
	if !o.Closed || len(c) != 4 || !o.Straight() {
		return Box{}, false
	}
	near := func(a, b float64) bool { return math.Abs(a-b) <= tol }
	level := near(c[0].Y, c[1].Y) && near(c[1].X, c[2].X) && near(c[2].Y, c[3].Y) && near(c[3].X, c[0].X)
	upright := near(c[0].X, c[1].X) && near(c[1].Y, c[2].Y) && near(c[2].X, c[3].X) && near(c[3].Y, c[0].Y)
	return Around(c...), level || upright
}

// doMixed does the operators that take more than numbers.
func (p *pen) doMixed(op string, args []any) error {
	switch {
	case op == "d" && len(args) == 2:
		dash, ok := args[0].([]any)
		if phase, isNumber := args[1].(float64); !ok || !isNumber || phase != 0 {
			return fmt.Errorf("dashes start at the start of a line")
		}
		p.state.dash = nil // a new list: the saved states keep theirs
		for _, d := range dash {
			n, ok := d.(float64)
			if !ok || n <= 0 {
				return fmt.Errorf("a dash of %v", d)
			}
			p.state.dash = append(p.state.dash, n)
		}
		return nil
	case op == "Tf" && len(args) == 2:
		return p.setFont(args[0], args[1])
	case op == "Tj" && len(args) == 1:
		if s, ok := args[0].(string); ok {
			return p.show(s)
		}
	}
	return fmt.Errorf("not the values it takes")
}
