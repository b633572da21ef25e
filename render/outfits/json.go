package outfits

import (
	"encoding/json"
	"io"
	"math"

	"ribwright/geometry/finding"
	"ribwright/layout"
)

// number is written to seven figures, which is more than any figure means and less
// than two processors differ by; null when it is none.
type number float64

// MarshalJSON writes the number.
func (v number) MarshalJSON() ([]byte, error) {
	f := float64(v)
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return []byte("null"), nil
	}
	if math.Abs(f) < 1e-9 {
		return []byte("0"), nil
	}
	k := math.Min(1e6, math.Pow(10, 6-math.Floor(math.Log10(math.Abs(f)))))
	r := math.Round(f*k) / k
	if r == 0 {
		r = 0 // no minus zero
	}
	return json.Marshal(r)
}

type note struct {
	About    string `json:"about"`
	Text     string `json:"text"`
	Standing string `json:"standing"`
	Danger   bool   `json:"danger"`
}

type span struct {
	Name   string `json:"name"`
	Value  number `json:"value"`
	Low    number `json:"low"`
	High   number `json:"high"`
	Unit   string `json:"unit"`
	Source string `json:"source"`
	Inside bool   `json:"inside"`
}

func notesOf(all finding.List) []note {
	out := []note{}
	for _, n := range all {
		out = append(out, note{n.About, n.Text, string(n.Standing), n.Verdict.Danger()})
	}
	return out
}

func rangesOf(all []finding.Range) []span {
	out := []span{}
	for _, r := range all {
		out = append(out, span{r.Name, number(r.Value), number(r.Low), number(r.High), r.Unit, r.Source + " (practice)", r.Inside()})
	}
	return out
}

// Sheets is what the numbers of a set of patterns hold besides the outfit's own: one
// entry for every tile on a sheet, as in the numbers of the boat.
type sheet struct {
	Page    int        `json:"page"`
	Pattern string     `json:"pattern"`
	Tile    string     `json:"tile"`
	Frame   [4]fixed   `json:"frame_mm"`
	ToSheet [6]factor  `json:"to_sheet"`
	Sheet   [2]float64 `json:"sheet_mm"`
}

// fixed is a length with four decimals, factor one that multiplies lengths.
type (
	fixed  float64
	factor float64
)

// MarshalJSON writes the length.
func (v fixed) MarshalJSON() ([]byte, error) { return rounded(float64(v), 1e4) }

// MarshalJSON writes the factor.
func (v factor) MarshalJSON() ([]byte, error) { return rounded(float64(v), 1e9) }

func rounded(v, k float64) ([]byte, error) {
	r := math.Round(v*k) / k
	if r == 0 {
		r = 0 // no minus zero
	}
	return json.Marshal(r)
}

func sheetsOf(doc layout.Document) []sheet {
	out := []sheet{}
	for _, s := range doc.Sheets {
		for _, v := range s.Views {
			b, m := v.Frame, v.ToSheet
			out = append(out, sheet{s.Number, v.Drawing.Name, v.Tile,
				[4]fixed{fixed(b.Min.X), fixed(b.Min.Y), fixed(b.Max.X), fixed(b.Max.Y)},
				[6]factor{factor(m.A), factor(m.B), factor(m.C), factor(m.D), factor(m.E), factor(m.F)},
				[2]float64{doc.Paper.W, doc.Paper.H}})
		}
	}
	return out
}

// Identity says which design the figures are of.
type Identity struct {
	Title       string `json:"title"`
	Slug        string `json:"slug"`
	Fingerprint string `json:"fingerprint"`
}

// document is what is written: the design, one outfit, the sheets when there are
// some.
type document struct {
	Design Identity     `json:"design"`
	Row    *row         `json:"row,omitempty"`
	Pair   *pairFigures `json:"pair,omitempty"`
	Sail   *sailing     `json:"sail,omitempty"`
	Pages  []sheet      `json:"pages,omitempty"`
}

func (d document) encode(w io.Writer, doc *layout.Document) error {
	if doc != nil {
		d.Pages = sheetsOf(*doc)
	}
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	return e.Encode(d)
}
