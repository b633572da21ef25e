// Package render holds what every back end needs before it writes: the check
// that all numbers are real places on a sheet, and their plain decimal form.
package render

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// far is the largest coordinate written, mm: ten times any boat, and far below
// what would print as a row of digits nobody meant.
const far = 1e5

// CheckDocument returns an error for the first coordinate of a document that is
// not a place (NaN, infinite, or beyond 100 m), naming the pattern; nil when
// all are. The libraries behind the back ends would write such numbers as they
// are.
func CheckDocument(doc layout.Document) error {
	if !usable(geometry.Point{X: doc.Paper.W, Y: doc.Paper.H}) || doc.Paper.W <= 0 || doc.Paper.H <= 0 {
		return fmt.Errorf("paper %s of %g by %g mm cannot be printed on", doc.Paper.Name, doc.Paper.W, doc.Paper.H)
	}
	seen := map[*layout.Drawing]bool{}
	for i, s := range doc.Sheets {
		for _, v := range s.Views {
			if !usable(v.Frame.Min, v.Frame.Max, v.ToSheet.Apply(v.Frame.Min), v.ToSheet.Apply(v.Frame.Max)) {
				return fmt.Errorf("sheet %d: %s has no real place", i+1, v.Drawing.Title)
			}
			if seen[v.Drawing] {
				continue
			}
			seen[v.Drawing] = true
			if err := checkInk(v.Drawing.Strokes, v.Drawing.Texts); err != nil {
				return fmt.Errorf("pattern %s: %w", v.Drawing.Title, err)
			}
		}
		if err := checkInk(s.Strokes, s.Texts); err != nil {
			return fmt.Errorf("sheet %d: %w", i+1, err)
		}
	}
	return nil
}

// CheckPlate is CheckDocument for a plate.
func CheckPlate(p layout.Plate) error {
	if !usable(geometry.Point{X: p.W, Y: p.H}, p.Check.Min, p.Check.Max) || p.W <= 0 || p.H <= 0 {
		return fmt.Errorf("a plate of %g by %g mm cannot be written", p.W, p.H)
	}
	for _, q := range p.Parts {
		m := q.Move
		ok := usable(geometry.Point{X: m.A, Y: m.B}, geometry.Point{X: m.C, Y: m.D}, geometry.Point{X: m.E, Y: m.F})
		for _, c := range append(append([]curve.Path(nil), q.Part.Cut...), q.Part.Marks...) {
			ok = ok && usablePath(c)
		}
		if err := checkInk(nil, q.Part.Letters); err != nil || !ok {
			return fmt.Errorf("part %s holds a number that is no place on the plate", q.Part.Name)
		}
	}
	return nil
}

func checkInk(strokes []layout.Stroke, texts []layout.Text) error {
	for _, s := range strokes {
		if !usablePath(s.Path) {
			return fmt.Errorf("a line holds a number that is no place on paper")
		}
	}
	for _, t := range texts {
		if !usable(t.At, geometry.Point{X: t.Height, Y: t.Angle}) || t.Height <= 0 {
			return fmt.Errorf("the lettering %q has no real place or height", t.Words)
		}
	}
	return nil
}

func usablePath(p curve.Path) bool {
	for _, s := range p {
		ok := usable(s.Start(), s.End(), s.At(0.5))
		if a, is := s.(curve.Arc); is {
			ok = ok && usable(a.Center, geometry.Point{X: a.Radius, Y: a.Sweep}) && a.Radius > 0
		}
		if c, is := s.(curve.Cubic); is {
			ok = ok && usable(c.P1, c.P2)
		}
		if !ok {
			return false
		}
	}
	return true
}

// usable reports whether every coordinate is finite and within far; written so
// that NaN falls out.
func usable(pts ...geometry.Point) bool {
	for _, p := range pts {
		if !(math.Abs(p.X) <= far && math.Abs(p.Y) <= far) {
			return false
		}
	}
	return true
}

// Number writes v with at most the given decimals, without exponent, trailing
// zeros or a minus zero.
func Number(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}
