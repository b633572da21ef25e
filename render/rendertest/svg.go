package rendertest

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Element is one start tag of an SVG file.
type Element struct {
	Name     string
	Attrs    []xml.Attr
	Group    string // the id of the innermost group it stands in, "" outside
	Text     string // what stands right after the start tag
	Outlines []Outline
}

// Attr returns the value of an attribute, "" when it is not there.
func (e Element) Attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// SVG is a file that has been read, measured as a cutter's importer would: by
// the physical width and height and the view box.
type SVG struct {
	W, H     float64 // mm
	ViewBox  [4]float64
	Elements []Element // in the order of the file
}

// ReadSVG reads a whole file.
//
// Errors: XML that is not well-formed, a size without mm, a view box or path
// data that cannot be read, a path command other than M, L, C and Z.
func ReadSVG(src []byte) (*SVG, error) {
	out := &SVG{}
	d := xml.NewDecoder(bytes.NewReader(src))
	var groups []string // of every open element
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out, out.checkRoot()
		}
		if err != nil {
			return nil, err
		}
		switch t := token.(type) {
		case xml.StartElement:
			e := Element{Name: t.Name.Local, Attrs: t.Copy().Attr}
			if n := len(groups); n > 0 {
				e.Group = groups[n-1]
			}
			inside := e.Group
			if e.Name == "g" {
				inside = e.Attr("id")
			}
			groups = append(groups, inside)
			if err := out.take(e); err != nil {
				return nil, fmt.Errorf("<%s> at byte %d: %w", e.Name, d.InputOffset(), err)
			}
		case xml.EndElement:
			groups = groups[:len(groups)-1]
		case xml.CharData:
			if n := len(out.Elements); n > 0 && out.Elements[n-1].Text == "" {
				out.Elements[n-1].Text = strings.TrimSpace(string(t))
			}
		}
	}
}

func (s *SVG) checkRoot() error {
	if len(s.Elements) == 0 || s.Elements[0].Name != "svg" {
		return fmt.Errorf("no svg element")
	}
	return nil
}

// take adds an element; the first one gives the size, a path its outlines.
func (s *SVG) take(e Element) error {
	var err error
	switch {
	case len(s.Elements) == 0:
		err = s.readSize(e)
	case e.Name == "path":
		e.Outlines, err = s.readPath(e.Attr("d"))
	}
	s.Elements = append(s.Elements, e)
	return err
}

func (s *SVG) readSize(e Element) error {
	for _, side := range []struct {
		name string
		to   *float64
	}{{"width", &s.W}, {"height", &s.H}} {
		number, isMM := strings.CutSuffix(e.Attr(side.name), "mm")
		v, err := strconv.ParseFloat(number, 64)
		if err != nil || !isMM || !(v > 0) {
			return fmt.Errorf("%s is %q, no length in mm", side.name, e.Attr(side.name))
		}
		*side.to = v
	}
	fields := strings.Fields(e.Attr("viewBox"))
	if len(fields) != 4 {
		return fmt.Errorf("viewBox is %q", e.Attr("viewBox"))
	}
	for i, f := range fields {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			return fmt.Errorf("viewBox is %q", e.Attr("viewBox"))
		}
		s.ViewBox[i] = v
	}
	return nil
}

// Paths returns the paths of the group with the given id.
func (s *SVG) Paths(group string) []Element {
	var out []Element
	for _, e := range s.Elements {
		if e.Name == "path" && e.Group == group {
			out = append(out, e)
		}
	}
	return out
}

// Pieces returns the outlines to cut that lie in no other: the pieces
// themselves, without their holes.
func (s *SVG) Pieces() []Outline {
	var all []Outline
	for _, e := range s.Paths("CUT") {
		all = append(all, e.Outlines...)
	}
	return Outermost(all)
}
