// Package render holds what every back end needs before it writes: the check
// that all numbers are real places on a sheet and that nothing is shown at
// another size, and the plain decimal form of numbers.
package render

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/plate/trace"
)

// far is the largest coordinate written, mm: ten times any boat, and far below
// what would print as a row of digits nobody meant.
const far = 1e5

// fullSize is by how much a placement may stretch or turn what it moves: only
// rounding. Over a plate of 10 m it is 0.01 micrometres.
const fullSize = 1e-9

// CheckDocument returns an error for the first coordinate of a document that is
// not a place (NaN, infinite, or beyond 100 m), a line in pieces, or a view that
// is not at full size and upright, naming the pattern; and for a document
// without sheets. The libraries behind the back ends would write all these as
// they are.
func CheckDocument(doc layout.Document) error {
	if !usable(geometry.Pt(doc.Paper.W, doc.Paper.H)) || doc.Paper.W <= 0 || doc.Paper.H <= 0 {
		return fmt.Errorf("paper %s of %g by %g mm cannot be printed on", doc.Paper.Name, doc.Paper.W, doc.Paper.H)
	}
	// A printer off by more than 5 % is broken, so the stretch is a slip.
	if kx, ky := doc.Scale(); !(min(kx, ky) >= 0.95 && max(kx, ky) <= 1/0.95) {
		return fmt.Errorf("a stretch of %g by %g is no correction for a printer", kx, ky)
	}
	if len(doc.Sheets) == 0 {
		return errors.New("a document without sheets has nothing to print")
	}
	seen := map[*layout.Drawing]bool{}
	for i, s := range doc.Sheets {
		for _, v := range s.Views {
			if err := checkView(v, doc); err != nil {
				return fmt.Errorf("sheet %d: pattern %s: %w", i+1, v.Drawing.Title, err)
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

// checkView refuses a view that is turned otherwise than by a quarter, stretched otherwise than its document,
// or nowhere.
func checkView(v layout.View, doc layout.Document) error {
	if !usable(v.Frame.Min, v.Frame.Max, v.ToSheet.Apply(v.Frame.Min), v.ToSheet.Apply(v.Frame.Max)) || v.Frame.Empty() {
		return errors.New("what is shown has no real place")
	}
	m := v.ToSheet
	kx, ky := doc.Scale()
	read := max(math.Abs(m.A-kx), math.Abs(m.B), math.Abs(m.C), math.Abs(m.D-ky))
	turned := max(math.Abs(m.A), math.Abs(m.B-ky), math.Abs(m.C+kx), math.Abs(m.D)) // by a quarter, to the left
	if !(min(read, turned) <= fullSize) {
		return errors.New("it would be askew or not at full size")
	}
	return nil
}

// CheckDrawing is CheckDocument for a single drawing.
func CheckDrawing(d layout.Drawing) error { return checkInk(d.Strokes, d.Texts) }

// CheckPlate is CheckDocument for a plate, on which parts may be turned.
func CheckPlate(p layout.Plate) error {
	if !usable(geometry.Pt(p.W, p.H), p.Check.Min, p.Check.Max) || p.W <= 0 || p.H <= 0 {
		return fmt.Errorf("a plate of %g by %g mm cannot be written", p.W, p.H)
	}
	if h := p.Hairline; h != 0 && !(h >= layout.LeastHairline && h <= layout.MostHairline) {
		return fmt.Errorf("a hairline of %.6g mm cannot be written; accepted: %.6g to %.6g mm", h, layout.LeastHairline, layout.MostHairline)
	}
	for _, q := range p.Parts {
		if err := checkPart(q); err != nil {
			return fmt.Errorf("part %s: %w", q.Part.Name, err)
		}
	}
	return nil
}

// Trace checks a plate and turns it into lines, once for all the files that are made of it.
//
// Errors: those of CheckPlate and trace.Of.
func Trace(p layout.Plate) (trace.Plate, error) {
	out := trace.Plate{Plate: p}
	err := CheckPlate(p)
	if err == nil {
		out.Layers, err = trace.Of(p)
	}
	return out, err
}

// Describe says what a cutter's file holds, for whoever opens it.
func Describe(p layout.Plate) string {
	words := fmt.Sprintf("%.1f x %.1f mm (%.2f x %.2f in); one unit is one millimeter; exact size, no cutter offset applied; "+
		"the square in the SCALE layer is 100 mm wide and high; it and the SHEET layer are not to be cut", p.W, p.H, p.W/25.4, p.H/25.4)
	for _, n := range p.Notes {
		words += "; " + n
	}
	return words
}

func checkPart(q layout.Placed) error {
	m := q.Move
	if !usable(geometry.Pt(m.A, m.B), geometry.Pt(m.C, m.D), geometry.Pt(m.E, m.F)) {
		return errors.New("it has no real place on the plate")
	}
	if !m.Similar() || !(math.Abs(m.Det()-1) <= fullSize) {
		return errors.New("it would be mirrored or not at full size")
	}
	for _, c := range slices.Concat(q.Part.Cut, q.Part.Marks) {
		if err := checkPath(c); err != nil {
			return err
		}
	}
	return checkInk(nil, q.Part.Letters)
}

func checkInk(strokes []layout.Stroke, texts []layout.Text) error {
	for _, s := range strokes {
		if err := checkPath(s.Path); err != nil {
			return err
		}
	}
	for _, t := range texts {
		if !usable(t.At, geometry.Pt(t.Height, t.Angle)) || t.Height <= 0 {
			return fmt.Errorf("the lettering %q has no real place or height", t.Words)
		}
	}
	return nil
}

func checkPath(p curve.Path) error {
	for _, s := range p {
		ok := usable(s.Start(), s.End(), s.At(0.5))
		if a, is := s.(curve.Arc); is {
			ok = ok && usable(a.Center, geometry.Pt(a.Radius, a.Sweep)) && a.Radius > 0
		}
		if c, is := s.(curve.Cubic); is {
			ok = ok && usable(c.P1, c.P2)
		}
		if !ok {
			return errors.New("a line holds a number that is no place")
		}
	}
	if !p.Joined() {
		return errors.New("a line is in pieces that do not meet")
	}
	return nil
}

// usable reports whether every coordinate is finite and within far; written so
// that NaN falls out.
func usable(pts ...geometry.Point) bool {
	return !slices.ContainsFunc(pts, func(p geometry.Point) bool { return !(math.Abs(p.X) <= far && math.Abs(p.Y) <= far) })
}

// Number writes v with at most the given decimals, without exponent, trailing
// zeros or a minus zero.
func Number(v float64, decimals int) string {
	var room [32]byte
	return string(AppendNumber(room[:0], v, decimals))
}

// AppendNumber adds what Number returns to a text.
func AppendNumber(to []byte, v float64, decimals int) []byte {
	first := len(to)
	to = strconv.AppendFloat(to, v, 'f', decimals, 64)
	if decimals > 0 && geometry.Finite(v) {
		end := len(to)
		for to[end-1] == '0' {
			end--
		}
		if to[end-1] == '.' {
			end--
		}
		to = to[:end]
	}
	if string(to[first:]) == "-0" {
		return append(to[:first], '0')
	}
	return to
}
