// Package json gathers every number that the patterns show, in a plain form
// for other programs: lengths end in _mm, angles in _deg, x y z as everywhere.
// The names of the fields are a promise; they are added to, never changed.
package json

import (
	"encoding/json"
	"io"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// Encode writes the numbers of a boat and its sheets as JSON.
//
// Accuracy: lengths and angles to 0.0001, so that sums of a hundred of them
// still agree to 0.01 mm. Errors: a number that is not finite, naming the kind;
// the writer's own error.
func Encode(w io.Writer, f *frame.Frame, slug, fingerprint string, doc layout.Document) error {
	e := json.NewEncoder(w)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	return e.Encode(gather(f, slug, fingerprint, doc))
}

// fixed is a number written with four decimals at most; null when infinite.
type fixed float64

// MarshalJSON writes the number, or null for an infinite one.
func (v fixed) MarshalJSON() ([]byte, error) {
	if math.IsInf(float64(v), 0) {
		return []byte("null"), nil
	}
	r := math.Round(float64(v)*1e4) / 1e4
	if r == 0 {
		r = 0 // no minus zero
	}
	return json.Marshal(r)
}

// factor is a number that multiplies lengths of metres: nine decimals keep them
// true to a hundredth of a micrometre.
type factor float64

// MarshalJSON writes the number.
func (v factor) MarshalJSON() ([]byte, error) {
	r := math.Round(float64(v)*1e9) / 1e9
	if r == 0 {
		r = 0 // no minus zero
	}
	return json.Marshal(r)
}

func deg(a float64) fixed { return fixed(a * 180 / math.Pi) }

func all(v []float64) []fixed {
	out := make([]fixed, len(v))
	for i := range v {
		out[i] = fixed(v[i])
	}
	return out
}

// outline flattens a closed path to points within 0.01 mm of it; the last point
// does not repeat the first.
func outline(p curve.Path) [][2]fixed {
	pts := p.Flatten(0.01)
	out := make([][2]fixed, 0, len(pts))
	for _, q := range pts[:len(pts)-1] {
		out = append(out, [2]fixed{fixed(q.X), fixed(q.Y)})
	}
	return out
}

// lineStep is the distance between points of a line in space, mm: chords of
// this length fall short of a gunwale's bend by less than 0.0001 mm each.
const lineStep = 10.0

// line samples a track from its after to its forward end, at the given places
// too. Every place asked for is a point of the result.
func line(t *curve.Track, at []float64) [][3]fixed {
	a, b := t.Ends()
	var out [][3]fixed
	add := func(x float64) {
		p := t.Point(x)
		out = append(out, [3]fixed{fixed(p.X), fixed(p.Y), fixed(p.Z)})
	}
	add(a)
	from := a
	for _, x := range append(append([]float64(nil), at...), b) {
		n := max(1, int(math.Ceil((x-from)/lineStep)))
		for i := 1; i <= n; i++ {
			add(from + (x-from)*float64(i)/float64(n))
		}
		from = x
	}
	return out
}

// words letters a length as on the patterns, for a reader of the file.
func words(mm float64) string { return measure.Sixteenths(mm) }
