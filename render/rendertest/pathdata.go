package rendertest

import (
	"fmt"
	"strconv"
	"strings"
)

// readPath reads path data of absolute M, L, C and Z (SVG 1.1, 8.3), measured
// in mm with y up.
func (s *SVG) readPath(d string) ([]Outline, error) {
	r := &pathReader{svg: s}
	for rest := d; ; {
		rest = strings.TrimLeft(rest, " ,\t\r\n")
		if rest == "" {
			return r.out, r.check()
		}
		n := strings.IndexAny(rest[1:], "MLCZmlczHhVvSsQqTtAa") + 1
		if n == 0 {
			n = len(rest)
		}
		numbers, err := readNumbers(rest[1:n])
		if err == nil {
			err = r.command(rest[0], numbers)
		}
		if err != nil {
			return nil, fmt.Errorf("%q: %w", rest[:n], err)
		}
		rest = rest[n:]
	}
}

// readNumbers reads plain decimals; an exponent, NaN or Inf is an error.
func readNumbers(s string) ([]float64, error) {
	var out []float64
	for _, f := range strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" ,\t\r\n", r) }) {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil || strings.Trim(f, "-.0123456789") != "" {
			return nil, fmt.Errorf("%q is no plain number", f)
		}
		out = append(out, v)
	}
	return out, nil
}

type pathReader struct {
	svg  *SVG
	out  []Outline
	here Point
	from Point
	open bool
}

// at turns user units into mm from the lower left corner.
func (r *pathReader) at(x, y float64) Point {
	v := r.svg.ViewBox
	return Point{(x - v[0]) * r.svg.W / v[2], r.svg.H - (y-v[1])*r.svg.H/v[3]}
}

func (r *pathReader) command(c byte, v []float64) error {
	step, known := map[byte]int{'M': 2, 'L': 2, 'C': 6, 'Z': 0}[c]
	switch {
	case !known:
		return fmt.Errorf("a command other than M, L, C and Z")
	case c != 'M' && !r.open:
		return fmt.Errorf("no place to draw from")
	case c == 'Z' && len(v) > 0, c != 'Z' && (len(v) == 0 || len(v)%step != 0), c == 'M' && len(v) != 2:
		return fmt.Errorf("%d numbers", len(v))
	case c == 'M':
		r.here, r.open = r.at(v[0], v[1]), true
		r.from = r.here
		r.out = append(r.out, Outline{})
	case c == 'Z':
		if r.here != r.from {
			r.add(Piece{To: r.from})
		}
		r.out[len(r.out)-1].Closed, r.open = true, false
	}
	for i := 0; c == 'L' && i < len(v); i += 2 {
		r.add(Piece{To: r.at(v[i], v[i+1])})
	}
	for i := 0; c == 'C' && i < len(v); i += 6 {
		r.add(Piece{C1: r.at(v[i], v[i+1]), C2: r.at(v[i+2], v[i+3]), To: r.at(v[i+4], v[i+5]), Curved: true})
	}
	return nil
}

func (r *pathReader) add(p Piece) {
	p.From, r.here = r.here, p.To
	last := &r.out[len(r.out)-1]
	last.Pieces = append(last.Pieces, p)
}

// check looks whether every outline draws something.
func (r *pathReader) check() error {
	for _, o := range r.out {
		if len(o.Pieces) == 0 {
			return fmt.Errorf("an outline of a single point")
		}
	}
	if len(r.out) == 0 {
		return fmt.Errorf("an empty path")
	}
	return nil
}
