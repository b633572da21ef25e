package layout

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout/lettering"
)

// Part is one piece to cut from sheet stock, in its own coordinates.
type Part struct {
	Name      string
	Cut       []curve.Path // closed; holes before the outline round them
	Marks     []curve.Path // lines to draw on the piece
	Letters   []Text       // engraved
	Material  string       // what it is cut from, as "white ash"; "" when it does not matter
	Thickness float64      // of its stock, mm; 0 when it does not matter
	Grain     float64      // which way the grain runs, radians from x
	Loose     bool         // the grain does not matter: the part may lie at any angle
	Blank     curve.Path   // the piece of wood that it is sawn from, closed; nil where any sheet serves
}

// Outline returns the outer edge, which is cut last; nil for a part with none.
func (p Part) Outline() curve.Path {
	if len(p.Cut) == 0 {
		return nil
	}
	return p.Cut[len(p.Cut)-1]
}

// Engrave letters words in the middle of a stretch, at a height of capitals or as small as
// lettering.MinHeight where that fits the room; what is longer runs over several lines, the
// first of them there. Nothing is cut off.
func (p *Part) Engrave(at geometry.Point, height float64, words string, room float64) {
	words = lettering.Safe(words)
	if wide := lettering.StrokeWidth(words, height); wide > room {
		height = math.Max(lettering.MinHeight, height*room/wide)
	}
	for i, l := range lettering.WrapStrokes(words, height, math.Max(room, lettering.StrokeWidth("MM", height))) {
		p.Letters = append(p.Letters, Text{At: at.Sub(geometry.Point{Y: engraveLead * height * float64(i)}), Height: height, Align: Middle, Words: l})
	}
}

// engraveLead is the distance between engraved lines, as a share of their letters.
const engraveLead = 1.6

// Ground returns the closed edges of what the part takes of a plate: of its blank, or where
// it has none its own.
func (p Part) Ground() []curve.Path {
	if p.Blank != nil {
		return []curve.Path{p.Blank}
	}
	return p.Cut
}

// Bounds returns the box around everything the cutter touches.
func (p Part) Bounds() geometry.Box {
	b := geometry.EmptyBox()
	for _, set := range [][]curve.Path{p.Cut, p.Marks} {
		for _, c := range set {
			b = b.Union(c.Bounds())
		}
	}
	return b
}

// Placed is a part laid on a plate.
type Placed struct {
	Part Part
	Move geometry.Affine // turn and shift, never a mirror or a stretch
}

// Blank is so many pieces of wood of one size, mm: long along the grain and wide across it.
type Blank struct {
	Count      int
	Long, Wide float64
}

func (b Blank) String() string {
	return fmt.Sprintf("%d of %.5g x %.5g mm", b.Count, b.Long, b.Wide)
}

// Board is what is used of one sheet of stock on a plate, trimmed to the parts.
type Board struct {
	Box       geometry.Box   // on the plate
	Title     string         // which it is, of what
	Label     []Text         // the title, the stock and the parts, above the board
	Material  string         // "" when it does not matter
	Thickness float64        // mm; 0 when it does not matter
	Stock     geometry.Point // the size of the whole sheet, mm
	Parts     int            // how many lie on it
	Blanks    []Blank        // that they are sawn from, by their size; none where the sheet is one piece of stock
	Used      geometry.Box   // the least upright rectangle round their edges, or their blanks'
	Wood      float64        // their true area, mm²
}

// Spread returns how many times the parts' true area the rectangles round them
// take, all boards together; 0 without parts.
func (p Plate) Spread() float64 {
	used, wood := 0.0, 0.0
	for _, b := range p.Boards {
		used, wood = used+b.Used.W()*b.Used.H(), wood+b.Wood
	}
	if wood == 0 {
		return 0
	}
	return used / wood
}

// Plate is what one cutter file holds: boards side by side on a sheet of W by H
// mm, measured from its lower left corner, the parts on them, and a square to
// check the scale by.
type Plate struct {
	Title  string
	W, H   float64
	Boards []Board
	Parts  []Placed
	Check  geometry.Box
	Notes  []string // what whoever runs the cutter must know, one line each
	Machine
}

// Machine is how a plate is written for one cutter.
type Machine struct {
	Hairline float64          // width of every line, mm; 0 for one that is seen on a screen
	Colors   map[string]Color // of layers by name; black when missing
}

// Color is a colour of the screen, each part 0 to 255; the zero Color is black.
type Color struct{ R, G, B uint8 }

// The bounds of a hairline, mm. Laser drivers cut along lines up to the widest and
// engrave wider ones as areas; a line of no width is not seen at all.
const (
	LeastHairline, MostHairline = 0.025, 0.1
)

// seen is the width of a line that shows on a screen, mm: half a millimeter is two dots
// at full size.
const seen = 0.5

// Line returns the width of every line, mm.
func (m Machine) Line() float64 {
	if m.Hairline == 0 {
		return seen
	}
	return m.Hairline
}

// The layers of a cutter's file.
const (
	LayerMark    = "MARK"      // lines to draw on the parts
	LayerLetters = "LETTERING" // single strokes
	LayerCut     = "CUT"       // closed outlines
	LayerBoard   = "SHEET"     // corners of the stock and its blanks, not to be cut
	LayerScale   = "SCALE"     // a square to check the size by, not to be cut
)

// Layers returns every layer in the order they stand in the file: what is drawn
// on a part comes before it is cut loose.
func Layers() []string {
	return []string{LayerMark, LayerLetters, LayerCut, LayerBoard, LayerScale}
}

// Strokes returns the lettering as single strokes where it stands, each an open
// or closed polyline. A font would be dropped or moved by many cutters.
func (t Text) Strokes() []curve.Path { return t.StrokesMoved(geometry.Shift(0, 0)) }

// StrokesMoved returns what Strokes does, moved.
func (t Text) StrokesMoved(move geometry.Affine) []curve.Path {
	back := lettering.StrokeWidth(t.Words, t.Height) * [...]float64{0, 0.5, 1}[t.Align]
	place := geometry.Shift(-back, 0).Then(geometry.Turn(t.Angle)).Then(geometry.Shift(t.At.X, t.At.Y))
	var out []curve.Path
	for _, pts := range lettering.Strokes(t.Words, t.Height) {
		for i, p := range pts {
			pts[i] = move.Apply(place.Apply(p))
		}
		out = append(out, curve.Polyline(pts...))
	}
	return out
}

// Area returns the area of wood in the part, mm², holes taken off.
func (p Part) Area() float64 {
	const chord = 0.001 // mm
	sum := 0.0
	for i, c := range p.Cut {
		a := math.Abs(curve.Area(c.Flatten(chord)))
		if i < len(p.Cut)-1 {
			a = -a
		}
		sum += a
	}
	return sum
}

// Mapped returns the part moved by m, a turn or a shift; p is left as it is.
func (p Part) Mapped(m geometry.Affine) Part {
	turn := math.Atan2(m.B, m.A)
	paths := func(in []curve.Path) []curve.Path {
		var out []curve.Path
		for _, c := range in {
			out = append(out, c.Map(m))
		}
		return out
	}
	p.Cut, p.Marks, p.Grain = paths(p.Cut), paths(p.Marks), p.Grain+turn
	if p.Blank != nil {
		p.Blank = p.Blank.Map(m)
	}
	letters := p.Letters
	p.Letters = nil
	for _, t := range letters {
		t.At, t.Angle = m.Apply(t.At), t.Angle+turn
		p.Letters = append(p.Letters, t)
	}
	return p
}
