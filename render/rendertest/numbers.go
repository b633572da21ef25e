package rendertest

import (
	"encoding/json"
	"fmt"
	"math"
)

// Numbers is the part of a NAME-numbers.json that tests check, under its own
// names for things. Lengths are mm, sweeps degrees.
type Numbers struct {
	Hull struct {
		Spreaders []Spreader `json:"spreaders"`
	} `json:"hull"`
	Gunwale struct {
		Ends     [2]float64   `json:"ends_mm"`
		Height   float64      `json:"height_mm"`
		EdgeSets []EdgeSet    `json:"edge_set"`
		Line     [][3]float64 `json:"line_mm"`
		Mortises []Mortise    `json:"mortises"`
	} `json:"gunwale"`
	Ribs        []Rib    `json:"ribs"`
	Stems       []Flat   `json:"stems"`
	Breasthooks []Flat   `json:"breasthooks"`
	Thwarts     []Flat   `json:"thwarts"`
	Keel        Batten   `json:"keel"`
	Stringers   []Batten `json:"stringers"`
	Pages       []View   `json:"pages"`
}

// Spreader is one place where the gunwales are held while they are bent.
type Spreader struct {
	Station float64 `json:"station_mm"`
	Beam    float64 `json:"beam_mm"`
	Holds   string  `json:"holds"`
	Force   float64 `json:"force_n"`
}

// EdgeSet is the part of the sheer at one end that the stock is curved to in its tall way,
// a parabola; what is not made beforehand is bent to the radius where it begins, nil
// without any.
type EdgeSet struct {
	End    string   `json:"end"`
	Rise   float64  `json:"rise_mm"`
	Made   float64  `json:"made_mm"`
	Radius *float64 `json:"radius_mm"`
}

// Shift returns how far outward a mark on the underside of stock of the given height
// moves when the set is sprung in, mm: the mark lies at a distance of the gunwale's end
// inward. The parabola with radius R rises by run²/2R, its slope is the way along it
// over R.
func (e EdgeSet) Shift(inward, height float64) float64 {
	if e.Radius == nil {
		return 0
	}
	run := math.Sqrt(2 * (e.Rise - e.Made) * *e.Radius)
	return height / 2 * math.Max(0, run-inward) / *e.Radius
}

// Mortise is one slot in the gunwale.
type Mortise struct {
	Rib         string  `json:"rib"`
	Station     float64 `json:"station_mm"`
	FromMidship float64 `json:"from_midship_mm"`
	AlongLine   float64 `json:"along_line_mm"`
	Length      float64 `json:"length_mm"`
	Width       float64 `json:"width_mm"`
}

// Slot returns what the mortise fills on the gunwale strip: x from midship, y
// across the stock from its middle line.
func (m Mortise) Slot() Box {
	return Box{m.FromMidship - m.Length/2, -m.Width / 2, m.FromMidship + m.Length/2, m.Width / 2}
}

// Rib is one rib.
type Rib struct {
	Rib           string    `json:"rib"`
	Station       float64   `json:"station_mm"`
	HalfBreadth   float64   `json:"half_breadth_mm"`
	Depth         float64   `json:"depth_mm"`
	Keel          float64   `json:"keel_height_mm"`
	Thickness     float64   `json:"thickness_mm"`
	Length        float64   `json:"length_mm"`
	Correction    float64   `json:"correction_mm"`
	Tenon         float64   `json:"tenon_mm"`
	Blank         float64   `json:"blank_mm"`
	HalfArcs      []Bend    `json:"half_arcs"`
	BendMarks     []float64 `json:"bend_marks_mm"`
	StringerMarks []float64 `json:"stringer_marks_mm"`
}

// Bend is one piece of a rib; its radius is nil when it is straight.
type Bend struct {
	Radius *float64 `json:"radius_mm"`
	Sweep  float64  `json:"sweep_deg"`
	Length float64  `json:"length_mm"`
}

// Walk goes along the half rib from the keel, level at first, and returns where
// it ends and how far that was. A straight piece keeps the direction; the length
// of a bent one is its radius times its sweep.
func (r Rib) Walk() (end Point, length float64) {
	heading := 0.0
	for _, b := range r.HalfArcs {
		sin, cos := math.Sincos(heading)
		if b.Radius == nil {
			end = Point{end.X + b.Length*cos, end.Y + b.Length*sin}
			length += b.Length
			continue
		}
		turn := b.Sweep * math.Pi / 180
		radius := math.Copysign(*b.Radius, turn)
		heading += turn
		end = Point{end.X + radius*(math.Sin(heading)-sin), end.Y - radius*(math.Cos(heading)-cos)}
		length += radius * turn
	}
	return end, length
}

// Flat is a part cut from a board, and where its bolts go through the gunwales.
type Flat struct {
	Corners [][2]float64 `json:"outline_mm"`
	Bolts   []float64    `json:"bolts_from_midship_mm"`
}

// Outline returns the part's shape.
func (f Flat) Outline() Outline {
	out := Outline{Closed: true}
	for i, a := range f.Corners {
		b := f.Corners[(i+1)%len(f.Corners)]
		out.Pieces = append(out.Pieces, Piece{From: Point{a[0], a[1]}, To: Point{b[0], b[1]}})
	}
	return out
}

// Views returns the pieces of each pattern.
func (n *Numbers) Views() map[string][]View {
	out := map[string][]View{}
	for _, v := range n.Pages {
		out[v.Pattern] = append(out[v.Pattern], v)
	}
	return out
}

// ReadNumbers reads a NAME-numbers.json.
//
// Errors: no JSON, or lists without entries.
func ReadNumbers(src []byte) (*Numbers, error) {
	n := &Numbers{}
	if err := json.Unmarshal(src, n); err != nil {
		return nil, err
	}
	for what, count := range map[string]int{"mortises": len(n.Gunwale.Mortises), "line_mm": len(n.Gunwale.Line), "ribs": len(n.Ribs),
		"stems": len(n.Stems), "breasthooks": len(n.Breasthooks), "pages": len(n.Pages)} {
		if count == 0 {
			return nil, fmt.Errorf("the numbers hold no %s", what)
		}
	}
	return n, nil
}

// ReadPages reads only the table of pages of a NAME-numbers.json, which every set of
// sheets has.
//
// Errors: no JSON, or no pages.
func ReadPages(src []byte) (*Numbers, error) {
	n := &Numbers{}
	var only struct {
		Pages []View `json:"pages"`
	}
	if err := json.Unmarshal(src, &only); err != nil {
		return nil, err
	}
	if n.Pages = only.Pages; len(n.Pages) == 0 {
		return nil, fmt.Errorf("the numbers hold no pages")
	}
	return n, nil
}
