package nest

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// sheet is a laid board in its own corner, with its parts.
type sheet struct {
	layout.Board
	laid []layout.Placed
}

// trimmed makes a sheet of what is used of a board: from its corner to the gap beyond the
// farthest part.
func (o Options) trimmed(laid []layout.Placed) sheet {
	s := sheet{laid: laid}
	s.Parts, s.Used, s.Stock = len(laid), geometry.EmptyBox(), geometry.Pt(o.Stock.W, o.Stock.H)
	for _, q := range laid {
		ground := q.Part.Ground()
		s.Used, s.Wood = s.Used.Union(ground[len(ground)-1].Map(q.Move).Bounds()), s.Wood+q.Part.Area()
	}
	s.Blanks = blanks(laid)
	s.Box = geometry.Rect(0, 0, math.Min(o.Stock.W, s.Used.Max.X+o.Gap), math.Min(o.Stock.H, s.Used.Max.Y+o.Gap))
	if o.ByThickness {
		s.Material, s.Thickness = laid[0].Part.Material, laid[0].Part.Thickness
	}
	return s
}

// blanks lists the blanks of the parts by their size, those of one size once; nil where not
// every part has one.
func blanks(laid []layout.Placed) []layout.Blank {
	var out []layout.Blank
	for _, q := range laid {
		b := q.Part.Blank
		if b == nil {
			return nil
		}
		one := layout.Blank{Count: 1, Long: b[0].Length(), Wide: b[1].Length()}
		const same = 0.05 // mm, as the sizes are lettered
		i := slices.IndexFunc(out, func(o layout.Blank) bool {
			return math.Abs(o.Long-one.Long) < same && math.Abs(o.Wide-one.Wide) < same
		})
		if i < 0 {
			out = append(out, one)
			continue
		}
		out[i].Count++
	}
	return out
}

// How boards lie apart on a plate, and the least width that their labels are broken to, mm.
const (
	between   = 50.0
	leastWide = 250.0
)

// arranged lays the sheets side by side on one plate, each under its label, with the square
// to check the size by at the end.
func (o Options) arranged(title string, all []sheet) layout.Plate {
	out := layout.Plate{Title: title}
	x := 0.0
	for i, s := range all {
		b := s.Board
		b.Box, b.Used = moved(b.Box, x), moved(b.Used, x)
		wide, high := label(&b, title, fmt.Sprintf("plate %d of %d", i+1, len(all)), s.laid)
		for _, q := range s.laid {
			q.Move = q.Move.Then(geometry.Shift(x, 0))
			out.Parts = append(out.Parts, q)
		}
		out.Boards = append(out.Boards, b)
		out.H = math.Max(out.H, b.Box.H()+high)
		x += math.Max(b.Box.W(), wide) + between
	}
	out.Check = checkAt(x)
	out.W, out.H = out.Check.Max.X+checkAir, math.Max(out.H, out.Check.Max.Y+checkAir)
	return out
}

func moved(b geometry.Box, x float64) geometry.Box {
	return geometry.Rect(b.Min.X+x, b.Min.Y, b.Max.X+x, b.Max.Y)
}

// label letters above a board which it is, what it is cut from and which parts lie on it,
// and returns how wide and how high that is, mm.
func label(b *layout.Board, boat, which string, laid []layout.Placed) (wide, high float64) {
	b.Title = which
	if what := stuff(*b); what != "" {
		b.Title += ": " + what
	}
	lines := []struct {
		high  float64
		words string
	}{
		{8, boat + ", " + b.Title},
		{5, From(*b)},
		{5, strings.Join(counted(laid), ", ")},
	}
	const air = 5.0
	high = air
	room := math.Max(b.Box.W(), leastWide)
	for _, l := range slices.Backward(lines) {
		for _, words := range slices.Backward(lettering.WrapStrokes(l.words, l.high, room)) {
			b.Label = append(b.Label, layout.Text{At: geometry.Pt(b.Box.Min.X, b.Box.Max.Y+high), Height: l.high, Words: words})
			wide, high = math.Max(wide, lettering.StrokeWidth(words, l.high)), high+l.high+air
		}
	}
	return wide, high
}

// From says how much of which stock a board is.
func From(b layout.Board) string {
	stock, run := Stock{b.Stock.X, b.Stock.Y}, "upright"
	if stock.Grain() == 0 {
		run = "level"
	}
	if b.Blanks != nil {
		return fmt.Sprintf("lay the blanks where they are drawn: %s, grain %s", wording.List(b.Blanks, layout.Blank.String), run)
	}
	return fmt.Sprintf("%.0f x %.0f mm of stock of %v, grain %s", math.Ceil(b.Box.W()), math.Ceil(b.Box.H()), stock, run)
}

// stuff says what a board is of, as "white ash, 20 mm".
func stuff(b layout.Board) string {
	var out []string
	if b.Material != "" {
		out = append(out, b.Material)
	}
	if b.Thickness > 0 {
		out = append(out, fmt.Sprintf("%.4g mm", b.Thickness))
	}
	return strings.Join(out, ", ")
}

// counted names the parts of a board, those of one name once with their number.
func counted(laid []layout.Placed) []string {
	var out []string
	count := map[string]int{}
	for _, q := range laid {
		if count[q.Part.Name]++; count[q.Part.Name] == 1 {
			out = append(out, q.Part.Name)
		}
	}
	for i, name := range out {
		if n := count[name]; n > 1 {
			out[i] = fmt.Sprintf("%d x %s", n, name)
		}
	}
	return out
}

// Each makes a plate of its own of every board.
func Each(p layout.Plate) []layout.Plate {
	var out []layout.Plate
	first := 0
	for i, b := range p.Boards {
		one := p
		one.Title = p.Title + ", " + b.Title
		one.Boards, one.Parts = nil, nil
		left := b.Box.Min.X
		b.Box, b.Used = moved(b.Box, -left), moved(b.Used, -left)
		b.Label = slices.Clone(b.Label)
		wide, high := b.Box.W(), b.Box.H()
		for k := range b.Label {
			t := &b.Label[k]
			t.At.X -= left
			wide, high = math.Max(wide, lettering.StrokeWidth(t.Words, t.Height)), math.Max(high, t.At.Y+2*t.Height)
		}
		for _, q := range p.Parts[first : first+p.Boards[i].Parts] {
			q.Move = q.Move.Then(geometry.Shift(-left, 0))
			one.Parts = append(one.Parts, q)
		}
		first += b.Parts
		one.Boards = []layout.Board{b}
		one.Check = checkAt(wide + between)
		one.W, one.H = one.Check.Max.X+checkAir, math.Max(high, one.Check.Max.Y+checkAir)
		out = append(out, one)
	}
	return out
}

// The square that shows whether a file has come through at its true size: its side, and
// what is free round it, mm.
const (
	checkSide = 100.0
	checkAir  = 12.0
)

func checkAt(x float64) geometry.Box {
	return geometry.Rect(x, checkAir, x+checkSide, checkAir+checkSide)
}
